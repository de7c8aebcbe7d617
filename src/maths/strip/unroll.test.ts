import { describe, expect, it } from 'vitest'
import { circle, ellipticRib, line, tangentHelix } from '../../../tests/made-up-edges.js'
import { chance } from '../../../tests/random.js'
import { length, sub } from '../vec.js'
import { flatEdge, flatOn, pointOn, rulingBetween, rulingThrough } from './on-strip.js'
import { curveByLength, type SpaceCurve } from './space-curve.js'
import { type DevelopableStrip, stripBetween } from './strip.js'
import { type FlatStrip, unroll } from './unroll.js'

function wrapped(p: SpaceCurve, q: SpaceCurve, turn?: number): DevelopableStrip {
  const strip = stripBetween(p, q, turn === undefined ? {} : { turn })
  if (strip.kind === 'refused') throw new Error(strip.says)
  return strip
}
const turnOf = (flat: FlatStrip): number => Math.abs(flat.heading[flat.heading.length - 1] - flat.heading[0])

/** Radii of both edges about the point where the outermost rulings, drawn on, would meet: for patterns that are sectors. */
function radii(flat: FlatStrip): readonly [number, number] {
  const chord = (x: readonly number[], y: readonly number[]) => Math.hypot(x[x.length - 1] - x[0], y[y.length - 1] - y[0])
  const half = 2 * Math.sin(turnOf(flat) / 2)
  return [chord(flat.px, flat.py) / half, chord(flat.qx, flat.qy) / half]
}

describe('patterns with known answers (closed forms, D: derived)', () => {
  it('quarter cylinder of radius 600 mm: 942.4778 mm long and straight', () => {
    const flat = unroll(wrapped(circle([0, 0, 0], 0.6, 0, Math.PI / 2), circle([0, 0, 1], 0.6, 0, Math.PI / 2)))
    const last = flat.s.length - 1
    expect(flat.px[last]).toBeCloseTo((0.6 * Math.PI) / 2, 12)
    expect(Math.max(...flat.py.map(Math.abs))).toBeLessThan(1e-12)
    expect(Math.max(...flat.qy.map((y) => Math.abs(y - 1)))).toBeLessThan(1e-12)
  })
  it('elliptic cylinder, semi-axes 2 and 1: once round is 9.688448220547675', () => {
    const ellipse = (z: number): SpaceCurve =>
      curveByLength(
        (u) => [2 * Math.cos(u), Math.sin(u), z],
        (u) => [-2 * Math.sin(u), Math.cos(u), 0],
        0,
        2 * Math.PI,
      )
    const flat = unroll(wrapped(ellipse(0), ellipse(1)))
    expect(flat.px[flat.px.length - 1]).toBeCloseTo(9.688448220547675, 9)
  })
  it('frustum 5 and 8 across, 4 high, half of it: radii 7.120003 and 11.392005, sector 126.40444 degrees for the whole', () => {
    const flat = unroll(wrapped(circle([0, 0, 4], 2.5, 0, Math.PI), circle([0, 0, 0], 4, 0, Math.PI)))
    expect((2 * turnOf(flat) * 180) / Math.PI).toBeCloseTo(126.40444, 5)
    expect(radii(flat)[0]).toBeCloseTo(7.120003, 6)
    expect(radii(flat)[1]).toBeCloseTo(11.392005, 6)
  })
  it('oblique cone, radius 1, apex over the rim, height 2: half turns 1.25262268 rad, the first quarter 0.69139124', () => {
    for (const [to, turn] of [
      [Math.PI, 1.25262268],
      [Math.PI / 2, 0.69139124],
    ]) {
      // half way to the apex the section is half the rim, about a point half as far off
      const strip = wrapped(circle([0, 0, 0], 1, 0, to), circle([0.5, 0, 1], 0.5, 0, to))
      expect(turnOf(unroll(strip))).toBeCloseTo(turn, 7)
      expect(2 * strip.rulings[0].length).toBeCloseTo(2, 9)
      expect(2 * strip.rulings[strip.rulings.length - 1].length).toBeCloseTo(to > 3 ? 2.828427 : 2.44949, 6)
    }
  })
  it('tangent developable of a helix, radius 1 and rise 0.5: 5.61985178 rad, radii 1.60078106 and 2.35849528', () => {
    const strip = wrapped(tangentHelix(1, 0.5, 1, 1), tangentHelix(1, 0.5, 2, 1), 0.04)
    const flat = unroll(strip)
    expect(strip.p.length).toBeCloseTo(8.99615229, 7)
    expect(strip.q.length).toBeCloseTo(13.25439393, 7)
    expect(Math.abs(turnOf(flat) - 5.61985178)).toBeLessThan(1e-7)
    // rulings touch the edge of regression, whose radius is 1.25, so that an edge v along them is at the root of 1.25^2 + v^2
    expect(Math.abs(radii(flat)[0] - 1.60078106)).toBeLessThan(1e-7)
    expect(Math.abs(radii(flat)[1] - 2.35849528)).toBeLessThan(1e-7)
  })
})

describe('order of the development', () => {
  it('plain chords fall short by the square of their step; the cells of the unrolling by its fourth power', () => {
    const short = (steps: number): number => 1 - (2 * steps * Math.sin(Math.PI / 4 / steps)) / (Math.PI / 2)
    expect(Math.log2(short(45) / short(90))).toBeCloseTo(2, 2)
    const exact = 5.619851784832581
    const misses = [0.32, 0.16, 0.08].map((turn) =>
      Math.abs(turnOf(unroll(wrapped(tangentHelix(1, 0.5, 1, 1), tangentHelix(1, 0.5, 2, 1), turn))) - exact),
    )
    const orders = [misses[0] / misses[1], misses[1] / misses[2]].map(Math.log2)
    for (const order of orders) expect(Math.abs(order - 4)).toBeLessThan(0.2)
  })
})

describe('a pattern keeps all lengths', () => {
  const edges: readonly (readonly [string, SpaceCurve, SpaceCurve])[] = [
    ['fans', circle([0, 0, 0], 1, 0.2, 1.5), circle([0.3, 0.2, 1], 2, 0, 1.7)],
    ['a helix', tangentHelix(1, 0.5, 1, 0.4), tangentHelix(1, 0.5, 2, 0.4)],
    ['two ribs', ellipticRib(1.1, 1, -0.2, 0.3, 1.7), ellipticRib(1, 1.05, 0.2, 0.3, 1.8)],
    ['a plane', line([0, 0, 0], [1, 0, 0]), line([0, 1, 0], [2, 2, 0])],
  ]
  for (const [name, p, q] of edges) {
    const strip = wrapped(p, q)
    const flat = unroll(strip)
    it(`${name}: lies from the origin along +x, the second edge on the side of +y`, () => {
      const last = flat.s.length - 1
      expect([flat.px[0], flat.py[0]]).toEqual([0, 0])
      expect(flat.px[last]).toBeGreaterThan(0)
      expect(Math.abs(flat.py[last])).toBeLessThan(1e-12)
      for (let k = 0; k <= last; k++) {
        const across = Math.sin(flat.heading[k] - flat.pHeading[k])
        expect(across).toBeGreaterThan(0)
      }
    })
    it(`${name}: short steps on the sheet are as long in the plane, whichever way they go`, () => {
      const { between } = chance(11)
      for (let k = 0; k < 40; k++) {
        const [index, v] = [between(1, strip.rulings.length - 2), between(0, 1)]
        const [di, dv] = [between(-2e-3, 2e-3), between(-1e-3, 1e-3)]
        const [a, b] = [rulingBetween(strip, index), rulingBetween(strip, index + di)]
        const space = length(sub(pointOn(strip, b, Math.min(1, Math.max(0, v + dv))), pointOn(strip, a, v)))
        const [x0, y0] = flatOn(flat, a, v)
        const [x1, y1] = flatOn(flat, b, Math.min(1, Math.max(0, v + dv)))
        expect(Math.abs(Math.hypot(x1 - x0, y1 - y0) / space - 1)).toBeLessThan(2e-5)
      }
    })
  }
  it('of an edge, found by the other edge: the ruling through a place goes back to it', () => {
    const strip = wrapped(edges[2][1], edges[2][2])
    const flat = unroll(strip)
    for (const share of [0, 0.1, 0.37, 0.5, 0.82, 1]) {
      const { s, t } = rulingThrough(strip, 'p', share * strip.p.length)
      expect(s).toBeCloseTo(share * strip.p.length, 9)
      if (t > 0 && t < strip.q.length) expect(rulingThrough(strip, 'q', t).s).toBeCloseTo(s, 9)
      const [[x, y], [a, b]] = [flatEdge(flat, 'p', s), flatEdge(flat, 'q', t)]
      expect(Math.hypot(a - x, b - y)).toBeCloseTo(length(sub(strip.q.at(t), strip.p.at(s))), 8)
    }
  })
})
