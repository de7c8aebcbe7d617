/**
 * What a blank costs to form: over all triangles, area in the blank times s(e1) + s(e2), with e the principal engineering strains
 * of the map blank -> formed and s(e) = e^2 where the metal stretches, `penalty` e^2 where it must shrink.
 *
 * The unknowns are the blank's corners, so the strains are written by the singular values m of the other map, formed -> blank:
 * e = 1/m - 1, and blank area = formed area times m1 m2. That is linear in the unknowns, and the derivatives below are exact.
 * The cost grows without bound as a triangle flattens, which is what keeps triangles from turning over.
 */
import { type Banded, rowStart } from './banded.js'
import type { PatchMesh } from './mesh.js'

/** Cost a unit of formed area, first and second derivatives by the two singular values: W, W1, W2, W11, W22, W12. */
type Cost = Float64Array

function costOf(m1: number, m2: number, penalty: number, cost: Cost): void {
  const [e1, e2] = [1 / m1 - 1, 1 / m2 - 1]
  const [w1, w2] = [e1 >= 0 ? 1 : penalty, e2 >= 0 ? 1 : penalty]
  const [r1, r2] = [1 / (m1 * m1), 1 / (m2 * m2)]
  const sum = w1 * e1 * e1 + w2 * e2 * e2
  const [d1, d2] = [-2 * w1 * e1 * r1, -2 * w2 * e2 * r2]
  const dd1 = 2 * w1 * r1 * (r1 + (2 * e1) / m1)
  const dd2 = 2 * w2 * r2 * (r2 + (2 * e2) / m2)
  cost[0] = m1 * m2 * sum
  cost[1] = m2 * sum + m1 * m2 * d1
  cost[2] = m1 * sum + m1 * m2 * d2
  cost[3] = 2 * m2 * d1 + m1 * m2 * dd1
  cost[4] = 2 * m1 * d2 + m1 * m2 * dd2
  cost[5] = sum + m1 * d1 + m2 * d2
}

/** The map formed -> blank of triangle t, row by row: G = sum of corner x shape. */
export function mapOf(mesh: PatchMesh, plane: Float64Array, t: number, g: Float64Array): void {
  const { triangles, shapes } = mesh
  g[0] = g[1] = g[2] = g[3] = 0
  for (let k = 0; k < 3; k++) {
    const at = 2 * triangles[3 * t + k]
    const [bx, by] = [shapes[6 * t + 2 * k], shapes[6 * t + 2 * k + 1]]
    g[0] += plane[at] * bx
    g[1] += plane[at] * by
    g[2] += plane[at + 1] * bx
    g[3] += plane[at + 1] * by
  }
}

/** The cost of the whole blank; infinite where a triangle lies turned over or flat. */
export function energyOf(mesh: PatchMesh, plane: Float64Array, penalty: number): number {
  const [g, m] = [new Float64Array(4), new Float64Array(2)]
  let sum = 0
  for (let t = 0; t < mesh.areas.length; t++) {
    mapOf(mesh, plane, t, g)
    if (!(g[0] * g[3] - g[1] * g[2] > 0)) return Number.POSITIVE_INFINITY
    singularValues(g, m)
    const [e1, e2] = [1 / m[0] - 1, 1 / m[1] - 1]
    sum += mesh.areas[t] * m[0] * m[1] * ((e1 >= 0 ? 1 : penalty) * e1 * e1 + (e2 >= 0 ? 1 : penalty) * e2 * e2)
  }
  return sum
}

export interface Slopes {
  readonly energy: number
  /** root of the sum of squares of what each triangle alone pulls at its corners: what the gradient is measured against */
  readonly pull: number
}

/**
 * The energy with its gradient and its second derivatives, of these only those along which the cost of a triangle curves upward:
 * they are sure to show a way down, and where the metal only stretches there are hardly any others.
 */
export function slopesOf(mesh: PatchMesh, plane: Float64Array, penalty: number, gradient: Float64Array, hessian: Banded): Slopes {
  const { triangles, shapes, areas } = mesh
  const [g, m, frame, cost] = [new Float64Array(4), new Float64Array(2), new Float64Array(4), new Float64Array(6)]
  const [parts, local] = [new Float64Array(6), new Float64Array(5)]
  gradient.fill(0)
  hessian.rows.fill(0)
  let [energy, pull] = [0, 0]
  for (let t = 0; t < areas.length; t++) {
    mapOf(mesh, plane, t, g)
    singularValues(g, m)
    directions(g, frame)
    costOf(m[0], m[1], penalty, cost)
    const area = areas[t]
    energy += area * cost[0]
    const ux = frame[0]
    const uy = frame[1]
    const vx = frame[2]
    const vy = frame[3]
    for (let k = 0; k < 3; k++) {
      const at = 2 * triangles[3 * t + k]
      const [bx, by] = [shapes[6 * t + 2 * k], shapes[6 * t + 2 * k + 1]]
      const [s1, s2] = [vx * bx + vy * by, vx * by - vy * bx]
      parts[2 * k] = s1
      parts[2 * k + 1] = s2
      const [f1, f2] = [area * cost[1] * s1, area * cost[2] * s2]
      gradient[at] += ux * f1 - uy * f2
      gradient[at + 1] += uy * f1 + ux * f2
      pull += f1 * f1 + f2 * f2
    }
    curvatures(m, cost, local)
    addTriangle(hessian, triangles, t, area, parts, frame, local)
  }
  return { energy, pull: Math.sqrt(pull) }
}

export function singularValues(g: Float64Array, m: Float64Array): void {
  const [a, b, c, d] = [g[0] + g[3], g[2] - g[1], g[0] - g[3], g[1] + g[2]]
  const [mean, half] = [Math.sqrt(a * a + b * b) / 2, Math.sqrt(c * c + d * d) / 2]
  m[0] = mean + half
  m[1] = mean - half
}

/** First principal direction in the blank (x, y) and on the formed triangle (x, y); each second one stands square to the left of it. */
export function directions(g: Float64Array, frame: Float64Array): void {
  const together = Math.atan2(g[2] - g[1], g[0] + g[3])
  const apart = Math.atan2(g[1] + g[2], g[0] - g[3])
  const [blank, formed] = [(together + apart) / 2, (apart - together) / 2]
  frame[0] = Math.cos(blank)
  frame[1] = Math.sin(blank)
  frame[2] = Math.cos(formed)
  frame[3] = Math.sin(formed)
}

/**
 * Second derivatives of an isotropic cost in its own frame: three of pure stretch (11, 22, 12), and of the shears, whose own
 * curvatures are the quotients for the twist and the flip (half their sum, half their difference).
 */
function curvatures(m: Float64Array, cost: Cost, local: Float64Array): void {
  const w1 = cost[1]
  const w2 = cost[2]
  const w11 = cost[3]
  const w22 = cost[4]
  const w12 = cost[5]
  const apart = m[0] - m[1]
  const twist = Math.max((w1 + w2) / (m[0] + m[1]), 0)
  // as the two meet, the quotient becomes a derivative
  const quotient = apart > 1e-9 ? (w1 - w2) / apart : (w11 + w22) / 2 - w12
  local[0] = w11
  local[1] = w22
  local[2] = w12
  upward(local)
  const flip = Math.max(quotient, 0)
  local[3] = (flip + twist) / 2
  local[4] = (flip - twist) / 2
}

/** A symmetric 2 x 2 matrix (11, 22, 12) without its negative part. */
function upward(a: Float64Array): void {
  const [mean, half] = [(a[0] + a[1]) / 2, Math.sqrt(((a[0] - a[1]) / 2) ** 2 + a[2] * a[2])]
  const [high, low] = [mean + half, mean - half]
  if (low >= 0) return
  const keep = Math.max(high, 0)
  // keep times the square of the unit vector of the higher value
  const share = half > 0 ? (a[0] - a[1]) / (4 * half) : 0
  const side = half > 0 ? a[2] / (2 * half) : 0
  a[0] = keep * (0.5 + share)
  a[1] = keep * (0.5 - share)
  a[2] = keep * side
}

function addTriangle(
  hessian: Banded,
  triangles: Int32Array,
  t: number,
  area: number,
  parts: Float64Array,
  frame: Float64Array,
  local: Float64Array,
): void {
  const { rows, width } = hessian
  // one by one, not taken apart as lists: this is the inner loop, and a typed array is walked by an iterator
  const ux = frame[0]
  const uy = frame[1]
  const w11 = local[0]
  const w22 = local[1]
  const w12 = local[2]
  const shear = local[3]
  const cross = local[4]
  for (let k = 0; k < 3; k++) {
    const row = 2 * triangles[3 * t + k]
    const [k1, k2] = [area * parts[2 * k], area * parts[2 * k + 1]]
    for (let l = 0; l < 3; l++) {
      const column = 2 * triangles[3 * t + l]
      if (column > row) continue
      const [l1, l2] = [parts[2 * l], parts[2 * l + 1]]
      const [h11, h22] = [w11 * k1 * l1 + shear * k2 * l2, w22 * k2 * l2 + shear * k1 * l1]
      const [h12, h21] = [w12 * k1 * l2 + cross * k2 * l1, w12 * k2 * l1 + cross * k1 * l2]
      // turned from the principal frame into x and y
      const [xa, xb] = [ux * h11 - uy * h21, ux * h12 - uy * h22]
      const [ya, yb] = [uy * h11 + ux * h21, uy * h12 + ux * h22]
      const at = rowStart(hessian, row) + column
      rows[at] += ux * xa - uy * xb
      rows[at + 1] += uy * xa + ux * xb
      const below = at + width
      rows[below] += ux * ya - uy * yb
      rows[below + 1] += uy * ya + ux * yb
    }
  }
}
