/**
 * A proof drawn: our pattern, every listed hole where the list puts it, and the differences as arrows a hundred times too
 * long. When the proof is undecided the second placement has a sheet of its own, with the hole to look for.
 */
import type { Compared, Fitted, ProveReport } from '../../checks/prove/nouns.js'
import type { Design } from '../../derive/design.js'
import type { Part, Pattern } from '../../derive/nouns.js'
import { lettered, wrap } from '../drawing/lettering.js'
import type { Mark, Page } from '../drawing/page.js'
import { arrowHead, FINE, letter, lines, OUTLINE, rectangle, THIN } from '../drawing/page.js'
import type { PaperSize, Room } from '../drawing/paper-sizes.js'
import { sheetsOf } from '../drawing/paper-sizes.js'
import type { Wanted } from '../drawing/place-labels.js'
import { placeLabels } from '../drawing/place-labels.js'
import type { Body, PrintOptions } from '../drawing/sheet.js'
import { partTitle, roomAbove, roomBeside, seriesOf, sheetsFrom, unitsOf } from '../drawing/sheet.js'
import { scaleBar } from '../drawing/symbols.js'
import type { Bounds, Scale, View } from '../drawing/view.js'
import { boundsOf, scaleToFit, scaleWords, viewOf } from '../drawing/view.js'
import { patternInk } from '../sheets/pattern-geometry.js'
import { mmText } from '../text/heading.js'
import { VERDICT_WORDS, worstFirst } from './proof-text.js'

/** How much longer than true a difference is drawn. */
const EXAGGERATED = 100
/** No arrow is longer than this on paper, mm: a hole 5 mm out is told by its label. */
const LONGEST = 40
/** Shorter than this an arrow is a speck and is left out, mm on paper. */
const SHORTEST = 0.3
const MOST_LABELS = 10

/** From ours toward where the list has it, on paper. */
function arrowOf(
  c: Compared,
  view: View,
): {
  readonly from: readonly [number, number]
  readonly to: readonly [number, number]
  readonly angle: number
  readonly size: number
} | null {
  if (c.dx === null || c.dy === null) return null
  const from = [view.x(c.at[0] - c.dx), view.y(c.at[1] - c.dy)] as const
  const [u, v] = [view.length(c.dx) * EXAGGERATED, -view.length(c.dy) * EXAGGERATED]
  const true_ = Math.hypot(u, v)
  if (true_ < SHORTEST) return null
  const k = Math.min(1, LONGEST / true_)
  return { from, to: [from[0] + u * k, from[1] + v * k], angle: Math.atan2(v, u), size: true_ * k }
}

function differenceMarks(fit: Fitted, view: View): readonly Mark[] {
  const marks: Mark[] = []
  for (const within of [true, false]) {
    const arrows = fit.compared.filter((c) => c.within === within).flatMap((c) => arrowOf(c, view) ?? [])
    const width = within ? FINE : OUTLINE
    if (arrows.length)
      marks.push(
        lines(
          arrows.map((a) => [a.from[0], a.from[1], a.to[0], a.to[1]] as const),
          { width, group: 'differences' },
        ),
      )
    for (const a of arrows) marks.push(arrowHead(a.to[0], a.to[1], a.angle, Math.min(within ? 1.2 : 2.5, a.size), 'differences'))
  }
  return marks
}

const cross = (x: number, y: number, r: number): readonly (readonly [number, number, number, number])[] => [
  [x - r, y - r, x + r, y + r],
  [x - r, y + r, x + r, y - r],
]

/** A small cross where the list has each hole, a large one where it is not ours, a square round one of ours that it lacks. */
function placeMarks(report: ProveReport, fit: Fitted, view: View, first: boolean): readonly Mark[] {
  const at = (c: Compared, r: number): readonly (readonly [number, number, number, number])[] => cross(view.x(c.at[0]), view.y(c.at[1]), r)
  const ours = fit.compared.filter((c) => c.hole !== null)
  const extra = fit.compared.filter((c) => c.hole === null)
  const square = (x: number, y: number): Mark => rectangle(view.x(x) - 2, view.y(y) - 2, 4, 4, { width: THIN, group: 'missing' })
  return [
    ...(ours.length
      ? [
          lines(
            ours.flatMap((c) => at(c, 0.5)),
            { width: FINE, group: 'listed' },
          ),
        ]
      : []),
    ...(extra.length
      ? [
          lines(
            extra.flatMap((c) => at(c, 2)),
            { width: OUTLINE, group: 'extra' },
          ),
        ]
      : []),
    ...(first ? report.missing.map((m) => square(m.x, m.y)) : []),
  ]
}

function labels(report: ProveReport, fit: Fitted, view: View, first: boolean): readonly Wanted[] {
  const bad = worstFirst(fit.compared)
    .filter((c) => !c.within)
    .map(
      (c): Wanted => ({
        lines: c.hole === null ? [c.label, 'not in our pattern'] : [c.hole, `${mmText(c.distance!, 2)} mm off`],
        at: [view.x(c.at[0]), view.y(c.at[1])],
      }),
    )
  const missing = first
    ? report.missing.map((m): Wanted => ({ lines: [m.hole, 'missing from the list'], at: [view.x(m.x), view.y(m.y)] }))
    : []
  const ask =
    report.askFor && first
      ? [{ lines: ['LOOK FOR THIS HOLE', report.askFor.hole], at: [view.x(report.askFor.x), view.y(report.askFor.y)] as const }]
      : []
  return [...ask, ...bad.slice(0, MOST_LABELS), ...missing.slice(0, MOST_LABELS)]
}

/** The sentences of the proof beside the title block. */
function sentenceMarks(
  size: { readonly widthMm: number; readonly heightMm: number; readonly name: string },
  sentences: readonly string[],
): readonly Mark[] {
  const room = roomBeside(size, 'full')
  const group = 'sentences'
  const marks: Mark[] = [lines([[room.x, room.y, room.x + room.width, room.y]], { width: THIN, group })]
  // larger sheets are read from further away; many sentences are lettered smaller so that none is lost
  const height = size.widthMm > 500 && sentences.length < 9 ? 3.5 : 2.5
  let y = room.y + 3 + height
  for (const sentence of sentences) {
    for (const row of wrap(lettered(sentence), room.width - 8, height)) {
      if (y > room.y + room.height - 2) return marks
      marks.push(letter(room.x + 3, y, row, { height, group }))
      y += height * 1.6
    }
    y += 0.8
  }
  return marks
}

/** The smallest sheet that shows the pattern at 1:10 or larger; a frame, longer than any, on the small one. */
function layoutFor(box: Bounds, options: PrintOptions): { readonly size: PaperSize; readonly room: Room; readonly scale: Scale } {
  const laid = sheetsOf(seriesOf(options))
    .slice(1, 3)
    .map((size) => {
      const room = roomAbove(size, 'full')
      return { size, room, scale: scaleToFit(box.x1 - box.x0, box.y1 - box.y0, room.width - 30, room.height - 40) }
    })
  return laid.find((l) => l.scale <= 10) ?? laid[0]
}

function bodyOf(
  design: Design,
  part: Part,
  pattern: Pattern,
  report: ProveReport,
  fit: Fitted | null,
  first: boolean,
  options: PrintOptions,
): Body {
  const box = boundsOf([pattern.outline])
  const { size, room, scale } = layoutFor(box, options)
  const middle = [(box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2] as const
  const view = viewOf(scale, middle, [room.x + room.width / 2, room.y + room.height / 2 + 6])
  const ink = patternInk(pattern, view)
  const which = report.second ? (first ? 'first placement' : 'second placement') : 'best placement'
  const marks: Mark[] = [
    letter(room.x + 4, room.y + 8, `${VERDICT_WORDS[report.verdict]} at ${mmText(report.tolerance, 2)} mm`, {
      height: 5,
      bold: true,
      group: 'verdict',
    }),
    letter(
      room.x + 4,
      room.y + 14,
      `${lettered(report.list)}, ${which}. Arrows run from our hole to the listed one, ${EXAGGERATED} times too long; thick ones are outside the tolerance.`,
      { group: 'verdict' },
    ),
    letter(room.x + 4, room.y + 18.5, 'Small cross: listed hole. Large cross: not in our pattern. Square: ours, missing from the list.', {
      group: 'verdict',
    }),
    ...ink.marks,
    ...scaleBar(scale, room.x + room.width - 90, room.y + 6, unitsOf(options)),
    ...sentenceMarks(size, report.summary),
  ]
  if (fit) {
    marks.push(...placeMarks(report, fit, view, first), ...differenceMarks(fit, view))
    const inside = [room.x + 2, room.y + 22, room.x + room.width - 2, room.y + room.height - 2] as const
    marks.push(...placeLabels(labels(report, fit, view, first), { points: ink.holes, boxes: [] }, inside))
  }
  const title = {
    ...partTitle(design, options, 'Proof on a hole list', part, pattern),
    scale: scaleWords(scale),
    says: `${part.says}, ${which}`,
  }
  return {
    name: `${part.id}-proof-${first ? 1 : 2}`,
    says: `Proof of ${part.says} on ${report.list}, ${which}, ${scaleWords(scale)}`,
    size,
    block: 'full',
    title,
    marks,
  }
}

/** One sheet, two when a second placement fits as well. `pattern` is the face the report is of. */
export function proofSheets(
  design: Design,
  part: Part,
  pattern: Pattern,
  report: ProveReport,
  options: PrintOptions = {},
): readonly Page[] {
  const bodies = [bodyOf(design, part, pattern, report, report.best, true, options)]
  if (report.second) bodies.push(bodyOf(design, part, pattern, report, report.second, false, options))
  return sheetsFrom(bodies)
}
