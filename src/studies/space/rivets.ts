/** Every fastener of the body as a place and an outward normal, on the face its head is on. m. */
import { endLiningDepth, liningDepth } from '../../derive/common/lining-depth.js'
import type { Derived } from '../../derive/index.js'
import type { FastenerRow } from '../../derive/nouns.js'
import { loftAt, normalOf, sigmaAtZ } from '../../maths/loft.js'
import { at } from '../../maths/tangent-chain.js'
import type { Vec3 } from '../../maths/vec.js'
import type { RivetsInSpace } from './nouns.js'

/** A head is this many times as wide as its shank: near that of a universal head, MS20470. */
const HEAD = 2

interface RowInSpace {
  readonly positions: Float32Array
  readonly normals: Float32Array
}

export function rivetsInSpace(
  derived: Derived,
  keep: (row: FastenerRow, make: () => RowInSpace) => RowInSpace,
  partIds: readonly string[],
): RivetsInSpace {
  const numbers = new Map(partIds.map((id, i) => [id, i]))
  const rows = [...derived.rows, ...derived.bolts]
  const count = rows.reduce((sum, row) => sum + row.station.length, 0)
  const all = {
    positions: new Float32Array(count * 3),
    normals: new Float32Array(count * 3),
    radius: new Float32Array(count),
    part: new Int32Array(count),
  }
  let n = 0
  for (const row of rows) {
    const { positions, normals } = keep(row, () => rowInSpace(derived, row))
    all.positions.set(positions, 3 * n)
    all.normals.set(normals, 3 * n)
    const heads = row.stacks.map(
      ({ parts }) => numbers.get(row.kind === 'lining' ? (parts[parts.length - 1] ?? '') : (parts[0] ?? '')) ?? -1,
    )
    for (let i = 0; i < row.station.length; i++, n++) {
      all.radius[n] = (HEAD * row.diameter) / 2
      all.part[n] = heads[row.stack[i]] ?? -1
    }
  }
  return all
}

function rowInSpace(derived: Derived, row: FastenerRow): RowInSpace {
  const n = row.station.length
  const [positions, normals] = [new Float32Array(3 * n), new Float32Array(3 * n)]
  const place = row.buttock ? inFloor : row.end ? onEnd(derived) : onBarrel(derived)
  for (let i = 0; i < n; i++) {
    const { point, out } = place(row, i)
    positions.set(point, 3 * i)
    normals.set(out, 3 * i)
  }
  return { positions, normals }
}

interface Stands {
  readonly point: Vec3
  readonly out: Vec3
}

/** Bolts and screws stand in the floor, whose top is WL 0. */
const inFloor = (row: FastenerRow, i: number): Stands => ({ point: [row.station[i], row.buttock?.[i] ?? 0, 0], out: [0, 0, 1] })

/** A lining's rivet is seen on its inner face: the frame's depth and a panel or two inside the mould line. */
function insideBy(point: Vec3, out: Vec3, depth: number): Stands {
  const [x, y, z] = out
  return { point: [point[0] - depth * x, point[1] - depth * y, point[2] - depth * z], out: [-x, -y, -z] }
}

function onBarrel({ shell, definition }: Derived): (row: FastenerRow, i: number) => Stands {
  const depth = liningDepth(definition) + definition.lining.thickness.value
  return (row, i) => {
    const girth = row.girth[i]
    const p = at(shell.section.withFlange, Math.abs(girth))
    const hand = girth < 0 ? -1 : 1
    const [point, out]: [Vec3, Vec3] = [
      [row.station[i], hand * p.y, p.z],
      [0, hand * Math.sin(p.heading), Math.cos(p.heading)],
    ]
    return row.kind === 'lining' ? insideBy(point, out, depth) : { point, out }
  }
}

function onEnd({ endSections, definition }: Derived): (row: FastenerRow, i: number) => Stands {
  const { loft } = endSections.local.ground
  const depth = endLiningDepth(definition) + definition.lining.thickness.value
  return (row, i) => {
    const z = row.waterline[i]
    const azimuth = row.end?.azimuth[i] ?? 0
    const sigma = sigmaAtZ(loft.section, z) ?? loft.section.length
    const [x, y, up] = normalOf(loftAt(loft, azimuth, sigma), azimuth)
    const out: Vec3 = [row.end?.which === 'nose' ? -x : x, y, up]
    const point: Vec3 = [row.station[i], row.end?.y[i] ?? 0, z]
    return row.kind === 'lining' ? insideBy(point, out, depth) : { point, out }
  }
}
