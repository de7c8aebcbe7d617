/**
 * Artwork of the two labels at full size, and under each where its words are from. DRAFT stands across both until the unit is
 * weighed and a person answers for them; every override of a locked wording is listed.
 */
import type { Design } from '../../derive/design.js'
import type { LabelsDerived, RoadDerived } from '../../derive/road-nouns.js'
import type { LabelLine } from '../../tables/labels.js'
import { draftStamp } from '../drawing/draft-stamp.js'
import { lettered, wrap } from '../drawing/lettering.js'
import type { Mark, Page } from '../drawing/page.js'
import { letter, OUTLINE, rectangle } from '../drawing/page.js'
import { sheetsOf } from '../drawing/paper-sizes.js'
import type { PrintOptions } from '../drawing/sheet.js'
import { coachTitle, roomAbove, seriesOf, sheetsFrom, unitsOf } from '../drawing/sheet.js'
import type { Row } from '../drawing/table.js'
import { introduction } from '../drawing/table.js'
import { massWords } from '../drawing/units.js'
import { type Stacked, stackRows, stackText } from './stacked.js'

/** Width of a label, mm, and its letters: the next printed height above 3/32 in, 2.4 mm. */
const WIDE = 150
const [LETTERS, PITCH, MARGIN] = [2.5, 4.6, 4] as const

export function labelSheets(design: Design, road: RoadDerived, options: PrintOptions = {}): readonly Page[] {
  const { labels } = road
  const units = unitsOf(options)
  const size = sheetsOf(seriesOf(options))[0]
  const title = coachTitle(design, options, 'Labels', design.definition.coach.name, 'Certification and cargo labels')
  const room = roomAbove(size, 'slim')
  const inner = { x: room.x + 4, y: room.y + 4, width: room.width - 8, foot: room.y + room.height - 3 }
  const isDraft = labels.draft.length > 0
  const sheet = (name: string, heading: string, lines: readonly LabelLine[], sentences: readonly string[]) => {
    const head = introduction(inner.x, inner.y, inner.width, isDraft ? `${heading}: DRAFT` : heading, sentences)
    const art = artwork(lines, isDraft, inner.x + (inner.width - WIDE) / 2, inner.y + head.depth + 3)
    const under: Stacked = { marks: [], x: inner.x, y: art.foot + 6, width: inner.width }
    if (isDraft) {
      stackText(under, 'Not to be fixed to a coach. It stays a draft because:', true)
      for (const says of labels.draft) stackText(under, says)
    } else stackText(under, `Answered for by ${labels.responsible}. Compare every figure with the weigh sheet before it is fixed.`, true)
    stackRows(
      under,
      [
        { head: 'Words', width: 34, bold: true },
        { head: 'Locked to', width: 76, wraps: true },
        { head: 'Overridden by', width: inner.width - 110, wraps: true },
      ],
      editionRows(lines),
      inner.foot,
    )
    return { name, says: heading, size, block: 'slim' as const, title, marks: [...head.marks, ...art.marks, ...under.marks] }
  }
  return sheetsFrom([
    sheet('label-certification', 'Certification label', labels.certification, [
      'Full size. On the left side, forward half, to be read from outside without moving a part; letters at least 2.4 mm high, in a colour that contrasts; destroyed when taken off, or a metal tag riveted on.',
      "The duty to certify is the manufacturer's. A qualified person must compare wording and place with the law in force.",
    ]),
    sheet('label-cargo', 'Cargo label', labels.cargo, [
      'Full size. Beside the certification label, or where the rule in force asks for it. Cargo is rounded down; water is reckoned as the rule reckons it.',
      `${capacityWords(labels, units)} When more than ${massWords(labels.relabelAbove, units)} is added before the first sale, the label must be changed (72 FR 68442).`,
    ]),
  ])
}

const capacityWords = ({ capacity }: LabelsDerived, units: Parameters<typeof massWords>[1]): string =>
  capacity === null
    ? 'The unit is not weighed, so its cargo is not known.'
    : `Gross rating less the weighed empty mass leaves ${massWords(capacity, units)}.`

function artwork(
  lines: readonly LabelLine[],
  isDraft: boolean,
  x: number,
  y: number,
): { readonly marks: readonly Mark[]; readonly foot: number } {
  const group = 'label'
  const rows = lines.map((line) => wrap(lettered(line.text), WIDE - 2 * MARGIN, LETTERS, true))
  const tall = 2 * MARGIN + rows.reduce((sum, row) => sum + row.length * PITCH + 1.4, -1.4)
  const marks: Mark[] = isDraft ? [...draftStamp({ x, y, width: WIDE, height: tall })] : []
  marks.push(rectangle(x, y, WIDE, tall, { width: OUTLINE, group }))
  let level = y + MARGIN + LETTERS + 0.8
  for (const row of rows) {
    for (const text of row) {
      marks.push(letter(x + MARGIN, level, text, { height: LETTERS, bold: true, group }))
      level += PITCH
    }
    level += 1.4
  }
  return { marks, foot: y + tall }
}

/** Lines that share words, such as one a axle, are listed once. */
function editionRows(lines: readonly LabelLine[]): readonly Row[] {
  return [...new Map(lines.map((line) => [line.id, line])).values()].map(({ id, edition, overridden }) => [id, edition, overridden ?? ''])
}
