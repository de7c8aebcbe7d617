/** Lengths along a smooth curve given by points on it: each chord as the arc of the circle through its neighbours. */
import { cross, length, sub, type Vec3 } from '../../maths/vec.js'

/** The same along a curve with corners at some of its points. */
export function runningBetween(points: readonly Vec3[], corners: readonly number[]): number[] {
  const run = [0]
  const stops = [...corners.filter((i) => i > 0 && i < points.length - 1), points.length - 1]
  let from = 0
  for (const to of stops) {
    const start = run[from]
    const piece = runningLengths(points.slice(from, to + 1))
    for (const length of piece.slice(1)) run.push(start + length)
    from = to
  }
  return run
}

/** Running length at each point, 0 at the first. Good to a millionth where points stand closer than a tenth of the radius. */
function runningLengths(points: readonly Vec3[]): number[] {
  const curvature = points.map((_, i) => bendAt(points, Math.min(Math.max(i, 1), points.length - 2)))
  const run = [0]
  for (let i = 1; i < points.length; i++) {
    const chord = length(sub(points[i], points[i - 1]))
    const turn = (chord * (curvature[i] + curvature[i - 1])) / 2
    run.push(run[i - 1] + chord * (1 + (turn * turn) / 24))
  }
  return run
}

function bendAt(points: readonly Vec3[], i: number): number {
  if (i < 1 || i > points.length - 2) return 0
  const [a, b, c] = [points[i - 1], points[i], points[i + 1]]
  const [ab, bc, ca] = [sub(b, a), sub(c, b), sub(a, c)]
  const product = length(ab) * length(bc) * length(ca)
  return product === 0 ? 0 : (2 * length(cross(ab, bc))) / product
}
