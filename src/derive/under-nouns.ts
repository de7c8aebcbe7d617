/**
 * What is derived under the shell besides parts: members as they lie, sections, zones, welds, openings of the floor, axle tubes.
 * Plain frozen data, SI; x aft (station), y right of travel, z up (waterline).
 */
import type { Side } from '../definition/types.js'
import type { Worked } from '../quantity/formula.js'
import type { Outline } from './nouns.js'

export type MemberKind = 'rail' | 'cross-member' | 'outrigger' | 'wheel-box-header' | 'a-frame'

/** A member seen from above: its upper flange, what the floor lies on. */
export interface Member {
  readonly part: string
  readonly kind: MemberKind
  readonly says: string
  readonly side: Side
  /** x, y, anticlockwise seen from above */
  readonly plan: Outline
  /** top and bottom waterline */
  readonly top: number
  readonly bottom: number
}

/** An open section as pressed, sharp corners; the sheet's own area from its blank. m2, m4. */
export interface SectionFacts {
  readonly of: string
  readonly says: string
  readonly blank: Worked<'m'>
  readonly allowance: Worked<'m'>
  readonly deduction: Worked<'m'>
  readonly area: Worked<'m^2'>
  /** centre of area from the outer face of the web */
  readonly centre: Worked<'m'>
  readonly Ix: Worked<'m^4'>
  readonly Iy: Worked<'m^4'>
  readonly J: Worked<'m^4'>
  /** shear centre outside the web's middle line */
  readonly shearCentre: Worked<'m'>
  /** with a lightening hole in the web, null without */
  readonly net: { readonly area: Worked<'m^2'>; readonly Ix: Worked<'m^4'> } | null
  readonly linearMass: Worked<'kg/m'>
}

export interface LighteningHole {
  readonly rail: string
  readonly id: string
  readonly station: number
  /** left out, and what stands in its way; null where it is cut */
  readonly leftOut: string | null
}

/** Where nobody may drill or weld on a part: between two distances along it, and between two across. */
export interface Zone {
  readonly part: string
  readonly kind: 'no drill' | 'no weld'
  readonly says: string
  /** stations, m */
  readonly from: number
  readonly to: number
}

export interface Weld {
  readonly no: number
  /** pass of the sequence it belongs to, from 1 */
  readonly step: number
  readonly says: string
  readonly parts: readonly [string, string]
  readonly station: number
  readonly y: number
  /** run of weld, m */
  readonly length: number
}

/** A dimension measured after a step of the welding. */
export interface DistortionCheck {
  readonly after: number
  readonly says: string
  /** m; null where it is looked at rather than measured */
  readonly nominal: number | null
  readonly within: number
}

/** Bought and fitted as it comes. kg, m. */
export interface BoughtItem {
  readonly id: string
  readonly says: string
  readonly mass: number
  readonly centre: readonly [number, number, number]
}

/** Room for a tank as a box. m */
export interface Bay {
  readonly id: string
  readonly says: string
  readonly x: readonly [number, number]
  readonly y: readonly [number, number]
  readonly z: readonly [number, number]
  readonly volume: number
}

export interface ChassisDerived {
  readonly members: readonly Member[]
  readonly sections: readonly SectionFacts[]
  readonly holes: readonly LighteningHole[]
  readonly zones: readonly Zone[]
  readonly welds: readonly Weld[]
  readonly distortion: readonly DistortionCheck[]
  readonly bought: readonly BoughtItem[]
  readonly bays: readonly Bay[]
  /** where the A-frame's legs meet the rails, and where they pass the foremost cross-member */
  readonly aFrame: {
    readonly apex: number
    readonly meets: number
    readonly legLength: number
    readonly crossing: { readonly part: string; readonly y: number } | null
  } | null
  readonly mass: Worked<'kg'>
}

/** How near something of the floor comes to what lies under or beside it; negative where it cuts it. m */
export interface Clearance {
  readonly to: string
  readonly kind: MemberKind | 'wheel-box' | 'edge' | 'opening'
  readonly room: number
}

export interface FloorOpening {
  readonly id: string
  readonly says: string
  readonly outline: Outline
  readonly station: number
  readonly y: number
  /** the nearest of each kind of thing, nearest first */
  readonly clear: readonly Clearance[]
  /** to the nearest cross-member's flange, along the coach */
  readonly toFlange: Clearance | null
}

export interface FloorDerived {
  readonly outline: Outline
  /** enclosed by the outline, before anything is cut out; m2 */
  readonly area: number
  readonly length: number
  readonly width: number
  /** round the outline, m */
  readonly perimeter: number
  /** farthest the arcs of the ends stray from the true curve, m */
  readonly stray: number
  readonly panels: readonly { readonly part: string; readonly from: number; readonly to: number }[]
  /** where two panels meet, and on which cross-member; the member null where none is near */
  readonly joints: readonly { readonly station: number; readonly member: string | null }[]
  readonly openings: readonly FloorOpening[]
  readonly bolts: number
  readonly screws: number
  readonly covering: {
    readonly says: string
    readonly area: number
    readonly mass: Worked<'kg'>
    readonly centre: readonly [number, number, number]
  } | null
}

export interface AxleTube {
  readonly axle: number
  readonly spindle: number
  readonly station: number
  /** waterline of the spindle at gross weight; null where the tube is not written */
  readonly spindleZ: number | null
  /** nearest cross-member and how far; null without cross-members */
  readonly nearest: { readonly station: number; readonly room: number } | null
}

export interface WheelBox {
  readonly id: string
  readonly part: string
  readonly side: Side
  readonly x: readonly [number, number]
  /** unsigned, inner face to the floor's edge */
  readonly y: readonly [number, number]
  readonly z: readonly [number, number]
}

/** Mean axle stations at which every tube is clear, and who stands at each end of the stretch. */
export interface ClearStretch {
  readonly from: number
  readonly to: number
  readonly before: string
  readonly after: string
}

/** One thing beside the axles: where the mean could stand without it, what that gains, and how far it must move where it is in the way; m. */
export interface AxleNeighbour {
  readonly what: string
  readonly from: number
  readonly to: number
  readonly gains: number
  /** null where it does not bar the place as written */
  readonly by: number | null
}

export interface GearDerived {
  readonly tubes: readonly AxleTube[]
  readonly mean: number
  readonly spread: number
  readonly boxes: readonly WheelBox[]
  readonly window: readonly ClearStretch[]
  readonly neighbours: readonly AxleNeighbour[]
  /** of the arm below level at gross weight, rad; null where neither the tube nor the suspension says */
  readonly loadedAngle: number | null
  /** gross weight to full bump, at the spindle, m */
  readonly bumpTravel: number | null
  readonly tubeZ: readonly [number, number] | null
  readonly ground: number | null
  /** waterlines of the ground by axle, arm and tyre, at gross weight and with nothing on the wheels */
  readonly sits: { readonly gross: Worked<'m'>; readonly free: number } | null
  readonly clearance: { readonly height: number; readonly of: string; readonly station: number } | null
  readonly departure: Worked<'rad'> | null
}

export interface UnderDerived {
  readonly gear: GearDerived | null
  readonly chassis: ChassisDerived | null
  readonly floor: FloorDerived | null
}
