/**
 * A body with discs that are to meet the discs of others, hole by hole: where each hole of the body stands, by how much the
 * body's disc and the others' are off, and how far each reaches. One shift and one small rotation of the body are free.
 * Lengths in one unit; parallel arrays, filled again for every trial.
 */
import { type Discs, discs, shortfall } from './common-disc.js'

export interface Meeting {
  readonly holes: number
  /** places of the body's holes from their own centre */
  readonly x: Float64Array
  readonly y: Float64Array
  /** mean square distance of the holes from their centre; 0 where they stand in one point */
  readonly spread: number
  /** how far the body's disc is off, and its radius */
  readonly bodyX: Float64Array
  readonly bodyY: Float64Array
  readonly bodyR: Float64Array
  /** the others at hole i are first[i] to first[i + 1] */
  readonly first: Int32Array
  readonly otherX: Float64Array
  readonly otherY: Float64Array
  readonly otherR: Float64Array
  /** 1 / how many others hole i has: a product is a quarter of the time of a quotient */
  readonly share: Float64Array
  /** the body's displacement from the mean of the others', as `leastSquares` leaves it */
  readonly missX: Float64Array
  readonly missY: Float64Array
  readonly work: Discs
}

/** A shift and a small rotation (rad) taken from the body's displacements: e - shift - turn × place. */
export interface Placement {
  readonly shiftX: number
  readonly shiftY: number
  readonly turn: number
}

export const STAY: Placement = { shiftX: 0, shiftY: 0, turn: 0 }

/** A meeting without errors: `places` of the body's holes, and the radii of its own disc and of the others at each. */
export function meeting(
  places: readonly (readonly [x: number, y: number])[],
  body: readonly number[],
  others: readonly (readonly number[])[],
): Meeting {
  const n = places.length
  const cx = places.reduce((sum, [x]) => sum + x, 0) / n
  const cy = places.reduce((sum, [, y]) => sum + y, 0) / n
  const first = new Int32Array(n + 1)
  for (let i = 0; i < n; i++) first[i + 1] = first[i] + others[i].length
  const x = Float64Array.from(places, ([px]) => px - cx)
  const y = Float64Array.from(places, ([, py]) => py - cy)
  let spread = 0
  for (let i = 0; i < n; i++) spread += (x[i] * x[i] + y[i] * y[i]) / n
  return {
    holes: n,
    x,
    y,
    spread,
    bodyX: new Float64Array(n),
    bodyY: new Float64Array(n),
    bodyR: Float64Array.from(body),
    first,
    otherX: new Float64Array(first[n]),
    otherY: new Float64Array(first[n]),
    otherR: Float64Array.from(others.flat()),
    share: Float64Array.from(others, (at) => 1 / at.length),
    missX: new Float64Array(n),
    missY: new Float64Array(n),
    work: discs(1 + Math.max(0, ...others.map((at) => at.length))),
  }
}

/** By how much the discs of hole i fall short of a common point with the body so placed; at most 0 where they meet. */
export function shortAt(m: Meeting, i: number, shiftX: number, shiftY: number, turn: number): number {
  const from = m.first[i]
  const bx = m.bodyX[i] - shiftX + turn * m.y[i]
  const by = m.bodyY[i] - shiftY - turn * m.x[i]
  if (m.first[i + 1] - from === 1) {
    const [dx, dy] = [bx - m.otherX[from], by - m.otherY[from]]
    const [r, s] = [m.bodyR[i], m.otherR[from]]
    const t = (Math.sqrt(dx * dx + dy * dy) - r - s) / 2
    return Math.max(t, -r, -s)
  }
  return shortfall(laid(m, i, bx, by))
}

/** The discs of hole i as they lie, the body's first. */
export function laid(m: Meeting, i: number, bx: number, by: number): Discs {
  const { work, first } = m
  const [from, to] = [first[i], first[i + 1]]
  work.n = 1 + to - from
  work.x[0] = bx
  work.y[0] = by
  work.r[0] = m.bodyR[i]
  for (let k = from; k < to; k++) {
    work.x[1 + k - from] = m.otherX[k]
    work.y[1 + k - from] = m.otherY[k]
    work.r[1 + k - from] = m.otherR[k]
  }
  return work
}
