/** The half superellipse |x/a|^n + |y/b|^n = 1, x >= 0, as arcs, and how far from it the arcs stray. */
import type { Vertex } from './outline.js'
import { arcOf } from './outline.js'

/** The point in the direction psi of the unit square's plane: the usual parameter is singular where the curve crosses its axes. */
function pointAt(a: number, b: number, n: number, psi: number): readonly [number, number] {
  const [c, s] = [Math.max(0, Math.cos(psi)), Math.sin(psi)]
  const reach = (c ** n + Math.abs(s) ** n) ** (-1 / n)
  return [a * c * reach, b * s * reach]
}

/** Half the tangent of a quarter of the arc through three points: the bulge of the arc from the first to the last. */
function bulgeThrough(p: readonly [number, number], m: readonly [number, number], q: readonly [number, number]): number {
  const [ax, ay, bx, by] = [m[0] - p[0], m[1] - p[1], q[0] - m[0], q[1] - m[1]]
  // the angle turned at the middle point is half of the arc's, wherever on the arc it stands
  return Math.tan(Math.atan2(ax * by - ay * bx, ax * bx + ay * by) / 2)
}

/**
 * From (0, -b) round (a, 0) to (0, b), anticlockwise: `count` arcs a quarter, their ends on the curve. The last point, (0, b),
 * is given with bulge 0, for the caller to go on from. Throws where n < 1, whose corners no arc follows.
 */
export function superellipseHalf(a: number, b: number, n: number, count: number): Vertex[] {
  if (!(n >= 1)) throw new Error(`a superellipse of exponent ${n} has corners that no arc follows`)
  const at = (i: number): readonly [number, number] =>
    Math.abs(i) === count ? [0, Math.sign(i) * b] : pointAt(a, b, n, (Math.PI / 2) * (i / count))
  return Array.from({ length: 2 * count + 1 }, (_, k): Vertex => {
    const i = k - count
    const here = at(i)
    return [here[0], here[1], k === 2 * count ? 0 : bulgeThrough(here, at(i + 0.5), at(i + 1))]
  })
}

/** Farthest that points of the arcs lie from the curve, measured along the line from the centre. */
export function superellipseStray(a: number, b: number, n: number, half: readonly Vertex[]): number {
  let most = 0
  for (let i = 0; i + 1 < half.length; i++) {
    const [p, q] = [half[i], half[i + 1]]
    const arc = arcOf([p[0], p[1]], [q[0], q[1]], p[2])
    for (let k = 1; k < 8; k++) {
      const angle = arc.start + (arc.sweep * k) / 8
      const [x, y] = [arc.cx + arc.radius * Math.cos(angle), arc.cy + arc.radius * Math.sin(angle)]
      const reach = (Math.abs(x / a) ** n + Math.abs(y / b) ** n) ** (1 / n)
      most = Math.max(most, Math.abs(Math.hypot(x, y) * (1 - 1 / reach)))
    }
  }
  return most
}
