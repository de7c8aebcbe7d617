import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readDefinition } from '../../definition/read-definition.js'
import { holesOf } from '../../derive/holes.js'
import type { Part } from '../../derive/nouns.js'
import { design as designOf } from '../index.js'
import type { HoleList } from './nouns.js'
import { prove } from './prove-part.js'

const file = new URL('../../../examples/sedge-6.yaml', import.meta.url).pathname
const design = designOf(readDefinition(file, readFileSync(file, 'utf8'), (path) => readFileSync(path, 'utf8')).definition!)
const sheets = design.parts.filter((p) => p.kind === 'strake').map((p) => p.id)
const partOf = (id: string): Part => design.parts.find((p) => p.id === id)!

interface Listed {
  readonly x: number
  readonly y: number
  readonly id: string
}
interface Move {
  readonly mirrored: boolean
  readonly turn: number
  readonly x: number
  readonly y: number
  readonly inch: boolean
  readonly seed: number
}

/** Uniform numbers from a seed; what they are used for is shuffled by it too. */
function chance(seed: number): () => number {
  let state = seed >>> 0 || 1
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0
    return (state + 0.5) / 4294967296
  }
}

function listed(holes: readonly Listed[], move: Move, sigma: number): HoleList {
  const next = chance(move.seed)
  const normal = (): number => sigma * Math.sqrt(-2 * Math.log(next())) * Math.cos(2 * Math.PI * next())
  const [c, s, scale] = [Math.cos(move.turn), Math.sin(move.turn), move.inch ? 0.0254 : 0.001]
  const readings = holes.map((h, i) => {
    const [x, y] = [(move.mirrored ? -1 : 1) * (h.x + normal()), h.y + normal()]
    return { label: h.id, line: i + 1, x: (c * x - s * y + move.x) / scale, y: (s * x + c * y + move.y) / scale, diameter: null }
  })
  const shuffled = readings
    .map((r) => [next(), r] as const)
    .sort((a, b) => a[0] - b[0])
    .map(([, r]) => r)
  return { name: 'list', unit: null, taped: false, row: null, readings: shuffled, corners: [], notes: [] }
}

const moves = fc.record({
  mirrored: fc.boolean(),
  turn: fc.double({ min: -4, max: 4, noNaN: true }),
  x: fc.double({ min: -9, max: 9, noNaN: true }),
  y: fc.double({ min: -9, max: 9, noNaN: true }),
  inch: fc.boolean(),
  seed: fc.nat(),
})

describe('proving the sheets of a real coach', () => {
  it('finds any of them again, moved, turned, mirrored, in either unit, shuffled and with noise', () => {
    fc.assert(
      fc.property(fc.constantFrom(...sheets), moves, (id, move) => {
        const part = partOf(id)
        const { report } = prove(design, part.id, listed(holesOf(design, part, part.patterns[0]), move, 0.00005))
        expect(report!.verdict).toBe('agrees')
        expect([report!.best!.agree, report!.best!.unit]).toEqual([report!.best!.of, move.inch ? 'in' : 'mm'])
        // a sheet that is its own mirror image cannot tell the hand, and the report says so
        if (!report!.selfAlike) {
          expect(report!.best!.compared.every((c) => c.hole === c.label)).toBe(true)
          expect(report!.best!.placement.mirrored).toBe(move.mirrored)
        }
      }),
      { numRuns: 20, seed: 11 },
    )
  }, 60_000)

  it('never agrees in the wrong place: a few holes are paired rightly, or it says it cannot decide', () => {
    const some = fc.array(fc.nat(), { minLength: 2, maxLength: 14 })
    fc.assert(
      fc.property(fc.constantFrom(...sheets), moves, some, (id, move, picks) => {
        const part = partOf(id)
        const holes = holesOf(design, part, part.patterns[0])
        const chosen = [...new Set(picks.map((p) => p % holes.length))].map((i) => holes[i])
        fc.pre(chosen.length > 1)
        const { report } = prove(design, part.id, listed(chosen, move, 0.00004))
        expect(report!.best!.agree).toBe(chosen.length)
        if (report!.verdict === 'undecided') expect(report!.second!.agree).toBe(chosen.length)
        else if (!report!.selfAlike) expect(report!.best!.compared.every((c) => c.hole === c.label)).toBe(true)
      }),
      { numRuns: 60, seed: 12 },
    )
  }, 60_000)

  it('knows the left sheet from the right one', () => {
    const [left, right] = ['left', 'right'].map((side) => design.parts.find((p) => p.id === `strake-side-${side}`)!)
    const asDrawn: Move = { mirrored: false, turn: 0, x: 0, y: 0, inch: false, seed: 1 }
    const { report } = prove(design, right.id, listed(holesOf(design, left, left.patterns[0]), asDrawn, 0))
    expect(report!.verdict).toBe('disagrees')
    const all = left.patterns[0].holes.x.length
    expect(report!.summary.at(-1)).toBe(`It looks like a list of another part: ${all} of its ${all} holes agree with strake-side-left.`)
  })

  it('takes the face of a frame that the list fits', () => {
    const frame = design.parts.find((p) => p.id === 'frame-F3')!
    const inner = frame.patterns.find((p) => p.face === 'inner flange')!
    const { report } = prove(
      design,
      frame.id,
      listed(holesOf(design, frame, inner), { mirrored: false, turn: 1, x: 0, y: 0, inch: false, seed: 5 }, 0),
    )
    expect([report!.face, report!.best!.agree]).toEqual(['inner flange', inner.holes.x.length])
  })
})
