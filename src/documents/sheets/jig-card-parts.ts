/** What every jig card carries: hands 40 mm high with the view between them, diagonals of both hands, tolerances from the datum. */

import type { Market } from '../../definition/types.js'
import type { Diagonal, FrameLocator, JigTolerance } from '../../derive/jig-nouns.js'
import { lettered, wrap } from '../drawing/lettering.js'
import type { Mark } from '../drawing/page.js'
import { letter, OUTLINE, rectangle } from '../drawing/page.js'
import type { Column, Row } from '../drawing/table.js'
import { tableBlocks } from '../drawing/table.js'
import type { PrintUnits } from '../drawing/units.js'
import { fixed, lengthNumber, lengthUnit, lengthWords } from '../drawing/units.js'
import { sideLetter } from '../drawing/words.js'

/** Room a hand letter takes, mm. */
const HAND = 38

/** The letters of both hands at the edges of a strip, and the stamp that says how one sees it. `right` is where right of travel lies on the page. */
export function handsAndStamp(
  market: Market,
  right: 'right' | 'left',
  stamp: readonly string[],
  x: number,
  y: number,
  width: number,
  stampY: number,
): readonly Mark[] {
  const group = 'hand'
  const [atLeft, atRight] = right === 'right' ? (['left', 'right'] as const) : (['right', 'left'] as const)
  const middle = x + width / 2
  const wide = width - 2 * HAND - 4
  const tall = 3 + stamp.length * 6.4
  return [
    letter(x, y + 44, sideLetter(atLeft, market) ?? '', { height: 40, bold: true, group }),
    letter(x + width, y + 44, sideLetter(atRight, market) ?? '', { height: 40, bold: true, anchor: 'end', group }),
    rectangle(middle - wide / 2, stampY, wide, tall, { width: OUTLINE, group: 'stamp' }),
    ...stamp.map((text, i) =>
      letter(middle, stampY + 6.6 + i * 6.4, lettered(text), {
        height: i === 0 ? 5 : 3.5,
        bold: i === 0,
        anchor: 'middle',
        group: 'stamp',
      }),
    ),
  ]
}

/** Marks set one under the other in a column. */
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
  to.y += 0.8
}

const LOOSE = 0.8
/** Heads, rows and headings as `tableBlocks` lays them in lettering 2.5 high, mm. */
const [HEAD, ROW, HEADING] = [2.5 * 1.6 + 2, 2.5 * 1.6 + LOOSE, 2.5 * 1.6 + LOOSE + 2.5]

export function stackTable(to: Stacked, columns: readonly Column[], rows: readonly Row[]): void {
  const tall = HEAD + rows.reduce((sum, row) => sum + (Array.isArray(row) ? ROW : HEADING), 0)
  const [block] = tableBlocks(columns, rows, () => ({ x: to.x, y: to.y, width: to.width, height: tall + 1 }), { height: 2.5, loose: LOOSE })
  to.marks.push(...block)
  to.y += tall + 4
}

/** A line to write the taped length on stands beside the figures of both hands. */
export function stackDiagonals(to: Stacked, diagonals: readonly Diagonal[], tolerance: JigTolerance, units: PrintUnits): void {
  stackText(
    to,
    `Diagonals across, ${lengthUnit(units)}: right is from the right-hand start. ±${lengthWords(tolerance.diagonal, units)} of the figure, and the two hands within ${lengthWords(tolerance.between, units)} of each other`,
    true,
  )
  const [each, finish] = [16.5, 22]
  stackTable(
    to,
    [
      { head: 'From', width: to.width - finish - 4 * each },
      { head: 'Across to', width: finish },
      { head: 'Right', width: each, align: 'right' },
      { head: 'taped', width: each, align: 'right' },
      { head: 'Left', width: each, align: 'right' },
      { head: 'taped', width: each, align: 'right' },
    ],
    diagonals.map((d) => [d.from, d.to, lengthNumber(d.right, units), '', lengthNumber(d.left, units), '']),
  )
}

export const toleranceWords = (tolerance: JigTolerance, units: PrintUnits, datum: string): string =>
  `Every locator ±${lengthWords(tolerance.locator, units)} from ${datum}, never from the locator before (${tolerance.source}).`

export const locatorColumns = (width: number, units: PrintUnits): readonly Column[] => [
  { head: 'Place', width: width - 4 * 26, bold: true },
  { head: `y ${lengthUnit(units)}`, width: 26, align: 'right' },
  { head: 'WL mm', width: 26, align: 'right' },
  { head: 'Face under', width: 26, align: 'right' },
  { head: 'Square °', width: 26, align: 'right' },
]

export const locatorRow = (l: FrameLocator, units: PrintUnits): readonly string[] => [
  l.says,
  lengthNumber(l.y, units, 1),
  fixed(l.z * 1000, 2),
  lengthNumber(l.depth, units, 1),
  fixed((l.rise * 180) / Math.PI, 1),
]
