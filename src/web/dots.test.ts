/** Dots set into pixels against plain areas; no source but geometry. */
import { describe, expect, it } from 'vitest'
import { colourOf, setDots } from './dots.js'

const SIZE = { width: 12, height: 8 }
const covered = (places: readonly number[], side: number, perX = 1): number[] => {
  const pixels = new Uint32Array(SIZE.width * SIZE.height)
  setDots(pixels, SIZE, Float32Array.from(places), { x0: 0, y0: 8, perX, perY: -1 }, side, 0x112233)
  return [...pixels].map((pixel) => pixel >>> 24)
}
const sum = (all: readonly number[]): number => all.reduce((a, b) => a + b, 0)

describe('dots', () => {
  it('fill the pixels they stand on, up being up', () => {
    const pixels = covered([3, 2], 2)
    expect(pixels.flatMap((each, i) => (each > 0 ? [[i % 12, Math.floor(i / 12), each]] : []))).toEqual([
      [2, 5, 255],
      [3, 5, 255],
      [2, 6, 255],
      [3, 6, 255],
    ])
  })

  it('cover what they cover wherever they stand between pixels', () => {
    for (const [x, y] of [
      [4.25, 3.5],
      [5.9, 4.1],
      [6.5, 2.75],
    ])
      for (const side of [1, 1.7, 3]) expect(sum(covered([x, y], side)) / 255).toBeCloseTo(side * side, 1)
  })

  it('cover nothing twice, and nothing off the picture', () => {
    expect(covered([3, 2, 3, 2], 2)).toEqual(covered([3, 2], 2))
    expect(sum(covered([-5, 2, 30, 2, 3, -9, 3, 40], 2))).toBe(0)
    expect(sum(covered([0, 4], 2)) / 255).toBeCloseTo(2, 6)
    expect(sum(covered([-3, 4], 2, -1)) / 255).toBeCloseTo(4, 6)
  })

  it('have the colour they are given, its bytes in the order of pixels', () => {
    expect(colourOf('#6d6a64')).toBe(0x646a6d)
    const pixels = new Uint32Array(4)
    setDots(pixels, { width: 2, height: 2 }, Float32Array.of(1, 1), { x0: 0, y0: 2, perX: 1, perY: -1 }, 2, colourOf('#6d6a64'))
    expect([...new Uint8Array(pixels.buffer, 0, 4)]).toEqual([0x6d, 0x6a, 0x64, 255])
  })
})
