/**
 * What the rest of the coach hands to towing, ride and the rules of the road: the one place that says where each of their
 * inputs comes from. Load cases are those of the stated masses until weight and balance hands over its own.
 */
import type { Definition } from '../definition/types.js'
import type { Totals } from './nouns.js'
import type { MassReach, NotComputed, RideDerived, TowingCase } from './road-nouns.js'

export const isNotComputed = (it: object): it is NotComputed => 'notComputed' in it

const mean = (of: readonly number[]): number => of.reduce((sum, each) => sum + each, 0) / of.length

/** Stated masses with the reach somebody wrote for them. */
function itemsOf({ masses, towing, gear }: Definition): readonly MassReach[] {
  const axles = gear ? mean(gear.spindles) : null
  const reach = new Map(towing?.extents.map((each) => [each.item, each]))
  return masses.map(({ item, mass, station, y, waterline }) => {
    const x = station ?? axles
    if (x === null) throw new Error(`${item} stands at the axles of a coach without`)
    const { along = 0, across = 0 } = reach.get(item) ?? {}
    return { mass, x, y, z: waterline, along, across }
  })
}

export function casesOf(definition: Definition): readonly TowingCase[] {
  return [{ id: 'stated', says: 'as built: every stated mass, tanks and cylinders empty', items: itemsOf(definition) }]
}

/** What stands in the way of each, or what they take. */
export function towingInput(definition: Definition, tail: number, cases: readonly TowingCase[]) {
  const { towing, gear, masses } = definition
  if (!towing) return { notComputed: 'No towing is written, so ball, ratings and tow cars are unknown.' }
  if (!gear) return { notComputed: 'No gear is written, so there are no axles to tow on.' }
  if (towing.cars.length === 0) return { notComputed: 'No tow car is written.' }
  if (masses.length === 0) return { notComputed: 'No masses are written, so its weight and yaw inertia are unknown.' }
  const { ball, cars, tyres, hitchDamping, extents } = towing
  return { cases, ball, spindles: gear.spindles, tail, cars, tyres, hitchDamping, extents, items: masses.map((each) => each.item) }
}

/** Share of the gross weight the hitch is designed to carry: the middle of 10 to 15 %. Vehicle makers' handbooks. */
const HITCH_SHARE = 0.125
const WHEELS_AN_AXLE = 2

export function rideInput({ suspension, gear, towing }: Definition) {
  if (!suspension) return { notComputed: 'No suspension is written.' }
  if (!gear) return { notComputed: 'No gear is written, so there is no arm to spring.' }
  if (!towing) return { notComputed: 'No towing is written, so the gross rating is unknown.' }
  if (gear.arm === 0) return { notComputed: 'The arm has no length, so nothing turns the rubber.' }
  const { startAngle } = suspension
  if (startAngle === null) return { notComputed: 'No start angle is written, so nobody can tell where the arm stands.' }
  return { suspension, startAngle, arm: gear.arm, onWheel: (towing.gross * (1 - HITCH_SHARE)) / (WHEELS_AN_AXLE * gear.spindles.length) }
}

export function roadInput(definition: Definition, { overallWidth, overallLength }: Totals) {
  const { coach, towing, suspension, gear, papers } = definition
  if (!towing) return { notComputed: 'No towing is written, so ratings and coupling are unknown.' }
  if (!gear) return { notComputed: 'No gear is written, so there are no axles.' }
  if (!suspension) return { notComputed: 'No suspension is written, so its tyres are unknown.' }
  const { ground, gross, axleRating, coupler, chain, cars } = towing
  return {
    ...{ market: coach.market, maker: coach.maker, width: overallWidth, length: overallLength, ground, gross, axleRating },
    ...{ axles: gear.spindles.length, hitch: gross * HITCH_SHARE, coupler, chain, cars, tyre: suspension.tyre, papers },
  }
}

const G = 9.80665

/** What axle and ground hang on: the arm at gross weight, and the tyre that carries wheel and body. */
export const wheelLoaded = ({ armAngle, load, unsprung, tyreRate }: RideDerived) => ({ armAngle, force: load + unsprung * G, tyreRate })
