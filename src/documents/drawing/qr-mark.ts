/** A QR code as one filled path, its modules merged along each row. The code's white margin is the caller's to keep (4 modules). */
import { encodeQR } from 'qr'
import type { PathMark } from './page.js'
import { path, rectangleShape } from './page.js'

/** UTF-8 without the platform's encoder, so that the core needs neither DOM nor Node types. */
function utf8(text: string): Uint8Array {
  return Uint8Array.from(unescapePercent(encodeURIComponent(text)))
}

function unescapePercent(text: string): number[] {
  const out: number[] = []
  for (let i = 0; i < text.length; i++) {
    if (text[i] === '%') {
      out.push(parseInt(text.slice(i + 1, i + 3), 16))
      i += 2
    } else out.push(text.charCodeAt(i))
  }
  return out
}

/** The text every printed sheet carries back to its source. */
export const qrText = (coach: string, revision: string, part: string): string => `coachwright ${coach} rev ${revision} ${part}`

/** Several sheets of a part carry one code, and weighing its eight masks takes as long as drawing a small sheet: the last few are kept. */
const KNOWN = new Map<string, readonly (readonly boolean[])[]>()
const KEPT = 400

function modulesOf(text: string): readonly (readonly boolean[])[] {
  const known = KNOWN.get(text)
  if (known) return known
  // the library insists on a border of one module at least: it is taken off again
  const rows = encodeQR(text, 'raw', { ecc: 'medium', border: 1, textEncoder: utf8 })
    .slice(1, -1)
    .map((row) => row.slice(1, -1))
  if (KNOWN.size >= KEPT) KNOWN.clear()
  KNOWN.set(text, rows)
  return rows
}

export function qrMark(text: string, x: number, y: number, sizeMm: number): PathMark {
  const rows = modulesOf(text)
  const module = sizeMm / rows.length
  const shapes = rows.flatMap((row, j) => {
    const out = []
    for (let i = 0; i < row.length; i++) {
      if (!row[i]) continue
      let end = i
      while (end < row.length && row[end]) end++
      out.push(rectangleShape(x + i * module, y + j * module, (end - i) * module, module))
      i = end
    }
    return out
  })
  return path(shapes, { width: null, fill: 0, group: 'qr' })
}
