/** Whatever is written, the door answers with a definition or with faults in sentences, and never throws. */

import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type ReadDefinition, readDefinition } from './read-definition.js'

const path = 'examples/sedge-6.yaml'
const files = new Map(
  ['sedge-6', 'sedge.family', 'sedge-6.masses'].map((n) => [`examples/${n}.yaml`, readFileSync(`examples/${n}.yaml`, 'utf8')]),
)
const family = files.get('examples/sedge.family.yaml') as string
// the long list of masses would make every run slow and is no different from the openings
const coach = (files.get(path) as string).replace('[sedge.family.yaml, sedge-6.masses.yaml]', 'sedge.family.yaml')
const load = (p: string): string | null => files.get(p) ?? null

function sound({ definition, faults }: ReadDefinition): void {
  expect(definition === null).toBe(faults.length > 0)
  for (const f of faults) {
    expect(f.says, f.says).toMatch(/^[\s\S]*: [\s\S]+[.?]$/)
    expect(f.says).not.toMatch(/undefined|NaN|\[object|Infinity/)
    expect(f.line).toBeGreaterThan(0)
    expect(f.column).toBeGreaterThan(0)
    const text = f.file === path ? null : files.get(f.file)
    if (text) expect(f.line).toBeLessThanOrEqual(text.split('\n').length)
  }
}

const SCRAPS = [
  '0 mm',
  '-1 mm',
  '1e400 mm',
  '1e9999 mm',
  '520',
  'null',
  '~',
  '[]',
  '{}',
  '"',
  "'",
  '&a',
  '*a',
  '!x',
  '%',
  '@',
  '__proto__',
  'constructor: 1',
  '<<: 1',
  ': ',
  '- ',
  '\t',
  '\n',
  '#',
  '{',
  '}',
  '[',
  ']',
  ',',
  '|',
  '>',
  '---',
  '...',
  '? ',
  'none',
  'fit',
  'yes',
  '1/0 in',
  '99999999999999999999 mm',
  '\u0000',
  '\ufeff',
  '90 deg',
  'é',
]

describe('anything at all', () => {
  it('answers to text with scraps put in', () => {
    const scrap = fc.tuple(fc.nat(), fc.nat(12), fc.constantFrom(...SCRAPS))
    fc.assert(
      fc.property(fc.boolean(), fc.array(scrap, { minLength: 1, maxLength: 4 }), (inFamily, scraps) => {
        let text = inFamily ? family : coach
        for (const [where, cut, what] of scraps) {
          const i = where % (text.length + 1)
          text = text.slice(0, i) + what + text.slice(i + cut)
        }
        if (inFamily) sound(readDefinition(path, coach, (p) => (p === 'examples/sedge.family.yaml' ? text : load(p))))
        else sound(readDefinition(path, text, load))
      }),
      { numRuns: 150 },
    )
  })

  it('answers to any value in place of any other', () => {
    const values = [...coach.matchAll(/: ([^,{}[\]\n]+)(?=[,}\n])/g)].filter((m) => m.index > coach.indexOf('frames:'))
    const figure = fc.oneof(
      fc.constantFrom(...SCRAPS),
      fc.integer({ min: -4000, max: 9000 }).map((n) => `${n} mm`),
      fc.integer({ min: -10, max: 300 }).map((n) => `${n} deg`),
    )
    fc.assert(
      fc.property(fc.constantFrom(...values), figure, (m, written) => {
        const at = m.index + 2
        sound(readDefinition(path, coach.slice(0, at) + written + coach.slice(at + m[1].length), load))
      }),
      { numRuns: 150 },
    )
  })

  it('answers to sections of any shape', () => {
    const arc = fc
      .tuple(fc.integer({ min: -500, max: 9000 }), fc.integer({ min: -20, max: 200 }))
      .map(([r, to]) => `{arc: a, radius: ${r} mm, to: ${to} deg}`)
    const line = fc.integer({ min: -10, max: 3000 }).map((l) => `{line: l, length: ${l} mm}`)
    const fitted = fc.constantFrom('{line: l, length: fit}', '{arc: a, radius: 300 mm, to: fit}')
    const fit = fc.constantFrom('', ', fit: {width: 2392 mm}', ', fit: {height: 2000 mm, belt: 600 mm}', ', fit: none')
    fc.assert(
      fc.property(fc.array(fc.oneof(arc, arc, line, fitted), { maxLength: 5 }), fit, (chain, sizes) => {
        sound(readDefinition(path, `${coach}section: {chain: [${chain.join(', ')}]${sizes}}\n`, load))
      }),
      { numRuns: 150 },
    )
  })

  it('answers to a million brackets', () => {
    const { faults } = readDefinition(path, `schema: 1\nx: ${'['.repeat(100_000)}`, load)
    expect(faults).toHaveLength(1)
  })

  it('takes keys no object should take as keys like any other', () => {
    const { faults } = readDefinition(path, `${coach}__proto__: {polluted: yes}\nconstructor: 1\n`, load)
    expect(faults.map((f) => f.path)).toEqual(['__proto__', 'constructor'])
    expect(({} as { polluted?: unknown }).polluted).toBeUndefined()
  })
})
