/**
 * A wrapped sheet cut by the vertical plane at an azimuth: where a mid rib runs, and where a rivet of a row round the end stands.
 * The cut is taken on the sheet's outer face, ruling by ruling, exactly; between rulings it is the cubic that leaves both in the
 * cut's own direction, which on so small a turn keeps to a hundredth of a micrometre.
 */
import { cubic, type Flat } from '../../maths/strip/on-strip.js'
import { add, cross, dot, length, scale, sub, unit, type Vec3 } from '../../maths/vec.js'
import type { GoreSheet } from './wrapped-strip.js'

/** A place of the sheet. */
export interface OnSheet {
  /** on the outer face */
  readonly point: Vec3
  /** outward normal of the sheet */
  readonly out: Vec3
  /** on the sheet laid flat */
  readonly flat: Flat
}

/** A place of the cut. */
export interface OnCut extends OnSheet {
  /** down the cut from the cap's row, m */
  readonly along: number
}

export interface SheetCut {
  readonly phi: number
  /** from the cap's row to the toe, m */
  readonly length: number
  readonly atAlong: (along: number) => OnCut
  /** above the cap's row and below the toe straight on */
  readonly atHeight: (z: number) => OnCut
  /** the same cut `depth` m inside the outer face: its own length at a length of the outer one */
  readonly inside: (along: number, depth: number) => number
}

interface Nodes {
  readonly point: readonly Vec3[]
  readonly tangent: readonly Vec3[]
  readonly out: readonly Vec3[]
  readonly flat: readonly Flat[]
  readonly heading: readonly number[]
  readonly along: readonly number[]
}

export function sheetCut(sheet: GoreSheet, phi: number): SheetCut {
  const nodes = nodesOf(sheet, phi)
  const { along, point } = nodes
  const last = along.length - 1
  const deep = new Map<number, readonly number[]>()
  const atAlong = (a: number): OnCut => {
    const i = Math.min(last - 1, below(along, a))
    return onCut(nodes, i, share(along, i, a))
  }
  return {
    phi,
    length: along[last],
    atAlong,
    atHeight: (z) => {
      let [low, high] = [0, last]
      while (high - low > 1) {
        const middle = (low + high) >> 1
        if (point[middle][2] >= z) low = middle
        else high = middle
      }
      return onCut(nodes, low, shareAtHeight(nodes, low, z))
    },
    inside: (a, depth) => {
      if (depth === 0) return a
      const lengths = deep.get(depth) ?? lengthsInside(nodes, depth)
      deep.set(depth, lengths)
      const i = Math.min(last - 1, below(along, a))
      return lengths[i] + share(along, i, a) * (lengths[i + 1] - lengths[i])
    },
  }
}

function nodesOf(sheet: GoreSheet, phi: number): Nodes {
  const plane = planeAt(phi)
  return nodesFrom(
    sheet.strip.rulings.map((_, k) => nodeAt(sheet, plane, k)),
    sheet.out,
  )
}

interface Node {
  readonly point: Vec3
  readonly tangent: Vec3
  readonly flat: Flat
  readonly heading: number
}

/** Normal of the vertical plane at an azimuth. */
const planeAt = (phi: number): Vec3 => [-Math.sin(phi), Math.cos(phi), 0]

/** Where ruling k meets the plane, on the sheet's outer face. */
function nodeAt({ strip, flat, out, thickness }: GoreSheet, plane: Vec3, k: number): Node {
  const ruling = strip.rulings[k]
  const start = add(ruling.from, scale(out[k], thickness / 2))
  const v = -dot(plane, start) / dot(plane, sub(ruling.to, ruling.from))
  const tangent = unit(cross(plane, out[k]))
  return {
    point: add(start, scale(sub(ruling.to, ruling.from), v)),
    tangent,
    flat: [flat.px[k] + v * (flat.qx[k] - flat.px[k]), flat.py[k] + v * (flat.qy[k] - flat.py[k])],
    heading: flat.heading[k] + Math.atan2(dot(tangent, cross(ruling.normal, ruling.direction)), dot(tangent, ruling.direction)),
  }
}

function nodesFrom(nodes: readonly Node[], out: readonly Vec3[]): Nodes {
  const along = [0]
  for (let k = 1; k < nodes.length; k++) {
    const [a, b] = [nodes[k - 1], nodes[k]]
    along.push(along[k - 1] + arc(a.point, b.point, a.tangent, b.tangent))
  }
  return {
    point: nodes.map((n) => n.point),
    tangent: nodes.map((n) => n.tangent),
    out,
    flat: nodes.map((n) => n.flat),
    heading: nodes.map((n) => n.heading),
    along,
  }
}

/** The cap's row of the sheet at an azimuth: its first ruling. */
export function sheetTop(sheet: GoreSheet, phi: number): OnSheet {
  const { point, flat } = nodeAt(sheet, planeAt(phi), 0)
  return { point, flat, out: sheet.out[0] }
}

/** The sheet at an azimuth and a height, without walking the whole of its cut; past its ends straight on. */
export function sheetAtHeight(sheet: GoreSheet, phi: number, z: number): OnSheet {
  const plane = planeAt(phi)
  let [low, high] = [0, sheet.strip.rulings.length - 1]
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (nodeAt(sheet, plane, middle).point[2] >= z) low = middle
    else high = middle
  }
  const nodes = nodesFrom([nodeAt(sheet, plane, low), nodeAt(sheet, plane, high)], [sheet.out[low], sheet.out[high]])
  const { point, out, flat } = onCut(nodes, 0, shareAtHeight(nodes, 0, z))
  return { point, out, flat }
}

/** A place `off` m past the sheet's foot, square to it and straight on, at an azimuth. */
export function beyondFoot({ strip, out, flat, thickness }: GoreSheet, phi: number, off: number): OnSheet {
  const last = strip.rulings.length - 1
  const { from, to, direction } = strip.rulings[last]
  const down = cross(out[last], direction)
  const start = add(add(from, scale(out[last], thickness / 2)), scale(down, off))
  const plane = planeAt(phi)
  const v = -dot(plane, start) / dot(plane, sub(to, from))
  const h = flat.heading[last]
  return {
    point: add(start, scale(sub(to, from), v)),
    out: out[last],
    // square to the last ruling, away from the sheet: seen flat, clockwise from the ruling's own heading
    flat: [
      flat.px[last] + v * (flat.qx[last] - flat.px[last]) + off * Math.sin(h),
      flat.py[last] + v * (flat.qy[last] - flat.py[last]) - off * Math.cos(h),
    ],
  }
}

/** Length of the shallow curve between two points that leaves them in these directions. */
function arc(a: Vec3, b: Vec3, ta: Vec3, tb: Vec3): number {
  const chord = sub(b, a)
  const c = length(chord)
  if (c === 0) return 0
  const way = scale(chord, 1 / c)
  const [m, n] = [sub(ta, scale(way, dot(ta, way))), sub(tb, scale(way, dot(tb, way)))]
  // half the mean square of the slopes of a cubic, by its slopes at both ends
  return c * (1 + (2 * dot(m, m) + 2 * dot(n, n) - dot(m, n)) / 30)
}

/** Share of the way from node i to the next; where the sheet is folded both stand at one place, and any will do. */
const share = (along: readonly number[], i: number, a: number): number =>
  along[i + 1] > along[i] ? (a - along[i]) / (along[i + 1] - along[i]) : 0

/** The last node at or before a length. */
function below(along: readonly number[], a: number): number {
  let [low, high] = [0, along.length - 1]
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (along[middle] <= a) low = middle
    else high = middle
  }
  return low
}

function onCut({ point, tangent, out, flat, heading, along }: Nodes, i: number, u: number): OnCut {
  const run = along[i + 1] - along[i]
  const a = along[i] + u * run
  if (u < 0 || u > 1) return straightOn({ point, tangent, out, flat, heading, along }, u < 0 ? i : i + 1, a)
  const at = (axis: 0 | 1 | 2): number => cubic(u, point[i][axis], point[i + 1][axis], run * tangent[i][axis], run * tangent[i + 1][axis])
  const [h, g] = [heading[i], heading[i + 1]]
  return {
    point: [at(0), at(1), at(2)],
    out: unit(add(scale(out[i], 1 - u), scale(out[i + 1], u))),
    flat: [
      cubic(u, flat[i][0], flat[i + 1][0], run * Math.cos(h), run * Math.cos(g)),
      cubic(u, flat[i][1], flat[i + 1][1], run * Math.sin(h), run * Math.sin(g)),
    ],
    along: a,
  }
}

function straightOn({ point, tangent, out, flat, heading, along }: Nodes, k: number, a: number): OnCut {
  const on = a - along[k]
  return {
    point: add(point[k], scale(tangent[k], on)),
    out: out[k],
    flat: [flat[k][0] + on * Math.cos(heading[k]), flat[k][1] + on * Math.sin(heading[k])],
    along: a,
  }
}

/** Share of the way from one node to the next at which the cut has come down to z; past the ends straight on. */
function shareAtHeight({ point, tangent, along }: Nodes, i: number, z: number): number {
  const run = along[i + 1] - along[i]
  const [z0, z1, m0, m1] = [point[i][2], point[i + 1][2], run * tangent[i][2], run * tangent[i + 1][2]]
  if (z > z0) return (z - z0) / m0
  if (z < z1) return 1 + (z - z1) / m1
  if (z0 === z1) return 0
  let u = (z - z0) / (z1 - z0)
  for (let n = 0; n < 20; n++) {
    const slope = m0 + u * (2 * (3 * (z1 - z0) - 2 * m0 - m1) + 3 * u * (m0 + m1 - 2 * (z1 - z0)))
    // where the cut runs level for an instant the chord's place will do
    if (slope === 0) break
    const step = (cubic(u, z0, z1, m0, m1) - z) / slope
    u = Math.min(1, Math.max(0, u - step))
    if (Math.abs(step) < 1e-14) break
  }
  return u
}

/** Inside a convex sheet a curve is shorter by its depth times the turn of the normal along it; sideways turns lengthen it a little. */
function lengthsInside({ tangent, out, along }: Nodes, depth: number): number[] {
  const lengths = [0]
  for (let k = 1; k < along.length; k++) {
    const run = along[k] - along[k - 1]
    const turn = sub(out[k], out[k - 1])
    const ahead = unit(add(tangent[k], tangent[k - 1]))
    const aside = cross(unit(add(out[k], out[k - 1])), ahead)
    const on = run - depth * dot(turn, ahead)
    // over a fold the curve inside runs back a little: counted so, both sides of it come out as if mitred
    lengths.push(lengths[k - 1] + Math.sign(on) * Math.hypot(on, depth * dot(turn, aside)))
  }
  return lengths
}
