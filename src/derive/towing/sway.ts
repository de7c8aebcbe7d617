/**
 * Car and trailer as a linear single-track system: how a swing of the trailer dies away, or does not, at a speed.
 *
 * Three freedoms (the car's sideways speed v, its yaw rate r, the angle phi between car and trailer), tyres that answer in
 * proportion to their slip, a hitch that may be damped. Distances from the car's centre of mass are along it, from the hitch
 * along the trailer; m, kg, kg m2, N/rad a whole axle, N m s/rad, m/s.
 *
 * Does not cover: roll, a driver's hands, brakes, tyres near their limit, wind, play and friction in the coupling, a bent road.
 * Source: linear single-track models of car and trailer, set up by Lagrange's equations; tested against Newton's.
 */
import { polynomialRoots, type Root } from '../../maths/linear/polynomial-roots.js'
import type { Rig } from '../road-nouns.js'

/**
 * Coefficients of the characteristic polynomial in s, the constant first, each a polynomial in w = 1/V, the constant first.
 * The speed enters by the tyres' damping, which goes as w, and by the turning of the car's axes, whose V falls out.
 */
type Coefficients = readonly (readonly number[])[]

function coefficientsOf({ car, trailer, hitchDamping: h }: Rig): Coefficients {
  const { centre: d, mass: m2, yawInertia: J2 } = trailer
  const e = car.ball
  const t2 = -(e + d)
  // masses, and damping of the tyres at 1 m/s, on sideways motion, car's yaw and hitch angle: both symmetric
  const [m11, m12, m13] = [car.mass + m2, m2 * t2, m2 * d]
  const [m22, m23, m33] = [car.yawInertia + m2 * t2 * t2 + J2, m2 * t2 * d - J2, m2 * d * d + J2]
  let [d11, d12, d13, d22, d23, d33] = [0, 0, 0, 0, 0, 0]
  // pull of the tyres for an angle between car and trailer
  let [k1, k2, k3] = [0, 0, 0]
  const tyres = (C: number, q2: number, q3: number): void => {
    d11 += C
    d12 += C * q2
    d13 += C * q3
    d22 += C * q2 * q2
    d23 += C * q2 * q3
    d33 += C * q3 * q3
  }
  tyres(car.frontStiffness, car.front, 0)
  tyres(car.rearStiffness, -car.rear, 0)
  for (const { at: l, stiffness: C } of trailer.axles) {
    tyres(C, -(e + l), l)
    k1 += C
    k2 -= C * (e + l)
    k3 += C * l
  }
  // determinant of columns m s + d w (v), m s + d w + m1 V (r), m s^2 + (d w + h) s + k (phi), by the last column:
  // minors of the first two are [wide w^2 + flat, w s, s^2]
  const A = [d12 * d23 - d13 * d22, d12 * m13 - d13 * m12, m12 * d23 + d12 * m23 - m13 * d22 - d13 * m22, m12 * m23 - m13 * m22]
  const B = [d11 * d23 - d13 * d12, d11 * m13 - d13 * m11, m11 * d23 + d11 * m23 - m13 * d12 - d13 * m12, m11 * m23 - m13 * m12]
  const C = [d11 * d22 - d12 * d12, d11 * m12 - d12 * m11, m11 * d22 + d11 * m22 - 2 * m12 * d12, m11 * m22 - m12 * m12]
  const of = (a: number, i: number, b: number, c: number): number => a * A[i] - b * B[i] + c * C[i]
  return [
    [of(k1, 1, k2, k3), 0, of(k1, 0, k2, k3)],
    [h * C[1], of(k1, 2, k2, k3) + of(d13, 1, d23, d33), h * C[0], of(d13, 0, d23, d33)],
    [of(k1, 3, k2, k3) + of(m13, 1, m23, m33), h * C[2], of(d13, 2, d23, d33) + of(m13, 0, m23, m33)],
    [h * C[3], of(d13, 3, d23, d33) + of(m13, 2, m23, m33)],
    [of(m13, 3, m23, m33)],
  ]
}

const valueAt = (c: readonly number[], w: number): number => c.reduceRight((sum, each) => sum * w + each, 0)

function times(a: readonly number[], b: readonly number[]): number[] {
  const out = new Array<number>(a.length + b.length - 1).fill(0)
  for (let i = 0; i < a.length; i++) for (let j = 0; j < b.length; j++) out[i + j] += a[i] * b[j]
  return out
}

export interface SwayModes {
  readonly roots: readonly Root[]
  /** share of critical damping of the swing that dies away slowest; null where nothing swings */
  readonly damping: number | null
  /** of that swing, Hz; null where nothing swings */
  readonly frequency: number | null
  /** whether it leaves the straight without swinging: jack-knifing or spinning out */
  readonly diverges: boolean
}

/** At a speed in m/s, above zero. */
export function swayModes(rig: Rig, V: number): SwayModes {
  return modesAt(coefficientsOf(rig), V)
}

/** The same at many speeds, for a curve. */
export function swaySweep(rig: Rig, speeds: readonly number[]): readonly SwayModes[] {
  const coefficients = coefficientsOf(rig)
  return speeds.map((V) => modesAt(coefficients, V))
}

function modesAt(coefficients: Coefficients, V: number): SwayModes {
  const roots = polynomialRoots(coefficients.map((c) => valueAt(c, 1 / V)))
  let least: Root | null = null
  let damping = Infinity
  for (const root of roots) {
    if (root.im <= 0) continue
    const share = -root.re / Math.hypot(root.re, root.im)
    if (share < damping) [damping, least] = [share, root]
  }
  return {
    roots,
    damping: least && damping,
    frequency: least && Math.hypot(least.re, least.im) / (2 * Math.PI),
    diverges: roots.some((root) => root.im === 0 && root.re > 0),
  }
}

/**
 * The least speed up to `upTo` (m/s) at which a swing neither grows nor dies, null where every swing dies at every speed below.
 * There two roots are opposite, so Hurwitz's determinant vanishes; it is a polynomial in 1/V, and its roots are those speeds.
 * Two opposite roots are a swing when the square of their frequency is positive.
 */
export function zeroDampingSpeed(rig: Rig, upTo: number): number | null {
  const [a0, a1, a2, a3, a4] = coefficientsOf(rig)
  const first = times(times(a3, a2), a1)
  const second = times(times(a1, a1), a4)
  const third = times(times(a3, a3), a0)
  const whole = first.map((each, i) => each - (second[i] ?? 0) - (third[i] ?? 0))
  while (whole.length > 1 && whole[whole.length - 1] === 0) whole.pop()
  if (whole.length < 2) return null
  const speeds = polynomialRoots(whole)
    .filter(({ re, im }) => im === 0 && re >= 1 / upTo && valueAt(a1, re) / valueAt(a3, re) > 0)
    .map(({ re }) => 1 / re)
  return speeds.length > 0 ? Math.min(...speeds) : null
}

/** The speed up to `upTo` from which it leaves the straight without swinging; null where it does not. There a root is nothing. */
export function divergenceSpeed(rig: Rig, upTo: number): number | null {
  const [[flat, , wide]] = coefficientsOf(rig)
  // flat + wide / V^2 = 0
  const square = -wide / flat
  return square > 0 && Math.sqrt(square) <= upTo ? Math.sqrt(square) : null
}
