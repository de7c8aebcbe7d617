/**
 * Torque of a rubber axle against the turn of its arm, through measured points and the origin, and where the arm comes to
 * rest under a load. A smooth rising curve that neither overshoots nor wriggles between points (monotone cubic of Fritsch and
 * Carlson, SIAM J. Numer. Anal. 17, 1980). rad, N m.
 */
export interface TorqueCurve {
  readonly torque: (turn: number) => number
  /** slope of the torque there */
  readonly rate: (turn: number) => number
  readonly most: number
}

interface Point {
  readonly turn: number
  readonly torque: number
}

/** Points ascending in both; the origin is put before them. Beyond the last the curve runs on straight. */
export function throughPoints(points: readonly Point[]): TorqueCurve {
  const x = [0, ...points.map((p) => p.turn)]
  const y = [0, ...points.map((p) => p.torque)]
  const n = x.length
  const slope = x.slice(1).map((each, i) => (y[i + 1] - y[i]) / (each - x[i]))
  const m = x.map((_, i) => {
    if (i === 0) return slope[0]
    if (i === n - 1) return slope[n - 2]
    // harmonic mean weighted by the spans: rising data gives a rising curve
    const [h0, h1] = [x[i] - x[i - 1], x[i + 1] - x[i]]
    const [w0, w1] = [2 * h1 + h0, h1 + 2 * h0]
    return (w0 + w1) / (w0 / slope[i - 1] + w1 / slope[i])
  })
  const span = (turn: number): number => {
    let i = 0
    while (i < n - 2 && turn > x[i + 1]) i++
    return i
  }
  const torque = (turn: number): number => {
    if (turn <= 0) return m[0] * turn
    if (turn >= x[n - 1]) return y[n - 1] + m[n - 1] * (turn - x[n - 1])
    const i = span(turn)
    const h = x[i + 1] - x[i]
    const t = (turn - x[i]) / h
    const [a, b] = [y[i], y[i + 1]]
    return a * (1 + 2 * t) * (1 - t) ** 2 + b * t * t * (3 - 2 * t) + h * t * (1 - t) * (m[i] * (1 - t) - m[i + 1] * t)
  }
  const rate = (turn: number): number => {
    if (turn <= 0) return m[0]
    if (turn >= x[n - 1]) return m[n - 1]
    const i = span(turn)
    const h = x[i + 1] - x[i]
    const t = (turn - x[i]) / h
    return (6 * t * (1 - t) * (y[i + 1] - y[i])) / h + m[i] * (1 - t) * (1 - 3 * t) + m[i + 1] * t * (3 * t - 2)
  }
  return { torque, rate, most: x[n - 1] }
}

/** Straight from the origin: a torque in proportion to the turn. */
export const straight = (K: number): TorqueCurve => ({ torque: (turn) => K * turn, rate: () => K, most: Infinity })

/** No axle of this kind lets its arm rise so far above level: 60 degrees. Common practice, no source. rad */
const FARTHEST = Math.PI / 3

/**
 * Angle of the arm below level where the torque holds the load: T(a0 - a) = F R cos a. Negative above level.
 * Null where the rubber would let the arm rise past 60 degrees. By halving: the torque rises, the load's lever has one hump.
 */
export function restAngle(curve: TorqueCurve, R: number, a0: number, F: number): number | null {
  const over = (a: number): number => curve.torque(a0 - a) - F * R * Math.cos(a)
  let [low, high] = [a0, a0]
  // the first angle, from where it stands without load upward, at which it holds
  const STEP = 0.01
  while (over(low) < 0) {
    high = low
    low -= STEP
    if (low < -FARTHEST) return null
  }
  for (let n = 0; n < 60; n++) {
    const middle = (low + high) / 2
    if (over(middle) < 0) high = middle
    else low = middle
  }
  return (low + high) / 2
}
