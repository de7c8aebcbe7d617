import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { count } from '../../../tests/counts.js'
import { readExample } from '../../../tests/examples.js'
import type { MassDefinition, WeightDefinition } from '../../definition/weight-types.js'
import { MASS_GROUPS } from '../../definition/weight-types.js'
import { deriveWeight } from './index.js'

const six = readExample('sedge-6')
if (!six.weight) throw new Error('no weight')
const written: WeightDefinition = { ...six.weight, listOnly: true }

const metres = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const mass = fc.record({
  group: fc.constantFrom(...MASS_GROUPS),
  mass: metres(0, 400),
  station: fc.oneof(metres(0.9, 9), fc.constant(null)),
  y: metres(-1.2, 1.2),
  waterline: metres(-0.4, 2.1),
})
const list = fc.array(mass, { minLength: 1, maxLength: 40 }).filter((all) => all.some((each) => each.mass > 1))
const spindles = fc
  .tuple(metres(3, 7), fc.array(metres(0.5, 1), { maxLength: 2 }))
  .map(([first, gaps]) => [first, ...gaps.map((_, i) => gaps.slice(0, i + 1).reduce((sum, gap) => sum + gap, first))])

describe('any list of masses on any axles', () => {
  it('balances: loads add to the weight, moments about the ball and about the middle come to nothing, every gram stands once', () => {
    fc.assert(
      fc.property(list, spindles, fc.boolean(), (items, axles, growing) => {
        const masses: MassDefinition[] = items.map((each, i) => ({ ...each, item: `item ${i}`, by: 'stated', twins: [], rest: 0 }))
        const weight = { ...written, axleRatings: axles.map(() => 1500), listOnly: !growing }
        const made = deriveWeight({
          weight,
          masses,
          twins: [],
          reach: new Map(),
          spindles: axles,
          frames: six.frames,
          lastFrame: 6.66,
          tail: 7.76,
          wheelRate: 1e5,
          tyre: 800,
        })
        const mean = axles.reduce((sum, each) => sum + each, 0) / axles.length
        const grown = items.reduce((sum, each) => sum + each.mass * (growing && each.group !== 'GR' ? 1.025 : 1), 0)
        expect(made.built.value).toBeCloseTo(grown, 6)
        expect(made.lines.flatMap((line) => line.points).reduce((sum, point) => sum + point.mass, 0)).toBeCloseTo(grown, 6)
        for (const one of made.cases) {
          const aboard = one.loads.reduce((sum, each) => sum + each.mass.value, made.built.value)
          expect(one.mass.value).toBeCloseTo(aboard, 6)
          const onWheels = one.axles.reduce((sum, { left, right }) => sum + left.value + right.value, 0)
          expect(one.hitch.value + onWheels).toBeCloseTo(one.mass.value, 6)
          const points = [
            ...made.lines.flatMap((line) => line.points),
            ...one.loads.map(({ mass: m, at: [x, y, z] }) => ({ mass: m.value, x, y, z })),
          ]
          const about = (of: (p: (typeof points)[number]) => number): number => points.reduce((sum, p) => sum + p.mass * of(p), 0)
          expect(about((p) => p.x - weight.ball)).toBeCloseTo(
            one.axles.reduce((sum, a) => sum + a.load.value * (mean - weight.ball), 0),
            5,
          )
          expect(about((p) => p.y)).toBeCloseTo(
            one.axles.reduce((sum, a) => sum + (a.right.value - a.left.value) * (weight.track / 2), 0),
            5,
          )
          expect(about((p) => p.z)).toBeCloseTo(one.mass.value * one.centre[2].value, 5)
          if (one.filled && one.filled.mass > 0) expect(one.mass.value).toBeCloseTo(weight.gross, 6)
        }
      }),
      { numRuns: count(500) },
    )
  })
})
