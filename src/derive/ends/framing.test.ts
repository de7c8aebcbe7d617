/** Headers, sills and posts round openings of the ends, against the rim's rivets in space and the ribs they run to. */
import { describe, expect, it } from 'vitest'
import { readExample } from '../../../tests/examples.js'
import { derive } from '../index.js'
import type { FastenerRow, Part } from '../nouns.js'

const coach = derive(readExample('sedge-8'))
const part = (id: string): Part => {
  const found = coach.parts.find((p) => p.id === id)
  if (!found) throw new Error(`no part ${id}`)
  return found
}
const row = (id: string): FastenerRow => {
  const found = coach.rows.find((r) => r.id === id)
  if (!found) throw new Error(`no row ${id}`)
  return found
}
/** Where a fastener of an end's row stands on the outer face, m. */
const inSpace = (of: FastenerRow, i: number): readonly [number, number, number] => [
  of.station[i],
  of.end?.y[i] ?? Number.NaN,
  of.waterline?.[i] ?? Number.NaN,
]
const apart = (a: readonly number[], b: readonly number[]): number => Math.hypot(...a.map((x, k) => x - b[k]))

const ANGLES = ['header-NW1', 'sill-NW1', 'post-NW1-right', 'post-NW1-left', 'header-TW1', 'sill-TW1'] as const

describe('framing of openings in the ends', () => {
  it.each(ANGLES)('%s takes the rim rivets of its straight, as far apart as they stand in space less the bend', (id) => {
    const [face] = part(id).patterns
    const rim = row(`rim-${id.split('-')[1]}`)
    const { x, y, index } = face.holes
    expect(index.length).toBeGreaterThan(4)
    for (let k = 1; k < index.length; k++) {
      const [i, j] = [index[k - 1], index[k]]
      const chord = apart(inSpace(rim, i), inSpace(rim, j))
      const flat = Math.hypot(x[k] - x[k - 1], y[k] - y[k - 1])
      // its mid surface lies 3.1 mm inside a skin of some 1 to 4 m radius: shorter by 3 in a thousand, never longer than the arc outside
      expect(Math.abs(flat / chord - 1)).toBeLessThan(0.004)
    }
    // every hole keeps the shop's edge distance of 2 D from the leg's edges and ends
    const [[x0, y0], , [x1, y1]] = face.outline
    for (let k = 0; k < x.length; k++) expect(Math.min(x[k] - x0, x1 - x[k], y[k] - y0, y1 - y[k])).toBeGreaterThan(2 * 0.003175 - 1e-9)
  })

  it('stands in the grip of the rivets on the straights and not of those in the corners', () => {
    const rim = row('rim-NW1')
    const framed = new Set(ANGLES.slice(0, 4).flatMap((id) => part(id).patterns[0].holes.index))
    rim.stack.forEach((s, i) => {
      const { parts, grip, thickness } = rim.stacks[s]
      expect(parts.some((p) => /^(header|sill|post)-NW1/.test(p))).toBe(framed.has(i))
      expect(grip).toBeCloseTo(
        thickness.reduce((a, b) => a + b, 0),
        12,
      )
    })
    expect(framed.size).toBeGreaterThan(rim.stack.length / 2)
    expect(framed.size).toBeLessThan(rim.stack.length)
  })

  it('reads the same on both hands: a post on the left is the one on the right, turned over', () => {
    const [right, left] = [part('post-NW1-right'), part('post-NW1-left')].map((p) => p.patterns[0])
    expect(left.holes.x.length).toBe(right.holes.x.length)
    const sorted = (xs: readonly number[]): number[] => [...xs].sort((a, b) => a - b)
    const downLeft = sorted(left.holes.x)
    sorted(right.holes.x).forEach((x, k) => {
      expect(downLeft[k]).toBeCloseTo(x, 9)
    })
    left.holes.y.forEach((y, k) => {
      expect(y).toBeCloseTo(0.025 - right.holes.y[k], 9)
    })
  })

  it('is named by its opening, with the rib it carries', () => {
    const opening = coach.openings.find((o) => o.id === 'NW1')
    expect(opening?.framing).toEqual(ANGLES.slice(0, 4))
    expect(opening?.cutsFrames).toEqual(['nose-mid-rib-4'])
    expect(opening?.trimRing).toBe('trim-NW1')
  })

  it('runs from rib to rib: as far as the rivets of the ribs beside it stand apart, less half a flange and the gap at each end', () => {
    const header = part('header-NW1')
    // two legs of 25 mm in 1 mm of 5052 at 2680 kg/m3
    const long = header.mass.value / ((2 * 0.025 - 0.001) * 0.001 * 2680)
    const z = 1.403
    const at = (id: string): readonly [number, number, number] => {
      const rib = row(id)
      const nearest = (rib.waterline ?? []).reduce((best, w, i, all) => (Math.abs(w - z) < Math.abs(all[best] - z) ? i : best), 0)
      return inSpace(rib, nearest)
    }
    const between = apart(at('nose-seam-3'), at('nose-seam-4'))
    // a chord over some 900 mm of skin falls 1 % short at most
    const { frame, memberGap } = readExample('sedge-8').shell
    const clear = 2 * (frame.flange / 2 - frame.rowOffset + memberGap)
    expect(long / (between - clear)).toBeGreaterThan(0.98)
    expect(long / (between - clear)).toBeLessThan(1.03)
  })
})
