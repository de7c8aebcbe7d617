/** What the chassis is derived from: its own slice of the definition, and what other trades settle before it. */
import type { ChassisDefinition, Definition, FrameDefinition, SheetMaterial } from '../../definition/types.js'
import type { GearDerived, WheelBox } from '../under-nouns.js'

export interface ChassisInput {
  readonly chassis: ChassisDefinition
  readonly frames: readonly FrameDefinition[]
  /** underside of the floor, what the members' upper flanges carry */
  readonly top: number
  readonly boxes: readonly WheelBox[]
  readonly box: { readonly flange: number; readonly thickness: { readonly name: string; readonly value: number } } | null
  /** stations of the axle tubes, and half of a tube */
  readonly tubes: readonly number[]
  readonly halfTube: number
  readonly belly: SheetMaterial
  /** lower edge of the skin: half width, reach beyond a joint frame, waterline, exponent of its plan at the ends */
  readonly toe: { readonly half: number; readonly reach: number; readonly z: number; readonly exponent: number }
  /** a merchant's sheet the underbelly is cut across */
  readonly bellyStock: { readonly name: string; readonly width: number; readonly length: number }
  /** lap of two sheets, m */
  readonly lap: number
}

/** Null where no chassis is written. */
export function chassisInputOf(
  { chassis, frames, floor, gear, shell, stock }: Pick<Definition, 'chassis' | 'frames' | 'floor' | 'gear' | 'shell' | 'stock'>,
  toe: ChassisInput['toe'],
  axles: GearDerived | null,
): ChassisInput | null {
  if (!chassis) return null
  return {
    chassis,
    frames,
    top: -(floor?.thickness ?? 0),
    boxes: axles?.boxes ?? [],
    box: gear?.wheelBox ?? null,
    tubes: axles?.tubes.map((t) => t.station) ?? [],
    halfTube: (gear?.tube?.size ?? 0) / 2,
    belly: shell.underbelly,
    toe,
    bellyStock: stock.sheets[0],
    lap: shell.lap,
  }
}
