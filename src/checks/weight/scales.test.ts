import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { count } from '../../../tests/counts.js'
import { readExample } from '../../../tests/examples.js'
import { weighList } from '../../../tests/list-only.js'
import { readScales, type ScaleReadings } from '../../definition/scales-form.js'
import type { CaseWeighed, WeightDerived } from '../../derive/weight-nouns.js'
import { solve } from '../../maths/linear/solve.js'
import { reconcile } from './scales.js'

const list = weighList(readExample('sedge-6'))
const caseOf = (weight: WeightDerived, id: string): CaseWeighed => weight.cases.find((each) => each.id === id) as CaseWeighed
const B = caseOf(list, 'B')
/** What faultless scales would say of a coach, with something off. */
const readingsOf = (one: CaseWeighed, hitch = 0, left = 0, right = 0, uncertainty = 1): ScaleReadings => ({
  case: one.id,
  on: '2026-05-04',
  uncertainty,
  hitch: one.hitch.value + hitch,
  axles: one.axles.map((a) => ({ left: a.left.value + left / 2, right: a.right.value + right / 2 })),
})

describe('weighed against calculated', () => {
  it('finds no bias where the scales say what was calculated, and is surer than before', () => {
    const { groups, surprise, agrees } = reconcile(list, readingsOf(B), B)
    for (const each of groups) {
      expect(each.bias).toBeCloseTo(0, 9)
      expect(each.after).toBeLessThanOrEqual(each.before)
    }
    expect(surprise).toBeCloseTo(0, 9)
    expect(agrees).toBe(true)
    const before = Math.sqrt(groups.reduce((sum, each) => sum + each.before ** 2, 0))
    expect(groups.find((each) => each.group === 'FU')?.after).toBeLessThan(before)
  })
  it('explains the readings as well as the scales are good, whatever they say', () => {
    const few = fc.double({ min: -40, max: 40, noNaN: true })
    fc.assert(
      fc.property(few, few, few, (hitch, left, right) => {
        const found = reconcile(list, readingsOf(B, hitch, left, right, 0.01), B)
        for (const each of found.readings) expect(Math.abs(each.left)).toBeLessThan(0.2)
        // biases make up what the whole is off
        expect(found.groups.reduce((sum, each) => sum + each.bias, 0)).toBeCloseTo(found.weighed - found.calculated, 0)
      }),
      { numRuns: count(50) },
    )
  })
  it('lays 30 kg too much where mass is least sure: on the furniture rather than on what was bought or weighed', () => {
    // 30 kg at the centre of the coach
    const share = B.share.value
    const { groups, agrees } = reconcile(list, readingsOf(B, 30 * share, 15 * (1 - share), 15 * (1 - share)), B)
    const bias = (id: string): number => groups.find((each) => each.group === id)?.bias ?? 0
    expect(bias('FU')).toBeGreaterThan(bias('LP'))
    expect(groups.reduce((sum, each) => sum + each.bias, 0)).toBeGreaterThan(25)
    expect(agrees).toBe(true)
  })
  it('does not agree with scales that say what no list explains', () => {
    expect(reconcile(list, readingsOf(B, 200, -100, -100), B).agrees).toBe(false)
  })
})

describe('a file of readings', () => {
  const text = 'case: B\non: 2026-05-04\nuncertainty: 2 kg\nhitch: 231 kg\naxles:\n  - {left: 392 kg, right: 390 kg}\n'
  it('reads', () => {
    expect(readScales('scales.yaml', text).readings).toMatchObject({ case: 'B', hitch: 231, axles: [{ left: 392, right: 390 }] })
  })
  it('has its faults with their lines', () => {
    const { readings, faults } = readScales('scales.yaml', text.replace('231 kg', '231').replace('left: 392 kg', 'lft: 392 kg'))
    expect(readings).toBeNull()
    expect(faults.map((each) => each.line)).toEqual([4, 6])
  })
})

describe('a few equations', () => {
  it('are solved, whatever their order, and refused where they do not settle it', () => {
    const a = [
      [0, 2, 1],
      [1, -1, 3],
      [4, 1, 0],
    ]
    const x = [1.5, -2, 0.25]
    const b = a.map((row) => row.reduce((sum, each, i) => sum + each * x[i], 0))
    solve(a, b).forEach((each, i) => {
      expect(each).toBeCloseTo(x[i], 12)
    })
    expect(() =>
      solve(
        [
          [1, 2],
          [2, 4],
        ],
        [1, 2],
      ),
    ).toThrow(RangeError)
  })
})
