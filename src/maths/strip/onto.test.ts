import { describe, expect, it } from 'vitest'
import { circle } from '../../../tests/made-up-edges.js'
import type { Vec3 } from '../vec.js'
import { ontoStrip } from './onto.js'
import { stripBetween } from './strip.js'
import { unroll } from './unroll.js'

const RADIUS = 0.6

describe('places dropped onto a strip', () => {
  it('on a cylinder lie as far apart flat as round it, also past its edges and from beside the sheet', () => {
    const strip = stripBetween(circle([0, 0, 0], RADIUS, 0, 1), circle([0, 0, 1.5], RADIUS, 0, 1))
    if (strip.kind === 'refused') throw new Error(strip.says)
    const onto = ontoStrip(strip, unroll(strip))
    const on = (angle: number, z: number, off = 0): Vec3 => [(RADIUS + off) * Math.cos(angle), (RADIUS + off) * Math.sin(angle), z]
    const apart = (a: Vec3, b: Vec3): number => {
      const [p, q] = [onto(a), onto(b)]
      return Math.hypot(q[0] - p[0], q[1] - p[1])
    }
    // D: a cylinder unrolls to R times the angle, whatever its height
    for (const [from, to] of [
      [0.013, 0.87],
      [0.401, 0.432],
    ])
      for (const rise of [0, 0.2, 1.7]) {
        const flat = Math.hypot(RADIUS * (to - from), rise)
        expect(Math.abs(apart(on(from, -0.1), on(to, rise - 0.1)) - flat) * 1000).toBeLessThan(0.03)
        // 5 mm off the sheet, dropped square to it
        expect(Math.abs(apart(on(from, -0.1, 0.005), on(to, rise - 0.1, -0.005)) - flat) * 1000).toBeLessThan(0.2)
      }
  })

  it('past the ends of the strip the sheet is flat', () => {
    const strip = stripBetween(circle([0, 0, 0], RADIUS, 0, 1), circle([0, 0, 1.5], RADIUS, 0, 1))
    if (strip.kind === 'refused') throw new Error(strip.says)
    const onto = ontoStrip(strip, unroll(strip))
    // 40 mm before the first ruling, which stands at x = R and runs up; the sheet goes on along -y there
    const [a, b] = [onto([RADIUS, -0.04, 0.3]), onto([RADIUS, 0, 0.3])]
    expect(Math.hypot(a[0] - b[0], a[1] - b[1])).toBeCloseTo(0.04, 12)
    // and is as far from a place 40 mm the other way, but for the bend of that
    const c = onto([RADIUS * Math.cos(0.04 / RADIUS), RADIUS * Math.sin(0.04 / RADIUS), 0.3])
    expect(Math.hypot(a[0] - c[0], a[1] - c[1]) * 1000).toBeCloseTo(80, 1)
  })
})
