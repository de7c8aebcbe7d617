import { describe, expect, it } from 'vitest'
import { sampleDesign } from '../../../tests/made-up-design.js'
import { readCsvList } from '../../checks/prove/read-csv-list.js'
import { holeTableCsv } from './hole-table.js'
import { readHoleTable } from './read-hole-table.js'
import { DEFAULT_TOOLS } from './tool-table.js'

const { design, part, pattern } = sampleDesign()
const table = holeTableCsv(design, part, pattern, { unit: '0147' })
const back = readHoleTable(table.text)

describe('hole table', () => {
  it('reads back as written, checksum and all', () => {
    expect(back.faults).toEqual([])
    expect(back.intact).toBe(true)
    expect(back.checksum).toBe(table.checksum)
    expect(back.rows).toEqual(table.rows)
    expect(back.heading).toMatchObject({ 'unit number': '0147', part: 'strake-side-left', revision: '0123456789ab', date: '2026-03-02' })
  })

  it('holds every hole of the pattern to 0.001 mm, numbered from 1', () => {
    expect(back.rows.map((r) => r.no)).toEqual(pattern.holes.x.map((_, i) => i + 1))
    back.rows.forEach((r, i) => {
      expect(Math.abs(r.x - pattern.holes.x[i])).toBeLessThanOrEqual(0.5e-6 + 1e-12)
      expect(Math.abs(r.y - pattern.holes.y[i])).toBeLessThanOrEqual(0.5e-6 + 1e-12)
    })
  })

  it('has steps in each row that add up to the running figures exactly', () => {
    const at = new Map<string, [number, number]>()
    for (const line of table.text
      .split('\n')
      .filter((l) => l !== '' && !l.startsWith('#'))
      .slice(1)) {
      const c = line.split(',')
      const micron = (cell: string): number => Math.round(Number(cell) * 1000)
      const last = at.get(c[2])
      if (last) expect([last[0] + micron(c[5]), last[1] + micron(c[6])]).toEqual([micron(c[3]), micron(c[4])])
      else expect([c[5], c[6]]).toEqual(['', ''])
      at.set(c[2], [micron(c[3]), micron(c[4])])
    }
  })

  it('counts by diameter and names the tool of each', () => {
    expect(back.heading.holes).toBe('666 (606 of 3.300 mm, 60 of 2.500 mm)')
    expect(new Set(back.rows.map((r) => `${r.diameter} ${r.tool}`))).toEqual(new Set(['0.0033 2', '0.0025 1']))
  })

  it('says so when the tool table lacks a tool, and takes no other', () => {
    const short = holeTableCsv(design, part, pattern, { tools: DEFAULT_TOOLS.slice(1) })
    expect(short.text).toContain('# tools: The tool table has no tool of 2.500 mm')
    expect(short.rows.filter((r) => r.tool === null).length).toBe(60)
    expect(readHoleTable(short.text).rows).toEqual(short.rows)
  })

  it('shows a figure edited by hand, and forgives a spreadsheet its line ends', () => {
    const line = table.text.split('\n').find((l) => l.startsWith('5,'))!
    const edited = table.text.replace(line, line.replace(/,T2,/, ',T1,'))
    expect(edited).not.toBe(table.text)
    expect(readHoleTable(edited).intact).toBe(false)
    expect(readHoleTable(`\uFEFF${table.text.replace(/\n/g, '\r\n')}`).intact).toBe(true)
  })

  it('says in sentences what cannot be read', () => {
    const broken = readHoleTable(table.text.replace(/^3,.*$/m, '3,abc'))
    expect(broken.rows).toEqual([])
    expect(broken.faults[0]).toMatch(/^Line \d+ of the hole table has 2 cells and should have 12/)
    expect(readHoleTable('hello').faults[0]).toContain('no line of column names')
  })

  it('can be proved against, as any list', () => {
    const list = readCsvList(table.text, 'table.csv').list!
    expect([list.unit, list.taped, list.readings.length]).toEqual(['mm', false, 666])
    expect(list.readings[4]).toMatchObject({ label: table.rows[4].id, x: table.rows[4].x * 1000 })
  })
})
