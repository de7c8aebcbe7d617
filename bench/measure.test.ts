import { describe, expect, it } from 'vitest'
import { type Bench, fails, measure, sentence, verdict } from './measure.js'
import { referenceLoop } from './reference.js'

const bench = (over: Partial<Bench>): Bench => ({
  id: 'busy',
  says: 'Three milliseconds of nothing',
  unit: 'ms',
  budget: 2,
  samples: 5,
  warmups: 2,
  setup: () => ({ run: () => wait(3) }),
  ...over,
})

function wait(ms: number): void {
  const until = performance.now() + ms
  while (performance.now() < until);
}

describe('a bench', () => {
  it('fails only beyond three times its budget, and when there is no figure', () => {
    expect([1, 2, 6, 6.001, Number.NaN].map((median) => fails({ median, budget: 2 }))).toEqual([false, false, false, true, true])
    expect(verdict({ median: 3, budget: 2 })).toBe('over the budget')
  })

  it('takes the median of what it runs, without what is done before each run', () => {
    let prepared = 0
    const before = () => {
      prepared += 1
      wait(60)
    }
    const figure = measure(bench({ setup: () => ({ before, run: () => wait(3) }) }))
    expect(figure.median).toBeGreaterThanOrEqual(3)
    // a busy machine may run late, but never by what was done before each of seven runs
    expect(figure.median).toBeLessThan(60)
    expect(prepared).toBe(7)
    expect(figure.ratio).toBeGreaterThan(0)
    expect(sentence({ ...figure, median: 3 })).toMatch(
      /^Three milliseconds of nothing: .* ms of 2 ms, .* reference loops; over the budget$/,
    )
  })

  it('passes on what goes wrong inside it', () => {
    const run = () => {
      throw new Error('no such coach')
    }
    expect(() => measure(bench({ setup: () => ({ run }) }))).toThrow('no such coach')
  })

  it('reports a peak as it was given, and refuses one that is missing', () => {
    expect(measure(bench({ unit: 'MB', samples: 2, setup: () => ({ run: () => 123 }) }))).toMatchObject({ median: 123, ratio: null })
    expect(() => measure(bench({ unit: 'MB', setup: () => ({ run: () => Number.NaN }) }))).toThrow('gave no figure')
  })
})

it('the reference loop is still the one every ratio was taken with', () => {
  expect(referenceLoop()).toBeCloseTo(1222.855913864051, 6)
})
