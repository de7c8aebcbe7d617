import { describe, expect, it } from 'vitest'
import { readExample } from '../../../tests/examples.js'
import { listCases, weighList } from '../../../tests/list-only.js'
import { isNotComputed, towingInput } from '../road-input.js'
import type { TowingDerived } from '../road-nouns.js'
import { deriveTowing } from './index.js'
import { itemYawInertia } from './towing.formulas.js'

function towingOf(name: string): TowingDerived {
  const definition = readExample(name)
  const tail = definition.frames[definition.frames.length - 1].station + 1.1036
  const input = towingInput(definition, tail, weighList(definition))
  if (isNotComputed(input)) throw new Error(input.notComputed)
  return deriveTowing(input)
}
const six = towingOf('sedge-6')
const of = (id: string) => six.cases.find((each) => each.id === id) ?? six.cases[0]

describe('towing Sedge 6', () => {
  // the demonstration's own table of load cases: plain statics of its stated masses
  it.each([
    ['A', 1757, 4.581, 12.0],
    ['B', 1775, 4.549, 12.7],
    ['C', 1889, 4.511, 13.6],
    ['D', 1964, 4.624, 11.0],
    ['E', 2360, 4.525, 13.3],
    ['F', 2360, 4.743, 8.1],
    ['G', 2024, 4.728, 8.5],
    ['H', 2360, 4.321, 18.2],
  ])('weighs and balances case %s as its table says: %s kg, %s m, %s per cent', (id, mass, station, share) => {
    expect(Math.abs(of(id).mass - mass)).toBeLessThan(1)
    expect(Math.abs(of(id).station - station)).toBeLessThan(1e-3)
    expect(Math.abs(of(id).hitchShare * 100 - share)).toBeLessThan(0.1)
  })
  it('has the yaw inertia of its items one by one, a quarter to a third more than of points', () => {
    const { built, loads } = listCases(readExample('sedge-6'))[5]
    const items = [...built, ...loads]
    const c = of('F')
    const sum = items.reduce(
      (all, { mass, x, y, along, across }) => all + itemYawInertia.eval({ m: mass, x, x_c: c.station, y, L: along, B: across }),
      0,
    )
    expect(c.yawInertia.value).toBeCloseTo(sum, 6)
    const low = six.cases.map((each) => 1 - each.asPoints / each.yawInertia.value)
    expect(Math.min(...low)).toBeGreaterThan(0.25)
    expect(Math.max(...low)).toBeLessThan(0.4)
  })
  it('is least steady with bicycles on the tail and most with the nose loaded, behind every car', () => {
    for (const car of six.cars) {
      const own = six.steadiness.filter((each) => each.car === car.id).sort((a, b) => (a.damping ?? 1) - (b.damping ?? 1))
      expect([own[0].case, own[7].case]).toEqual(['G', 'H'])
      expect(own.every((each) => each.divergence === null)).toBe(true)
    }
  })
  it('is steadier behind a heavier car, and swings on for ever from 112 km/h behind the lightest', () => {
    const G = six.steadiness.filter((each) => each.case === 'G')
    expect(G.map((each) => each.damping ?? 0)).toEqual([...G.map((each) => each.damping ?? 0)].sort((a, b) => a - b))
    expect((G[0].zeroDamping ?? 0) * 3.6).toBeCloseTo(112.1, 1)
  })
  it('is made less steady by mass in the tail alone, and that is what moves it most', () => {
    for (const { damping, changes } of six.moves) {
      expect(changes[0].says).toBe('50 kg from over the axles to the tail')
      expect(changes[0].damping).toBeLessThan(damping ?? 1)
      for (const other of changes.slice(1)) expect(other.damping).toBeGreaterThan(damping ?? 1)
    }
  })
})

describe('towing any coach', () => {
  it.each(['sedge-4', 'sedge-8'])('%s keeps cases A to E between 10 and 15 per cent', (name) => {
    for (const each of towingOf(name).cases.slice(0, 5)) {
      expect(each.hitchShare).toBeGreaterThan(0.1)
      expect(each.hitchShare).toBeLessThan(0.15)
    }
  })
  it('names extents that belong to no stated mass', () => {
    const definition = readExample('sedge-6')
    const input = towingInput({ ...definition, masses: definition.masses.slice(1) }, 7.76, weighList(definition))
    if (isNotComputed(input)) throw new Error(input.notComputed)
    expect(deriveTowing(input).unknownExtents).toEqual(['main rails, pair'])
  })
  it('says why where nothing is written', () => {
    const definition = readExample('sedge-6')
    const weight = weighList(definition)
    for (const change of [{ towing: null }, { gear: null }])
      expect(isNotComputed(towingInput({ ...definition, ...change }, 7.76, weight))).toBe(true)
    expect(towingInput(definition, 7.76, { notComputed: 'No masses.' })).toEqual({ notComputed: 'No masses.' })
    expect(isNotComputed(towingInput(definition, 7.76, { ...weight, cases: [] }))).toBe(true)
  })
})
