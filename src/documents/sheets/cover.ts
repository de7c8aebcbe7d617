/** The cover: in one glance what passes, what fails, what is only indicative and what was not checked; and the key elevation of the coach. */
import type { Design } from '../../derive/design.js'
import { coachMarks, extentOf, figureX, figureY, placeIn } from '../drawing/coach-figure.js'
import type { CoachView } from '../drawing/coach-geometry.js'
import { project, seen } from '../drawing/coach-geometry.js'
import { lettered, shorten, textWidth, wrap } from '../drawing/lettering.js'
import type { LetterHeight, Mark, Page } from '../drawing/page.js'
import { FINE, letter, line, OUTLINE, rectangle, THIN } from '../drawing/page.js'
import { insideBorder, sheetsOf } from '../drawing/paper-sizes.js'
import type { Body, PrintOptions } from '../drawing/sheet.js'
import { coachTitle, roomAbove, seriesOf, sheetsFrom, unitsOf } from '../drawing/sheet.js'
import { spread } from '../drawing/spread.js'
import { scaleBar } from '../drawing/symbols.js'
import { tableBlocks } from '../drawing/table.js'
import { BLOCK_WIDTH, FULL_BLOCK } from '../drawing/title-block.js'
import { fixed, massWords, plainLength } from '../drawing/units.js'
import type { Scale } from '../drawing/view.js'
import { boundsOf, SCALES, scaleWords } from '../drawing/view.js'
import { placeWords, sideLetter } from '../drawing/words.js'
import { everyCheck, VERDICT_WORDS, verdictCounts, worstFirst } from './checks-list.js'

export interface CoverContents {
  readonly path: string
  readonly says: string
}

type CoverView = Exclude<CoachView, 'under'>
const VIEWS: readonly CoverView[] = ['right', 'left', 'plan']

/** One view with frames, openings and stations named, its middle at the box's middle. Height over and under the body: 9 and 9 mm. */
function namedView(
  design: Design,
  view: CoverView,
  x: number,
  y: number,
  width: number,
  height: number,
  scale: Scale,
  letters: LetterHeight,
): readonly Mark[] {
  const group = 'names'
  const place = placeIn(design, view, x, y, width, height, 1000 / scale)
  const market = design.definition.coach.market
  const extent = extentOf(design, view)
  const [high, low] = [figureY(place, extent.level[1]), figureY(place, extent.level[0])]
  const hand = view === 'plan' ? null : sideLetter(view, market)
  const word =
    view === 'plan'
      ? 'Plan, seen from above'
      : `${view === 'right' ? 'Right' : 'Left'} side (${hand}, ${hand === 'C' ? 'curb' : 'road'} side), seen from outside`
  const left = Math.min(figureX(place, extent.station[0]), figureX(place, extent.station[1]))
  const marks: Mark[] = [
    ...coachMarks(design, place, OUTLINE, false),
    letter(left, high - 3.5 - letters * 1.6, `${word}.  ${view === 'right' ? 'forward →' : '← forward'}`, {
      height: letters,
      bold: true,
      group,
    }),
  ]
  const frames = [...design.definition.frames].sort((a, b) => figureX(place, a.station) - figureX(place, b.station))
  const at = spread(
    frames.map((f) => figureX(place, f.station)),
    () => letters * 5,
  )
  frames.forEach((frame, i) => {
    marks.push(letter(at[i], high - 1.2, frame.id, { height: letters, anchor: 'middle', group }))
    marks.push(letter(at[i], low + 1.4, fixed(frame.station * 1000, 0), { height: letters, anchor: 'middle', sits: 'top', group }))
  })
  for (const opening of design.openings) {
    if (opening.outline.length === 0 || opening.surface === 'nose' || opening.surface === 'tail') continue
    if (view === 'plan' ? opening.side !== 'centre' : opening.side !== view) continue
    const sign = opening.side === 'left' ? -1 : 1
    if (!seen(design, view, sign * opening.place.girth)) continue
    const [s, v] = project(design, view, opening.place.station, sign * opening.place.girth)
    const half = textWidth(opening.id, letters) / 2
    const ox = figureX(place, s)
    const oy = figureY(place, v)
    // a name that does not fit its opening would be taken for its neighbour's
    const size = boundsOf([opening.outline])
    if ((size.x1 - size.x0) * place.perMetre < 2 * half + 0.6 || (size.y1 - size.y0) * place.perMetre < letters * 1.4) continue
    marks.push(
      rectangle(ox - half - 0.3, oy - letters * 0.62, 2 * half + 0.6, letters * 1.3, { width: null, fill: 1, group }),
      letter(ox, oy, opening.id, { height: letters, anchor: 'middle', sits: 'middle', group }),
    )
  }
  return marks
}

/** Both sides and the plan one under the other, true to one scale. */
function threeViews(
  design: Design,
  x: number,
  y: number,
  width: number,
  height: number,
  scale: Scale,
  letters: LetterHeight,
): readonly Mark[] {
  const heights = VIEWS.map((view) => {
    const { level } = extentOf(design, view)
    return ((level[1] - level[0]) * 1000) / scale
  })
  const gap = (height - heights.reduce((a, b) => a + b, 0)) / VIEWS.length
  let top = y
  return VIEWS.flatMap((view, i) => {
    top += gap * 0.6
    const marks = namedView(design, view, x, top, width, heights[i], scale, letters)
    top += heights[i] + gap * 0.4
    return marks
  })
}

const scaleFor = (design: Design, width: number, height: number): Scale => {
  const { station } = extentOf(design, 'right')
  const tall = VIEWS.reduce((sum, view) => {
    const { level } = extentOf(design, view)
    return sum + level[1] - level[0]
  }, 0)
  return SCALES.find((scale) => ((station[1] - station[0]) * 1000) / scale <= width && (tall * 1000) / scale + 3 * 14 <= height) ?? 100
}

function verdictBoxes(design: Design, x: number, y: number, width: number): readonly Mark[] {
  const counts = verdictCounts(everyCheck(design))
  const each = width / 4
  return (['fail', 'caution', 'not-checked', 'pass'] as const).flatMap((verdict, i) => {
    const left = x + i * each
    const words = verdict === 'caution' ? 'CAUTIONS' : verdict === 'fail' ? 'FAIL' : verdict === 'pass' ? 'PASS' : VERDICT_WORDS[verdict]
    return [
      rectangle(left, y, each, 22, { width: OUTLINE, group: 'verdict' }),
      letter(left + each / 2, y + 13, String(counts[verdict]), { height: 10, bold: true, anchor: 'middle', group: 'verdict' }),
      letter(left + each / 2, y + 19, words, { height: 2.5, bold: true, anchor: 'middle', group: 'verdict' }),
    ]
  })
}

interface Writer {
  readonly x: number
  readonly width: number
  y: number
  readonly foot: number
  readonly marks: Mark[]
}

function section(to: Writer, heading: string, sentences: readonly string[], most: number): void {
  if (to.y + 10 > to.foot) return
  to.marks.push(
    letter(to.x, to.y + 4, heading, { height: 3.5, bold: true, group: 'cover' }),
    line(to.x, to.y + 5.6, to.x + to.width, to.y + 5.6, { width: FINE, group: 'cover' }),
  )
  to.y += 9.6
  let shown = 0
  for (const sentence of sentences) {
    const rows = wrap(lettered(sentence), to.width - 4, 2.5)
    const last = shown === sentences.length - 1
    if (shown >= most || to.y + rows.length * 4 > to.foot - (last ? 0 : 4)) break
    rows.forEach((row, i) => {
      to.marks.push(letter(to.x + (i === 0 ? 0 : 4), to.y + i * 4, i === 0 ? `–  ${row}` : row, { height: 2.5, group: 'cover' }))
    })
    to.y += rows.length * 4 + 0.6
    shown++
  }
  if (shown < sentences.length) {
    to.marks.push(letter(to.x, to.y, `and ${sentences.length - shown} more: see the checks list.`, { height: 2.5, group: 'cover' }))
    to.y += 4.6
  }
  to.y += 3
}

function facts(design: Design, contents: readonly CoverContents[], options: PrintOptions): readonly string[] {
  const units = unitsOf(options)
  const { totals } = design
  const patterns = design.parts.reduce((sum, part) => sum + part.patterns.length, 0)
  return [
    `${design.parts.length} parts with ${patterns} flat patterns; ${totals.holes} holes; ${totals.fasteners.solid} solid and ${totals.fasteners.blind} blind fasteners; ${totals.sheets.length} sheets of strake stock.`,
    `Overall length ${plainLength(totals.overallLength, units)}, body ${plainLength(totals.bodyLength, units)}, width ${plainLength(totals.overallWidth, units)}. Derived parts weigh ${massWords(totals.mass.value, units)}.${contents.length > 0 ? ` ${contents.length} documents, listed on the sheets after this one.` : ''}`,
  ]
}

/** Of the cover, for the three views; the words stand right of them. mm */
const LEFT = 150
const rightOf = (room: { readonly x: number; readonly width: number }): { readonly x: number; readonly width: number } => ({
  x: room.x + LEFT + 6,
  width: room.width - LEFT - 12,
})

/** What the cover has room to say of fails, cautions and what was not checked. */
export function verdictSentences(design: Design, options: PrintOptions): readonly Mark[] {
  const room = roomAbove(sheetsOf(seriesOf(options))[1], 'full')
  const writer: Writer = { ...rightOf(room), y: room.y + 68, foot: room.y + room.height - 3, marks: [] }
  const ordered = worstFirst(design.checks)
  const of = (verdict: string): readonly string[] => ordered.filter((check) => check.verdict === verdict).map((check) => check.says)
  section(writer, 'Fails', of('fail').length === 0 ? ['Nothing that was checked fails.'] : of('fail'), 6)
  section(writer, 'Cautions: indicative until someone answers them', of('caution').length === 0 ? ['None.'] : of('caution'), 5)
  section(writer, 'Not checked', [...design.notCovered, ...of('not-checked')], 14)
  return writer.marks
}

function frontBody(design: Design, contents: readonly CoverContents[], options: PrintOptions): Body {
  const size = sheetsOf(seriesOf(options))[1]
  const room = roomAbove(size, 'full')
  const { coach } = design.definition
  const title = coachTitle(design, options, 'Cover', coach.name, `Build packet of ${coach.name}, family ${coach.family}`)
  const scale = scaleFor(design, LEFT - 10, room.height + 50)
  const { x, width } = rightOf(room)
  const failing = design.checks.some((check) => check.verdict === 'fail')
  const group = 'cover'
  const marks: Mark[] = [
    letter(x, room.y + 13, shorten(lettered(coach.name), width, 10, true), { height: 10, bold: true, group }),
    letter(
      x,
      room.y + 22.5,
      shorten(
        lettered(`Build packet, unit ${title.unit}, revision ${design.revision}. ${failing ? 'DO NOT CUT: a check fails.' : ''}`),
        width,
        3.5,
        failing,
      ),
      { height: 3.5, bold: failing, group },
    ),
    ...facts(design, contents, options)
      .flatMap((sentence) => wrap(lettered(sentence), width, 2.5))
      .slice(0, 3)
      .map((row, i) => letter(x, room.y + 28.5 + i * 4, row, { height: 2.5, group })),
    ...verdictBoxes(design, x, room.y + 42, width),
    ...verdictSentences(design, options),
    line(room.x + LEFT, room.y, room.x + LEFT, room.y + room.height, { width: THIN, group: 'cover' }),
    ...threeViews(design, room.x + 3, room.y + 2, LEFT - 6, room.height - 12, scale, 1.8),
    ...scaleBar(scale, room.x + 8, room.y + room.height - 8, unitsOf(options)),
    ...wrap('Stations in mm. Small openings are named on the key elevation.', room.width - 186, 1.8).map((row, i) =>
      letter(room.x + 3, room.y + room.height + 6 + i * 3.2, row, { height: 1.8, group: 'cover' }),
    ),
  ]
  return {
    name: 'cover',
    says: `Cover: what passes, fails and was not checked on ${coach.name}`,
    size,
    block: 'full',
    title: { ...title, scale: scaleWords(scale) },
    marks,
  }
}

function elevationBody(design: Design, options: PrintOptions): Body {
  const size = sheetsOf(seriesOf(options))[2]
  const inside = insideBorder(size)
  const wide = inside.width - BLOCK_WIDTH
  const scale = scaleFor(design, wide - 10, inside.height)
  const title = coachTitle(design, options, 'Key elevation', design.definition.coach.name, 'Both sides and plan, true to scale')
  const market = design.definition.coach.market
  const rows = design.openings.map((o) => [o.id, o.says, placeWords(o.place, market)])
  const room = { x: inside.x + wide + 4, y: inside.y + 6, width: BLOCK_WIDTH - 8, height: inside.height - FULL_BLOCK - 24 }
  const [list] = tableBlocks(
    [
      { head: 'Opening', width: 28, bold: true },
      { head: 'What', width: room.width - 28 - 60 },
      { head: 'Place of its centre', width: 60 },
    ],
    rows,
    () => room,
    { height: 2.5, loose: 1 },
  )
  return {
    name: 'key-elevation',
    says: 'Key elevation: both sides and plan',
    size,
    block: 'full',
    title: { ...title, scale: scaleWords(scale) },
    marks: [
      ...threeViews(design, inside.x + 2, inside.y, wide - 4, inside.height, scale, 2.5),
      ...list,
      ...scaleBar(scale, inside.x + wide + 8, inside.y + inside.height - FULL_BLOCK - 10, unitsOf(options)),
      line(inside.x + wide, inside.y, inside.x + wide, inside.y + inside.height - FULL_BLOCK, { width: THIN, group: 'cover' }),
    ],
  }
}

function contentsBodies(design: Design, contents: readonly CoverContents[], options: PrintOptions): readonly Body[] {
  if (contents.length === 0) return []
  const size = sheetsOf(seriesOf(options))[1]
  const room = roomAbove(size, 'slim')
  const title = coachTitle(design, options, 'Contents', design.definition.coach.name, 'Documents of the packet')
  const wide = (room.width - 12) / 2
  const blocks = tableBlocks(
    [
      { head: 'File', width: wide * 0.5 },
      { head: 'What', width: wide * 0.5 },
    ],
    contents.map((c) => [c.path, c.says]),
    (block) => ({ x: room.x + 4 + (block % 2) * (wide + 4), y: room.y + 14, width: wide, height: room.height - 18 }),
    { height: 1.8, loose: 0.8 },
  )
  return Array.from({ length: Math.ceil(blocks.length / 2) }, (_, n) => ({
    name: `contents-${n + 1}`,
    says: 'Contents of the packet',
    size,
    block: 'slim' as const,
    title,
    marks: [
      letter(room.x + 4, room.y + 9, `Contents: ${contents.length} documents${n > 0 ? ' (continued)' : ''}`, {
        height: 5,
        bold: true,
        group: 'cover',
      }),
      ...blocks.slice(n * 2, n * 2 + 2).flat(),
    ],
  }))
}

/** Cover, key elevation and the list of documents. */
export function coverSheets(design: Design, contents: readonly CoverContents[], options: PrintOptions = {}): readonly Page[] {
  return sheetsFrom([frontBody(design, contents, options), elevationBody(design, options), ...contentsBodies(design, contents, options)])
}
