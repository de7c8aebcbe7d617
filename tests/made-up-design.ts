/** A small made-up design for the tests of the text documents: one side sheet with a notch, a window and a bend. */

import type { Design } from '../src/derive/design.js'
import type { Part, Pattern } from '../src/derive/nouns.js'
import { sheetPattern } from './made-up-sheet.js'

export function sampleDesign(): { readonly design: Design; readonly part: Part; readonly pattern: Pattern } {
  const ours = sheetPattern()
  const rows = [...new Set(ours.holes.map((h) => h.row))]
  const spans = [...new Set(ours.holes.map((h) => h.id.split('/')[1]))]
  const index = new Map<string, number>()
  const count = (row: string): number => {
    const n = index.get(row) ?? 0
    index.set(row, n + 1)
    return n
  }
  const pattern: Pattern = {
    face: 'sheet',
    flat: ours.flat,
    thickness: 0.00081,
    outline: ours.outline,
    cuts: [
      { opening: 'RW3', outline: ours.cuts[0] },
      {
        opening: 'wheel',
        outline: [
          [2, 0, 0],
          [2.5, 0, 0],
          [2.5, 0.14, Math.tan(Math.PI / 8)],
          [2.44, 0.2, 0],
          [2.06, 0.2, Math.tan(Math.PI / 8)],
          [2, 0.14, 0],
        ],
      },
    ],
    marks: [
      { says: 'roll starts', kind: 'roll', from: [0, 0.3], to: [3.735, 0.3] },
      { says: 'bend up 55 degrees', kind: 'bend', from: [0, 0.02], to: [3.735, 0.02] },
      { says: 'frame F4', kind: 'centre', from: [1.8675, 0], to: [1.8675, 1.213] },
    ],
    holes: {
      rows,
      row: ours.holes.map((h) => rows.indexOf(h.row)),
      index: ours.holes.map((h) => count(h.row)),
      x: ours.holes.map((h) => h.x),
      y: ours.holes.map((h) => h.y),
      diameter: ours.holes.map((h) => (h.row.startsWith('rim') ? 0.0025 : h.diameter)),
    },
  }
  const part = {
    id: 'strake-side-left',
    says: 'side strake',
    trade: 'shell',
    kind: 'strake',
    material: '5052-H34',
    thickness: { name: '0.81 mm', value: 0.00081 },
    side: 'left',
    place: { side: 'left', station: 4.83, girth: 2.009, waterline: 0.91 },
    patterns: [pattern],
    area: 4,
    centre: [4.83, -1.18, 0.9],
    stock: '48 in x 152 in',
    pieces: 1,
    notes: [],
  } as unknown as Part
  const fastenerRows = rows.map((id) => {
    const mine = ours.holes.filter((h) => h.row === id)
    return {
      id,
      says: id,
      kind: 'seam',
      joint: id,
      fastener: 'S4',
      diameter: 0.003175,
      pitch: 0.0254,
      spans: spans.map((s) => ({ from: s.split('-')[0], to: s.split('-').slice(1).join('-'), first: 0, count: 0, pitch: 0.0254 })),
      span: mine.map((h) => spans.indexOf(h.id.split('/')[1])),
      number: mine.map((h) => Number(h.id.split('/')[2])),
      station: mine.map((h) => 2.9625 + h.x),
      girth: mine.map((h) => -2.6155 + h.y),
      waterline: mine.map((h) => 0.3 + h.y),
      stack: mine.map(() => 0),
      stacks: [],
      shared: {},
      source: '',
    }
  })
  const design = {
    definition: {
      coach: { name: 'Tester 3', family: 'Tester', maker: 'A Shop', market: 'us', date: '2026-03-02' },
      rules: { clampMargin: 0.025 },
      fasteners: [{ id: 'S4', hole: 0.0033, pilot: 0.0025 }],
      section: { chain: [] },
    },
    revision: '0123456789ab',
    parts: [part],
    rows: fastenerRows,
    joints: [],
    openings: [],
    checks: [],
  } as unknown as Design
  return { design, part, pattern }
}
