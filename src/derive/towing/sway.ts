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

export interface TowCar {
  readonly mass: number
  readonly yawInertia: number
  /** centre of mass to front axle, to rear axle, and to the ball, the last two measured aft */
  readonly front: number
  readonly rear: number
  readonly ball: number
  readonly frontStiffness: number
  readonly rearStiffness: number
}

export interface Towed {
  readonly mass: number
  /** about the trailer's own centre of mass */
  readonly yawInertia: number
  /** ball to centre of mass */
  readonly centre: number
  /** ball to each axle, and its cornering stiffness */
  readonly axles: readonly { readonly at: number; readonly stiffness: number }[]
}

export interface Rig {
  readonly car: TowCar
  readonly trailer: Towed
  readonly hitchDamping: number
}

/** The parts of the equations of motion that do not change with speed. */
interface Parts {
  readonly M: readonly number[]
  /** damping of the tyres at 1 m/s: symmetric, so six figures 11 12 13 22 23 33 */
  readonly D: readonly number[]
  /** pull of the tyres for an angle phi between car and trailer, on each freedom */
  readonly K: readonly number[]
  readonly ch: number
}

function partsOf({ car, trailer, hitchDamping }: Rig): Parts {
  const { centre: d, mass: m2, yawInertia: J2 } = trailer
  const e = car.ball
  const t2 = -(e + d)
  const M = [car.mass + m2, m2 * t2, m2 * d, car.yawInertia + m2 * t2 * t2 + J2, m2 * t2 * d - J2, m2 * d * d + J2]
  const D = [0, 0, 0, 0, 0, 0]
  const K = [0, 0, 0]
  const tyres = (C: number, q2: number, q3: number): void => {
    D[0] += C
    D[1] += C * q2
    D[2] += C * q3
    D[3] += C * q2 * q2
    D[4] += C * q2 * q3
    D[5] += C * q3 * q3
  }
  tyres(car.frontStiffness, car.front, 0)
  tyres(car.rearStiffness, -car.rear, 0)
  for (const { at: l, stiffness: C } of trailer.axles) {
    tyres(C, -(e + l), l)
    K[0] += C
    K[1] -= C * (e + l)
    K[2] += C * l
  }
  return { M, D, K, ch: hitchDamping }
}

/** Characteristic polynomial at a speed, the constant first. Five coefficients. */
function polynomialAt({ M, D, K, ch }: Parts, V: number): readonly number[] {
  const [m11, m12, m13, m22, m23, m33] = M
  const w = 1 / V
  const [d11, d12, d13, d22, d23, d33] = [D[0] * w, D[1] * w, D[2] * w, D[3] * w, D[4] * w, D[5] * w]
  // columns v: m s + d; r: m s + (d + V m1); phi: m s2 + d s + k
  const r1 = d12 + V * m11
  const r2 = d22 + V * m12
  const r3 = d23 + V * m13
  const f33 = d33 + ch
  // minors of the first two columns, each a quadratic in s, for the rows (2,3), (1,3), (1,2)
  const A = [d12 * r3 - d13 * r2, m12 * r3 + d12 * m23 - m13 * r2 - d13 * m22, m12 * m23 - m13 * m22]
  const B = [d11 * r3 - d13 * r1, m11 * r3 + d11 * m23 - m13 * r1 - d13 * m12, m11 * m23 - m13 * m12]
  const C = [d11 * r2 - d12 * r1, m11 * r2 + d11 * m22 - m12 * r1 - d12 * m12, m11 * m22 - m12 * m12]
  const term = (k: number, d: number, m: number, q: readonly number[], i: number): number =>
    (q[i] ?? 0) * k + (i >= 1 ? (q[i - 1] ?? 0) * d : 0) + (i >= 2 ? (q[i - 2] ?? 0) * m : 0)
  return [0, 1, 2, 3, 4].map((i) => term(K[0], d13, m13, A, i) - term(K[1], d23, m23, B, i) + term(K[2], f33, m33, C, i))
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
  return modesAt(partsOf(rig), V)
}

/** The same at many speeds, for a curve. */
export function swaySweep(rig: Rig, speeds: readonly number[]): readonly SwayModes[] {
  const parts = partsOf(rig)
  return speeds.map((V) => modesAt(parts, V))
}

function modesAt(parts: Parts, V: number): SwayModes {
  const roots = polynomialRoots(polynomialAt(parts, V))
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

/** Speeds looked through for a crossing: the step in m/s. Crossings nearer each other than that are a pair that matters to nobody. */
const STEP = 0.5
const HALVINGS = 48

/**
 * The least speed up to `upTo` (m/s) at which a swing neither grows nor dies, null where every swing dies at every speed below.
 * By Hurwitz's determinant, which vanishes where two roots are opposite; they are a swing when the square of their frequency is
 * positive.
 */
export function zeroDampingSpeed(rig: Rig, upTo: number): number | null {
  const parts = partsOf(rig)
  return firstCrossing(upTo, (V) => {
    const [a0, a1, a2, a3, a4] = polynomialAt(parts, V)
    const swings = a1 / a3 > 0
    return swings ? (a3 * a2 * a1 - a4 * a1 * a1 - a3 * a3 * a0) * Math.sign(a4) : null
  })
}

/** The least speed up to `upTo` at which it begins to leave the straight without swinging; null where it does not. */
export function divergenceSpeed(rig: Rig, upTo: number): number | null {
  const parts = partsOf(rig)
  return firstCrossing(upTo, (V) => {
    const [a0, , , , a4] = polynomialAt(parts, V)
    return a0 * Math.sign(a4)
  })
}

/** Least V where the figure goes from positive to negative; null stands for neither. */
function firstCrossing(upTo: number, at: (V: number) => number | null): number | null {
  let before: { V: number; value: number } | null = null
  for (let V = STEP; V <= upTo; V += STEP) {
    const value = at(V)
    if (value === null) {
      before = null
      continue
    }
    if (before && before.value > 0 && value <= 0) return halved(before.V, V, at)
    before = { V, value }
  }
  return null
}

function halved(from: number, to: number, at: (V: number) => number | null): number {
  let [low, high] = [from, to]
  for (let n = 0; n < HALVINGS && high - low > 1e-12 * high; n++) {
    const middle = (low + high) / 2
    if ((at(middle) ?? 1) > 0) low = middle
    else high = middle
  }
  return (low + high) / 2
}
