import { describe, expect, it } from 'vitest'
import { rootBetween } from './root.js'

const NEAR = { x: 1e-15, f: 1e-15 }
const between = (f: (x: number) => number, a: number, b: number): number => rootBetween(f, { x: a, f: f(a) }, { x: b, f: f(b) }, NEAR)

describe('rootBetween', () => {
  it('finds published roots, from either side', () => {
    // the Dottie number, OEIS A003957; Wallis' cubic x3 - 2x - 5, OEIS A007493
    expect(between((x) => Math.cos(x) - x, 0, 1)).toBeCloseTo(0.7390851332151607, 14)
    expect(between((x) => x - Math.cos(x), 1, 0)).toBeCloseTo(0.7390851332151607, 14)
    expect(between((x) => x ** 3 - 2 * x - 5, 2, 3)).toBeCloseTo(2.0945514815423265, 13)
  })

  it('needs some ten looks at a smooth function', () => {
    let looks = 0
    between(
      (x) => {
        looks++
        return Math.exp(x) - 2
      },
      0,
      2,
    )
    expect(looks).toBeLessThan(16)
  })

  it('finds a jump, and where a function leaves what is endless', () => {
    expect(between((x) => (x < 0.3 ? -1 : 5), 0, 1)).toBeCloseTo(0.3, 13)
    expect(between((x) => (x < 0.3 ? Number.POSITIVE_INFINITY : 0.6 - x), 0, 1)).toBeCloseTo(0.6, 13)
    expect(between((x) => (x < 0.7 ? Number.POSITIVE_INFINITY : -x), 0, 1)).toBeCloseTo(0.7, 13)
  })

  it('is not held up by a flat end', () => {
    const flat = (x: number): number => x ** 9 - 1e-9
    expect(rootBetween(flat, { x: 0, f: flat(0) }, { x: 1, f: flat(1) }, { x: 1e-15, f: 0 })).toBeCloseTo(0.1, 12)
  })

  it('takes an end that is a root as it is', () => {
    expect(between((x) => x, 0, 1)).toBe(0)
    expect(between((x) => x - 1, 0, 1)).toBe(1)
  })
})
