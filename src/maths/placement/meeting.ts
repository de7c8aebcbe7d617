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
  /** 1 where all discs of a hole have one radius */
  readonly alike: Uint8Array
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
    alike: Uint8Array.from(body, (r, i) => (others[i].every((other) => other === r) ? 1 : 0)),
    missX: new Float64Array(n),
    missY: new Float64Array(n),
    work: discs(1 + Math.max(0, ...others.map((at) => at.length))),
  }
}

/** A reach lost to rounding is no misfit. */
const SAME = 1 + 1e-12

/** How a hole stands: its discs share a point, or they would if each were grown by what is allowed it, or not even then. */
export const FITS = 0
export const SHORT = 1
export const TOO_SHORT = 2

/**
 * Judges every hole with the body so placed, into `out`; `allowed` is what each disc may be grown by. Two or three discs of one
 * radius share a point when the smallest circle round their centres is no larger: for three that is the circle through all of
 * them, or in an obtuse triangle the one on its longest side. All others are left to the shortfall itself.
 */
export function judge(m: Meeting, { shiftX, shiftY, turn }: Placement, allowed: Float64Array, out: Uint8Array): void {
  const { holes, x, y, first, bodyX, bodyY, bodyR, otherX, otherY, alike } = m
  for (let i = 0; i < holes; i++) {
    const k = first[i]
    const others = first[i + 1] - k
    const bx = bodyX[i] - shiftX + turn * y[i]
    const by = bodyY[i] - shiftY - turn * x[i]
    const most = allowed[i]
    const r = bodyR[i]
    if (others > 2 || alike[i] === 0 || r < 0) {
      out[i] = stand(laid(m, i, bx, by), alike[i] === 1 && r >= 0, most)
      continue
    }
    const ux = otherX[k] - bx
    const uy = otherY[k] - by
    const a = ux * ux + uy * uy
    const grown = r + most
    if (others === 1) {
      out[i] = a > 4 * grown * grown * SAME ? TOO_SHORT : a > 4 * r * r * SAME ? SHORT : FITS
      continue
    }
    const vx = otherX[k + 1] - bx
    const vy = otherY[k + 1] - by
    const b = vx * vx + vy * vy
    const c = (ux - vx) * (ux - vx) + (uy - vy) * (uy - vy)
    const longest = Math.max(Math.max(a, b), c)
    // most holes are settled by the longest side alone: the circle is no smaller than on it, and no larger than by 2 / √3
    if (longest > 4 * r * r * SAME && longest <= 3 * grown * grown) {
      out[i] = SHORT
      continue
    }
    const cross = ux * vy - uy * vx
    // four times the square of the circle's radius
    const round = 2 * longest >= a + b + c ? longest : (a * b * c) / (cross * cross)
    out[i] = round > 4 * grown * grown * SAME ? TOO_SHORT : round > 4 * r * r * SAME ? SHORT : FITS
  }
}

/**
 * Distances of pairs settle most holes of many layers: two too far apart share no point, and discs of one radius r no two of
 * which are more than √3 r apart always do (Jung's theorem in the plane).
 */
function stand(d: Discs, alike: boolean, most: number): number {
  if (alike) {
    const { n, x, y, r } = d
    let widest = 0
    for (let i = 0; i < n; i++) {
      for (let j = i + 1; j < n; j++) widest = Math.max(widest, (x[i] - x[j]) * (x[i] - x[j]) + (y[i] - y[j]) * (y[i] - y[j]))
    }
    const grown = r[0] + most
    if (widest > 4 * grown * grown * SAME) return TOO_SHORT
    if (widest <= 3 * r[0] * r[0]) return FITS
    if (widest > 4 * r[0] * r[0] * SAME && widest <= 3 * grown * grown) return SHORT
  }
  const t = shortfall(d)
  return t > most ? TOO_SHORT : t > 0 ? SHORT : FITS
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
