/**
 * How rough roads are: the classes of ISO 8608, and the international roughness index of a profile.
 *
 * Sources: ISO 8608, tables C.1 and C.2 (from memory: the standard was found, its tables not read); Sayers, Gillespie and
 * Paterson, World Bank technical paper 46 (1986), for the index and its car; ASTM E1926 repeats it.
 */
import { heldStep } from '../../maths/linear/matrix.js'
import { type QuarterCar, relativeSpeed, stateSpace } from './quarter-car.js'

export type RoadClass = 'A' | 'B' | 'C' | 'D' | 'E' | 'F' | 'G' | 'H'
const CLASSES: readonly RoadClass[] = ['A', 'B', 'C', 'D', 'E', 'F', 'G', 'H']
/** cycles a metre the classes are stated at */
const N0 = 0.1

/** Displacement density of a class at 0.1 cycles a metre: least, geometric mean and greatest, m3. Class A has no least and H no greatest. */
export function roughnessOf(road: RoadClass): { readonly least: number; readonly mean: number; readonly greatest: number } {
  const mean = 16e-6 * 4 ** CLASSES.indexOf(road)
  return { least: road === 'A' ? 0 : mean / 2, mean, greatest: road === 'H' ? Infinity : mean * 2 }
}

/** The class a density at 0.1 cycles a metre (m3) falls in. */
export function classOf(density: number): RoadClass {
  return CLASSES.find((road) => density < roughnessOf(road).greatest) ?? 'H'
}

/** One-sided density of the road's vertical speed under a wheel at V m/s, the same at every frequency for waviness 2, m2/s2 a Hz. */
export const speedDensity = (density: number, V: number): number => 4 * Math.PI ** 2 * density * N0 ** 2 * V

/** The car every roughness is measured with: figures a kilogram of body. World Bank technical paper 46. */
export const GOLDEN_CAR: QuarterCar = Object.freeze({ body: 1, wheel: 0.15, spring: 63.3, damper: 6, tyre: 653, loss: 0 })
/** its speed, 80 km/h */
const GOLDEN_SPEED = 80 / 3.6
/** length the profile is averaged over, the foot of its tyre, m */
const FOOT = 0.25

/** Roughness index of a sine of amplitude a (m) and wavelength (m), without end: mean of a rectified sine. m/m; times 1000 for m/km. */
export function sineRoughness(amplitude: number, wavelength: number, averaged: boolean): number {
  const w = (2 * Math.PI * GOLDEN_SPEED) / wavelength
  return (2 / Math.PI) * amplitude * (relativeSpeed(GOLDEN_CAR, w) / GOLDEN_SPEED) * (averaged ? sinc((Math.PI * FOOT) / wavelength) : 1)
}

const sinc = (x: number): number => (x === 0 ? 1 : Math.sin(x) / x)

/**
 * Roughness index of a sampled profile, m/m: mean of |body speed - wheel speed| over the distance. Heights in m at even
 * spacing; the slope between two samples is held, as the paper does. `from` leaves out a run-in, m.
 */
export function profileRoughness(heights: readonly number[], spacing: number, from = 0): number {
  const { step, held } = goldenStep(spacing)
  let z = [0, 0, 0, 0]
  let sum = 0
  let counted = 0
  for (let i = 1; i < heights.length; i++) {
    const slope = (heights[i] - heights[i - 1]) / spacing
    const before = z
    z = step.map((row, k) => row[0] * before[0] + row[1] * before[1] + row[2] * before[2] + row[3] * before[3] + held[k] * slope)
    if (i * spacing <= from) continue
    sum += Math.abs(z[0] - z[2])
    counted++
  }
  return sum / counted
}

/** The recursion of the index: states and input are slopes, so that what comes out is the slope of body against wheel. */
export function goldenStep(spacing: number): ReturnType<typeof heldStep> {
  const { A, B } = stateSpace(GOLDEN_CAR)
  return heldStep(A, B, spacing / GOLDEN_SPEED)
}

/** Frequencies of an even sum in the logarithm, Hz. Beyond them a road of waviness 2 adds less than a ten-thousandth. */
const [LOW, HIGH, MANY] = [0.01, 300, 2400]

/** Roughness index expected of a road of waviness 2 with that density, as measured with the 250 mm foot: mean of |a normal variable|. */
export function densityRoughness(density: number): number {
  const S = speedDensity(density, GOLDEN_SPEED)
  const ratio = Math.log(HIGH / LOW) / MANY
  let sum = 0
  for (let i = 0; i < MANY; i++) {
    const f = LOW * Math.exp((i + 0.5) * ratio)
    const w = 2 * Math.PI * f
    const gain = (relativeSpeed(GOLDEN_CAR, w) / w) * sinc((Math.PI * FOOT * f) / GOLDEN_SPEED)
    sum += gain * gain * S * f * ratio
  }
  return (Math.sqrt(2 / Math.PI) * Math.sqrt(sum)) / GOLDEN_SPEED
}
