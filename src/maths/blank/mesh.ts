/**
 * A patch of surface as a mesh that knows lengths only: the nodes, and for each triangle the flat triangle whose sides are as long
 * as the ways over the surface between its corners. Chords would be too short by their sagitta, and a cylinder would then come
 * out small; with the ways over the surface a developable patch has a mesh that lies flat with no strain at all.
 * Lengths in the patch's own unit.
 */
import { cross, dot, length, scale, sub, type Vec3 } from '../vec.js'

/** A smooth four-sided piece of surface. It may narrow strongly toward v = 0 but never to a point. */
export interface Patch {
  /** u from 0, the first edge, over 0.5, the mid line, to 1, the second edge; v from 0 to 1 along */
  point(u: number, v: number): Vec3
  /** unit normal on the side of (direction of v) x (direction of u); given where the two run along one line, as on a smooth edge's corner */
  normal?(u: number, v: number): Vec3
}

/** How many cells lie across and along; across is even, so that the mid line is a line of nodes. */
export interface MeshSize {
  readonly across: number
  readonly along: number
}

export interface PatchMesh extends MeshSize {
  /** u of the lines of nodes along the patch; across it they stand evenly, at v = j / along */
  readonly stops: readonly number[]
  /** 3 numbers a node, node j (across + 1) + i at u = stops[i], v = j / along */
  readonly points: Float64Array
  /** unit normals, 3 numbers a node */
  readonly normals: Float64Array
  /** 3 nodes a triangle, counter-clockwise when v runs along +x of the blank and u along +y */
  readonly triangles: Int32Array
  /** area of each formed triangle */
  readonly areas: Float64Array
  /** what turns the blank's corner positions into the gradient of the map formed -> blank: 6 numbers a triangle, x y of each corner */
  readonly shapes: Float64Array
}

/**
 * How much closer the lines of nodes stand at the edges than on average (0: evenly, 1: no distance). Where shrink is dear, only a
 * band of about a twelfth of the half-width shrinks at each edge, and even steps would not see it: at 0.7 and 24 cells it gets three.
 */
const GATHER = 0.35

/** Step of the difference quotients for the normals, as a share of the patch: errors about 1e-9 rad. */
const STEP = 1e-5

export function meshOf(patch: Patch, size: MeshSize): PatchMesh {
  const { across, along } = checked(size)
  const stops = stopsOf(across)
  const count = (across + 1) * (along + 1)
  const [points, normals] = [new Float64Array(3 * count), new Float64Array(3 * count)]
  for (let j = 0, node = 0; j <= along; j++)
    for (let i = 0; i <= across; i++, node++) {
      points.set(patch.point(stops[i], j / along), 3 * node)
      normals.set(patch.normal?.(stops[i], j / along) ?? normalAt(patch, stops[i], j / along), 3 * node)
    }
  const triangles = trianglesOf(across, along)
  const number = triangles.length / 3
  const [areas, shapes] = [new Float64Array(number), new Float64Array(6 * number)]
  for (let t = 0; t < number; t++) layFlat(t, points, normals, triangles, areas, shapes)
  return { across, along, stops, points, normals, triangles, areas, shapes }
}

/** Symmetric about 1/2 to the last bit, so that a mirrored patch has the mirrored mesh. */
function stopsOf(across: number): readonly number[] {
  const half = Array.from({ length: across / 2 }, (_, i) => i / across - (GATHER * Math.sin((2 * Math.PI * i) / across)) / (2 * Math.PI))
  return [...half, 0.5, ...half.map((u) => 1 - u).reverse()]
}

function checked(size: MeshSize): MeshSize {
  const { across, along } = size
  if (!Number.isInteger(across) || !Number.isInteger(along) || across < 2 || along < 2 || across % 2 !== 0) {
    throw new Error(`a mesh of ${across} by ${along} cells: both are whole and at least 2, the first is even`)
  }
  return size
}

/** Unit normal by difference quotients that stay on the patch, second order at its edges too. */
function normalAt(patch: Patch, u: number, v: number): Vec3 {
  const along = (at: number, from: (to: number) => Vec3): Vec3 => {
    if (at >= STEP && at <= 1 - STEP) return sub(from(at + STEP), from(at - STEP))
    const h = at < STEP ? STEP : -STEP
    const [p, q, r] = [from(at), from(at + h), from(at + 2 * h)]
    return scale(sub(scale(sub(q, p), 4), sub(r, p)), Math.sign(h))
  }
  const n = cross(
    along(v, (to) => patch.point(u, to)),
    along(u, (to) => patch.point(to, v)),
  )
  const size = length(n)
  if (!(size > 0)) throw new Error(`the patch has no normal at u ${u}, v ${v}: it narrows to nothing or folds there`)
  return scale(n, 1 / size)
}

/** Cells are halved along one diagonal and the other in turn: one way throughout would make the blank stiffer to one side. */
function trianglesOf(across: number, along: number): Int32Array {
  const all = new Int32Array(6 * across * along)
  let at = 0
  for (let j = 0; j < along; j++)
    for (let i = 0; i < across; i++) {
      const a = j * (across + 1) + i
      const [b, c, d] = [a + 1, a + across + 1, a + across + 2]
      all.set((i + j) % 2 === 0 ? [a, c, d, a, d, b] : [a, c, b, c, d, b], at)
      at += 6
    }
  return all
}

/**
 * Length of the way over the surface between two nodes, from their chord and the angles at which it leaves and meets the surface.
 * Exact on a circle; elsewhere the next term is of the fourth order in the step (a cubic through both tangents).
 */
export function wayBetween(points: Float64Array, normals: Float64Array, from: number, to: number): number {
  const p: Vec3 = [points[3 * from], points[3 * from + 1], points[3 * from + 2]]
  const q: Vec3 = [points[3 * to], points[3 * to + 1], points[3 * to + 2]]
  const chord = sub(q, p)
  const long = length(chord)
  const a = -dot(chord, [normals[3 * from], normals[3 * from + 1], normals[3 * from + 2]]) / long
  const b = -dot(chord, [normals[3 * to], normals[3 * to + 1], normals[3 * to + 2]]) / long
  const [alpha, beta] = [Math.asin(a), Math.asin(b)]
  // on a circle beta = -alpha and q is alpha squared, the square of half the angle turned
  const q2 = (2 * alpha * alpha - alpha * beta + 2 * beta * beta) / 5
  return long * (1 + q2 / 6 + (7 * q2 * q2) / 360 + (31 * q2 ** 3) / 15120)
}

function layFlat(t: number, points: Float64Array, normals: Float64Array, triangles: Int32Array, areas: Float64Array, shapes: Float64Array) {
  const [a, b, c] = [triangles[3 * t], triangles[3 * t + 1], triangles[3 * t + 2]]
  const ab = wayBetween(points, normals, a, b)
  const bc = wayBetween(points, normals, b, c)
  const ca = wayBetween(points, normals, c, a)
  const x = (ab * ab + ca * ca - bc * bc) / (2 * ab)
  const y = Math.sqrt(ca * ca - x * x)
  if (!(y > 0)) throw new Error(`triangle ${t} of the patch has no area: sides ${ab}, ${bc}, ${ca}`)
  areas[t] = (ab * y) / 2
  // rows of the inverse of [[ab, x], [0, y]]: gradients of the linear functions that are 1 at one corner and 0 at the others
  const [bx, by, cx, cy] = [1 / ab, -x / (ab * y), 0, 1 / y]
  shapes.set([-bx - cx, -by - cy, bx, by, cx, cy], 6 * t)
}
