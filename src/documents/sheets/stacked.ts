/** Words and tables set one under the other in a column of any sheet, each row as tall as its wrapped words. */
import { lettered, wrap } from '../drawing/lettering.js'
import type { Mark } from '../drawing/page.js'
import { letter } from '../drawing/page.js'
import type { Column, Row } from '../drawing/table.js'
import { tableBlocks } from '../drawing/table.js'

export interface Stacked {
  readonly marks: Mark[]
  readonly x: number
  readonly width: number
  y: number
}

export function stackText(to: Stacked, text: string, bold = false): void {
  for (const row of wrap(lettered(text), to.width, 2.5, bold)) {
    to.marks.push(letter(to.x, to.y + 2.5, row, { height: 2.5, bold, group: 'words' }))
    to.y += 4.2
  }
  to.y += 1.2
}

const [PAD, PITCH, LOOSE] = [1.5, 4, 1]

/** A table that has to stand whole between here and `foot`; throws when it does not. */
export function stackRows(to: Stacked, columns: readonly Column[], rows: readonly Row[], foot: number): void {
  const tall = rows.reduce((sum, row) => sum + rowHeight(columns, row), PITCH + 2)
  const blocks = tableBlocks(columns, rows, () => ({ x: to.x, y: to.y, width: to.width, height: foot - to.y }), {
    height: 2.5,
    loose: LOOSE,
  })
  if (blocks.length > 1) throw new Error(`a table of ${rows.length} rows does not stand in ${foot - to.y} mm`)
  to.marks.push(...blocks[0])
  to.y += tall + 3
}

function rowHeight(columns: readonly Column[], row: Row): number {
  if ('heading' in row) return PITCH + LOOSE + 2.5
  const deep = columns.map((c, i) => (c.wraps ? wrap(lettered(row[i] ?? ''), c.width - 2 * PAD, 2.5, c.bold ?? false).length : 1))
  return PITCH * Math.max(...deep) + LOOSE
}
