/**
 * Reads a hole list from a drawing a shop has: every circle is a hole, also those inside placed blocks, and the corners of the
 * largest closed polyline are the corners of the sheet. Here and not in the core because the library's types bring Node's along.
 */

import type { DxfParser, IBlock, ICircleEntity, IDxf, IEntity, IInsertEntity, ILwpolylineEntity } from 'dxf-parser'
import dxfParser from 'dxf-parser'
import type { ListUnit, Reading } from '../checks/prove/nouns.js'
import type { ReadList, ReadOptions } from '../checks/prove/read-csv-list.js'

// the library's types say a namespace where its file gives the class itself
const Parser = dxfParser as unknown as new () => DxfParser

/** $INSUNITS of the DXF reference: the unit a drawing is in, and what turns it into one of ours. */
const UNITS: Readonly<Record<number, { readonly unit: ListUnit; readonly times: number; readonly says: string }>> = {
  1: { unit: 'in', times: 1, says: 'inches' },
  2: { unit: 'in', times: 12, says: 'feet' },
  4: { unit: 'mm', times: 1, says: 'millimetres' },
  5: { unit: 'mm', times: 10, says: 'centimetres' },
  6: { unit: 'mm', times: 1000, says: 'metres' },
}

/** Circles on one another within this are one hole drawn twice, in the drawing's unit. */
const SAME = 0.01

interface Circle {
  readonly x: number
  readonly y: number
  readonly diameter: number
  readonly layer: string
}
type Move = (x: number, y: number) => readonly [number, number]

/** Circles of a block as placed; blocks within blocks too, to a depth no real drawing reaches. */
function circlesIn(
  entities: readonly IEntity[],
  blocks: Readonly<Record<string, IBlock>>,
  move: Move,
  scale: number,
  depth: number,
): readonly Circle[] {
  return entities.flatMap((entity) => {
    if (entity.type === 'CIRCLE') {
      const { center, radius } = entity as ICircleEntity
      const [x, y] = move(center.x, center.y)
      return [{ x, y, diameter: 2 * radius * scale, layer: entity.layer }]
    }
    if (entity.type !== 'INSERT' || depth > 8) return []
    const placed = entity as IInsertEntity
    const block = blocks[placed.name]
    if (!block?.entities) return []
    const [sx, sy, turn] = [placed.xScale || 1, placed.yScale || 1, ((placed.rotation || 0) * Math.PI) / 180]
    const base = block.position ?? { x: 0, y: 0 }
    const inner: Move = (x, y) => {
      const [u, v] = [(x - base.x) * sx, (y - base.y) * sy]
      return move(placed.position.x + u * Math.cos(turn) - v * Math.sin(turn), placed.position.y + u * Math.sin(turn) + v * Math.cos(turn))
    }
    return circlesIn(block.entities, blocks, inner, scale * Math.abs(sx), depth + 1).map((c) => ({ ...c, layer: entity.layer }))
  })
}

function withoutDoubles(circles: readonly Circle[]): readonly Circle[] {
  const seen = new Set<string>()
  return circles.filter((c) => {
    const key = `${Math.round(c.x / SAME)} ${Math.round(c.y / SAME)}`
    return seen.has(key) ? false : seen.add(key)
  })
}

/** Vertices of the closed polyline with the largest box, none when there is no closed one. */
function cornersOf(file: IDxf): readonly (readonly [number, number])[] {
  let corners: readonly (readonly [number, number])[] = []
  let largest = 0
  for (const entity of file.entities) {
    if (entity.type !== 'LWPOLYLINE' && entity.type !== 'POLYLINE') continue
    const { vertices, shape } = entity as ILwpolylineEntity
    if (!shape || vertices.length < 3) continue
    const [xs, ys] = [vertices.map((v) => v.x), vertices.map((v) => v.y)]
    const area = (Math.max(...xs) - Math.min(...xs)) * (Math.max(...ys) - Math.min(...ys))
    if (area > largest * (1 + 1e-9)) {
      largest = area
      corners = vertices.map((v) => [v.x, v.y] as const)
    }
  }
  return corners
}

function parsed(text: string): IDxf | null {
  try {
    return new Parser().parseSync(text)
  } catch {
    return null
  }
}

export function readDxfList(text: string, name: string, options: ReadOptions = {}): ReadList {
  const file = parsed(text)
  if (!file?.entities)
    return { list: null, faults: [`${name} cannot be read as a DXF drawing. Save it again as text DXF, version 2000 or later.`] }
  const all = circlesIn(file.entities, file.blocks ?? {}, (x, y) => [x, y], 1, 0)
  if (!all.length) return { list: null, faults: [`${name} holds no circles. Draw each hole as a circle at 1:1.`] }
  const said = UNITS[Number(file.header?.$INSUNITS ?? 0)]
  if (options.unit && said && said.unit !== options.unit)
    return { list: null, faults: [`${name} says it is in ${said.says}, and you asked for ${options.unit}. Take one of the two back.`] }
  const times = said?.times ?? 1
  const circles = withoutDoubles(all)
  const readings: readonly Reading[] = circles.map((c, i) => ({
    label: `circle ${i + 1}`,
    line: i + 1,
    x: c.x * times,
    y: c.y * times,
    diameter: c.diameter * times,
  }))
  const notes = circles.length < all.length ? [`${all.length - circles.length} circles lie on others and were counted once.`] : []
  const corners = cornersOf(file).map(([x, y]) => [x * times, y * times] as const)
  return {
    list: { name, unit: options.unit ?? said?.unit ?? null, taped: false, row: options.row ?? null, readings, corners, notes },
    faults: [],
  }
}
