/** Which of our holes is at a place. A packed search tree over the pattern's holes. */
import Flatbush from 'flatbush'
import type { Points } from './rigid.js'

export interface HoleFinder {
  /** true when some hole lies in the square of half side `reach` about the place; quick, and never misses one in the circle */
  readonly any: (x: number, y: number, reach: number) => boolean
  /** index of the nearest hole within `reach`, or -1 */
  readonly nearest: (x: number, y: number, reach: number) => number
  /** every hole within `reach` */
  readonly within: (x: number, y: number, reach: number) => readonly number[]
}

export function holeFinder(points: Points): HoleFinder {
  const n = points.x.length
  if (n === 0) return { any: () => false, nearest: () => -1, within: () => [] }
  const tree = new Flatbush(n)
  for (let i = 0; i < n; i++) tree.add(points.x[i], points.y[i], points.x[i], points.y[i])
  tree.finish()
  const away = (i: number, x: number, y: number): number => Math.hypot(points.x[i] - x, points.y[i] - y)
  const within = (x: number, y: number, reach: number): number[] =>
    tree.search(x - reach, y - reach, x + reach, y + reach).filter((i) => away(i, x, y) <= reach)
  return {
    any: (x, y, reach) => tree.collides(x - reach, y - reach, x + reach, y + reach),
    within,
    nearest: (x, y, reach) => {
      let best = -1
      let least = reach
      for (const i of tree.search(x - reach, y - reach, x + reach, y + reach)) {
        const d = away(i, x, y)
        // the lower index wins a tie, so that the answer does not hang on the tree's order
        if (d < least || (d === least && (best < 0 || i < best))) {
          least = d
          best = i
        }
      }
      return best
    },
  }
}
