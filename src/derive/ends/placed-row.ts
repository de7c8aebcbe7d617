/** A row of an end on the nose or on the tail: its stations, and the names it goes by there. */
import type { FastenerRow } from '../nouns.js'
import type { LocalRow } from './laid-row.js'

/** Puts a local row on the nose or the tail. */
export function placedRow(local: LocalRow, end: 'nose' | 'tail', joint: number): Omit<FastenerRow, 'stack' | 'stacks'> {
  const sign = end === 'nose' ? -1 : 1
  const { draft } = local
  const columns = columnsOf(local)
  // an opening is named once for the whole coach; all else is of one end
  const name = (id: string): string => (draft.kind === 'rim' ? id : `${end}-${id}`)
  return {
    ...draft,
    id: name(draft.id),
    joint: `joint-${name(draft.id)}`,
    says: `${end}, ${draft.says}`,
    shared: Object.fromEntries(Object.entries(draft.shared).map(([i, rows]) => [i, rows.map(name)])),
    station: columns.out.map((x) => joint + sign * x),
    girth: columns.girth,
    waterline: columns.waterline,
    end: { which: end, azimuth: columns.azimuth, y: columns.y },
  }
}

interface Columns {
  readonly out: readonly number[]
  readonly girth: readonly number[]
  readonly waterline: readonly number[]
  readonly azimuth: readonly number[]
  readonly y: readonly number[]
}

const COLUMNS = new WeakMap<LocalRow, Columns>()

/** What a row's fasteners have on the nose and on the tail alike, once for both. */
function columnsOf(local: LocalRow): Columns {
  const known = COLUMNS.get(local)
  if (known) return known
  const { located } = local
  const made = {
    out: located.map((l) => l.point[0]),
    // on the centre line a wrapped sheet's rounding must not choose the hand
    girth: located.map((l) => (l.point[1] < -1e-9 ? -l.girth : l.girth)),
    waterline: located.map((l) => l.point[2]),
    azimuth: located.map((l) => l.phi),
    y: located.map((l) => l.point[1]),
  }
  COLUMNS.set(local, made)
  return made
}
