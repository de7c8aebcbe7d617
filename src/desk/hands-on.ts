/** What a hand can do with a thing that is drawn: which way it moves on this drawing, which of its sizes are typed, and by what a key pushes it. */
import type { Step } from '../definition/set-in-text.js'
import { letterOfSide } from '../definition/sides.js'
import type { Definition, OpeningDefinition } from '../definition/types.js'
import { axesOf } from './axes.js'
import type { Drawn, Field, Look } from './nouns.js'
import { axleOf, massOf, type Place, type WrittenThing, writtenThing } from './written-things.js'

/** The drawn thing with its handles; as it was where it follows from something else. */
export function handsOn(definition: Definition, drawn: Drawn, look: Look): Drawn {
  const thing = drawn.id === null ? null : writtenThing(definition, drawn.id)
  if (drawn.id === null || !thing) return drawn
  const opening = definition.openings.find((each) => each.id === drawn.id)
  const moves = movesOn(thing, opening, look)
  return {
    ...drawn,
    moves,
    // a lap is written by its girth and dragged by its height on the drawing
    place: thing.layer === 'seams' ? { ...thing.place, waterline: drawn.points[1] } : thing.place,
    fields: fieldsOf(definition, drawn.id, thing.place),
    isSized: opening !== undefined && moves === 'both',
    pitch: pitchOf(definition, drawn.id, thing),
  }
}

function movesOn({ layer, place }: WrittenThing, opening: OpeningDefinition | undefined, look: Look): Drawn['moves'] {
  const isEndOn = look === 'nose' || look === 'tail'
  if (layer === 'seams') return look === 'plan' || isEndOn ? null : 'up'
  // a pane of an end slides along the curve it lies in: along the coach it moves on its own axis only
  if (opening?.surface === 'nose' || opening?.surface === 'tail') return isEndOn ? 'up' : 'along'
  const { x, y } = axesOf(look)
  const [isAlong, isUp] = [place[x] !== null, place[y] !== null]
  if (isAlong && isUp) return 'both'
  return isAlong ? 'along' : isUp ? 'up' : null
}

/** The pitch of the row that moves with it, as the definition writes it; null for what carries no row. m */
function pitchOf({ rows, frames }: Definition, id: string, { layer }: WrittenThing): number | null {
  if (layer === 'openings' || layer === 'axles') return rows.rim.pitch
  if (layer === 'seams') return rows.seam.pitch
  if (layer === 'frames') return frames.find((each) => each.id === id)?.joint ? rows.joint.pitch : rows.hoop.pitch
  return null
}

function fieldsOf(definition: Definition, id: string, place: Place): readonly Field[] {
  const opening = definition.openings.find((each) => each.id === id)
  if (opening) return openingFields(definition, opening)
  const bay = definition.chassis?.bays.find((each) => each.id === id)
  const list = (at: readonly Step[], sizes: readonly (readonly [says: string, key: string, metres: number | null])[]): readonly Field[] =>
    sizes.flatMap(([says, key, metres]) => (metres === null ? [] : [{ says, steps: [...at, key], metres }]))
  if (bay)
    return list(
      ['chassis', 'bays', { id }],
      [
        ['From', 'from', bay.fore],
        ['To', 'to', bay.aft],
        ['Across', 'y', bay.y],
        ['Half width', 'half width', bay.half],
        ['Depth', 'depth', bay.depth],
      ],
    )
  const mass = definition.masses[massOf(id) ?? -1]
  if (mass)
    return list(
      ['masses', { item: mass.item }],
      [
        ['Station', 'station', place.station],
        ['Across', 'y', mass.y],
        ['Waterline', 'wl', mass.waterline],
      ],
    )
  // the axles of a group move as one, so that a station typed is a move and not a value
  if (axleOf(id) !== null) return [{ says: 'Station', steps: null, metres: place.station ?? 0 }]
  return list(
    [],
    [
      ['Station', 'station', place.station],
      ['Girth', 'girth', place.across],
    ],
  ).map((each) => ({
    ...each,
    steps: [...(place.station === null ? ['shell', 'seams', { id }] : ['frames', { id }]), ...(each.steps ?? [])],
  }))
}

function openingFields({ coach }: Definition, opening: OpeningDefinition): readonly Field[] {
  const { id, surface, station, waterline, girth, width, height, corner } = opening
  const field = (says: string, key: string, metres: number): Field => ({ says, steps: ['openings', { id }, key], metres })
  return [
    field('Station', 'station', station),
    ...(surface === 'roof' ? [field('Girth', 'girth', girth)] : []),
    ...(waterline === null ? [] : [field('Waterline', 'wl', waterline)]),
    field('Width', 'width', width),
    field('Height', 'height', height),
    field('Corner', 'corner', corner),
    ...(surface === 'right' || surface === 'left'
      ? [
          {
            ...field('Side', 'surface', 0),
            choice: {
              value: letterOfSide(surface, coach.market),
              words: [
                { value: 'C', says: 'curb' },
                { value: 'R', says: 'road' },
              ],
            },
          },
        ]
      : []),
  ]
}
