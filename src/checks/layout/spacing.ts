/** Fasteners against each other: no two nearer than the least pitch, and every fitted pitch near the one wanted. */

import { leastPitch, pitchRatio, transverseGuide, transverseMinimum } from '../../derive/common/spacing.formulas.js'
import { fastenerId, placeOf } from '../../derive/holes.js'
import type { Check, FastenerRow } from '../../derive/nouns.js'
import { capacityCheck, distanceCheck, finding, HAIR, mm } from '../check.js'
import type { Ground } from './ground.js'

const SOURCE = 'NAVEDTRA 14018, page 13-43: never nearer than 3 D'

interface Near {
  readonly a: FastenerRow
  readonly i: number
  readonly b: FastenerRow
  readonly j: number
  readonly distance: number
  readonly limit: number
}

interface Reach {
  readonly x0: number
  readonly x1: number
  readonly g0: number
  readonly g1: number
}

export function reachIn(ground: Ground, row: FastenerRow): Reach {
  return ground.derived.shell.laid.memo.keep(`row reach ${row.id}`, [row], () => reachOf(row))
}

/** The rectangle of station and girth a row stands in. */
function reachOf(row: FastenerRow): Reach {
  let [x0, x1, g0, g1] = [Infinity, -Infinity, Infinity, -Infinity]
  for (let i = 0; i < row.station.length; i++) {
    if (row.station[i] < x0) x0 = row.station[i]
    if (row.station[i] > x1) x1 = row.station[i]
    if (row.girth[i] < g0) g0 = row.girth[i]
    if (row.girth[i] > g1) g1 = row.girth[i]
  }
  return { x0, x1, g0, g1 }
}

/** The closest fasteners of every two rows, and of each row's own, that are nearer than the limit. */
function nearPairs(ground: Ground, rows: readonly FastenerRow[]): Near[] {
  const k = ground.input.rules.minPitch
  const { memo } = ground.derived.shell.laid
  const reach = rows.map((row) => reachIn(ground, row))
  const found: Near[] = []
  for (let a = 0; a < rows.length; a++) {
    const own = memo.keep(`near ${rows[a].id}`, [rows[a], k], () =>
      nearest(rows[a], everyIndex(rows[a]), rows[a], everyIndex(rows[a]), k * rows[a].diameter, true),
    )
    if (own) found.push(own)
    for (let b = a + 1; b < rows.length; b++) {
      const limit = k * Math.max(rows[a].diameter, rows[b].diameter)
      const look = LOOK * limit
      const x0 = Math.max(reach[a].x0, reach[b].x0) - look
      const x1 = Math.min(reach[a].x1, reach[b].x1) + look
      const g0 = Math.max(reach[a].g0, reach[b].g0) - look
      const g1 = Math.min(reach[a].g1, reach[b].g1) + look
      if (x0 > x1 || g0 > g1) continue
      const pair = memo.keep(`near ${rows[a].id} ${rows[b].id}`, [rows[a], rows[b], k], () => {
        const ia = within(rows[a], x0, x1, g0, g1)
        return ia.length === 0 ? null : nearest(rows[a], ia, rows[b], within(rows[b], x0, x1, g0, g1), limit, false)
      })
      if (pair) found.push(pair)
    }
  }
  return found
}

const everyIndex = (row: FastenerRow): number[] => row.station.map((_, i) => i)

function within(row: FastenerRow, x0: number, x1: number, g0: number, g1: number): number[] {
  const out: number[] = []
  for (let i = 0; i < row.station.length; i++) {
    const x = row.station[i]
    const g = row.girth[i]
    if (x >= x0 && x <= x1 && g >= g0 && g <= g1) out.push(i)
  }
  return out
}

/** Pairs are looked for out to this many times the least distance, so that the closest can be named even where all is well. */
const LOOK = 2

/** In one row only neighbours along the walk, and its two ends, can come close. */
function nearest(a: FastenerRow, ia: readonly number[], b: FastenerRow, ib: readonly number[], limit: number, own: boolean): Near | null {
  let best: Near | null = null
  for (let p = 0; p < ia.length; p++) {
    const i = ia[p]
    for (const j of own ? [(i + 1) % ib.length] : ib) {
      if (own && i === j) continue
      const distance = Math.hypot(a.station[i] - b.station[j], a.girth[i] - b.girth[j])
      if (distance < LOOK * limit && (!best || distance < best.distance)) best = { a, i, b, j, distance, limit }
    }
  }
  return best
}

export function spacing(ground: Ground): Check[] {
  const rows = ground.derived.rows
  const groups = [rows.filter((r) => r.kind !== 'lining'), rows.filter((r) => r.kind === 'lining')]
  const near = groups.flatMap((g) => nearPairs(ground, g))
  const tooNear = near.filter((n) => n.distance < n.limit - HAIR)
  if (tooNear.length > 0)
    return tooNear.map((n) => sayPair(ground, n, `spacing.${n.a.id}.${n.b.id}`, `${fastenerId(n.a, n.i)} and ${fastenerId(n.b, n.j)}`))
  if (near.length === 0) {
    return [finding({ id: 'spacing.rivets', says: 'No two fasteners come within twice their least distance.', source: SOURCE }, 'pass')]
  }
  const closest = near.reduce((m, n) => (n.distance / n.limit < m.distance / m.limit ? n : m))
  return [
    sayPair(
      ground,
      closest,
      'spacing.rivets',
      `The closest fasteners, ${fastenerId(closest.a, closest.i)} and ${fastenerId(closest.b, closest.j)},`,
    ),
  ]
}

function sayPair(ground: Ground, n: Near, id: string, which: string): Check {
  const d = Math.max(n.a.diameter, n.b.diameter)
  return distanceCheck(
    {
      id,
      says: `${which} are ${mm(n.distance)} mm apart; they need ${mm(n.limit)} mm.`,
      source: SOURCE,
      places: [placeOf(n.a, n.i)],
      concerns: [n.a.id, n.b.id],
      worked: [leastPitch({ k: ground.input.rules.minPitch, D: d }), pitchRatio({ p: n.distance, D: d })],
    },
    n.limit,
    n.distance,
  )
}

const MOST_SOURCE =
  'rules.max pitch of the definition; NAVEDTRA 14018, page 13-43 asks for 8 D, maintenance texts allow 10 to 12 D (from memory)'

/**
 * The widest fitted pitch of each kind of row against the most the shop allows. A caution, since the limit is guidance. Lining is
 * not looked at: it carries nothing.
 */
export function fittedPitches(ground: Ground): Check[] {
  const kinds = [...new Set(ground.derived.rows.map((r) => r.kind))].filter((kind) => kind !== 'lining')
  const k = ground.input.rules.maxPitch
  return kinds.flatMap((kind) => {
    const spans = ground.derived.rows
      .filter((r) => r.kind === kind)
      .flatMap((row) => row.spans.filter((s) => s.count > 1).map((span) => ({ row, span })))
    if (spans.length === 0) return []
    const { row, span } = spans.reduce((m, s) => (s.span.pitch / s.row.diameter > m.span.pitch / m.row.diameter ? s : m))
    const told = {
      id: `pitch.${kind}`,
      says: `The widest fitted pitch of any ${kind} row is ${mm(span.pitch)} mm, in ${row.id} from ${span.from} to ${span.to}; ${k} D is ${mm(k * row.diameter)} mm.`,
      source: MOST_SOURCE,
      places: [placeOf(row, span.first)],
      concerns: [row.id],
      worked: [pitchRatio({ p: span.pitch, D: row.diameter })],
    }
    return [capacityCheck(told, span.pitch, k * row.diameter, 'm', 'caution')]
  })
}

/** The two staggered rows of an end joint, across the row. */
export function transversePitch(ground: Ground): Check[] {
  const { input } = ground
  const row = ground.derived.rows.find((r) => r.kind === 'joint')
  if (!row) return []
  const least = transverseMinimum({ k: input.rules.transversePitch, D: row.diameter })
  const guide = transverseGuide({ p: input.rows.joint.pitch })
  const told = {
    id: 'pitch.between-joint-rows',
    says: `The two rows of an end joint stand ${mm(input.shell.joint.rowSpacing)} mm apart; the least is ${mm(least.value)} mm, and three quarters of the pitch, ${mm(guide.value)} mm, is usual.`,
    source: 'rules.transverse pitch of the definition; TM 10-5410-229-13P: at least 2 1/2 D',
    concerns: ground.derived.rows.filter((r) => r.kind === 'joint').map((r) => r.id),
    worked: [least, guide],
  }
  return [distanceCheck(told, least.value, input.shell.joint.rowSpacing)]
}
