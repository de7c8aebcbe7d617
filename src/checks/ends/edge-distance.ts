/** Holes of the flat patterns of an end against their edges, and the rows in its laps and flanges, whose edge distance is half a width. */
import { edgeRatio, minimumEdge } from '../../derive/common/spacing.formulas.js'
import { fastenerId, placeOf, rowsById } from '../../derive/holes.js'
import type { Check, FastenerRow, Part, PartKind } from '../../derive/nouns.js'
import { distanceToOutline } from '../../maths/outline.js'
import { distanceCheck, HAIR, mm } from '../check.js'
import type { EndsGround, Standing } from './ground.js'

const SOURCE = 'AC 43.13-1B, paragraph 4-57c(1): edge distance of a single row, diameters by the shop rule'

export interface NearEdge {
  readonly part: string
  readonly kind: PartKind
  readonly row: FastenerRow
  readonly index: number
  readonly distance: number
  readonly limit: number
}

/** Of each row in each part, the hole nearest an edge. Panels whose blank is not known yet have no holes here. */
export function nearestEdges({ derived, definition }: EndsGround, at: Standing): NearEdge[] {
  const { parts, rows } = derived.endSections
  const byId = rowsById(rows)
  const k = definition.rules.edgeDistance
  return parts.filter((p) => p.place.end?.which === at.end).flatMap((part) => nearestIn(part, byId, k))
}

function nearestIn(part: Part, rows: ReadonlyMap<string, FastenerRow>, k: number): NearEdge[] {
  const worst = new Map<string, NearEdge>()
  for (const { holes, outline, cuts } of part.patterns)
    for (let h = 0; h < holes.x.length; h++) {
      const row = rows.get(holes.rows[holes.row[h]])
      if (!row) continue
      let distance = distanceToOutline(outline, holes.x[h], holes.y[h])
      for (const cut of cuts) distance = Math.min(distance, distanceToOutline(cut.outline, holes.x[h], holes.y[h]))
      const known = worst.get(row.id)
      if (!known || distance < known.distance)
        worst.set(row.id, { part: part.id, kind: part.kind, row, index: holes.index[h], distance, limit: k * row.diameter })
    }
  return [...worst.values()]
}

export function endEdges(near: readonly NearEdge[]): Check[] {
  const failing = near.filter((n) => n.distance < n.limit - HAIR)
  const best = new Map<PartKind, NearEdge>()
  for (const n of near) {
    const b = best.get(n.kind)
    if (!b || n.distance / n.limit < b.distance / b.limit) best.set(n.kind, n)
  }
  return [
    ...failing.map((n) =>
      sayEdge(
        n,
        `edge.${n.part}.${n.row.id}`,
        `${fastenerId(n.row, n.index)} stands ${mm(n.distance)} mm from the edge of ${n.part}; it needs ${mm(n.limit)} mm.`,
      ),
    ),
    ...[...best].map(([kind, n]) =>
      sayEdge(
        n,
        `edge.end.${kind}`,
        `The hole nearest an edge in any ${kind} of the ends is ${fastenerId(n.row, n.index)} in ${n.part}, ${mm(n.distance)} mm from it; the least is ${mm(n.limit)} mm.`,
      ),
    ),
  ]
}

function sayEdge(n: NearEdge, id: string, says: string): Check {
  const D = n.row.diameter
  return distanceCheck(
    {
      id,
      says,
      source: SOURCE,
      places: [placeOf(n.row, n.index)],
      concerns: [n.part, n.row.id],
      worked: [minimumEdge({ k: n.limit / D, D }), edgeRatio({ e: n.distance, D })],
    },
    n.limit,
    n.distance,
  )
}

/** Laps with one row down their middle, and the joint's with two. */
export function endLaps({ definition }: EndsGround): Check[] {
  const { ends, shell, rows, rules, fasteners } = definition
  const say = (id: string, rule: 'gore' | 'joint', what: string, edge: number): Check => {
    const type = fasteners.find((f) => f.id === rows[rule].fastener)
    if (!type) throw new Error(`no fastener "${rows[rule].fastener}" in the definition`)
    const D = type.diameter.value
    const need = rules.edgeDistance * D
    return distanceCheck(
      {
        id,
        says: `${what} gives its rivets ${mm(edge)} mm of edge; they need ${mm(need)} mm.`,
        source: SOURCE,
        mend: edge < need - HAIR ? `Make it at least ${mm(2 * (need - edge))} mm wider.` : null,
        worked: [minimumEdge({ k: rules.edgeDistance, D }), edgeRatio({ e: edge, D })],
      },
      need,
      edge,
    )
  }
  const { overlap, rowSpacing } = shell.joint
  return [
    say('lap.end-gore', 'gore', `A gore seam's lap of ${mm(ends.lap)} mm`, ends.lap / 2),
    say('lap.end-cap', 'gore', `The crown cap's lap of ${mm(ends.lap)} mm`, ends.lap / 2),
    say(
      'lap.end-joint',
      'joint',
      `The joint's overlap of ${mm(overlap)} mm with rows ${mm(rowSpacing)} mm apart`,
      (overlap - rowSpacing) / 2,
    ),
  ]
}
