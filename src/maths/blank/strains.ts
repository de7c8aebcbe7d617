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
  readonly major: number[]
  readonly minor: number[]
  /** the same at each node */
  readonly nodeMajor: number[]
  readonly nodeMinor: number[]
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
  const { triangles, areas } = mesh
  const [g, m, frame] = [new Float64Array(4), new Float64Array(2), new Float64Array(4)]
  // xx, xy, yy of the stretch tensor times area, and the area, round each node
  const sums = new Float64Array(2 * plane.length)
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
    const [x, y] = frame
    for (let k = 0; k < 3; k++) {
      const at = 4 * triangles[3 * t + k]
      sums[at] += flat * (short * x * x + long * y * y)
      sums[at + 1] += flat * (short - long) * x * y
      sums[at + 2] += flat * (short * y * y + long * x * x)
      sums[at + 3] += flat
    }
  }
  return { major, minor, ...atNodes(sums), meanStretch: stretched / areaFlat, areaFlat, areaFormed }
}

function atNodes(sums: Float64Array): Pick<Strains, 'nodeMajor' | 'nodeMinor' | 'peakStretch' | 'peakShrink' | 'thinning'> {
  const [nodeMajor, nodeMinor]: [number[], number[]] = [[], []]
  let [peakStretch, peakShrink, thinning] = [0, 0, 0]
  for (let at = 0; at < sums.length; at += 4) {
    const [xx, xy, yy] = [sums[at] / sums[at + 3], sums[at + 1] / sums[at + 3], sums[at + 2] / sums[at + 3]]
    const [mean, half] = [(xx + yy) / 2, Math.sqrt(((xx - yy) / 2) ** 2 + xy * xy)]
    nodeMajor.push(mean + half - 1)
    nodeMinor.push(mean - half - 1)
    peakStretch = Math.max(peakStretch, mean + half - 1)
    peakShrink = Math.max(peakShrink, 1 - mean + half)
    thinning = Math.max(thinning, 1 - 1 / ((mean + half) * (mean - half)))
  }
  return { nodeMajor, nodeMinor, peakStretch, peakShrink, thinning }
}
