/**
 * The contour of a wrapped end's mid rib: where the plane of its web cuts the sheet, some depth in. Each ruling meets the plane once
 * and exactly, so the contour is walked by rulings; between them it is the arc that turns as the normal does.
 */
import { add, dot, scale, sub } from '../../maths/vec.js'
import { type ContourPoint, contourPoint, type Walked, walkedThrough } from './rib-contour.js'
import type { GoreSheet } from './wrapped-strip.js'

export interface WrappedWeb {
  readonly sheet: GoreSheet
  /** azimuth of the plane of the rivets, on the sheet's own hand */
  readonly phi: number
  /** of the web's plane beside it, toward greater azimuths, m */
  readonly beside: number
  /** of the face inside the sheet's outer face, m */
  readonly depth: number
}

/** From the cap's row to the toe. Rulings closer than `spacing` are passed over, and those at which a fold runs back. */
export function wrappedContour({ sheet, phi, beside, depth }: WrappedWeb, height: number, spacing: number): Walked {
  const { strip, out, thickness } = sheet
  const [c, s] = [Math.cos(phi), Math.sin(phi)]
  const points = strip.rulings.map(({ from, to }, k): ContourPoint => {
    const start = add(from, scale(out[k], thickness / 2 - depth))
    const way = sub(to, from)
    const across = dot([-s, c, 0], way)
    const v = (beside - dot([-s, c, 0], start)) / across
    return contourPoint(Number.NaN, add(start, scale(way, v)), out[k], [c, s], 0)
  })
  const last = points[points.length - 1]
  const kept = [points[0]]
  for (const p of points) {
    const before = kept[kept.length - 1]
    const isOn = ahead(before, p) >= spacing && (p === last || ahead(p, last) >= spacing / 4)
    if (isOn) kept.push(p)
  }
  if (kept[kept.length - 1] !== last) kept.push(last)
  return walkedThrough(kept, height)
}

/** How far a point of the contour lies ahead of another, down along it, m; below nought where it lies behind. */
function ahead(a: ContourPoint, b: ContourPoint): number {
  const [dr, dz] = [b.r - a.r, b.z - a.z]
  // walked downward the outward normal is on the left: the way on is the normal turned to the right
  return Math.hypot(dr, dz) * Math.sign(dr * a.out[1] - dz * a.out[0])
}
