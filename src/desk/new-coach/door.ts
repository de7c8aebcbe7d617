/** The entrance door of a new coach: as far from its frame as on the pattern, and ahead of the wheels. */
import type { Definition } from '../../definition/types.js'
import type { Change } from './change.js'
import { meanOf } from './under.js'

export interface Door {
  readonly id: string
  readonly was: number
  readonly station: number
  /** a lower coach has a lower door */
  readonly lower: (m: number) => number
}

const nearest = (stations: readonly number[], x: number): number => stations.reduce((a, b) => (Math.abs(b - x) < Math.abs(a - x) ? b : a))

export function doorOf({ openings, frames }: Definition, { stationOf, frames: now, rise }: Change): Door | null {
  const door = openings.find((each) => each.kind === 'door')
  if (!door) return null
  const stations = frames.map(({ station }) => station)
  const frame = nearest(stations, door.station)
  const station = nearest(now.slice(1, -1), stationOf(frame)) + door.station - frame
  return { id: door.id, was: door.station, station, lower: (m) => m * Math.min(1, rise) }
}

/** Between two openings for both their rim rings and the post beside the door, m. */
const APART = 0.08

/** The foremost mean axle station whose wheel opening is clear of the door; nothing bars it where the door is not ahead of the axles. */
export function behindDoor(definition: Definition, change: Change): number {
  const [door, written] = [doorOf(definition, change), definition.openings.find((each) => each.kind === 'door')]
  const { gear } = definition
  if (!door || !written || !gear || written.station > gear.spindles[0]) return 0
  const foremost = meanOf(gear.spindles) - gear.spindles[0]
  return door.station + written.width / 2 + APART + gear.wheelOpening.half + foremost
}
