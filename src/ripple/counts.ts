/** Counts, masses and sizes over all, and each row whose fasteners are not what they were. */

import { isMissing } from '../checks/explain/entry.js'
import { strengthEntries } from '../checks/explain/explain-strength.js'
import type { Design } from '../derive/design.js'
import type { FastenerRow } from '../derive/nouns.js'
import { same } from '../quantity/same.js'
import { both, countBy, isNothing, matched, swap, tallies } from './differ.js'
import type { Both, Ripple, RowChange, Tally } from './nouns.js'

export function countChanges(before: Design, after: Design): Ripple['counts'] {
  const [old, now] = [before.totals, after.totals]
  const fasteners = (d: Design) =>
    countBy(
      d.rows,
      (r) => r.kind,
      (r) => r.station.length,
    )
  return {
    solid: both(old.fasteners.solid, now.fasteners.solid),
    blind: both(old.fasteners.blind, now.fasteners.blind),
    holes: both(old.holes, now.holes),
    parts: both(before.parts.length, after.parts.length),
    lengths: tallies(old.fasteners.byLength, now.fasteners.byLength),
    rows: rowChanges(before, after),
    kinds: tallies(fasteners(before), fasteners(after)),
    made: tallies(
      countBy(before.parts, (p) => p.kind),
      countBy(after.parts, (p) => p.kind),
    ),
    sheets: tallies(
      countBy(old.sheets, (s) => s.stock),
      countBy(now.sheets, (s) => s.stock),
    ),
  }
}

export function massChanges({ totals: old }: Design, { totals: now }: Design): Ripple['masses'] {
  const values = (masses: Design['totals']['masses']) => Object.fromEntries(Object.entries(masses).map(([kind, m]) => [kind, m.value]))
  return { total: both(old.mass.value, now.mass.value), kinds: tallies(values(old.masses), values(now.masses)) }
}

export function overallChanges(before: Design, after: Design): readonly Tally[] {
  const sizes = ({ totals, section }: Design) => ({
    'overall length': totals.overallLength,
    'body length': totals.bodyLength,
    'overall width': totals.overallWidth,
    'girth from the crown to the toe': section.halfGirth,
    'girth from the crown to the floor': section.floorGirth,
  })
  return tallies(sizes(before), sizes(after))
}

/** Rows with the greatest change of count first, then those only fitted anew or otherwise stacked. */
function rowChanges(before: Design, after: Design): readonly RowChange[] {
  const { added, removed, kept } = matched(before.rows, after.rows)
  const changes = [
    ...added.map((row) => whole(after, row, 'added')),
    ...removed.map((row) => whole(before, row, 'removed')),
    ...kept.flatMap(([was, now]) => rowChange(before, after, was, now) ?? []),
  ]
  const by = ({ count }: RowChange): number => Math.abs(count.after - count.before)
  return changes.sort((a, b) => by(b) - by(a) || (a.id < b.id ? -1 : 1))
}

function whole(design: Design, row: FastenerRow, status: 'added' | 'removed'): RowChange {
  const pair = <T>(value: T, none: T): Both<T> => (status === 'added' ? both(none, value) : both(value, none))
  const list = (names: readonly string[]) => (status === 'added' ? { added: names, removed: [] } : { added: [], removed: names })
  return {
    id: row.id,
    says: row.says,
    kind: row.kind,
    status,
    fastener: pair<string | null>(row.fastener, null),
    solid: isSolid(design, row),
    count: pair(row.station.length, 0),
    spans: { ...list(row.spans.map(spanName)), refitted: [], by: 0 },
    bearing: null,
    lengths: list(lengthsOf(row)),
  }
}

function rowChange(before: Design, after: Design, was: FastenerRow, now: FastenerRow): RowChange | null {
  const pitches = new Map(was.spans.map((s) => [spanName(s), s.pitch]))
  const refits = now.spans.flatMap((s) => {
    const old = pitches.get(spanName(s))
    return old === undefined || same(old, s.pitch) ? [] : [{ name: spanName(s), by: Math.abs(s.pitch - old) }]
  })
  const change: RowChange = {
    id: now.id,
    says: now.says,
    kind: now.kind,
    status: 'changed',
    fastener: both(was.fastener, now.fastener),
    solid: isSolid(after, now),
    count: both(was.station.length, now.station.length),
    spans: {
      ...swap(was.spans.map(spanName), now.spans.map(spanName)),
      refitted: refits.map((r) => r.name),
      by: Math.max(0, ...refits.map((r) => r.by)),
    },
    bearing: bearingChange(before, after, was, now),
    lengths: swap(lengthsOf(was), lengthsOf(now)),
  }
  const stays =
    was.fastener === now.fastener &&
    was.station.length === now.station.length &&
    isNothing(change.spans) &&
    refits.length === 0 &&
    change.bearing === null &&
    isNothing(change.lengths)
  return stays ? null : change
}

const spanName = ({ from, to }: { readonly from: string; readonly to: string }): string => `${from} to ${to}`
const lengthsOf = (row: FastenerRow): readonly string[] => [...new Set(row.stacks.map((s) => `${row.fastener} ${s.name}`))]
const isSolid = ({ definition }: Design, row: FastenerRow): boolean =>
  definition.fasteners.find((f) => f.id === row.fastener)?.kind === 'solid'

/** Worked only where a layer's thickness or material may have changed. */
function bearingChange(before: Design, after: Design, was: FastenerRow, now: FastenerRow): Both<number> | null {
  const sheets = (row: FastenerRow): unknown => row.stacks.map((s) => [s.thickness, s.count, s.parts])
  const isKept =
    same(sheets(was), sheets(now)) &&
    was.fastener === now.fastener &&
    before.definition.rules.edgeDistance === after.definition.rules.edgeDistance
  if (isKept) return null
  const [a, b] = [bearingOf(before, was), bearingOf(after, now)]
  return a === null || b === null || same(a, b) ? null : both(a, b)
}

/** N; null where no table has the figure. */
function bearingOf(design: Design, row: FastenerRow): number | null {
  const entry = strengthEntries({ design }, row).find((e) => e.id === `row.${row.id}.strength.bearing`)
  const found = entry?.work()
  return found === undefined || isMissing(found) ? null : found.value
}
