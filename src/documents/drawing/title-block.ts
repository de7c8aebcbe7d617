/** The title block: fields of ISO 7200, a key figure and a QR code back to the source. 180 mm wide, bottom right. */
import type { Design } from '../../derive/design.js'
import type { Part } from '../../derive/nouns.js'
import { coachMarks, partMarks, placeIn } from './coach-figure.js'
import { fromAbove, viewOfPart } from './coach-geometry.js'
import { lettered, shorten, textWidth, wrap } from './lettering.js'
import type { LetterHeight, Mark } from './page.js'
import { FINE, letter, line, lines, OUTLINE, rectangle } from './page.js'
import { qrMark, qrText } from './qr-mark.js'
import { projectionSymbol } from './symbols.js'
import { projectionOf } from './words.js'

export interface TitleFacts {
  readonly design: Design
  /** MASTER unless a unit is named */
  readonly unit: string
  /** ISO date printed */
  readonly date: string
  /** what kind of sheet, e.g. Flat pattern */
  readonly document: string
  /** what it is of: a part id, or the coach */
  readonly title: string
  readonly says: string
  /** side and view in words */
  readonly view: string
  readonly material: string
  /** bought name of its thickness; empty where there is none */
  readonly gauge: string
  readonly mass: string
  readonly scale: string
  readonly tolerance: string
  /** the part to fill in the key figure; null shows the bare coach */
  readonly part: Part | null
  readonly sheet: number
  readonly of: number
}

export const BLOCK_WIDTH = 180
export const FULL_BLOCK = 62
const SLIM_BLOCK = 20
export type BlockKind = 'full' | 'slim'
export const blockHeight = (kind: BlockKind): number => (kind === 'full' ? FULL_BLOCK : SLIM_BLOCK)

/** Common practice in sheet shops, no source: the first sheet of a batch is measured before the rest are cut. */
const CHECK_FIRST = 'First-off measured before the batch.'

const group = 'title'

/** One field: its name small above, what it holds below, cut short rather than run over. */
function field(
  x: number,
  y: number,
  width: number,
  name: string,
  value: string,
  height: LetterHeight = 2.5,
  bold = false,
): readonly Mark[] {
  const foot = height > 2.5 ? 7.8 : 7.3
  return [
    letter(x + 1, y + 0.9, name, { height: 1.8, sits: 'top', group }),
    letter(x + 1, y + foot, shorten(lettered(value), width - 2, height, bold), { height, bold, group }),
  ]
}

/** Whatever is cut short, it is not the gauge: that is what the sheet is picked from the rack by. */
function withGauge({ material, gauge }: Pick<TitleFacts, 'material' | 'gauge'>, width: number): string {
  if (gauge === '') return material
  const end = `  ${gauge}`
  return `${shorten(lettered(material), width - textWidth(lettered(end), 2.5), 2.5)}${end}`
}

function small(x: number, y: number, width: number, name: string, text: string): readonly Mark[] {
  return [
    letter(x + 1, y + 1.1, name, { height: 1.8, sits: 'top', group }),
    ...wrap(lettered(text), width - 2, 1.8)
      .slice(0, 2)
      .map((row, i) => letter(x + 1, y + 5.7 + i * 2.7, row, { height: 1.8, group })),
  ]
}

function keyFigure(facts: TitleFacts, x: number, y: number, width: number, height: number): readonly Mark[] {
  const { design, part } = facts
  const view = part ? viewOfPart(part) : 'left'
  const place = placeIn(design, view, x + 2, y + 8, width - 4, height - 16)
  const forward = view === 'right' ? 'forward →' : '← forward'
  return [
    letter(x + 1, y + 1.1, part ? 'Where it sits' : 'The coach', { height: 1.8, sits: 'top', group }),
    letter(x + width - 1, y + 1.1, fromAbove(view) ? 'from above' : `${view} side`, { height: 1.8, sits: 'top', anchor: 'end', group }),
    ...coachMarks(design, place, FINE, true),
    ...(part ? partMarks(design, part, place) : []),
    letter(x + width / 2, y + height - 1.6, forward, { height: 1.8, anchor: 'middle', group }),
  ]
}

/** The whole block with its top left corner at x, y. */
function fullBlock(facts: TitleFacts, x: number, y: number): readonly Mark[] {
  const { design } = facts
  const { coach } = design.definition
  const [a, b, c] = [x + 50, x + 148, x + BLOCK_WIDTH]
  const rows = [y + 9, y + 18, y + 26, y + 35, y + 44, y + 53]
  const cuts = [26, 44, 68, 96, 132, 158].map((at) => x + at)
  const foot = y + FULL_BLOCK
  return [
    rectangle(x, y, BLOCK_WIDTH, FULL_BLOCK, { width: OUTLINE, group }),
    lines(
      [
        [a, y, a, rows[4]],
        [b, y, b, rows[4]],
        [x, rows[4], c, rows[4]],
        [x, rows[5], c, rows[5]],
      ],
      { width: OUTLINE, group },
    ),
    lines(
      [
        ...rows.slice(0, 4).map((r) => [a, r, b, r] as const),
        ...cuts.map((cut) => [cut, rows[4], cut, rows[5]] as const),
        [a + 54, y, a + 54, rows[0]],
        [a + 62, rows[0], a + 62, rows[1]],
        [a + 70, rows[3], a + 70, rows[4]],
        [x + 90, rows[5], x + 90, foot],
      ],
      { width: FINE, group },
    ),
    ...keyFigure(facts, x, y, 50, 44),
    ...field(a, y, 54, 'Owner', coach.maker),
    ...field(a + 54, y, 44, 'Coach', coach.name, 3.5, true),
    ...field(a, rows[0], 62, 'Part', facts.title, 3.5, true),
    ...field(a + 62, rows[0], 36, 'Document', facts.document),
    letter(a + 1, rows[1] + 5.4, shorten(lettered(facts.says), 96, 2.5), { height: 2.5, group }),
    ...field(a, rows[2], 98, 'Side and view', facts.view, 2.5, true),
    ...field(a, rows[3], 70, 'Material and gauge', withGauge(facts, 68)),
    ...field(a + 70, rows[3], 28, 'Mass', facts.mass),
    letter(b + 1, y + 1.1, 'Revision', { height: 1.8, sits: 'top', group }),
    letter((b + c) / 2, y + 7.3, design.revision, { height: 2.5, bold: true, anchor: 'middle', group }),
    qrMark(qrText(coach.name, design.revision, facts.title), b + 2.5, y + 13, 27),
    ...field(x, rows[4], 26, 'Unit', facts.unit, 2.5, true),
    ...field(x + 26, rows[4], 18, 'Scale', facts.scale),
    ...field(x + 44, rows[4], 24, 'Date', facts.date),
    ...field(x + 68, rows[4], 28, 'Made by', 'Coachwright'),
    letter(x + 97, rows[4] + 1.1, 'Approved, date', { height: 1.8, sits: 'top', group }),
    ...projectionSymbol(projectionOf(coach.market), x + 136.5, rows[4] + 4.5, 5.5),
    ...field(x + 158, rows[4], 22, 'Sheet', `${facts.sheet} of ${facts.of}`),
    ...small(x, rows[5], 90, 'Tolerance', facts.tolerance),
    letter(x + 91, rows[5] + 1.1, 'Check before metal', { height: 1.8, bold: true, sits: 'top', group }),
    letter(x + 91, rows[5] + 7.3, shorten(CHECK_FIRST, 88, 2.5, true), { height: 2.5, bold: true, group }),
  ]
}

/** One line of the same facts for lists and continuation sheets. */
function slimBlock(facts: TitleFacts, x: number, y: number): readonly Mark[] {
  const { design } = facts
  const { coach } = design.definition
  const cuts = [0, 50, 107, 131, 160].map((at) => x + at)
  return [
    rectangle(x, y, BLOCK_WIDTH, SLIM_BLOCK, { width: OUTLINE, group }),
    line(x, y + 10, x + 160, y + 10, { width: FINE, group }),
    lines(
      cuts.slice(1).map((at) => [at, y, at, y + SLIM_BLOCK] as const),
      { width: FINE, group },
    ),
    ...field(cuts[0], y, 50, 'Coach', coach.name, 2.5, true),
    ...field(cuts[0], y + 10, 50, 'Owner', coach.maker),
    ...field(cuts[1], y, 57, facts.document, facts.title, 2.5, true),
    ...field(cuts[1], y + 10, 57, 'Side and view', facts.view, 1.8),
    ...field(cuts[2], y, 24, 'Unit', facts.unit, 2.5, true),
    ...field(cuts[2], y + 10, 24, 'Date', facts.date),
    ...field(cuts[3], y, 29, 'Revision', design.revision, 2.5),
    ...field(cuts[3], y + 10, 29, 'Sheet', `${facts.sheet} of ${facts.of}`),
    qrMark(qrText(coach.name, design.revision, facts.title), x + 162, y + 2, 16),
  ]
}

export const titleBlock = (facts: TitleFacts, kind: BlockKind, x: number, y: number): readonly Mark[] =>
  (kind === 'full' ? fullBlock : slimBlock)(facts, x, y)
