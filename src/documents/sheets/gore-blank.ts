/** The blanks of formed panels, one sheet a panel: the strain from flat to formed, where it is greatest, and what the shop must know. */
import type { Design } from '../../derive/design.js'
import type { BlankStudy, FormedBlank } from '../../studies/blanks/nouns.js'
import { lettered, textWidth, wrap } from '../drawing/lettering.js'
import type { Mark, Page } from '../drawing/page.js'
import { circles, FINE, letter, line, lines, OUTLINE, path, rectangle, THIN } from '../drawing/page.js'
import type { Room } from '../drawing/paper-sizes.js'
import { sheetsOf } from '../drawing/paper-sizes.js'
import type { Body, PrintOptions } from '../drawing/sheet.js'
import { partTitle, roomAbove, roomBeside, seriesOf, sheetsFrom, unitsOf } from '../drawing/sheet.js'
import { everyNth, levelsOf, levelWords, strainMarks } from '../drawing/strain-map.js'
import { scaleBar } from '../drawing/symbols.js'
import type { PrintUnits } from '../drawing/units.js'
import { plainLength } from '../drawing/units.js'
import type { View } from '../drawing/view.js'
import { scaleToFit, scaleWords, viewOf } from '../drawing/view.js'
import { MARK_LINES } from './pattern-geometry.js'

/** Room over the blank for heading and scale bar, and round it. */
const HEAD = 34
const NEAT = 12
/** Depth of the legend and the figures under it. */
const FOOT = 62

/** Strain maps of all panels; parts must be those of a design that holds the blanks (`withBlanks`). */
export function goreBlankSheets(design: Design, study: BlankStudy, options: PrintOptions = {}): readonly Page[] {
  return sheetsFrom(study.blanks.map((blank) => bodyOf(design, study, blank, options)))
}

function bodyOf(design: Design, study: BlankStudy, blank: FormedBlank, options: PrintOptions): Body {
  const size = sheetsOf(seriesOf(options))[1]
  const room = roomAbove(size, 'full')
  const units = unitsOf(options)
  const first = blank.parts[0]
  const part = design.parts.find((p) => p.id === first.part)
  if (!part) throw new Error(`the design has no part ${first.part}`)
  const scale = scaleToFit(blank.length, blank.width, room.width - 2 * NEAT, room.height - HEAD - FOOT)
  const wide = (blank.length * 1000) / scale
  const tall = (blank.width * 1000) / scale
  const [left, foot] = [room.x + (room.width - wide) / 2, room.y + HEAD + (room.height - HEAD - FOOT + tall) / 2]
  const view = viewOf(scale, [0, 0], [left, foot])
  const levels = levelsOf(blank.stretch.peak)
  const title = partTitle(design, options, 'Blank and strain', part, part.patterns[0] ?? null)
  const marks: Mark[] = [
    letter(room.x + 4, room.y + 9, `Blank of ${blank.says}: how far the sheet is stretched`, { height: 5, bold: true, group: 'heading' }),
    letter(room.x + 4, room.y + 16, lettered(servesWords(blank)), { height: 2.5, group: 'heading' }),
    ...scaleBar(scale, room.x + room.width - 120, room.y + 20, units),
    ...strainMarks(blank.field, view, levels),
    ...linesOn(first.marks, view),
    path([view.shape(first.outline)], { width: OUTLINE, group: 'outline' }),
    ...peakMark(blank, view, room, foot - tall - 6),
    ...legend(levels, room.x + 6, room.y + room.height - FOOT + 14),
    ...figures(blank, units, room.x + 128, room.y + room.height - FOOT + 14),
    ...cautions(blank, study, roomBeside(size, 'full')),
  ]
  return {
    name: `blank-${blank.panel}`,
    says: `Blank of ${blank.says} with its strain, ${scaleWords(scale)}`,
    size,
    block: 'full',
    marks,
    title: { ...title, title: blank.panel, says: blank.says, scale: scaleWords(scale) },
  }
}

function servesWords(blank: FormedBlank): string {
  const [first] = blank.parts
  const list = (turned: boolean): string =>
    blank.parts
      .filter((p) => (p.turned !== first.turned) === turned)
      .map((p) => p.part)
      .join(', ')
  return `As drawn, seen from outside: ${list(false)}. Turned over: ${list(true)}. Rows and openings differ: each part has its own pattern.`
}

function linesOn(marks: FormedBlank['parts'][number]['marks'], view: View): readonly Mark[] {
  return (['centre', 'lap', 'bend', 'roll'] as const).flatMap((kind) => {
    const of = marks.filter((m) => m.kind === kind)
    if (of.length === 0) return []
    const { type, width } = MARK_LINES[kind]
    return [
      lines(
        of.map((m) => [view.x(m.from[0]), view.y(m.from[1]), view.x(m.to[0]), view.y(m.to[1])] as const),
        { type, width, group: `marks-${kind}` },
      ),
    ]
  })
}

/** A ring round the place of the greatest stretch, led out to its figure above the blank. */
function peakMark({ stretch }: FormedBlank, view: View, room: Room, level: number): readonly Mark[] {
  const [x, y] = [view.x(stretch.at[0]), view.y(stretch.at[1])]
  const words = `greatest stretch ${percent(stretch.peak, 1)}: ${stretch.says}`
  const wide = textWidth(words, 2.5, true)
  const at = Math.min(Math.max(x + 2, room.x + 4), room.x + room.width - wide - 4)
  return [
    circles([x, y, 4], { width: OUTLINE, group: 'peak' }),
    line(x, y - 2, x, level + 1, { width: THIN, group: 'peak' }),
    letter(at, level, lettered(words), { height: 2.5, bold: true, group: 'peak' }),
  ]
}

const percent = (value: number, digits: number): string => `${(100 * value).toFixed(digits)} %`

function legend(levels: readonly number[], x: number, y: number): readonly Mark[] {
  const group = 'legend'
  const marks: Mark[] = [letter(x, y, 'Stretch from flat to formed', { height: 2.5, bold: true, group })]
  const bands = [0, ...levels]
  bands.forEach((from, band) => {
    const top = y + 3 + band * 7
    const to = bands[band + 1]
    marks.push(rectangle(x, top, 24, 5, { width: FINE, group }))
    const drawn = band === 0 ? [] : Array.from({ length: 30 }, (_, n) => n).filter((n) => n % everyNth(band, levels.length) === 0)
    if (drawn.length > 0)
      marks.push(
        lines(
          drawn.map((n) => [x + 0.4 + n * 0.8, top, x + 0.4 + n * 0.8, top + 5] as const),
          { width: FINE, group },
        ),
      )
    const words = to === undefined ? `${levelWords(from)} and over` : `${levelWords(from)} to ${levelWords(to)}`
    marks.push(letter(x + 28, top + 2.5, words, { height: 2.5, sits: 'middle', group }))
  })
  return marks
}

function figures(blank: FormedBlank, units: PrintUnits, x: number, y: number): readonly Mark[] {
  const group = 'figures'
  const rows: readonly (readonly [string, string])[] = [
    ['Blank, the rectangle round it', `${plainLength(blank.length, units)} × ${plainLength(blank.width, units)}`],
    ['Cut from', blank.stock ?? 'no stock sheet is large enough'],
    ['Greatest stretch', percent(blank.stretch.peak, 1)],
    ['Mean stretch', percent(blank.stretch.mean, 1)],
    ['Greatest shrink, at its edges', percent(blank.shrink, 1)],
    ['Least thickness', `${(blank.leastThickness * 1000).toFixed(3)} mm of ${(blank.thickness * 1000).toFixed(2)} mm`],
    ['Area flat, and formed', `${blank.areaFlat.toFixed(3)} m², ${blank.areaFormed.toFixed(3)} m²`],
  ]
  return rows.flatMap(([what, value], i) => [
    letter(x, y + i * 5.5, what, { height: 2.5, group }),
    letter(x + 58, y + i * 5.5, lettered(value), { height: 2.5, bold: true, group }),
  ])
}

/** Beside the title block: verdicts first, then what the figures are and are not. */
function cautions(blank: FormedBlank, study: BlankStudy, room: Room): readonly Mark[] {
  const group = 'notes'
  const marks: Mark[] = [lines([[room.x, room.y, room.x + room.width, room.y]], { width: THIN, group })]
  const said = [
    ...blank.checks.filter((c) => c.verdict !== 'pass').map((c) => `${c.verdict.toUpperCase()}: ${c.says}`),
    ...blank.checks.filter((c) => c.verdict === 'pass').map((c) => c.says),
    blank.springback.says,
    ...study.says,
  ]
  let y = room.y + 5
  for (const sentence of said)
    for (const [i, row] of wrap(lettered(sentence), room.width - 10, 1.8).entries()) {
      if (y > room.y + room.height - 1.5) return marks
      marks.push(letter(room.x + 3 + (i === 0 ? 0 : 2.5), y, row, { height: 1.8, group }))
      y += 3
    }
  return marks
}
