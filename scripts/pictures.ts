/** Draws the sheets shown in the README from the demonstration coach: `npm run pictures`. Same coach, same bytes. */
import { mkdirSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { Resvg } from '@resvg/resvg-js'
import { design } from '../src/checks/index.js'
import { openCoach } from '../src/cli/open-coach.js'
import { blanksOf } from '../src/cli/studies/blanks-of.js'
import type { Page } from '../src/documents/drawing/page.js'
import { coverSheets } from '../src/documents/sheets/cover.js'
import { endPicture } from '../src/documents/sheets/end-picture.js'
import { flatPatternSheets } from '../src/documents/sheets/flat-pattern.js'
import { tapeCards } from '../src/documents/sheets/tape-card.js'
import { pageToSvg } from '../src/documents/svg.js'
import { faceFiles } from '../src/paper/fonts.js'

const at = (path: string): string => fileURLToPath(new URL(`../${path}`, import.meta.url))
const made = design(openCoach(at('examples/sedge-6.yaml')).definition)
const blanks = await blanksOf(made.definition)
if (!blanks) throw new Error('no blanks')
const part = (id: string) => {
  const found = made.parts.find((p) => p.id === id)
  if (!found) throw new Error(`no part ${id}`)
  return found
}

const pictures: Readonly<Record<string, Page | undefined>> = {
  'strake-side-left': flatPatternSheets(made, part('strake-side-left'))[0],
  'strake-side-right': flatPatternSheets(made, part('strake-side-right'))[0],
  cover: coverSheets(made, [])[0],
  end: endPicture(
    made,
    blanks.blanks.filter((b) => b.panel !== 'cap').flatMap((b) => b.parts.slice(0, 1)),
  ),
  tape: tapeCards(made, part('strake-side-left'))[0],
}

mkdirSync(at('docs/sheets'), { recursive: true })
for (const [name, page] of Object.entries(pictures)) {
  if (!page) throw new Error(`${name} has no page`)
  const png = new Resvg(pageToSvg(page), {
    background: 'white',
    fitTo: { mode: 'width', value: 1800 },
    font: { fontFiles: [...faceFiles()], loadSystemFonts: false },
  })
    .render()
    .asPng()
  writeFileSync(at(`docs/sheets/${name}.png`), png)
}
