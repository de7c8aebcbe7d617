import { describe, expect, it } from 'vitest'
import { chordsAt, type Point, regionOf } from './region.js'

const square = (x0: number, y0: number, x1: number, y1: number): Point[] => [
  [x0, y0],
  [x1, y0],
  [x1, y1],
  [x0, y1],
]
const areaOf = (piece: readonly Point[]): number =>
  piece.reduce((sum, [x, y], i) => {
    const [nx, ny] = piece[(i + 1) % piece.length]
    return sum + (x * ny - nx * y) / 2
  }, 0)
const area = (pieces: readonly (readonly Point[])[]): number => pieces.reduce((sum, piece) => sum + areaOf(piece), 0)
const round = (boundary: ReturnType<typeof regionOf>['boundary']): number =>
  boundary.reduce((sum, [p, q]) => sum + Math.hypot(q[0] - p[0], q[1] - p[1]), 0)

describe('a region between outlines', () => {
  it('is its outline less its hole, whatever levels and columns part it', () => {
    const region = regionOf([square(0, 0, 4, 3), square(1, 1, 2, 2)], [0.5, 1.5, 2.7], [0.3, 1.5, 3.9])
    expect(area(region.pieces)).toBeCloseTo(4 * 3 - 1, 12)
    expect(round(region.boundary)).toBeCloseTo(2 * (4 + 3) + 4, 12)
    for (const piece of region.pieces) expect(areaOf(piece)).toBeGreaterThan(0)
  })
  it('takes a notch off the edge it lies on, and the stretch of edge with it', () => {
    const region = regionOf([square(0, 0, 4, 3), square(1, 2, 2, 3)], [], [])
    expect(area(region.pieces)).toBeCloseTo(4 * 3 - 1, 12)
    // the notch adds its two sides; its bottom stands for the edge it took
    expect(round(region.boundary)).toBeCloseTo(2 * (4 + 3) + 2, 12)
  })
  it('draws no line where two outlines lie on each other', () => {
    const region = regionOf([square(0, 0, 1, 1), square(1, 0, 3, 1)], [], [])
    expect(area(region.pieces)).toBeCloseTo(3, 12)
    expect(round(region.boundary)).toBeCloseTo(2 * (3 + 1), 12)
  })
  it('says what of a level is inside', () => {
    expect(chordsAt([square(0, 0, 4, 3), square(1, 1, 2, 2)], 1.5).map(([a, b]) => [a, b])).toEqual([
      [0, 1],
      [2, 4],
    ])
    expect(chordsAt([square(0, 0, 4, 3)], 5)).toEqual([])
  })
})
