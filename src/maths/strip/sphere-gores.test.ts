import { describe, expect, it } from 'vitest'
import { integrate } from '../quadrature.js'
import { length } from '../vec.js'
import { distanceInside } from './fit.js'
import { goreSeams, inscribedHalfWidth, sinusoidalExcess, sinusoidalHalfWidth } from './sphere-gores.js'
import { stripBetween } from './strip.js'

const R = 0.9

describe('gores of a sphere by three rules (closed forms, D: derived)', () => {
  it('sinusoidal: n of them are as wide as the circumference at every level', () => {
    for (const [n, latitude] of [
      [8, 0],
      [12, 0.7],
      [24, 1.5],
    ]) {
      expect(2 * n * sinusoidalHalfWidth(R, n, R * latitude)).toBeCloseTo(2 * Math.PI * R * Math.cos(latitude), 12)
    }
    // and their area is the sphere's, since the rule keeps the length of every parallel and of the mid line
    const half = (s: number): number => sinusoidalHalfWidth(R, 12, s)
    expect(12 * 2 * integrate(half, (-Math.PI * R) / 2, (Math.PI * R) / 2)).toBeCloseTo(4 * Math.PI * R * R, 12)
  })
  it('sinusoidal: flat edges are longer than their meridian by 3.7504, 1.6921, 0.9570, 0.4270 and 0.2405 %', () => {
    const expected: readonly (readonly [number, number, number])[] = [
      [8, 0.037504, 0.07434],
      [12, 0.016921, 0.0337],
      [16, 0.00957, 0.01909],
      [24, 0.00427, 0.00853],
      [32, 0.002405, 0.00481],
    ]
    for (const [n, whole, most] of expected) {
      expect(Math.abs(sinusoidalExcess(n).whole - whole)).toBeLessThan(1e-6)
      expect(Math.abs(sinusoidalExcess(n).most - most)).toBeLessThan(1e-5)
    }
  })
  it('inscribed: the solver wraps it between two meridians, its rulings level, as wide as the rule says', () => {
    for (const n of [8, 12, 24]) {
      const strip = stripBetween(...goreSeams('inscribed', R, n, 0, Math.PI / 2))
      if (strip.kind === 'refused') throw new Error(strip.says)
      expect(strip.largestResidual).toBeLessThan(1e-12)
      for (const r of strip.rulings) {
        const latitude = Math.asin(Math.min(1, r.from[2] / R))
        expect(r.length / 2).toBeCloseTo(inscribedHalfWidth(R, n, latitude), 7)
        expect(r.from[2]).toBeCloseTo(r.to[2], 9)
      }
    }
  })
  it('tangent: the solver touches the sphere along the mid line, and seams stand off by R (sec(pi/n) - 1)', () => {
    for (const [n, standoff] of [
      [8, 74.15],
      [12, 31.75],
      [16, 17.63],
      [24, 7.77],
    ]) {
      const strip = stripBetween(...goreSeams('tangent', R, n, 0.05, Math.PI / 2))
      if (strip.kind === 'refused') throw new Error(strip.says)
      const outside = distanceInside(strip, (point) => length(point) - R)
      expect(Math.abs(outside.depth * 1000 - standoff)).toBeLessThan(0.01)
      expect(distanceInside(strip, (point) => R - length(point)).depth).toBeCloseTo(0, 9)
    }
  })
})
