/** Building a row: spans between permanent control points, each fitted to whole pitches, every fastener addressed. */
import type { FastenerRow, Span } from '../nouns.js'
import { fittedPitch } from './spacing.formulas.js'

/** A row before its stacks are known. Girth signed, m. */
export interface RowDraft {
  readonly id: string
  readonly says: string
  readonly kind: FastenerRow['kind']
  readonly joint: string
  readonly fastener: string
  readonly diameter: number
  readonly pitch: number
  readonly source: string
  readonly spans: Span[]
  readonly span: number[]
  readonly number: number[]
  readonly station: number[]
  readonly girth: number[]
  readonly shared: Record<number, string[]>
}

export function startRow(head: Omit<RowDraft, 'spans' | 'span' | 'number' | 'station' | 'girth' | 'shared'>): RowDraft {
  return { ...head, spans: [], span: [], number: [], station: [], girth: [], shared: {} }
}

/** Whole spaces of a span: as many as the fitted pitch goes into its length; at least one. */
function spacesIn(length: number, pitch: number): number {
  return Math.round(length / fittedPitch.eval({ L: length, p_n: pitch }))
}

export interface SpanPlan {
  readonly from: string
  readonly to: string
  readonly start: number
  readonly end: number
  /** a fastener stands on the span's own ends */
  readonly atStart: boolean
  readonly atEnd: boolean
  /** stand at half pitches, leaving out those beside a control point, where a lap's edge may run (the second of two staggered rows) */
  readonly staggered?: boolean
  /** rows that share the fastener at the start or end */
  readonly sharedStart?: readonly string[]
  readonly sharedEnd?: readonly string[]
}

/**
 * Adds the fasteners of one span. A fastener between two spans belongs to the span that starts there (number 0), so a
 * span's own refit renames nothing else. `place` maps the parameter to station and signed girth, `keep` leaves out
 * what would come too near a cut.
 */
export function addSpan(
  row: RowDraft,
  plan: SpanPlan,
  place: (u: number) => readonly [number, number],
  keep: (station: number, girth: number) => boolean = () => true,
  placed: (u: number) => void = () => undefined,
): void {
  const length = plan.end - plan.start
  const n = spacesIn(length, row.pitch)
  const step = length / n
  const first = row.station.length
  const add = (number: number, u: number, shared: readonly string[] | undefined): void => {
    const at = place(u)
    if (!keep(at[0], at[1])) return
    if (shared && shared.length > 0) row.shared[row.station.length] = [...shared]
    row.span.push(row.spans.length)
    row.number.push(number)
    row.station.push(at[0])
    row.girth.push(at[1])
    placed(u)
  }
  if (plan.atStart) add(0, plan.start, plan.sharedStart)
  if (plan.staggered && n >= 3) {
    for (let i = 1; i < n - 1; i++) add(i + 1, plan.start + (i + 0.5) * step, undefined)
  } else {
    for (let i = 1; i < n; i++) add(i, plan.start + i * step, undefined)
  }
  if (plan.atEnd) add(n, plan.end, plan.sharedEnd)
  row.spans.push({ from: plan.from, to: plan.to, first, count: row.station.length - first, spaces: n, pitch: step })
}

/** Whether two rows stand on the same places with the same names. */
export function sameRow(a: RowDraft, b: RowDraft): boolean {
  for (const key of ['id', 'says', 'kind', 'joint', 'fastener', 'diameter', 'pitch', 'source'] as const) if (a[key] !== b[key]) return false
  if (a.station.length !== b.station.length || a.spans.length !== b.spans.length) return false
  for (let i = 0; i < a.station.length; i++) {
    if (a.station[i] !== b.station[i] || a.girth[i] !== b.girth[i] || a.span[i] !== b.span[i] || a.number[i] !== b.number[i]) return false
  }
  return a.spans.every((s, k) => s.from === b.spans[k].from && s.to === b.spans[k].to && s.pitch === b.spans[k].pitch) && sameShared(a, b)
}

function sameShared(a: RowDraft, b: RowDraft): boolean {
  const keys = Object.keys(a.shared)
  return keys.length === Object.keys(b.shared).length && keys.every((k) => a.shared[Number(k)].join() === b.shared[Number(k)]?.join())
}
