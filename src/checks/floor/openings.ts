/** Holes through the floor against flanges, rails, wheel boxes, the panel's edge and each other. */
import type { FloorOpeningDefinition } from '../../definition/under-types.js'
import { type FloorInput, floorInputOf } from '../../derive/floor/input.js'
import { clearances } from '../../derive/floor/openings.js'
import type { Derived } from '../../derive/index.js'
import type { Check, Place } from '../../derive/nouns.js'
import type { Clearance, FloorDerived, Member } from '../../derive/under-nouns.js'
import { distanceCheck, mm } from '../check.js'

/** Room for a flange, a nut or a sealant bead round a hole. m */
const ROOM = 0.01
const SOURCE = 'common practice, no source: 10 mm for the flange or the bead of sealant round a hole'
/** How far a better place is looked for, and in what steps. m */
const FARTHEST = 0.3
const STEP = 0.001

export function openingsAgainstMembers({ under, definition }: Derived): Check[] {
  const { floor, chassis, gear } = under
  const input = floorInputOf(definition, chassis?.members ?? [], gear?.boxes ?? [])
  if (!floor || !input) return []
  return floor.openings.map((opening, i) => {
    const written = input.floor.openings[i]
    const nearest = opening.clear[0]
    // a member beside it, and the flange the flooring jig is stopped at, are both said
    const flange = opening.toFlange
    const says = [
      `${opening.id}, ${opening.says}, ${roomWords(input, nearest)}`,
      ...(flange && flange.to !== nearest.to ? [`; along the coach ${roomWords(input, flange)}`] : []),
      `; ${mm(ROOM)} mm are asked for.`,
    ].join('')
    const check = distanceCheck(
      { id: `floor.opening.${opening.id}`, says, source: SOURCE, places: [floorPlace(opening)], concerns: [opening.id, nearest.to] },
      ROOM,
      nearest.room,
    )
    return check.verdict === 'pass' ? check : { ...check, mend: betterPlace(input, floor, written) }
  })
}

function roomWords({ members }: FloorInput, { to, room, kind }: Clearance): string {
  const member = members.find((m) => m.part === to)
  const what = member ? memberWords(member) : kind === 'wheel-box' ? `the wheel box ${to}` : to
  return room < 0 ? `reaches ${mm(-room)} mm into ${what}` : `stands ${mm(room)} mm from ${what}`
}

function memberWords({ says, kind }: Member): string {
  const a = kind === 'cross-member' || kind === 'rail' ? 'the flange of the ' : 'the '
  return `${a}${says}`
}

export const floorPlace = ({ station, y }: FloorDerived['openings'][number]): Place => ({
  side: Math.abs(y) < 1e-9 ? 'centre' : y > 0 ? 'right' : 'left',
  station,
  girth: 0,
  waterline: 0,
  buttock: y,
})

/** The nearest place along or across the coach where everything is far enough away. */
function betterPlace(input: FloorInput, floor: FloorDerived, o: FloorOpeningDefinition): string {
  for (let by = STEP; by <= FARTHEST; by += STEP) {
    for (const [dx, dy, way] of [
      [-by, 0, 'forward'],
      [by, 0, 'aft'],
      [0, by, 'to the right'],
      [0, -by, 'to the left'],
    ] as const) {
      const moved = { ...o, station: o.station + dx, y: o.y + dy }
      if (clearances(input, floor, moved)[0].room >= ROOM - 1e-9)
        return `Move it ${mm(by)} mm ${way}, to STA ${mm(moved.station)}, BL ${mm(Math.abs(moved.y))} ${moved.y < 0 ? 'left' : 'right'}.`
    }
  }
  return `No place within ${mm(FARTHEST)} mm is clear: move it to another bay, or make it smaller.`
}
