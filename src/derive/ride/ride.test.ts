import { describe, expect, it } from 'vitest'
import { eigenvalues } from '../../maths/linear/matrix.js'
import { type QuarterCar, stateSpace, transmissibility, wheelTransmissibility } from './quarter-car.js'
import { shakingOn } from './response.js'
import { armAngle, wheelRate, whiteBodyRms } from './ride.formulas.js'
import { classOf, densityRoughness, GOLDEN_CAR, goldenStep, profileRoughness, roughnessOf, sineRoughness, speedDensity } from './roads.js'
import { comfortOf, weighting } from './weighting.js'

const sine = (wavelength: number): number[] => Array.from({ length: 401 }, (_, i) => 1e-3 * Math.sin((2 * Math.PI * i * 0.25) / wavelength))

describe('the golden car', () => {
  // World Bank technical paper 46 (Sayers, Gillespie, Paterson 1986), state transition for 250 mm, as five public codes carry it
  const ST = [
    [0.9966071, 0.01091514, -0.002083274, 0.0003190145],
    [-0.5563044, 0.9438768, -0.8324718, 0.05064701],
    [0.02153176, 0.002126763, 0.7508714, 0.008221888],
    [3.335013, 0.3376467, -39.12762, 0.4347564],
  ]
  const PR = [0.005476107, 1.388776, 0.2275968, 35.79262]
  it('steps over 250 mm as the printed matrices do', () => {
    const { step, held } = goldenStep(0.25)
    ST.forEach((row, i) => {
      row.forEach((each, j) => {
        expect(Math.abs(step[i][j] - each)).toBeLessThan(2e-6 * Math.max(1, Math.abs(each)))
      })
      expect(Math.abs(held[i] - PR[i])).toBeLessThan(5e-5)
    })
  })
  it('swings at 1.2363 and 10.7554 Hz (computed here)', () => {
    const roots = eigenvalues(stateSpace(GOLDEN_CAR).A).filter((r) => r.im > 0)
    expect(roots.map((r) => (Math.hypot(r.re, r.im) / (2 * Math.PI)).toFixed(4)).sort()).toEqual(['1.2363', '10.7554'])
  })
  it.each([
    [2.5, 2.4516, 2.47497],
    [10, 0.500645, 0.503097],
    [15, 0.384697, 0.407427],
  ])('on 100 m of a 1 mm sine of %s m from rest reads %s m/km, and %s over the last 60 m (computed here)', (wavelength, whole, last) => {
    expect(profileRoughness(sine(wavelength), 0.25) * 1000).toBeCloseTo(whole, 4)
    expect(profileRoughness(sine(wavelength), 0.25, 40) * 1000).toBeCloseTo(last, 4)
  })
  it('reads the sampled sine, once it has settled, as the closed form does', () => {
    const fine = Array.from({ length: 8001 }, (_, i) => 1e-3 * Math.sin((2 * Math.PI * i * 0.05) / 10))
    expect(profileRoughness(fine, 0.05, 200)).toBeCloseTo(sineRoughness(1e-3, 10, false), 5)
  })
  it('reads 2.17 m/km on the mean of class A, and twice as much on each class after it (computed here; 2.21 root C from memory)', () => {
    expect(densityRoughness(roughnessOf('A').mean) * 1000).toBeCloseTo(2.1726, 2)
    expect(densityRoughness(roughnessOf('D').mean) / densityRoughness(roughnessOf('C').mean)).toBeCloseTo(2, 10)
  })
})

describe('a quarter car', () => {
  const car: QuarterCar = { body: 500, wheel: 60, spring: 45e3, damper: 2500, tyre: 350e3, loss: 0 }
  it('follows the road at nothing a second, and is left behind at many', () => {
    expect(transmissibility(car, 1e-4)).toBeCloseTo(1, 6)
    expect(wheelTransmissibility(car, 1e-4)).toBeCloseTo(1, 6)
    expect(transmissibility(car, 1000)).toBeLessThan(1e-3)
  })
  it('answers as its state matrix says', () => {
    // det(iw I - A) vanishes nowhere on the axis; at the body's own frequency the answer is near its peak
    const body = eigenvalues(stateSpace(car).A).find((r) => r.im > 0 && r.im < 30)
    const hz = (body?.im ?? 0) / (2 * Math.PI)
    expect(transmissibility(car, hz)).toBeGreaterThan(transmissibility(car, hz * 1.5))
    expect(transmissibility(car, hz)).toBeGreaterThan(transmissibility(car, hz / 1.5))
  })
  it('shakes in its band a little less than over all frequencies', () => {
    const S = speedDensity(64e-6, 25)
    const all = whiteBodyRms.eval({ S_0: S, m_s: 500, m_u: 60, k_s: 45e3, c: 2500, k_t: 350e3 })
    const { body, felt, wheel } = shakingOn(car, S)
    expect(body).toBeLessThan(all)
    expect(body).toBeGreaterThan(0.97 * all)
    expect(felt).toBeLessThan(body)
    expect(wheel).toBeGreaterThan(5 * body)
  })
  it('shakes twice as much on a road four times as rough', () => {
    expect(shakingOn(car, 4e-3).felt).toBeCloseTo(2 * shakingOn(car, 1e-3).felt, 12)
  })
  it('shakes longer on rubber alone, which loses little of a swing', () => {
    const rubber = { ...car, damper: 0, loss: 0.15 }
    expect(shakingOn(rubber, 1e-3).body).toBeGreaterThan(shakingOn(car, 1e-3).body)
  })
})

describe('roads and comfort', () => {
  it('have classes that meet without a gap', () => {
    expect(classOf(16e-6)).toBe('A')
    expect(classOf(32e-6)).toBe('B')
    expect(classOf(1)).toBe('H')
    expect(roughnessOf('B').least).toBe(roughnessOf('A').greatest)
  })
  it('are felt most at 4 to 8 Hz up and down, and at 1 Hz sideways', () => {
    const peak = (which: 'Wk' | 'Wd'): number =>
      [0.5, 1, 2, 4, 6.3, 8, 16, 31.5].reduce((a, b) => (weighting(which, b) > weighting(which, a) ? b : a))
    expect(peak('Wk')).toBe(6.3)
    expect(peak('Wd')).toBe(1)
  })
  it('have overlapping words', () => {
    expect(comfortOf(0.55)).toEqual(['a little uncomfortable', 'fairly uncomfortable'])
    expect(comfortOf(9)).toEqual(['extremely uncomfortable'])
  })
})

describe('a swing arm', () => {
  it('has the rate that two loads a newton apart say it has', () => {
    const given = { K: 2500, R: 0.15, a_0: Math.PI / 8 }
    const height = (F: number): number => 0.15 * Math.sin(armAngle.eval({ ...given, F }))
    const a = armAngle.eval({ ...given, F: 6000 })
    expect(1 / (height(5999.5) - height(6000.5))).toBeCloseTo(wheelRate.eval({ K: 2500, R: 0.15, a, F: 6000 }), 0)
    expect((height(0) - height(6000)) * 1000).toBeCloseTo(52.469, 3)
  })
})
