/**
 * Do a few discs share a point, and by how much? The shortfall of discs (centre c_j, radius r_j) is the least t for which
 * the discs grown by t all share a point p: t = min over p of max over j (|p - c_j| - r_j). They share a point when t <= 0.
 * With equal radii p is the centre of the smallest circle round the centres. Only + - × ÷ √.
 */

/** Discs in parallel arrays, the first `n` of each used; one such list is filled again and again. */
export interface Discs {
  n: number
  readonly x: Float64Array
  readonly y: Float64Array
  readonly r: Float64Array
  /** how the shortfall changes when the first disc moves, as left by `shortfall` */
  readonly pull: Float64Array
}

export const discs = (most: number): Discs => ({
  n: 0,
  x: new Float64Array(most),
  y: new Float64Array(most),
  r: new Float64Array(most),
  pull: new Float64Array(2),
})

/**
 * The least growth with which all discs share a point (negative: they do already, with that much to spare), and `pull`, its
 * gradient by the first disc's centre: zero when the others alone decide it. Three discs decide in the plane (Helly), so
 * every pair and every three is looked at; stacks are a handful.
 */
export function shortfall(d: Discs): number {
  const { n, x, y, r, pull } = d
  pull[0] = 0
  pull[1] = 0
  let [most, a, b] = [-r[0], 0, 0]
  for (let i = 0; i < n; i++) {
    // a disc grown by less than -r has nothing left of it
    if (-r[i] > most) {
      most = -r[i]
      a = i
      b = i
    }
    for (let j = i + 1; j < n; j++) {
      const t = (apart(d, i, j) - r[i] - r[j]) / 2
      if (t > most) {
        most = t
        a = i
        b = j
      }
    }
  }
  if (a === b) return most
  const span = apart(d, a, b)
  const [ux, uy] = [(x[b] - x[a]) / span, (y[b] - y[a]) / span]
  const [px, py] = [x[a] + ux * (r[a] + most), y[a] + uy * (r[a] + most)]
  if (a === 0) {
    pull[0] = -ux / 2
    pull[1] = -uy / 2
  }
  if (n === 2 || holdsAll(d, px, py, most)) return most
  for (let i = 0; i < n; i++) for (let j = i + 1; j < n; j++) for (let k = j + 1; k < n; k++) most = ofThree(d, i, j, k, most)
  return most
}

function apart({ x, y }: Discs, i: number, j: number): number {
  const [dx, dy] = [x[j] - x[i], y[j] - y[i]]
  return Math.sqrt(dx * dx + dy * dy)
}

function holdsAll({ n, x, y, r }: Discs, px: number, py: number, t: number): boolean {
  for (let k = 0; k < n; k++) {
    const [dx, dy, reach] = [px - x[k], py - y[k], r[k] + t]
    if (dx * dx + dy * dy > reach * reach * (1 + 1e-12)) return false
  }
  return true
}

/** The growth at which three discs touch in one point, where that is more than `most` and the point lies among them; else `most`. */
function ofThree(d: Discs, i: number, j: number, k: number, most: number): number {
  const { x, y, r, pull } = d
  const [x1, y1, x2, y2] = [x[j] - x[i], y[j] - y[i], x[k] - x[i], y[k] - y[i]]
  const det = 2 * (x1 * y2 - x2 * y1)
  if (det === 0) return most
  // p = A + B t from the two differences of the circles, then |A + B t| = r_i + t
  const h1 = x1 * x1 + y1 * y1 + r[i] * r[i] - r[j] * r[j]
  const h2 = x2 * x2 + y2 * y2 + r[i] * r[i] - r[k] * r[k]
  const [g1, g2] = [2 * (r[i] - r[j]), 2 * (r[i] - r[k])]
  const [ax, ay] = [(h1 * y2 - h2 * y1) / det, (x1 * h2 - x2 * h1) / det]
  const [bx, by] = [(g1 * y2 - g2 * y1) / det, (x1 * g2 - x2 * g1) / det]
  const q2 = bx * bx + by * by - 1
  const q1 = ax * bx + ay * by - r[i]
  const q0 = ax * ax + ay * ay - r[i] * r[i]
  const root = Math.sqrt(Math.max(0, q1 * q1 - q2 * q0))
  // two roots of q2 t² + 2 q1 t + q0, in the form that does not cancel; q2 = -1 where the radii are equal
  const far = q1 > 0 ? -q1 - root : -q1 + root
  const roots = q2 === 0 ? [-q0 / (2 * q1)] : far === 0 ? [0] : [far / q2, q0 / far]
  for (const t of roots.sort((s, u) => s - u)) {
    if (!(t > most)) continue
    const [px, py] = [ax + bx * t, ay + by * t]
    const turn = among(px, py, x1, y1, x2, y2)
    if (!turn) continue
    if (i === 0) {
      pull[0] = turn[0]
      pull[1] = turn[1]
    } else {
      pull[0] = 0
      pull[1] = 0
    }
    return t
  }
  return most
}

/** Gradient by the disc at the origin, where the directions from the three centres to p balance; null where they do not. */
function among(px: number, py: number, x1: number, y1: number, x2: number, y2: number): readonly [number, number] | null {
  const unit = (dx: number, dy: number): readonly [number, number] => {
    const size = Math.sqrt(dx * dx + dy * dy)
    return [dx / size, dy / size]
  }
  const [u0, u1, u2] = [unit(px, py), unit(px - x1, py - y1), unit(px - x2, py - y2)]
  const m0 = u1[0] * u2[1] - u1[1] * u2[0]
  const m1 = u2[0] * u0[1] - u2[1] * u0[0]
  const m2 = u0[0] * u1[1] - u0[1] * u1[0]
  const sum = m0 + m1 + m2
  const share = m0 / sum
  if (!(share >= 0 && m1 / sum >= 0 && m2 / sum >= 0)) return null
  return [-share * u0[0], -share * u0[1]]
}
