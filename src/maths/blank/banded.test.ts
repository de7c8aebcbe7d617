import { describe, expect, it } from 'vitest'
import { chance } from '../../../tests/random.js'
import { type Banded, bandedOf, factorise, firstColumn, rowStart, solve } from './banded.js'

const fill = (matrix: Banded, diagonal: number): ((r: number, c: number) => number) => {
  const { between } = chance(5)
  for (let r = 0; r < matrix.size; r++) {
    for (let c = firstColumn(matrix, r); c < r; c++) matrix.rows[rowStart(matrix, r) + c] = between(-1, 1)
    matrix.rows[rowStart(matrix, r) + r] = diagonal
  }
  const kept = matrix.rows.slice()
  return (r, c) => {
    const [high, low] = r > c ? [r, c] : [c, r]
    return low < firstColumn(matrix, high) ? 0 : kept[rowStart(matrix, high) + low]
  }
}

describe('banded systems', () => {
  it.each([1, 3, 8])('give back the numbers the right-hand side was made from, reach %i', (reach) => {
    const matrix = bandedOf(9, reach)
    const entry = fill(matrix, 12)
    const { between } = chance(7)
    const wanted = Array.from({ length: matrix.size }, () => between(-1, 1))
    const side = Float64Array.from(wanted, (_, r) => wanted.reduce((sum, x, c) => sum + entry(r, c) * x, 0))
    expect(factorise(matrix)).toBe(true)
    solve(matrix, side)
    for (const [k, x] of wanted.entries()) expect(side[k]).toBeCloseTo(x, 13)
  })
  it('are refused where they are not positive definite', () => {
    const matrix = bandedOf(4, 2)
    fill(matrix, 0.1)
    expect(factorise(matrix)).toBe(false)
  })
})
