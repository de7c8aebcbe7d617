import { describe, expect, it } from 'vitest'
import { count } from '../../../tests/counts.js'
import { even, generator, word } from './generator.js'
import { fillNormals } from './normal.js'
import { EDGE, HEIGHT, TAIL } from './ziggurat-table.js'

const normals = (seed: number, n: number): Float64Array => {
  const out = new Float64Array(n)
  fillNormals(generator(seed, 'test'), out, n)
  return out
}
/** Upper half of the normal curve beyond x, from the figures of a printed table (Abramowitz and Stegun, table 26.1). */
const BEYOND: readonly (readonly [x: number, beyond: number])[] = [
  [0.5, 0.3085375387],
  [1, 0.1586552539],
  [1.5, 0.0668072013],
  [2, 0.0227501319],
  [2.5, 0.0062096653],
  [3, 0.001349898],
  [3.5, 0.000232629],
]

describe('words', () => {
  it('are the published generator, word for word', () => {
    // a = b = c = 0, counter 1: worked by hand from the four lines of sfc32
    const state = Int32Array.of(0, 0, 0, 1)
    expect([word(state), word(state), word(state), word(state)]).toEqual([1, 2, 12, 18874399])
  })
  it('are the same for the same seed and name, and others for another seed or name', () => {
    const first = (seed: number, name: string): readonly number[] => {
      const state = generator(seed, name)
      return [word(state), word(state), word(state)]
    }
    expect(first(7, 'joint-F1')).toEqual(first(7, 'joint-F1'))
    expect(first(7, 'joint-F1')).not.toEqual(first(8, 'joint-F1'))
    expect(first(7, 'joint-F1')).not.toEqual(first(7, 'joint-F2'))
    expect(first(7, 'joint-F1')).not.toEqual(first(7 + 2 ** 32, 'joint-F1'))
  })
  it('fill the line evenly (chi-square of 256 classes, limits 1 in 1,000 either way)', () => {
    const n = count(100_000)
    const state = generator(3, 'even')
    const classes = new Array<number>(256).fill(0)
    for (let i = 0; i < n; i++) classes[Math.floor(even(state) * 256)]++
    const chi = classes.reduce((sum, seen) => sum + (seen - n / 256) ** 2 / (n / 256), 0)
    // Wilson and Hilferty: 255 (1 - 2/(9·255) ± 3.09 sqrt(2/(9·255)))^3
    expect(chi).toBeGreaterThan(190)
    expect(chi).toBeLessThan(331)
  })
})

describe('the table of the ziggurat', () => {
  it('is 128 layers of one area under the curve, as worked out with the engine’s own exp', () => {
    const curve = (x: number): number => Math.exp((-x * x) / 2)
    expect(EDGE.length).toBe(129)
    const area = EDGE[0] * HEIGHT[0]
    for (let i = 1; i < 128; i++) expect(EDGE[i] * (HEIGHT[i] - HEIGHT[i - 1])).toBeCloseTo(area, 14)
    for (let i = 0; i < 128; i++) expect(HEIGHT[i]).toBeCloseTo(curve(EDGE[i + 1]), 14)
    expect(EDGE[1]).toBe(TAIL)
    // 128 layers hold the half curve's whole area and what sticks out of it
    expect(128 * area).toBeGreaterThan(Math.sqrt(Math.PI / 2))
  })
})

describe('normal deviates', () => {
  const n = count(200_000)
  const drawn = normals(11, n)
  const mean = (power: number): number => drawn.reduce((sum, x) => sum + x ** power, 0) / n
  it('have the moments 0, 1, 0, 3 of the normal curve (five standard errors)', () => {
    expect(Math.abs(mean(1))).toBeLessThan(5 / Math.sqrt(n))
    expect(Math.abs(mean(2) - 1)).toBeLessThan(5 * Math.sqrt(2 / n))
    expect(Math.abs(mean(3))).toBeLessThan(5 * Math.sqrt(15 / n))
    expect(Math.abs(mean(4) - 3)).toBeLessThan(5 * Math.sqrt(96 / n))
  })
  it.each(BEYOND)('lie beyond %s as often as table 26.1 says, on both sides (five standard errors)', (x, beyond) => {
    const limit = 5 * Math.sqrt(beyond / n)
    const [over, under] = drawn.reduce(([up, down], v) => [up + (v > x ? 1 : 0), down + (v < -x ? 1 : 0)], [0, 0])
    expect(Math.abs(over / n - beyond)).toBeLessThan(limit)
    expect(Math.abs(under / n - beyond)).toBeLessThan(limit)
  })
  it('are spread as the curve is from end to end (chi-square of the table’s classes, 1 in 1,000)', () => {
    const bounds = [-Infinity, ...BEYOND.map(([x]) => -x).reverse(), 0, ...BEYOND.map(([x]) => x), Infinity]
    const above = (x: number): number =>
      x === 0 ? 0.5 : x > 0 ? (BEYOND.find(([b]) => b === x)?.[1] ?? 0) : 1 - (BEYOND.find(([b]) => b === -x)?.[1] ?? 0)
    const share = bounds.slice(1).map((to, i) => (i === 0 ? 1 : above(bounds[i])) - (to === Infinity ? 0 : above(to)))
    expect(share.reduce((a, b) => a + b)).toBeCloseTo(1, 12)
    const seen = share.map((_, i) => drawn.reduce((sum, v) => sum + (v > bounds[i] && v <= bounds[i + 1] ? 1 : 0), 0))
    const chi = seen.reduce((sum, k, i) => sum + (k - n * share[i]) ** 2 / (n * share[i]), 0)
    expect(chi).toBeLessThan(37.7) // 15 degrees of freedom
  })
  it('are not tied to the one before', () => {
    let sum = 0
    for (let i = 1; i < n; i++) sum += drawn[i] * drawn[i - 1]
    expect(Math.abs(sum / n)).toBeLessThan(5 / Math.sqrt(n))
  })
  it('are these for seed 1, in every engine, to the last bit', () => {
    expect([...normals(1, 6)]).toEqual([
      0.22849543003537365, -0.18054268633965853, -0.5911040292352253, -0.31917696811494634, 0.16519855250222246, -0.48072103644192155,
    ])
    // far down the stream, where one point of the wedges judged otherwise would have put every later one out of step; taken from
    // the sampler that worked out the curve's height for each of them
    const far = normals(1, 100_000)
    expect([far[19_999], far[99_999]]).toEqual([0.10992546609890172, -0.6206555968577562])
  })
})
