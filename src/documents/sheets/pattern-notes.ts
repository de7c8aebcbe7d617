/** Beside the title block: the rows of holes as a small table, and the notes in sentences. */

import type { Design } from '../../derive/design.js'
import { rowNamed } from '../../derive/holes.js'
import type { Part, Pattern } from '../../derive/nouns.js'
import { holeRows } from '../drawing/hole-rows.js'
import { lettered, shorten, wrap } from '../drawing/lettering.js'
import { netOutline } from '../drawing/net-outline.js'
import type { LetterHeight, Mark } from '../drawing/page.js'
import { FINE, letter, lines, THIN } from '../drawing/page.js'
import type { PaperSize } from '../drawing/paper-sizes.js'
import { roomBeside } from '../drawing/sheet.js'
import type { PrintUnits } from '../drawing/units.js'
import { lengthUnit, massWords, plainLength, stockWords } from '../drawing/units.js'
import { boundsOf } from '../drawing/view.js'
import { pitchWords } from './pattern-dimensions.js'

/** Widths for lettering 1.8 high, mm; larger lettering takes them larger. */
const NOTES = 92
const ROW = 3.6
const COLUMN = 83
/** More for bolts and screws, which are named by their size. */
const BROAD = 10
/** Names of rivets are no longer than this. */
const SHORT = 4

/** What a person at the bench must know besides the figures. */
function noteSentences(design: Design, part: Part, pattern: Pattern, units: PrintUnits): readonly string[] {
  const box = boundsOf([pattern.outline])
  const stock = part.stock === null ? null : design.definition.stock.sheets.find((s) => s.name === part.stock)
  const { origin } = pattern.flat
  return [
    `Dimensions in ${units === 'metric' ? 'millimetres' : 'inches'} from the origin mark (${origin.says}${part.place.end || part.place.buttock !== undefined ? '' : `: STA ${(origin.station * 1000).toFixed(0)}, G ${(Math.abs(origin.girth) * 1000).toFixed(0)}`}). Drawn at the sheet's mid surface.`,
    `Blank ${plainLength(box.x1 - box.x0, units)} × ${plainLength(box.y1 - box.y0, units)}${part.stock ? `, ${part.kind === 'floor-panel' ? 'cut' : 'sheared'} from stock ${stock ? stockWords(stock, units) : part.stock}` : ''}, net ${massWords(part.mass.value, units)}.`,
    ...(part.pieces > 1 ? [`The cuts leave ${part.pieces} separate pieces.`] : []),
    ...(netOutline(pattern).removed.length > 0 ? ['A thin dashed edge is taken away by a cut.'] : []),
    ...fastenerSentences(design, pattern),
    pattern.holes.x.length > 0
      ? 'Hole places are in the hole table of the same revision; the table is the authority, not this drawing.'
      : 'Its edge is in the drawing file of the same revision and on the sheet at full size.',
    ...part.notes,
  ]
}

/** `S4 is a 1/8 in solid rivet, universal head, 2117-T4.` for each type the pattern takes. */
function fastenerSentences(design: Design, pattern: Pattern): readonly string[] {
  const rows = pattern.holes.rows.flatMap((id) => rowNamed(design, id) ?? [])
  const used = new Set(rows.map((row) => row.fastener))
  const fixings = new Map(
    rows.filter((row) => row.kind === 'bolt' || row.kind === 'screw').map((row) => [row.fastener, row.stacks[0].name]),
  )
  const bought = [...fixings].map(
    ([name, length]) => `${name.replace(/^./, (c) => c.toUpperCase())} is bought as ${length} for the usual stack.`,
  )
  const rivets = design.definition.fasteners
    .filter((type) => used.has(type.id))
    .map((type) => `${type.id} is a ${type.diameter.name} ${type.kind} rivet, ${type.head}, ${type.alloy}.`)
  return [...rivets, ...bought]
}

export function patternNotes(
  design: Design,
  part: Part,
  pattern: Pattern,
  size: PaperSize,
  units: PrintUnits,
  height: LetterHeight,
): readonly Mark[] {
  const k = height / 1.8
  const room = roomBeside(size, 'full')
  if (room.width < 60) return []
  const group = 'notes'
  const marks: Mark[] = [lines([[room.x, room.y, room.x + room.width, room.y]], { width: THIN, group })]
  const wide = Math.min(NOTES * k, room.width - 8)
  const foot = room.y + room.height
  let y = room.y + 6
  marks.push(letter(room.x + 3, y, 'Notes', { height: 2.5, bold: true, group }))
  y += height * 1.65 + 1
  const sentences = noteSentences(design, part, pattern, units)
  for (const [n, sentence] of sentences.entries()) {
    const rows = wrap(lettered(`${n + 1}  ${sentence}`), wide, height)
    // a line is kept for saying what is left out: a note cut short in silence is worse than none
    const isLast = n + 1 === sentences.length
    if (y + (rows.length - 1) * height * 1.65 > foot - 1.5 - (isLast ? 0 : height * 1.65)) {
      const left = sentences.length - n
      marks.push(
        letter(room.x + 3, y, `${left === 1 ? 'One more note is' : `${left} more notes are`} in the part's data.`, {
          height,
          bold: true,
          group,
        }),
      )
      break
    }
    for (const [i, row] of rows.entries()) {
      marks.push(letter(room.x + 3 + (i === 0 ? 0 : 2.6 * k), y, row, { height, group }))
      y += height * 1.65
    }
    y += 0.9
  }
  const from = room.x + wide + 12
  return [...marks, ...rowTable(design, pattern, from, room.y, room.x + room.width - from, room.height, units, height)]
}

/** Rows of holes in as many columns as there is room for. */
function rowTable(
  design: Design,
  pattern: Pattern,
  x: number,
  y: number,
  width: number,
  tall: number,
  units: PrintUnits,
  height: LetterHeight,
): readonly Mark[] {
  const k = height / 1.8
  const rows = holeRows(pattern)
  const broad = rows.some((row) => (rowNamed(design, row.row)?.fastener.length ?? 0) > SHORT) ? BROAD : 0
  const [wide, pitch] = [(COLUMN + broad) * k, ROW * k]
  const columns = Math.floor((width + 4) / wide)
  if (columns === 0 || rows.length === 0) return []
  const group = 'rows'
  const deep = Math.floor((tall - 11) / pitch)
  const marks: Mark[] = []
  const cells = [0, 29, 38 + broad, 52 + broad, 61 + broad, 82 + broad].map((at) => at * k)
  for (let c = 0; c < columns && c * deep < rows.length; c++) {
    const left = x + c * wide
    const head = ['Row of holes', 'Type', `Hole ${lengthUnit(units)}`, 'No.', `Pitch ${lengthUnit(units)}`]
    head.forEach((text, i) => {
      marks.push(letter(left + cells[i], y + 6, text, { height, bold: true, group }))
    })
    marks.push(lines([[left, y + 7.6, left + wide - 5, y + 7.6]], { width: FINE, group }))
    rows.slice(c * deep, (c + 1) * deep).forEach((row, i) => {
      const level = y + 8.2 + pitch * (i + 0.85)
      const made = rowNamed(design, row.row)
      const text = [
        row.row,
        made?.fastener ?? '—',
        plainLength(row.diameter, units).split(' ')[0],
        String(row.holes.length),
        pitchWords(row, units),
      ]
      text.forEach((value, n) => {
        marks.push(letter(left + cells[n], level, shorten(lettered(value), cells[n + 1] - cells[n] - 1, height), { height, group }))
      })
    })
  }
  const left = rows.length - columns * deep
  if (left > 0) marks.push(letter(x, y + tall - 1.5, `and ${left} more rows: see the hole table`, { height, group }))
  return marks
}
