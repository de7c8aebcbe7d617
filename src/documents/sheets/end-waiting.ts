/** Parts that have no flat pattern yet, each with what has to be worked out first: nothing that is made is left unsaid. */
import type { Design } from '../../derive/design.js'
import type { Part } from '../../derive/nouns.js'
import type { Page } from '../drawing/page.js'
import type { PrintOptions } from '../drawing/sheet.js'
import { coachTitle, unitsOf } from '../drawing/sheet.js'
import { boughtWords, massWords } from '../drawing/units.js'
import { sideWords } from '../drawing/words.js'
import { tableSheets, widthsFor } from './table-sheet.js'

export const waitingParts = (design: Design): readonly Part[] => design.parts.filter((p) => p.patterns.length === 0)

export function waitingSheets(design: Design, options: PrintOptions = {}): readonly Page[] {
  const units = unitsOf(options)
  const { market } = design.definition.coach
  const parts = waitingParts(design)
  return tableSheets(
    {
      name: 'waiting',
      says: 'Parts that wait for their flat pattern, and for what',
      heading: 'Waiting for a flat pattern',
      sentences: ['These parts belong to the coach and are counted in its masses; nothing can be cut for them from this packet yet.'],
      title: coachTitle(design, options, 'Waiting', design.definition.coach.name, 'Parts that wait for their flat pattern'),
      columns: [
        { head: 'Part', width: 46, bold: true },
        { head: 'Side', width: 38 },
        { head: 'Material and gauge', width: 40 },
        { head: 'Mass', width: 16, align: 'right' },
        { head: 'What has to be worked out first', width: widthsFor(options, true, 140), wraps: true },
      ],
      wide: true,
      rows: parts.map((p) => [
        p.id,
        sideWords(p.side, market),
        `${p.material}  ${boughtWords(p.thickness, units)}`,
        massWords(p.mass.value, units),
        p.notComputed ?? 'Nobody has said.',
      ]),
    },
    options,
  )
}
