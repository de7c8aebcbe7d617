/**
 * Tables that run over as many sheets as they need, their heading repeated on each. Text in a cell is wrapped where the column
 * says so and cut short otherwise; a row is never split between sheets.
 */
import { lettered, shorten, wrap } from './lettering.js'
import type { LetterHeight, Mark } from './page.js'
import { FINE, letter, lines, OUTLINE, rectangle, THIN } from './page.js'
import type { Room } from './paper-sizes.js'

export interface Column {
  readonly head: string
  /** mm */
  readonly width: number
  readonly align?: 'left' | 'right'
  readonly wraps?: boolean
  readonly bold?: boolean
}

/** A row of cells, or a heading across the whole table. */
export type Row = readonly string[] | { readonly heading: string }

export interface TableStyle {
  readonly height?: LetterHeight
  /** lines of a row below which the next begins, mm beyond the lettering */
  readonly loose?: number
  /** a fine rule under each row, under every fifth, or none */
  readonly rules?: 'each' | 'fifth' | 'none'
}

const PAD = 1.5
const isHeading = (row: Row): row is { readonly heading: string } => !Array.isArray(row)

/** Height of one line of lettering with the space under it. */
const pitchOf = (height: number): number => height * 1.6

const tableWidth = (columns: readonly Column[]): number => columns.reduce((sum, column) => sum + column.width, 0)

interface Laid {
  readonly row: Row
  readonly cells: readonly (readonly string[])[]
  readonly tall: number
}

function lay(columns: readonly Column[], row: Row, height: LetterHeight, loose: number): Laid {
  if (isHeading(row)) return { row, cells: [], tall: pitchOf(height) + loose + 2.5 }
  const cells = columns.map((column, i) => {
    const text = lettered(row[i] ?? '')
    const bold = column.bold ?? false
    return column.wraps ? wrap(text, column.width - 2 * PAD, height, bold) : [shorten(text, column.width - 2 * PAD, height, bold)]
  })
  return { row, cells, tall: pitchOf(height) * Math.max(...cells.map((cell) => cell.length)) + loose }
}

/** Rows spread over rooms: `roomFor(n)` gives the rectangle of the nth block. A heading keeps the row after it. */
export function tableBlocks(
  columns: readonly Column[],
  rows: readonly Row[],
  roomFor: (block: number) => Room,
  style: TableStyle = {},
): readonly (readonly Mark[])[] {
  const { height = 2.5, loose = 1 } = style
  const head = pitchOf(height) + 2
  const laid = rows.map((row) => lay(columns, row, height, loose))
  const blocks: Laid[][] = [[]]
  let left = roomFor(0).height - head
  let under: Laid | null = null
  laid.forEach((item, i) => {
    if (isHeading(item.row)) under = item
    const next = isHeading(item.row) ? (laid[i + 1]?.tall ?? 0) : 0
    if (item.tall + next > left && blocks[blocks.length - 1].length > 0) {
      blocks.push([])
      left = roomFor(blocks.length - 1).height - head
      if (under !== null && !isHeading(item.row)) {
        const again = continued(under)
        blocks[blocks.length - 1].push(again)
        left -= again.tall
      }
    }
    blocks[blocks.length - 1].push(item)
    left -= item.tall
  })
  return blocks.map((items, n) => drawBlock(columns, items, roomFor(n), style))
}

/** The heading said again where its rows run on. */
const continued = (item: Laid): Laid => ({ ...item, row: { heading: `${(item.row as { readonly heading: string }).heading} (continued)` } })

function drawBlock(columns: readonly Column[], items: readonly Laid[], room: Room, style: TableStyle): readonly Mark[] {
  const { height = 2.5, loose = 1, rules = 'each' } = style
  const group = 'table'
  const width = tableWidth(columns)
  const head = pitchOf(height) + 2
  const marks: Mark[] = []
  const starts = columns.map((_, i) => room.x + columns.slice(0, i).reduce((sum, c) => sum + c.width, 0))
  const put = (i: number, text: string, level: number, bold: boolean): void => {
    if (text === '') return
    const right = columns[i].align === 'right'
    marks.push(
      letter(right ? starts[i] + columns[i].width - PAD : starts[i] + PAD, level, text, {
        height,
        anchor: right ? 'end' : 'start',
        bold,
        group,
      }),
    )
  }
  for (const [i, column] of columns.entries()) put(i, shorten(column.head, column.width - 2 * PAD, height, true), room.y + height + 1, true)
  const ruled: (readonly [number, number, number, number])[] = []
  let y = room.y + head
  let since = 0
  for (const item of items) {
    since = isHeading(item.row) ? 0 : since + 1
    if (isHeading(item.row)) {
      marks.push(
        letter(room.x + PAD, y + height + 2.2, shorten(lettered(item.row.heading), width - 2, height, true), { height, bold: true, group }),
      )
    } else {
      item.cells.forEach((cell, i) => {
        // a line of lettering stands in the middle of its pitch, clear of the rules above and below
        const first = y + loose / 2 + (pitchOf(height) + height) / 2
        for (const [n, text] of cell.entries()) put(i, text, first + n * pitchOf(height), columns[i].bold ?? false)
      })
    }
    y += item.tall
    if (rules === 'each' || (rules === 'fifth' && since % 5 === 0)) ruled.push([room.x, y, room.x + width, y])
  }
  marks.push(lines([[room.x, room.y + head - 0.4, room.x + width, room.y + head - 0.4]], { width: OUTLINE, group }))
  if (ruled.length > 0) marks.push(lines(ruled, { width: FINE, group }))
  return marks
}

/** A heading and a sentence or two over a table; gives the marks and how far down they reach. */
export function introduction(
  x: number,
  y: number,
  width: number,
  heading: string,
  sentences: readonly string[],
): { readonly marks: readonly Mark[]; readonly depth: number } {
  const group = 'introduction'
  const marks: Mark[] = []
  let level = y + 5
  for (const text of wrap(lettered(heading), width, 5, true)) {
    marks.push(letter(x, level, text, { height: 5, bold: true, group }))
    level += 7.5
  }
  level -= 1
  for (const sentence of sentences) {
    for (const text of wrap(lettered(sentence), width, 2.5)) {
      marks.push(letter(x, level, text, { height: 2.5, group }))
      level += 4.2
    }
  }
  return { marks, depth: level - y + 1 }
}

/** A bar that shows a margin: black to the demand's share of the capacity, open beyond; full and crossed when it fails. */
export function marginBar(x: number, y: number, width: number, height: number, margin: number | null): readonly Mark[] {
  const group = 'margin'
  const frame = rectangle(x, y, width, height, { width: THIN, group })
  if (margin === null) return [frame, lines([[x, y + height, x + width, y]], { width: FINE, group })]
  const share = Math.min(1, Math.max(0, 1 / (1 + Math.max(-0.999, margin))))
  const marks: Mark[] = [rectangle(x, y, width * share, height, { width: null, fill: margin < 0 ? 0 : 0.45, group }), frame]
  if (margin < 0) marks.push(lines([[x + width, y - 1, x + width, y + height + 1]], { width: OUTLINE, group }))
  return marks
}
