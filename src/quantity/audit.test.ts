import { describe, expect, it } from 'vitest'
import { auditFormula } from './audit.js'
import type { AnyFormula } from './formula.js'
import { formula, total } from './formula.js'

interface Globbed {
  glob(pattern: string, options: { eager: true }): Record<string, Record<string, unknown>>
}
const files = {
  ...(import.meta as unknown as Globbed).glob('../**/formulas.ts', { eager: true }),
  ...(import.meta as unknown as Globbed).glob('../**/*.formulas.ts', { eager: true }),
}

function isFormula(it: unknown): it is AnyFormula {
  return typeof it === 'function' && 'examples' in it && 'source' in it
}
const all = Object.entries(files).flatMap(([file, exported]) =>
  Object.values(exported)
    .filter(isFormula)
    .map((f) => ({ file, f })),
)

describe('every declared formula', () => {
  it('is found, and has an id of its own', () => {
    expect(all.length).toBeGreaterThan(25)
    expect(new Set(all.map(({ f }) => f.id)).size).toBe(all.length)
  })
  for (const { file, f } of all) {
    it(`${f.id} in ${file} has nothing to complain of`, () => expect(auditFormula(f)).toEqual([]))
  }
})

const good = {
  id: 'test.hitch',
  says: 'load on the ball',
  symbol: 'T',
  unit: 'N',
  inputs: { m: 'kg', g: 'm/s^2', x_a: 'm', x_g: 'm' },
  shows: 'm * g * (x_a - x_g) / x_a',
  eval: ({ m, g, x_a, x_g }: Record<'m' | 'g' | 'x_a' | 'x_g', number>) => (m * g * (x_a - x_g)) / x_a,
  source: { ref: 'statics', at: 'moments about the axle' },
  examples: [{ given: { m: 1000, g: 10, x_a: 4, x_g: 3.5 }, gives: 1250, within: 0, from: 'by hand' }],
} as const

describe('the audit', () => {
  it('passes a sound formula', () => expect(auditFormula(formula(good))).toEqual([]))
  it('catches a wrong shows', () => {
    expect(auditFormula(formula({ ...good, shows: 'm * g * (x_a + x_g) / x_a' })).join()).toMatch(/shows .* but computes/)
  })
  it('catches a missing g by its unit, even when the arithmetic agrees with what is shown', () => {
    const f = formula({
      ...good,
      inputs: { m: 'kg', x_a: 'm', x_g: 'm' },
      shows: 'm * (x_a - x_g) / x_a',
      eval: ({ m, x_a, x_g }) => (m * (x_a - x_g)) / x_a,
      examples: [{ given: { m: 1000, x_a: 4, x_g: 3.5 }, gives: 125, within: 0, from: 'by hand' }],
    })
    expect(auditFormula(f)).toEqual(['test.hitch: it shows kg but declares N (kg*m*s^-2).'])
  })
  it('catches a wrong unit', () => expect(auditFormula(formula({ ...good, unit: 'Pa' })).join()).toMatch(/declares Pa/))
  it('catches an unknown unit', () => expect(auditFormula(formula({ ...good, unit: 'stone' })).join()).toMatch(/stone/))
  it('catches a length added to a mass', () => {
    expect(auditFormula(formula({ ...good, shows: '(m + x_a) * g' })).join()).toMatch(/kg and m are added/)
  })
  it('catches a missing example', () =>
    expect(auditFormula(formula({ ...good, examples: [] })).join()).toMatch(/needs 1 worked example and has 0/))
  it('catches an example that does not come out', () => {
    const f = formula({ ...good, examples: [{ ...good.examples[0], gives: 1251 }] })
    expect(auditFormula(f).join()).toMatch(/example 1 .* gives 1250, not 1251/)
  })
  it('catches a missing source', () => expect(auditFormula(formula({ ...good, source: { ref: '', at: '' } })).join()).toMatch(/no source/))
  it('catches an input that is never shown', () => {
    expect(auditFormula(formula({ ...good, shows: 'm * g' })).join()).toMatch(/x_a is never shown/)
  })
  it('catches an expression it cannot read, and a name that is not an input', () => {
    expect(auditFormula(formula({ ...good, shows: 'm * (g' })).join()).toMatch(/expected "\)"/)
    expect(auditFormula(formula({ ...good, shows: 'm * g * q * x_a / x_g' })).join()).toMatch(/q has no declared unit/)
  })
  it('wants three examples of a table, and a shown form of anything else', () => {
    const { shows: _shows, ...hidden } = good
    expect(auditFormula(formula({ ...hidden, kind: 'table' })).join()).toMatch(/needs 3 worked examples and has 1/)
    expect(auditFormula(formula(hidden)).join()).toMatch(/shows nothing/)
  })
  it('checks every branch of a branching formula, and that each is reached', () => {
    const branch = {
      id: 'test.branch',
      says: 'a clipped length',
      symbol: 'L',
      unit: 'm',
      inputs: { x: 'm', c: 'm' },
      source: { ref: 'arithmetic', at: 'clipping' },
      cases: [
        { when: 'x < c', shows: 'c' },
        { when: 'otherwise', shows: 'x' },
      ],
      eval: ({ x, c }: { x: number; c: number }) => Math.max(x, c),
      examples: [{ given: { x: 3, c: 3 }, gives: 3, within: 0, from: 'by hand' }],
    } as const
    expect(auditFormula(formula(branch))).toEqual([])
    expect(auditFormula(formula({ ...branch, eval: ({ x }) => x })).join()).toMatch(/computes/)
    expect(auditFormula(formula({ ...branch, cases: [branch.cases[0], { when: 'x > 100 * c', shows: 'x' }] })).join()).toMatch(
      /no case covers/,
    )
    expect(
      auditFormula(
        formula({
          ...branch,
          cases: [
            { when: 'x < 0 * c', shows: 'c' },
            { when: 'otherwise', shows: 'max(x, c)' },
          ],
        }),
      ).join(),
    ).toMatch(/never reached/)
  })
  it('checks a total', () => {
    const sum = total({
      id: 'test.total',
      says: 'all of it',
      symbol: 'M',
      unit: 'kg',
      source: { ref: 'arithmetic', at: 'addition' },
      examples: [{ given: { a: 1, b: 2 }, gives: 3, within: 0, from: 'by hand' }],
    })
    expect(auditFormula(sum)).toEqual([])
    expect(auditFormula({ ...sum, kind: 'sum', eval: () => 0 }).join()).toMatch(/total/)
  })
})
