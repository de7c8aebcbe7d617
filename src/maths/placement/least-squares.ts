/**
 * The placement that makes the squares of all misses least, as a crew centres a sheet: a hole's miss is from the mean of the
 * others' centres there. Closed form, because the rotation is small and the holes are given from their own centre.
 */
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

/**
 * Of a meeting whose least squares these are. No placement brings the largest shortfall below this. At the least squares the misses balance as forces do, so weighed by
 * their own sizes they bound the largest: sum of squares over sum of sizes, less what the discs reach (a common point is no
 * farther than that from the body's centre and from the others' mean).
 */
export function boundBySquares(m: Meeting, { shiftX, shiftY, turn }: Placement): number {
  const { holes, x, y, missX, missY, first, bodyR, otherR } = m
  let squares = 0
  let sizes = 0
  let reached = 0
  for (let i = 0; i < holes; i++) {
    const ex = missX[i] - shiftX + turn * y[i]
    const ey = missY[i] - shiftY - turn * x[i]
    const square = ex * ex + ey * ey
    const size = Math.sqrt(square)
    let reach = 0
    for (let k = first[i]; k < first[i + 1]; k++) reach += otherR[k]
    squares += square
    sizes += size
    reached += size * (bodyR[i] + reach / (first[i + 1] - first[i]))
  }
  return sizes > 0 ? (squares - reached) / (2 * sizes) : -Infinity
}
