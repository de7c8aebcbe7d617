/** `prove FILE --part ID --holes LIST`: a list the shop trusts, laid on our pattern. 0 it agrees, 1 it does not or nobody can say. */
import { writeFileSync } from 'node:fs'
import { basename } from 'node:path'
import { design } from '../../checks/index.js'
import type { ListUnit } from '../../checks/prove/nouns.js'
import { prove } from '../../checks/prove/prove-part.js'
import type { Design } from '../../derive/design.js'
import type { Part } from '../../derive/nouns.js'
import type { Page } from '../../documents/drawing/page.js'
import { rounded } from '../../documents/json/rounded.js'
import { proofSheets } from '../../documents/prove/proof-sheet.js'
import { proofText } from '../../documents/prove/proof-text.js'
import { pageToSvg } from '../../documents/svg.js'
import { readHoleList } from '../../intake/read-hole-list.js'
import { type Command, json } from '../command.js'
import { openCoach } from '../open-coach.js'
import { openText } from '../open-text.js'
import { partNamed } from '../part-named.js'
import { Refused, refuse } from '../refused.js'

export interface ProveArguments {
  readonly part: string
  readonly holes: string
  /** m */
  readonly tolerance?: number
  readonly face?: string
  readonly row?: string
  readonly unit?: ListUnit
  readonly drawing?: string
  readonly json?: boolean
}

/** Lines of the table a terminal shows; the drawing and the JSON have them all. */
const MOST_LINES = 25

export const proveCommand: Command<ProveArguments> = async (file, options, terminal) => {
  const made = design(openCoach(file).definition)
  const part = partNamed(made, options.part, '--part')
  const { unit, row, face, tolerance } = options
  const read = readHoleList(openText(options.holes, 'a hole list'), basename(options.holes), {
    ...(unit ? { unit } : {}),
    ...(row ? { row } : {}),
  })
  if (!read.list) throw said(options.holes, read.faults)
  const { report, pattern, faults } = prove(made, part.id, read.list, { ...(face ? { face } : {}), ...(tolerance ? { tolerance } : {}) })
  if (!report || !pattern) throw said('prove', faults)
  if (options.drawing) await draw(made, part, report, options.drawing)
  if (options.json) terminal.out(json(rounded(report)))
  else terminal.out(proofText(report, MOST_LINES))
  return report.verdict === 'agrees' ? 0 : 1
}

function said(path: string, sentences: readonly string[]): Refused {
  return new Refused(sentences.map((says) => ({ path, file: '', line: null, column: null, expected: '', found: '', says })))
}

async function draw(made: Design, part: Part, report: NonNullable<ReturnType<typeof prove>['report']>, file: string): Promise<void> {
  const pattern = part.patterns.find((p) => p.face === report.face)
  if (!pattern) throw new Error(`${part.id} has no face ${report.face}`)
  if (!/\.(svg|pdf)$/i.test(file))
    throw refuse('--drawing', `${file} should end in .pdf or .svg, so that it is known what to draw.`, { found: file })
  const pages = proofSheets(made, part, pattern, report)
  const content = /\.svg$/i.test(file) ? pageToSvg(pages[0]) : await pdfOf(made, pages, `Proof of ${part.id}`)
  try {
    writeFileSync(file, content)
  } catch (reason) {
    throw refuse('--drawing', `${file} cannot be written: the disk says ${(reason as NodeJS.ErrnoException).code ?? reason}.`, {
      found: file,
    })
  }
}

/** The library that writes PDF is heavy, and most proofs are read on the screen. */
async function pdfOf(made: Design, pages: readonly Page[], title: string): Promise<Uint8Array> {
  const { pagesToPdf } = await import('../../paper/pdf.js')
  const { coach } = made.definition
  return pagesToPdf(pages, { title, author: coach.maker, subject: `${coach.name}, revision ${made.revision}`, date: coach.date })
}
