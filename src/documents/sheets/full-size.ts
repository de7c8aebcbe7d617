/**
 * A flat pattern at full size: on roll pages up to 5.08 m, or cut into sheets with register crosses. Every page carries a 100 mm square.
 * And the bare pattern for a machine or a person who adds nothing: outline, cuts, holes and marks in named groups, no frame.
 */
import type { Design } from '../../derive/design.js'
import type { Part, Pattern } from '../../derive/nouns.js'
import { holeRows } from '../drawing/hole-rows.js'
import { lettered, textWidth, wrap } from '../drawing/lettering.js'
import type { Mark, Page } from '../drawing/page.js'
import { FINE, letter, lines, THIN } from '../drawing/page.js'
import type { PrintOptions, TitleDraft } from '../drawing/sheet.js'
import { partTitle, sheetsFrom, unitsOf } from '../drawing/sheet.js'
import { checkSquare, directionArrow } from '../drawing/symbols.js'
import type { Drawing } from '../drawing/tiles.js'
import { marksIn, tileBodies } from '../drawing/tiles.js'
import { BLOCK_WIDTH, titleBlock } from '../drawing/title-block.js'
import type { View } from '../drawing/view.js'
import { boundsOf, viewOf } from '../drawing/view.js'
import { rowWords } from './pattern-dimensions.js'
import { patternInk } from './pattern-geometry.js'

/** Longest page of a PDF file: 14 400 points of 1/72 in (PDF 1.7, annex C.2). */
const LONGEST_MM = 5080
const EDGE = 20
/** Height of the strip under the pattern for square, words and title block, mm. */
const STRIP = 125

const faceOf = (part: Part, pattern: Pattern): string => (part.patterns.length > 1 ? `${part.id}-${pattern.face}` : part.id)

function fullTitle(design: Design, part: Part, pattern: Pattern, options: PrintOptions): TitleDraft {
  const title = partTitle(design, options, 'Full size', part, pattern)
  return { ...title, scale: '1:1', says: part.patterns.length > 1 ? `${part.says}, ${pattern.face}` : part.says }
}

/** Names on the metal itself: rows beside their first hole, cuts and marks, in letters to be read standing. */
function names(pattern: Pattern, view: View, options: PrintOptions): readonly Mark[] {
  const units = unitsOf(options)
  const { holes } = pattern
  const box = boundsOf([pattern.outline])
  const room = view.length(box.y1 - box.y0)
  const marks: Mark[] = []
  const group = 'names'
  for (const row of holeRows(pattern)) {
    const i = row.holes[Math.floor(row.holes.length / 2)]
    const [x, y] = [view.x(holes.x[i]), view.y(holes.y[i])]
    const upright = row.lies === 'column' && room > 150
    const text = rowWords(row, units)
    if (row.lies !== 'line' && row.lies !== 'column') continue
    if (upright) {
      marks.push(letter(x - 4, (view.y(row.from) + view.y(row.to)) / 2, text, { height: 3.5, turn: 90, anchor: 'middle', group }))
      continue
    }
    const after = x + 4 + textWidth(text, 3.5) > view.x(box.x1)
    marks.push(letter(after ? x - 4 : x + 4, y - 4, text, { height: 3.5, anchor: after ? 'end' : 'start', group }))
  }
  for (const cut of pattern.cuts) {
    const b = boundsOf([cut.outline])
    marks.push(
      letter(view.x((b.x0 + b.x1) / 2), view.y((b.y0 + b.y1) / 2), cut.opening, {
        height: room > 150 ? 10 : 3.5,
        bold: true,
        anchor: 'middle',
        sits: 'middle',
        group,
      }),
    )
  }
  for (const mark of pattern.marks) {
    const across = Math.abs(mark.from[1] - mark.to[1]) < Math.abs(mark.from[0] - mark.to[0])
    const [x, y] = [view.x(mark.from[0] + (mark.to[0] - mark.from[0]) * 0.08), view.y(mark.from[1] + (mark.to[1] - mark.from[1]) * 0.08)]
    marks.push(letter(across ? x : x - 1.5, across ? y - 1.5 : y, lettered(mark.says), { height: 3.5, turn: across ? 0 : 90, group }))
  }
  return marks
}

function drawingOf(pattern: Pattern, options: PrintOptions): Drawing & { readonly view: View } {
  const box = boundsOf([pattern.outline])
  const view = viewOf(1, [box.x0, box.y1], [EDGE, EDGE])
  return {
    view,
    widthMm: view.length(box.x1 - box.x0) + 2 * EDGE,
    heightMm: view.length(box.y1 - box.y0) + 2 * EDGE,
    marks: [...patternInk(pattern, view, true).marks, ...names(pattern, view, options)],
  }
}

const words = (part: Part, pattern: Pattern): readonly string[] => [
  'Print at 100 %, never fit to page. The square must measure 100 mm each way.',
  `Seen from ${pattern.flat.view}. Heavy line: cut. Crosses: hole centres. ${part.says}.`,
]

/** Roll pages at 1:1, as many as the length needs; each but the last ends on a register line. */
export function fullSizeRoll(design: Design, part: Part, pattern: Pattern, options: PrintOptions = {}): readonly Page[] {
  const drawing = drawingOf(pattern, options)
  const usable = LONGEST_MM - 2 * EDGE
  const count = drawing.widthMm <= LONGEST_MM ? 1 : Math.ceil(drawing.widthMm / usable)
  const each = drawing.widthMm / count
  const title = fullTitle(design, part, pattern, options)
  const heightMm = Math.ceil(drawing.heightMm + STRIP)
  return Array.from({ length: count }, (_, n) => {
    const lap = count === 1 ? 0 : 10
    const widthMm = Math.max(Math.ceil(each + 2 * lap), 420)
    const shift = lap - n * each
    const ink: readonly Mark[] =
      count === 1
        ? drawing.marks
        : [
            {
              kind: 'window',
              x: 0,
              y: 0,
              width: each + 2 * lap,
              height: drawing.heightMm,
              shift: [shift, 0],
              marks: marksIn(drawing.marks, -shift, 0, each + 2 * lap - shift, drawing.heightMm),
              group: 'full-size',
            },
          ]
    const register = count === 1 ? [] : [n > 0 ? lap : null, n < count - 1 ? lap + each : null].filter((x): x is number => x !== null)
    const cross = register.flatMap(
      (x) =>
        [
          [x, 0, x, drawing.heightMm],
          [x - 8, EDGE / 2, x + 8, EDGE / 2],
          [x - 8, drawing.heightMm - EDGE / 2, x + 8, drawing.heightMm - EDGE / 2],
        ] as const,
    )
    const top = drawing.heightMm + 8
    const text = words(part, pattern).flatMap((sentence) => wrap(lettered(sentence), Math.max(90, widthMm - 345), 3.5))
    const marks: Mark[] = [
      ...ink,
      ...checkSquare(EDGE, top),
      ...text.map((row, i) => letter(EDGE + 110, top + 8 + i * 6, row, { height: 3.5, group: 'words' })),
      ...arrowsFor(pattern, EDGE + 150, top + 90),
      ...(cross.length > 0 ? [lines(cross, { width: THIN, group: 'register' })] : []),
      ...titleBlock({ ...title, sheet: n + 1, of: count }, 'full', widthMm - EDGE / 2 - BLOCK_WIDTH, heightMm - 62 - 8),
      lines(
        [
          [0, 0, widthMm, 0],
          [0, heightMm, widthMm, heightMm],
        ],
        { width: FINE, group: 'edge' },
      ),
    ]
    const suffix = count === 1 ? '' : `-${n + 1}`
    return { name: `${faceOf(part, pattern)}-full-size${suffix}`, says: `Full-size pattern of ${part.says}`, widthMm, heightMm, marks }
  })
}

function arrowsFor(pattern: Pattern, x: number, low: number): readonly Mark[] {
  const turn = (axis: string, ahead: number): number => ahead + (axis === 'aft' || axis === 'down' || axis === 'left' ? 180 : 0)
  const word = (axis: string): string =>
    axis === 'aft' || axis === 'forward' ? 'forward' : axis === 'up' || axis === 'down' ? 'up' : 'right of travel'
  // an arrow that points down needs its room below
  const y = turn(pattern.flat.y, 90) === 270 ? low - 34 : low
  return [
    ...directionArrow(x, y, turn(pattern.flat.x, 0), word(pattern.flat.x), 20),
    ...directionArrow(x, y, turn(pattern.flat.y, 90), word(pattern.flat.y), 20),
  ]
}

/** The same at 1:1 on sheets to be laid together. */
export function fullSizeTiles(design: Design, part: Part, pattern: Pattern, options: PrintOptions = {}): readonly Page[] {
  const notes = [...words(part, pattern), 'Lay the crosses of neighbours on each other.'].flatMap((text) => wrap(lettered(text), 100, 2.5))
  return sheetsFrom(
    tileBodies(
      drawingOf(pattern, options),
      fullTitle(design, part, pattern, options),
      `${faceOf(part, pattern)}-tile`,
      `Full-size pattern of ${part.says}`,
      notes,
      options,
    ),
  )
}

/** The pattern alone at 1:1, its blank 10 mm inside the page: groups outline, cuts, removed, holes, origin, marks-roll, marks-bend, marks-centre, marks-lap. */
export function barePattern(part: Part, pattern: Pattern): Page {
  const box = boundsOf([pattern.outline])
  const view = viewOf(1, [box.x0, box.y1], [10, 10])
  return {
    name: `${faceOf(part, pattern)}-bare`,
    says: `${part.says}, ${pattern.face}, full size in mm, seen from ${pattern.flat.view}`,
    widthMm: view.length(box.x1 - box.x0) + 20,
    heightMm: view.length(box.y1 - box.y0) + 20,
    marks: patternInk(pattern, view).marks,
    bare: true,
  }
}
