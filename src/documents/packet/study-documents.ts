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

/** Where each is and what it says, for whoever plans them before the studies are done. */
export const BLANKS = {
  path: 'ends/blanks.pdf',
  says: 'Blanks of formed gores and caps: how far the sheet is stretched, and how thin it gets',
} as const
export const GORE_WAYS = {
  path: 'ends/gore-ways.pdf',
  says: 'Two ways to make each gore, wrapped or formed, and what each costs',
} as const
export const HOLE_FIT_PAGE = {
  path: 'checks/hole-fit.pdf',
  says: 'Will the holes meet? Joints in order of risk, and what would help most',
} as const
export const HOLE_FIT_LIST = {
  path: 'checks/hole-fit.csv',
  says: 'Will the holes meet, joint by joint, for a spreadsheet',
} as const

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
            GORE_WAYS.path,
            GORE_WAYS.says,
            () => [coach, ways],
            () => goreWays(design, gores, blanks ?? null, options),
          ),
        ]
      : []),
    ...(fit && holes
      ? [
          pdfDocument(
            HOLE_FIT_PAGE.path,
            HOLE_FIT_PAGE.says,
            () => [coach, holes],
            () => fitPage(design, fit, options),
          ),
          textDocument(
            HOLE_FIT_LIST.path,
            HOLE_FIT_LIST.says,
            () => [coach, holes],
            () => fitCsv(design, fit, options),
          ),
        ]
      : []),
  ]
}

function blankDocument(design: Design, blanks: BlankStudy, options: PrintOptions, coach: MadeFrom): PlannedDocument {
  return pdfDocument(
    BLANKS.path,
    BLANKS.says,
    () => [
      coach,
      ...blanks.blanks.map((blank) => ({ name: `blank ${blank.panel}`, from: [blank], shows: () => ({ ...blank, field: null }) })),
    ],
    () => goreBlankSheets(design, blanks, options),
  )
}
