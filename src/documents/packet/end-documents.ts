/** The documents of nose and tail, and of the jigs the body is built on. */
import type { Design } from '../../derive/design.js'
import type { Mark, Page } from '../drawing/page.js'
import type { PrintOptions } from '../drawing/sheet.js'
import { endSheets } from '../sheets/end-sheet.js'
import { waitingParts, waitingSheets } from '../sheets/end-waiting.js'
import { contourCard, endJigCard } from '../sheets/jig-card-end.js'
import { sideJigCard } from '../sheets/jig-card-side.js'
import { ribTemplateRoll, ribTemplateTiles } from '../sheets/rib-template.js'
import { coachMade, figureMade } from './made-from-parts.js'
import type { MadeFrom, PlannedDocument } from './planned.js'
import { pdfDocument } from './planned.js'

/** What a title block draws: the coach's small figure is named apart, the rest is on every sheet. */
const BLOCK: readonly string[] = ['title', 'qr', 'coach', 'key']

/** Lines and words of pages as finely as they are printed; what the title block says of the coach is named apart. */
function inkOf(pages: readonly Page[]): string {
  const ink = (marks: readonly Mark[]): readonly Mark[] => marks.filter((m) => m.group === null || !BLOCK.includes(m.group))
  return JSON.stringify(
    pages.map((p) => [p.name, p.widthMm, p.heightMm, ink(p.marks)]),
    (_, value: unknown) => (typeof value === 'number' ? Math.round(value * 1e4) : value),
  )
}

/** A thing as finely as whole pages print it. */
export const drawnFrom = (name: string, from: readonly unknown[], pages: () => readonly Page[]): MadeFrom => ({
  name,
  from,
  shows: () => inkOf(pages()),
})

/**
 * What a card of nose, tail or jig is drawn from besides its own figures. The section is made anew with every design, so its
 * numbers are named one by one: they are the same when it is, and nothing need be drawn to find that out.
 */
const shapeOf = ({ definition, ends, section }: Design): readonly unknown[] => [
  ends,
  section.points.flatMap((p) => Object.values(p)).join(),
  section.halfGirth,
  section.floorGirth,
  section.width,
  section.residual,
  definition.shell,
  definition.ends,
  definition.frames,
  definition.coach,
]

/** Where the parts without a pattern are listed. */
export const WAITING = 'ends/waiting.pdf'

export function endDocuments(design: Design, options: PrintOptions): readonly PlannedDocument[] {
  const waiting = waitingParts(design)
  const own = [...design.rows.filter((r) => r.end), ...design.openings.filter((o) => o.end), ...design.parts.filter((p) => p.place.end)]
  return [
    pdfDocument(
      'ends/nose-and-tail.pdf',
      'Nose and tail in three views: gores, ribs, rivets, openings, and what they come to',
      () => [
        coachMade(design),
        figureMade(design, 'left'),
        drawnFrom('nose and tail', [...shapeOf(design), ...own], () => endSheets(design, options)),
      ],
      () => endSheets(design, options),
    ),
    ...(waiting.length === 0
      ? []
      : [
          pdfDocument(
            WAITING,
            'Parts that wait for their flat pattern, and for what',
            () => [coachMade(design), drawnFrom('parts without a pattern', waiting, () => waitingSheets(design, options))],
            () => waitingSheets(design, options),
          ),
        ]),
  ]
}

export function jigDocuments(design: Design, options: PrintOptions): readonly PlannedDocument[] {
  const planned = (path: string, says: string, name: string, pages: () => readonly Page[]): PlannedDocument =>
    pdfDocument(path, says, () => [coachMade(design), drawnFrom(name, shapeOf(design), pages)], pages)
  const contours = (): readonly Page[] => design.ends.jig.ribs.flatMap((rib) => contourCard(design, rib, options))
  return [
    ...(['nose', 'tail'] as const).map((end) =>
      planned(
        `jigs/end-jig-${end}.pdf`,
        `Card of the end jig for the ${end}: hands, diagonals, locators`,
        `the end jig of the ${end}`,
        () => endJigCard(design, end, options),
      ),
    ),
    planned('jigs/rib-contours.pdf', 'Contours of the ribs of nose and tail in figures', 'the ribs of nose and tail', contours),
    planned('jigs/roof-and-side-jig.pdf', 'Card of the roof-and-side jig: stations, bearings, diagonals', 'the roof-and-side jig', () =>
      sideJigCard(design, options),
    ),
  ]
}

/** Tiles hold what the roll page holds, cut up: both change together. */
export function ribTemplateDocuments(design: Design, options: PrintOptions): readonly PlannedDocument[] {
  const { ribs } = design.ends.jig
  const roll = (): readonly Page[] => ribs.map((rib) => ribTemplateRoll(design, rib, options))
  const { frame } = design.definition.shell
  const of = (): readonly MadeFrom[] => [
    coachMade(design),
    drawnFrom('the ribs of nose and tail', shapeOf(design), roll),
    { name: 'the frame', from: [frame], shows: () => [frame.alloy, frame.thickness.name] },
  ]
  return [
    pdfDocument(
      'templates/end-ribs-roll.pdf',
      'Full-size templates of the ribs of nose and tail, one roll page a rib',
      () => [...of(), figureMade(design, 'left')],
      roll,
    ),
    pdfDocument('templates/end-ribs-tiles.pdf', 'Full-size templates of the ribs of nose and tail on sheets to be laid together', of, () =>
      ribs.flatMap((rib) => ribTemplateTiles(design, rib, options)),
    ),
  ]
}
