import { describe, expect, it } from 'vitest'
import { developedAngle, elementLength, frustumPattern } from './cone.js'
import { ellipsePerimeter, integrate, polylineLength } from './quadrature.js'

describe('integrals', () => {
  it('is exact for a polynomial of degree 15 on one panel, and close for the rest', () => {
    expect(integrate((x) => 16 * x ** 15, 0, 1, 1)).toBeCloseTo(1, 13)
    expect(integrate(Math.cos, 0, Math.PI / 2)).toBeCloseTo(1, 14)
    expect(integrate(Math.exp, 1, 0)).toBeCloseTo(1 - Math.E, 13)
  })
  it('gives a circle its circumference, and any ellipse the same one turned', () => {
    expect(ellipsePerimeter(3, 3)).toBeCloseTo(6 * Math.PI, 12)
    expect(ellipsePerimeter(1, 2)).toBeCloseTo(ellipsePerimeter(2, 1), 12)
    expect(ellipsePerimeter(1, 1e-9)).toBeCloseTo(4, 3)
  })
  it('adds up straight lines', () =>
    expect(
      polylineLength([
        [0, 0],
        [3, 4],
        [3, 5],
      ]),
    ).toBe(6))
})

describe('cones', () => {
  it('lays a frustum flat so that both rims keep their length', () => {
    const flat = frustumPattern(5, 8, 4)
    expect(flat.innerRadius * flat.sector).toBeCloseTo(5 * Math.PI, 12)
    expect(flat.outerRadius * flat.sector).toBeCloseTo(8 * Math.PI, 12)
    expect(() => frustumPattern(5, 5, 4)).toThrow('no frustum')
  })
  it('agrees with the right cone when nothing is offset', () => {
    const cone = { radius: 1, offset: 0, height: 2 }
    expect(developedAngle(cone, 0, 2 * Math.PI)).toBeCloseTo((2 * Math.PI) / Math.hypot(1, 2), 12)
    expect(elementLength(cone, 1)).toBeCloseTo(Math.hypot(1, 2), 12)
  })
  it('keeps the rim length when an oblique cone is laid flat as many thin triangles', () => {
    const cone = { radius: 1, offset: 1, height: 2 }
    const steps = 2000
    let rim = 0
    for (let i = 0; i < steps; i += 1) {
      const [a, b] = [(2 * Math.PI * i) / steps, (2 * Math.PI * (i + 1)) / steps]
      const [p, q, turn] = [elementLength(cone, a), elementLength(cone, b), developedAngle(cone, a, b)]
      rim += Math.sqrt(p * p + q * q - 2 * p * q * Math.cos(turn))
    }
    expect(rim).toBeCloseTo(2 * Math.PI, 5)
  })
})
