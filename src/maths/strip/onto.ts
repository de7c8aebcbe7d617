/**
 * Places near a strip, dropped square onto it and laid flat with it; past its edges and its two ends the sheet goes straight on.
 * Between two rulings a place is laid out from both, each by its own plane, and shared by how far it stands from each: where the
 * sheet turns by the angle a from one to the next, that is true to a cube of a, a few hundredths of a millimetre at most.
 */
import { cross, dot, sub, type Vec3 } from '../vec.js'
import type { Flat } from './on-strip.js'
import type { DevelopableStrip } from './strip.js'
import type { FlatStrip } from './unroll.js'

export function ontoStrip({ rulings }: DevelopableStrip, flat: FlatStrip): (point: Vec3) => Flat {
  const last = rulings.length - 1
  // which way the sheet goes on from each ruling
  const ahead = rulings.map((r) => cross(r.direction, r.normal))
  const past = (k: number, point: Vec3): number => dot(sub(point, rulings[k].from), ahead[k])
  const laidFrom = (k: number, point: Vec3): Flat => {
    const [on, off] = [dot(sub(point, rulings[k].from), rulings[k].direction), past(k, point)]
    const [c, s] = [Math.cos(flat.heading[k]), Math.sin(flat.heading[k])]
    return [flat.px[k] + on * c + off * s, flat.py[k] + on * s - off * c]
  }
  return (point) => {
    let [low, high] = [0, last]
    if (past(low, point) <= 0) return laidFrom(low, point)
    if (past(high, point) >= 0) return laidFrom(high, point)
    while (high - low > 1) {
      const middle = (low + high) >> 1
      if (past(middle, point) >= 0) low = middle
      else high = middle
    }
    const [a, b] = [past(low, point), -past(high, point)]
    const share = a + b > 0 ? a / (a + b) : 0
    const [from, to] = [laidFrom(low, point), laidFrom(high, point)]
    return [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])]
  }
}
