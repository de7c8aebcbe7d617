import { writeFileSync } from 'node:fs'
import { Resvg } from '@resvg/resvg-js'
import { design } from '../src/checks/index.js'
import { openCoach } from '../src/cli/open-coach.js'
import { chassisPlan } from '../src/documents/sheets/chassis-plan.js'
import { weldMap, weldList } from '../src/documents/sheets/weld-map.js'
import { cutList, sectionSheet } from '../src/documents/sheets/chassis-lists.js'
import { flooringCard } from '../src/documents/sheets/flooring-card.js'
import { axleCard } from '../src/documents/sheets/axle-card.js'
import { pageToSvg } from '../src/documents/svg.js'
import { faceFiles } from '../src/paper/fonts.js'
const made = design(openCoach(process.argv[2]).definition)
for (const pages of [chassisPlan(made,'as-built'), chassisPlan(made,'as-used'), weldMap(made), weldList(made), cutList(made), sectionSheet(made), flooringCard(made), axleCard(made)])
  for (const page of pages) { writeFileSync(`/tmp/u-${page.name}.png`, new Resvg(pageToSvg(page), { background: 'white', fitTo: { mode: 'width', value: 2000 }, font: { fontFiles: [...faceFiles()], loadSystemFonts: false } }).render().asPng()); console.log(page.name) }
