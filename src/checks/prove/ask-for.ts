/**
 * When a list fits two ways, the one hole worth measuring: it is there if the first placement is right, and there is
 * nothing near it if another is. Of those that rule out the most placements, the one nearest to what was already measured.
 */

import type { Points, Rigid } from './rigid.js'
import { moveBack, moveX, moveY } from './rigid.js'
import type { Ours } from './search.js'

export interface Telling {
  /** our hole */
  readonly hole: number
  /** in the list's axes, m */
  readonly listed: readonly [number, number]
  /** from there to our nearest hole under the first rival, m; capped at LOOK */
  readonly apart: number
}

/** Farther than this from any hole of ours nobody would mistake one for the other, m. */
const LOOK = 0.05
/** Only so many rivals are weighed; the question asked need not be perfect, only good. */
const MOST_RIVALS = 60

/** Distance from where `rival` puts our hole to our nearest hole, at most LOOK. */
function apartUnder(best: Rigid, rival: Rigid, ours: Ours, hole: number): number {
  const [x, y] = moveBack(best, ours.points.x[hole], ours.points.y[hole])
  const px = moveX(rival, x, y),
    py = moveY(rival, x, y)
  const j = ours.finder.nearest(px, py, LOOK)
  return j < 0 ? LOOK : Math.hypot(px - ours.points.x[j], py - ours.points.y[j])
}

/** Rivals that no hole of ours can tell from the best are the same pattern turned or mirrored on itself. */
export function canBeTold(best: Rigid, rival: Rigid, ours: Ours, least: number): boolean {
  for (let h = 0; h < ours.points.x.length; h++) if (apartUnder(best, rival, ours, h) > least) return true
  return false
}

/** `least` is how far off a hole must be to be plainly elsewhere, m. Null when no hole tells. */
export function tellingHole(
  best: Rigid,
  rivals: readonly Rigid[],
  ours: Ours,
  list: Points,
  taken: ReadonlySet<number>,
  least: number,
): Telling | null {
  const weighed = rivals.slice(0, MOST_RIVALS)
  let chosen = -1,
    mostTold = 0,
    nearest = Infinity
  const centre = [list.x.reduce((a, b) => a + b, 0) / list.x.length, list.y.reduce((a, b) => a + b, 0) / list.y.length] as const
  for (let h = 0; h < ours.points.x.length; h++) {
    if (taken.has(h)) continue
    let told = 0
    for (const rival of weighed) if (apartUnder(best, rival, ours, h) > least) told++
    const [x, y] = moveBack(best, ours.points.x[h], ours.points.y[h])
    const away = Math.hypot(x - centre[0], y - centre[1])
    if (told > mostTold || (told === mostTold && told > 0 && away < nearest)) {
      chosen = h
      mostTold = told
      nearest = away
    }
  }
  if (chosen < 0) return null
  return {
    hole: chosen,
    listed: moveBack(best, ours.points.x[chosen], ours.points.y[chosen]),
    apart: Math.min(...weighed.map((r) => apartUnder(best, r, ours, chosen)).filter((d) => d > least)),
  }
}
