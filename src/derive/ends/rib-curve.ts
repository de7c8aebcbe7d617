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
/** Places in a step at which the speed is taken: its ends, where it may jump from step to step, and three between. */
const AT = [0, 0.1727, 0.5, 0.8273, 1] as const
/** Half step of a central difference along the curve, of the section's length. */
const H = 3e-6

/** A step of the curve: length from the crown, and the speed along it as a quartic of t in 0..1. */
interface Step {
  readonly from: number
  readonly span: number
  readonly before: number
  readonly length: number
  /** coefficients of the running length by t, t2 … t5 */
  readonly run: readonly number[]
}

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
  const steps: Step[] = []
  let before = 0
  for (let i = 0; i + 1 < loft.breaks.length; i++) {
    const [from, to] = [loft.breaks[i], loft.breaks[i + 1]]
    if (to <= top) continue
    const parts = Math.max(1, Math.ceil(((to - from) * STEPS) / loft.section.length), Math.ceil(loft.turns[i] / 0.12))
    const span = (to - from) / parts
    // at a break the curvature jumps, so the speed there is taken a hair inside
    const hair = Math.min(2 * h, span / 10)
    let last = speed(from + hair)
    for (let k = 0; k < parts; k++) {
      const start = from + k * span
      const end = k + 1 === parts ? to - hair : start + span
      const speeds = [last, speed(start + AT[1] * span), speed(start + AT[2] * span), speed(start + AT[3] * span), speed(end)]
      last = speeds[4]
      const run = QUARTIC.map((row, power) => (span * row.reduce((sum, v, j) => sum + v * speeds[j], 0)) / (power + 1))
      const length = run.reduce((sum, c) => sum + c, 0)
      steps.push({ from: start, span, before, length, run })
      before += length
    }
  }
  return {
    phi,
    depth,
    length: before,
    lengthAt: (sigma) => lengthAt(steps, sigma),
    sigmaAt: (length) => sigmaAt(steps, length),
    atSigma,
  }
}

/** Turns five speeds into the coefficients of the quartic through them: the inverse of the places' powers. */
const QUARTIC: readonly (readonly number[])[] = lagrange(AT)

function lagrange(at: readonly number[]): number[][] {
  const rows = at.map(() => new Array<number>(at.length).fill(0))
  at.forEach((x, j) => {
    // the polynomial that is 1 at x and 0 at the other places, multiplied out factor by factor
    let product = [1]
    for (const [k, other] of at.entries()) {
      if (k === j) continue
      const next = new Array<number>(product.length + 1).fill(0)
      product.forEach((c, power) => {
        next[power] -= (c * other) / (x - other)
        next[power + 1] += c / (x - other)
      })
      product = next
    }
    product.forEach((c, power) => {
      rows[power][j] = c
    })
  })
  return rows
}

const runAt = (s: Step, t: number): number => t * (s.run[0] + t * (s.run[1] + t * (s.run[2] + t * (s.run[3] + t * s.run[4]))))
const slopeAt = (s: Step, t: number): number => s.run[0] + t * (2 * s.run[1] + t * (3 * s.run[2] + t * (4 * s.run[3] + t * 5 * s.run[4])))

function stepOf(steps: readonly Step[], isPast: (s: Step) => boolean): Step {
  let [low, high] = [0, steps.length]
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (isPast(steps[middle])) low = middle
    else high = middle
  }
  return steps[low]
}

function lengthAt(steps: readonly Step[], sigma: number): number {
  const s = stepOf(steps, (each) => each.from <= sigma)
  return s.before + runAt(s, Math.min(1, Math.max(0, (sigma - s.from) / s.span)))
}

/** Newton from the chord, which the near-even speed brings home in a few steps. */
function sigmaAt(steps: readonly Step[], length: number): number {
  const s = stepOf(steps, (each) => each.before <= length)
  const want = length - s.before
  let t = s.length > 0 ? Math.min(1, Math.max(0, want / s.length)) : 0
  for (let k = 0; k < 8; k++) {
    const slope = slopeAt(s, t)
    // where a curve stands still (a shelf seen end on) any place of the step will do
    if (!(slope > 1e-12)) break
    const step = (runAt(s, t) - want) / slope
    t = Math.min(1, Math.max(0, t - step))
    if (Math.abs(step) < 1e-14) break
  }
  return s.from + t * s.span
}
