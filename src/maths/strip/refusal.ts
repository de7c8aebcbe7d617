/** Why no sheet can be wrapped between two edges, where, and by how much at the least it would have to twist there. */
import { bestBranch, cornerToCorner, type Rows, rowsOf } from './branch.js'
import { warp } from './ruling.js'
import { edgePoint } from './space-curve.js'

export type Reason = 'no root' | 'not monotone' | 'edge of regression'

export interface RefusedStrip {
  readonly kind: 'refused'
  readonly reason: Reason
  /** arc lengths along both edges of the line that is least warped at the worst place, m */
  readonly at: Place
  /** least angle between the sheet's planes at the two ends of any line from that place on the first edge, rad */
  readonly leastWarp: number
  readonly says: string
}

export function refusedAt(rows: Rows, reason: Reason, s: number, t?: number): RefusedStrip {
  const least = leastAt(rows, s)
  return Object.freeze({
    kind: 'refused' as const,
    reason,
    at: Object.freeze({ s, t: t ?? least.t }),
    leastWarp: least.warp,
    says: sentence(reason, s, least.warp),
  })
}

function sentence(reason: Reason, s: number, leastWarp: number): string {
  const place = `${Math.round(s * 1000)} mm along the first edge`
  if (reason === 'no root')
    return `No flat sheet wraps between these edges: ${place} every straight line across is twisted, by ${((leastWarp * 180) / Math.PI).toFixed(2)} degrees at the least. Form this panel, or move its edges.`
  if (reason === 'not monotone')
    return `No flat sheet wraps between these edges: ${place} the straight lines across would have to run back over those before them. Form this panel, or split it there.`
  return `No flat sheet wraps between these edges: ${place} the straight lines across meet inside the panel, and the sheet would fold over there. Form this panel, or move its edges.`
}

/** The strip refused, with the reason found by allowing in turn what a sheet cannot do. */
export function whyRefused(rows: Rows, reached: number): RefusedStrip {
  const turned = bestBranch(rows, { turned: true, backward: false }).branch
  if (turned) {
    const folded = cornerToCorner(rows, turned).find(({ line }) => !line.good)?.line
    if (folded) return refusedAt(rows, 'edge of regression', folded.p.at, folded.q.at)
  }
  const back = runsBack(rows)
  if (back) return back
  const bare = withoutRoot(rows)
  if (bare) return bare
  const stop = rows.roots[Math.max(0, reached)].find((root) => root.good)
  return refusedAt(rows, 'not monotone', rows.p[Math.max(0, reached)].at, stop?.q.at)
}

/** Refused at a place between two rulings that no ruling joins: the branch folds back there, or is lost. */
export const whyLost = (rows: Rows, s: number, t: number): RefusedStrip => runsBack(rows) ?? refusedAt(rows, 'no root', s, t)

/** Tried along both edges: a branch that folds in one of them may look like three branches along the other. */
function runsBack(rows: Rows): RefusedStrip | null {
  const back = backAlong(rows) ?? turnedRound(backAlong(rowsOf(rows.edgeQ, rows.edgeP)))
  return back && refusedAt(rows, 'not monotone', back.s, back.t)
}

interface Place {
  readonly s: number
  readonly t: number
}

/** Where rulings that follow each other along the first edge run back along the second, null where they do not. */
function backAlong(rows: Rows): Place | null {
  const lines = bestBranch(rows, { turned: false, backward: true }).branch?.lines ?? []
  const at = lines.findIndex((line, i) => i > 0 && line.q.at < lines[i - 1].q.at)
  return at > 0 ? { s: lines[at].p.at, t: lines[at].q.at } : null
}

const turnedRound = (place: Place | null): Place | null => place && { s: place.t, t: place.s }

/** Of the rows that hold no ruling, first of all those between rows that do, the one whose best line is warped the most. */
function withoutRoot(rows: Rows): RefusedStrip | null {
  const has = rows.roots.map((row) => row.some((root) => root.good))
  const bare = has.flatMap((good, i) => (good ? [] : [i]))
  if (bare.length === 0) return null
  const [first, last] = [has.indexOf(true), has.lastIndexOf(true)]
  const gaps = bare.filter((i) => i > first && i < last)
  const worst = (gaps.length > 0 ? gaps : bare)
    .map((i) => ({ i, warp: leastAt(rows, rows.p[i].at).warp }))
    .reduce((a, b) => (b.warp > a.warp ? b : a))
  return refusedAt(rows, 'no root', rows.p[worst.i].at)
}

/** The least warped line from s on the first edge: the best column, then between its neighbours by golden section. */
function leastAt(rows: Rows, s: number): { readonly t: number; readonly warp: number } {
  const { edgeP, edgeQ, q } = rows
  const p = edgePoint(edgeP, s)
  const at = (t: number): number => warp(p, edgePoint(edgeQ, t))
  const columns = q.map((each) => warp(p, each))
  const best = columns.indexOf(Math.min(...columns))
  let [low, high] = [q[Math.max(0, best - 1)].at, q[Math.min(q.length - 1, best + 1)].at]
  const golden = (Math.sqrt(5) - 1) / 2
  for (let k = 0; k < 48; k++) {
    const [a, b] = [high - golden * (high - low), low + golden * (high - low)]
    if (at(a) < at(b)) high = b
    else low = a
  }
  const middle = (low + high) / 2
  return at(middle) < columns[best] ? { t: middle, warp: at(middle) } : { t: q[best].at, warp: columns[best] }
}
