/** Pages written to a file a person named. */
import { writeFileSync } from 'node:fs'
import type { Design } from '../derive/design.js'
import type { Page } from '../documents/drawing/page.js'
import { refuse } from './refused.js'

/** The library that writes PDF is heavy, and most are content with the terminal. */
export async function pdfOf(made: Design, pages: readonly Page[], title: string): Promise<Uint8Array> {
  const { pagesToPdf } = await import('../paper/pdf.js')
  const { coach } = made.definition
  return pagesToPdf(pages, { title, author: coach.maker, subject: `${coach.name}, revision ${made.revision}`, date: coach.date })
}

/** Throws Refused, under the name of the option, where the disk says no. */
export function writeNamed(option: string, file: string, content: string | Uint8Array): void {
  try {
    writeFileSync(file, content)
  } catch (reason) {
    throw refuse(option, `${file} cannot be written: the disk says ${(reason as NodeJS.ErrnoException).code ?? reason}.`, { found: file })
  }
}
