/**
 * The ride trade: what a wheel feels of its rubber axle, and how a floor shakes on rough roads with rubber alone, with shock
 * absorbers, and on leaf springs.
 *
 * A quarter of the coach on each wheel, at gross weight. Does not cover pitch, roll, the tow car, stops, or a tyre that leaves
 * the road; figures compare one suspension with another.
 */

import type { SuspensionDefinition } from '../../definition/road-types.js'
import type { Worked } from '../../quantity/formula.js'
import { G } from '../../quantity/gravity.js'
import type { NotComputed, RideDerived, RubberDerived, Suspension } from '../road-nouns.js'
import { type QuarterCar, transmissibility } from './quarter-car.js'
import { shakingOn } from './response.js'
import { bodyFrequency, bushRate, coldShrink, cordFill, cordSqueeze, cornerCircle, cornerHeight, wheelRate } from './ride.formulas.js'
import { densityRoughness, roughnessOf, speedDensity } from './roads.js'
import { restAngle, straight, throughPoints } from './torque.js'
import { comfortOf } from './weighting.js'

export interface RideInput {
  readonly suspension: SuspensionDefinition
  /** of the arm below level without load, rad */
  readonly startAngle: number
  readonly arm: number
  /** carried by one wheel at gross weight, wheel and hub included, kg */
  readonly onWheel: number
}

/** Speed of the roads, 90 km/h. Common practice, no source. */
const SPEED = 90 / 3.6
const ROADS = ['A', 'B', 'C', 'D'] as const
/** Frequencies of the plot, 0.3 to 30 Hz, even in the logarithm. */
const FREQUENCIES: readonly number[] = Object.freeze(Array.from({ length: 201 }, (_, i) => 0.3 * 100 ** (i / 200)))
const ROUGHNESS = Object.freeze(
  Object.fromEntries(ROADS.map((road) => [road, 1000 * densityRoughness(roughnessOf(road).mean)])) as Record<'A' | 'B' | 'C' | 'D', number>,
)

/** What is derived, or a sentence why nothing can be. */
export function deriveRide(input: RideInput): RideDerived | NotComputed {
  const { suspension: s, startAngle, arm, onWheel } = input
  const estimate = s.rubber && bushRate({ G: s.rubber.shear, L: s.rubber.length, D_i: s.rubber.bar, D_o: s.rubber.tube })
  const curve = s.torque ? throughPoints(s.torque) : estimate ? straight(estimate.value) : null
  if (!curve) return { notComputed: 'Nobody has measured the torque of the axle, and its rubber is not written, so its rate is unknown.' }
  const body = onWheel - s.unsprung
  if (body <= 0) return { notComputed: 'The wheel is said to weigh more than it carries: look at unsprung.' }
  const load = body * G
  const a = restAngle(curve, arm, startAngle, load)
  if (a === null) return { notComputed: 'The rubber does not hold the load: the arm would rise past 60 degrees. Look at the torque table.' }
  const K = curve.rate(startAngle - a)
  const rate = wheelRate({ K, R: arm, a, F: load })
  if (rate.value <= 0)
    return { notComputed: 'At this load the arm gives way: the wheel has no rate. Look at the torque table and the start angle.' }
  return Object.freeze({
    load,
    armAngle: a,
    arm,
    body,
    unsprung: s.unsprung,
    tyreRate: s.tyreRate,
    torque: s.torque ? ('measured' as const) : ('estimated' as const),
    rate,
    frequency: bodyFrequency({ k: rate, m: body }),
    travel: arm * (Math.sin(startAngle) - Math.sin(a)),
    speed: SPEED,
    frequencies: FREQUENCIES,
    suspensions: suspensionsOf(s, rate.value, body),
    roughness: ROUGHNESS,
    rubber: s.rubber && estimate ? rubberOf(s.rubber, estimate) : null,
  })
}

function suspensionsOf(s: SuspensionDefinition, rate: number, body: number): readonly Suspension[] {
  const of = (id: Suspension['id'], says: string, spring: number, damper: number, loss: number): Suspension => {
    const car: QuarterCar = { body, wheel: s.unsprung, spring, damper, tyre: s.tyreRate, loss }
    return {
      id,
      says,
      spring,
      damper,
      loss,
      transmissibility: FREQUENCIES.map((hz) => transmissibility(car, hz)),
      roads: ROADS.map((road) => {
        const shaking = shakingOn(car, speedDensity(roughnessOf(road).mean, SPEED))
        return { road, ...shaking, says: comfortOf(shaking.felt).join(' to ') }
      }),
    }
  }
  return [
    of('rubber', 'rubber axle alone', rate, 0, s.loss),
    ...(s.shockAbsorber === null ? [] : [of('rubber-damped', 'rubber axle with shock absorbers', rate, s.shockAbsorber, s.loss)]),
    ...(s.leaf === null
      ? []
      : // dry friction stands as the viscous damper that loses as much of a swing: good for comparing, not for small roads
        [of('leaf', 'leaf springs', s.leaf.rate, 2 * s.leaf.damping * Math.sqrt(s.leaf.rate * body), 0)]),
  ]
}

/** A shop's warm room, rubber's glass temperature, liquid nitrogen; expansion above and below glass. From memory. K, 1/K */
const COLD = { T_0: 296.15, T_g: 203.15, c_w: 2.2e-4, c_g: 0.7e-4 } as const
const NITROGEN = 77.15

function rubberOf(rubber: NonNullable<SuspensionDefinition['rubber']>, estimate: Worked<'N*m'>): RubberDerived {
  const corner = cornerHeight({ S_o: rubber.tube, S_i: rubber.bar })
  const free = cornerCircle({ H: corner })
  return {
    corner,
    free,
    squeeze: cordSqueeze({ d: free, d_c: rubber.cord }),
    fill: cordFill({ d_c: rubber.cord, H: corner }),
    shrinkGlass: coldShrink({ ...COLD, T_1: COLD.T_g }),
    shrinkNitrogen: coldShrink({ ...COLD, T_1: NITROGEN }),
    estimate,
  }
}
