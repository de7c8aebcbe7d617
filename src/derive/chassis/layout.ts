/** Where every member of the chassis lies, seen from above: before anything is bolted to it. */
import type { Side } from '../../definition/types.js'
import type { Outline } from '../nouns.js'
import type { Member } from '../under-nouns.js'
import type { ChassisInput } from './input.js'

export const SIDES = ['left', 'right'] as const
export const handOf = (side: Side): 1 | -1 => (side === 'left' ? -1 : 1)

/** `4830` or `2509.8` of a station in m. */
export const inWords = (station: number): string => (Math.round(station * 1e4) / 10).toString()

/**
 * A cross-member is called after the frame it stands at, or by its number in the bay behind one, so that moving it a little
 * or lengthening the coach renames nothing: cross-member-F4, cross-member-F4-1, cross-member-nose-1, cross-member-tail-2.
 */
export function crossMemberPart({ chassis, frames }: Pick<ChassisInput, 'chassis' | 'frames'>, station: number): string {
  const at = frames.find((f) => Math.abs(f.station - station) < 1e-6)
  if (at) return `cross-member-${at.id}`
  const behind = [...frames].reverse().find((f) => f.station < station)
  const ahead = frames.find((f) => f.station > station)
  const same = chassis.crossMembers.filter(
    (s) => (!behind || s > behind.station + 1e-6) && (!ahead || s < ahead.station - 1e-6) && s <= station,
  )
  return `cross-member-${!behind ? 'nose' : !ahead ? 'tail' : behind.id}-${same.length}`
}

function box(x0: number, x1: number, y0: number, y1: number): Outline {
  const [a, b] = [Math.min(y0, y1), Math.max(y0, y1)]
  return [
    [x0, a, 0],
    [x1, a, 0],
    [x1, b, 0],
    [x0, b, 0],
  ]
}

/** Frames whose outrigger on a side no wheel box displaces. */
export function outriggerFrames({ frames, boxes }: ChassisInput, side: Side) {
  const box = boxes.find((b) => b.side === side)
  return frames.filter((f) => !box || f.station <= box.x[0] || f.station >= box.x[1])
}

/** From the foremost to the aftmost cross-member. */
export function railSpan({ chassis }: ChassisInput): readonly [number, number] {
  const all = chassis.crossMembers
  return [Math.min(...all), Math.max(...all)]
}

export function layOutMembers(input: ChassisInput): Member[] {
  const { chassis, top } = input
  const { rail, crossMember, outrigger, aFrame } = chassis
  if (!rail || !crossMember) return []
  const half = rail.centres / 2
  const [x0, x1] = railSpan(input)
  const members: Member[] = SIDES.map((side) => ({
    part: `rail-${side}`,
    kind: 'rail',
    says: `main rail, ${side}`,
    side,
    plan: box(x0, x1, handOf(side) * half, handOf(side) * (half - rail.flange)),
    top,
    bottom: top - rail.height,
  }))
  for (const station of chassis.crossMembers) {
    const { inner } = crossMemberEnd(input, station)
    members.push({
      part: crossMemberPart(input, station),
      kind: 'cross-member',
      says: `cross-member at STA ${inWords(station)}`,
      side: 'centre',
      plan: box(station - crossMember.flange / 2, station + crossMember.flange / 2, -inner, inner),
      top,
      bottom: top - crossMember.height,
    })
  }
  if (outrigger)
    for (const side of SIDES)
      for (const frame of outriggerFrames(input, side))
        members.push({
          part: `outrigger-${frame.id}-${side}`,
          kind: 'outrigger',
          says: `outrigger at ${frame.id}, ${side}`,
          side,
          plan: box(
            frame.station - outrigger.flange / 2,
            frame.station + outrigger.flange / 2,
            handOf(side) * half,
            handOf(side) * outrigger.reach,
          ),
          top,
          bottom: top - outrigger.root,
        })
  for (const wheels of input.boxes) {
    const span = headerSpan(input, wheels.side)
    if (!span || !outrigger) continue
    // its web stands against the box's inner face, its flange inboard under the floor
    const y = handOf(wheels.side) * wheels.y[0]
    members.push({
      part: `wheel-box-header-${wheels.side}`,
      kind: 'wheel-box-header',
      says: `wheel-box header, ${wheels.side}`,
      side: wheels.side,
      plan: box(span[0], span[1], y, y - handOf(wheels.side) * crossMember.flange),
      top,
      bottom: top - crossMember.height,
    })
  }
  if (aFrame) for (const side of SIDES) members.push(leg(input, side))
  return members
}

/** A header runs from the outrigger ahead of its box to the one behind; null where a side has none. */
export function headerSpan(input: ChassisInput, side: Side): readonly [number, number] | null {
  const wheels = input.boxes.find((b) => b.side === side)
  if (!wheels) return null
  const stations = outriggerFrames(input, side).map((f) => f.station)
  const [ahead, behind] = [stations.filter((s) => s <= wheels.x[0]), stations.filter((s) => s >= wheels.x[1])]
  return ahead.length === 0 || behind.length === 0 ? null : [Math.max(...ahead), Math.min(...behind)]
}

/**
 * A cross-member ends at the rails' webs, or inside the legs of the A-frame where they stand nearer the middle. m from the
 * centre plane.
 */
export function crossMemberEnd(input: ChassisInput, station: number): { readonly inner: number; readonly inLegs: boolean } {
  const { rail, crossMember, aFrame } = input.chassis
  if (!rail || !crossMember) throw new Error('cross-members without their section')
  const rails = rail.centres / 2 - rail.thickness.value
  if (!aFrame) return { inner: rails, inLegs: false }
  const a = aFrame.angle / 2
  // its forward edge stands where the legs are nearest
  const legs = (station - crossMember.flange / 2 - aFrame.apex) * Math.tan(a) - aFrame.thickness.value / Math.cos(a)
  return legs < rails ? { inner: legs, inLegs: true } : { inner: rails, inLegs: false }
}

interface Reach {
  /** station where the legs' outer faces meet the rails' */
  readonly meets: number
  /** along a leg's outer face, apex to rail */
  readonly length: number
  /** along it, from where its flanges are coped to slip between the rail's */
  readonly coped: number
}

export function aFrameReach({ chassis }: ChassisInput): Reach | null {
  const { aFrame, rail } = chassis
  if (!aFrame || !rail) return null
  const half = rail.centres / 2
  const sin = Math.sin(aFrame.angle / 2)
  return { meets: aFrame.apex + half / Math.tan(aFrame.angle / 2), length: half / sin, coped: (half - rail.flange) / sin }
}

/** Seen from above: its flange from the mitre on the centre plane to the cope, inboard of the outer face. */
function leg(input: ChassisInput, side: 'left' | 'right'): Member {
  const { aFrame } = input.chassis
  const reach = aFrameReach(input)
  if (!aFrame || !reach) throw new Error('a leg of an A-frame that is not written')
  const hand = handOf(side)
  const [cos, sin] = [Math.cos(aFrame.angle / 2), Math.sin(aFrame.angle / 2)]
  const at = (s: number, inboard: number): [number, number, number] => [
    aFrame.apex + s * cos + inboard * sin,
    hand * (s * sin - inboard * cos),
    0,
  ]
  const plan: Outline = [at(0, 0), at(reach.coped, 0), at(reach.coped, aFrame.flange), at(aFrame.flange * (cos / sin), aFrame.flange)]
  return {
    part: `a-frame-${side}`,
    kind: 'a-frame',
    says: `leg of the A-frame, ${side}`,
    side,
    plan: side === 'right' ? [...plan].reverse() : plan,
    top: input.top,
    bottom: input.top - aFrame.height,
  }
}
