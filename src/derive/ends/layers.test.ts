import { describe, expect, it } from 'vitest'
import type { Ground } from './ground.js'
import { goresAt } from './layers.js'

/** Seven gores, the middle one narrower near the crown than a lap is wide. */
const edges = [Math.PI / 2, 0.73, 0.638, 0.0185, -0.0185, -0.638, -0.73, -Math.PI / 2]
const ground = { edges, gores: 7, input: { ends: { lap: 0.03 } } } as unknown as Ground

const at = (phi: number, r = 0.36): number[] =>
  goresAt(ground, { phi, point: [r * Math.cos(phi), r * Math.sin(phi), 2.8] }).sort((a, b) => a - b)

describe('the gores at a place', () => {
  it('are those of the seam it stands on, on whichever side of it a rounding puts it', () => {
    for (const hair of [-1e-15, 0, 1e-15]) {
      expect(at(-0.0185 + hair)).toEqual([4, 5])
      expect(at(0.0185 + hair)).toEqual([3, 4])
    }
  })
  it('are those of the nearer seam where both are within half a lap', () => {
    expect(at(0.01)).toEqual([3, 4])
    expect(at(-0.01)).toEqual([4, 5])
    expect(at(0)).toEqual([3, 4])
  })
  it('is one alone where the gore is wide', () => {
    expect(at(0, 2)).toEqual([4])
    expect(at(0.3)).toEqual([3])
  })
})
