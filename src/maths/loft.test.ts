import { describe, expect, it } from 'vitest'
import { type Loft, loftAt, loftBetween, normalOf, pointOf, sigmaAtZ } from './loft.js'
import { buildChain, type ChainPiece, type TangentChain } from './tangent-chain.js'

const DEG = Math.PI / 180
const chain = (crown: number, pieces: readonly ChainPiece[]): TangentChain => buildChain({ y: 0, z: crown, heading: 0 }, pieces)
const ball = (R: number): TangentChain => chain(R, [{ kind: 'arc', name: 'quarter', radius: R, to: 90 * DEG }])

/** Fine midpoint sums over the half dome: area, and the moment for its centroid. */
function sums(loft: Loft, n = 240): { area: number; x: number; z: number } {
  let [area, x, z] = [0, 0, 0]
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++) {
      const [phi, sigma] = [((j + 0.5) / n - 0.5) * Math.PI, ((i + 0.5) / n) * loft.section.length]
      const p = loftAt(loft, phi, sigma)
      const [c, s] = [Math.cos(phi), Math.sin(phi)]
      const across = [p.rPhi * c - p.r * s, p.rPhi * s + p.r * c]
      const a =
        (Math.hypot(p.zSigma * across[1], p.zSigma * across[0], p.rSigma * (c * across[1] - s * across[0])) *
          Math.PI *
          loft.section.length) /
        (n * n)
      area += a
      x += a * p.r * c
      z += a * p.z
    }
  return { area, x: x / area, z: z / area }
}

describe('a loft', () => {
  it('between two quarter circles with exponent 2 is a quarter of a ball: area pi R2, centroid R/2 out and R/2 up (closed form)', () => {
    const { area, x, z } = sums(loftBetween(ball(1.5), ball(1.5), 2))
    expect(area).toBeCloseTo(Math.PI * 1.5 ** 2, 4)
    expect(x).toBeCloseTo(0.75, 4)
    expect(z).toBeCloseTo(0.75, 4)
  })

  it('has the radius for its normal on a ball', () => {
    const loft = loftBetween(ball(1.2), ball(1.2), 2)
    for (const [phi, sigma] of [
      [0, 0.4],
      [0.7, 1],
      [-1.4, 1.8],
      [Math.PI / 2, 0.9],
    ]) {
      const p = loftAt(loft, phi, sigma)
      const n = normalOf(p, phi)
      pointOf(p, phi).forEach((v, i) => {
        expect(n[i]).toBeCloseTo(v / 1.2, 12)
      })
    }
  })

  it('of one chain with itself is a surface of revolution, whose area is pi times the moment of the chain (Pappus)', () => {
    const own = chain(1.2, [
      { kind: 'arc', name: 'roof', radius: 1, to: 40 * DEG },
      { kind: 'line', name: 'side', length: 0.5 },
      { kind: 'arc', name: 'turn', radius: 0.3, to: 110 * DEG },
    ])
    // moment of an arc about the axis: R (y0 - R sin h0) (h1 - h0) + R2 (cos h0 - cos h1); of a line: its length at its middle
    let moment = 0
    for (const e of own.elements) {
      const run = e.girth1 - e.girth0
      if (e.curvature === 0) moment += run * (e.y0 + (run / 2) * Math.cos(e.heading0))
      else {
        const R = 1 / e.curvature
        moment += R * ((e.y0 - R * Math.sin(e.heading0)) * (e.heading1 - e.heading0) + R * (Math.cos(e.heading0) - Math.cos(e.heading1)))
      }
    }
    expect(sums(loftBetween(own, own, 2)).area).toBeCloseTo(Math.PI * moment, 4)
  })

  it('has for its plan a superellipse, whose area is known: 4ab G(1+1/n)2 / G(1+2/n) (closed form; G(1.5)2 / G(2) = pi / 4 for n = 2)', () => {
    // for n = 4: G(1.25)2 / G(1.5) = 0.9270373386 (tables of the gamma function, from memory; the sum below agrees)
    const section = chain(1, [{ kind: 'arc', name: 'a', radius: 1, to: 90 * DEG }])
    const profile = chain(1, [
      { kind: 'arc', name: 'a', radius: 0.5, to: 60 * DEG },
      { kind: 'line', name: 'b', length: 0.9 },
    ])
    const loft = loftBetween(section, profile, 4)
    const sigma = 1.1
    const [a, b] = [loftAt(loft, Math.PI / 2, sigma).r, loftAt(loft, 0, sigma).r]
    let area = 0
    for (let i = 0; i < 4000; i++) area += (0.5 * loftAt(loft, ((i + 0.5) / 4000) * (Math.PI / 2), sigma).r ** 2 * Math.PI) / 2 / 4000
    expect(area).toBeCloseTo(a * b * 0.9270373386, 6)
  })

  it('gives derivatives that finite differences agree with, and a normal square to both', () => {
    const section = chain(2, [
      { kind: 'arc', name: 'roof', radius: 3, to: 15 * DEG },
      { kind: 'arc', name: 'side', radius: 0.5, to: 88 * DEG },
      { kind: 'arc', name: 'low', radius: 6, to: 95 * DEG },
    ])
    const profile = chain(2, [
      { kind: 'arc', name: 'roof', radius: 1.5, to: 20 * DEG },
      { kind: 'arc', name: 'face', radius: 1.2, to: 100 * DEG },
    ])
    const loft = loftBetween(section, profile, 2.6)
    const h = 1e-6
    for (const phi of [0.05, 0.8, 1.5, -0.6])
      for (const sigma of [0.3, 0.9, 1.25, 1.7]) {
        const p = loftAt(loft, phi, sigma)
        expect(p.rSigma).toBeCloseTo((loftAt(loft, phi, sigma + h).r - loftAt(loft, phi, sigma - h).r) / (2 * h), 6)
        expect(p.zSigma).toBeCloseTo((loftAt(loft, phi, sigma + h).z - loftAt(loft, phi, sigma - h).z) / (2 * h), 6)
        expect(p.rPhi).toBeCloseTo((loftAt(loft, phi + h, sigma).r - loftAt(loft, phi - h, sigma).r) / (2 * h), 6)
        const n = normalOf(p, phi)
        const [c, s] = [Math.cos(phi), Math.sin(phi)]
        expect(n[0] * p.rSigma * c + n[1] * p.rSigma * s + n[2] * p.zSigma).toBeCloseTo(0, 12)
        expect(n[0] * (p.rPhi * c - p.r * s) + n[1] * (p.rPhi * s + p.r * c)).toBeCloseTo(0, 12)
        expect(n[0] * c + n[1] * s).toBeGreaterThan(-0.2)
      }
  })

  it('is tangent to the barrel where it meets it: the normal there has no part along the coach', () => {
    const loft = loftBetween(ball(1), ball(1), 2.6)
    for (const sigma of [0.2, 0.9, 1.5]) expect(Math.abs(normalOf(loftAt(loft, Math.PI / 2, sigma), Math.PI / 2)[0])).toBeLessThan(1e-12)
  })

  it('refuses a profile that ends above the toe', () => {
    const short = chain(1, [{ kind: 'arc', name: 'a', radius: 0.2, to: 170 * DEG }])
    expect(() => loftBetween(ball(1), short, 2)).toThrow('does not reach')
  })

  it('finds the girth of a height', () => {
    const own = ball(2)
    expect(sigmaAtZ(own, 1)).toBeCloseTo(2 * Math.acos(0.5), 12)
    expect(sigmaAtZ(own, 2.1)).toBeNull()
    expect(sigmaAtZ(own, -0.1)).toBeNull()
  })
})
