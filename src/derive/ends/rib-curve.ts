/**
 * The curve where a layer of an end section stands over a rib: the surface at one azimuth, some depth inside the outer
 * mould line along its normal. Walked by its own arc length from the crown; its points are exact, the lengths good to a
 * micrometre. A rib at depth 0 lies in its vertical plane; deeper layers leave it by what the normal leans.
 */
import { type Loft, loftAt } from '../../maths/loft.js'
import type { Vec3 } from '../../maths/vec.js'
import { layerPoint } from './surface.js'

export interface RibCurve {
  readonly phi: number
  readonly depth: number
  /** crown to toe, m */
  readonly length: number
  /** own length from the crown to section girth sigma */
  readonly lengthAt: (sigma: number) => number
  readonly sigmaAt: (length: number) => number
  readonly atSigma: (sigma: number) => Vec3
}

/** Steps of the length table over a whole section. */
const STEPS = 50
/** Three Gauss points and weights on 0..1. */
const AT = [0.1127016653792583, 0.5, 0.8872983346207417] as const
const WEIGHT = [0.2777777777777778, 0.4444444444444444, 0.2777777777777778] as const
/** Half step of a central difference along the curve, of the section's length. */
const H = 3e-6

export function ribCurve(loft: Loft, phi: number, depth: number): RibCurve {
  const h = H * loft.section.length
  const top = Math.abs(Math.cos(phi)) < 1e-12 ? 0 : loft.ridge
  const atSigma = (sigma: number): Vec3 => layerPoint(loft, phi, sigma, depth)
  const speed = (sigma: number): number => {
    if (depth === 0) {
      const p = loftAt(loft, phi, sigma)
      return Math.sqrt(p.rSigma * p.rSigma + p.zSigma * p.zSigma)
    }
    const [a, b] = [Math.max(sigma - h, top + h / 100), Math.min(sigma + h, loft.section.length)]
    const [p, q] = [atSigma(a), atSigma(b)]
    return Math.sqrt((q[0] - p[0]) ** 2 + (q[1] - p[1]) ** 2 + (q[2] - p[2]) ** 2) / (b - a)
  }
  const sigmas: number[] = [top]
  const lengths: number[] = [0]
  for (let i = 0; i + 1 < loft.breaks.length; i++) {
    const [from, to] = [loft.breaks[i], loft.breaks[i + 1]]
    if (to <= top) continue
    const parts = Math.max(1, Math.ceil(((to - from) * STEPS) / loft.section.length), Math.ceil(loft.turns[i] / 0.12))
    const step = (to - from) / parts
    for (let k = 0; k < parts; k++) {
      let run = 0
      for (let j = 0; j < 3; j++) run += WEIGHT[j] * step * speed(from + (k + AT[j]) * step)
      sigmas.push(k + 1 === parts ? to : from + (k + 1) * step)
      lengths.push(lengths[lengths.length - 1] + run)
    }
  }
  // slopes at the stops from both sides, since the curvature jumps at breaks
  const slopes = sigmas.map((s, i) => speed(i === 0 ? s + 10 * h : s))
  return {
    phi,
    depth,
    length: lengths[lengths.length - 1],
    lengthAt: (sigma) => hermite(sigmas, lengths, slopes, sigma, false),
    sigmaAt: (length) => hermite(lengths, sigmas, slopes, length, true),
    atSigma,
  }
}

/** Cubic through the table with the slopes given (or their reciprocals), clamped to its ends. */
function hermite(xs: readonly number[], ys: readonly number[], slopes: readonly number[], x: number, reciprocal: boolean): number {
  const last = xs.length - 1
  if (x <= xs[0]) return ys[0]
  if (x >= xs[last]) return ys[last]
  let [low, high] = [0, last]
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (xs[middle] <= x) low = middle
    else high = middle
  }
  const h = xs[high] - xs[low]
  const t = (x - xs[low]) / h
  const d = ys[high] - ys[low]
  // where a curve stands still (a shelf seen end on) its reciprocal slope is endless: the chord serves
  const slope = (i: number): number => (reciprocal ? (slopes[i] > 1e-9 ? h / slopes[i] : d) : h * slopes[i])
  const [m0, m1] = [slope(low), slope(high)]
  if (h === 0) return ys[high]
  return ys[low] + t * (m0 + t * (3 * d - 2 * m0 - m1 + t * (m0 + m1 - 2 * d)))
}
