/** The hole table of a pattern on paper: the same lines, count and checksum as the CSV, for whoever types or checks by hand. */
import type { Design } from '../../derive/design.js'
import type { Part, Pattern } from '../../derive/nouns.js'
import type { Page } from '../drawing/page.js'
import type { PrintOptions } from '../drawing/sheet.js'
import { partTitle, unitsOf } from '../drawing/sheet.js'
import type { Row } from '../drawing/table.js'
import { lengthNumber, lengthUnit } from '../drawing/units.js'
import { tableSheets, widthsFor } from './table-sheet.js'

/** What the printed table needs of the CSV: its numbered lines and the checksum of its text. Lengths m. */
export interface PrintedHoles {
  readonly checksum: string
  readonly rows: readonly {
    readonly no: number
    readonly id: string
    readonly row: string
    readonly x: number
    readonly y: number
    readonly diameter: number
  }[]
}

/** Hole table sheets of one pattern; none when it has no holes. */
export function holeTableSheets(
  design: Design,
  part: Part,
  pattern: Pattern,
  table: PrintedHoles,
  options: PrintOptions = {},
): readonly Page[] {
  if (table.rows.length === 0) return []
  const units = unitsOf(options)
  const face = part.patterns.length > 1 ? `${part.id}, ${pattern.face}` : part.id
  const rows: Row[] = []
  let row = ''
  for (const hole of table.rows) {
    if (hole.row !== row) {
      row = hole.row
      rows.push({ heading: row })
    }
    const id = hole.id.startsWith(`${hole.row}/`) ? hole.id.slice(hole.row.length + 1) : hole.id
    rows.push([String(hole.no), id, lengthNumber(hole.x, units, 1), lengthNumber(hole.y, units, 1), lengthNumber(hole.diameter, units, 1)])
  }
  const unit = lengthUnit(units)
  const figures = units === 'metric' ? 15 : 16
  const figured = 9 + 2 * figures + 10
  return tableSheets(
    {
      name: `${part.patterns.length > 1 ? `${part.id}-${pattern.face}` : part.id}-holes`,
      says: `Hole table of ${part.says}`,
      heading: `Holes of ${face}`,
      sentences: [
        `${table.rows.length} holes. Checksum of the hole table: ${table.checksum}. Revision ${design.revision}.`,
        `x and y in ${unit} from the origin mark (${pattern.flat.origin.says}), x ${pattern.flat.x}, y ${pattern.flat.y}, seen from ${pattern.flat.view}. Each hole is named under its row: span between two control points, then its number in the span.`,
        'Check before metal: dry run, clamps, first-off measured. If the file and this sheet differ in checksum, stop.',
      ],
      title: partTitle(design, options, 'Hole table', part, pattern),
      rows,
      wide: true,
      abreast: 4,
      style: { height: 2.5, loose: 0.1, rules: 'fifth' },
      columns: [
        { head: 'No.', width: 9, align: 'right' },
        { head: 'Hole', width: widthsFor(options, true, figured, 4) },
        { head: `x ${unit}`, width: figures, align: 'right' },
        { head: `y ${unit}`, width: figures, align: 'right' },
        { head: 'ø', width: 10, align: 'right' },
      ],
    },
    options,
  )
}
