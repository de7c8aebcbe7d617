import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { evaluate, holds } from './evaluate.js'
import type { Tree } from './expression.js'
import { namesIn, parse } from './expression.js'
import { printTree } from './print.js'
import { dimensionOf, dimensionOfUnit, dimensionText } from './units.js'

const value = (text: string, given = {}): number => evaluate(parse(text), given)

describe('the expression language', () => {
  it('keeps the usual order of operations', () => {
    expect(value('2 + 3 * 4 ^ 2 / 8 - 1')).toBe(2 + (3 * 4 ** 2) / 8 - 1)
    expect(value('-2 ^ 2')).toBe(-4)
    expect(value('2 ^ 3 ^ 2')).toBe(512)
    expect(value('2 ^ -1')).toBe(0.5)
    expect(value('8 - 4 - 2')).toBe(2)
    expect(value('8 / 4 / 2')).toBe(1)
    expect(value('1.5e-3 * max(1, x_a, 3) + sqrt(pi ^ 2)', { x_a: 2 })).toBe(0.0045 + Math.PI)
  })
  it('names its inputs', () => expect(namesIn(parse('a * sin(b_1) + pi * a'))).toEqual(['a', 'b_1']))
  it('says what it could not read', () => {
    expect(() => parse('a + * b')).toThrow('expected a number, a name or "(" but found * in the expression "a + * b"')
    expect(() => parse('a b')).toThrow('expected the end')
    expect(() => value('nosuch(1)')).toThrow('nosuch')
    expect(() => value('y')).toThrow('y')
  })
  it('decides conditions', () => {
    expect(holds('a / b >= 2 and a < 5', { a: 4, b: 2 })).toBe(true)
    expect(holds('a / b >= 2 and a < 5', { a: 6, b: 2 })).toBe(false)
    expect(holds('otherwise', {})).toBe(true)
    expect(() => holds('a', { a: 1 })).toThrow('cannot read the condition')
  })
  it('prints any tree so that it reads back to the same value', () => {
    const leaf = fc.oneof(
      fc.integer({ min: 1, max: 9 }).map((n): Tree => ({ kind: 'number', value: n, text: String(n) })),
      fc.constantFrom('a', 'b', 'x_1').map((name): Tree => ({ kind: 'name', name })),
    )
    const { tree } = fc.letrec<{ tree: Tree }>((tie) => ({
      tree: fc.oneof(
        { maxDepth: 4 },
        leaf,
        fc
          .tuple(fc.constantFrom('+' as const, '-' as const, '*' as const, '/' as const), tie('tree'), tie('tree'))
          .map(([op, left, right]): Tree => ({ kind: 'binary', op, left, right })),
        tie('tree').map((left): Tree => ({ kind: 'binary', op: '^', left, right: { kind: 'number', value: 2, text: '2' } })),
        tie('tree').map((of): Tree => ({ kind: 'negate', of })),
        tie('tree').map((of): Tree => ({ kind: 'call', name: 'cos', args: [of] })),
      ),
    }))
    const given = { a: 1.25, b: 3, x_1: 0.5 }
    fc.assert(
      fc.property(tree, (it) => {
        const again = evaluate(parse(printTree(it).replaceAll('×', '*')), given)
        const first = evaluate(it, given)
        return Object.is(first, again) || Math.abs(first - again) <= 1e-9 * Math.abs(first)
      }),
      { seed: 7, numRuns: 500 },
    )
  })
})

describe('unit algebra', () => {
  const named = {
    m: dimensionOfUnit('kg'),
    g: dimensionOfUnit('m/s^2'),
    L: dimensionOfUnit('m'),
    P: dimensionOfUnit('Pa'),
    A: dimensionOfUnit('rad'),
  }
  const unit = (text: string): string => dimensionText(dimensionOf(parse(text), named))
  it('follows products, powers, roots and zero', () => {
    expect(unit('m * g')).toBe(dimensionText(dimensionOfUnit('N')))
    expect(unit('sqrt(L)')).toBe('m^0.5')
    expect(unit('sqrt(L) * L ^ 0.5')).toBe('m')
    expect(unit('P * L ^ 2 - m * g')).toBe('kg*m*s^-2')
    expect(unit('max(0, L)')).toBe('m')
    expect(unit('A * L * sin(A)')).toBe('m')
  })
  it('refuses what cannot be', () => {
    expect(() => unit('m + L')).toThrow('kg and m are added')
    expect(() => unit('sin(L)')).toThrow('sin is taken of m')
    expect(() => unit('2 ^ L')).toThrow('an exponent has a unit')
    expect(() => unit('min(m, L)')).toThrow('compared')
  })
})
