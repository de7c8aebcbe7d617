/**
 * Reads a hole list somebody typed or exported: x, y and perhaps a diameter a line, or one running dimension a line as taped.
 *
 * The header is guessed from its words (`no, x, y, dia`), its unit from the words too (`x in`, `x (mm)`, a line `unit: in`).
 * Separators: comma, semicolon or tab; with a semicolon or tab a comma is a decimal comma. `#` starts a comment. A line whose
 * label begins with `corner` is a corner of the sheet and not a hole. Nothing unreadable is passed over: it is a fault.
 */

import type { Columns } from './list-columns.js'
import { columnsFromCells, columnsFromNumbers, unitInWords } from './list-columns.js'
import type { HoleList, ListUnit, Reading } from './nouns.js'

export interface ReadOptions {
  readonly unit?: ListUnit
  readonly row?: string
}

export interface ReadList {
  readonly list: HoleList | null
  /** whole sentences; when there is one the list is null */
  readonly faults: readonly string[]
}

interface Line {
  readonly line: number
  readonly cells: readonly string[]
}

/** `12.5`, `12,5` (decimal comma), `22 1/2`, `3/8`, each perhaps with a unit mark behind. NaN when it is none of these. */
export function readNumber(cell: string, decimalComma: boolean): number {
  const bare = cell.trim().replace(/\s*(mm|in|inch|inches|")$/i, '')
  const text = decimalComma ? bare.replace(',', '.') : bare
  if (/^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(text)) return Number(text)
  const parts = /^([+-]?)(?:(\d+)[ -]+)?(\d+)\/(\d+)$/.exec(text)
  if (!parts || Number(parts[4]) === 0) return Number.NaN
  return (parts[1] === '-' ? -1 : 1) * (Number(parts[2] ?? 0) + Number(parts[3]) / Number(parts[4]))
}

function splitLines(text: string): {
  readonly lines: readonly Line[]
  readonly comments: readonly string[]
  readonly decimalComma: boolean
} {
  const raw = text.replace(/^\uFEFF/, '').split(/\r\n|\n|\r/)
  const comments = raw.filter((l) => /^\s*#/.test(l))
  const kept = raw.map((l, i) => ({ line: i + 1, text: l })).filter(({ text: l }) => l.trim() !== '' && !/^\s*#/.test(l))
  const many = (mark: string): boolean => kept.length > 0 && kept.filter((l) => l.text.includes(mark)).length >= kept.length / 2
  const separator = many(';') ? ';' : many('\t') ? '\t' : ','
  const cut = (l: string): string[] => l.split(separator).map((c) => c.trim().replace(/^"(.*)"$/, '$1'))
  return { lines: kept.map((k) => ({ line: k.line, cells: cut(k.text) })), comments, decimalComma: separator !== ',' }
}

/** `# unit: in` or a bare line `unit, in`. */
function unitLine(words: readonly string[]): ListUnit | null {
  for (const w of words) {
    const said = /^\s*#?\s*units?\s*[:=,;\t ]\s*(\S+)/i.exec(w)
    const unit = said && unitInWords(said[1])
    if (unit) return unit
  }
  return null
}

function toReading(line: Line, c: Columns, decimalComma: boolean, faults: string[], name: string): Reading | null {
  const value = (at: number | null, says: string): number => {
    if (at === null) return 0
    const cell = line.cells[at] ?? ''
    const number = readNumber(cell, decimalComma)
    if (!Number.isFinite(number)) {
      faults.push(
        cell === ''
          ? `${name} line ${line.line}: the ${says} is empty. Write a number, or take the line out.`
          : `${name} line ${line.line}: the ${says} "${cell}" is not a number. Write it like 1234.5 or 22 1/2, or start the line with # to leave it out.`,
      )
    }
    return number
  }
  const x = value(c.x, c.y === null ? 'running dimension' : 'x')
  const y = value(c.y, 'y')
  const given = c.diameter !== null && (line.cells[c.diameter] ?? '') !== ''
  const diameter = given ? value(c.diameter, 'diameter') : null
  const label = (c.label !== null && line.cells[c.label]) || `line ${line.line}`
  return Number.isFinite(x) && Number.isFinite(y) && (diameter === null || Number.isFinite(diameter))
    ? { label, line: line.line, x, y, diameter }
    : null
}

/** `name` is how the list is called in sentences, usually its file name. */
export function readCsvList(text: string, name: string, options: ReadOptions = {}): ReadList {
  const { lines, comments, decimalComma } = splitLines(text)
  const body = lines.filter((l) => !/^units?$/i.test(l.cells[0].replace(/[:=].*$/, '').trim()))
  const saidUnit = unitLine([...comments, ...lines.filter((l) => !body.includes(l)).map((l) => l.cells.join(','))])
  const headed = body.length > 0 && columnsFromCells(body[0].cells)
  const numbers = body.map((l) => l.cells.map((c) => readNumber(c, decimalComma)))
  const columns = headed || columnsFromNumbers(numbers)
  if (!columns) {
    return {
      list: null,
      faults: [`${name} holds no columns of numbers that can be read. Write a header such as no, x mm, y mm and one hole a line.`],
    }
  }
  const faults: string[] = []
  const holes: Reading[] = []
  const corners: (readonly [number, number])[] = []
  const rows = new Set<string>()
  for (const line of headed ? body.slice(1) : body) {
    const reading = toReading(line, columns, decimalComma, faults, name)
    if (!reading) continue
    if (/^corner/i.test(reading.label) && columns.y !== null) corners.push([reading.x, reading.y])
    else holes.push(reading)
    if (columns.row !== null && line.cells[columns.row]) rows.add(line.cells[columns.row])
  }
  const taped = columns.y === null
  if (taped && rows.size > 1)
    faults.push(
      `${name} holds running dimensions along ${rows.size} rows (${[...rows].join(', ')}). Prove one row at a time, or give x and y of each hole.`,
    )
  if (columns.unit && options.unit && columns.unit !== options.unit)
    faults.push(`${name} says its columns are in ${columns.unit}, and you asked for ${options.unit}. Take one of the two back.`)
  if (faults.length) return { list: null, faults }
  const notes = taped ? ['Each reading is one running dimension, so the holes were taken to lie on one straight line.'] : []
  const unit = options.unit ?? columns.unit ?? saidUnit
  return {
    list: { name, unit, taped, row: options.row ?? (taped && rows.size === 1 ? [...rows][0] : null), readings: holes, corners, notes },
    faults: [],
  }
}
