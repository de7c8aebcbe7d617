/**
 * The flat pattern of a part, one sheet a pattern: drawn to scale as the sheet lies on the bench, dimensioned from its origin mark.
 * A pattern much longer than it is wide (a frame) is broken into bands one above the other.
 */
import type { Design } from '../../derive/design.js'
import type { Part, Pattern } from '../../derive/nouns.js'
import { holeRows } from '../drawing/hole-rows.js'
import { textWidth } from '../drawing/lettering.js'
import type { LetterHeight, Mark, Page } from '../drawing/page.js'
import { letter, rectangle } from '../drawing/page.js'
import type { PaperSize } from '../drawing/paper-sizes.js'
import { sheetsOf } from '../drawing/paper-sizes.js'
import type { Wanted } from '../drawing/place-labels.js'
import { placeLabels } from '../drawing/place-labels.js'
import type { Body, PrintOptions } from '../drawing/sheet.js'
import { partTitle, roomAbove, seriesOf, sheetsFrom, unitsOf } from '../drawing/sheet.js'
import { strengthStamp } from '../drawing/strength-stamp.js'
import { directionArrow, scaleBar } from '../drawing/symbols.js'
import { marksIn } from '../drawing/tiles.js'
import type { PrintUnits } from '../drawing/units.js'
import { plainLength } from '../drawing/units.js'
import type { Bounds, Scale, View } from '../drawing/view.js'
import { boundsOf, SCALES, scaleWords, viewOf } from '../drawing/view.js'
import type { Margins } from './pattern-dimensions.js'
import { dimensionMarks, edgePlaces, marginsFor, rowWords } from './pattern-dimensions.js'
import { patternInk } from './pattern-geometry.js'
import { patternNotes } from './pattern-notes.js'

interface Layout {
  readonly size: PaperSize
  readonly scale: Scale
  readonly bands: number
  readonly margins: Margins
  readonly height: LetterHeight
}

/** Room kept at the top for the direction arrows and the scale bar, mm. */
const HEAD = 18
const NEAT = 3
/** How far beside a sheet its rows may be named, mm. */
const BESIDE = 60

/** The smallest sheet on which the pattern reads: 1:10 or larger, 1:5 for small parts and for strips, whose holes would run together. */
function layoutFor(pattern: Pattern, units: PrintUnits, sizes: readonly PaperSize[]): Layout {
  const box = boundsOf([pattern.outline])
  const [w, h] = [box.x1 - box.x0, box.y1 - box.y0]
  const bandable = w > 12 * h
  const wanted = bandable || Math.max(w, h) < 0.5 ? 5 : 10
  let fallback: Layout | null = null
  // what is written does not depend on the scale, only how deep it stands on its lettering
  const places = edgePlaces(pattern, viewOf(10, [box.x0, box.y0], [0, 0]), units, box.x0, box.x1, { left: true, right: true })
  for (const size of sizes) {
    const room = roomAbove(size, 'full')
    // larger sheets are read from further away
    const heights: readonly LetterHeight[] = size.widthMm > 500 ? [3.5, 2.5] : [2.5]
    for (const [height, scale] of heights.flatMap((h) => SCALES.map((s) => [h, s] as const))) {
      const margins = marginsFor(places, height)
      const [wide, tall] = [room.width - margins.left - margins.right - 2 * NEAT, room.height - HEAD - 2 * NEAT]
      const bands = bandable ? Math.ceil((w * 1000) / scale / wide) : 1
      const need = bands * ((h * 1000) / scale + margins.top + margins.foot)
      if (wide < 40 || (w * 1000) / scale / bands > wide || need > tall || bands > 4) continue
      const found = { size, scale, bands, margins, height }
      if (scale <= wanted) return found
      if (fallback === null || scale < fallback.scale) fallback = found
    }
  }
  if (fallback === null) throw new Error(`No sheet holds a pattern of ${w} by ${h} m`)
  return fallback
}

/** One drawn stretch of a pattern with everything round it. */
function stretch(
  part: Part,
  pattern: Pattern,
  view: View,
  units: PrintUnits,
  from: number,
  to: number,
  whole: Bounds,
  roomX: readonly [number, number],
  roomY: readonly [number, number],
  height: LetterHeight,
): readonly Mark[] {
  const box: Bounds = { ...whole, x0: from, x1: to }
  const first = from <= whole.x0 + 1e-9
  const last = to >= whole.x1 - 1e-9
  const ink = patternInk(pattern, view)
  const places = edgePlaces(pattern, view, units, from, to, { left: first, right: last })
  const [left, right, top, foot] = [view.x(from), view.x(to), view.y(whole.y1), view.y(whole.y0)]
  const marks: Mark[] = []
  if (first && last) marks.push(...ink.marks)
  else {
    const over = 5
    const [a, b] = [left - (first ? over : 0), right + (last ? over : 0)]
    marks.push({
      kind: 'window',
      x: a,
      y: top - over,
      width: b - a,
      height: foot - top + 2 * over,
      shift: [0, 0],
      marks: marksIn(ink.marks, a, top - over, b, foot + over),
      group: 'part',
    })
    if (!first) marks.push(letter(left - 2, (top + foot) / 2, 'from above', { height: 1.8, anchor: 'end', sits: 'middle', group: 'break' }))
    if (!last) marks.push(letter(right + 2, (top + foot) / 2, 'goes on below', { height: 1.8, sits: 'middle', group: 'break' }))
  }
  marks.push(...dimensionMarks(part, pattern, view, places, box, { x: roomX, y: roomY }, height))
  // a row's name may stand beside the sheet, clear of what is written along its right edge
  const beside = places.right.map(({ at }) => [right, at - height, roomX[1], at + height] as const)
  marks.push(...cutNames(pattern, view, units, from, to, ink.holes, [left, top, Math.min(roomX[1], right + BESIDE), foot], beside, height))
  return marks
}

/** Openings named inside their cuts where the name fits, by a leader where it does not; rim rows go with them. */
function cutNames(
  pattern: Pattern,
  view: View,
  units: PrintUnits,
  from: number,
  to: number,
  holes: readonly (readonly [number, number])[],
  area: readonly [number, number, number, number],
  beside: readonly (readonly [number, number, number, number])[],
  height: LetterHeight,
): readonly Mark[] {
  const loose = holeRows(pattern).filter((row) => row.lies === 'ring' || row.lies === 'scatter')
  const marks: Mark[] = []
  const wanted: Wanted[] = []
  const boxes: (readonly [number, number, number, number])[] = [...beside]
  const named = new Set<string>()
  for (const cut of pattern.cuts) {
    const b = boundsOf([cut.outline])
    const own = loose.filter((row) => row.row.endsWith(`-${cut.opening}`))
    for (const row of own) named.add(row.row)
    if ((b.x0 + b.x1) / 2 < from || (b.x0 + b.x1) / 2 > to) continue
    const full = [
      cut.opening,
      `${plainLength(b.x1 - b.x0, units).split(' ')[0]} × ${plainLength(b.y1 - b.y0, units).split(' ')[0]}`,
      ...own.map((row) => rowWords(row, units)),
    ]
    const paper = [view.x(b.x0), view.y(b.y1), view.x(b.x1), view.y(b.y0)] as const
    boxes.push(paper)
    const [cx, cy] = [(paper[0] + paper[2]) / 2, (paper[1] + paper[3]) / 2]
    // a cut that goes on in the next band is named by a leader to the part of it that is seen here
    const seen = Math.min(cx - Math.max(paper[0], area[0]), Math.min(paper[2], area[2]) - cx)
    if ((paper[0] < area[0] || paper[2] > area[2]) && seen < textWidth(cut.opening, height, true)) {
      wanted.push({ lines: [cut.opening], at: [(Math.max(paper[0], area[0]) + Math.min(paper[2], area[2])) / 2, cy], height })
      continue
    }
    const fits = namesThatFit(full, paper[2] - paper[0] - 3, paper[3] - paper[1] - 1, height)
    if (fits === null) {
      wanted.push({ lines: [cut.opening], at: [cx, cy], height })
      continue
    }
    const { words, letters } = fits
    const pitch = letters * 1.7
    const widest = Math.max(...words.map((text) => textWidth(text, letters)))
    // paper under the name, so that a centre line through the cut stops short of it
    marks.push(
      rectangle(cx - widest / 2 - 0.6, cy - (words.length * pitch) / 2, widest + 1.2, words.length * pitch, {
        width: null,
        fill: 1,
        group: 'label',
      }),
    )
    words.forEach((text, i) => {
      marks.push(
        letter(cx, cy + (i - (words.length - 1) / 2) * pitch, text, {
          height: letters,
          bold: i === 0,
          anchor: 'middle',
          sits: 'middle',
          group: 'label',
        }),
      )
    })
  }
  for (const row of loose) {
    if (named.has(row.row)) continue
    const i = row.holes[0]
    if (pattern.holes.x[i] >= from && pattern.holes.x[i] <= to)
      wanted.push({ lines: [rowWords(row, units)], at: [view.x(pattern.holes.x[i]), view.y(pattern.holes.y[i])], height })
  }
  return [...marks, ...placeLabels(wanted, { points: holes, boxes }, area)]
}

/** As many lines as go into the box, in the sheet's lettering or the next smaller; null when not even the first does. */
function namesThatFit(
  words: readonly string[],
  width: number,
  tall: number,
  height: LetterHeight,
): { readonly words: readonly string[]; readonly letters: LetterHeight } | null {
  const smaller: readonly LetterHeight[] = height > 2.5 ? [height, 2.5, 1.8] : [height, 1.8]
  for (const letters of smaller) {
    for (let n = words.length; n >= (letters === height ? 2 : 1); n--) {
      const some = words.slice(0, n)
      if (n * letters * 1.7 <= tall && some.every((text, i) => textWidth(text, letters, i === 0) <= width)) return { words: some, letters }
    }
  }
  return null
}

/** Where forward, up and right of travel are on the page, whichever way the pattern's own axes run. */
function arrows(pattern: Pattern, x: number, y: number): readonly Mark[] {
  const arrow = (axis: string, turn: number, length: number): readonly Mark[] => {
    const back = axis === 'aft' || axis === 'down' || axis === 'left'
    const word = axis === 'aft' || axis === 'forward' ? 'forward' : axis === 'up' || axis === 'down' ? 'up' : 'right of travel'
    return directionArrow(x, y, turn + (back ? 180 : 0), word, length)
  }
  return [...arrow(pattern.flat.x, 0, 14), ...arrow(pattern.flat.y, 90, 10)]
}

function bodyOf(design: Design, part: Part, pattern: Pattern, options: PrintOptions): Body {
  const units = unitsOf(options)
  const whole = boundsOf([pattern.outline])
  const { size, scale, bands, margins, height } = layoutFor(pattern, units, sheetsOf(seriesOf(options)).slice(1))
  const room = roomAbove(size, 'full')
  const length = (whole.x1 - whole.x0) / bands
  const tall = ((whole.y1 - whole.y0) * 1000) / scale
  const each = tall + margins.top + margins.foot
  const spare = Math.max(0, room.height - HEAD - each * bands)
  const marks: Mark[] = []
  for (let n = 0; n < bands; n++) {
    const from = whole.x0 + n * length
    const wide = (length * 1000) / scale
    const left = room.x + margins.left + Math.max(NEAT, (room.width - margins.left - margins.right - wide) / 2)
    const foot = room.y + HEAD + (spare * (n + 1)) / (bands + 1) + n * each + margins.top + tall
    const view = viewOf(scale, [from, whole.y0], [left, foot])
    marks.push(
      ...stretch(
        part,
        pattern,
        view,
        units,
        from,
        from + length,
        whole,
        [room.x + 2, room.x + room.width - 2],
        [foot - tall - margins.top + 2, foot + margins.foot - 2],
        height,
      ),
    )
  }
  marks.push(...arrows(pattern, room.x + 40, room.y + 16))
  marks.push(...scaleBar(scale, room.x + 100, room.y + 8, units))
  if (part.trade === 'chassis') marks.push(strengthStamp(room.x + room.width - 3, room.y + 9))
  marks.push(...patternNotes(design, part, pattern, size, units, height > 2.5 ? 2.5 : 1.8))
  const face = part.patterns.length > 1 ? `${part.id}-${pattern.face}` : part.id
  const title = { ...partTitle(design, options, 'Flat pattern', part, pattern), scale: scaleWords(scale) }
  return {
    name: `${face}-flat`,
    says: `Flat pattern of ${part.says}${part.patterns.length > 1 ? `, ${pattern.face}` : ''}, ${scaleWords(scale)}`,
    size,
    block: 'full',
    marks,
    title: part.patterns.length > 1 ? { ...title, says: `${part.says}, ${pattern.face}` } : title,
  }
}

/** Dimensioned flat patterns of a part, one page a pattern. */
export function flatPatternSheets(design: Design, part: Part, options: PrintOptions = {}): readonly Page[] {
  return sheetsFrom(part.patterns.map((pattern) => bodyOf(design, part, pattern, options)))
}
