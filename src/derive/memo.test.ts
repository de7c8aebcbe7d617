import { describe, expect, it } from 'vitest'
import { createMemo, type Memo } from './memo.js'

/** A piece made from two smaller ones; says what was made, in order. */
function tried() {
  const memo: Memo = createMemo()
  const made: string[] = []
  const leaf = (key: string, input: unknown) => memo.keep(key, [input], () => made.push(key))
  const whole = (a: unknown, b: unknown) =>
    memo.keep('whole', [a, b], () => {
      made.push('whole')
      return [leaf('a', a), leaf('b', b)]
    })
  const turn = (run: () => void): string => {
    made.length = 0
    memo.turn()
    run()
    return made.join(' ')
  }
  return { memo, leaf, whole, turn }
}

describe('the memo', () => {
  it('hands back the very object while the inputs are the same objects', () => {
    const { memo } = tried()
    const input = {}
    const first = memo.keep('key', [input], () => ({}))
    expect(memo.keep('key', [input], () => ({}))).toBe(first)
    expect(memo.keep('key', [{}], () => ({}))).not.toBe(first)
  })

  it('lets a piece go that a whole derivation did not ask for', () => {
    const { leaf, turn } = tried()
    expect(turn(() => leaf('a', 1))).toBe('a')
    expect(turn(() => leaf('a', 1))).toBe('')
    expect(turn(() => undefined)).toBe('')
    expect(turn(() => leaf('a', 1))).toBe('a')
  })

  it('holds what a kept piece was made from, however long the piece itself was kept', () => {
    const { whole, turn } = tried()
    expect(turn(() => whole(1, 1))).toBe('whole a b')
    for (let i = 0; i < 4; i++) expect(turn(() => whole(1, 1))).toBe('')
    expect(turn(() => whole(1, 2))).toBe('whole b')
  })

  it('lets go what the new piece was not made from any more', () => {
    const { memo, leaf, turn } = tried()
    const some = (n: number) => memo.keep('some', [n], () => Array.from({ length: n }, (_, i) => leaf(`leaf ${i}`, 1)))
    expect(turn(() => some(2))).toBe('leaf 0 leaf 1')
    expect(turn(() => some(1))).toBe('')
    expect(turn(() => some(1))).toBe('')
    expect(turn(() => some(2))).toBe('leaf 1')
  })

  it('keeps one piece a thing of a list, as long as the thing is listed and what all hang on is the same', () => {
    const { memo, turn } = tried()
    const [a, b, c] = ['a', 'b', 'c'].map((name) => ({ name }))
    const made: string[] = []
    const all = (on: number, ...things: readonly { readonly name: string }[]): void => {
      made.length = 0
      const pieces = memo.each('all', [on], things, ({ name }) => {
        made.push(name)
        return `piece of ${name}`
      })
      expect(pieces).toEqual(things.map(({ name }) => `piece of ${name}`))
    }
    const tell = (on: number, ...things: readonly { readonly name: string }[]): string => {
      turn(() => all(on, ...things))
      return made.join(' ')
    }
    expect(tell(1, a, b)).toBe('a b')
    expect(tell(1, b, c)).toBe('c')
    expect(tell(1, a, b, c)).toBe('a')
    expect(tell(2, a, b, c)).toBe('a b c')
    turn(() => undefined)
    turn(() => undefined)
    expect(tell(2, a)).toBe('a')
  })

  it('is in order again after a piece that could not be made', () => {
    const { memo, leaf, turn } = tried()
    turn(() => {
      expect(() =>
        memo.keep('bad', [], () => {
          throw new Error('no')
        }),
      ).toThrow('no')
      leaf('a', 1)
    })
    // nobody's piece: it goes by its own turn
    expect(turn(() => leaf('a', 1))).toBe('')
    turn(() => undefined)
    expect(turn(() => leaf('a', 1))).toBe('a')
  })

  it('takes an equal piece for the old one where it is asked to settle', () => {
    const { memo } = tried()
    const settled = (input: number) =>
      memo.settle(
        'key',
        [input],
        () => ({ odd: input % 2 }),
        (a, b) => a.odd === b.odd,
      )
    const first = settled(1)
    expect(settled(3)).toBe(first)
    expect(settled(4)).not.toBe(first)
  })
})
