import { describe, expect, it } from 'vitest'
import { explainText } from '../../../quantity/explain.js'
import { findAlloy } from '../../../tables/alloys.js'
import { findRivetAlloy, findRivetSize } from '../../../tables/rivets.js'
import { bendAllowance, bendDeduction, channelFlat, setback } from '../../common/bending.formulas.js'
import { grip } from '../../common/lengths.formulas.js'
import { blindRivet, solidRivet } from '../../common/rivet-stock.js'
import { shellFormulas } from './index.js'
import { bearing, governing, rivetShear, sheetRatio, thinSheetFactor } from './strength.formulas.js'

const EIGHTH = 0.003175
const mm = 1e-3

describe('rivets bought for a stack', () => {
  const stacks: readonly (readonly [string, readonly number[], string, number])[] = [
    ['seam', [0.81, 0.81, 1.0], '-4-5', 7.94],
    ['hoop', [0.81, 1.6], '-4-5', 7.94],
    ['joint', [0.81, 1.02, 1.6], '-4-5.5', 8.73],
    ['gore', [1.02, 1.02, 1.6], '-4-5.5', 8.73],
  ]
  for (const [says, layers, name, lengthMm] of stacks) {
    it(`${says} of ${layers.join(' + ')} mm takes ${name}`, () => {
      const stack = grip(Object.fromEntries(layers.map((t, i) => [`layer ${i + 1}`, t * mm])))
      const rivet = solidRivet(EIGHTH, stack, 'next up')
      expect(rivet.name).toBe(name)
      expect(rivet.length.value / mm).toBeCloseTo(lengthMm, 2)
      expect(explainText(rivet.length, shellFormulas, 'metric')).toContain('Grip of the stack')
    })
  }
  it('rounds to the nearest size when the shop says so', () => {
    expect(solidRivet(EIGHTH, 2.41 * mm, 'nearest').name).toBe('-4-4.5')
    expect(solidRivet(EIGHTH, 0.064 * 0.0254, 'nearest').name).toBe('-4-4')
    expect(solidRivet(EIGHTH, 0.064 * 0.0254, 'next up').name).toBe('-4-4.5')
  })
  it('always covers the need going up, by less than a step, and grows with the grip', () => {
    let before = 0
    for (let g = 0.5; g < 12; g += 0.01) {
      const length = solidRivet(EIGHTH, g * mm, 'next up').length.value
      const excess = length - (g * mm + 1.5 * EIGHTH)
      expect(excess).toBeGreaterThan(-1e-9)
      expect(excess).toBeLessThan(0.0254 / 32)
      expect(length).toBeGreaterThanOrEqual(before)
      before = length
    }
  })
  it('names blind and metric rivets plainly', () => {
    expect(blindRivet(EIGHTH, 2.25 * mm).name).toBe('-4 grip 2')
    expect(blindRivet(EIGHTH, (0.0254 / 16) * 2).name).toBe('-4 grip 2')
    expect(solidRivet(3.2 * mm, 2.62 * mm, 'next up').name).toBe('3.2 x 8')
  })
})

describe('a pressed channel 152 x 57 x 3.0, inside radius 4.5, K 0.42', () => {
  it('has its allowance, deduction and blank', () => {
    const bend = { R: 4.5 * mm, t: 3 * mm, A: Math.PI / 2 }
    const BA = bendAllowance({ ...bend, K: 0.42 })
    const BD = bendDeduction({ SB: setback(bend), BA })
    expect(BA.value / mm).toBeCloseTo(9.05, 2)
    expect(BD.value / mm).toBeCloseTo(5.95, 2)
    expect(channelFlat({ h: 152 * mm, b: 57 * mm, BD }).value / mm).toBeCloseTo(254.1, 1)
  })
})

describe('one 1/8 in AD rivet in 0.81 mm 5052-H34', () => {
  const size = findRivetSize(EIGHTH)
  const alloy = findRivetAlloy('2117-T4')
  const sheet = findAlloy('5052-H34')
  it('is governed by bearing', () => {
    if (!size.ok || !alloy.ok || !sheet.ok || !sheet.row.Fbru20) throw new Error('a table row is missing')
    const hole = size.row.strengthHole.value
    const phi = thinSheetFactor({ x: sheetRatio({ t: 0.81 * mm, D: EIGHTH }) })
    const P_s = rivetShear({ phi, F_su: alloy.row.Fsu.value, D_h: hole })
    const P_b = bearing({ F_bru: sheet.row.Fbru20.value, D_h: hole, t: 0.81 * mm })
    expect(P_s.value / phi.value).toBeCloseTo(1730, -1)
    // the hand figure of 1299 N takes 0.032 in (0.8128 mm) where the sheet is 0.81 mm
    expect(P_b.value * (0.8128 / 0.81)).toBeCloseTo(1299, 0)
    expect(governing({ P_s, P_b }).value).toBe(P_b.value)
  })
  it('carries a caution when the sheet is too thin for the table', () => {
    const phi = thinSheetFactor({ x: sheetRatio({ t: 0.5 * mm, D: EIGHTH }) })
    const P_s = rivetShear({ phi, F_su: 2e8, D_h: EIGHTH })
    expect(governing({ P_s, P_b: 1000 }).cautions?.[0]).toMatch(/\(x\) is 0.1575, and the formula holds only from 0.18 up\./)
    expect(phi.value).toBeLessThan(0.909)
    expect(phi.value).toBeGreaterThan(0.8)
  })
  it('interpolates between the cells and joins up at a third', () => {
    expect(thinSheetFactor.eval({ x: 1 / 3 })).toBe(1)
    expect(thinSheetFactor.eval({ x: 1 / 3 - 1e-9 })).toBeCloseTo(1, 6)
    expect(thinSheetFactor.eval({ x: (0.24 + 0.252) / 2 })).toBeCloseTo((0.953 + 0.961) / 2, 12)
  })
})
