import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { sampleDesign } from '../../../tests/made-up-design.js'
import { numberRuns } from './clamp-zone.js'
import { coordinateProgram } from './coordinate-program.js'
import { holeTableCsv } from './hole-table.js'
import { readCoordinateProgram } from './read-coordinate-program.js'
import { readHoleTable } from './read-hole-table.js'
import { DEFAULT_TOOLS } from './tool-table.js'
import { shortRoute, travelOf } from './traverse.js'
import type { WordTable } from './word-table.js'
import { DEFAULT_WORDS, wordTableFaults } from './word-table.js'

const { design, part, pattern } = sampleDesign()
const table = holeTableCsv(design, part, pattern)
const program = coordinateProgram(design, part, pattern, table)
const shop: WordTable = {
  ...DEFAULT_WORDS,
  name: 'our punch',
  start: 'G21 G90',
  move: 'G0 X{x} Y{y}',
  tool: 'T{tool}',
  hit: 'M75',
  dwell: 'G04 P{seconds}',
  dwellSeconds: 0.2,
  end: 'M30',
}

describe('coordinate program', () => {
  it.each([
    ['default words', DEFAULT_WORDS],
    ["a shop's own words", shop],
  ])('hits every hole of the table once, with its tool: %s', (_, words) => {
    const { text } = coordinateProgram(design, part, pattern, table, { words })
    const back = readCoordinateProgram(text, words)
    expect(back.faults).toEqual([])
    expect(back.ended).toBe(true)
    expect(back.checksum).toBe(table.checksum)
    const byNumber = new Map(readHoleTable(table.text).rows.map((r) => [r.no, r]))
    expect(back.hits.map((h) => h.hole).sort((a, b) => a! - b!)).toEqual([...byNumber.keys()])
    for (const h of back.hits) {
      const row = byNumber.get(h.hole!)!
      expect([h.x, h.y, h.tool]).toEqual([row.x, row.y, row.tool])
    }
  })

  it('says at its head what a person must know before metal', () => {
    const says = readCoordinateProgram(program.text).remarks.join('\n')
    for (const words of [
      'REVISION: 0123456789AB',
      'SEEN FROM OUTSIDE',
      'THE STANDARD HAS NO WORD FOR A PUNCH HIT',
      'CHECK BEFORE METAL: DRY RUN, CLAMPS, FIRST-OFF',
      'HOLES: 666',
      'LOW Y EDGE, MARGIN 25.0 MM',
    ]) {
      expect(says).toContain(words)
    }
    expect(program.text).toMatch(/^%\n[\s\S]*\n%\n$/)
    expect(program.text).toMatch(/^[\n -~]*$/)
  })

  it('names the holes that stand under the clamps', () => {
    const near = table.rows.filter((r) => r.y < 0.025)
    expect(program.text.toUpperCase()).toContain(`${near.length} HOLES STAND IN IT`)
    expect(near.length).toBeGreaterThan(100)
    expect(coordinateProgram(design, part, pattern, table, { clamped: 'high x' }).text).toContain('HIGH X EDGE')
  })

  it('stops before holes that have no tool, and loses none', () => {
    const tools = DEFAULT_TOOLS.slice(1)
    const short = holeTableCsv(design, part, pattern, { tools })
    const { text } = coordinateProgram(design, part, pattern, short, { tools })
    expect(text).toMatch(/M00 \(FIT A 2\.50 MM TOOL: THE TOOL TABLE HAS NONE\)/)
    const back = readCoordinateProgram(text)
    expect(back.hits.length).toBe(666)
    expect(back.hits.filter((h) => h.tool === null).length).toBe(60)
  })

  it('travels less than the table order and no farther than three times the sheet a hole', () => {
    expect(program.travel).toBeLessThan(
      travelOf(
        table.rows,
        table.rows.map((_, i) => i),
        { x: 0, y: 0 },
      ),
    )
    expect(new Set(program.order).size).toBe(666)
  })

  it('refuses a word table that cannot make a program', () => {
    expect(wordTableFaults(DEFAULT_WORDS)).toEqual([])
    expect(wordTableFaults({ ...DEFAULT_WORDS, move: 'G00 X{x}', hit: '' })).toEqual([
      'The word table "ISO 6983 words, no hit" has no {y} in its word for move: write it where the number belongs.',
      'The word table "ISO 6983 words, no hit" has no word for hit. Write your machine\'s word.',
    ])
    expect(() => coordinateProgram(design, part, pattern, table, { words: { ...DEFAULT_WORDS, move: 'G00 X{x} Y{y} Z{z}' } })).toThrow(
      '{z}',
    )
  })

  it('reads inch and incremental blocks, and says when a hit has no place', () => {
    const back = readCoordinateProgram('G70 G91\nG00 X1 Y1 (HIT)\nG00 X1 (HIT)\n')
    expect(back.hits.map((h) => [h.x, h.y])).toEqual([
      [0.0254, 0.0254],
      [0.0508, 0.0254],
    ])
    expect(readCoordinateProgram('G71 G90\nG00 X1 (HIT)\n').faults[0]).toContain('Line 2 hits before')
  })

  it('visits every spot once whatever they are', () => {
    const spot = fc.record({ x: fc.double({ min: -4, max: 4, noNaN: true }), y: fc.double({ min: -2, max: 2, noNaN: true }) })
    fc.assert(
      fc.property(fc.array(spot, { maxLength: 40 }), (spots) => {
        const order = shortRoute(spots, { x: 0, y: 0 })
        expect([...order].sort((a, b) => a - b)).toEqual(spots.map((_, i) => i))
      }),
      { numRuns: 200, seed: 3 },
    )
  })

  it('says runs of numbers shortly', () => {
    expect(numberRuns([4, 1, 2, 3, 7, 9, 10])).toBe('1-4, 7, 9-10')
  })
})
