/** The invented demonstration, Sedge 6: what its first scene must show, and the figures it was designed by. */
import { describe, expect, it } from 'vitest'
import { readExample } from '../../../tests/examples.js'
import type { OpeningDefinition } from '../../definition/types.js'
import { girthAtOffset } from '../../maths/tangent-chain.js'
import { type Derived, derive } from '../index.js'

const sedge6 = readExample('sedge-6')
const before = derive(sedge6)
const change = (id: string, to: Partial<OpeningDefinition>): Derived =>
  derive({ ...sedge6, openings: sedge6.openings.map((o) => (o.id === id ? { ...o, ...to } : o)) })
const countOf = (design: Derived, row: string): number => design.rows.find((r) => r.id === row)?.station.length ?? 0
const partIds = (design: Derived): Set<string> => new Set(design.parts.map((p) => p.id))
const mm = (m: number): number => m * 1000

describe('the invented demonstration, window RW3 80 mm aft', () => {
  const after = change('RW3', { station: 5.825 })

  it('cuts frame F6', () => {
    expect(before.openings.find((o) => o.id === 'RW3')?.cutsFrames).toEqual([])
    expect(after.openings.find((o) => o.id === 'RW3')?.cutsFrames).toEqual(['F6'])
    expect(after.parts.find((p) => p.id === 'frame-F6')?.notes.join()).toContain('RW3')
  })

  it('takes about thirteen fasteners off the hoop and seven off its lining line', () => {
    expect(Math.abs(countOf(before, 'hoop-F6') - countOf(after, 'hoop-F6') - 13)).toBeLessThanOrEqual(2)
    const lining = before.rows.filter((r) => /^lining-F6(-|$)/.test(r.id)).map((r) => r.id)
    expect(lining.length).toBeGreaterThan(0)
    for (const row of lining) {
      const fewer = countOf(before, row) - countOf(after, row)
      expect(fewer, row).toBeGreaterThanOrEqual(6)
      expect(fewer, row).toBeLessThanOrEqual(8)
    }
  })

  it('needs a header, a sill and posts that were not there, and loses no part', () => {
    const [old, now] = [partIds(before), partIds(after)]
    expect([...now].filter((id) => !old.has(id)).sort()).toEqual(['header-RW3', 'post-RW3-aft', 'post-RW3-fore', 'sill-RW3'])
    expect([...old].filter((id) => !now.has(id))).toEqual([])
  })

  it('leaves the count of every other row', () => {
    const changed = before.rows.filter((r) => countOf(after, r.id) !== r.station.length).map((r) => r.id)
    expect(changed.filter((id) => !/^(hoop|lining)-F6/.test(id))).toEqual([])
  })
})

describe('the invented demonstration, window RW3 80 mm up', () => {
  it('changes the count of no row of the skin', () => {
    const after = change('RW3', { waterline: 1.24 })
    const changed = before.rows.filter((r) => countOf(after, r.id) !== r.station.length).map((r) => r.id)
    expect(changed).toEqual([])
    expect(after.parts.map((p) => p.id)).toEqual(before.parts.map((p) => p.id))
  })
})

describe('the invented demonstration, 0.040 in sheet for the barrel', () => {
  it('changes no rivet length and adds about thirteen kilograms', () => {
    const thick = derive({
      ...sedge6,
      shell: { ...sedge6.shell, skin: { ...sedge6.shell.skin, thickness: { name: '0.040 in', value: 0.04 * 0.0254 } } },
    })
    for (const row of before.rows) {
      const other = thick.rows.find((r) => r.id === row.id)
      expect(other?.stacks.map((s) => s.name)).toEqual(row.stacks.map((s) => s.name))
    }
    const skin = (d: typeof before): number => d.totals.masses.strake.value
    // net of openings; the brief reckons on the whole barrel sheet
    expect(skin(thick) / skin(before)).toBeCloseTo((0.04 * 25.4) / 0.81, 3)
    expect(skin(thick) - skin(before)).toBeGreaterThan(10)
    expect(skin(thick) - skin(before)).toBeLessThan(14)
  })
})

describe('the invented demonstration, its stated sizes', () => {
  it('takes four sheets of 48 x 152 and two of 36 x 152 for the strakes', () => {
    const sheets = before.totals.sheets.map((s) => s.stock)
    expect(sheets.filter((s) => s === '48 in x 152 in')).toHaveLength(4)
    expect(sheets.filter((s) => s === '36 in x 152 in')).toHaveLength(2)
    expect(sheets).toHaveLength(6)
    for (const sheet of before.totals.sheets) expect(sheet.used).toBeLessThanOrEqual(sheet.available)
    expect(before.totals.sheets.find((s) => s.parts.length === 2)?.parts).toEqual(['strake-lower-left', 'strake-lower-right'])
  })

  it('has the lengths of its drawing', () => {
    expect(Math.abs(mm(before.totals.bodyLength) - 5867.1)).toBeLessThan(0.5)
    expect(Math.abs(mm(before.totals.overallLength) - 6953.6)).toBeLessThan(0.5)
    expect(mm(before.totals.overallWidth)).toBeCloseTo(2392.2, 1)
  })

  it('measures 6357.5 toe to toe outside, and 6353.3 on the sheet under it at the joint', () => {
    const { chain } = before.shell.section
    expect(mm(2 * chain.length)).toBeCloseTo(6357.5, 1)
    const under = 2 * girthAtOffset(chain, chain.length, sedge6.shell.skin.thickness.value)
    expect(mm(under)).toBeCloseTo(6353.3, 1)
    expect(mm(2 * before.section.floorGirth)).toBeCloseTo(5841.4, 1)
  })
})
