/** Lining panels of the demonstration's ends laid flat, against the loft they line. */
import { describe, expect, it } from 'vitest'
import { readExample } from '../../../tests/examples.js'
import { loftAt } from '../../maths/loft.js'
import { derive } from '../index.js'
import { liningFlats } from './lining-flats.js'

const { local } = derive(readExample('sedge-6')).endSections
const flats = liningFlats(local)

describe('lining panels of the ends, laid flat', () => {
  it('are one a pair of ribs, each serving both hands but for the two beside the centre line', () => {
    const served = flats.flatMap((f) => f.panels).sort((a, b) => a - b)
    expect(served).toEqual(Array.from({ length: 2 * local.ground.gores }, (_, i) => i + 1))
    for (const flat of flats) expect(flat.refused).toBeNull()
  })

  it('cover from rivet line to rivet line what the loft has there, within 4 %, and together within 0.5 %', () => {
    const lofted = (flat: (typeof flats)[number]): number => local.lining[flat.panels[0] - 1].area
    const [beside, ...others] = flats
    // on the rib of the centre line the rivets stand 14 mm to the right, which one panel loses and the other gains
    for (const flat of others) expect(Math.abs(flat.net / lofted(flat) - 1), `${flat.panels[0]}`).toBeLessThan(0.04)
    const sum = (of: (f: (typeof flats)[number]) => number): number => others.reduce((s, f) => s + of(f) * f.panels.length, 0)
    // each begins 14 mm higher than its area is taken from, on a ring's row of 0.4 m radius but for the two panels beside the joint;
    // and those two leave the others 14 mm, down 2.2 m
    const more = 0.014 * 0.75 * Math.PI * (local.ground.input.ends.cap - 0.06) + 2 * 0.014 * 2.2
    expect(Math.abs(sum((f) => f.net) / (sum(lofted) + more) - 1)).toBeLessThan(0.005)
    // the panel beside the joint reaches 37 mm past it, and its rib's rivets stand 14 mm on its side of the rib, down 2.2 m
    expect(beside.net / (lofted(beside) + (0.037 - 0.014) * 2.2)).toBeGreaterThan(0.98)
    expect(beside.net / (lofted(beside) + (0.037 - 0.014) * 2.2)).toBeLessThan(1.02)
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
    // one of the two beside the centre line is 14 mm narrower than from rib to rib, the other as much wider
    const [narrow, wide] = flats.slice(-2)
    const middle = (narrow.sag + wide.sag) / 2
    expect(middle / Math.max(...whole)).toBeGreaterThan(0.9 * (u - u ** n))
    expect(middle / Math.max(...whole)).toBeLessThan(1.1 * (u - u ** n))
    for (const flat of flats) {
      expect(flat.sag * 1000).toBeGreaterThan(3)
      expect(flat.sag).toBeLessThanOrEqual(wide.sag)
    }
  })

  it('have their laps: half the lap more round three sides', () => {
    const half = local.ground.input.lining.lap / 2
    for (const flat of flats) {
      const longest = Math.max(...flat.outline.map(([x]) => x)) - Math.min(...flat.outline.map(([x]) => x))
      const more = flat.area - flat.net
      expect(more).toBeGreaterThan(2 * half * (longest - 0.2))
      // and what the ring's rivets, on a curve, stand over the straight edge: up to 20 mm of a panel 0.3 m wide there
      expect(more).toBeLessThan(2 * half * (longest + 1) + 0.02 * 0.3)
    }
  })
})
