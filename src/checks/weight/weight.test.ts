import { describe, expect, it } from 'vitest'
import { readExample } from '../../../tests/examples.js'
import { listOnly } from '../../../tests/list-only.js'
import type { Definition } from '../../definition/types.js'
import type { Check } from '../../derive/nouns.js'
import { design } from '../index.js'

const six = readExample('sedge-6')
const checksOf = (definition: Definition): readonly Check[] => design(definition).checks.filter((check) => check.id.startsWith('weight.'))
const verdictOf = (checks: readonly Check[], id: string): string | undefined => checks.find((check) => check.id === id)?.verdict
const battery = { group: 'EL', item: 'more batteries', y: 0, waterline: 0.2, by: 'bought', twins: [], rest: 0 } as const

describe('checks of weight', () => {
  it.each(['sedge-4', 'sedge-6', 'sedge-8'])('%s: design cases pass, the ways it may not be stowed are shown', (name) => {
    const checks = checksOf(readExample(name))
    expect(checks.filter((check) => check.verdict === 'fail').map((check) => check.says)).toEqual([])
    for (const id of ['A', 'B', 'C', 'D', 'E']) expect(verdictOf(checks, `weight.hitch.${id}`)).toBe('pass')
    for (const id of ['F', 'G', 'H']) expect(verdictOf(checks, `weight.hitch.${id}`)).toBe('caution')
    expect(checks.every((check) => check.source.length > 0 && check.says.endsWith('.'))).toBe(true)
  })
  it('allow two more batteries in the tail of the stated list, refuse all four', () => {
    const list = listOnly(six)
    const two = checksOf({ ...list, masses: [...list.masses, { ...battery, mass: 25, station: 7 }] })
    expect(verdictOf(two, 'weight.hitch.D')).toBe('pass')
    const four = checksOf({
      ...list,
      masses: [...list.masses.filter((each) => each.item !== 'LiFePO4 batteries'), { ...battery, mass: 49, station: 7 }],
    })
    expect(verdictOf(four, 'weight.hitch.D')).toBe('fail')
    expect(verdictOf(four, 'weight.hitch.B')).toBe('pass')
    expect(four.find((check) => check.id === 'weight.hitch.D')?.mend).toMatch(/^Move the axles \d+(\.\d)? mm forward|aft/)
  })
  it('refuse an axle past its rating in any case, a coach past its gross rating, and a tyre past its load', () => {
    const weight = six.weight
    if (!weight || !six.suspension) throw new Error('no weight')
    const axle = checksOf({ ...six, weight: { ...weight, axleRatings: [1080, 1135] } })
    expect(verdictOf(axle, 'weight.axle-1.F')).toBe('fail')
    expect(verdictOf(axle, 'weight.axle-2.F')).toBe('pass')
    expect(verdictOf(axle, 'weight.ratings')).toBe('pass')
    const gross = checksOf({ ...six, weight: { ...weight, gross: 1600 } })
    expect(verdictOf(gross, 'weight.gross.B')).toBe('fail')
    expect(verdictOf(gross, 'weight.gross.E')).toBe('fail')
    expect(verdictOf(gross, 'weight.capacity')).toBe('fail')
    const heavy = checksOf({ ...six, masses: [...six.masses, { ...battery, mass: 900, station: 5, y: 1.5 }] })
    expect(verdictOf(heavy, 'weight.tyre.D')).toBe('fail')
  })
  it('bring out the smallest error of the ball of a tandem, and none of a single axle', () => {
    const check = checksOf(six).find((each) => each.id === 'weight.height-error')
    expect(check?.says).toMatch(/^Case F/)
    expect(check?.capacity).toBeGreaterThan(0.02)
    expect(checksOf(readExample('sedge-4')).some((each) => each.id === 'weight.height-error')).toBe(false)
  })
  it('fail what is counted twice, and name what only the list knows', () => {
    const twice = checksOf({
      ...six,
      masses: [...six.masses, { ...battery, item: 'D1 entrance door', mass: 24, station: 3.62, y: 1.18, waterline: 0.89 }],
    })
    expect(verdictOf(twice, 'weight.twice.1')).toBe('fail')
    const masted = { ...six, masses: six.masses.map((each) => (each.item === 'awning' ? { ...each, twins: ['mast'] } : each)) }
    expect(checksOf(masted).find((each) => each.id === 'weight.stated')?.says).toContain('awning (no mast)')
    expect(checksOf(six).some((each) => each.id === 'weight.stated')).toBe(false)
  })
  it('block a lift out of its slings, and find the nose too heavy for two people', () => {
    const lift = (definition: Definition) => design(definition).checks.filter((check) => /^(lift|carry)\./.test(check.id))
    expect(verdictOf(lift(six), 'lift.body')).toBe('pass')
    const nose = lift(six).find((check) => check.id === 'carry.nose')
    expect(nose?.verdict).toBe('caution')
    expect(nose?.demand).toBeGreaterThan(40)
    const how = six.weight?.lift
    if (!six.weight || !how) throw new Error('no lift')
    expect(verdictOf(lift({ ...six, weight: { ...six.weight, lift: { ...how, fore: 'F4' } } }), 'lift.body')).toBe('fail')
  })
})
