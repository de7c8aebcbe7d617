/** Documents of the heavy studies: blanks of formed panels, two ways to make a gore, and whether the holes meet. */
import type { Design } from '../../derive/design.js'
import type { BlankStudy } from '../../studies/blanks/nouns.js'
import type { FitStudy } from '../../studies/fit/nouns.js'
import type { PrintOptions } from '../drawing/sheet.js'
import { fitPage } from '../sheets/fit-page.js'
import { goreBlankSheets } from '../sheets/gore-blank.js'
import { type GoresAsPlaced, goreWays } from '../sheets/gore-ways.js'
import { fitCsv } from '../text/fit-csv.js'
import type { MadeFrom, PlannedDocument } from './planned.js'
import { pdfDocument, textDocument } from './planned.js'

interface StudyOptions extends PrintOptions {
  readonly blanks?: BlankStudy
  readonly gores?: GoresAsPlaced
  readonly fit?: FitStudy
  /** name and version, printed in the texts */
  readonly program?: string
}

/** Studies on the design: nothing here is drawn from the design alone, so each names the study it prints. */
export function studyDocuments(design: Design, options: StudyOptions, coach: MadeFrom): readonly PlannedDocument[] {
  const { fit, gores, blanks } = options
  const ways = gores && {
    name: 'two ways to make a gore',
    from: [gores, blanks],
    shows: () => [gores, blanks?.blanks.map((b) => ({ ...b, field: null }))],
  }
  const holes = fit && { name: 'whether the holes meet', from: [fit], shows: () => fit }
  return [
    ...(blanks ? [blankDocument(design, blanks, options, coach)] : []),
    ...(gores && ways
      ? [
          pdfDocument(
            'ends/gore-ways.pdf',
            'Two ways to make each gore, wrapped or formed, and what each costs',
            () => [coach, ways],
            () => goreWays(design, gores, blanks ?? null, options),
          ),
        ]
      : []),
    ...(fit && holes
      ? [
          pdfDocument(
            'checks/hole-fit.pdf',
            'Will the holes meet? Joints in order of risk, and what would help most',
            () => [coach, holes],
            () => fitPage(design, fit, options),
          ),
          textDocument(
            'checks/hole-fit.csv',
            'Will the holes meet, joint by joint, for a spreadsheet',
            () => [coach, holes],
            () => fitCsv(design, fit, options),
          ),
        ]
      : []),
  ]
}

function blankDocument(design: Design, blanks: BlankStudy, options: PrintOptions, coach: MadeFrom): PlannedDocument {
  return pdfDocument(
    'ends/blanks.pdf',
    'Blanks of formed gores and caps: how far the sheet is stretched, and how thin it gets',
    () => [
      coach,
      ...blanks.blanks.map((blank) => ({ name: `blank ${blank.panel}`, from: [blank], shows: () => ({ ...blank, field: null }) })),
    ],
    () => goreBlankSheets(design, blanks, options),
  )
}
