/**
 * The placement that makes the squares of all misses least, as a crew centres a sheet: a hole's miss is from the mean of the
 * others' centres there. Closed form, because the rotation is small and the holes are given from their own centre.
 */
import type { Meeting, Placement } from './meeting.js'

export interface Centred extends Placement {
  /**
   * No placement brings every miss below this: the misses at the best squares balance, so they prove a bound on the
   * largest (sum of squares over sum of sizes, each less what its discs reach). At most 0 where it proves nothing.
   */
  readonly bound: number
}

export function leastSquares(m: Meeting): Centred {
  const { holes, x, y, spread } = m
  let [sx, sy, turned] = [0, 0, 0]
  for (let i = 0; i < holes; i++) {
    const ex = missX(m, i)
    const ey = missY(m, i)
    sx += ex
    sy += ey
    turned += x[i] * ey - y[i] * ex
  }
  const [shiftX, shiftY] = [sx / holes, sy / holes]
  const turn = spread > 0 ? turned / (holes * spread) : 0
  let [squares, sizes, reached] = [0, 0, 0]
  for (let i = 0; i < holes; i++) {
    const ex = missX(m, i) - shiftX + turn * y[i]
    const ey = missY(m, i) - shiftY - turn * x[i]
    const square = ex * ex + ey * ey
    const size = Math.sqrt(square)
    squares += square
    sizes += size
    reached += size * reachOf(m, i)
  }
  return { shiftX, shiftY, turn, bound: sizes > 0 ? (squares - reached) / (2 * sizes) : 0 }
}

const missX = (m: Meeting, i: number): number => m.bodyX[i] - mean(m.otherX, m.first[i], m.first[i + 1])
const missY = (m: Meeting, i: number): number => m.bodyY[i] - mean(m.otherY, m.first[i], m.first[i + 1])

/** A point of the body's disc and of every other is no farther than this from both the body's centre and the others' mean. */
const reachOf = (m: Meeting, i: number): number => m.bodyR[i] + mean(m.otherR, m.first[i], m.first[i + 1])

function mean(of: Float64Array, from: number, to: number): number {
  let sum = 0
  for (let k = from; k < to; k++) sum += of[k]
  return sum / (to - from)
}
