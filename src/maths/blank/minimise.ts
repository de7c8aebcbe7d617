/**
 * The search for the cheapest blank: Newton steps on the whole of it at once, each halved until the cost falls by a fair share of
 * what its slope promises. A step that turns a triangle over costs without end, so none is ever taken.
 */
import { type Banded, bandedOf, factorise, firstColumn, rowStart, solve } from './banded.js'
import { energyOf, slopesOf } from './energy.js'
import type { PatchMesh } from './mesh.js'

export interface Found {
  /** node positions, x y a node */
  readonly plane: Float64Array
  readonly energy: number
  readonly iterations: number
  /** the root of the sum of squares of the gradient, as a share of what the triangles pull one by one */
  readonly residual: number
  readonly converged: boolean
}

/** Found when the residual is no more than this: the nodes of a gore then lie within a nanometre of where a longer search would put them. */
export const TOLERANCE = 1e-6
/** A gore takes 10 to 15 steps; one that takes more than this is not going to be found. */
const MOST_STEPS = 60
const SMALLEST_SHARE = 1e-10
/** Share of the promised fall that a step must keep (Armijo's condition; the usual figure, from memory). */
const FAIR = 1e-4
/** How far the sum of some ten thousand costs may be off by rounding, as a share: near the end a step pays less than that. */
const ROUNDING = 1e-13
/**
 * Strain whose pull is the least a residual is measured against, a tenth of a millimetre in a metre: a developable patch has nothing
 * left to balance but what the size of its cells leaves.
 */
const NO_STRAIN = 1e-4

export function minimise(mesh: PatchMesh, start: Float64Array, penalty: number): Found {
  // the furthest neighbour of a node stands one row and one node back
  const matrix = bandedOf(start.length / 2, mesh.across + 2)
  const gradient = new Float64Array(start.length)
  const held = heldOf(mesh)
  const least = idlePull(mesh)
  let plane = start
  for (let iterations = 0; ; iterations++) {
    const { energy, pull } = slopesOf(mesh, plane, penalty, gradient, matrix)
    for (const at of held) gradient[at] = 0
    const residual = Math.sqrt(product(gradient, gradient)) / Math.max(pull, least)
    const found = { plane, energy, iterations, residual, converged: residual <= TOLERANCE }
    if (found.converged || iterations === MOST_STEPS) return found
    hold(matrix, held)
    // with every triangle's curvature upward and three coordinates held, only rounding can spoil the factor
    if (!factorise(matrix)) return found
    const way = gradient.map((g) => -g)
    solve(matrix, way)
    const next = stepAlong(mesh, plane, penalty, way, energy, product(gradient, way))
    if (next === null) return found
    plane = next
  }
}

/** The plane after the longest of the halved steps that pays; null where none does, which is as far as rounding lets it come. */
function stepAlong(
  mesh: PatchMesh,
  plane: Float64Array,
  penalty: number,
  way: Float64Array,
  energy: number,
  slope: number,
): Float64Array | null {
  const next = new Float64Array(plane.length)
  for (let share = 1; share > SMALLEST_SHARE; share /= 2) {
    for (let k = 0; k < next.length; k++) next[k] = plane[k] + share * way[k]
    if (energyOf(mesh, next, penalty) <= energy + FAIR * share * slope + ROUNDING * energy) return next
  }
  return null
}

/** The blank may lie anywhere in its plane: the mid line's first end is held, and its last one from going sideways. */
function heldOf(mesh: PatchMesh): readonly number[] {
  const [first, last] = [mesh.across / 2, mesh.along * (mesh.across + 1) + mesh.across / 2]
  return [2 * first, 2 * first + 1, 2 * last + 1]
}

/** Leaves the held coordinates a diagonal and nothing else. */
function hold(matrix: Banded, held: readonly number[]): void {
  const { size, width, rows } = matrix
  for (const at of held) {
    for (let c = firstColumn(matrix, at); c < at; c++) rows[rowStart(matrix, at) + c] = 0
    for (let r = at + 1; r < Math.min(at + width, size); r++) if (at >= firstColumn(matrix, r)) rows[rowStart(matrix, r) + at] = 0
  }
}

function idlePull(mesh: PatchMesh): number {
  let sum = 0
  for (let t = 0; t < mesh.areas.length; t++)
    for (let k = 0; k < 6; k++) sum += (2 * NO_STRAIN * mesh.areas[t] * mesh.shapes[6 * t + k]) ** 2
  return Math.sqrt(sum)
}

function product(a: Float64Array, b: Float64Array): number {
  let sum = 0
  for (let k = 0; k < a.length; k++) sum += a[k] * b[k]
  return sum
}
