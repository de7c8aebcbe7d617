/**
 * The normal form of a written definition: SI numbers, every default filled in, frozen.
 *
 * Axes: x aft (station), y to the right of travel, z up (waterline). Lengths m, angles rad, masses kg.
 * WL 0 is the top face of the floor panel at its edge. Girth G runs from the crown, positive down each side.
 * What is not here yet (circuits, fit-out and other trades) is reserved: see RESERVED in definition-form.ts.
 */

import type { PapersDefinition, SuspensionDefinition, TowingDefinition } from './road-types.js'
import type { ChassisMore, FloorMore, GearMore } from './under-types.js'
import type { MassDefinition, WeightDefinition } from './weight-types.js'

/** A size that is bought by name: the name is printed, the value is computed with. `value` in m. */
export interface Bought {
  readonly name: string
  readonly value: number
}

/** A sheet or board as the merchant sells it; `width` is the smaller side. m. */
export interface StockSize {
  readonly name: string
  readonly width: number
  readonly length: number
}

/** Side of travel. The letters C and R are made at the door from the market and never stored. */
export type Side = 'right' | 'left' | 'centre'
export type Market = 'us' | 'uk' | 'eu' | 'au'

export interface CoachHead {
  readonly name: string
  readonly family: string
  readonly maker: string
  readonly market: Market
  /** ISO date printed on every sheet, e.g. 2026-03-02. */
  readonly date: string
}

/** One element of the half section, from the crown down. Headings: 0 level outboard, pi/2 straight down. */
export type SectionElement =
  | {
      readonly kind: 'arc'
      readonly name: string /** m; negative is concave */
      readonly radius: number /** rad; null = to be fitted */
      readonly to: number | null
    }
  | { readonly kind: 'line'; readonly name: string /** m; null = to be fitted */; readonly length: number | null }

export interface SectionDefinition {
  /** WL of the outer mould line on the centre plane, m. */
  readonly crown: number
  readonly chain: readonly SectionElement[]
  /** Targets to solve fitted elements for; as many as there are fitted values. m. */
  readonly fit: {
    readonly width: number | null
    /** crown to toe, m */
    readonly height: number | null
    /** WL of the widest place */
    readonly belt: number | null
    /** full width at WL 0 */
    readonly floorWidth: number | null
  } | null
}

export interface FrameDefinition {
  readonly id: string
  readonly station: number
  /** Which end section meets the barrel here; null for a plain hoop. */
  readonly joint: 'nose' | 'tail' | null
}

export interface SheetMaterial {
  readonly alloy: string
  readonly thickness: Bought
}

export interface HoopSection {
  readonly alloy: string
  readonly height: number
  readonly flange: number
  readonly thickness: Bought
  /** kg/m */
  readonly linearMass: number
  /** distance of each rivet row from the web, m */
  readonly rowOffset: number
  /** which side of the web the skin row stands; the lining row stands on the other */
  readonly skinRow: 'aft' | 'forward'
}

export interface HatSection {
  readonly alloy: string
  readonly height: number
  readonly flange: number
  readonly thickness: Bought
  readonly linearMass: number
}

export interface AngleSection {
  readonly alloy: string
  readonly leg: number
  readonly thickness: Bought
}

export interface SeamDefinition {
  readonly id: string
  /** outer girth from the crown, m; one on each side */
  readonly girth: number
}

export interface StrakeDefinition {
  /** crown, shoulder … from the crown down; one more than there are seams */
  readonly id: string
  readonly stock: StockSize
  /** strips of this strake to come out of one sheet, side by side */
  readonly across: number
}

export interface ShellDefinition {
  readonly skin: SheetMaterial
  readonly frame: HoopSection
  readonly jointFrame: HatSection
  readonly stringer: AngleSection
  readonly post: AngleSection
  /** ring behind the skin round an opening; `line` is the rivet line's distance outside the cut */
  readonly rim: SheetMaterial & { readonly line: number; readonly minStub: number }
  readonly edgeChannel: { readonly alloy: string; readonly thickness: Bought; readonly linearMass: number; readonly height: number }
  /** tape between frame and lining, m */
  readonly tape: number
  /** sheet under the floor, riveted to the toe flange */
  readonly underbelly: SheetMaterial
  readonly seams: readonly SeamDefinition[]
  readonly strakes: readonly StrakeDefinition[]
  /** full lap width of a seam, m */
  readonly lap: number
  /** upper sheet over lower (sheds water) or lower over upper */
  readonly lapOrder: 'upper over lower' | 'lower over upper'
  /** the transverse lap on the end sections */
  readonly joint: { readonly overlap: number; readonly rowSpacing: number; readonly over: 'barrel' | 'end' }
  readonly toe: {
    readonly flange: number /** rad, 0 = straight on */
    readonly turn: number /** m */
    readonly bendRadius: number
    readonly kFactor: number
  }
  readonly assembly: 'ends first' | 'barrel first'
  /** gap left between a member's end and the member it stops at, m */
  readonly memberGap: number
}

export interface LiningDefinition extends SheetMaterial {
  readonly stock: StockSize
  /** girths of the lengthwise joints, measured on the outer mould line and mapped along the normal, m */
  readonly seams: readonly SeamDefinition[]
  /** frame ids where panels meet end to end */
  readonly joints: readonly string[]
  readonly lap: number
  /** the lining stops this far above WL 0, m */
  readonly floorGap: number
}

export interface FastenerType {
  readonly id: string
  readonly kind: 'solid' | 'blind'
  readonly diameter: Bought
  readonly head: string
  readonly alloy: string
  /** punched hole, m */
  readonly hole: number
  /** pilot hole, m */
  readonly pilot: number
  /** least and greatest diameter of the shank, m; null where nobody has said */
  readonly shank: readonly [number, number] | null
}

export type RowKind = 'seam' | 'joint' | 'hoop' | 'base' | 'rim' | 'toe' | 'lining' | 'gore'
export interface RowRule {
  readonly fastener: string
  readonly pitch: number
}

export interface ShopRules {
  /** multiples of the fastener diameter */
  readonly edgeDistance: number
  readonly minPitch: number
  readonly maxPitch: number
  readonly transversePitch: number
  /** nominal edge distance in laps, m */
  readonly lapEdge: number
  readonly rivetLength: 'next up' | 'nearest'
  /** free distance a bucking bar needs from a web or leg, m */
  readonly buckClearance: number
  /** m */
  readonly tubeToCrossMember: number
  readonly flueToWindow: number
  readonly clampMargin: number
}

export interface StockRules {
  readonly sheets: readonly StockSize[]
  readonly board: StockSize
  /** squared off each mill edge, m */
  readonly trim: number
  readonly kerf: number
}

export type Surface = 'right' | 'left' | 'roof' | 'nose' | 'tail'
export type OpeningKind = 'door' | 'window' | 'vent' | 'hatch' | 'flue' | 'service'

/** `width` along the station, `height` by waterline on a side, by girth on the roof. m, kg. */
export interface OpeningDefinition {
  readonly id: string
  readonly says: string
  readonly kind: OpeningKind
  readonly surface: Surface
  readonly station: number
  /** WL of the centre; null on the roof */
  readonly waterline: number | null
  /** roof only: girth of the centre, signed, right positive */
  readonly girth: number
  readonly width: number
  readonly height: number
  readonly corner: number
  readonly mass: number
  /** a window or hatch that opens (a fixed one does not) */
  readonly opens: boolean
}

export interface GearDefinition extends GearMore {
  /** spindle stations, m */
  readonly spindles: readonly number[]
  /** trailing arm: the tube stands this far ahead of the spindle */
  readonly arm: number
  readonly wheelOpening: { readonly half: number; readonly top: number; readonly corner: number }
}

export interface ChassisDefinition extends ChassisMore {
  readonly crossMembers: readonly number[]
  readonly crossMemberFlange: number
}

export interface FloorDefinition extends FloorMore {
  readonly thickness: number
  /** panel half-width and reach beyond each joint frame, m */
  readonly halfWidth: number
  readonly endReach: number
}

/** One piece of a profile whose every value is known. */
export type ProfileElement =
  | { readonly kind: 'arc'; readonly name: string; readonly radius: number; readonly to: number }
  | { readonly kind: 'line'; readonly name: string; readonly length: number }

/** Nose and tail, made on one pair of jigs and so alike but for their openings. */
export interface EndsDefinition {
  readonly skin: SheetMaterial
  /** STA of the coupler face */
  readonly couplerFace: number
  /** centre-line profile from the crown down, outboard from the joint; cut at the section's toe */
  readonly profile: readonly ProfileElement[]
  /** n of the plan outline |y/Y|^n + |x/L|^n = 1 at every waterline */
  readonly exponent: number
  /** azimuths of the seam ribs of one side from the centre line, ascending, rad; 0 is a seam on the centre line */
  readonly seams: readonly number[]
  /** drawn on a stretch press, or bent over its two ribs without stretching */
  readonly make: 'formed' | 'wrapped'
  /** least thickness left after forming, m */
  readonly minThickness: number
  /** how far inside the lofted surface a wrapped skin may lie, m */
  readonly within: number
  /** length of the crown cap along each rib from the crown, m */
  readonly cap: number
  /** full lap width of a gore seam, m */
  readonly lap: number
}

/** How well the shop punches and sets up. Temperatures in degrees Celsius, from and to. */
export interface ProcessDefinition {
  /** of a hole's position, an axis, m */
  readonly punchSigma: number
  /** stated limit either way (three sigma) of the scale along a sheet, m per m */
  readonly drift: number
  readonly sheetTempC: readonly [number, number]
  readonly jigTempC: readonly [number, number]
  /** stated limit either way (three sigma) of a sheet's thickness, m */
  readonly thickness: number
  readonly endJigSigma: number
  readonly sideJigSigma: number
}

export interface Definition {
  readonly schema: number
  readonly coach: CoachHead
  readonly section: SectionDefinition
  readonly frames: readonly FrameDefinition[]
  readonly shell: ShellDefinition
  readonly lining: LiningDefinition
  readonly stock: StockRules
  readonly fasteners: readonly FastenerType[]
  readonly rows: Readonly<Record<RowKind, RowRule>>
  readonly rules: ShopRules
  readonly openings: readonly OpeningDefinition[]
  readonly gear: GearDefinition | null
  readonly chassis: ChassisDefinition | null
  readonly floor: FloorDefinition | null
  readonly ends: EndsDefinition
  readonly process: ProcessDefinition | null
  readonly towing: TowingDefinition | null
  readonly suspension: SuspensionDefinition | null
  readonly papers: PapersDefinition | null
  readonly weight: WeightDefinition | null
  readonly masses: readonly MassDefinition[]
}

/** One thing wrong in a written definition. Line and column count from 1. */
export interface Fault {
  readonly path: string
  readonly file: string
  readonly line: number
  readonly column: number
  readonly expected: string
  readonly found: string
  /** a whole sentence: what, where, what to do */
  readonly says: string
}
