import { describe, expect, it } from 'vitest'
import { count } from '../../../tests/counts.js'
import { chance } from '../../../tests/random.js'
import { characteristicPolynomial, eigenvalues, exponential, heldStep } from './matrix.js'
import { polynomialRoots, type Root } from './polynomial-roots.js'

/** Coefficients of the product of (x - r), with conjugates given as pairs. */
function fromRoots(roots: readonly Root[]): number[] {
  let c = [1]
  for (const { re, im } of roots) {
    if (im < 0) continue
    const by = im === 0 ? [-re, 1] : [re * re + im * im, -2 * re, 1]
    const out = new Array<number>(c.length + by.length - 1).fill(0)
    c.forEach((a, i) => {
      by.forEach((b, j) => {
        out[i + j] += a * b
      })
    })
    c = out
  }
  return c
}

describe('roots of a polynomial', () => {
  it('are those it was made from, whatever their kind', () => {
    const random = chance(5)
    for (let n = 0; n < count(300); n++) {
      const roots: Root[] = []
      while (roots.length < 4) {
        const re = random.between(-20, 5)
        if (roots.length < 3 && random.maybe(0.6)) {
          const im = random.between(0.5, 30)
          roots.push({ re, im: -im }, { re, im })
        } else roots.push({ re, im: 0 })
      }
      const found = polynomialRoots(fromRoots(roots).map((each) => each * 7))
      for (const root of roots) {
        const near = Math.min(...found.map((f) => Math.hypot(f.re - root.re, f.im - root.im)))
        expect(near, JSON.stringify(roots)).toBeLessThan(1e-5)
      }
    }
  })
  it('of x^4 - 1 are the four units', () => {
    expect(polynomialRoots([-1, 0, 0, 0, 1]).map(({ re, im }) => [Math.round(re), Math.round(im)])).toEqual([
      [-1, 0],
      [0, -1],
      [0, 1],
      [1, 0],
    ])
  })
  it('of a double root are found to half the figures, and a root of nothing is found', () => {
    for (const { re, im } of polynomialRoots([9, -6, 1])) expect(Math.hypot(re - 3, im)).toBeLessThan(1e-6)
    expect(polynomialRoots([0, -2, 1]).map((r) => Number(r.re.toFixed(12)))).toEqual([0, 2])
  })
  it('are refused of what is no polynomial', () => {
    expect(() => polynomialRoots([1, 2, 0])).toThrow(/no polynomial/)
    expect(() => polynomialRoots([1])).toThrow(/no polynomial/)
  })
})

describe('matrices', () => {
  it('have the characteristic polynomial of their trace and determinant', () => {
    expect(
      characteristicPolynomial([
        [2, 1],
        [3, 5],
      ]),
    ).toEqual([7, -7, 1])
  })
  it('of a companion have the roots of its polynomial', () => {
    const found = eigenvalues([
      [0, 1, 0],
      [0, 0, 1],
      [6, -11, 6],
    ])
    expect(found.map((r) => Number(r.re.toFixed(9)))).toEqual([1, 2, 3])
  })
  it('of a rotation are raised to e by cosine and sine', () => {
    const [[a, b], [c, d]] = exponential([
      [0, -2],
      [2, 0],
    ])
    expect([a, b, c, d].map((x) => x.toFixed(12))).toEqual([Math.cos(2), -Math.sin(2), Math.sin(2), Math.cos(2)].map((x) => x.toFixed(12)))
  })
  it('step a held input as the exact answer does', () => {
    // x' = -3 x + 6: x = 2 (1 - e^-3t)
    const { step, held } = heldStep([[-3]], [6], 0.7)
    expect(step[0][0]).toBeCloseTo(Math.exp(-2.1), 13)
    expect(held[0]).toBeCloseTo(2 * (1 - Math.exp(-2.1)), 13)
  })
})
