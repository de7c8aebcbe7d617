/** Lining panels of the demonstration's ends laid flat, against the loft they line. */
import { describe, expect, it } from 'vitest'
import { readExample } from '../../../tests/examples.js'
import { loftAt } from '../../maths/loft.js'
import { derive } from '../index.js'
import { liningFlats } from './lining-flats.js'

const { local } = derive(readExample('sedge-6')).endSections
const flats = liningFlats(local)

describe('lining panels of the ends, laid flat', () => {
  it('are one a pair of ribs, each serving both hands', () => {
    const served = flats.flatMap((f) => f.panels).sort((a, b) => a - b)
    expect(served).toEqual(Array.from({ length: 2 * local.ground.gores }, (_, i) => i + 1))
    for (const flat of flats) expect(flat.refused).toBeNull()
  })

  it('cover between their ribs what the loft has there, within 2 %', () => {
    for (const flat of flats) {
      const lofted = local.lining[flat.panels[0] - 1]
      expect(lofted.id).toBe(`lining-${flat.panels[0]}`)
      expect(Math.abs(flat.net / lofted.area - 1), lofted.id).toBeLessThan(0.02)
    }
    const sum = (of: (f: (typeof flats)[number]) => number): number => 2 * flats.reduce((s, f) => s + of(f), 0)
    const whole = local.lining.filter((p) => p.id !== 'lining-crown').reduce((s, p) => s + p.area, 0)
    expect(Math.abs(sum((f) => f.net) / whole - 1)).toBeLessThan(0.02)
    // bent over chords and not stretched, so never more than the dome
    expect(sum((f) => f.net)).toBeLessThan(whole)
  })

  it('stand toward the room as chords of the plan do', () => {
    const { ground } = local
    const phi = ground.edges[(ground.gores - 1) / 2]
    // by hand: near the tip the plan falls away as y^2.6, so over half of a chord the most is (u - u^2.6) at u = 2.6^(-1/1.6), 0.34 of it
    const n = ground.input.ends.exponent
    const u = n ** (-1 / (n - 1))
    const whole = [1.2, 1.6, 2, 2.4, 2.8].map(
      (sigma) => loftAt(ground.loft, 0, sigma).r - loftAt(ground.loft, phi, sigma).r * Math.cos(phi),
    )
    const middle = flats[flats.length - 1]
    expect(middle.sag / Math.max(...whole)).toBeGreaterThan(0.9 * (u - u ** n))
    expect(middle.sag / Math.max(...whole)).toBeLessThan(1.1 * (u - u ** n))
    for (const flat of flats) {
      expect(flat.sag * 1000).toBeGreaterThan(3)
      expect(flat.sag).toBeLessThanOrEqual(middle.sag)
    }
  })

  it('have their laps: half the lap more round three sides', () => {
    const half = local.ground.input.lining.lap / 2
    for (const flat of flats) {
      const longest = Math.max(...flat.outline.map(([x]) => x)) - Math.min(...flat.outline.map(([x]) => x))
      const more = flat.area - flat.net
      expect(more).toBeGreaterThan(2 * half * (longest - 0.2))
      expect(more).toBeLessThan(2 * half * (longest + 1))
    }
  })
})
