/** Numbers of towing and ride: yaw inertia of each load case, rate and frequency of the wheel, the rubber of an axle. */
import type { Entry, Subject } from './entry.js'

export function roadEntries({ design: { towing, ride } }: Subject): readonly Entry[] {
  const inertias =
    'notComputed' in towing
      ? []
      : towing.cases.map(
          (each): Entry => ({
            id: `towing.yaw-inertia.${each.id}`,
            says: `yaw inertia in case ${each.id}: ${each.says}`,
            work: () => each.yawInertia,
          }),
        )
  if ('notComputed' in ride) return inertias
  const { rubber } = ride
  return [
    ...inertias,
    { id: 'ride.wheel-rate', says: 'rate of the wheel at gross weight', work: () => ride.rate },
    { id: 'ride.body-frequency', says: 'frequency of the body on it', work: () => ride.frequency },
    ...(rubber
      ? [
          { id: 'ride.cord-squeeze', says: 'share by which a cord is squeezed', work: () => rubber.squeeze },
          { id: 'ride.cord-fill', says: 'share of its corner that a cord fills', work: () => rubber.fill },
          { id: 'ride.cold-shrink', says: 'share by which a cord shrinks in liquid nitrogen', work: () => rubber.shrinkNitrogen },
          { id: 'ride.bush-rate', says: 'torque of one side as a bonded bush, an estimate', work: () => rubber.estimate },
        ]
      : []),
  ]
}
