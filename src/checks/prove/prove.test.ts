import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { sheetPattern } from '../../../tests/made-up-sheet.js'
import type { HoleList, ListUnit, OurHole } from './nouns.js'
import { provePattern } from './prove.js'

const pattern = sheetPattern()

interface Move {
  readonly mirrored: boolean
  readonly turn: number
  readonly x: number
  readonly y: number
  readonly unit: ListUnit
}
const asDrawn: Move = { mirrored: false, turn: 0, x: 0, y: 0, unit: 'mm' }

/** A list made from holes of ours by a move, told or not told its unit. */
function listOf(
  holes: readonly { readonly x: number; readonly y: number; readonly id?: string }[],
  move: Move = asDrawn,
  told = false,
): HoleList {
  const scale = move.unit === 'mm' ? 0.001 : 0.0254
  const c = Math.cos(move.turn),
    s = Math.sin(move.turn)
  const readings = holes.map((h, i) => {
    const u = move.mirrored ? -h.x : h.x
    return {
      label: h.id ?? `${i + 1}`,
      line: i + 1,
      x: (c * u - s * h.y + move.x) / scale,
      y: (s * u + c * h.y + move.y) / scale,
      diameter: null,
    }
  })
  return { name: 'list.csv', unit: told ? move.unit : null, taped: false, row: null, readings, corners: [], notes: [] }
}

/** Normal noise from a seed, by Box and Muller. */
function noisy(holes: readonly OurHole[], seed: number, sigma: number): OurHole[] {
  let state = seed >>> 0 || 1
  const uniform = (): number => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0
    return (state + 1) / 4294967297
  }
  const normal = (): number => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform())
  return holes.map((h) => ({ ...h, x: h.x + sigma * normal(), y: h.y + sigma * normal() }))
}

function shuffled<T>(items: readonly T[], seed: number): T[] {
  const out = [...items]
  let state = seed >>> 0
  for (let i = out.length - 1; i > 0; i--) {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0
    const j = state % (i + 1)
    ;[out[i], out[j]] = [out[j], out[i]]
  }
  return out
}

const moves = fc.record({
  mirrored: fc.boolean(),
  turn: fc.double({ min: -Math.PI, max: Math.PI, noNaN: true }),
  x: fc.double({ min: -5, max: 5, noNaN: true }),
  y: fc.double({ min: -5, max: 5, noNaN: true }),
  unit: fc.constantFrom<ListUnit>('mm', 'in'),
})

describe('proving a hole list', () => {
  it('recovers any move, either hand, either unit, any order, with 0.05 mm of noise', () => {
    fc.assert(
      fc.property(moves, fc.nat(), (move, seed) => {
        const list = listOf(shuffled(noisy(pattern.holes, seed, 0.00005), seed), move)
        const report = provePattern(pattern, list, 'rev')
        expect(report.verdict).toBe('agrees')
        expect(report.best!.unit).toBe(move.unit)
        expect(report.best!.placement.mirrored).toBe(move.mirrored)
        expect(report.best!.compared.every((c) => c.hole === c.label)).toBe(true)
        // sigma an axis is 0.05 mm, so the distance's root mean square is 0.05 * sqrt(2)
        expect(report.best!.rms).toBeGreaterThan(0.00006)
        expect(report.best!.rms).toBeLessThan(0.00008)
        expect(report.best!.leastWorst).toBeLessThanOrEqual(report.best!.worst)
      }),
      { numRuns: 25, seed: 7 },
    )
  }, 60_000)

  it('is undecided about a stretch of one regular row, and asks for a hole that settles it', () => {
    const row = pattern.holes.filter((h) => h.row === 'seam-3-left').slice(30, 50)
    const report = provePattern(pattern, listOf(row), 'rev')
    expect(report.verdict).toBe('undecided')
    expect(report.rivals).toBeGreaterThan(50)
    expect(report.second!.agree).toBe(20)
    expect(report.second!.compared.map((c) => c.hole)).not.toEqual(report.best!.compared.map((c) => c.hole))
    const ask = report.askFor!
    const more = listOf([...row, { id: 'asked', x: ask.listed[0] / 1000, y: ask.listed[1] / 1000 }])
    const again = provePattern(pattern, more, 'rev')
    expect(again.rivals).toBeLessThan(report.rivals)
  })

  it('settles a window ring that fits four ways with the one hole asked for', () => {
    const ring = pattern.holes.filter((h) => h.row === 'rim-RW3')
    const report = provePattern(pattern, listOf(ring), 'rev')
    expect([report.verdict, report.rivals]).toEqual(['undecided', 3])
    const ask = report.askFor!
    const more = listOf([...ring, pattern.holes.find((h) => h.id === ask.hole)!])
    expect(provePattern(pattern, more, 'rev').verdict).toBe('agrees')
  })

  it('anchors the ring by two corners of the sheet instead', () => {
    const list = {
      ...listOf(pattern.holes.filter((h) => h.row === 'rim-RW3')),
      corners: [
        [0, 0],
        [0, 1213],
      ] as const,
    }
    expect(provePattern(pattern, list, 'rev').verdict).toBe('agrees')
  })

  it('names the one hole moved by 0.5 mm and says which way', () => {
    const holes = pattern.holes.map((h, i) => (i === 100 ? { ...h, x: h.x + 0.0005 } : h))
    const report = provePattern(pattern, listOf(holes), 'rev')
    expect(report.verdict).toBe('disagrees')
    const off = report.best!.compared.filter((c) => !c.within)
    expect(off.map((c) => c.hole)).toEqual([pattern.holes[100].id])
    expect(off[0].dx).toBeCloseTo(0.0005, 5)
    expect(report.summary[0]).toBe(`665 of 666 listed holes agree within 0.3 mm; the worst is ${pattern.holes[100].id}, 0.50 mm aft.`)
  })

  it('says toward the edge where the moved hole stands at one', () => {
    const holes = pattern.holes.map((h) => (h.id === 'seam-3-left/F2-F3/7' ? { ...h, y: h.y - 0.00042 } : h))
    expect(provePattern(pattern, listOf(holes), 'rev').summary[0]).toContain('seam-3-left/F2-F3/7, 0.42 mm toward the edge')
  })

  it('names what is missing and what is extra', () => {
    const holes = pattern.holes.filter((h) => h.id !== 'hoop-F3/seam-2-left-seam-3-left/5')
    const report = provePattern(pattern, listOf([...holes, { id: 'E1', x: 1.3, y: 0.6 }, { id: 'E2', x: 2, y: 0.1 }]), 'rev')
    expect(report.missing.map((m) => m.hole)).toEqual(['hoop-F3/seam-2-left-seam-3-left/5'])
    expect(report.extra.map((e) => e.label)).toEqual(['E1', 'E2'])
    expect(report.verdict).toBe('disagrees')
    expect(report.summary).toContain('2 holes of the list are not in our pattern: E1, E2.')
    expect(report.summary).toContain('1 hole of ours is missing from the list: hoop-F3/seam-2-left-seam-3-left/5.')
  })

  it('takes a dozen readings over the sheet as a sample', () => {
    const report = provePattern(
      pattern,
      listOf(
        noisy(
          pattern.holes.filter((_, i) => i % 60 === 7),
          3,
          0.00005,
        ),
      ),
      'rev',
    )
    expect([report.verdict, report.sample, report.missing.length]).toEqual(['agrees', true, 0])
  })

  it('says a list that is evenly long is long', () => {
    const report = provePattern(pattern, listOf(pattern.holes.map((h) => ({ id: h.id, x: h.x * 1.0004, y: h.y * 1.0004 }))), 'rev')
    expect(report.verdict).toBe('disagrees')
    expect(report.best!.stretch!.perMetre).toBeCloseTo(0.0004, 5)
    expect(report.summary.join(' ')).toContain('0.40 mm a metre longer than ours all over')
  })

  it('says plainly when a list fits nowhere', () => {
    const scattered = Array.from({ length: 200 }, (_, i) => ({ x: ((i * 7919) % 3700) / 1000, y: ((i * 104729) % 1200) / 1000 }))
    const report = provePattern(pattern, listOf(scattered), 'rev')
    expect([report.verdict, report.best]).toEqual(['disagrees', null])
    expect(report.summary[0]).toContain('fits nowhere')
  })

  it('proves 1,500 holes in under a second', () => {
    const tall = {
      ...pattern,
      holes: [0, 1]
        .flatMap((k) => pattern.holes.map((h) => ({ ...h, id: `${k}-${h.id}`, y: h.y + k * 1.3 })))
        .concat(
          Array.from({ length: 168 }, (_, i) => ({
            id: `z-${i}`,
            row: 'z',
            x: 0.3 + i * 0.019,
            y: 2.6 + (i % 2) * 0.0125,
            diameter: 0.0033,
          })),
        ),
    }
    expect(tall.holes.length).toBe(1500)
    const list = listOf(noisy(tall.holes, 5, 0.00005), { mirrored: true, turn: 1, x: 2, y: 3, unit: 'in' })
    const began = performance.now()
    expect(provePattern(tall, list, 'rev').verdict).toBe('agrees')
    // the machine under test may be shared: the target is 1 s, three times that fails
    expect(performance.now() - began).toBeLessThan(3000)
  })
})
