/** Whether a list is evenly longer or shorter than ours: the best similarity over the pairs, against the rigid fit. */
import type { Points } from './rigid.js'

export interface Stretch {
  readonly perMetre: number
  readonly rms: number
  readonly worst: number
}

/** Pairs list[i] -> ours[to[i]], list in metres. Null with fewer than four pairs: two always fit, three nearly do. */
export function stretchOf(hand: 1 | -1, list: Points, ours: Points, to: Int32Array): Stretch | null {
  const paired = Array.from(to.keys()).filter((i) => to[i] >= 0)
  if (paired.length < 4) return null
  const mean = (f: (i: number) => number): number => paired.reduce((sum, i) => sum + f(i), 0) / paired.length
  const ax = mean((i) => hand * list.x[i]),
    ay = mean((i) => list.y[i])
  const bx = mean((i) => ours.x[to[i]]),
    by = mean((i) => ours.y[to[i]])
  let dot = 0,
    cross = 0,
    own = 0
  for (const i of paired) {
    const px = hand * list.x[i] - ax,
      py = list.y[i] - ay
    const qx = ours.x[to[i]] - bx,
      qy = ours.y[to[i]] - by
    dot += px * qx + py * qy
    cross += px * qy - py * qx
    own += px * px + py * py
  }
  if (own === 0) return null
  const c = dot / own,
    s = cross / own
  const left = paired.map((i) => {
    const px = hand * list.x[i] - ax,
      py = list.y[i] - ay
    return Math.hypot(c * px - s * py - (ours.x[to[i]] - bx), s * px + c * py - (ours.y[to[i]] - by))
  })
  return {
    perMetre: 1 / Math.hypot(c, s) - 1,
    rms: Math.sqrt(left.reduce((sum, d) => sum + d * d, 0) / left.length),
    worst: Math.max(...left),
  }
}
