import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  clipToRectangle,
  distanceToOutline,
  insideOutline,
  moveOutline,
  outlineArea,
  outlineLength,
  reverseOutline,
  roundedRectangle,
} from './outline.js'

describe('an outline of lines and arcs', () => {
  it('a rounded rectangle has the area and length of its formula', () => {
    const o = roundedRectangle(0, 0, 3, 2, 0.5)
    expect(outlineArea(o)).toBeCloseTo(6 - (4 - Math.PI) * 0.25, 12)
    expect(outlineLength(o)).toBeCloseTo(10 - 8 * 0.5 + Math.PI, 12)
    expect(outlineArea(reverseOutline(o))).toBeCloseTo(-outlineArea(o), 12)
    expect(
      outlineArea(
        moveOutline(
          o,
          (x) => 9 - x,
          (y) => y,
          true,
        ),
      ),
    ).toBeCloseTo(outlineArea(o), 12)
  })

  it('a corner cut at 45 degrees keeps the exact circular segment', () => {
    const circle = roundedRectangle(-1, -1, 1, 1, 1)
    const half = clipToRectangle(circle, -2, 0, 2, 2)
    expect(outlineArea(half)).toBeCloseTo(Math.PI / 2, 12)
    const cap = clipToRectangle(circle, -2, 0.5, 2, 2)
    expect(outlineArea(cap)).toBeCloseTo(Math.acos(0.5) - 0.5 * Math.sqrt(0.75), 12)
  })

  it('parts on either side of any line add up to the whole, and points agree with the clip', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 2, noNaN: true }),
        fc.double({ min: 0.05, max: 2, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: -0.2, max: 2.2, noNaN: true }),
        fc.double({ min: -0.2, max: 2.2, noNaN: true }),
        (w, h, r, cx, cy) => {
          const o = roundedRectangle(0, 0, w, h, r)
          const far = 9
          const quarters: [number, number, number, number][] = [
            [-far, -far, cx, cy],
            [cx, -far, far, cy],
            [-far, cy, cx, far],
            [cx, cy, far, far],
          ]
          const sum = quarters.reduce((s, q) => s + outlineArea(clipToRectangle(o, ...q)), 0)
          expect(sum).toBeCloseTo(outlineArea(o), 9)
          if (distanceToOutline(o, cx, cy) > 1e-9) {
            const rr = Math.min(r, w / 2, h / 2)
            const dx = Math.max(rr - cx, cx - (w - rr), 0)
            const dy = Math.max(rr - cy, cy - (h - rr), 0)
            const inside = cx > 0 && cx < w && cy > 0 && cy < h && (dx === 0 || dy === 0 || Math.hypot(dx, dy) < rr)
            expect(insideOutline(o, cx, cy)).toBe(inside)
          }
        },
      ),
      { numRuns: 2000, seed: 7 },
    )
  })
})
