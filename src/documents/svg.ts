/** A page as SVG text in millimetres: `width="420mm" viewBox="0 0 420 297"`, so that one user unit is one millimetre on paper. */
import { emOf, footOf, textWidth } from './drawing/lettering.js'
import type { CirclesMark, CodeMark, Mark, Page, PathMark, Shape, TextMark, WindowMark } from './drawing/page.js'
import { DASHES } from './drawing/page.js'

/** Faces a viewer is asked for, best first. */
const FAMILY = "'DejaVu Sans Condensed','DejaVu Sans',sans-serif"

/** A number to 1e-4 mm, without trailing zeros and never -0. */
export function mm(value: number): string {
  if (!Number.isFinite(value)) throw new Error(`A drawing holds the number ${value}`)
  const rounded = Math.round(value * 1e4) / 1e4
  return String(rounded === 0 ? 0 : rounded)
}

const escaped = (text: string): string => text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;')

/** Path data of one shape; arcs stay arcs. */
function pathData(shape: Shape): string {
  const { points, closed } = shape
  let out = `M${mm(points[0][0])} ${mm(points[0][1])}`
  const last = closed ? points.length : points.length - 1
  for (let i = 0; i < last; i++) {
    const [x, y, bulge] = points[i]
    const [u, v] = points[(i + 1) % points.length]
    if (bulge === 0) {
      if (i < points.length - 1) out += `L${mm(u)} ${mm(v)}`
      continue
    }
    const radius = (Math.hypot(u - x, v - y) * (1 + bulge * bulge)) / (4 * Math.abs(bulge))
    out += `A${mm(radius)} ${mm(radius)} 0 ${Math.abs(bulge) > 1 ? 1 : 0} ${bulge > 0 ? 1 : 0} ${mm(u)} ${mm(v)}`
  }
  return closed ? `${out}Z` : out
}

function circlesData(mark: CirclesMark): string {
  let out = ''
  for (let i = 0; i < mark.xyd.length; i += 3) {
    const [x, y, d] = [mark.xyd[i], mark.xyd[i + 1], mark.xyd[i + 2]]
    const r = mm(d / 2)
    out += `M${mm(x - d / 2)} ${mm(y)}a${r} ${r} 0 1 1 ${mm(d)} 0a${r} ${r} 0 1 1 ${mm(-d)} 0Z`
  }
  return out
}

const grey = (fill: number): string => {
  const level = Math.round(fill * 255)
    .toString(16)
    .padStart(2, '0')
  return fill === 0 ? '#000' : fill === 1 ? '#fff' : `#${level}${level}${level}`
}

function inked(data: string, width: number | null, type: PathMark['type'], fill: number | null): string {
  if (data === '') return ''
  const stroke = width === null ? '' : ` stroke="#000" stroke-width="${width}"`
  const dash = width === null || DASHES[type].length === 0 ? '' : ` stroke-dasharray="${DASHES[type].map((n) => mm(n * width)).join(' ')}"`
  return `<path d="${data}" fill="${fill === null ? 'none' : grey(fill)}"${stroke}${dash}/>`
}

function textOf(mark: TextMark): string {
  if (mark.text === '') return ''
  const [x, y] = footOf(mark)
  const turn = mark.turn === 0 ? '' : ` transform="rotate(${mm(-mark.turn)} ${mm(x)} ${mm(y)})"`
  // the stated length keeps a line inside its box when the viewer has another face
  const length =
    mark.text.length > 3 ? ` textLength="${mm(textWidth(mark.text, mark.height, mark.bold))}" lengthAdjust="spacingAndGlyphs"` : ''
  const bold = mark.bold ? ' font-weight="bold"' : ''
  return `<text x="${mm(x)}" y="${mm(y)}" font-size="${mm(emOf(mark.height))}"${bold}${length}${turn}>${escaped(mark.text)}</text>`
}

function windowOf(mark: WindowMark, seen: Set<string>): string {
  const box = `x="${mm(mark.x)}" y="${mm(mark.y)}" width="${mm(mark.width)}" height="${mm(mark.height)}"`
  const view = `viewBox="${mm(mark.x - mark.shift[0])} ${mm(mark.y - mark.shift[1])} ${mm(mark.width)} ${mm(mark.height)}"`
  return `<svg ${box} ${view} overflow="hidden">${marksOf(mark.marks, seen)}</svg>`
}

/** Drawn in modules from its corner, so that its numbers are small and whole. */
function codeOf({ x, y, module, runs }: CodeMark): string {
  let data = ''
  for (let i = 0; i < runs.length; i += 3) data += `M${runs[i]} ${runs[i + 1]}h${runs[i + 2]}v1h${-runs[i + 2]}z`
  return `<path d="${data}" transform="translate(${mm(x)} ${mm(y)}) scale(${Number(module.toFixed(6))})"/>`
}

function markOf(mark: Mark, seen: Set<string>): string {
  switch (mark.kind) {
    case 'path':
      return inked(
        mark.shapes
          .filter((s) => s.points.length > 0)
          .map(pathData)
          .join(''),
        mark.width,
        mark.type,
        mark.fill,
      )
    case 'circles':
      return inked(circlesData(mark), mark.fill === 0 ? null : mark.width, 'continuous', mark.fill)
    case 'text':
      return textOf(mark)
    case 'window':
      return windowOf(mark, seen)
    case 'code':
      return codeOf(mark)
  }
}

/** Marks in order; neighbours of one group share a `<g>`, whose id is the group's name where it is opened first. */
function marksOf(marks: readonly Mark[], seen: Set<string>): string {
  let out = ''
  let open: string | null = null
  for (const mark of marks) {
    if (mark.group !== open) {
      if (open !== null) out += '</g>\n'
      if (mark.group !== null)
        out += seen.has(mark.group)
          ? `<g class="${escaped(mark.group)}">`
          : `<g id="${escaped(mark.group)}" class="${escaped(mark.group)}">`
      if (mark.group !== null) seen.add(mark.group)
      open = mark.group
    }
    const text = markOf(mark, seen)
    if (text !== '') out += `${text}\n`
  }
  return open === null ? out : `${out}</g>\n`
}

/** The page as a whole SVG document; the same page gives the same text. */
export function pageToSvg(page: Page): string {
  const { widthMm, heightMm } = page
  const paper = page.bare ? '' : `<rect width="${mm(widthMm)}" height="${mm(heightMm)}" fill="#fff"/>\n`
  return `<?xml version="1.0" encoding="UTF-8"?>
<svg xmlns="http://www.w3.org/2000/svg" width="${mm(widthMm)}mm" height="${mm(heightMm)}mm" viewBox="0 0 ${mm(widthMm)} ${mm(heightMm)}" fill-rule="evenodd" stroke-linejoin="round" font-family="${FAMILY}" fill="#000" role="img">
<title>${escaped(page.says)}</title>
${paper}${marksOf(page.marks, new Set())}</svg>
`
}
