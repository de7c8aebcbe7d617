/**
 * The hole table of one pattern as CSV: the authority on where the holes are. Whoever edits a hole at the machine breaks
 * the checksum, and whoever reads the table can tell.
 *
 * Comment lines start with `#`; then one line of column names; then one line a hole. x and y run from the pattern's origin;
 * the steps run from the hole before in the same row and add up to them exactly, because they are made from the rounded figures.
 */
import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js'
import type { Design } from '../../derive/design.js'
import { holesOf } from '../../derive/holes.js'
import type { Part, Pattern } from '../../derive/nouns.js'
import { csvLine } from './csv.js'
import type { TextOptions } from './heading.js'
import { headingOf, mmText } from './heading.js'
import type { ToolTable } from './tool-table.js'
import { DEFAULT_TOOLS, toolFor } from './tool-table.js'

export const HOLE_COLUMNS = [
  'no',
  'id',
  'row',
  'x mm',
  'y mm',
  'step x mm',
  'step y mm',
  'diameter mm',
  'tool',
  'role',
  'station mm',
  'girth mm',
] as const

export interface HoleTableOptions extends TextOptions {
  readonly tools?: ToolTable
}

/** One line of the table; lengths m, as rounded to 0.001 mm in the table. `tool` null where the tool table has none. */
export interface HoleLine {
  readonly no: number
  readonly id: string
  readonly row: string
  readonly x: number
  readonly y: number
  readonly diameter: number
  readonly tool: number | null
  readonly role: string
  readonly station: number
  /** null in the floor and under it, where nothing has a girth: x and y say where */
  readonly girth: number | null
}

export interface HoleTable {
  readonly text: string
  readonly checksum: string
  readonly rows: readonly HoleLine[]
}

/** First 12 hex digits of SHA-256 over the data lines, each ended by a line feed. */
export function checksumOf(dataLines: readonly string[]): string {
  return bytesToHex(sha256(utf8ToBytes(dataLines.map((l) => `${l}\n`).join('')))).slice(0, 12)
}

const rounded = (metres: number): number => Math.round(metres * 1e6) / 1e6 || 0

function holeLines(design: Design, part: Part, pattern: Pattern, tools: ToolTable): readonly HoleLine[] {
  return holesOf(design, part, pattern).map((h, i) => ({
    no: i + 1,
    id: h.id,
    row: h.row,
    x: rounded(h.x),
    y: rounded(h.y),
    diameter: rounded(h.diameter),
    tool: toolFor(tools, h.diameter)?.tool ?? null,
    role: h.role,
    station: rounded(h.place.station),
    girth: h.place.buttock === undefined ? rounded(h.place.girth) : null,
  }))
}

function dataLines(rows: readonly HoleLine[]): readonly string[] {
  const before = new Map<string, HoleLine>()
  return rows.map((h) => {
    const last = before.get(h.row)
    before.set(h.row, h)
    const step = last ? [mmText(h.x - last.x), mmText(h.y - last.y)] : ['', '']
    return csvLine([
      String(h.no),
      h.id,
      h.row,
      mmText(h.x),
      mmText(h.y),
      ...step,
      mmText(h.diameter),
      h.tool === null ? 'none' : `T${h.tool}`,
      h.role,
      mmText(h.station),
      h.girth === null ? '' : mmText(h.girth),
    ])
  })
}

/** `214 (196 of 3.300 mm, 18 of 2.500 mm)` */
export function countWords(rows: readonly HoleLine[]): string {
  const counts = new Map<string, number>()
  for (const h of rows) counts.set(mmText(h.diameter), (counts.get(mmText(h.diameter)) ?? 0) + 1)
  const each = [...counts].sort((a, b) => b[1] - a[1] || Number(a[0]) - Number(b[0])).map(([d, n]) => `${n} of ${d} mm`)
  return `${rows.length}${each.length ? ` (${each.join(', ')})` : ''}`
}

function toolWords(rows: readonly HoleLine[]): readonly (readonly [string, string])[] {
  const without = [...new Set(rows.filter((h) => h.tool === null).map((h) => mmText(h.diameter)))]
  return without.length ? [['tools', `The tool table has no tool of ${without.join(', ')} mm; add it or these holes have no tool.`]] : []
}

export function holeTableCsv(design: Design, part: Part, pattern: Pattern, options: HoleTableOptions = {}): HoleTable {
  const rows = holeLines(design, part, pattern, options.tools ?? DEFAULT_TOOLS)
  const data = dataLines(rows)
  const checksum = checksumOf(data)
  const head: readonly (readonly [string, string])[] = [
    ['hole table', 'this table is the authority; programs and drawings are made from it'],
    ...headingOf(design, part, pattern, options),
    ['holes', countWords(rows)],
    ...toolWords(rows),
    ['checksum', checksum],
    ['checksum is', 'the first 12 hex digits of SHA-256 over the data lines below the column names, each ended by a line feed'],
  ]
  const text = [...head.map(([name, value]) => `# ${name}: ${value}`), csvLine(HOLE_COLUMNS), ...data].map((l) => `${l}\n`).join('')
  return { text, checksum, rows }
}
