/** What must not matter: the size of the drawing, where the coach stands, which side is called right. */
import { describe, expect, it } from 'vitest'
import { count } from '../../../tests/counts.js'
import { readExample } from '../../../tests/examples.js'
import { randomCoach } from '../../../tests/random-coach.js'
import { scaled, shifted } from '../../../tests/scale-coach.js'
import { readDefinition } from '../../definition/read-definition.js'
import type { Definition } from '../../definition/types.js'
import { outlineLength } from '../../maths/outline.js'
import { type Derived, derive } from '../index.js'
import { handsAgree, mirrored, otherHand } from './verify-mirror.js'

const SEDGES = ['sedge-4', 'sedge-6', 'sedge-8'] as const

function* randomDefinitions(wanted: number, from: number): Generator<{ seed: number; definition: Definition }> {
  for (let seed = from, found = 0; found < wanted; seed++) {
    const { definition } = readDefinition('trial.yaml', randomCoach(seed).text, () => null)
    if (!definition) continue
    found++
    yield { seed, definition }
  }
}

/** Largest miss of b from a grown k times and moved aft; sentences where they do not have the same things. */
function compare(a: Derived, b: Derived, k: number, by: number): { largest: number; where: string; wrong: string[] } {
  const wrong: string[] = []
  let largest = 0
  let where = ''
  const see = (want: number, have: number, what: string): void => {
    if (Math.abs(want - have) <= largest) return
    largest = Math.abs(want - have)
    where = what
  }
  const same = (what: string, x: readonly string[], y: readonly string[]): void => {
    if (x.join() !== y.join()) wrong.push(`${what}: ${x.filter((id) => !y.includes(id))} against ${y.filter((id) => !x.includes(id))}`)
  }
  same(
    'rows',
    a.rows.map((r) => r.id),
    b.rows.map((r) => r.id),
  )
  same(
    'parts',
    a.parts.map((p) => p.id),
    b.parts.map((p) => p.id),
  )
  if (wrong.length > 0) return { largest, where, wrong }
  a.rows.forEach((row, n) => {
    const twin = b.rows[n]
    same(
      `spans of ${row.id}`,
      row.spans.map((s) => `${s.from}-${s.to} ${s.count}`),
      twin.spans.map((s) => `${s.from}-${s.to} ${s.count}`),
    )
    row.station.forEach((x, i) => {
      see(k * x + by, twin.station[i], row.id)
      // down an end a girth is summed up in pieces, by table on a rib and afresh beside it: good to a hundredth of a millimetre
      const within = row.end ? 2e-5 : 0
      if (Math.abs(k * row.girth[i] - twin.girth[i]) > within) see(k * row.girth[i], twin.girth[i], row.id)
    })
  })
  a.parts.forEach((part, n) => {
    // a wrapped gore's bending lines are searched for: its holes are good to a ten-thousandth of a millimetre at the first coach's size
    const wrapped = part.kind === 'gore' && part.patterns.length > 0
    const apart = (want: number, have: number): void => {
      if (!wrapped || Math.abs(want - have) > k * 1e-7) see(want, have, part.id)
    }
    part.patterns.forEach((pattern, m) => {
      const twin = b.parts[n].patterns[m]
      if (pattern.holes.x.length !== twin.holes.x.length)
        wrong.push(`holes of ${part.id}: ${pattern.holes.x.length} against ${twin.holes.x.length}`)
      pattern.holes.x.forEach((x, i) => {
        apart(k * x, twin.holes.x[i])
        apart(k * pattern.holes.y[i], twin.holes.y[i])
      })
    })
    // powers round differently at another size, by a few units in the last place
    // a stretched corner is drawn in as few arcs as a micrometre allows, whatever its size: areas may differ by that all round
    const round = part.patterns.flatMap((p) => [p, ...p.cuts]).reduce((sum, p) => sum + outlineLength(p.outline), 0)
    // and a wrapped gore in chords no farther than 0.012 mm from their curve
    const chords = wrapped ? 1.2e-5 : 1e-6
    if (Math.abs(k * k * part.area - b.parts[n].area) > chords * k * round + 1e-12 * part.area)
      wrong.push(`area of ${part.id}: ${k * k * part.area} against ${b.parts[n].area}`)
  })
  return { largest, where, wrong }
}

/** The rim ring is cut to a whole tenth of a millimetre, as a shop does and no scale respects: its line is moved to suit both sizes. */
function onTheTenth(definition: Definition): Definition {
  const { shell, fasteners, rows, rules } = definition
  const edge = rules.edgeDistance * (fasteners.find((f) => f.id === rows.rim.fastener)?.diameter.value ?? 0)
  const line = Math.ceil((shell.rim.line + edge) * 1e4) / 1e4 - 5e-5 - edge
  return { ...definition, shell: { ...shell, rim: { ...shell.rim, line } } }
}

describe('size does not matter', () => {
  it.each(SEDGES)('%s at twice the size has the same fasteners at twice the places', (name) => {
    const definition = readExample(name)
    const { largest, wrong } = compare(derive(definition), derive(scaled(definition, 2)), 2, 0)
    expect(wrong).toEqual([])
    // powers round differently at another size: the ends' curves agree to a few nanometres, the barrel to a billionth
    expect(largest).toBeLessThan(1e-8)
  })

  it('nor for random coaches, doubled: a power of two, so that every rounding is alike', () => {
    const misses: string[] = []
    for (const { seed, definition } of randomDefinitions(count(15), 1000)) {
      const small = onTheTenth(definition)
      const { largest, where, wrong } = compare(derive(small), derive(scaled(small, 2)), 2, 0)
      if (wrong.length > 0 || largest >= 1e-8) misses.push(`seed ${seed}: ${largest} in ${where} ${wrong.slice(0, 2).join('; ')}`)
    }
    expect(misses).toEqual([])
  })
})

describe('standing elsewhere does not matter', () => {
  it.each(SEDGES)('%s moved 1.25 m aft has the same patterns', (name) => {
    const definition = readExample(name)
    const { largest, wrong } = compare(derive(definition), derive(shifted(definition, 1.25)), 1, 1.25)
    expect(wrong).toEqual([])
    expect(largest).toBeLessThan(1e-9)
  })
})

describe('right and left', () => {
  it.each(SEDGES)('every part of %s is its twin turned over', (name) => {
    const definition = readExample(name)
    const { largest, where } = handsAgree(derive(definition).shell, derive(mirrored(definition)).shell)
    expect(largest, where).toBeLessThan(1e-9)
  })

  it('a coach without openings but its wheels is its own mirror image', () => {
    const { shell } = derive({ ...readExample('sedge-6'), openings: [] })
    expect(handsAgree(shell, shell).largest).toBeLessThan(1e-9)
    expect(otherHand('strake-side-left')).toBe('strake-side-right')
  })

  it('the verifier sees a hole moved by a hair on one side', () => {
    const definition = { ...readExample('sedge-4'), openings: [] }
    const { shell } = derive(definition)
    const parts = shell.parts.map((part) => {
      if (part.id !== 'strake-side-left') return part
      const [pattern] = part.patterns
      return {
        ...part,
        patterns: [{ ...pattern, holes: { ...pattern.holes, x: pattern.holes.x.map((x, i) => (i === 7 ? x + 2e-6 : x)) } }],
      }
    })
    const { largest, where } = handsAgree({ ...shell, parts }, shell)
    expect(largest).toBeCloseTo(2e-6, 9)
    expect(where).toContain('strake-side-left')
  })
})
