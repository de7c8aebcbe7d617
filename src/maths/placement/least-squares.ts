/**
 * The placement that makes the squares of all misses least, as a crew centres a sheet: a hole's miss is from the mean of the
 * others' centres there. Closed form, because the rotation is small and the holes are given from their own centre.
 */
import type { Alike } from './alike.js'
import type { Meeting, Placement } from './meeting.js'

/** Works out the misses of the meeting on its way. */
export function leastSquares(m: Meeting): Placement {
  const { holes, x, y, first, share, bodyX, bodyY, otherX, otherY, missX, missY, spread } = m
  let sx = 0
  let sy = 0
  let turned = 0
  for (let i = 0; i < holes; i++) {
    const from = first[i]
    const to = first[i + 1]
    let sumX = otherX[from]
    let sumY = otherY[from]
    for (let k = from + 1; k < to; k++) {
      sumX += otherX[k]
      sumY += otherY[k]
    }
    const ex = bodyX[i] - share[i] * sumX
    const ey = bodyY[i] - share[i] * sumY
    missX[i] = ex
    missY[i] = ey
    sx += ex
    sy += ey
    turned += x[i] * ey - y[i] * ex
  }
  return { shiftX: sx / holes, shiftY: sy / holes, turn: spread > 0 ? turned / (holes * spread) : 0 }
}

/** Sums over the misses of a body's holes. */
interface Sums {
  shiftX: number
  shiftY: number
  turned: number
}

/** The same of a body whose holes stand in lists of alike ones, to the last bit where the lists are in the holes' order. */
export function leastSquaresOf(lists: readonly Alike[], centres: Float64Array, places: Float64Array, spread: number): Placement {
  const sums: Sums = { shiftX: 0, shiftY: 0, turned: 0 }
  for (const list of lists) addMisses(list, centres, places, sums)
  const { shiftX, shiftY, turned } = sums
  const holes = places.length / 2
  return { shiftX: shiftX / holes, shiftY: shiftY / holes, turn: spread > 0 ? turned / (holes * spread) : 0 }
}

function addMisses({ first, count, own, others, step }: Alike, centres: Float64Array, places: Float64Array, sums: Sums): void {
  let { shiftX, shiftY, turned } = sums
  const share = 1 / others.length
  const one = others[0]
  const two = others.length > 1 ? others[1] : -1
  for (let i = 0, k = 0; i < count; i++, k += step) {
    let sumX = centres[one + k]
    let sumY = centres[one + k + 1]
    if (two >= 0) {
      sumX += centres[two + k]
      sumY += centres[two + k + 1]
    }
    for (let j = 2; j < others.length; j++) {
      sumX += centres[others[j] + k]
      sumY += centres[others[j] + k + 1]
    }
    const ex = centres[own + k] - share * sumX
    const ey = centres[own + k + 1] - share * sumY
    const p = 2 * (first + i)
    shiftX += ex
    shiftY += ey
    turned += places[p] * ey - places[p + 1] * ex
  }
  sums.shiftX = shiftX
  sums.shiftY = shiftY
  sums.turned = turned
}

/**
 * Of a body whose least squares these are. No placement brings the largest shortfall below this. At the least squares the misses
 * balance as forces do, so weighed by their own sizes they bound the largest: sum of squares over sum of sizes, less what the
 * discs reach (a common point is no farther than that from the body's centre and from the others' mean).
 */
export function boundBySquares(lists: readonly Alike[], centres: Float64Array, places: Float64Array, placed: Placement): number {
  const sums: Sizes = { squares: 0, sizes: 0, reached: 0 }
  for (const list of lists) addSizes(list, centres, places, placed, sums)
  const { squares, sizes, reached } = sums
  return sizes > 0 ? (squares - reached) / (2 * sizes) : -Infinity
}

interface Sizes {
  squares: number
  sizes: number
  /** of the sizes, each times how far its discs reach together */
  reached: number
}

function addSizes(list: Alike, centres: Float64Array, places: Float64Array, { shiftX, shiftY, turn }: Placement, sums: Sizes): void {
  const { first, count, own, others, step, reach } = list
  const share = 1 / others.length
  let squares = 0
  let sizes = 0
  for (let i = 0, k = 0; i < count; i++, k += step) {
    let sumX = 0
    let sumY = 0
    for (let j = 0; j < others.length; j++) {
      sumX += centres[others[j] + k]
      sumY += centres[others[j] + k + 1]
    }
    const p = 2 * (first + i)
    const ex = centres[own + k] - share * sumX - shiftX + turn * places[p + 1]
    const ey = centres[own + k + 1] - share * sumY - shiftY - turn * places[p]
    const square = ex * ex + ey * ey
    squares += square
    sizes += Math.sqrt(square)
  }
  sums.squares += squares
  sums.sizes += sizes
  sums.reached += 2 * reach * sizes
}
