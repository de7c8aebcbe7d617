import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { design as designOf } from '../../checks/index.js'
import { readDefinition } from '../../definition/read-definition.js'
import { csvCells } from './csv.js'
import { checksCsv, fastenerScheduleCsv, openingScheduleCsv, sheetScheduleCsv, spanScheduleCsv } from './schedules.js'

const file = new URL('../../../examples/sedge-6.yaml', import.meta.url).pathname
const design = designOf(readDefinition(file, readFileSync(file, 'utf8'), (path) => readFileSync(path, 'utf8')).definition!)

/** Lines as records by column name. */
function records(text: string): readonly Record<string, string>[] {
  const [head, ...lines] = text
    .trimEnd()
    .split('\n')
    .filter((l) => !l.startsWith('#'))
    .map(csvCells)
  return lines.map((cells) => {
    expect(cells.length).toBe(head.length)
    return Object.fromEntries(head.map((name, i) => [name, cells[i]]))
  })
}
const sum = (values: readonly string[]): number => values.reduce((total, v) => total + Number(v), 0)

describe('schedules as CSV', () => {
  it('counts every fastener once, by stack and by span', () => {
    const all = design.rows.reduce((n, r) => n + r.station.length, 0)
    expect(sum(records(spanScheduleCsv(design)).map((r) => r.count))).toBe(all)
    expect(sum(records(fastenerScheduleCsv(design)).map((r) => r.count))).toBe(all)
  })

  it('lists every sheet part with its mass and holes', () => {
    const lines = records(sheetScheduleCsv(design))
    expect(lines.length).toBe(design.parts.filter((p) => p.patterns.length).length)
    expect(sum(lines.map((l) => l.holes))).toBe(design.parts.flatMap((p) => p.patterns).reduce((n, p) => n + p.holes.x.length, 0))
    const side = lines.find((l) => l.part === 'strake-side-left')!
    expect(Number(side['blank x mm'])).toBeGreaterThan(3660)
    expect(side.stock).toBe('48 in x 152 in')
  })

  it('lists every opening where it was written', () => {
    const lines = records(openingScheduleCsv(design))
    expect(lines.length).toBe(design.openings.length)
    expect(lines.find((l) => l.opening === 'RW3')).toMatchObject({
      'station mm': '5745.0',
      'waterline mm': '1160.0',
      'width mm': '520.0',
      'corner mm': '75.0',
      opens: 'no',
      side: 'left',
    })
  })

  it('lists checks worst first and never hides what was not checked', () => {
    const lines = records(checksCsv(design))
    expect(lines.length).toBe(design.checks.length + design.notCovered.length)
    const order = lines.slice(0, design.checks.length).map((l) => ['fail', 'caution', 'not-checked', 'pass'].indexOf(l.verdict))
    expect(order).toEqual([...order].sort((a, b) => a - b))
    expect(lines.at(-1)!.verdict).toBe('not-checked')
  })

  it('says coach, unit, revision and date at the head', () => {
    expect(sheetScheduleCsv(design, { unit: '0147' }).split('\n').slice(1, 5)).toEqual([
      '# coach: Sedge 6 by Marrowbeck Coachworks',
      '# unit number: 0147',
      `# revision: ${design.revision}`,
      '# date: 2026-03-02',
    ])
  })
})
