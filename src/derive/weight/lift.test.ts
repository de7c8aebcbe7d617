import { describe, expect, it } from 'vitest'
import { readExample } from '../../../tests/examples.js'
import { weighList } from '../../../tests/list-only.js'
import { auditFormula } from '../../quantity/audit.js'
import { derive } from '../index.js'
import { isNotComputed } from '../road-input.js'
import type { LiftDerived } from '../weight-nouns.js'
import * as formulas from './lift.formulas.js'
import { liftOf } from './lift.js'

const six = readExample('sedge-6')
const list = weighList(six)
const liftFrom = (lift: LiftDerived | null): LiftDerived => {
  if (!lift) throw new Error('no lift')
  return lift
}

describe('every formula of lifting', () => {
  it.each(Object.values(formulas).map((each) => [each.id, each] as const))('%s is sound', (_, each) =>
    expect(auditFormula(each)).toEqual([]),
  )
})

describe('the bare body', () => {
  // the demonstration: 444 kg at 4755, to be met within 8 % and 60 mm; its list comes to it as it stands
  it('of the list weighs 444 kg at station 4755', () => {
    const lift = liftFrom(list.lift)
    expect(lift.mass.value).toBeCloseTo(444, 0)
    expect(lift.centre[0] * 1000).toBeCloseTo(4755, -1)
    expect(lift.unknown).toEqual([])
  })
  it('as derived lies within 8 % and 60 mm of that', () => {
    const { weight } = derive(six)
    if (isNotComputed(weight)) throw new Error(weight.notComputed)
    const lift = liftFrom(weight.lift)
    expect(Math.abs(lift.mass.value / 444 - 1)).toBeLessThan(0.08)
    expect(Math.abs(lift.centre[0] - 4.755)).toBeLessThan(0.06)
    expect(lift.blocked).toBeNull()
  })
  it('hangs in balance: legs carry it, their pulls along the coach even out, moments about the hook vanish', () => {
    const { mass, centre, slings, hook, spreader } = liftFrom(list.lift)
    expect(slings.reduce((sum, each) => sum + each.load.value, 0)).toBeCloseTo(mass.value * 9.80665, 6)
    const along = (at: number): number => {
      const { station, tension } = slings[at]
      const d = station - centre[0]
      return (tension.value * d) / Math.hypot(d, spreader / 2, hook)
    }
    expect(along(0) + along(1)).toBeCloseTo(0, 6)
    expect(slings.every((each) => each.leg === each.tension.value / 2)).toBe(true)
  })
  it('is not to be lifted with its centre outside the slings, by legs too flat, or by legs too weak', () => {
    const how = six.weight?.lift
    if (!how) throw new Error('no lift')
    const lifted = (change: Partial<typeof how>): LiftDerived => liftOf({ ...how, ...change }, list.lines, six.frames)
    expect(lifted({ fore: 'F4' }).blocked).toMatch(/ahead of the forward sling at F4/)
    expect(lifted({ fore: 'F4' }).slings).toEqual([])
    expect(lifted({ aft: 'F3' }).blocked).toMatch(/behind the aft sling at F3/)
    expect(lifted({ hook: 0.5 }).blocked).toMatch(/less than 30 degrees/)
    // over a longer beam the same legs spread more, and hold more
    const [longer, usual] = [lifted({ spreader: 3 }), lifted({})].map((lift) => lift.slings[0].leg)
    expect(longer).toBeGreaterThan(usual)
    expect(lifted({ legRated: 1000 }).blocked).toMatch(/more than it is rated/)
  })
  it('knows an item that is left out by a name nobody wrote', () => {
    const how = six.weight?.lift
    if (!how) throw new Error('no lift')
    expect(liftOf({ ...how, without: ['carpet'] }, list.lines, six.frames).unknown).toEqual(['carpet'])
  })
})
