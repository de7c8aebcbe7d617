/** What stands under the shell, as a shop writes it: floor panel, chassis members, axle group. SI; y right of travel, z up. */
import type { Bought } from './types.js'

/** A hole through the floor: round by its diameter, or a rectangle along the stations. m. */
export interface FloorOpeningDefinition {
  readonly id: string
  readonly says: string
  readonly shape: 'round' | 'rectangle'
  /** diameter, or length along the station */
  readonly size: number
  /** across the coach; null for a round one */
  readonly across: number | null
  readonly station: number
  readonly y: number
}

/** Something laid flat and weighed by its area. kg/m2. */
export interface LayerDefinition {
  readonly says: string
  readonly arealMass: number
}

export interface FixingDefinition {
  readonly diameter: Bought
  /** drilled in the panel, m */
  readonly hole: number
  readonly pitch: number
}

export interface FloorMore {
  readonly panel: LayerDefinition | null
  /** `share` of the panel's outline that is covered: not under what is built in */
  readonly covering: (LayerDefinition & { readonly share: number }) | null
  readonly bolts: FixingDefinition | null
  /** self-drilling in steel: only the panel is drilled; `edge` from the panel's edge, m */
  readonly screws: (FixingDefinition & { readonly edge: number }) | null
  readonly openings: readonly FloorOpeningDefinition[]
  /** router that cuts the panel: cutter diameter, m */
  readonly cutter: number | null
}

/** A channel pressed from sheet: web over all, flange over all, m. */
export interface ChannelDefinition {
  readonly height: number
  readonly flange: number
  readonly thickness: Bought
  /** inside radius of both bends */
  readonly bendRadius: number
}

export interface RailDefinition extends ChannelDefinition {
  /** between the outer faces of the two webs */
  readonly centres: number
  /** flanged lightening holes in the web */
  readonly holes: { readonly diameter: number; readonly pitch: number; readonly clear: number }
}

export interface OutriggerDefinition {
  /** depth at the rail and at the tip */
  readonly root: number
  readonly tip: number
  readonly flange: number
  readonly thickness: Bought
  readonly bendRadius: number
  /** y of the tip */
  readonly reach: number
}

export interface AFrameDefinition extends ChannelDefinition {
  readonly apex: number
  /** between the two legs, rad */
  readonly angle: number
}

export interface PlateDefinition {
  readonly id: string
  readonly says: string
  readonly length: number
  readonly width: number
  readonly thickness: Bought
  readonly station: number
  readonly y: number
  readonly waterline: number
}

/** Bought and fitted as it comes: coupler, jacks, step, spare wheel. kg, m. */
export interface BoughtDefinition {
  readonly id: string
  readonly says: string
  readonly mass: number
  readonly station: number
  readonly y: number
  readonly waterline: number
}

/** Room for a tank, hung between two cross-members. m. */
export interface BayDefinition {
  readonly id: string
  readonly says: string
  readonly fore: number
  readonly aft: number
  /** half of its width either side of `y` */
  readonly half: number
  readonly y: number
  readonly depth: number
  /** angles it hangs by: leg over all */
  readonly bearer: number
}

export interface ChassisMore {
  readonly steel: { readonly name: string; readonly density: number } | null
  readonly kFactor: number
  readonly rail: RailDefinition | null
  readonly crossMember: ChannelDefinition | null
  readonly outrigger: OutriggerDefinition | null
  readonly aFrame: AFrameDefinition | null
  readonly plates: readonly PlateDefinition[]
  readonly bought: readonly BoughtDefinition[]
  readonly bays: readonly BayDefinition[]
  /** no weld or heat within this of a finished rubber tube, m */
  readonly coldZone: number
}

export interface GearMore {
  /** waterline of the ground, coach level and at rest */
  readonly ground: number | null
  /** square tube of the axle: outside, and waterline of its centre; arm below level at rated load and unloaded, rad */
  readonly tube: {
    readonly size: number
    readonly waterline: number
    readonly startAngle: number
    /** null: worked out from the suspension */
    readonly loadedAngle: number | null
    /** how far the arm turns above level at full bump, rad */
    readonly bumpAngle: number
  } | null
  /** tyre as it stands free; `y` of its middle */
  readonly wheel: { readonly radius: number; readonly width: number; readonly y: number } | null
  /** sheet box over the wheels: reach fore and aft of the spindles, inner face, top, flange on the floor */
  readonly wheelBox: {
    readonly reach: number
    readonly inner: number
    readonly top: number
    readonly flange: number
    readonly thickness: Bought
    readonly corner: number
  } | null
}
