/** A table on as many bordered sheets as it needs: the shape shared by every list of the packet. */
import type { Mark, Page } from '../drawing/page.js'
import type { PaperSize, Room } from '../drawing/paper-sizes.js'
import { sheetsOf } from '../drawing/paper-sizes.js'
import type { PrintOptions, TitleDraft } from '../drawing/sheet.js'
import { roomAbove, seriesOf, sheetsFrom } from '../drawing/sheet.js'
import type { Column, Row, TableStyle } from '../drawing/table.js'
import { introduction, tableBlocks } from '../drawing/table.js'

export interface TableSheet {
  readonly name: string
  readonly says: string
  readonly heading: string
  /** sentences over the table on the first sheet; the first is repeated on the others */
  readonly sentences: readonly string[]
  readonly title: TitleDraft
  readonly columns: readonly Column[]
  readonly rows: readonly Row[]
  /** across on the second sheet size of the series, upright on the first */
  readonly wide?: boolean
  /** blocks of the table side by side */
  readonly abreast?: number
  readonly style?: TableStyle
}

const PADDING = 4
const GUTTER = 4

export function tableSheets(sheet: TableSheet, options: PrintOptions): readonly Page[] {
  const size: PaperSize = sheetsOf(seriesOf(options))[sheet.wide ? 1 : 0]
  const whole = roomAbove(size, 'slim')
  const inner: Room = { x: whole.x + PADDING, y: whole.y + PADDING, width: whole.width - 2 * PADDING, height: whole.height - 2 * PADDING }
  const abreast = sheet.abreast ?? 1
  const head = (page: number): ReturnType<typeof introduction> =>
    introduction(
      inner.x,
      inner.y,
      inner.width,
      page === 0 ? sheet.heading : `${sheet.heading} (continued)`,
      page === 0 ? sheet.sentences : sheet.sentences.slice(0, 1),
    )
  const wide = (inner.width - GUTTER * (abreast - 1)) / abreast
  const roomFor = (block: number): Room => {
    const depth = head(block < abreast ? 0 : 1).depth
    return { x: inner.x + (block % abreast) * (wide + GUTTER), y: inner.y + depth, width: wide, height: inner.height - depth }
  }
  const blocks = sheet.rows.length === 0 ? [[]] : tableBlocks(sheet.columns, sheet.rows, roomFor, sheet.style)
  const count = Math.ceil(blocks.length / abreast)
  return sheetsFrom(
    Array.from({ length: count }, (_, n) => {
      const marks: readonly Mark[] = [...head(n).marks, ...blocks.slice(n * abreast, (n + 1) * abreast).flat()]
      return {
        name: count === 1 ? sheet.name : `${sheet.name}-${n + 1}`,
        says: sheet.says,
        size,
        block: 'slim' as const,
        title: sheet.title,
        marks,
      }
    }),
  )
}

/** Widths shared out over the room a table has: the flexible columns take what is left. */
export function widthsFor(options: PrintOptions, wide: boolean, fixedWidths: number, abreast = 1): number {
  const room = roomAbove(sheetsOf(seriesOf(options))[wide ? 1 : 0], 'slim')
  return (room.width - 2 * PADDING - GUTTER * (abreast - 1)) / abreast - fixedWidths
}
