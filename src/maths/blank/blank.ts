/**
 * The flat blank of a doubly curved panel: the plane shape that can be formed to the surface at the least cost in strain, when
 * shrinking costs a hundred times what stretching does. Metal that is stretched thins; metal that must shrink buckles.
 *
 * The blank lies with the mid line's end v = 0 at the origin and its chord along +x; y runs toward the edge u = 1. It is seen from
 * the side toward which (direction of v) x (direction of u) points. Lengths in the patch's unit.
 *
 * It is pure geometry: no yield, no friction, no springback, no way of the tool. What it says of strain is the least that the
 * shape asks for, not what a given press will do.
 */
import { energyOf } from './energy.js'
import { inBlank } from './in-blank.js'
import { type MeshSize, meshOf, type Patch, type PatchMesh } from './mesh.js'
import { minimise } from './minimise.js'
import { developed, laidSquare } from './start.js'
import { type Strains, strainsOf } from './strains.js'

export interface Blank extends MeshSize, Strains {
  /** u of the lines of nodes, closer together at the edges */
  readonly stops: readonly number[]
  /** node positions, node j (across + 1) + i at u = stops[i], v = j / along */
  readonly x: readonly number[]
  readonly y: readonly number[]
  /** 3 nodes a triangle, counter-clockwise */
  readonly triangles: readonly number[]
  /** area times strain squared, with shrink weighted */
  readonly energy: number
  readonly iterations: number
  /** size of the gradient as a share of what the triangles pull one by one */
  readonly residual: number
  /** whether the residual came down to the tolerance, 1e-6; the caller must not use a blank that did not converge */
  readonly converged: boolean
}

export interface BlankOptions extends MeshSize {
  /** what shrinking costs against stretching, 1 or more */
  readonly shrinkPenalty?: number
}

const SHRINK_PENALTY = 100

/**
 * `from` is a blank of the same patch on another mesh, to begin the search near its end; without it the search begins at the
 * development of the mid line. Throws for a patch that folds or narrows to nothing, and for a mesh that is none.
 */
export function blankOf(patch: Patch, options: BlankOptions, from?: Blank): Blank {
  const { across, along, shrinkPenalty = SHRINK_PENALTY } = options
  if (!(shrinkPenalty >= 1)) throw new Error(`shrink is penalised ${shrinkPenalty} to 1: it takes 1 or more`)
  const mesh = meshOf(patch, { across, along })
  const { plane, energy, iterations, residual, converged } = minimise(mesh, startOf(mesh, from), shrinkPenalty)
  const [x, y]: [number[], number[]] = [[], []]
  for (let k = 0; k < plane.length; k += 2) {
    x.push(plane[k])
    y.push(plane[k + 1])
  }
  const { stops } = mesh
  const triangles = Array.from(mesh.triangles)
  return Object.freeze({ across, along, stops, x, y, triangles, ...strainsOf(mesh, plane), energy, iterations, residual, converged })
}

function startOf(mesh: PatchMesh, from: Blank | undefined): Float64Array {
  const whole = from === undefined ? developed(mesh) : placed(mesh, from)
  return Number.isFinite(energyOf(mesh, whole, 1)) ? whole : laidSquare(mesh)
}

function placed(mesh: PatchMesh, from: Blank): Float64Array {
  const { stops, along } = mesh
  return Float64Array.from(Array.from({ length: along + 1 }, (_, j) => stops.flatMap((u) => inBlank(from, u, j / along))).flat())
}

export interface MeshConvergence {
  readonly blank: Blank
  readonly halved: Blank
  /** peak stretch with cells of half the size over that of the blank */
  readonly ratio: number
}

/** The blank, and again with every cell halved both ways: how far its peak can be trusted. */
export function meshConvergence(patch: Patch, options: BlankOptions): MeshConvergence {
  const blank = blankOf(patch, options)
  const halved = blankOf(patch, { ...options, across: 2 * options.across, along: 2 * options.along }, blank)
  return Object.freeze({ blank, halved, ratio: halved.peakStretch / blank.peakStretch })
}
