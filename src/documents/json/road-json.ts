/** Towing, ride and the rules of the road as the JSON of a design has them. Null with a reason where they were not computed. */
import type { Design } from '../../derive/design.js'
import type { RoadJson } from './road-schema.js'

export function roadJson({ towing, ride, road }: Pick<Design, 'towing' | 'ride' | 'road'>): RoadJson {
  return {
    towing: 'notComputed' in towing ? towing : towingTree(towing),
    ride: 'notComputed' in ride ? ride : rideTree(ride),
    road: 'notComputed' in road ? road : roadTree(road),
  }
}

type Computed<T> = Exclude<T, { readonly notComputed: string }>

function towingTree(towing: Computed<Design['towing']>): Computed<RoadJson['towing']> {
  return {
    at: towing.at,
    cars: towing.cars.map(({ id, says, mass }) => ({ id, says, mass })),
    cases: towing.cases.map(({ id, says, mass, station, hitchShare, yawInertia }) => ({
      id,
      says,
      mass,
      station,
      hitchShare,
      yawInertia: yawInertia.value,
    })),
    steadiness: towing.steadiness.map(({ case: id, car, damping, frequency, zeroDamping, divergence }) => ({
      case: id,
      car,
      damping,
      frequency,
      zeroDamping,
      divergence,
    })),
    moves: towing.moves.map(({ car, case: id, damping, changes }) => ({
      car,
      case: id,
      damping,
      changes: changes.map((each) => ({ ...each })),
    })),
  }
}

function rideTree(ride: Computed<Design['ride']>): Computed<RoadJson['ride']> {
  const { load, armAngle, travel, torque, rate, frequency, speed, frequencies, suspensions } = ride
  return {
    ...{ load, armAngle, travel, torque, speed },
    rate: rate.value,
    frequency: frequency.value,
    frequencies: [...frequencies],
    suspensions: suspensions.map(({ id, says, spring, damper, transmissibility, roads }) => ({
      ...{ id, says, spring, damper },
      transmissibility: [...transmissibility],
      roads: roads.map((each) => ({ ...each })),
    })),
  }
}

function roadTree(road: Computed<Design['road']>): Computed<RoadJson['road']> {
  const { notApplied, lamps, coupling, tyre, tyresCarry, labels } = road
  return {
    notApplied,
    lamps: lamps.map(({ device, count, colour, where, least, greatest, because }) => ({
      device,
      count,
      colour,
      where,
      least,
      greatest,
      because,
    })),
    coupling: {
      class: coupling.class?.class ?? null,
      rated: coupling.rated,
      chain: coupling.chain,
      chainAsked: coupling.class?.chain ?? null,
    },
    tyre: { name: tyre.name, pressure: tyre.pressure, carriedByAxle: tyresCarry },
    labels: {
      vin: labels.vin,
      draft: [...labels.draft],
      certification: labels.certification.map((line) => ({ ...line })),
      cargo: labels.cargo.map((line) => ({ ...line })),
      relabelAbove: labels.relabelAbove,
    },
  }
}
