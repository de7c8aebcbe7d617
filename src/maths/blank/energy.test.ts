import { describe, expect, it } from 'vitest'
import { domedGore, sphereStrip } from '../../../tests/made-up-patches.js'
import { chance } from '../../../tests/random.js'
import { bandedOf, firstColumn, rowStart } from './banded.js'
import { energyOf, slopesOf } from './energy.js'
import { meshOf } from './mesh.js'
import { developed, laidSquare } from './start.js'

const CASES = [
  ['a strip of a sphere', meshOf(sphereStrip(0.1, 0.5), { across: 4, along: 6 })],
  ['a gore', meshOf(domedGore(50, 75), { across: 4, along: 8 })],
] as const
const STEP = 1e-6

describe.each(CASES)('the energy of %s', (_, mesh) => {
  const { between } = chance(11)
  const plane = developed(mesh).map((x) => x + between(-1e-3, 1e-3))
  const reach = mesh.across + 2
  const gradientAt = (at: Float64Array, matrix = bandedOf(at.length / 2, reach)): Float64Array => {
    const gradient = new Float64Array(at.length)
    slopesOf(mesh, at, 100, gradient, matrix)
    return gradient
  }
  const moved = (k: number, by: number): Float64Array => plane.map((x, l) => (l === k ? x + by : x))

  it('has the gradient that difference quotients find', () => {
    const gradient = gradientAt(plane)
    const size = Math.max(...gradient.map(Math.abs))
    for (let k = 0; k < plane.length; k++) {
      const quotient = (energyOf(mesh, moved(k, STEP), 100) - energyOf(mesh, moved(k, -STEP), 100)) / (2 * STEP)
      expect(Math.abs(gradient[k] - quotient)).toBeLessThan(1e-6 * size)
    }
  })
  it('has the second derivatives that difference quotients of the gradient find, where it curves upward throughout', () => {
    // a blank larger by a fifth than the panel everywhere shrinks, and there nothing curves downward
    const large = plane.map((x) => 1.2 * x)
    const matrix = bandedOf(plane.length / 2, reach)
    gradientAt(large, matrix)
    for (let k = 0; k < plane.length; k += 3) {
      const [more, less] = [STEP, -STEP].map((by) => gradientAt(large.map((x, l) => (l === k ? x + by : x)))) as [
        Float64Array,
        Float64Array,
      ]
      const own = matrix.rows[rowStart(matrix, k) + k]
      for (let r = k; r < plane.length; r++) {
        const kept = k < firstColumn(matrix, r) ? 0 : matrix.rows[rowStart(matrix, r) + k]
        expect(Math.abs((more[r] - less[r]) / (2 * STEP) - kept)).toBeLessThan(1e-6 * own)
      }
    }
  })
  it('is without end where a triangle lies turned over, and finite for the square start', () => {
    expect(energyOf(mesh, moved(2 * (mesh.across + 2), 10), 100)).toBe(Number.POSITIVE_INFINITY)
    expect(energyOf(mesh, laidSquare(mesh), 100)).toBeLessThan(1)
  })
})
