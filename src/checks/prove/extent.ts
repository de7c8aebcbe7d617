/** Ours that a list ought to have: those inside the stretch of pattern the list covers. */
import type { Points, Rigid } from './rigid.js'
import { moveX, moveY } from './rigid.js'

/** Convex hull of the placed list, anticlockwise (Andrew's monotone chain). */
function hullOf(points: readonly (readonly [number, number])[]): readonly (readonly [number, number])[] {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1])
  const half = (walk: readonly (readonly [number, number])[]): (readonly [number, number])[] => {
    const out: (readonly [number, number])[] = []
    for (const p of walk) {
      while (out.length > 1 && cross(out[out.length - 2], out[out.length - 1], p) <= 0) out.pop()
      out.push(p)
    }
    return out.slice(0, -1)
  }
  return sorted.length < 3 ? sorted : [...half(sorted), ...half(sorted.reverse())]
}

function cross(o: readonly [number, number], a: readonly [number, number], b: readonly [number, number]): number {
  return (a[0] - o[0]) * (b[1] - o[1]) - (a[1] - o[1]) * (b[0] - o[0])
}

/** Indices of our holes within `margin` m of the convex hull of the placed list. */
export function holesInExtent(r: Rigid, list: Points, ours: Points, margin: number): readonly number[] {
  const placed = Array.from(list.x, (x, i) => [moveX(r, x, list.y[i]), moveY(r, x, list.y[i])] as const)
  const hull = hullOf(placed)
  const inside: number[] = []
  for (let j = 0; j < ours.x.length; j++) {
    const p = [ours.x[j], ours.y[j]] as const
    if (hull.length < 3 ? nearSegment(hull[0], hull[hull.length - 1], p, margin) : insideHull(hull, p, margin)) inside.push(j)
  }
  return inside
}

function insideHull(hull: readonly (readonly [number, number])[], p: readonly [number, number], margin: number): boolean {
  return hull.every((a, i) => {
    const b = hull[(i + 1) % hull.length]
    return cross(a, b, p) >= -margin * Math.hypot(b[0] - a[0], b[1] - a[1])
  })
}

function nearSegment(a: readonly [number, number], b: readonly [number, number], p: readonly [number, number], margin: number): boolean {
  const dx = b[0] - a[0],
    dy = b[1] - a[1]
  const size = dx * dx + dy * dy
  const t = size === 0 ? 0 : Math.max(0, Math.min(1, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / size))
  return Math.hypot(p[0] - a[0] - t * dx, p[1] - a[1] - t * dy) <= margin
}
