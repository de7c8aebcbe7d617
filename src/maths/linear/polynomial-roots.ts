/**
 * All roots of a real polynomial at once, by the simultaneous iteration of Ehrlich and Aberth: every root is improved by
 * Newton's step, corrected for the pull of the others. No start has to be guessed, no root has to be divided out.
 *
 * Good for the small degrees that dynamics asks for. Roots that fall together are found to about half the figures.
 */

export interface Root {
  readonly re: number
  readonly im: number
}

/** Steps allowed; simple roots of degree four take about ten. */
const STEPS = 200
/** A root is settled when its step is this share of its size: the next would be the cube of it. */
const SETTLED = 1e-13
/** Roots nearer nothing than this share of the largest are settled as if they were so large. */
const NOTHING = 1e-6
/** An imaginary part below this share of the largest root is what rounding left on a real one. */
const REAL = 1e-9

/**
 * Roots of c[0] + c[1] x + ... + c[n] x^n, by real part and then imaginary part, ascending; conjugates are exact mirrors.
 * The last coefficient must not be zero. Throws when it does not settle, with the polynomial.
 */
export function polynomialRoots(coefficients: readonly number[]): readonly Root[] {
  const n = coefficients.length - 1
  const lead = coefficients[n]
  if (n < 1 || !(Math.abs(lead) > 0) || !coefficients.every(Number.isFinite)) throw new Error(`no polynomial: ${coefficients}`)
  const c = coefficients.map((each) => each / lead)
  const re = new Float64Array(n)
  const im = new Float64Array(n)
  const least = (begin(c, re, im) * NOTHING) ** 2
  for (let step = 0; step < STEPS; step++) if (improve(c, re, im, least)) return Object.freeze(paired(re, im))
  if (residual(c, re, im) < 1e-9) return Object.freeze(paired(re, im))
  throw new Error(`the roots of ${coefficients} do not settle`)
}

/** On a circle about the mean of the roots, none on the real axis, so that conjugates part. Gives its radius. */
function begin(c: readonly number[], re: Float64Array, im: Float64Array): number {
  const n = re.length
  const middle = -c[n - 1] / n
  let radius = 0
  for (let k = 0; k < n; k++) radius = Math.max(radius, Math.abs(c[k]) ** (1 / (n - k)))
  for (let k = 0; k < n; k++) {
    const angle = (2 * Math.PI * k) / n + 0.4
    re[k] = middle + radius * Math.cos(angle)
    im[k] = radius * Math.sin(angle)
  }
  return radius
}

/** One step of every root; whether all of them have settled. */
function improve(c: readonly number[], re: Float64Array, im: Float64Array, least: number): boolean {
  const n = re.length
  let settled = true
  for (let k = 0; k < n; k++) {
    const x = re[k]
    const y = im[k]
    // p and its derivative by Horner's rule
    let pr = 1
    let pi = 0
    let dr = 0
    let di = 0
    for (let i = n - 1; i >= 0; i--) {
      const d = dr * x - di * y + pr
      di = dr * y + di * x + pi
      dr = d
      const p = pr * x - pi * y + c[i]
      pi = pr * y + pi * x
      pr = p
    }
    const p2 = pr * pr + pi * pi
    // on a root, as near as rounding goes
    if (p2 < Number.MIN_VALUE / Number.EPSILON) continue
    // 1 / (p'/p - sum of 1/(z - other))
    let sr = (dr * pr + di * pi) / p2
    let si = (di * pr - dr * pi) / p2
    for (let j = 0; j < n; j++) {
      const u = x - re[j]
      const v = y - im[j]
      const d2 = u * u + v * v
      if (d2 === 0) continue
      sr -= u / d2
      si += v / d2
    }
    const s2 = sr * sr + si * si
    if (s2 === 0) continue
    re[k] = x + -sr / s2
    im[k] = y + si / s2
    if (1 > SETTLED * SETTLED * s2 * Math.max(least, x * x + y * y)) settled = false
  }
  return settled
}

/** Largest of |p(z)| against the sum of its terms' sizes. */
function residual(c: readonly number[], re: Float64Array, im: Float64Array): number {
  let worst = 0
  for (let k = 0; k < re.length; k++) {
    let [pr, pi, size] = [1, 0, 1]
    const r = Math.hypot(re[k], im[k])
    for (let i = re.length - 1; i >= 0; i--) {
      ;[pr, pi] = [pr * re[k] - pi * im[k] + c[i], pr * im[k] + pi * re[k]]
      size = size * r + Math.abs(c[i])
    }
    worst = Math.max(worst, Math.hypot(pr, pi) / size)
  }
  return worst
}

/** Rounding taken off: real roots made real, the others put in mirrored pairs. */
function paired(re: Float64Array, im: Float64Array): Root[] {
  const n = re.length
  let largest = 0
  for (let k = 0; k < n; k++) largest = Math.max(largest, Math.hypot(re[k], im[k]))
  const out: Root[] = []
  const taken = new Array<boolean>(n).fill(false)
  for (let k = 0; k < n; k++) {
    if (taken[k]) continue
    taken[k] = true
    let mate = -1
    if (Math.abs(im[k]) > REAL * largest) {
      for (let j = 0; j < n; j++) {
        if (taken[j] || im[j] * im[k] >= 0) continue
        if (mate < 0 || Math.hypot(re[j] - re[k], im[j] + im[k]) < Math.hypot(re[mate] - re[k], im[mate] + im[k])) mate = j
      }
    }
    if (mate < 0) {
      out.push({ re: re[k], im: 0 })
      continue
    }
    taken[mate] = true
    const [x, y] = [(re[k] + re[mate]) / 2, Math.abs(im[k] - im[mate]) / 2]
    out.push({ re: x, im: -y }, { re: x, im: y })
  }
  return out.sort((a, b) => a.re - b.re || a.im - b.im)
}
