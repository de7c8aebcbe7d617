/** Which column of a hole list is which, from the words of its header or from the look of its numbers. */
import type { ListUnit } from './nouns.js'

export interface Columns {
  /** the running dimension when `y` is null */
  readonly x: number
  readonly y: number | null
  readonly diameter: number | null
  readonly label: number | null
  readonly row: number | null
  readonly unit: ListUnit | null
}

export function unitInWords(word: string): ListUnit | null {
  const bare = word.toLowerCase().replace(/[^a-z"]/g, '')
  if (/^(mm|millimet(er|re)s?)$/.test(bare)) return 'mm'
  return /^(in|inch|inches|")$/.test(bare) ? 'in' : null
}

/** `x mm`, `X (in)`, `x_mm`, `X[inch]` -> word x with its unit. */
function wordAndUnit(cell: string): { readonly word: string; readonly unit: ListUnit | null } {
  const parts = cell
    .trim()
    .toLowerCase()
    .split(/[\s_([\])]+/)
    .filter((p) => p !== '')
  const unit = parts.map(unitInWords).find((u) => u !== null) ?? null
  return { word: parts.filter((p) => unitInWords(p) === null).join(' '), unit }
}

const WORDS = {
  x: /^(x|x coordinate|x position)$/,
  y: /^(y|y coordinate|y position)$/,
  running: /^(running|running dimension|running x|running y|tape|reading|distance)$/,
  diameter: /^(d|dia|diam|diameter|ø|hole|hole diameter|size)$/,
  id: /^(id|name|label|hole id|mark)$/,
  no: /^(no|no\.|nr|number|#|n|hole no|hole number)$/,
  row: /^(row|line|rivet row)$/,
} as const

/** Null when the cells are not a header this program knows. */
export function columnsFromCells(cells: readonly string[]): Columns | null {
  const read = cells.map(wordAndUnit)
  const find = (kind: keyof typeof WORDS): number | null => {
    const at = read.findIndex((c) => WORDS[kind].test(c.word))
    return at < 0 ? null : at
  }
  const x = find('x'),
    y = find('y')
  const first = x !== null && y !== null ? x : (find('running') ?? x ?? y)
  if (first === null) return null
  return {
    x: first,
    y: x !== null && y !== null ? y : null,
    diameter: find('diameter'),
    label: find('id') ?? find('no'),
    row: find('row'),
    unit: read[first].unit,
  }
}

const counts = (column: readonly number[]): boolean =>
  column.every((v, i) => v === column[0] + i) && (column[0] === 0 || column[0] === 1) && column.length > 1

/** Without a header: x; x, y; no, x, y; x, y, dia; or no, x, y, dia. Null when the lines are not all as wide, or hold other things. */
export function columnsFromNumbers(rows: readonly (readonly number[])[]): Columns | null {
  const width = rows.length ? Math.min(...rows.map((r) => r.length)) : 0
  if (width === 0) return null
  const numbered = width > 1 && counts(rows.map((r) => r[0]))
  const from = numbered || (width > 2 && rows.every((r) => Number.isNaN(r[0]))) ? 1 : 0
  const label = from === 1 ? 0 : null
  const left = width - from
  if (left > 3 || rows.some((r) => r.slice(from, width).every((v) => Number.isNaN(v)))) return null
  return { x: from, y: left > 1 ? from + 1 : null, diameter: left > 2 ? from + 2 : null, label, row: null, unit: null }
}
