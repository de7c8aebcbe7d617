/** A QR code, its modules merged along each row. The code's white margin is the caller's to keep (4 modules). */
import { encodeQR } from 'qr'
import type { CodeMark } from './page.js'

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
const KNOWN = new Map<string, Code>()
const KEPT = 400

interface Code {
  /** modules along a side */
  readonly side: number
  /** column, row and length of each run in turn */
  readonly runs: readonly number[]
}

function codeOf(text: string): Code {
  const known = KNOWN.get(text)
  if (known) return known
  // the library insists on a border of one module at least: it is taken off again
  const rows = encodeQR(text, 'raw', { ecc: 'medium', border: 1, textEncoder: utf8 })
    .slice(1, -1)
    .map((row) => row.slice(1, -1))
  const code = { side: rows.length, runs: Object.freeze(rows.flatMap(runsOf)) }
  if (KNOWN.size >= KEPT) KNOWN.clear()
  KNOWN.set(text, code)
  return code
}

function runsOf(row: readonly boolean[], j: number): number[] {
  const out: number[] = []
  for (let i = 0; i < row.length; i++) {
    if (!row[i]) continue
    const start = i
    while (i < row.length && row[i]) i++
    out.push(start, j, i - start)
  }
  return out
}

export function qrMark(text: string, x: number, y: number, sizeMm: number): CodeMark {
  const { side, runs } = codeOf(text)
  return { kind: 'code', x, y, module: sizeMm / side, runs, group: 'qr' }
}
