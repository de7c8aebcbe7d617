import { describe, expect, it } from 'vitest'
import { circle, ellipticRib, line, rib, tangentHelix } from '../../../tests/made-up-edges.js'
import { buildChain } from '../tangent-chain.js'
import { warp } from './ruling.js'
import { edgePoint, type SpaceCurve } from './space-curve.js'
import { type DevelopableStrip, type Strip, stripBetween } from './strip.js'

function wrapped(p: SpaceCurve, q: SpaceCurve): DevelopableStrip {
  const strip = stripBetween(p, q)
  if (strip.kind === 'refused') throw new Error(strip.says)
  return strip
}
const share = ({ p, q, rulings }: DevelopableStrip): number => Math.max(...rulings.map((r) => Math.abs(r.s / p.length - r.t / q.length)))
const refused = (strip: Strip) => {
  if (strip.kind !== 'refused') throw new Error('a strip where none should be')
  return strip
}

describe('strips whose rulings are known (closed forms, D: derived)', () => {
  it('two level circles, set off as they may be: rulings join equal angles', () => {
    for (const [radius, x, z, to] of [
      [2, 0.3, 1, 1.5],
      [0.7, -0.2, 2, 3],
      [1, 0.4, 0.5, 2],
      [1.3, 0, 0.01, 1],
    ] as const) {
      const strip = wrapped(circle([0, 0, 0], 1, 0, to), circle([x, x / 2, z], radius, 0, to))
      expect(share(strip)).toBeLessThan(1e-9)
      expect(strip.largestResidual).toBeLessThan(1e-12)
      expect(strip.fans.start.edge).toBe('none')
    }
  })
  it('tangent developable of a helix between tangent lengths 1 and 2: rulings are the tangents, warp is nought', () => {
    const strip = wrapped(tangentHelix(1, 0.5, 1, 1), tangentHelix(1, 0.5, 2, 1))
    expect(share(strip)).toBeLessThan(1e-9)
    for (const r of strip.rulings) {
      expect(r.length).toBeCloseTo(1, 9)
      expect(warp(edgePoint(strip.p, r.s), edgePoint(strip.q, r.t))).toBeLessThan(1e-9)
    }
  })
  it('two meridians of a sphere, from the pole where they meet: a cylinder, rulings level and all one way', () => {
    const strip = wrapped(ellipticRib(0.9, 0.9, -0.2, 0, Math.PI / 2), ellipticRib(0.9, 0.9, 0.2, 0, Math.PI / 2))
    for (const r of strip.rulings) {
      expect(r.s).toBeCloseTo(r.t, 9)
      expect(Math.hypot(r.direction[0], r.direction[1] - 1, r.direction[2])).toBeLessThan(1e-9)
    }
    expect(strip.rulings[0].length).toBe(0)
  })
  it('straight edges in one plane, parallel or not: any line would do, and these are spread evenly', () => {
    for (const q of [line([0, 1, 0], [2, 1, 0]), line([0, 1, 0], [2, 2, 0]), line([0.2, 1, 0], [1.4, 1.6, 0])]) {
      const strip = wrapped(line([0, 0, 0], [1, 0, 0]), q)
      expect(strip.largestResidual).toBeLessThan(1e-12)
      for (let k = 1; k < strip.rulings.length; k++) {
        expect(strip.rulings[k].s).toBeGreaterThan(strip.rulings[k - 1].s)
        expect(strip.rulings[k].t).toBeGreaterThan(strip.rulings[k - 1].t)
      }
    }
  })
  it('edges that run on past each other: fans at the corners take just what is left over', () => {
    const inner = wrapped(circle([0, 0, 0], 1, 0, 1.5), circle([0.3, 0.2, 1], 2, 0.2, 1.3))
    expect(inner.fans.start.edge).toBe('p')
    expect(inner.fans.start.length).toBeCloseTo(0.2, 9)
    expect(inner.fans.end.length).toBeCloseTo(0.2, 9)
    const outer = wrapped(circle([0, 0, 0], 1, 0.2, 1.5), circle([0.3, 0.2, 1], 2, 0, 1.7))
    expect(outer.fans.start).toEqual({ edge: 'q', length: expect.closeTo(0.4, 9) })
    expect(outer.fans.end).toEqual({ edge: 'q', length: expect.closeTo(0.4, 9) })
    for (const { rulings } of [inner, outer]) {
      const fans = rulings.map((r) => r.fan !== 'none')
      expect(fans.slice(fans.indexOf(false), fans.lastIndexOf(false)).some(Boolean)).toBe(false)
    }
  })
  it('a straight piece in one rib only: a flat facet about one point of the other', () => {
    const start = { y: 0.4, z: 2, heading: 0.3 }
    const bent = buildChain(start, [{ kind: 'arc', name: 'a', radius: 0.8, to: 1.6 }])
    const straight = buildChain(start, [
      { kind: 'arc', name: 'a', radius: 0.6, to: 0.9 },
      { kind: 'line', name: 'b', length: 0.3 },
      { kind: 'arc', name: 'c', radius: 0.6, to: 1.6 },
    ])
    const strip = wrapped(rib(bent, 0), rib(straight, 0.5))
    const [from, to] = strip.q.breaks as readonly number[]
    const facet = strip.rulings.filter((r) => r.t >= from - 1e-12 && r.t <= to + 1e-12)
    expect(facet.length).toBeGreaterThan(2)
    expect(Math.max(...facet.map((r) => r.s)) - Math.min(...facet.map((r) => r.s))).toBeLessThan(1e-9)
    expect(strip.largestResidual).toBeLessThan(1e-9)
  })
  it('a ruling runs through every place where an edge changes its radius', () => {
    const start = { y: 0.4, z: 2, heading: 0.2 }
    const chain = (a: number, b: number) =>
      buildChain(start, [
        { kind: 'arc', name: 'a', radius: a, to: 0.9 },
        { kind: 'arc', name: 'b', radius: b, to: 1.7 },
      ])
    const strip = wrapped(rib(chain(1, 0.4), -0.2), rib(chain(0.8, 0.5), 0.2))
    expect(strip.rulings.some((r) => Math.abs(r.s - (strip.p.breaks?.[0] ?? 0)) < 1e-12)).toBe(true)
    expect(strip.rulings.some((r) => Math.abs(r.t - (strip.q.breaks?.[0] ?? 0)) < 1e-12)).toBe(true)
  })
})

describe('what cannot be wrapped is refused', () => {
  it('two skew straight edges: F = -L sin B throughout, no root', () => {
    const [L, B] = [1.5, 0.3]
    const [p, q] = [line([0, 0, 0], [1, 0, 0]), line([0, L, 0], [Math.cos(B), L, Math.sin(B)])]
    const strip = refused(stripBetween(p, q))
    expect(strip.reason).toBe('no root')
    // from s, the best line is found by trying a thousand: no other may be less warped
    const tried = Array.from({ length: 1001 }, (_, k) => warp(edgePoint(p, strip.at.s), edgePoint(q, k / 1000)))
    expect(strip.leastWarp).toBeLessThanOrEqual(Math.min(...tried) + 1e-9)
    expect(strip.leastWarp).toBeGreaterThan(Math.min(...tried) - 1e-4)
    // square to both edges the planes differ by just the angle between the edges
    expect(warp(edgePoint(p, 0), edgePoint(q, 0))).toBeCloseTo(B, 12)
    expect(strip.says).toMatch(/ mm along the first edge .* degrees/)
  })
  it('a helicoid: its every line is warped', () => {
    expect(refused(stripBetween(tangentHelix(1, 0.5, 0, 0.3), line([0, 0, 0], [0, 0, 1]))).reason).toBe('no root')
  })
  it('two arcs that bend to opposite sides: their planes agree nowhere but at the start', () => {
    const arc = (turn: 1 | -1, y: number): SpaceCurve => ({
      length: 1,
      at: (s) => [Math.sin(s), y, turn * (1 - Math.cos(s))],
      tangent: (s) => [Math.cos(s), 0, turn * Math.sin(s)],
    })
    expect(refused(stripBetween(arc(1, 0), arc(-1, 1))).reason).toBe('no root')
    const same = stripBetween(arc(1, 0), arc(1, 1))
    expect(same.kind).toBe('developable')
  })
  it('a rib that bends back in its middle beside one that does not: the lines would have to run back', () => {
    const start = { y: 0.4, z: 2, heading: 0.3 }
    const hollow = buildChain(start, [
      { kind: 'arc', name: 'a', radius: 0.8, to: 1.1 },
      { kind: 'arc', name: 'b', radius: -0.8, to: 0.7 },
      { kind: 'arc', name: 'c', radius: 0.8, to: 1.6 },
    ])
    const plain = buildChain(start, [{ kind: 'arc', name: 'a', radius: 1.6, to: 1.6 }])
    const strip = refused(stripBetween(rib(plain, -0.2), rib(hollow, 0.2)))
    expect(strip.reason).toBe('not monotone')
    // where the hollow is, give or take what rows are apart
    const [from, to] = rib(hollow, 0.2).breaks as readonly number[]
    expect(strip.at.t).toBeGreaterThan(from - 0.15)
    expect(strip.at.t).toBeLessThan(to + 0.15)
    expect(strip.leastWarp).toBeLessThan(1e-6)
    expect(refused(stripBetween(rib(hollow, -0.2), rib(plain, 0.2))).reason).toBe('not monotone')
  })
  it('edges either side of the apex of a cone: the sheet would fold over there', () => {
    // the second circle is the first one through the apex: angles match only at half a turn
    const strip = refused(stripBetween(circle([0, 0, 0], 1, 0, 1), circle([0, 0, 2], 1, Math.PI, Math.PI + 1)))
    expect(strip.reason).toBe('edge of regression')
    expect(strip.says).toContain('fold')
  })
  it('an edge without length is a bug of the caller', () => {
    expect(() => stripBetween(line([0, 0, 0], [1, 0, 0]), { length: 0, at: () => [0, 1, 0], tangent: () => [1, 0, 0] })).toThrow(
      'edges of 1 and 0 m',
    )
  })
})
