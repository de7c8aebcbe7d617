/** The map keeps its word: what it says may be added is added, and the coach weighed anew. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { count } from '../../../tests/counts.js'
import { readExample } from '../../../tests/examples.js'
import { design } from '../../checks/index.js'
import type { Definition } from '../../definition/types.js'
import { derive } from '../../derive/index.js'
import { createMemo } from '../../derive/memo.js'
import type { WeightDerived } from '../../derive/weight-nouns.js'
import { roomMap, roomSaid } from './room-map.js'

/** On the scales already, since growth is reckoned on what is not. */
const plain = { group: 'FU', item: 'added', waterline: 0.5, by: 'weighed', twins: [], rest: 0 } as const

const COACHES = ['sedge-4', 'sedge-6', 'sedge-8'].map((name) => {
  const definition = readExample(name)
  const memo = createMemo()
  const held = design(definition, memo)
  const map = roomMap(held, 'metric')
  if ('notComputed' in map) throw new Error(map.notComputed)
  const squares = map.bands.flatMap((band) => band.squares)
  return { definition, memo, held, squares }
})
type Coach = (typeof COACHES)[number]

function weighedWith({ definition, memo }: Coach, mass: number, x: number, y: number): WeightDerived {
  const more: Definition = { ...definition, masses: [...definition.masses, { ...plain, mass, station: x, y }] }
  const { weight } = derive(more, memo)
  if ('notComputed' in weight) throw new Error(weight.notComputed)
  return weight
}

/** The least that is left of any limit, kg; of a case filled up by cargo the cargo that still goes in. */
const leastLeft = ({ nearest, cases }: WeightDerived): number =>
  Math.min(...nearest.map(({ left }) => left), ...cases.flatMap(({ filled }) => (filled ? [filled.mass] : [])))

describe('how much may be added here', () => {
  it('is what weighing the whole coach anew says: just under it passes, just over it does not', () => {
    const places = fc.tuple(fc.nat(2), fc.double({ min: 0, max: 0.9999, noNaN: true }), fc.double({ min: -0.025, max: 0.025, noNaN: true }))
    fc.assert(
      fc.property(places, ([which, share, off]) => {
        const coach = COACHES[which]
        const square = 2 * Math.floor((share * coach.squares.length) / 2)
        const [x, y] = [coach.squares[square] + off, coach.squares[square + 1] + off]
        const room = roomSaid(coach.held, x, y, 'metric')
        if ('notComputed' in room || room.mass === null) throw new Error('every place is stopped by the gross rating at last')
        expect(leastLeft(weighedWith(coach, Math.max(0, room.mass - 1e-3), x, y))).toBeGreaterThan(-1e-6)
        expect(leastLeft(weighedWith(coach, room.mass + 0.01, x, y))).toBeLessThan(1e-6)
        // and the sentence rounds down, never up
        const said = Number(/add (\d+) kg/.exec(room.says)?.[1] ?? 0)
        expect(said).toBeLessThanOrEqual(room.mass)
      }),
      { numRuns: count(12) },
    )
  })
})
