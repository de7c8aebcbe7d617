/**
 * The placement whose worst hole is best: min over shift and small rotation of the largest shortfall of any hole. Each
 * shortfall is convex in the placement, so its tangent at any placement bounds it from below everywhere. Four such
 * tangents that balance fix a placement and a lower bound; the tangent of the worst hole there takes the place of one of
 * them, and the bound only rises (an exchange, as in Remez's algorithm; the dual simplex of a linear programme with a column
 * for every tangent). What comes out is proved from both sides. Only + - × ÷ √.
 */
import { shortfall } from './common-disc.js'
import { laid, type Meeting, type Placement, shortAt } from './meeting.js'

export interface Best extends Placement {
  /** largest shortfall at this placement; at most 0 where every hole takes its pin */
  readonly largest: number
  /** no placement does better than this */
  readonly bound: number
  readonly steps: number
}

const MOST_STEPS = 200

/** `near` is a placement to start from; `enough` ends the search as soon as the sign of the best is known. */
export function minimax(m: Meeting, near: Placement, enough: 'sign' | number = 'sign'): Best {
  const arm = Math.sqrt(m.spread)
  const t0 = largestAt(m, near.shiftX, near.shiftY, near.turn).largest
  const start = { ...near, largest: t0 }
  const basis = startingBasis(m, t0)
  let best: Omit<Best, 'bound' | 'steps'> = start
  let bound = -Infinity
  for (let step = 1; step <= MOST_STEPS; step++) {
    const at = basis.place()
    if (at === null) return { ...best, bound, steps: step }
    const [qx, qy, qa, t] = at
    bound = Math.max(bound, t)
    const [shiftX, shiftY, turn] = [near.shiftX + qx, near.shiftY + qy, near.turn + (arm > 0 ? qa / arm : 0)]
    const { largest, hole } = largestAt(m, shiftX, shiftY, turn)
    if (largest < best.largest) best = { shiftX, shiftY, turn, largest }
    const settled = enough === 'sign' ? best.largest <= 0 || bound > 0 : best.largest - bound <= enough
    if (settled) return { ...best, bound, steps: step }
    const tangent = tangentAt(m, hole, shiftX, shiftY, turn, arm)
    const entered = basis.enter(tangent[0], tangent[1], tangent[2], largest - tangent[0] * qx - tangent[1] * qy - tangent[2] * qa)
    if (!entered) return { ...best, bound, steps: step }
  }
  return { ...best, bound, steps: MOST_STEPS }
}

function largestAt(m: Meeting, shiftX: number, shiftY: number, turn: number): { readonly largest: number; readonly hole: number } {
  let [largest, hole] = [-Infinity, 0]
  for (let i = 0; i < m.holes; i++) {
    const t = shortAt(m, i, shiftX, shiftY, turn)
    if (t > largest) {
      largest = t
      hole = i
    }
  }
  return { largest, hole }
}

/** How the shortfall of a hole changes with the placement; the rotation is measured at the holes' root mean square arm. */
function tangentAt(m: Meeting, i: number, shiftX: number, shiftY: number, turn: number, arm: number): readonly [number, number, number] {
  const bx = m.bodyX[i] - shiftX + turn * m.y[i]
  const by = m.bodyY[i] - shiftY - turn * m.x[i]
  shortfall(laid(m, i, bx, by))
  const [gx, gy] = [m.work.pull[0], m.work.pull[1]]
  return [-gx, -gy, arm > 0 ? (gx * m.y[i] - gy * m.x[i]) / arm : 0]
}

interface Basis {
  /** shift x, shift y, rotation at the arm, and the bound, where the four tangents meet; null where they do not */
  place(): readonly [number, number, number, number] | null
  /** takes in t >= b + a·q in the place of one of the four; false where nothing can be exchanged any more */
  enter(a0: number, a1: number, a2: number, b: number): boolean
}

/**
 * Four planes that are nowhere above the largest shortfall inside a ball that holds every placement as good as the start:
 * such a placement moves no hole farther than its discs at that shortfall still touch, so the shift and the rotation at the
 * arm are no more than that either.
 */
function startingBasis(m: Meeting, t0: number): Basis {
  let [far, floor] = [0, -Infinity]
  for (let i = 0; i < m.holes; i++) {
    floor = Math.max(floor, -m.bodyR[i])
    for (let k = m.first[i]; k < m.first[i + 1]; k++) {
      far = Math.max(far, 2 * (2 * t0 + m.bodyR[i] + m.otherR[k]))
      floor = Math.max(floor, -m.otherR[k])
    }
  }
  const ball = Math.SQRT2 * far
  const slope = 1 / Math.sqrt(3)
  const corners = [
    [1, 1, 1],
    [1, -1, -1],
    [-1, 1, -1],
    [-1, -1, 1],
  ]
  const rows = corners.map(([x, y, z]) => Float64Array.of(slope * x, slope * y, slope * z, floor - ball))
  const share = Float64Array.of(0.25, 0.25, 0.25, 0.25)
  return {
    place: () => solve4(rows.map(([a, b, c, d]) => [-a, -b, -c, 1, d])),
    enter(a0, a1, a2, b) {
      const [r0, r1, r2, r3] = rows
      const mix = solve4([
        [r0[0], r1[0], r2[0], r3[0], a0],
        [r0[1], r1[1], r2[1], r3[1], a1],
        [r0[2], r1[2], r2[2], r3[2], a2],
        [1, 1, 1, 1, 1],
      ])
      if (mix === null) return false
      let [leaves, least] = [-1, Infinity]
      for (let k = 0; k < 4; k++) {
        const ratio = share[k] / mix[k]
        if (mix[k] > 1e-12 && ratio < least) {
          least = ratio
          leaves = k
        }
      }
      if (leaves < 0) return false
      for (let k = 0; k < 4; k++) share[k] -= least * mix[k]
      share[leaves] = least
      rows[leaves] = Float64Array.of(a0, a1, a2, b)
      return true
    },
  }
}

/** Four equations in four unknowns by elimination with row exchanges; null where they have no single answer. */
function solve4(a: number[][]): [number, number, number, number] | null {
  for (let c = 0; c < 4; c++) {
    let top = c
    for (let r = c + 1; r < 4; r++) if (Math.abs(a[r][c]) > Math.abs(a[top][c])) top = r
    if (!(Math.abs(a[top][c]) > 1e-13)) return null
    ;[a[c], a[top]] = [a[top], a[c]]
    for (let r = c + 1; r < 4; r++) {
      const f = a[r][c] / a[c][c]
      for (let k = c; k < 5; k++) a[r][k] -= f * a[c][k]
    }
  }
  const q: [number, number, number, number] = [0, 0, 0, 0]
  for (let r = 3; r >= 0; r--) {
    let sum = a[r][4]
    for (let k = r + 1; k < 4; k++) sum -= a[r][k] * q[k]
    q[r] = sum / a[r][r]
  }
  return q
}
