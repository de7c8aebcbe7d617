/** Fasteners against each other: no two nearer than the least pitch, and every fitted pitch near the one wanted. */
import type { Check, FastenerRow } from '../../derive/nouns.js'
import { fastenerId, placeOf } from '../../derive/holes.js'
import { capacityCheck, distanceCheck, HAIR, mm } from '../check.js'
import type { Ground } from './ground.js'

const SOURCE = 'NAVEDTRA 14018, page 13-43: never nearer than 3 D'

interface Near { readonly a: FastenerRow; readonly i: number; readonly b: FastenerRow; readonly j: number; readonly distance: number; readonly limit: number }

/** Closest pair of every two rows that come within reach of the limit; skin and lining are looked at apart. */
function nearPairs(ground: Ground, rows: readonly FastenerRow[]): Near[] {
  const k = ground.input.rules.minPitch
  const cell = k * Math.max(...rows.map((r) => r.diameter), 1e-6)
  const grid = new Map<number, number[]>()
  const flat: [FastenerRow, number][] = []
  const found = new Map<string, Near>()
  const key = (cx: number, cg: number): number => cx * 100003 + cg
  for (const row of rows) {
    for (let i = 0; i < row.station.length; i++) {
      const cx = Math.floor(row.station[i] / cell)
      const cg = Math.floor(row.girth[i] / cell)
      for (let dx = -1; dx <= 1; dx++) {
        for (let dg = -1; dg <= 1; dg++) {
          for (const other of grid.get(key(cx + dx, cg + dg)) ?? []) {
            const [b, j] = flat[other]
            const distance = Math.hypot(row.station[i] - b.station[j], row.girth[i] - b.girth[j])
            const limit = k * Math.max(row.diameter, b.diameter)
            if (distance >= limit - HAIR) continue
            const name = `${b.id} ${row.id}`
            const best = found.get(name)
            if (!best || distance < best.distance) found.set(name, { a: b, i: j, b: row, j: i, distance, limit })
          }
        }
      }
      const here = key(cx, cg)
      const list = grid.get(here)
      if (list) list.push(flat.length)
      else grid.set(here, [flat.length])
      flat.push([row, i])
    }
  }
  return [...found.values()]
}

export function spacing(ground: Ground): Check[] {
  const rows = ground.derived.rows
  const groups = [rows.filter((r) => r.kind !== 'lining'), rows.filter((r) => r.kind === 'lining')]
  const near = groups.flatMap((g) => (g.length > 0 ? nearPairs(ground, g) : []))
  if (near.length === 0) {
    const d = Math.max(...rows.map((r) => r.diameter))
    const k = ground.input.rules.minPitch
    return [distanceCheck({
      id: 'spacing.rivets', says: `No two fasteners of the shell stand nearer than ${k} D (${mm(k * d)} mm for the largest).`, source: SOURCE,
    }, k, Math.max(k, k))]
  }
  return near.map((n) => distanceCheck({
    id: `spacing.${n.a.id}.${n.b.id}`,
    says: `${fastenerId(n.a, n.i)} and ${fastenerId(n.b, n.j)} are ${mm(n.distance)} mm apart; they need ${mm(n.limit)} mm.`,
    source: SOURCE, places: [placeOf(n.a, n.i)], concerns: [n.a.id, n.b.id],
  }, n.limit, n.distance))
}

/** How far a fitted pitch may stray above the wanted one before someone should look: what rounding one space to two gives. */
const STRAY = 1.5

export function fittedPitches(ground: Ground): Check[] {
  return ground.derived.rows.map((row) => {
    const widest = row.spans.filter((s) => s.count > 1).reduce((m, s) => (s.pitch > m.pitch ? s : m), { pitch: 0, from: '', to: '', first: 0, count: 0 })
    return capacityCheck({
      id: `pitch.${row.id}`,
      says: `The widest fitted pitch of ${row.id} is ${mm(widest.pitch)} mm, from ${widest.from} to ${widest.to}; the definition asks for ${mm(row.pitch)} mm.`,
      source: 'shop practice: whole pitches nearest to the one wanted', places: row.station.length > 0 ? [placeOf(row, widest.first)] : [], concerns: [row.id],
    }, widest.pitch, STRAY * row.pitch, 'm', 'caution')
  })
}
