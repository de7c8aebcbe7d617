/**
 * The curve where a layer of an end section stands over a rib: the surface at one azimuth, some depth inside the outer
 * mould line along its normal. Walked by its own arc length from the crown; its points are exact, the lengths good to
 * three tenths of a micrometre a metre, and on the mould line itself to three hundredths. A rib at depth 0 lies in its
 * vertical plane; deeper layers leave it by what the normal leans.
 */
import { lagrange, timesFive } from '../../maths/lagrange.js'
import { type Loft, pointInside } from '../../maths/loft.js'
import type { Vec3 } from '../../maths/vec.js'
import { halvesOf, meridianStretches, type Stretch } from './meridian.js'

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

/** Places in a step at which the speed is taken: its ends, where it may jump from step to step, and three between. */
const AT = [0, 0.1727, 0.5, 0.8273, 1] as const
/** How far from the crown a deep curve is first looked at, of the section's length: on a ridge the normal is not settled. */
const HAIR = 6e-6

/** A step of the curve: a stretch, its length, and that from the crown to it. */
interface Step extends Stretch {
  readonly before: number
  readonly length: number
}

export function ribCurve(loft: Loft, phi: number, depth: number): RibCurve {
  const atSigma = (sigma: number): Vec3 => pointInside(loft, phi, sigma, depth)
  // the mould line itself is a meridian, whose speed is known; a deeper layer is walked by its places
  if (depth === 0) return { phi, depth, atSigma, ...walkOver(meridianStretches(loft, phi)) }
  const top = Math.abs(Math.cos(phi)) < 1e-12 ? 0 : loft.ridge
  return { phi, depth, atSigma, ...walkedFrom(loft, top, speedsOf(loft, atSigma)) }
}

type Walk = Pick<RibCurve, 'length' | 'lengthAt' | 'sigmaAt'>

/** The same for any curve down an end whose places are known by section girth; lengths count from girth `top`. */
export function curveFrom(loft: Loft, top: number, atSigma: (sigma: number) => Vec3): Walk {
  return walkedFrom(loft, top, speedsOf(loft, atSigma))
}

function walkedFrom(loft: Loft, top: number, speeds: Speeds): Walk {
  const stretches: Stretch[] = []
  // beside a ridge the stretches are finer than its curves can be taken
  const first = top + 10 * HAIR * loft.section.length
  let from = top
  for (const { to } of halvesOf(loft)) {
    if (to <= first) continue
    const span = to - from
    speeds(from, span, stretches.length === 0)
    stretches.push({ from, span, run: RUN.map((row) => span * timesFive(row, SPEED)) })
    from = to
  }
  return walkOver(stretches)
}

function walkOver(stretches: readonly Stretch[]): Walk {
  const steps: Step[] = []
  let before = 0
  for (const { from, span, run } of stretches) {
    const length = run[0] + run[1] + run[2] + run[3] + run[4]
    steps.push({ from, span, run, before, length })
    before += length
  }
  return {
    length: before,
    lengthAt: (sigma) => lengthAt(steps, sigma),
    sigmaAt: (length) => sigmaAt(steps, length),
  }
}

/** The coefficients of the quartic through five values: the inverse of the places' powers. */
const QUARTIC: readonly (readonly number[])[] = lagrange(AT)
/** Turns five speeds into the coefficients of the running length. */
const RUN = QUARTIC.map((row, power) => row.map((v) => v / (power + 1)))
/** Turns five points into their quartic's slopes at the same places. */
const SLOPE = AT.map((x) =>
  AT.map((_, k) => QUARTIC.reduce((sum, row, power) => sum + (power === 0 ? 0 : power * row[k] * x ** (power - 1)), 0)),
)

/** Leaves the speeds along a curve, by section girth, at the five places of a step; the first step of all begins at the crown. */
type Speeds = (start: number, span: number, isFirst: boolean) => void

/** Speeds at the places of the step that was looked at last: a coach has hundreds of steps, and keeps no speeds. */
const SPEED = new Float64Array(5)

/** The points are known: a surface and its normal run on over a break, and a quartic's slope is as good as a step is short. */
function speedsOf(loft: Loft, atSigma: (sigma: number) => Vec3): Speeds {
  const hair = HAIR * loft.section.length
  const points: Vec3[] = []
  return (start, span, isFirst) => {
    const from = isFirst ? Math.min(hair, span / 10) : 0
    // a step begins where the last one ended
    if (points.length > 0) points[0] = points[4]
    for (let k = points.length > 0 ? 1 : 0; k < 5; k++) points[k] = atSigma(start + from + AT[k] * (span - from))
    for (let i = 0; i < 5; i++) {
      const row = SLOPE[i]
      let x = 0
      let y = 0
      let z = 0
      for (let k = 0; k < 5; k++) {
        x += row[k] * points[k][0]
        y += row[k] * points[k][1]
        z += row[k] * points[k][2]
      }
      SPEED[i] = Math.sqrt(x * x + y * y + z * z) / (span - from)
    }
  }
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
