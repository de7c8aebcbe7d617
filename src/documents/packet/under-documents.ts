/** The documents of floor, chassis and axles besides their flat patterns: plans, weld map, lists, cards, router programs. */
import type { Design } from '../../derive/design.js'
import type { Part, Pattern } from '../../derive/nouns.js'
import type { Page } from '../drawing/page.js'
import type { PrintOptions } from '../drawing/sheet.js'
import { axleCard } from '../sheets/axle-card.js'
import { axleOrder } from '../sheets/axle-order.js'
import { cutList, sectionSheet } from '../sheets/chassis-lists.js'
import { chassisPlan } from '../sheets/chassis-plan.js'
import { flooringCard } from '../sheets/flooring-card.js'
import { weldList, weldMap } from '../sheets/weld-map.js'
import { cutListCsv } from '../text/cut-list.js'
import { faceName, fileStem, type TextOptions } from '../text/heading.js'
import { routerProgram } from '../text/router-program.js'
import { drawnFrom } from './end-documents.js'
import { coachMade } from './made-from-parts.js'
import type { MadeFrom, PlannedDocument } from './planned.js'
import { pdfDocument, textDocument } from './planned.js'

type UnderOptions = PrintOptions & Pick<TextOptions, 'program'>

export function underDocuments(design: Design, options: UnderOptions): readonly PlannedDocument[] {
  const { under, definition } = design
  const parts = design.parts.filter((p) => p.trade === 'chassis' || p.trade === 'floor')
  // what a plan is drawn from; each sheet then says what of it it shows
  const from = [under, ...parts, design.bolts, definition.gear, definition.chassis, definition.floor, definition.frames, definition.coach]
  const planned = (path: string, says: string, name: string, pages: () => readonly Page[]): PlannedDocument =>
    pdfDocument(path, says, () => [coachMade(design), drawnFrom(name, from, pages)], pages)
  // springs, ratings and tyres say of the axles what their geometry does not
  const sprung = [...from, design.ride, design.road, definition.suspension]
  const axles = (path: string, says: string, pages: () => readonly Page[]): PlannedDocument =>
    pdfDocument(path, says, () => [coachMade(design), drawnFrom('the axle group', sprung, pages)], pages)
  return [
    ...(under.floor
      ? [
          planned(
            'jigs/flooring-jig.pdf',
            'Card of the flooring jig: stops, joints, holes and what they come near',
            'the floor and its openings',
            () => flooringCard(design, options),
          ),
          ...routerDocuments(design, options),
        ]
      : []),
    ...(under.gear
      ? [
          axles('gear/axle-position.pdf', 'Position card of the axles, and where the group may stand', () => axleCard(design, options)),
          axles('gear/axle-order.pdf', 'Order sheet of the axles, for the maker to confirm', () => axleOrder(design, options)),
        ]
      : []),
    ...(under.chassis && under.chassis.members.length > 0
      ? [
          planned('chassis/as-built.pdf', 'The chassis inverted as it is built, seen from below', 'the chassis', () =>
            chassisPlan(design, 'as-built', options),
          ),
          planned('chassis/as-used.pdf', 'The chassis as it is used, seen from above', 'the chassis', () =>
            chassisPlan(design, 'as-used', options),
          ),
          planned('chassis/weld-map.pdf', 'Weld map: every joint in its order, and what is measured when', 'the welds', () =>
            weldMap(design, options),
          ),
          planned('chassis/weld-list.pdf', 'Welds as a list, and zones where nobody drills or welds', 'the welds', () =>
            weldList(design, options),
          ),
          planned('chassis/cut-list.pdf', 'Cut list of the chassis: blanks before bending', 'the chassis parts', () =>
            cutList(design, options),
          ),
          planned('chassis/sections.pdf', 'Section properties of the pressed members', 'the sections', () => sectionSheet(design, options)),
          textDocument(
            'chassis/cut-list.csv',
            'Cut list of the chassis, for a spreadsheet',
            () => [coachMade(design), { name: 'the chassis parts', from: parts, shows: () => listShown(design) }],
            () => cutListCsv(design, options),
          ),
        ]
      : []),
  ]
}

/** The list without its heading, which holds the revision. */
const listShown = (design: Design): string =>
  cutListCsv(design)
    .split('\n')
    .filter((line) => !line.startsWith('#'))
    .join('\n')

/** The very words of a program but for its revision: most of a panel's holes are drilled by another one. */
const routedMade = (design: Design, part: Part, pattern: Pattern, cutter: number, options: UnderOptions): MadeFrom => ({
  name: part.id,
  from: [part, cutter, design.definition.coach, ...design.bolts],
  shows: () => routerProgram({ ...design, revision: '' }, part, pattern, cutter, options).text,
})

function routerDocuments(design: Design, options: UnderOptions): readonly PlannedDocument[] {
  const cutter = design.definition.floor?.cutter
  if (!cutter) return []
  return design.parts
    .filter((p) => p.kind === 'floor-panel')
    .flatMap((part) =>
      part.patterns.map((pattern) =>
        textDocument(
          `programs/${fileStem(part, pattern)}-router.nc`,
          `Router program of ${faceName(part, pattern)}: check before the board`,
          () => [
            coachMade(design),
            routedMade(design, part, pattern, cutter, options),
            { name: 'the cutter', from: [cutter], shows: () => cutter },
          ],
          () => routerProgram(design, part, pattern, cutter, options).text,
        ),
      ),
    )
}
