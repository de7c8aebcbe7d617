/** Comma-separated lines (RFC 4180): a cell that holds a comma, a quote or a line break is quoted. */

function csvCell(value: string): string {
  return /[",\r\n]/.test(value) ? `"${value.replace(/"/g, '""')}"` : value
}

export const csvLine = (cells: readonly string[]): string => cells.map(csvCell).join(',')

/** The cells of one line. Quoted line breaks are not expected: our tables write none. */
export function csvCells(line: string): readonly string[] {
  const cells: string[] = []
  let cell = ''
  let quoted = false
  for (let i = 0; i < line.length; i++) {
    const c = line[i]
    if (quoted) {
      if (c === '"' && line[i + 1] === '"') {
        cell += '"'
        i++
      } else if (c === '"') quoted = false
      else cell += c
    } else if (c === '"' && cell === '') quoted = true
    else if (c === ',') {
      cells.push(cell)
      cell = ''
    } else cell += c
  }
  return [...cells, cell]
}
