/** Documents of weight and balance: there only where the coach was weighed. */
import type { Design } from '../../derive/design.js'
import type { PrintOptions } from '../drawing/sheet.js'
import { liftCard } from '../sheets/lift-card.js'
import { massSheets, statementSheets } from '../sheets/weight-sheets.js'
import type { TextOptions } from '../text/heading.js'
import { caseCells, caseCsv, massCells, massCsv } from '../text/mass-csv.js'
import { drawnFrom } from './end-documents.js'
import { coachMade } from './made-from-parts.js'
import { type PlannedDocument, pdfDocument, textDocument } from './planned.js'

export function weightDocuments(design: Design, options: PrintOptions & TextOptions): readonly PlannedDocument[] {
  const { weight } = design
  if ('notComputed' in weight) return []
  const statement = () => statementSheets(design, weight, options)
  const schedule = () => massSheets(design, weight, options)
  const { lift } = weight
  const card = lift && (() => liftCard(design, lift, options))
  return [
    ...(card
      ? [
          pdfDocument(
            'weight/lift-card.pdf',
            'Lift card of the bare body',
            () => [coachMade(design), drawnFrom('the lift', [lift], card)],
            card,
          ),
        ]
      : []),
    pdfDocument(
      'weight/weight-and-balance.pdf',
      'Weight and balance: every load case against every limit, worst first',
      () => [coachMade(design), drawnFrom('weight and balance', [weight], statement)],
      statement,
    ),
    pdfDocument(
      'weight/masses.pdf',
      'Schedule of masses by group',
      () => [coachMade(design), drawnFrom('the masses', [weight], schedule)],
      schedule,
    ),
    textDocument(
      'weight/masses.csv',
      'Schedule of masses by group, for a spreadsheet',
      () => [coachMade(design), { name: 'the masses', from: [weight], shows: () => massCells(weight) }],
      () => massCsv(design, weight, options),
    ),
    textDocument(
      'weight/load-cases.csv',
      'Load cases, for a spreadsheet',
      () => [coachMade(design), { name: 'the load cases', from: [weight], shows: () => caseCells(weight) }],
      () => caseCsv(design, weight, options),
    ),
  ]
}
