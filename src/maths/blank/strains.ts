/**
 * What the metal undergoes from blank to formed panel: engineering strains e (a length 1 becomes 1 + e), stretch positive.
 *
 * One flat triangle knows only one strain, right in its middle to the first order of its size; the mean of the triangles round a
 * node is right to the second. The means are taken of the stretch tensor in the axes of the blank, weighted by area, and the
 * peaks are the greatest of the nodes: they settle as the mesh is made finer where the worst single triangle does not.
 */
import { directions, mapOf, singularValues } from './energy.js'
import type { PatchMesh } from './mesh.js'

export interface Strains {
  /** greater and lesser principal strain of each triangle */
  readonly major: readonly number[]
  readonly minor: readonly number[]
  /** the same at each node */
  readonly nodeMajor: readonly number[]
  readonly nodeMinor: readonly number[]
  /** greatest stretch and greatest shrink at any node, both 0 or more */
  readonly peakStretch: number
  readonly peakShrink: number
  /** mean of the greater strain over the blank's area */
  readonly meanStretch: number
  /** greatest loss of thickness at a node as a share of it, at constant volume: 1 - 1 / ((1 + e1)(1 + e2)) */
  readonly thinning: number
  readonly areaFlat: number
  readonly areaFormed: number
}

export function strainsOf(mesh: PatchMesh, plane: Float64Array): Strains {
  const { areas } = mesh
  const [g, m, frame] = [new Float64Array(4), new Float64Array(2), new Float64Array(4)]
  const sums = new Float64Array((FIELDS / 2) * plane.length)
  const [major, minor]: [number[], number[]] = [[], []]
  let [areaFlat, areaFormed, stretched] = [0, 0, 0]
  for (let t = 0; t < areas.length; t++) {
    mapOf(mesh, plane, t, g)
    singularValues(g, m)
    directions(g, frame)
    const [long, short] = [1 / m[1], 1 / m[0]]
    const flat = areas[t] * m[0] * m[1]
    major.push(long - 1)
    minor.push(short - 1)
    areaFlat += flat
    areaFormed += areas[t]
    stretched += flat * (long - 1)
    addRound(sums, mesh, t, flat, long, short, frame)
  }
  return { major, minor, ...principal(toEdges(sums, mesh)), meanStretch: stretched / areaFlat, areaFlat, areaFormed }
}

/** Gathered round each node: xx, xy, yy of the stretch tensor times area, u and v of the middle times area, area. */
const FIELDS = 6

function addRound(sums: Float64Array, mesh: PatchMesh, t: number, flat: number, long: number, short: number, frame: Float64Array): void {
  const { triangles, stops, across, along } = mesh
  const nodes = [triangles[3 * t], triangles[3 * t + 1], triangles[3 * t + 2]]
  const [x, y] = [frame[0], frame[1]]
  let [u, v] = [0, 0]
  for (const node of nodes) {
    u += stops[node % (across + 1)] / 3
    v += Math.floor(node / (across + 1)) / along / 3
  }
  const shares = [short * x * x + long * y * y, (short - long) * x * y, short * y * y + long * x * x, u, v, 1]
  for (const node of nodes) for (let f = 0; f < FIELDS; f++) sums[FIELDS * node + f] += flat * shares[f]
}

/**
 * The means, 5 numbers a node. Those of an edge's nodes belong to a place a little inside it: they are carried to the edge along the
 * straight line through the mean of the next node inward. Two and four triangles meet at its nodes in turn, so neighbours on the edge
 * are first taken together, 1 : 2 : 1.
 */
function toEdges(sums: Float64Array, mesh: PatchMesh): Float64Array {
  const { stops, across, along } = mesh
  const row = across + 1
  const means = new Float64Array((5 * sums.length) / FIELDS)
  const even = alongEdges(sums, across, along)
  for (let node = 0; node < sums.length / FIELDS; node++)
    for (let f = 0; f < 5; f++) means[5 * node + f] = even[FIELDS * node + f] / even[FIELDS * node + 5]
  const carry = (edge: number, inner: number, field: 3 | 4, to: number): void => {
    const share = (to - means[5 * edge + field]) / (means[5 * inner + field] - means[5 * edge + field])
    for (let f = 0; f < 5; f++) means[5 * edge + f] += share * (means[5 * inner + f] - means[5 * edge + f])
  }
  for (let j = 0; j <= along; j++) {
    carry(j * row, j * row + 1, 3, stops[0])
    carry(j * row + across, j * row + across - 1, 3, stops[across])
  }
  for (let i = 0; i <= across; i++) {
    carry(i, row + i, 4, 0)
    carry(along * row + i, (along - 1) * row + i, 4, 1)
  }
  return means
}

function alongEdges(sums: Float64Array, across: number, along: number): Float64Array {
  const row = across + 1
  const even = Float64Array.from(sums)
  const take = (node: number, step: number): void => {
    for (let f = 0; f < FIELDS; f++) {
      const at = FIELDS * node + f
      even[at] = sums[at - FIELDS * step] + 2 * sums[at] + sums[at + FIELDS * step]
    }
  }
  for (let j = 1; j < along; j++) for (const node of [j * row, j * row + across]) take(node, row)
  for (let i = 1; i < across; i++) for (const node of [i, along * row + i]) take(node, 1)
  return even
}

function principal(means: Float64Array): Pick<Strains, 'nodeMajor' | 'nodeMinor' | 'peakStretch' | 'peakShrink' | 'thinning'> {
  const [nodeMajor, nodeMinor]: [number[], number[]] = [[], []]
  let [peakStretch, peakShrink, thinning] = [0, 0, 0]
  for (let at = 0; at < means.length; at += 5) {
    const [xx, xy, yy] = [means[at], means[at + 1], means[at + 2]]
    const [mean, half] = [(xx + yy) / 2, Math.sqrt(((xx - yy) / 2) ** 2 + xy * xy)]
    nodeMajor.push(mean + half - 1)
    nodeMinor.push(mean - half - 1)
    peakStretch = Math.max(peakStretch, mean + half - 1)
    peakShrink = Math.max(peakShrink, 1 - mean + half)
    thinning = Math.max(thinning, 1 - 1 / ((mean + half) * (mean - half)))
  }
  return { nodeMajor, nodeMinor, peakStretch, peakShrink, thinning }
}
