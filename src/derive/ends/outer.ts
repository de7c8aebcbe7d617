/**
 * The outer face of an end as an opening meets it: where its pane touches the skin, and the skin under each place of the pane.
 * A formed skin is the loft; a wrapped one gives its own (see wrapped-outer.ts). Local axes; m.
 */
import { glanceAt, type Loft, loftAt, normalOf, pointOf, shareOfRadius, sigmaAtZ } from '../../maths/loft.js'
import { rootBetween } from '../../maths/root.js'
import type { Vec3 } from '../../maths/vec.js'
import { meridianGirth } from './meridian.js'

/** A plane that touches the skin at its centre on the centre line: places on it are across (y) and up toward the crown. */
export interface Pane {
  readonly centre: Vec3
  readonly normal: Vec3
}

/** A point of the skin under the pane. */
export interface OnSkin {
  readonly phi: number
  readonly point: Vec3
  /** how far the skin has fallen away from the pane there, m */
  readonly fall: number
}

export interface OuterFace {
  /** the skin under a place of a pane, or null where there is none near */
  readonly under: (pane: Pane, across: number, up: number) => OnSkin | null
  /** girth from the crown down the vertical plane at its azimuth */
  readonly girth: (on: Pick<OnSkin, 'phi' | 'point'>) => number
  /** the centre line's place nearest to x outward at height z, which need only be near the skin */
  readonly onCentre: (x: number, z: number) => { readonly point: Vec3; readonly normal: Vec3; readonly girth: number }
}

export function loftedOuter(loft: Loft): OuterFace {
  const outside = (p: Vec3): number => outsideLoft(loft, p)
  return {
    under: (pane, across, up) => skinUnder(outside, loft.section.length / 6, pane, across, up),
    girth: ({ phi, point }) => {
      const sigma = sigmaAtZ(loft.section, point[2])
      if (sigma === null) throw new Error(`WL ${point[2]} m is off the end`)
      return meridianGirth(loft, phi, sigma)
    },
    onCentre: (x, z) => {
      const sigma = nearestOnProfile(loft, x, z)
      const p = loftAt(loft, 0, sigma)
      return { point: pointOf(p, 0), normal: normalOf(p, 0), girth: meridianGirth(loft, 0, sigma) }
    },
  }
}

/** Section girth of the centre line's point nearest to where the definition puts the opening: it need only be near the skin. */
function nearestOnProfile(loft: Loft, x: number, z: number): number {
  const far = (sigma: number): number => {
    const p = glanceAt(loft, 0, sigma)
    return (p.r - x) ** 2 + (p.z - z) ** 2
  }
  const step = loft.section.length / 64
  let best = 1
  for (let i = 2; i < 64; i++) if (far(i * step) < far(best * step)) best = i
  const [low, high] = [(best - 1) * step, (best + 1) * step]
  // the nearest place is where the way to it stands square on the profile
  const along = (sigma: number): number => {
    const p = loftAt(loft, 0, sigma)
    return (p.r - x) * p.rSigma + (p.z - z) * p.zSigma
  }
  const [above, below] = [along(low), along(high)]
  // where the nearest place is an end of the profile there is no such place beside it
  if (above >= 0 || below <= 0) return above >= 0 ? low : high
  return rootBetween(along, { x: low, f: above }, { x: high, f: below }, { x: step * 1e-13, f: 0 })
}

/** How far outside the loft a point is, as a share of its radius, negative inside; above the crown or below the toe outside. */
export function outsideLoft(loft: Loft, p: Vec3): number {
  const share = p[0] < 0 ? null : shareOfRadius(loft, p)
  return share === null ? NOWHERE : share - 1
}

/** What `outside` gives where there is no skin at that height. */
const NOWHERE = 1

/** How near the skin, as a share of the radius, the way in has met it. */
const MET = 1e-6

/** Where the way in from a place of the pane, square to it and no deeper than `deepest`, meets the skin; null where it does not. */
export function skinUnder(outside: (p: Vec3) => number, deepest: number, pane: Pane, across: number, up: number): OnSkin | null {
  const { centre: c, normal: n } = pane
  const at = (t: number): Vec3 => [c[0] - up * n[2] - t * n[0], across, c[2] + up * n[0] - t * n[2]]
  const step = deepest / 16
  let t0 = -deepest * 1e-9
  let f0 = outside(at(t0))
  let t1 = t0
  let f1 = f0
  while (f1 > 0 && t1 < deepest) {
    ;[t0, f0] = [t1, f1]
    t1 += step
    f1 = outside(at(t1))
  }
  if (f1 > 0) return null
  const isOn = f0 <= 0
  const t = isOn ? t1 : rootBetween((each) => outside(at(each)), { x: t0, f: f0 }, { x: t1, f: f1 }, { x: deepest * 1e-12, f: 1e-13 })
  const point = at(t)
  // above the crown and below the toe all is outside: where the way in comes out of there it has met no skin
  if (!isOn && Math.abs(outside(point)) > MET) return null
  return { phi: Math.atan2(point[1], point[0]), point, fall: t }
}
