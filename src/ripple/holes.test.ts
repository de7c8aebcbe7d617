/** Holes matched by hand: figures small enough to be counted on the fingers. */
import { describe, expect, it } from 'vitest'
import type { Design } from '../derive/design.js'
import type { FastenerRow, Pattern } from '../derive/nouns.js'
import { holeChanges } from './holes.js'

type SpanOf = readonly [from: string, to: string, places: readonly number[]]

/** A row of holes along x in spans, and a face that holds them all, its y and diameter the same. m. */
function face(spans: readonly SpanOf[], diameter = 0.0033): { readonly design: Design; readonly pattern: Pattern } {
  const x = spans.flatMap(([, , places]) => places)
  const row = {
    id: 'hoop-F6',
    pitch: 0.0381,
    spans: spans.map(([from, to]) => ({ from, to })),
    span: spans.flatMap(([, , places], k) => places.map(() => k)),
  } as unknown as FastenerRow
  const same = (value: number): number[] => x.map(() => value)
  const holes = { rows: ['hoop-F6'], row: same(0), index: x.map((_, i) => i), x, y: same(0), diameter: same(diameter) }
  return { design: { rows: [row] } as unknown as Design, pattern: { holes } as unknown as Pattern }
}

const changes = (a: ReturnType<typeof face>, b: ReturnType<typeof face>, shift: readonly [number, number] = [0, 0]) =>
  holeChanges(a.design, b.design, a.pattern, b.pattern, shift)

describe('holes of one row before and after', () => {
  const five = face([['seam-1', 'seam-2', [0, 0.04, 0.08, 0.12, 0.16]]])

  it('are none where every hole stands, and where the sheet is laid shifted', () => {
    expect(changes(five, face([['seam-1', 'seam-2', [0, 0.04, 0.08, 0.12, 0.16]]]))).toEqual([])
    expect(changes(five, face([['seam-1', 'seam-2', [0.61, 0.65, 0.69, 0.73, 0.77]]]), [-0.61, 0])).toEqual([])
  })

  it('are moved where a span is fitted to another pitch, in order', () => {
    const fitted = face([['seam-1', 'seam-2', [0, 0.041, 0.082, 0.123, 0.164]]])
    expect(changes(five, fitted)).toEqual([{ row: 'hoop-F6', added: 0, removed: 0, moved: 4, by: expect.closeTo(0.004, 12), resized: 0 }])
  })

  it('take in one more where it costs least: the others move by less than a pitch', () => {
    const six = face([['seam-1', 'seam-2', [0, 0.032, 0.064, 0.096, 0.128, 0.16]]])
    // by hand: 0 and 160 stand; 40, 80, 120 go to 32, 64 or 96, 128: 8 + 16 + 8 mm, the sixth is new
    expect(changes(five, six)).toEqual([{ row: 'hoop-F6', added: 1, removed: 0, moved: 3, by: expect.closeTo(0.016, 12), resized: 0 }])
    expect(changes(six, five)).toEqual([{ row: 'hoop-F6', added: 0, removed: 1, moved: 3, by: expect.closeTo(0.016, 12), resized: 0 }])
  })

  it('stand though an opening breaks their span in two, and only what it takes is gone', () => {
    const broken = face([
      ['seam-1', 'RW3', [0, 0.04]],
      ['RW3', 'seam-2', [0.16]],
    ])
    expect(changes(five, broken)).toEqual([{ row: 'hoop-F6', added: 0, removed: 2, moved: 0, by: 0, resized: 0 }])
  })

  it('do not move by less than a micron, and are told apart by their diameter', () => {
    const near = face([['seam-1', 'seam-2', [5e-7, 0.04, 0.08, 0.12, 0.16]]])
    expect(changes(five, near)).toEqual([])
    const wide = face([['seam-1', 'seam-2', [0, 0.04, 0.08, 0.12, 0.16]]], 0.0041)
    expect(changes(five, wide)).toEqual([{ row: 'hoop-F6', added: 0, removed: 0, moved: 0, by: 0, resized: 5 }])
  })
})
