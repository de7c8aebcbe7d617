import { describe, expect, it } from 'vitest'
import { explain, explainText } from './explain.js'
import type { Q } from './formula.js'
import { formula, total } from './formula.js'

const need = formula({
  id: 'test.need',
  says: 'rivet length needed',
  symbol: 'L',
  unit: 'm',
  inputs: { G: 'm', D: 'm' },
  where: { G: 'grip', D: 'rivet diameter' },
  shows: 'G + 1.5 * D',
  eval: ({ G, D }) => G + 1.5 * D,
  valid: { D: [0.002, 0.01] },
  source: { ref: 'NAVEDTRA 14018', at: 'figure 13-43' },
  examples: [{ given: { G: 0.001, D: 0.002 }, gives: 0.004, within: 1e-12, from: 'by hand' }],
})
const grip = total({
  id: 'test.grip',
  says: 'grip of the stack',
  symbol: 'G',
  unit: 'm',
  source: { ref: 'geometry', at: 'the layers add' },
  examples: [{ given: { a: 0.001 }, gives: 0.001, within: 0, from: 'by hand' }],
})
const formulas = { [need.id]: need, [grip.id]: grip }
const layers = { skin: 0.00081, skin_below: 0.00081, stringer: 0.001 }

describe('a formula', () => {
  it('gives plain frozen data that survives JSON', () => {
    const worked = need({ G: grip(layers), D: 0.003175 })
    expect(JSON.parse(JSON.stringify(worked))).toEqual(worked)
    expect(Object.isFrozen(worked)).toBe(true)
    expect(worked.value).toBeCloseTo(0.0073825, 12)
    expect(need.eval({ G: 0.00262, D: 0.003175 })).toBe(worked.value)
  })
  it('throws on a result or an input that is not a finite number, naming itself and its inputs', () => {
    const ratio = formula({
      id: 'test.ratio',
      says: 'ratio',
      symbol: 'r',
      unit: '1',
      inputs: { a: 'm', b: 'm' },
      shows: 'a / b',
      eval: ({ a, b }) => a / b,
      source: { ref: 'a', at: 'b' },
      examples: [{ given: { a: 1, b: 1 }, gives: 1, within: 0, from: 'by hand' }],
    })
    expect(() => ratio({ a: 1, b: 0 })).toThrow('test.ratio gives Infinity for {"a":1,"b":0}')
    expect(() => ratio.eval({ a: 0, b: 0 })).toThrow('test.ratio gives NaN')
    expect(() => ratio({ a: Number.NaN, b: 0 })).toThrow('test.ratio was given a = NaN')
  })
  it('carries a caution up through what is made from it', () => {
    const outside = need({ G: 0.001, D: 0.012 })
    expect(outside.cautions).toEqual(['rivet length needed: rivet diameter (D) is 0.012 m, and the formula holds only up to 0.01 m.'])
    expect(grip({ one: outside, two: 0.001 }).cautions).toEqual(outside.cautions)
    expect(need({ G: 0.001, D: 0.003 })).not.toHaveProperty('cautions')
  })
  it('does not compile where a kilogram is handed for a metre', () => {
    const kilograms: Q<'kg'> = 1
    // @ts-expect-error a mass is not a length
    const wrong = () => need({ G: kilograms, D: 0.003 })
    expect(wrong).toBeTypeOf('function')
  })
})

describe('explain', () => {
  const worked = need({ G: grip(layers), D: 0.003175 })
  it('gives the symbols, the figures, the result and the chain behind it', () => {
    const it = explain(worked, formulas)
    expect(it.symbolic).toBe('G + 1.5 × D')
    expect(it.substituted).toBe('2.62 mm + 1.5 × 3.175 mm')
    expect(it.inputs[0]?.from?.substituted).toBe('0.81 mm + 0.81 mm + 1 mm')
    expect(it.inputs[1]?.from).toBeNull()
  })
  it('prints as a person reads it, in either system', () => {
    expect(explainText(worked, formulas, 'metric')).toBe(
      [
        'rivet length needed: 7.3825 mm',
        '  L = G + 1.5 × D',
        '    = 2.62 mm + 1.5 × 3.175 mm',
        '    = 7.3825 mm',
        '  with G = 2.62 mm, grip, from: grip of the stack',
        '  with D = 3.175 mm (1/8 in), rivet diameter',
        '  source: NAVEDTRA 14018, figure 13-43',
        '',
        'grip of the stack: 2.62 mm',
        '  G = 0.81 mm + 0.81 mm + 1 mm',
        '    = 2.62 mm',
        '  with skin = 0.81 mm',
        '  with skin_below = 0.81 mm',
        '  with stringer = 1 mm',
        '  source: geometry, the layers add',
      ].join('\n'),
    )
    expect(explainText(worked, formulas, 'inch')).toContain('0.10315 in + 1.5 × 0.125 in')
  })
  it('shows the branch that applies, and why', () => {
    const clipped = formula({
      id: 'test.clipped',
      says: 'a clipped length',
      symbol: 'L',
      unit: 'm',
      inputs: { x: 'm', c: 'm' },
      source: { ref: 'arithmetic', at: 'clipping' },
      cases: [
        { when: 'x < c', shows: 'c' },
        { when: 'otherwise', shows: 'x' },
      ],
      eval: ({ x, c }) => Math.max(x, c),
      examples: [{ given: { x: 3, c: 3 }, gives: 3, within: 0, from: 'by hand' }],
    })
    const told = (x: number): string => explainText(clipped({ x, c: 0.002 }), { [clipped.id]: clipped }, 'metric')
    expect(told(0.001)).toContain('L = c\n    = 2 mm\n    = 2 mm\n  because x < c')
    expect(told(0.004)).toContain('L = x\n    = 4 mm')
    expect(told(0.004)).not.toContain('because')
  })
  it('says which formula is missing', () => expect(() => explain(worked, {})).toThrow('cannot explain test.need'))
})
