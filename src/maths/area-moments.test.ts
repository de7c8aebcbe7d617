import { describe, expect, it } from 'vitest'
import { areaMoments, netMoments } from './area-moments.js'
import { outlineArea, outlineLength, roundedRectangle, type Vertex } from './outline.js'
import { superellipseHalf, superellipseStray } from './superellipse.js'

const disc = (x: number, y: number, r: number): Vertex[] => [
  [x - r, y, 1],
  [x + r, y, 1],
]

describe('areaMoments', () => {
  it('of a half disc is 4 r / 3 pi from its diameter, by hand', () => {
    const m = areaMoments([
      [-2, 0, 0],
      [2, 0, 1],
    ])
    expect(m.area).toBeCloseTo((Math.PI * 4) / 2, 12)
    expect(m.my / m.area).toBeCloseTo((4 * 2) / (3 * Math.PI), 12)
    expect(m.mx / m.area).toBeCloseTo(0, 12)
  })
  it('of a quarter disc cut the other way round is the same centre', () => {
    const quarter: Vertex[] = [
      [0, 0, 0],
      [3, 0, Math.tan(Math.PI / 8)],
      [0, 3, 0],
    ]
    const m = areaMoments(quarter)
    expect([m.mx / m.area, m.my / m.area]).toEqual([expect.closeTo(4 / Math.PI, 12), expect.closeTo(4 / Math.PI, 12)])
  })
  it('of more than half a disc agrees with the disc less the rest', () => {
    const big: Vertex[] = [
      [0, -1, Math.tan((1.5 * Math.PI) / 4)],
      [-1, 0, 0],
    ]
    const small: Vertex[] = [
      [-1, 0, Math.tan(Math.PI / 8)],
      [0, -1, 0],
    ]
    const [a, b] = [areaMoments(big), areaMoments(small)]
    expect(a.area + b.area).toBeCloseTo(Math.PI, 12)
    expect(a.mx + b.mx).toBeCloseTo(0, 12)
    expect(a.my + b.my).toBeCloseTo(0, 12)
  })
  it('of a plate with a hole is where the hole pushes it', () => {
    const plate = roundedRectangle(0, 0, 4, 2, 0)
    const net = netMoments(plate, [disc(3, 1, 0.5)])
    expect(net.area).toBeCloseTo(8 - Math.PI / 4, 12)
    expect(net.x).toBeCloseTo((8 * 2 - (Math.PI / 4) * 3) / (8 - Math.PI / 4), 12)
    expect(net.y).toBeCloseTo(1, 12)
  })
})

describe('superellipseHalf', () => {
  it('with exponent 2 and equal axes is the half circle itself', () => {
    const half = superellipseHalf(1, 1, 2, 4)
    expect(outlineArea(half)).toBeCloseTo(Math.PI / 2, 12)
    expect(superellipseStray(1, 1, 2, half)).toBeLessThan(1e-12)
    // the straight side is closed by the outline itself
    expect(outlineLength(half)).toBeCloseTo(Math.PI + 2, 12)
  })
  it('encloses 4 a b G(1+1/n)^2 / G(1+2/n) / 2: exponent 4 gives Gamma(1/4)^2 / (4 sqrt(pi)) for a = b = 1', () => {
    // area of |x|^4 + |y|^4 = 1 is Gamma(1/4)^2 / (2 sqrt(pi)); Gamma(1/4) = 3.625609908221908 (Abramowitz and Stegun 6.1.10)
    const whole = 3.625609908221908 ** 2 / (2 * Math.sqrt(Math.PI))
    expect(outlineArea(superellipseHalf(1, 1, 4, 40))).toBeCloseTo(whole / 2, 5)
  })
  it('refuses an exponent with corners', () => expect(() => superellipseHalf(1, 1, 0.8, 4)).toThrow('corners'))
})
