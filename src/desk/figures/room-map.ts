/** How much may be added here: the room of the load cases over the plan, in bands, with figures, and in a sentence at any place. */
import { letterOfSide } from '../../definition/sides.js'
import type { Design } from '../../derive/design.js'
import type { Outline } from '../../derive/nouns.js'
import type { Room, WeightDerived } from '../../derive/weight-nouns.js'
import { bodyOutline, type Points, underPartOnCoach } from '../../documents/drawing/coach-geometry.js'
import { fixed } from '../../documents/drawing/units.js'
import { roomWords } from '../../documents/sheets/weight-sheets.js'
import { insideOutline } from '../../maths/outline.js'
import { formatMass, type UnitSystem } from '../../quantity/format.js'
import { type RoomOverPlan, roomHere, roomOverPlan } from '../../studies/room/room-over-plan.js'
import type { OrNot, RoomHere, RoomMap } from './nouns.js'

/** Fine enough that a band's edge is as sharp as a pencil's, m. */
const CELL = 0.05
/** Figures stand this far apart along and across, m. */
const [ALONG, ACROSS] = [0.6, 0.5]
/** Edges of the bands in the unit of the reader: kg, lb. */
const EDGES: Readonly<Record<UnitSystem, readonly number[]>> = { metric: [25, 50, 100, 200, 400], inch: [50, 100, 200, 400, 800] }
const UNIT: Readonly<Record<UnitSystem, { readonly word: string; readonly kg: number }>> = {
  metric: { word: 'kg', kg: 1 },
  inch: { word: 'lb', kg: 0.45359237 },
}

export function roomMap(design: Design, units: UnitSystem): OrNot<RoomMap> {
  const { weight } = design
  if ('notComputed' in weight) return weight
  const floor = floorOf(design)
  const over = roomOverPlan(
    weight,
    floor.map(([x, y]) => [x, y, 0] as const),
    CELL,
  )
  const { barrel, ends } = bodyOutline(design, 'plan')
  const xs = floor.map(([x]) => x)
  return {
    floor: floor.flat(),
    // the sides of the barrel and the round of each end: no line across at the joints
    body: [barrel.slice(0, 2), barrel.slice(2), ...ends].map((points) => points.flat()),
    cell: CELL,
    bands: bandsOf(over, units),
    soundings: soundingsOf(over, units),
    stops: stopsOf(over),
    places: weight.places.map(({ says, at, room }) => ({ x: at[0], y: at[1], says, words: massWords(room.mass, units) })),
    start: [Math.round((Math.min(...xs) + Math.max(...xs)) * 5) / 10, 0],
  }
}

/** The room at a station and a buttock line (right positive), m. */
export function roomSaid(design: Design, x: number, y: number, units: UnitSystem): OrNot<RoomHere> {
  const { weight, definition } = design
  if ('notComputed' in weight) return weight
  const room = roomHere(weight, x, y)
  const letter = Math.abs(y) < 5e-4 ? null : letterOfSide(y > 0 ? 'right' : 'left', definition.coach.market)
  const across = letter === null ? 'on the centre line' : `BL ${size(Math.abs(y), units)} on the ${y > 0 ? 'right' : 'left'} (${letter})`
  const isFloor = insideFloor(design, x, y)
  return {
    ...{ x, y, mass: room.mass },
    says: `STA ${size(x, units)}, ${across}: you may still add ${roomWords(room, units)}.${caseSays(weight, room)}${isFloor ? '' : ' This is not over the floor.'}`,
    at: { look: 'plan', x, y },
  }
}

const size = (m: number, units: UnitSystem): string => (units === 'metric' ? fixed(m * 1000, 0) : `${fixed(m / 0.0254, 1)} in`)
const massWords = (kg: number | null, units: UnitSystem): string =>
  kg === null ? 'anything' : formatMass(Math.floor(kg), units, { decimals: 0 })

function caseSays({ cases }: WeightDerived, room: Room): string {
  const one = cases.find(({ id }) => id === room.case)
  return one ? ` Case ${one.id} is ${one.says}.` : ''
}

/** Where one stands: the floor panel, or the body's plan where no floor is derived. */
function floorOf(design: Design): Points {
  const panel = design.parts.find((part) => part.kind === 'floor-panel')
  const drawn = panel ? underPartOnCoach(design, panel) : null
  if (drawn) return drawn
  const { barrel, ends } = bodyOutline(design, 'plan')
  const [nose, tail] = ends
  return nose && tail ? [...nose, ...[...tail].reverse()] : barrel
}

function insideFloor(design: Design, x: number, y: number): boolean {
  const outline: Outline = floorOf(design).map(([u, v]) => [u, v, 0] as const)
  return insideOutline(outline, x, y)
}

function bandsOf({ x, y, mass }: RoomOverPlan, units: UnitSystem): RoomMap['bands'] {
  const { word, kg } = UNIT[units]
  const edges = EDGES[units]
  const squares: number[][] = Array.from({ length: edges.length + 1 }, () => [])
  mass.forEach((each, i) => {
    const over = each === null ? edges.length : edges.filter((edge) => each >= edge * kg).length
    squares[over].push(x[i], y[i])
  })
  return squares.map((own, i) => ({
    says:
      i === 0
        ? `under ${edges[0]} ${word}`
        : i === edges.length
          ? `${edges[i - 1]} ${word} and more`
          : `${edges[i - 1]} to ${edges[i]} ${word}`,
    squares: own,
  }))
}

/** Rounded down, as the sentence is: what is written may be added. */
function soundingsOf({ x, y, mass }: RoomOverPlan, units: UnitSystem): RoomMap['soundings'] {
  const isOn = (value: number, step: number): boolean => Math.abs(value / step - Math.round(value / step)) < 1e-6
  return mass.flatMap((each, i) =>
    isOn(x[i], ALONG) && isOn(y[i], ACROSS)
      ? [{ x: x[i], y: y[i], words: each === null ? 'any' : formatMass(Math.floor(each), units, { decimals: 0, bare: true }) }]
      : [],
  )
}

const STOPPED = {
  'hitch-least': 'hitch too light',
  'hitch-most': 'hitch too heavy',
  gross: 'gross rating',
  axle: 'axle rating',
  tyre: 'tyre',
} as const

function stopsOf({ cell, x, y, stop, stops }: RoomOverPlan): RoomMap['stops'] {
  const runs: { from: number; to: number; stop: number | null }[] = []
  x.forEach((at, i) => {
    if (Math.abs(y[i]) > cell / 4) return
    const last = runs[runs.length - 1]
    if (last && last.stop === stop[i]) last.to = at + cell / 2
    else runs.push({ from: at - cell / 2, to: at + cell / 2, stop: stop[i] })
  })
  return runs.map(({ from, to, stop: which }) => ({
    from,
    to,
    says: which === null ? 'nothing' : `${STOPPED[stops[which].limit]}, ${stops[which].case}`,
  }))
}
