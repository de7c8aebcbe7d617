/** Reading a pattern's holes as objects: the only place where the parallel arrays are unpacked. */
import type { Design } from './design.js'
import type { FastenerRow, HoleRole, Part, Pattern, Place } from './nouns.js'

export interface Hole {
  /** the fastener's id, the same in every layer it goes through */
  readonly id: string
  readonly row: string
  /** on this pattern's own mid surface, m */
  readonly x: number
  readonly y: number
  readonly diameter: number
  readonly role: HoleRole
  readonly place: Place
}

/** row/from-to/number: permanent, whatever is refitted elsewhere. */
export function fastenerId(row: Pick<FastenerRow, 'id' | 'spans' | 'span' | 'number'>, i: number): string {
  const span = row.spans[row.span[i]]
  return `${row.id}/${span.from}-${span.to}/${row.number[i]}`
}

export function placeOf(row: Pick<FastenerRow, 'station' | 'girth' | 'waterline' | 'end' | 'buttock'>, i: number): Place {
  const y = row.buttock?.[i]
  const g = y ?? row.girth[i]
  return {
    side: Math.abs(g) < 1e-9 ? 'centre' : g > 0 ? 'right' : 'left',
    station: row.station[i],
    girth: y === undefined ? Math.abs(g) : 0,
    waterline: row.waterline[i],
    ...(y === undefined ? {} : { buttock: y }),
    ...(row.end ? { end: { which: row.end.which, y: row.end.y[i] } } : {}),
  }
}

const ROWS = new WeakMap<readonly FastenerRow[], ReadonlyMap<string, FastenerRow>>()

/** Rows by id, indexed once per list of rows. */
export function rowsById(rows: readonly FastenerRow[]): ReadonlyMap<string, FastenerRow> {
  let map = ROWS.get(rows)
  if (!map) {
    map = new Map(rows.map((r) => [r.id, r]))
    ROWS.set(rows, map)
  }
  return map
}

/** A row of rivets, or of bolts or screws. */
export function rowNamed(design: Pick<Design, 'rows' | 'bolts'>, id: string): FastenerRow | undefined {
  return rowsById(design.rows).get(id) ?? rowsById(design.bolts).get(id)
}

export function holesOf(design: Pick<Design, 'rows' | 'bolts'>, _part: Part, pattern: Pattern): Hole[] {
  const set = pattern.holes
  const role = set.role ?? 'full'
  return set.x.map((x, k) => {
    const row = rowNamed(design, set.rows[set.row[k]])
    if (!row) throw new Error(`pattern holds holes of an unknown row ${set.rows[set.row[k]]}`)
    const i = set.index[k]
    return { id: fastenerId(row, i), row: row.id, x, y: set.y[k], diameter: set.diameter[k], role, place: placeOf(row, i) }
  })
}
