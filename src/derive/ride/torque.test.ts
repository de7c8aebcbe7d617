import { describe, expect, it } from 'vitest'
import { count } from '../../../tests/counts.js'
import { readExample } from '../../../tests/examples.js'
import { chance } from '../../../tests/random.js'
import { isNotComputed, rideInput } from '../road-input.js'
import type { RideDerived } from '../road-nouns.js'
import { deriveRide } from './index.js'
import { armAngle } from './ride.formulas.js'
import { restAngle, straight, throughPoints } from './torque.js'

describe('a torque curve', () => {
  it('goes through its points, rises everywhere and has the slope of its own differences', () => {
    const random = chance(21)
    for (let n = 0; n < count(40); n++) {
      let [turn, torque] = [0, 0]
      const points = Array.from({ length: random.whole(2, 8) }, () => {
        turn += random.between(0.02, 0.2)
        torque += random.between(1, 400)
        return { turn, torque }
      })
      const curve = throughPoints(points)
      for (const p of points) expect(curve.torque(p.turn)).toBeCloseTo(p.torque, 9)
      for (let k = 1; k < 60; k++) {
        const at = (turn * 1.1 * k) / 60
        const slope = (curve.torque(at + 1e-6) - curve.torque(at - 1e-6)) / 2e-6
        expect(slope).toBeGreaterThanOrEqual(-1e-6)
        expect(curve.rate(at) / Math.max(1, slope)).toBeCloseTo(slope / Math.max(1, slope), 3)
      }
    }
  })
  it('is a straight line through points on one', () => {
    const curve = throughPoints([
      { turn: 0.1, torque: 250 },
      { turn: 0.35, torque: 875 },
    ])
    expect(curve.torque(0.2)).toBeCloseTo(500, 9)
    expect(curve.rate(0.02)).toBeCloseTo(2500, 9)
  })
  it('lets the arm rest where a spring in proportion does, and says when it gives way', () => {
    expect(restAngle(straight(2500), 0.15, Math.PI / 8, 6000)).toBeCloseTo(
      armAngle.eval({ K: 2500, R: 0.15, a_0: Math.PI / 8, F: 6000 }),
      9,
    )
    expect(restAngle(straight(50), 0.15, Math.PI / 8, 6000)).toBeNull()
  })
})

describe('the ride of the demonstration', () => {
  const rideOf = (name: string): RideDerived => {
    const input = rideInput(readExample(name))
    if (isNotComputed(input)) throw new Error(input.notComputed)
    const made = deriveRide(input)
    if (isNotComputed(made)) throw new Error(made.notComputed)
    return made
  }
  it('has about 110 kN/m at the wheel of Sedge 6 at its rated load, as its data say', () => {
    const ride = rideOf('sedge-6')
    expect(ride.rate.value / 1000).toBeGreaterThan(104)
    expect(ride.rate.value / 1000).toBeLessThan(116)
    expect(ride.torque).toBe('measured')
  })
  it.each(['sedge-4', 'sedge-6', 'sedge-8'])('of %s shakes least with shock absorbers', (name) => {
    const [rubber, damped, leaf] = rideOf(name).suspensions
    for (const [i, road] of damped.roads.entries()) {
      expect(road.felt).toBeLessThan(rubber.roads[i].felt)
      expect(road.body).toBeLessThan(leaf.roads[i].body)
    }
    expect(Math.max(...damped.transmissibility)).toBeLessThan(Math.max(...rubber.transmissibility))
  })
  it('says why where the rubber is unknown, or gives way', () => {
    const definition = readExample('sedge-6')
    const { suspension } = definition
    if (!suspension) throw new Error('no suspension')
    const make = (change: object) => {
      const input = rideInput({ ...definition, suspension: { ...suspension, ...change } })
      return isNotComputed(input) ? input : deriveRide(input)
    }
    expect(make({ torque: null, rubber: null })).toHaveProperty('notComputed')
    expect(
      make({
        torque: [
          { turn: 0.1, torque: 5 },
          { turn: 0.2, torque: 10 },
        ],
      }),
    ).toHaveProperty('notComputed')
    expect(make({ unsprung: 5000 })).toHaveProperty('notComputed')
    expect(make({ torque: null })).toHaveProperty('torque', 'estimated')
  })
})
