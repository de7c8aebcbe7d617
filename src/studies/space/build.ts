/** Meshes put together: regions laid on a surface, bands between two lines, boxes, plates with a thickness. m. */
import { add, cross, length, scale, sub, type Vec3 } from '../../maths/vec.js'
import type { Mesh } from './nouns.js'
import { type Point, type Region, regionOf } from './region.js'

/** A mesh under way. Corners are shared within one surface and never between two, so that every fold stays sharp. */
export interface Draft {
  readonly points: Vec3[]
  readonly triangles: number[]
  readonly lines: Vec3[]
  /** numbers of the points, and of the lines' ends, that a neighbour laps over */
  readonly under: Set<number>
  readonly linesUnder: Set<number>
}

export const newDraft = (): Draft => ({ points: [], triangles: [], lines: [], under: new Set(), linesUnder: new Set() })

/** Corners of one micrometre are one; a place is kept as one whole number, since there are tens of thousands. */
const [MICRO, ROW] = [1e6, 2 ** 27] as const

/** Lays a flat region on a surface: its triangles, and its boundary in ink. */
export function lay(draft: Draft, region: Region, on: (x: number, y: number) => Vec3, isUnder?: (x: number, y: number) => boolean): void {
  const known = new Map<number, number>()
  const corner = ([x, y]: Point): number => {
    const key = Math.round(x * MICRO) * ROW + Math.round(y * MICRO)
    const found = known.get(key)
    if (found !== undefined) return found
    const made = draft.points.push(on(x, y)) - 1
    known.set(key, made)
    if (isUnder?.(x, y)) draft.under.add(made)
    return made
  }
  for (const piece of region.pieces) {
    const at = piece.map(corner)
    for (let i = 1; i + 1 < at.length; i++)
      // corners that fell together leave no triangle
      if (at[0] !== at[i] && at[i] !== at[i + 1] && at[0] !== at[i + 1]) draft.triangles.push(at[0], at[i], at[i + 1])
  }
  for (const line of region.boundary)
    for (const end of line) {
      const made = draft.lines.push(on(...end)) - 1
      if (isUnder?.(...end)) draft.linesUnder.add(made)
    }
}

/** A smooth band between lines of as many points each, every line beside the next; its edges in ink, and its ends unless it is closed. */
export function band(draft: Draft, lines: readonly (readonly Vec3[])[], closed = false): void {
  const first = draft.points.length
  const n = lines[0].length
  for (const line of lines) draft.points.push(...line)
  for (let k = 0; k + 1 < lines.length; k++)
    for (let i = 0; i + 1 < n; i++) {
      const a = first + k * n + i
      draft.triangles.push(a, a + 1, a + n + 1, a, a + n + 1, a + n)
    }
  const [start, end] = [lines[0], lines[lines.length - 1]]
  for (const line of [start, end]) for (let i = 0; i + 1 < n; i++) draft.lines.push(line[i], line[i + 1])
  if (!closed) for (const i of [0, n - 1]) for (let k = 0; k + 1 < lines.length; k++) draft.lines.push(lines[k][i], lines[k + 1][i])
}

/** No flat face is longer between its corners, m: what is told by its corners is then told all over it. */
const LONG = 0.5

/** A flat face with its edges. */
export function face(draft: Draft, corners: readonly Vec3[]): void {
  if (corners.length === 4) {
    quad(draft, corners)
    return
  }
  const first = draft.points.length
  draft.points.push(...corners)
  for (let i = 1; i + 1 < corners.length; i++) draft.triangles.push(first, first + i, first + i + 1)
  corners.forEach((p, i) => {
    draft.lines.push(p, corners[(i + 1) % corners.length])
  })
}

/** Parted along its longer side. */
function quad(draft: Draft, [a, b, c, d]: readonly Vec3[]): void {
  const [along, across] = [length(sub(b, a)) + length(sub(c, d)), length(sub(d, a)) + length(sub(c, b))]
  const [p, q, r, s] = along < across ? [b, c, d, a] : [a, b, c, d]
  const n = Math.max(1, Math.ceil(Math.max(along, across) / (2 * LONG)))
  const line = (from: Vec3, to: Vec3): Vec3[] => Array.from({ length: n + 1 }, (_, i) => add(from, scale(sub(to, from), i / n)))
  band(draft, [line(p, q), line(s, r)])
}

/** Levels and columns that part a wide flat sheet. */
export function grid(rings: readonly (readonly Point[])[]): readonly [levels: readonly number[], columns: readonly number[]] {
  const stops = (axis: 0 | 1): number[] => {
    const all = rings.flat().map((p) => p[axis])
    const [low, high] = [Math.min(...all), Math.max(...all)]
    const n = Math.ceil((high - low) / LONG)
    return Array.from({ length: Math.max(0, n - 1) }, (_, i) => low + ((high - low) * (i + 1)) / n)
  }
  return [stops(1), stops(0)]
}

/** A board: flat outlines in plan between two waterlines. */
export function board(draft: Draft, rings: readonly (readonly Point[])[], low: number, high: number): void {
  const region = regionOf(rings, ...grid(rings))
  for (const z of [high, low]) lay(draft, region, (x, y) => [x, y, z])
  for (const [[x0, y0], [x1, y1]] of region.boundary) {
    const first = draft.points.length
    draft.points.push([x0, y0, low], [x1, y1, low], [x1, y1, high], [x0, y0, high])
    draft.triangles.push(first, first + 1, first + 2, first, first + 2, first + 3)
  }
}

export function box(draft: Draft, x: readonly [number, number], y: readonly [number, number], z: readonly [number, number]): void {
  const at = (i: 0 | 1, j: 0 | 1, k: 0 | 1): Vec3 => [x[i], y[j], z[k]]
  face(draft, [at(0, 0, 0), at(0, 0, 1), at(0, 1, 1), at(0, 1, 0)])
  face(draft, [at(1, 0, 0), at(1, 1, 0), at(1, 1, 1), at(1, 0, 1)])
  face(draft, [at(0, 0, 0), at(1, 0, 0), at(1, 0, 1), at(0, 0, 1)])
  face(draft, [at(0, 1, 0), at(0, 1, 1), at(1, 1, 1), at(1, 1, 0)])
  face(draft, [at(0, 0, 0), at(0, 1, 0), at(1, 1, 0), at(1, 0, 0)])
  face(draft, [at(0, 0, 1), at(1, 0, 1), at(1, 1, 1), at(0, 1, 1)])
}

/** Plain arrays, with the normals of the corners: of all triangles that share one, by their areas. */
export function meshOf({ points, triangles, lines, under, linesUnder }: Draft): Mesh {
  const normals = new Float32Array(points.length * 3)
  for (let i = 0; i < triangles.length; i += 3) {
    const [a, b, c] = [points[triangles[i]], points[triangles[i + 1]], points[triangles[i + 2]]]
    const n = cross(sub(b, a), sub(c, a))
    for (const k of [0, 1, 2]) for (const axis of [0, 1, 2] as const) normals[3 * triangles[i + k] + axis] += n[axis]
  }
  for (let i = 0; i < normals.length; i += 3) {
    const n: Vec3 = [normals[i], normals[i + 1], normals[i + 2]]
    const long = length(n)
    normals.set(long > 0 ? scale(n, 1 / long) : [0, 0, 1], i)
  }
  return {
    positions: flat(points),
    normals,
    index: Uint32Array.from(triangles),
    lines: flat(lines),
    under: Uint8Array.from(points, (_, i) => (under.has(i) ? 1 : 0)),
    linesUnder: Uint8Array.from(lines, (_, i) => (linesUnder.has(i) ? 1 : 0)),
  }
}

function flat(points: readonly Vec3[]): Float32Array {
  const all = new Float32Array(points.length * 3)
  points.forEach((p, i) => {
    all.set(p, 3 * i)
  })
  return all
}

/** Area of a mesh, m2: the verifier of this file. */
export function meshArea({ positions, index }: Mesh): number {
  const at = (i: number): Vec3 => [positions[3 * index[i]], positions[3 * index[i] + 1], positions[3 * index[i] + 2]]
  let sum = 0
  for (let i = 0; i < index.length; i += 3) sum += length(cross(sub(at(i + 1), at(i)), sub(at(i + 2), at(i)))) / 2
  return sum
}
