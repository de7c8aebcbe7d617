import { writeFileSync } from 'node:fs'
import { Resvg } from '@resvg/resvg-js'
import { design } from '/work/wt-under/src/checks/index.js'
import { openCoach } from '/work/wt-under/src/cli/open-coach.js'
import { flatPatternSheets } from '/work/wt-under/src/documents/sheets/flat-pattern.js'
import { pageToSvg } from '/work/wt-under/src/documents/svg.js'
import { faceFiles } from '/work/wt-under/src/paper/fonts.js'

const made = design(openCoach('/work/wt-under/examples/sedge-6.yaml').definition)
const out = (name: string, page: any) =>
  writeFileSync(
    `/tmp/${name}.png`,
    new Resvg(pageToSvg(page), {
      background: 'white',
      fitTo: { mode: 'width', value: 2000 },
      font: { fontFiles: [...faceFiles()], loadSystemFonts: false },
    })
      .render()
      .asPng(),
  )
for (const id of process.argv.slice(2)) {
  const p = made.parts.find((p) => p.id === id)!
  flatPatternSheets(made, p).forEach((pg, i) => out(`${id}-${i}`, pg))
}
