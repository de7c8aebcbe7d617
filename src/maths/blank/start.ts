/**
 * Where the search for a blank begins: the mid line laid in the plane with its own geodesic curvature, and from each of its nodes
 * the cross line to both edges, laid off at its own angle, by its arc lengths and with its own geodesic curvature. For a
 * developable patch this is already the answer, but for the size of the steps.
 */
import { cross, dot, sub, type Vec3 } from '../vec.js'
import { type PatchMesh, wayBetween } from './mesh.js'

/** Node positions in the plane, x y a node; the mid line starts at the origin and its chord runs along +x. */
export function developed(mesh: PatchMesh): Float64Array {
  const { across, along } = mesh
  const at = (i: number, j: number): number => j * (across + 1) + i
  const plane = new Float64Array(2 * (across + 1) * (along + 1))
  const middle = across / 2
  let heading = 0
  for (let j = 0; j <= along; j++) {
    const node = at(middle, j)
    const [back, next] = [at(middle, j - 1), at(middle, j + 1)]
    // straight on until a node, where the line turns by what its two chords turn within the surface
    if (j > 0) step(plane, back, node, wayBetween(mesh.points, mesh.normals, back, node), heading)
    if (j > 0 && j < along) heading += wrapped(angleAt(mesh, node, back, next) - Math.PI)
    const [seen, at0] = j < along ? [next, heading] : [back, heading + Math.PI]
    for (const side of [-1, 1]) crossLine(mesh, plane, node, side, at0 + angleAt(mesh, node, seen, node + side))
  }
  return straightened(plane, at(middle, 0), at(middle, along))
}

/** From the mid line's node to the edge, starting with the heading given. */
function crossLine(mesh: PatchMesh, plane: Float64Array, middle: number, side: number, first: number): void {
  let heading = first
  for (let k = 1; k <= mesh.across / 2; k++) {
    const [from, to] = [middle + side * (k - 1), middle + side * k]
    if (k > 1) heading += wrapped(angleAt(mesh, from, from - side, to) - Math.PI)
    step(plane, from, to, wayBetween(mesh.points, mesh.normals, from, to), heading)
  }
}

function step(plane: Float64Array, from: number, to: number, long: number, heading: number): void {
  plane[2 * to] = plane[2 * from] + long * Math.cos(heading)
  plane[2 * to + 1] = plane[2 * from + 1] + long * Math.sin(heading)
}

/** Angle in the tangent plane at a node from the chord to `first` to the chord to `second`, counter-clockwise about the blank's normal. */
function angleAt(mesh: PatchMesh, node: number, first: number, second: number): number {
  const p = triple(mesh.points, node)
  const n = triple(mesh.normals, node)
  const [a, b] = [sub(triple(mesh.points, first), p), sub(triple(mesh.points, second), p)]
  const [an, bn] = [dot(a, n), dot(b, n)]
  // the products of the parts in the tangent plane; the normal is v cross u, and v to u is counter-clockwise in the blank
  return Math.atan2(dot(cross(a, b), n), dot(a, b) - an * bn)
}

const triple = (all: Float64Array, at: number): Vec3 => [all[3 * at], all[3 * at + 1], all[3 * at + 2]]
const wrapped = (angle: number): number => angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI))

/**
 * A start that is never folded, for a patch whose development folds over itself: the mid line straight, the cross lines straight and
 * square to it, all by their lengths.
 */
export function laidSquare(mesh: PatchMesh): Float64Array {
  const { across, along } = mesh
  const plane = new Float64Array(2 * (across + 1) * (along + 1))
  for (let j = 0; j <= along; j++) {
    const node = j * (across + 1) + across / 2
    if (j > 0) step(plane, node - across - 1, node, wayBetween(mesh.points, mesh.normals, node - across - 1, node), 0)
    for (const side of [-1, 1])
      for (let k = 1; k <= across / 2; k++) {
        const [from, to] = [node + side * (k - 1), node + side * k]
        step(plane, from, to, side * wayBetween(mesh.points, mesh.normals, from, to), Math.PI / 2)
      }
  }
  return plane
}

/** Moved and turned as one piece until node `origin` lies at 0, 0 and the chord to `end` along +x. */
function straightened(plane: Float64Array, origin: number, end: number): Float64Array {
  const [x0, y0] = [plane[2 * origin], plane[2 * origin + 1]]
  const [dx, dy] = [plane[2 * end] - x0, plane[2 * end + 1] - y0]
  const long = Math.sqrt(dx * dx + dy * dy)
  const [c, s] = [dx / long, dy / long]
  const moved = new Float64Array(plane.length)
  for (let k = 0; k < plane.length; k += 2) {
    const [x, y] = [plane[k] - x0, plane[k + 1] - y0]
    moved[k] = c * x + s * y
    moved[k + 1] = c * y - s * x
  }
  // what must be nought exactly: the search holds these three where they are
  moved[2 * end + 1] = 0
  return moved
}
