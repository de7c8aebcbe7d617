import { describe, expect, it } from 'vitest'
import { ALLOYS, findAlloy } from './alloys.js'
import type { Datum } from './datum.js'
import { findBlindRivet, findRivetAlloy, findRivetSize, RIVET_SIZES, THIN_SHEET } from './rivets.js'

const inch = 0.0254

describe('alloys', () => {
  it('finds what a definition names, however it is spaced, and says what is known when it cannot', () => {
    for (const name of ['5052-H34', '5052-h32', '5052-O', '3003-H14', '6061-T6', '6063-T6', 'Alclad  2024-T3'])
      expect(findAlloy(name).ok).toBe(true)
    const missing = findAlloy('5025-H34')
    expect(missing).toMatchObject({ ok: false, says: expect.stringContaining('"5025-H34" is not in the table; known are 5052-H34') })
    expect(!missing.ok && missing.known).toContain('3003-H14')
  })
  it('takes the band of the thickness', () => {
    const band = (t: number) => {
      const found = findAlloy('clad 2024-T3', t)
      return found.ok && found.row.Fbru20?.given
    }
    expect([band(0.032 * inch), band(0.08 * inch), band(0.2 * inch)]).toEqual(['121 ksi', '125 ksi', '125 ksi'])
  })
  it('gives every figure its source and status, keeps the figure as given, and has no zeros', () => {
    for (const alloy of ALLOYS) {
      for (const it of Object.values(alloy).filter((v): v is Datum => typeof v === 'object' && v !== null && 'status' in v)) {
        expect(it.source.length).toBeGreaterThan(5)
        expect(['R', 'R2', 'D', 'M']).toContain(it.status)
        expect(it.value).toBeGreaterThan(0)
      }
    }
  })
  it('orders the strengths as metal does: yield under ultimate, shear under tension, bearing over tension', () => {
    for (const a of ALLOYS) {
      expect(a.Fty.value).toBeLessThan(a.Ftu.value)
      expect(a.Fsu.value).toBeLessThan(a.Ftu.value)
      if (a.Fbru20) expect(a.Fbru20.value).toBeGreaterThan(1.9 * a.Ftu.value)
      if (a.Fbru15 && a.Fbru20) expect(a.Fbru15.value).toBeLessThan(a.Fbru20.value)
      expect(a.E.value / 1e9).toBeGreaterThan(65)
      expect(a.E.value / 1e9).toBeLessThan(75)
    }
  })
})

describe('rivets', () => {
  it('has holes a little over the shank, by dash size', () => {
    for (const { dash, diameter, strengthHole } of RIVET_SIZES) {
      expect(diameter).toBeCloseTo((dash / 32) * inch, 12)
      expect(strengthHole.value / diameter).toBeGreaterThan(1)
      expect(strengthHole.value / diameter).toBeLessThan(1.08)
    }
  })
  it('finds alloys, sizes and blind rivets, or says what is known', () => {
    expect(findRivetAlloy('AD')).toMatchObject({ ok: true, row: { name: '2117-T4' } })
    expect(findRivetAlloy('2117-T4')).toMatchObject({ ok: true, row: { Fsu: { given: '30 ksi' } } })
    expect(findRivetAlloy('tin')).toMatchObject({ ok: false, says: expect.stringContaining('known are 2117-T4') })
    expect(findRivetSize(0.003175)).toMatchObject({ ok: true, row: { dash: 4 } })
    expect(findRivetSize(0.0036)).toMatchObject({ ok: false, says: expect.stringContaining('3.60 mm') })
    expect(findBlindRivet(inch / 8)).toMatchObject({ ok: true, row: { shear: { given: '120 lbf' } } })
    expect(findBlindRivet(inch / 4).ok).toBe(false)
  })
  it('has a thin-sheet factor that only rises with t/D', () => {
    for (let i = 1; i < THIN_SHEET.length; i += 1) {
      const [before, now] = [THIN_SHEET[i - 1], THIN_SHEET[i]] as const
      expect(now?.[0]).toBeGreaterThan(before?.[0] as number)
      expect(now?.[1]).toBeGreaterThan(before?.[1] as number)
    }
  })
})
