import { describe, expect, it } from 'vitest'
import { circle, ellipticRib, line, tangentHelix } from '../../../tests/made-up-edges.js'
import { length } from '../vec.js'
import { FROM_POINT, stripFacts } from './facts.js'
import { distanceInside, edgeNormal, kink } from './fit.js'
import { crossPlane } from './on-strip.js'
import type { SpaceCurve } from './space-curve.js'
import { goreSeams } from './sphere-gores.js'
import { type DevelopableStrip, stripBetween } from './strip.js'
import { unroll } from './unroll.js'

function wrapped(p: SpaceCurve, q: SpaceCurve): DevelopableStrip {
  const strip = stripBetween(p, q)
  if (strip.kind === 'refused') throw new Error(strip.says)
  return strip
}

describe('facts of strips that are known (closed forms, D: derived)', () => {
  it('a cylinder: its radius, no twist, no drop, its area', () => {
    const strip = wrapped(circle([0, 0, 0], 0.6, 0, 1), circle([0, 0, 1.5], 0.6, 0, 1))
    const facts = stripFacts(strip, unroll(strip))
    expect(facts.bend?.radius).toBeCloseTo(0.6, 9)
    expect(facts.twist.most).toBeLessThan(1e-9)
    expect(facts.drop.most).toBeCloseTo(1.5, 12)
    expect(facts.area.space).toBeCloseTo(0.6 * 1.5, 12)
    expect(facts.area.residual).toBeLessThan(1e-10)
    expect(facts.isometry).toBeLessThan(1e-10)
  })
  it('a cone: bent most at its smaller end, where the radius is that of the rim over the cosine of the slope', () => {
    const strip = wrapped(circle([0, 0, 1], 0.5, 0, 1.5), circle([0, 0, 0], 1, 0, 1.5))
    const facts = stripFacts(strip, unroll(strip))
    // normal curvature of a cone: cos(half angle) / distance from the axis
    expect(facts.bend?.radius).toBeCloseTo(0.5 / Math.cos(Math.atan(0.5)), 4)
    expect(facts.bend?.edge).toBe('p')
  })
  it('tangent developable of a helix: area 8.42977768 over one turn, both in space and flat', () => {
    const strip = wrapped(tangentHelix(1, 0.5, 1, 1), tangentHelix(1, 0.5, 2, 1))
    const facts = stripFacts(strip, unroll(strip))
    expect(Math.abs(facts.area.space - 8.42977768)).toBeLessThan(1e-7)
    expect(Math.abs(facts.area.flat - 8.42977768)).toBeLessThan(5e-7)
    expect(facts.isometry).toBeLessThan(1e-7)
    expect(facts.largestResidual).toBeLessThan(1e-12)
    // torsion over curvature times the distance from the edge of regression gives the curvature across: tau / (kappa v) at v = 1
    expect(facts.bend?.radius).toBeCloseTo(0.8 / 0.4, 3)
    // the edge leaves the ruling by the angle whose tangent is kappa v, 0.8; Euler's formula gives its torsion
    expect(facts.twist.most).toBeCloseTo((0.5 * 0.8) / (1 + 0.8 ** 2), 3)
  })
  it('a fan: as sharp at a distance from its point as the cone it is, and told apart from the bend of the rest', () => {
    const strip = wrapped(circle([0, 0, 0], 1, 0, 1.5), circle([0.3, 0.2, 1], 2, 0.2, 1.3))
    const { bend, corner } = stripFacts(strip, unroll(strip))
    const plain = wrapped(circle([0, 0, 0], 1, 0.2, 1.3), circle([0.3, 0.2, 1], 2, 0.2, 1.3))
    const same = stripFacts(plain, unroll(plain))
    expect(same.corner).toBeNull()
    // radii grow in proportion along a ruling from the point: an edge of radius near 1 a metre and more off gives some 25 mm there
    expect(corner?.edge).toBe('q')
    expect(corner?.radius).toBeGreaterThan(0.6 * FROM_POINT)
    expect(corner?.radius).toBeLessThan(1.4 * FROM_POINT)
    expect(bend?.radius).toBeGreaterThan(0.5)
    expect(same.bend?.radius).toBeGreaterThan(0.5)
  })
  it('a flat sheet bends nowhere', () => {
    const strip = wrapped(line([0, 0, 0], [1, 0, 0]), line([0, 1, 0], [2, 2, 0]))
    const facts = stripFacts(strip, unroll(strip))
    expect(facts.bend).toBeNull()
    expect(facts.corner).toBeNull()
    expect(facts.area.flat).toBeCloseTo(2, 9)
  })
})

describe('how a strip fits', () => {
  const R = 0.9
  const sphere = (point: readonly [number, number, number]): number => R - length(point)

  it('an inscribed gore of a sphere stands inside it by R (1 - cos(pi/n)) in the middle of the equator', () => {
    for (const n of [8, 12, 16]) {
      const strip = wrapped(...goreSeams('inscribed', R, n, 0.2, Math.PI / 2))
      const deepest = distanceInside(strip, sphere)
      expect(deepest.depth).toBeCloseTo(R * (1 - Math.cos(Math.PI / n)), 9)
      expect(deepest.v).toBeCloseTo(0.5, 9)
      expect(deepest.s).toBeCloseTo(strip.p.length, 9)
      expect(length(deepest.point)).toBeCloseTo(R - deepest.depth, 12)
    }
  })
  it('finds the deepest place between its rulings too', () => {
    const strip = wrapped(...goreSeams('inscribed', R, 8, 0.4, 2.6))
    const deepest = distanceInside(strip, sphere)
    expect(deepest.depth).toBeCloseTo(R * (1 - Math.cos(Math.PI / 8)), 6)
    expect(deepest.point[2]).toBeCloseTo(0, 2)
  })
  it('neighbouring inscribed gores meet at 2 pi/n at the equator, at less toward the pole', () => {
    const strip = wrapped(...goreSeams('inscribed', R, 8, 0.3, Math.PI / 2))
    const turned = ([x, y, z]: readonly [number, number, number], by: number) =>
      [x * Math.cos(by) - y * Math.sin(by), x * Math.sin(by) + y * Math.cos(by), z] as const
    const places = [0, 0.25, 0.5, 0.75, 1].map((share) => share * strip.p.length)
    const mine = places.map((s) => edgeNormal(strip, 'q', s))
    const next = places.map((s) => turned(edgeNormal(strip, 'p', s), Math.PI / 4))
    expect(kink(mine, next).most).toBeCloseTo(Math.PI / 4, 9)
    expect(kink(mine, next).place).toBe(4)
    expect(kink([mine[0]], [next[0]]).most).toBeLessThan(Math.PI / 4 - 0.1)
    expect(() => kink(mine, [])).toThrow('5 normals against 0')
  })
  it('the edge of a fan has the plane of that edge and the ruling, not of the point', () => {
    const strip = wrapped(circle([0, 0, 0], 1, 0, 1.5), circle([0.3, 0.2, 1], 2, 0.2, 1.3))
    const [s, apex] = [0.1, strip.q.at(0)]
    const normal = edgeNormal(strip, 'p', s)
    for (const along of [strip.p.tangent(s), strip.p.at(s).map((x, k) => x - apex[k])]) {
      expect(normal[0] * along[0] + normal[1] * along[1] + normal[2] * along[2]).toBeCloseTo(0, 12)
    }
  })
})

describe('where a plane cuts a strip', () => {
  it('halves a symmetric gore along its mid line, an ellipse of known length, which lies straight in the plane', () => {
    const [R, n] = [0.9, 8]
    const strip = wrapped(...goreSeams('inscribed', R, n, 0.3, 1.9))
    const flat = unroll(strip)
    const cut = crossPlane(strip, [0, 1, 0], 0, flat)
    const ellipse = ellipticRib(R * Math.cos(Math.PI / n), R, 0, 0.3, 1.9)
    expect(cut.v.length).toBe(strip.rulings.length)
    for (const v of cut.v) expect(v).toBeCloseTo(0.5, 9)
    expect(cut.along[cut.along.length - 1]).toBeCloseTo(ellipse.length, 7)
    const [[x0, y0], [x1, y1]] = [cut.flat[0], cut.flat[cut.flat.length - 1]]
    expect(Math.hypot(x1 - x0, y1 - y0)).toBeCloseTo(ellipse.length, 7)
  })
  it('leaves out what it misses', () => {
    const strip = wrapped(circle([0, 0, 0], 1, 0, 1), circle([0, 0, 1], 1, 0, 1))
    expect(crossPlane(strip, [0, 0, 1], 2).points).toEqual([])
    const cut = crossPlane(strip, [0, 0, 1], 0.25)
    expect(cut.along[cut.along.length - 1]).toBeCloseTo(1, 7)
    expect(cut.flat).toEqual([])
  })
})
