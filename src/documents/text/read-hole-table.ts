/** Reads a hole table back, from a file or from the spreadsheet somebody saved it with, and says whether it was changed. */
import { csvCells } from './csv.js'
import type { HoleLine } from './hole-table.js'
import { checksumOf, HOLE_COLUMNS } from './hole-table.js'

export interface ReadHoleTable {
  /** what the comment lines say, by name */
  readonly heading: Readonly<Record<string, string>>
  readonly rows: readonly HoleLine[]
  /** as the heading states it, null when it does not; and as the lines give it */
  readonly checksum: string | null
  readonly computed: string
  readonly intact: boolean
  /** whole sentences; rows are empty when there is one */
  readonly faults: readonly string[]
}

/** Accepts any line ends and a byte-order mark: a spreadsheet adds both, and neither moves a hole. */
export function readHoleTable(text: string): ReadHoleTable {
  const lines = text
    .replace(/^\uFEFF/, '')
    .split(/\r\n|\n|\r/)
    .map((line, i) => ({ line, no: i + 1 }))
    .filter((l) => l.line.trim() !== '')
  const heading: Record<string, string> = {}
  for (const { line } of lines) {
    const said = /^#\s*([^:]+):\s*(.*)$/.exec(line)
    if (said) heading[said[1].trim()] = said[2].trim()
  }
  const body = lines.filter((l) => !l.line.startsWith('#'))
  const checksum = heading.checksum ?? null
  const names = body.length ? csvCells(body[0].line) : []
  if (names.join() !== HOLE_COLUMNS.join()) {
    return {
      heading,
      rows: [],
      checksum,
      computed: '',
      intact: false,
      faults: [`The hole table has no line of column names. It should read ${HOLE_COLUMNS.join(',')}.`],
    }
  }
  const data = body.slice(1)
  const faults: string[] = []
  const rows = data.map(({ line, no }) => readLine(csvCells(line), no, faults))
  const computed = checksumOf(data.map((d) => d.line))
  return { heading, rows: faults.length ? [] : rows, checksum, computed, intact: checksum === computed && !faults.length, faults }
}

function readLine(cells: readonly string[], line: number, faults: string[]): HoleLine {
  if (cells.length !== HOLE_COLUMNS.length)
    faults.push(
      `Line ${line} of the hole table has ${cells.length} cells and should have ${HOLE_COLUMNS.length}. Put back the line as it was printed.`,
    )
  const number = (at: number): number => {
    const value = Number(cells[at])
    if (cells[at] === undefined || cells[at].trim() === '' || !Number.isFinite(value))
      faults.push(`Line ${line} of the hole table: ${HOLE_COLUMNS[at]} is "${cells[at] ?? ''}" and should be a number.`)
    return value
  }
  const metres = (at: number): number => Math.round(number(at) * 1000) / 1e6
  const tool = /^T(\d+)$/.exec(cells[8] ?? '')
  return {
    no: number(0),
    id: cells[1] ?? '',
    row: cells[2] ?? '',
    x: metres(3),
    y: metres(4),
    diameter: metres(7),
    tool: tool ? Number(tool[1]) : null,
    role: cells[9] ?? '',
    station: metres(10),
    girth: (cells[11] ?? '').trim() === '' ? null : metres(11),
  }
}
