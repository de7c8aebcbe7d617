/** What the floor is derived from. */
import type { ChassisDefinition, Definition, FloorDefinition, FrameDefinition, StockSize } from '../../definition/types.js'
import type { Member, WheelBox } from '../under-nouns.js'

export interface FloorInput {
  readonly floor: FloorDefinition
  readonly frames: readonly FrameDefinition[]
  /** of the plan outline of the ends */
  readonly exponent: number
  readonly board: StockSize
  /** upper flanges of the chassis, seen from above */
  readonly members: readonly Member[]
  readonly boxes: readonly WheelBox[]
  /** flange of a wheel box on the floor, and the radius of the cut's inner corners */
  readonly box: { readonly flange: number; readonly corner: number } | null
  /** thickness of each kind of member's sheet */
  readonly sheet: (member: Member) => number
}

export type FloorSlice = Pick<Definition, 'floor' | 'frames' | 'ends' | 'stock' | 'gear' | 'chassis'>

/** Null where no floor is written. */
export function floorInputOf(definition: FloorSlice, members: readonly Member[], boxes: readonly WheelBox[]): FloorInput | null {
  const { floor, frames, ends, stock, gear, chassis } = definition
  if (!floor) return null
  return {
    floor,
    frames,
    exponent: ends.exponent,
    board: stock.board,
    members,
    boxes,
    box: gear?.wheelBox ?? null,
    sheet: (member) => sheetOf(chassis, member),
  }
}

/** Thickness of the sheet a bolt goes through. */
function sheetOf(chassis: ChassisDefinition | null, member: Member): number {
  const of = {
    rail: chassis?.rail,
    'cross-member': chassis?.crossMember,
    outrigger: chassis?.outrigger,
    'wheel-box-header': chassis?.crossMember,
    'a-frame': chassis?.aFrame,
  }[member.kind]
  if (!of) throw new Error(`${member.part} lies in the chassis and has no section`)
  return of.thickness.value
}
