/**
 * Holes of a body that are alike: as many other layers at each, all discs of one radius, and their centres in one list at even
 * steps. Thousands are judged a trial, so what they share is worked out once. Lengths in one unit. Only + - × ÷ √.
 */
import { type Discs, shortfall } from './common-disc.js'
import type { Placement } from './meeting.js'

/** Centres stand as x, y, x, y ... in one list; `own` and `others` are where the first hole's are, each next hole's `step` farther on. */
export interface Alike {
  /** the first of them among the body's holes, and how many there are */
  readonly first: number
  readonly count: number
  readonly own: number
  /** one at least */
  readonly others: readonly number[]
  readonly step: number
  /** radius of every disc; negative where the pin is larger than the hole */
  readonly reach: number
  /** most that each disc may be grown by */
  readonly allowed: number
  readonly limits: Limits
}

/** Squares of distances between centres. */
interface Limits {
  /** within it two discs meet */
  readonly meets: number
  /** within it they do when grown */
  readonly grown: number
  /** discs no two of which are farther apart than this all meet (Jung's theorem in the plane: √3 radii), and so grown */
  readonly jung: number
  readonly grownJung: number
  /** half of that: within it of one disc no two of the others are farther apart */
  readonly near: number
}

/** A reach lost to rounding is no misfit. */
const SAME = 1 + 1e-12

export function alike(
  at: Pick<Alike, 'first' | 'count' | 'own' | 'others' | 'step'>,
  { reach, allowed }: Pick<Alike, 'reach' | 'allowed'>,
): Alike {
  const grown = reach + allowed
  // discs of less than nothing meet at no distance
  const square = (r: number, times: number): number => (r < 0 ? -1 : times * r * r)
  const limits = {
    meets: square(reach, 4 * SAME),
    grown: square(grown, 4 * SAME),
    jung: square(reach, 3),
    grownJung: square(grown, 3),
    near: square(grown, 3 / 4),
  }
  return { ...at, reach, allowed, limits }
}

/** How a hole stands: its discs share a point, or they would if each were grown by what is allowed it, or not even then. */
export const FITS = 0
export const SHORT = 1
export const TOO_SHORT = 2

/** What was found of holes judged together. */
export interface Found {
  /** of the holes that do not fit, too short or not */
  misfits: number
  tooShort: number
}

/**
 * Judges holes with the body so placed, into `out` by hole of the body. `places` are the body's holes from their own centre, x
 * and y in turn.
 *
 * Most holes are settled by how far the others lie from the body's own disc: where one is out of reach they do not all meet, and
 * where all are within half of Jung's distance no two of them can be farther apart than that, so grown they do.
 */
export function judge(
  holes: Alike,
  centres: Float64Array,
  places: Float64Array,
  placed: Placement,
  work: Discs,
  out: Uint8Array,
  found: Found,
): void {
  if (holes.others.length === 1) judgePairs(holes, centres, places, placed, out, found)
  else if (holes.others.length === 2) judgeThrees(holes, centres, places, placed, out, found)
  else judgeMany(holes, centres, places, placed, work, out, found)
}

function judgePairs(
  { first, count, own, others, step, limits }: Alike,
  centres: Float64Array,
  places: Float64Array,
  { shiftX, shiftY, turn }: Placement,
  out: Uint8Array,
  found: Found,
): void {
  const { meets, grown } = limits
  const other = others[0]
  let misfits = 0
  let tooShort = 0
  for (let i = 0, k = 0; i < count; i++, k += step) {
    const p = 2 * (first + i)
    const ux = centres[other + k] - (centres[own + k] - shiftX + turn * places[p + 1])
    const uy = centres[other + k + 1] - (centres[own + k + 1] - shiftY - turn * places[p])
    const a = ux * ux + uy * uy
    const stand = a > grown ? TOO_SHORT : a > meets ? SHORT : FITS
    if (stand !== FITS) misfits++
    if (stand === TOO_SHORT) tooShort++
    out[first + i] = stand
  }
  found.misfits = misfits
  found.tooShort = tooShort
}

function judgeThrees(
  { first, count, own, others, step, limits }: Alike,
  centres: Float64Array,
  places: Float64Array,
  { shiftX, shiftY, turn }: Placement,
  out: Uint8Array,
  found: Found,
): void {
  const { meets, near } = limits
  const one = others[0]
  const two = others[1]
  let misfits = 0
  let tooShort = 0
  for (let i = 0, k = 0; i < count; i++, k += step) {
    const p = 2 * (first + i)
    const bx = centres[own + k] - shiftX + turn * places[p + 1]
    const by = centres[own + k + 1] - shiftY - turn * places[p]
    const ux = centres[one + k] - bx
    const uy = centres[one + k + 1] - by
    const vx = centres[two + k] - bx
    const vy = centres[two + k + 1] - by
    const a = ux * ux + uy * uy
    const b = vx * vx + vy * vy
    let stand = SHORT
    if (!(a > meets && a <= near && b <= near)) stand = standOfThree(ux, uy, vx, vy, limits)
    if (stand !== FITS) misfits++
    if (stand === TOO_SHORT) tooShort++
    out[first + i] = stand
  }
  found.misfits = misfits
  found.tooShort = tooShort
}

/**
 * Two discs as they lie from the third. The smallest circle round three centres is the one through all of them, or in an obtuse
 * triangle the one on its longest side.
 */
function standOfThree(ux: number, uy: number, vx: number, vy: number, { meets, grown, grownJung }: Limits): number {
  const a = ux * ux + uy * uy
  const b = vx * vx + vy * vy
  const c = (ux - vx) * (ux - vx) + (uy - vy) * (uy - vy)
  const longest = Math.max(Math.max(a, b), c)
  // the circle is no smaller than on the longest side, and no larger than by 2 / √3
  if (longest > meets && longest <= grownJung) return SHORT
  const cross = ux * vy - uy * vx
  // four times the square of the circle's radius
  const round = 2 * longest >= a + b + c ? longest : (a * b * c) / (cross * cross)
  return round > grown ? TOO_SHORT : round > meets ? SHORT : FITS
}

function judgeMany(
  holes: Alike,
  centres: Float64Array,
  places: Float64Array,
  { shiftX, shiftY, turn }: Placement,
  work: Discs,
  out: Uint8Array,
  found: Found,
): void {
  const { first, count, own, others, step, reach, limits } = holes
  const { meets, near } = limits
  let misfits = 0
  let tooShort = 0
  for (let i = 0, k = 0; i < count; i++, k += step) {
    const p = 2 * (first + i)
    const bx = centres[own + k] - shiftX + turn * places[p + 1]
    const by = centres[own + k + 1] - shiftY - turn * places[p]
    let isOut = false
    let isNear = true
    for (let j = 0; j < others.length; j++) {
      const ux = centres[others[j] + k] - bx
      const uy = centres[others[j] + k + 1] - by
      const a = ux * ux + uy * uy
      if (a > meets) isOut = true
      if (!(a <= near)) isNear = false
    }
    let stand = SHORT
    if (!isOut || !isNear) {
      work.n = 1 + others.length
      work.r.fill(reach, 0, work.n)
      work.x[0] = bx
      work.y[0] = by
      for (let j = 0; j < others.length; j++) {
        work.x[j + 1] = centres[others[j] + k]
        work.y[j + 1] = centres[others[j] + k + 1]
      }
      stand = standOfMany(work, holes)
    }
    if (stand !== FITS) misfits++
    if (stand === TOO_SHORT) tooShort++
    out[first + i] = stand
  }
  found.misfits = misfits
  found.tooShort = tooShort
}

/** Distances of pairs settle most of them; the others are left to the shortfall itself. */
function standOfMany(d: Discs, { limits, allowed }: Alike): number {
  const { n, x, y } = d
  let widest = 0
  for (let i = 0; i < n; i++) {
    for (let j = i + 1; j < n; j++) widest = Math.max(widest, (x[i] - x[j]) * (x[i] - x[j]) + (y[i] - y[j]) * (y[i] - y[j]))
  }
  if (widest > limits.grown) return TOO_SHORT
  if (widest <= limits.jung) return FITS
  if (widest > limits.meets && widest <= limits.grownJung) return SHORT
  const t = shortfall(d)
  return t > allowed ? TOO_SHORT : t > 0 ? SHORT : FITS
}
