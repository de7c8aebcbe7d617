/**
 * What the rest of the coach hands to towing, ride and the rules of the road: the one place that says where each of their
 * inputs comes from. Load cases are those of weight and balance.
 */

import type { Definition } from '../definition/types.js'
import type { WeightDefinition } from '../definition/weight-types.js'
import { G } from '../quantity/gravity.js'
import type { Totals } from './nouns.js'
import type { NotComputed, RideDerived, TowingCase } from './road-nouns.js'
import type { WeightDerived } from './weight-nouns.js'

export const isNotComputed = (it: object): it is NotComputed => 'notComputed' in it

/** Everything aboard in each load case, one by one. */
export function casesOf({ cases, lines }: WeightDerived): readonly TowingCase[] {
  const built = lines.flatMap((line) => line.points)
  return cases.map(({ id, says, loads }) => ({
    id,
    says,
    built,
    loads: loads.map(({ mass, at: [x, y, z] }) => ({ mass: mass.value, x, y, z, along: 0, across: 0 })),
  }))
}

/** What stands in the way of each, or what they take. */
export function towingInput({ towing, gear, masses }: Definition, tail: number, weight: WeightDerived | NotComputed) {
  if (!towing) return { notComputed: 'No towing is written, so coupling and tow cars are unknown.' }
  if (!gear) return { notComputed: 'No gear is written, so there are no axles to tow on.' }
  if (towing.cars.length === 0) return { notComputed: 'No tow car is written.' }
  if (isNotComputed(weight)) return weight
  if (weight.cases.length === 0) return { notComputed: 'No load case is written, so there is nothing to tow.' }
  const { cars, tyres, hitchDamping, extents } = towing
  return {
    cases: casesOf(weight),
    ball: weight.ball,
    spindles: gear.spindles,
    tail,
    cars,
    tyres,
    hitchDamping,
    extents,
    items: masses.map((each) => each.item),
  }
}

/** Share of the gross weight the hitch is designed to carry: the middle of its band. */
const hitchShare = ({ hitch: [least, most] }: WeightDefinition): number => (least + most) / 2
const WHEELS_AN_AXLE = 2

export function rideInput({ suspension, gear, weight }: Definition) {
  if (!suspension) return { notComputed: 'No suspension is written.' }
  if (!gear) return { notComputed: 'No gear is written, so there is no arm to spring.' }
  if (!weight) return { notComputed: 'No weight is written, so the gross rating is unknown.' }
  if (gear.arm === 0) return { notComputed: 'The arm has no length, so nothing turns the rubber.' }
  const { startAngle } = suspension
  if (startAngle === null) return { notComputed: 'No start angle is written, so nobody can tell where the arm stands.' }
  return {
    suspension,
    startAngle,
    arm: gear.arm,
    onWheel: (weight.gross * (1 - hitchShare(weight))) / (WHEELS_AN_AXLE * gear.spindles.length),
  }
}

export function roadInput(definition: Definition, { overallWidth, overallLength }: Totals) {
  const { coach, towing, suspension, gear, papers, weight } = definition
  if (!towing) return { notComputed: 'No towing is written, so the coupling is unknown.' }
  if (!weight) return { notComputed: 'No weight is written, so the ratings are unknown.' }
  if (!gear) return { notComputed: 'No gear is written, so there are no axles.' }
  if (!suspension) return { notComputed: 'No suspension is written, so its tyres are unknown.' }
  const { coupler, chain, cars } = towing
  const { ground, gross, axleRatings, tanks } = weight
  const fresh = tanks.filter((tank) => tank.kind === 'fresh')
  return {
    ...{ market: coach.market, maker: coach.maker, width: overallWidth, length: overallLength, ground, gross, axleRatings },
    ...{
      hitch: gross * hitchShare(weight),
      water: fresh.length > 0 ? fresh.reduce((sum, tank) => sum + tank.litres, 0) : null,
      coupler,
      chain,
      cars,
      tyre: suspension.tyre,
      papers,
    },
  }
}

/** What axle and ground hang on: the arm at gross weight, and the tyre that carries wheel and body. */
export const wheelLoaded = ({ armAngle, load, unsprung, tyreRate }: RideDerived) => ({ armAngle, force: load + unsprung * G, tyreRate })
