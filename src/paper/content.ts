/**
 * The drawing operators of one PDF page. Written here rather than through the library's drawing calls because a hole table
 * holds a hundred thousand texts and the library's text layout would take seconds over them.
 *
 * The library starts every page with `1 0 0 -1 0 H cm`, so that y runs down in points; this adds the scale to thousandths of a millimetre.
 */
import { emOf, footOf } from '../documents/drawing/lettering.js'
import type { CirclesMark, CodeMark, Mark, Page, PathMark, Shape, TextMark, WindowMark } from '../documents/drawing/page.js'
import { DASHES } from '../documents/drawing/page.js'
import type { Face } from './fonts.js'

export interface Encoder {
  /** resource name of a face on the present page */
  font(face: Face): string
  /** glyph numbers of a text as hexadecimal digits */
  hex(face: Face, text: string): string
}

/** Coordinates are written as whole thousandths of a millimetre: shorter and faster to write than decimals. */
const MICRONS = 1000

/** A length in thousandths of a millimetre. */
function num(mm: number): string {
  const microns = Math.round(mm * MICRONS)
  if (!(Math.abs(microns) < 1e12)) throw new Error(`A drawing holds the number ${mm}`)
  return whole(microns)
}

const whole = (microns: number): string => String(microns === 0 ? 0 : microns)

/** A plain factor: a grey, a cosine. */
const factor = (value: number): string => String(Math.round(value * 1e6) / 1e6 || 0)

/** A quarter circle as one Bezier curve errs by this part of its radius; the error falls with the sixth power of the angle. */
const QUARTER_ERROR = 2.73e-4
/** Largest distance of a curve from its arc, mm. */
const CLOSE = 0.001

/** An arc from (x, y) to (u, v) as Bezier curves. */
function arc(x: number, y: number, u: number, v: number, bulge: number): string {
  const k = (1 - bulge * bulge) / (4 * bulge)
  const cx = (x + u) / 2 - k * (v - y)
  const cy = (y + v) / 2 + k * (u - x)
  const angle = 4 * Math.atan(bulge)
  const quarters = Math.abs(angle) / (Math.PI / 2)
  const radius = Math.hypot(x - cx, y - cy)
  const pieces = Math.max(1, Math.ceil(quarters * Math.max(1, ((QUARTER_ERROR * radius) / CLOSE) ** (1 / 6)) - 1e-9))
  const step = angle / pieces
  const handle = (4 / 3) * Math.tan(step / 4)
  let [dx, dy] = [x - cx, y - cy]
  let out = ''
  for (let i = 0; i < pieces; i++) {
    const [ex, ey] = [dx * Math.cos(step) - dy * Math.sin(step), dx * Math.sin(step) + dy * Math.cos(step)]
    const end = i === pieces - 1 ? [u, v] : [cx + ex, cy + ey]
    out += `${num(cx + dx - handle * dy)} ${num(cy + dy + handle * dx)} ${num(cx + ex + handle * ey)} ${num(cy + ey - handle * ex)} ${num(end[0])} ${num(end[1])} c\n`
    ;[dx, dy] = [ex, ey]
  }
  return out
}

/** A rectangle along the page's edges as the one operator there is for it: codes and tables are made of thousands; null for any other shape. */
function rectangleOf({ points, closed }: Shape): string | null {
  if (!closed || points.length !== 4) return null
  const [[x, y, a], [u, p, b], [w, v, c], [z, q, d]] = points
  if (a !== 0 || b !== 0 || c !== 0 || d !== 0 || y !== p || u !== w || v !== q || x !== z) return null
  const [left, top] = [Math.round(x * MICRONS), Math.round(y * MICRONS)]
  return `${num(x)} ${num(y)} ${whole(Math.round(u * MICRONS) - left)} ${whole(Math.round(v * MICRONS) - top)} re\n`
}

function outlineOf(shape: Shape): string {
  const { points, closed } = shape
  if (points.length === 0) return ''
  const box = rectangleOf(shape)
  if (box !== null) return box
  let out = `${num(points[0][0])} ${num(points[0][1])} m\n`
  const last = closed ? points.length : points.length - 1
  for (let i = 0; i < last; i++) {
    const [x, y, bulge] = points[i]
    const [u, v] = points[(i + 1) % points.length]
    if (bulge !== 0) out += arc(x, y, u, v, bulge)
    else if (i < points.length - 1) out += `${num(u)} ${num(v)} l\n`
  }
  return closed ? `${out}h\n` : out
}

function paint(data: string, width: number | null, type: PathMark['type'], fill: number | null): string {
  if (data === '' || (width === null && fill === null)) return ''
  const pen = width === null ? '' : `${num(width)} w [${DASHES[type].map((n) => num(n * width)).join(' ')}] 0 d\n`
  const colour = fill === null ? '' : `${factor(fill)} g\n`
  return `${colour}${pen}${data}${fill === null ? 'S' : width === null ? 'f*' : 'B*'}\n`
}

/** Rings smaller than this and filled black are written as dots, mm. */
const DOT = 1

/** Filled specks as strokes of no length with round ends: a tenth of the bytes of drawn rings. */
function dotsOf(mark: CirclesMark): string {
  let out = ''
  let width = -1
  for (let i = 0; i < mark.xyd.length; i += 3) {
    if (mark.xyd[i + 2] !== width) {
      width = mark.xyd[i + 2]
      out += `${i === 0 ? '' : 'S\n'}${num(width)} w\n`
    }
    const at = `${num(mark.xyd[i])} ${num(mark.xyd[i + 1])}`
    out += `${at} m ${at} l\n`
  }
  return out === '' ? '' : `q 1 J [] 0 d\n${out}S Q\n`
}

const circle = (x: number, y: number, r: number): Shape => ({
  points: [
    [x - r, y, 1],
    [x + r, y, 1],
  ],
  closed: true,
})

/** Reach of a quarter circle's handle, of its radius. */
const HANDLE = (4 / 3) * Math.tan(Math.PI / 8)

/** A circle small enough for four curves: hole tables and templates hold ten thousands. */
function ringOf(x: number, y: number, r: number): string {
  const h = r * HANDLE
  const [l, e, t, b] = [num(x - r), num(x + r), num(y - r), num(y + r)]
  const [lh, eh, th, bh] = [num(x - h), num(x + h), num(y - h), num(y + h)]
  const [mx, my] = [num(x), num(y)]
  return `${l} ${my} m\n${l} ${th} ${lh} ${t} ${mx} ${t} c\n${eh} ${t} ${e} ${th} ${e} ${my} c\n${e} ${bh} ${eh} ${b} ${mx} ${b} c\n${lh} ${b} ${l} ${bh} ${l} ${my} c\nh\n`
}

const isDots = (mark: CirclesMark): boolean => mark.fill === 0 && mark.xyd.every((value, i) => i % 3 !== 2 || value <= DOT)

function circlesOf(mark: CirclesMark): string {
  if (isDots(mark)) return dotsOf(mark)
  let data = ''
  for (let i = 0; i < mark.xyd.length; i += 3) {
    const [x, y, r] = [mark.xyd[i], mark.xyd[i + 1], mark.xyd[i + 2] / 2]
    data += QUARTER_ERROR * r <= CLOSE ? ringOf(x, y, r) : outlineOf(circle(x, y, r))
  }
  return paint(data, mark.fill === 0 ? null : mark.width, 'continuous', mark.fill)
}

function textOf(mark: TextMark, encoder: Encoder): string {
  if (mark.text === '') return ''
  const face: Face = mark.bold ? 'bold' : 'regular'
  const [x, y] = footOf(mark)
  return `BT /${encoder.font(face)} ${num(emOf(mark.height))} Tf ${turnOf(mark.turn)} ${num(x)} ${num(y)} Tm <${encoder.hex(face, mark.text)}> Tj ET\n`
}

/** The page is mirrored to run y down, so the text is mirrored back. */
function turnOf(degrees: number): string {
  if (degrees === 0) return '1 0 0 -1'
  const a = (-degrees * Math.PI) / 180
  const [c, s] = [Math.cos(a), Math.sin(a)]
  return `${factor(c)} ${factor(s)} ${factor(s)} ${factor(-c)}`
}

function windowOf(mark: WindowMark, encoder: Encoder): string {
  const clip = `${num(mark.x)} ${num(mark.y)} ${num(mark.width)} ${num(mark.height)} re W n\n`
  return `q 0 g\n${clip}1 0 0 1 ${num(mark.shift[0])} ${num(mark.shift[1])} cm\n${marksOf(mark.marks, encoder)}Q\n`
}

/** Runs as rectangles of whole modules, written once for all the pages that carry the same code. */
const CODES = new WeakMap<readonly number[], string>()

function codeOf({ x, y, module, runs }: CodeMark): string {
  let data = CODES.get(runs)
  if (data === undefined) {
    data = ''
    for (let i = 0; i < runs.length; i += 3) data += `${runs[i]} ${runs[i + 1]} ${runs[i + 2]} 1 re\n`
    CODES.set(runs, data)
  }
  const side = factor(module * MICRONS)
  return `q ${side} 0 0 ${side} ${num(x)} ${num(y)} cm 0 g\n${data}f Q\n`
}

function inkOf(mark: Mark, encoder: Encoder): string {
  switch (mark.kind) {
    case 'path':
      return paint(mark.shapes.map(outlineOf).join(''), mark.width, mark.type, mark.fill)
    case 'circles':
      return circlesOf(mark)
    case 'text':
      return textOf(mark, encoder)
    case 'window':
      return windowOf(mark, encoder)
    case 'code':
      return codeOf(mark)
  }
}

function marksOf(marks: readonly Mark[], encoder: Encoder): string {
  const out: string[] = []
  let filled = false
  for (const mark of marks) {
    // lettering is filled black: set it back after a grey fill
    if (mark.kind === 'text' && filled) {
      out.push('0 g\n')
      filled = false
    }
    const ink = inkOf(mark, encoder)
    // what counts is the colour that was written: dots are strokes and leave the fill as it was
    if (ink !== '' && (mark.kind === 'path' || (mark.kind === 'circles' && !isDots(mark))) && mark.fill !== null) filled = mark.fill !== 0
    out.push(ink)
  }
  return out.join('')
}

/** Everything on a page, in millimetres from its top left corner. */
export function contentOf(page: Page, encoder: Encoder): string {
  const k = 72 / 25.4 / MICRONS
  return `q ${k.toFixed(14)} 0 0 ${k.toFixed(14)} 0 0 cm 0 g 0 G 1 j\n${marksOf(page.marks, encoder)}Q`
}
