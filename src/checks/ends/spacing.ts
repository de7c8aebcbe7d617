/** Fasteners of an end against each other and against the barrel's at the joint, by true distances in space. */
import { leastPitch, pitchRatio } from '../../derive/common/spacing.formulas.js'
import { fastenerId, placeOf } from '../../derive/holes.js'
import type { Check, FastenerRow } from '../../derive/nouns.js'
import { at as pointAt } from '../../maths/tangent-chain.js'
import { capacityCheck, distanceCheck, finding, HAIR, mm } from '../check.js'
import type { EndsGround, Standing } from './ground.js'

const SOURCE = 'NAVEDTRA 14018, page 13-43: never nearer than 3 D'

/** Pairs are looked for out to this many times the least distance, so that the closest can be named even where all is well. */
const LOOK = 2
/** The barrel's rows are looked at this far from the joint, m; more than any least distance. */
const BESIDE = 0.1

export interface Near {
  readonly a: FastenerRow
  readonly i: number
  readonly b: FastenerRow
  readonly j: number
  readonly distance: number
  readonly limit: number
}

/** Rows of an end's skin, with those of the barrel that come near its joint; or those of its lining, which lies a frame's height further in. */
export function rowsNear({ derived }: EndsGround, at: Standing, layer: 'skin' | 'lining'): FastenerRow[] {
  const own = derived.endSections.rows.filter((r) => r.end?.which === at.end && (r.kind === 'lining') === (layer === 'lining'))
  if (layer === 'lining') return own
  const barrel = derived.shell.rows.filter((r) => r.kind !== 'lining' && r.station.some((s) => Math.abs(s - at.joint) < BESIDE))
  return [...own, ...barrel]
}

/** Of every two rows, the two fasteners that come nearest, where that is under twice their least distance. */
export function nearPairs({ derived, definition }: EndsGround, at: Standing, rows: readonly FastenerRow[]): Near[] {
  const { withFlange } = derived.shell.section
  const row: number[] = []
  const index: number[] = []
  const x: number[] = []
  const y: number[] = []
  const z: number[] = []
  rows.forEach((r, n) => {
    for (let i = 0; i < r.station.length; i++) {
      if (!r.end && Math.abs(r.station[i] - at.joint) >= BESIDE) continue
      row.push(n)
      index.push(i)
      x.push(r.station[i])
      y.push(r.end ? r.end.y[i] : Math.sign(r.girth[i]) * pointAt(withFlange, Math.abs(r.girth[i])).y)
      z.push(r.waterline[i])
    }
  })
  const k = definition.rules.minPitch
  const order = z.map((_, i) => i).sort((a, b) => z[a] - z[b])
  const most = LOOK * k * Math.max(...rows.map((r) => r.diameter))
  const best = new Map<number, Near>()
  for (let m = 0; m < order.length; m++) {
    const p = order[m]
    for (let n = m + 1; n < order.length; n++) {
      const q = order[n]
      const dz = z[q] - z[p]
      if (dz > most) break
      const [dx, dy] = [x[q] - x[p], y[q] - y[p]]
      if (dx > most || dx < -most || dy > most || dy < -most) continue
      const [a, b] = row[p] < row[q] || (row[p] === row[q] && index[p] < index[q]) ? [p, q] : [q, p]
      const [ra, rb] = [rows[row[a]], rows[row[b]]]
      // two of the barrel have their own rule
      if (!ra.end && !rb.end) continue
      const distance = Math.sqrt(dx * dx + dy * dy + dz * dz)
      const limit = k * Math.max(ra.diameter, rb.diameter)
      if (distance >= LOOK * limit) continue
      const key = row[a] * rows.length + row[b]
      const known = best.get(key)
      if (!known || distance < known.distance) best.set(key, { a: ra, i: index[a], b: rb, j: index[b], distance, limit })
    }
  }
  return [...best.values()]
}

export function spacingOf(ground: EndsGround, near: readonly Near[]): Check[] {
  const tooNear = near.filter((n) => n.distance < n.limit - HAIR)
  if (tooNear.length > 0)
    return tooNear.map((n) => sayPair(ground, n, `spacing.${n.a.id}.${n.b.id}`, `${fastenerId(n.a, n.i)} and ${fastenerId(n.b, n.j)}`))
  if (near.length === 0)
    return [
      finding({ id: 'spacing.ends', says: 'No two fasteners of an end come within twice their least distance.', source: SOURCE }, 'pass'),
    ]
  const closest = near.reduce((m, n) => (n.distance / n.limit < m.distance / m.limit ? n : m))
  return [
    sayPair(
      ground,
      closest,
      'spacing.ends',
      `The closest fasteners of the ends, ${fastenerId(closest.a, closest.i)} and ${fastenerId(closest.b, closest.j)},`,
    ),
  ]
}

function sayPair({ definition }: EndsGround, n: Near, id: string, which: string): Check {
  const d = Math.max(n.a.diameter, n.b.diameter)
  return distanceCheck(
    {
      id,
      says: `${which} are ${mm(n.distance)} mm apart; they need ${mm(n.limit)} mm.`,
      source: SOURCE,
      places: [placeOf(n.a, n.i)],
      concerns: [n.a.id, n.b.id],
      worked: [leastPitch({ k: definition.rules.minPitch, D: d }), pitchRatio({ p: n.distance, D: d })],
    },
    n.limit,
    n.distance,
  )
}

const MOST_SOURCE =
  'rules.max pitch of the definition; NAVEDTRA 14018, page 13-43 asks for 8 D, maintenance texts allow 10 to 12 D (from memory)'

/** The widest fitted pitch of each kind of row in the skin against the most the shop allows. A caution, since the limit is guidance. */
export function endPitches({ derived, definition }: EndsGround): Check[] {
  const rows = derived.endSections.rows.filter((r) => r.kind !== 'lining')
  const k = definition.rules.maxPitch
  return [...new Set(rows.map((r) => r.kind))].flatMap((kind) => {
    const spans = rows.filter((r) => r.kind === kind).flatMap((row) => row.spans.filter((s) => s.count > 1).map((span) => ({ row, span })))
    if (spans.length === 0) return []
    const { row, span } = spans.reduce((m, s) => (s.span.pitch / s.row.diameter > m.span.pitch / m.row.diameter ? s : m))
    const told = {
      id: `pitch.end-${kind}`,
      says: `The widest fitted pitch of any ${kind} row on the ends is ${mm(span.pitch)} mm, in ${row.id} from ${span.from} to ${span.to}; ${k} D is ${mm(k * row.diameter)} mm.`,
      source: MOST_SOURCE,
      places: [placeOf(row, span.first)],
      concerns: [row.id],
      worked: [pitchRatio({ p: span.pitch, D: row.diameter })],
    }
    return [capacityCheck(told, span.pitch, k * row.diameter, 'm', 'caution')]
  })
}
