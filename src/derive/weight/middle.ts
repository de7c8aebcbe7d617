/** Where the middle of several masses lies. */
import type { MassReach } from '../road-nouns.js'
import type { Point } from '../weight-nouns.js'

/** Centre of mass; the mean place where nothing weighs anything. */
export function middle(points: readonly MassReach[]): Point {
  let [w, x, y, z] = [0, 0, 0, 0]
  for (const p of points) {
    w += p.mass
    x += p.mass * p.x
    y += p.mass * p.y
    z += p.mass * p.z
  }
  if (w > 0) return [x / w, y / w, z / w]
  const n = Math.max(1, points.length)
  const mean = (pick: (p: MassReach) => number): number => points.reduce((sum, p) => sum + pick(p), 0) / n
  return [mean((p) => p.x), mean((p) => p.y), mean((p) => p.z)]
}
