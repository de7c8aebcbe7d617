/**
 * Openings in an end: each a rounded rectangle in a plane of its own, the pane, which touches the skin at the opening's
 * centre on the centre line. Across is y; up is along the pane toward the crown. Width, height and corners are the pane's
 * own. A place off the pane is seen by dropping a perpendicular on it, which never makes a distance longer.
 */
import type { OpeningDefinition } from '../../definition/types.js'
import { type Loft, loftAt, normalOf, pointOf, sigmaAtZ } from '../../maths/loft.js'
import { dot, sub, type Vec3 } from '../../maths/vec.js'
import type { End } from '../end-names.js'
import type { Ground } from './ground.js'

export interface EndCut {
  readonly id: string
  readonly opening: OpeningDefinition
  /** whether the pane faces ahead (or astern) rather than up */
  readonly upright: boolean
  /** centre on the outer mould line and the pane's outward normal, local axes */
  readonly centre: Vec3
  readonly normal: Vec3
  /** girth of the centre from the crown down the centre line */
  readonly sigma: number
  /** half width, half height and corner radius, m */
  readonly a: number
  readonly b: number
  readonly corner: number
}

/** A point of the skin under the pane. */
export interface OnSkin {
  readonly phi: number
  readonly sigma: number
  readonly point: Vec3
  /** how far the skin has fallen away from the pane there, m */
  readonly fall: number
}

export function endCuts(ground: Ground, end: End, joint: number): EndCut[] {
  return ground.input.openings.filter((o) => o.surface === end).map((o) => cutOf(ground.loft, o, Math.abs(o.station - joint)))
}

function cutOf(loft: Loft, opening: OpeningDefinition, x: number): EndCut {
  if (opening.waterline === null) throw new Error(`opening ${opening.id} on an end has no waterline`)
  const sigma = nearestOnProfile(loft, x, opening.waterline)
  const p = loftAt(loft, 0, sigma)
  const normal = normalOf(p, 0)
  return {
    id: opening.id,
    opening,
    upright: normal[2] < Math.SQRT1_2,
    centre: pointOf(p, 0),
    normal,
    sigma,
    a: opening.width / 2,
    b: opening.height / 2,
    corner: opening.corner,
  }
}

/** Section girth of the centre line's point nearest to where the definition puts the opening: it need only be near the skin. */
function nearestOnProfile(loft: Loft, x: number, z: number): number {
  const far = (sigma: number): number => {
    const p = loftAt(loft, 0, sigma)
    return (p.r - x) ** 2 + (p.z - z) ** 2
  }
  const step = loft.section.length / 64
  let best = 1
  for (let i = 2; i < 64; i++) if (far(i * step) < far(best * step)) best = i
  let [low, high] = [(best - 1) * step, (best + 1) * step]
  // the nearest place is where the way to it stands square on the profile
  const along = (sigma: number): number => {
    const p = loftAt(loft, 0, sigma)
    return (p.r - x) * p.rSigma + (p.z - z) * p.zSigma
  }
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2
    if (along(middle) < 0) low = middle
    else high = middle
  }
  return (low + high) / 2
}

/** Pane coordinates of a point, from the centre: across and up. */
export function seenOn(cut: EndCut, p: Vec3): readonly [number, number] {
  const d = sub(p, cut.centre)
  return [d[1], d[2] * cut.normal[0] - d[0] * cut.normal[2]]
}

/** How far inside the surface a point is: |y/Y|^n + |x/L|^n - 1, negative inside; above the crown or below the toe outside. */
function outside(loft: Loft, p: Vec3): number {
  const sigma = sigmaAtZ(loft.section, p[2])
  if (sigma === null || sigma === 0 || p[0] < 0) return 1
  const r = loftAt(loft, Math.atan2(p[1], p[0]), sigma).r
  return Math.hypot(p[0], p[1]) / r - 1
}

/** The skin under a place of the pane, or null where there is none near. */
export function skinUnder(loft: Loft, cut: EndCut, a: number, b: number): OnSkin | null {
  const { centre: c, normal: n } = cut
  const at = (t: number): Vec3 => [c[0] - b * n[2] - t * n[0], a, c[2] + b * n[0] - t * n[2]]
  const deepest = loft.section.length / 6
  const step = deepest / 16
  let t0 = -deepest * 1e-9
  let f0 = outside(loft, at(t0))
  let t1 = t0
  let f1 = f0
  while (f1 > 0 && t1 < deepest) {
    ;[t0, f0] = [t1, f1]
    t1 += step
    f1 = outside(loft, at(t1))
  }
  if (f1 > 0) return null
  // false position, with the stale end's weight halved so that both ends close in
  for (let i = 0, side = 0; i < 60 && t1 - t0 > deepest * 1e-12 && f0 > 0; i++) {
    const t = (t0 * f1 - t1 * f0) / (f1 - f0)
    const f = outside(loft, at(t))
    if (Math.abs(f) < 1e-13) {
      t1 = t
      break
    }
    if (f < 0) {
      ;[t1, f1] = [t, f]
      if (side === 1) f0 /= 2
      side = 1
    } else {
      ;[t0, f0] = [t, f]
      if (side === -1) f1 /= 2
      side = -1
    }
  }
  const point = at(t1)
  const sigma = sigmaAtZ(loft.section, point[2])
  return sigma === null ? null : { phi: Math.atan2(point[1], point[0]), sigma, point, fall: t1 }
}

/** Distance from the cut's edge on the pane, positive outside, m. What lies far behind the pane is another side of the coach. */
export function clearance(cut: EndCut, p: Vec3): number {
  if (dot(sub(p, cut.centre), cut.normal) < -2 * (cut.a + cut.b)) return Number.POSITIVE_INFINITY
  const [u, v] = seenOn(cut, p)
  const [dx, dy] = [Math.abs(u) - (cut.a - cut.corner), Math.abs(v) - (cut.b - cut.corner)]
  return Math.hypot(Math.max(dx, 0), Math.max(dy, 0)) + Math.min(Math.max(dx, dy), 0) - cut.corner
}
