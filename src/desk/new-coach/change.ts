/** From a pattern coach to a new one: where a station of the one comes to lie on the other, and how much wider and higher it is. */
import type { Definition } from '../../definition/types.js'
import { parseQuantity } from '../../quantity/doors.js'
import { barrelOf, LEAST_BAYS, pitchOf, reachOf } from './families.js'
import type { Outer } from './outer.js'
import type { Tree } from './tree.js'

export interface Change {
  /** stations of the new frames, m */
  readonly frames: readonly number[]
  /** of one frame to the next, m */
  readonly pitch: number
  readonly stationOf: (station: number) => number
  /** how much longer the barrel is, m */
  readonly longer: number
  /** of the barrel, new over old */
  readonly stretch: number
  /** half width at the floor: how much more, m, and new over old */
  readonly wider: number
  readonly beam: number
  /** crown over the floor, new over old */
  readonly rise: number
  /** half girth of the section, m */
  readonly half: number
  /** of the half section: its girth and its height, new over old */
  readonly girth: number
  readonly height: number
}

/** To a whole millimetre, as frames are marked out. */
export const whole = (m: number): number => Math.round(m * 1000) / 1000

/**
 * `length` from nose tip to tail tip, m. As many bays as bring the pitch nearest to that of the pattern; nose tip and coupler
 * stay where they are.
 */
export function changeOf(definition: Definition, was: Outer, now: Outer, length: number): Change {
  const oldReach = reachOf(definition)
  const height = now.height / was.height
  const reach = oldReach * height
  const stations = definition.frames.map((frame) => frame.station).sort((a, b) => a - b)
  const [first, last] = [stations[0], stations[stations.length - 1]]
  const barrel = length - 2 * reach
  const bays = Math.max(LEAST_BAYS, Math.round(barrel / pitchOf(definition)))
  const pitch = barrel / bays
  const start = whole(first - oldReach + reach)
  const frames = Array.from({ length: bays + 1 }, (_, i) => whole(start + i * pitch))
  const end = frames[bays]
  const knots = [
    [first - oldReach, start - reach],
    [first, start],
    [last, end],
    [last + oldReach, end + reach],
  ] as const
  return {
    frames,
    pitch,
    stationOf: (station) => alongKnots(knots, station),
    longer: end - start - barrelOf(definition),
    stretch: (end - start) / barrelOf(definition),
    wider: now.floorHalf - was.floorHalf,
    beam: now.floorHalf / was.floorHalf,
    rise: now.crown / was.crown,
    half: now.chain.length,
    girth: now.chain.length / was.chain.length,
    height,
  }
}

/** Straight between the knots, and by as much as the nearest of them beyond. */
function alongKnots(knots: readonly (readonly [number, number])[], x: number): number {
  const after = knots.findIndex(([from]) => from >= x)
  if (after === 0) return x + knots[0][1] - knots[0][0]
  if (after < 0) return x + knots[knots.length - 1][1] - knots[knots.length - 1][0]
  const [[x0, y0], [x1, y1]] = [knots[after - 1], knots[after]]
  return y0 + ((x - x0) * (y1 - y0)) / (x1 - x0)
}

/** As it is written: whole tenths of a millimetre. */
export const mm = (m: number): string => `${Number((m * 1000).toFixed(1)) + 0} mm`

/** A written length, m; null for a word such as `axles`. */
export function metres(tree: Tree | undefined): number | null {
  if (typeof tree !== 'string') return null
  const read = parseQuantity(tree, 'length')
  return read.ok ? read.value : null
}

/** A written length put through `by`; anything else stays as it is. */
export function lengthBy(tree: Tree, by: (m: number) => number): Tree {
  const m = metres(tree)
  return m === null ? tree : mm(whole(by(m)))
}
