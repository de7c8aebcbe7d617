import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { count } from '../../../tests/counts.js'
import { readExample } from '../../../tests/examples.js'
import { weighList } from '../../../tests/list-only.js'
import type { Definition } from '../../definition/types.js'
import type { WeightDerived } from '../weight-nouns.js'
import { nearestOf, roomAt } from './room.js'

const six = readExample('sedge-6')
const plain = { group: 'FU', y: 0, waterline: 0.5, by: 'stated', twins: [], rest: 0 } as const
const adding = (definition: Definition, mass: number, [x, y]: readonly number[]): WeightDerived =>
  weighList({ ...definition, masses: [...definition.masses, { ...plain, item: 'added', mass, station: x as number, y: y as number }] })

/** The least that is left of any limit, kg; below nothing where one is passed. */
const leastLeft = (weight: WeightDerived): number => Math.min(...nearestOf(weight).map((each) => each.left))

const list = weighList(six)
const places = fc.tuple(fc.double({ min: 1, max: 8, noNaN: true }), fc.double({ min: -1.1, max: 1.1, noNaN: true }))

describe('the room at a place', () => {
  it('is what weighing anew says: all of it may be added and no more', () => {
    fc.assert(
      fc.property(places, ([x, y]) => {
        const room = roomAt(list, [x, y, 0.5])
        if (room.mass === null) throw new Error('every place is stopped by the gross rating at last')
        expect(leastLeft(adding(six, room.mass - 1e-3, [x, y]))).toBeGreaterThan(-1e-6)
        const past = adding(six, room.mass + 0.01, [x, y])
        const passed = room.limit === 'gross' ? (past.cases.find((each) => each.id === room.case)?.filled?.mass ?? 0) : leastLeft(past)
        expect(passed).toBeLessThan(1e-6)
      }),
      { numRuns: count(60) },
    )
  })
  it('is about 34 kg at station 7000, stopped by the waste-full case: 9 more than the 25 that leave 0.2 point', () => {
    const room = roomAt(list, [7, 0, 0.2])
    expect(room.limit).toBe('hitch-least')
    expect(room.case).toBe('D')
    // derived here: (215.2 - 196.4) / (0.1 - (1 - 6.12 / 4.205)) kg
    expect(room.mass).toBeCloseTo(33.9, 0)
  })
  it('offers the nose for what the tail cannot take', () => {
    const nose = list.places.find((each) => each.id === 'nose')
    const tail = list.places.find((each) => each.id === 'tail')
    expect(nose?.room.mass).toBeGreaterThan(49)
    expect(tail?.room.mass).toBeLessThan(49)
  })
  it('is nothing where a limit is passed already', () => {
    const heavy = adding(six, 60, [7.5, 0])
    expect(roomAt(heavy, [7, 0, 0]).mass).toBe(0)
  })
  it('lists the nearest limit first, each once, with its case', () => {
    const nearest = nearestOf(list)
    expect(nearest.map((each) => each.margin)).toEqual([...nearest.map((each) => each.margin)].sort((a, b) => a - b))
    expect(nearest[0]).toMatchObject({ limit: 'hitch-least', case: 'D' })
    expect(nearest.find((each) => each.limit === 'axle')?.case).toBe('F')
  })
})
