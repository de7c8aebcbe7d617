/**
 * The axle group's geometry: tubes, spindles, wheel boxes, ground clearance, departure angle, and where the group may stand.
 *
 * A trailing arm: the tube stands one arm ahead of its spindle. Does NOT cover: springs, loads, tyres by rating (see weight
 * and towing), and the rim ring of a wheel opening, which the shell makes.
 */
import type { Definition, FrameDefinition, GearDefinition } from '../../definition/types.js'
import type { BayDefinition } from '../../definition/under-types.js'
import type { AxleTube, GearDerived, WheelBox } from '../under-nouns.js'
import { departureAngle, groundLevel, spindleHeight } from './gear.formulas.js'
import { clearStretches, neighbours } from './window.js'

export interface GearInput {
  readonly gear: GearDefinition
  readonly frames: readonly FrameDefinition[]
  readonly crossMembers: readonly number[]
  readonly bays: readonly BayDefinition[]
  /** tube to cross-member asked for, m */
  readonly tubeRoom: number
  /** half width and thickness of the floor; null without one */
  readonly floor: { readonly halfWidth: number; readonly thickness: number } | null
  /** lowest edge of the skin, and how far it reaches beyond the last frame there */
  readonly toe: { readonly z: number; readonly reach: number }
  /** what the springs say of one wheel at gross weight; null where nobody can tell */
  readonly loaded: WheelLoaded | null
  /** an edge of a wheel opening must stay this far from a frame's web, for its rim ring */
  readonly frameRoom: number
}

/** Angle of the arm below level, force on the tyre, and the tyre's rate. rad, N, N/m */
export interface WheelLoaded {
  readonly armAngle: number
  readonly force: number
  readonly tyreRate: number
}

/** What other trades settle before. */
type Handed = Pick<GearInput, 'toe' | 'frameRoom' | 'loaded'>

/** Null where no axle is written. */
export function deriveGear(
  definition: Pick<Definition, 'gear' | 'chassis' | 'floor' | 'frames' | 'rules'>,
  handed: Handed,
): GearDerived | null {
  const { gear, chassis, floor, frames, rules } = definition
  if (!gear) return null
  return gearFrom({
    gear,
    frames,
    crossMembers: chassis?.crossMembers ?? [],
    bays: chassis?.bays ?? [],
    tubeRoom: rules.tubeToCrossMember,
    floor,
    ...handed,
  })
}

function gearFrom(input: GearInput): GearDerived {
  const { gear, frames, toe } = input
  const { spindles, ground } = gear
  const last = spindles[spindles.length - 1]
  const mean = spindles.reduce((sum, s) => sum + s, 0) / spindles.length
  const tube = gear.tube
  const half = tube ? tube.size / 2 : null
  const tail = frames[frames.length - 1].station + toe.reach
  const angle = loadedAngle(input)
  return Object.freeze({
    tubes: spindles.map((s, i) => tubeAt(input, s, i + 1)),
    mean,
    spread: last - spindles[0],
    boxes: wheelBoxes(input),
    window: clearStretches(input, mean),
    neighbours: neighbours(input, mean),
    loadedAngle: angle,
    bumpTravel: tube && angle !== null ? gear.arm * (Math.sin(angle) + Math.sin(tube.bumpAngle)) : null,
    tubeZ: tube && half !== null ? ([tube.waterline - half, tube.waterline + half] as const) : null,
    ground,
    clearance: ground === null ? null : lowest(input, ground),
    sits: groundUnder(input),
    departure: ground === null || tail <= last ? null : departureAngle({ x_t: tail, z_t: toe.z, x_s: last, z_g: ground }),
  })
}

/** Of the arm below level at gross weight: as somebody wrote it, or as its springs hold it. */
const loadedAngle = ({ gear, loaded }: GearInput): number | null => gear.tube && (gear.tube.loadedAngle ?? loaded?.armAngle ?? null)

/** Where the ground comes to stand by axle, arm and tyre: at gross weight, and with nothing on the wheels. */
function groundUnder(input: GearInput): GearDerived['sits'] {
  const { gear, loaded } = input
  const angle = loadedAngle(input)
  if (!gear.tube || !gear.wheel || !loaded || angle === null) return null
  const { tube, wheel, arm } = gear
  const at = { z_t: tube.waterline, R: arm, R_t: wheel.radius, k_t: loaded.tyreRate }
  return { gross: groundLevel({ ...at, A: angle, F: loaded.force }), free: groundLevel.eval({ ...at, A: tube.startAngle, F: 0 }) }
}

function tubeAt(input: GearInput, spindle: number, axle: number): AxleTube {
  const { gear, crossMembers } = input
  const angle = loadedAngle(input)
  const station = spindle - gear.arm
  const nearest = [...crossMembers].sort((a, b) => Math.abs(a - station) - Math.abs(b - station))[0]
  return {
    axle,
    spindle,
    station,
    spindleZ: gear.tube && angle !== null ? spindleHeight.eval({ z_t: gear.tube.waterline, R: gear.arm, A: angle }) : null,
    nearest: nearest === undefined ? null : { station: nearest, room: Math.abs(nearest - station) },
  }
}

/** One box a side over all wheels. */
function wheelBoxes({ gear, floor }: GearInput): WheelBox[] {
  const box = gear.wheelBox
  if (!box || !floor) return []
  const x = [gear.spindles[0] - box.reach, gear.spindles[gear.spindles.length - 1] + box.reach] as const
  return (['left', 'right'] as const).map((side) => ({
    id: `WB-${side}`,
    part: `wheel-box-${side}`,
    side,
    x,
    y: [box.inner, floor.halfWidth] as const,
    z: [-floor.thickness, box.top] as const,
  }))
}

/** What hangs lowest, at rest on level ground. */
function lowest({ gear, frames, toe, bays, floor }: GearInput, ground: number): NonNullable<GearDerived['clearance']> {
  const tube = gear.tube
  const things = [
    { of: 'the lower edge of the skin', z: toe.z, station: frames[0].station },
    ...(tube
      ? gear.spindles.map((s, i) => ({ of: `the tube of axle ${i + 1}`, z: tube.waterline - tube.size / 2, station: s - gear.arm }))
      : []),
    ...bays.map((b) => ({ of: `the bay ${b.id}`, z: -(floor?.thickness ?? 0) - b.depth, station: (b.fore + b.aft) / 2 })),
  ]
  const least = things.reduce((a, b) => (b.z < a.z ? b : a))
  return { height: least.z - ground, of: least.of, station: least.station }
}
