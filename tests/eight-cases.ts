/** The eight load cases of a demonstration coach, put together here from its stated masses: a shop's usual set, A to H. */
import type { Definition } from '../src/definition/types.js'
import { casesOf } from '../src/derive/road-input.js'
import type { MassReach, TowingCase } from '../src/derive/road-nouns.js'

interface Loads {
  readonly gas: number
  readonly fresh: readonly (readonly [litres: number, station: number])[]
  readonly waste: readonly (readonly [litres: number, station: number])[]
}
const LOADS: Readonly<Record<string, Loads>> = {
  'Sedge 4': {
    gas: 9.1,
    fresh: [[75, 3.915]],
    waste: [
      [75, 5.135],
      [18, 6.05],
    ],
  },
  'Sedge 6': {
    gas: 18.2,
    fresh: [[114, 3.915]],
    waste: [
      [57, 3.305],
      [57, 5.805],
      [75, 6.5],
    ],
  },
  'Sedge 8': {
    gas: 18.2,
    fresh: [[150, 4.525]],
    waste: [
      [60, 3.915],
      [90, 6.445],
      [95, 6.95],
    ],
  },
}
const point = (mass: number, x: number, z: number): MassReach => ({ mass, x, y: 0, z, along: 0, across: 0 })

export function eightCases(definition: Definition): readonly TowingCase[] {
  const loads = LOADS[definition.coach.name]
  const { towing, gear, frames } = definition
  if (!loads || !towing || !gear) throw new Error('only of the demonstration')
  const built = casesOf(definition)[0].items
  const axle = gear.spindles.reduce((sum, each) => sum + each, 0) / gear.spindles.length
  const last = frames[frames.length - 1].station
  const gas = point(loads.gas, 1.48, 0.16)
  const tanks = (of: Loads['fresh']): MassReach[] => of.map(([litres, x]) => point(litres, x, -0.11))
  const cargo = (items: readonly MassReach[], shares: readonly number[]): MassReach[] => {
    const left = towing.gross - items.reduce((sum, each) => sum + each.mass, 0)
    return [2.5, 4.2, axle + 0.65, last + 0.35].map((x, i) => point(left * shares[i], x, 0.5))
  }
  const B = [...built, gas]
  const [wet, waste] = [
    [...B, ...tanks(loads.fresh)],
    [...B, ...tanks(loads.waste)],
  ]
  const of = (id: string, says: string, items: readonly MassReach[]): TowingCase => ({ id, says, items })
  return [
    of('A', 'as built, cylinders empty', built),
    of('B', 'unloaded, gas full', B),
    of('C', 'B with fresh water full', wet),
    of('D', 'B with waste full, fresh empty', waste),
    of('E', 'gross, fresh full, cargo even', [...wet, ...cargo(wet, [0.25, 0.35, 0.25, 0.15])]),
    of('F', 'gross, waste full, cargo aft', [...waste, ...cargo(waste, [0.1, 0.3, 0.3, 0.3])]),
    of('G', 'D with two bicycles on the tail', [...waste, point(60, last + 1.1036 + 0.35, 0.5)]),
    of('H', 'gross, fresh full, cargo in the nose', [...wet, ...cargo(wet, [0.55, 0.3, 0.1, 0.05])]),
  ]
}
