/** What the definition says of towing, springs and papers. SI. */
import type { Bought } from './types.js'

export interface TowCarDefinition {
  readonly id: string
  readonly says: string
  readonly mass: number
  /** centre of mass to front axle and to rear axle, and rear axle to ball, m */
  readonly front: number
  readonly rear: number
  readonly overhang: number
  /** kg m2; null to be reckoned from mass and wheelbase */
  readonly yawInertia: number | null
  /** cornering force a radian of slip, in multiples of the axle's load */
  readonly frontTyres: number
  readonly rearTyres: number
}

/** How far a stated item reaches along and across the coach, m; it is named as in the stated masses. */
export interface ExtentDefinition {
  readonly item: string
  readonly along: number
  readonly across: number
}

export interface TowingDefinition {
  readonly coupler: { readonly ball: Bought; readonly rated: number }
  /** breaking force of each of the two chains, N */
  readonly chain: number
  readonly cars: readonly TowCarDefinition[]
  /** as for a car, of the trailer's axles */
  readonly tyres: number
  /** N m s */
  readonly hitchDamping: number
  readonly extents: readonly ExtentDefinition[]
}

export interface SuspensionDefinition {
  /** by its name in the table of tyres */
  readonly tyre: string
  /** of the arm below level without load, rad; null where neither this nor the tube says it */
  readonly startAngle: number | null
  /** measured: torque of one wheel's side against the turn of its arm, rad and N m; null where nobody has measured */
  readonly torque: readonly { readonly turn: number; readonly torque: number }[] | null
  /** the rubber of one side: square tube, square bar, four cords, m and Pa; null where it is bought whole */
  readonly rubber: {
    readonly tube: number
    readonly bar: number
    readonly cord: number
    readonly length: number
    readonly shear: number
  } | null
  readonly loss: number
  /** at the wheel, N s/m; null where there is none */
  readonly shockAbsorber: number | null
  /** wheel, hub and brake, kg */
  readonly unsprung: number
  readonly tyreRate: number
  /** leaf springs to compare with: rate at the wheel, and their friction as a share of critical damping */
  readonly leaf: { readonly rate: number; readonly damping: number } | null
}

export interface PapersDefinition {
  readonly vin: {
    readonly maker: string
    readonly attributes: string
    readonly year: number
    readonly plant: string
    readonly smallMaker: string | null
    readonly serial: number | null
  } | null
  /** month and year of manufacture as printed; null until it is made */
  readonly made: string | null
  /** who answers for the label; null until somebody does */
  readonly responsible: string | null
  /** as the scales said, full gas and empty tanks, kg; null until it was weighed */
  readonly weighed: { readonly empty: number; readonly hitch: number; readonly on: string } | null
  readonly words: readonly { readonly id: string; readonly words: string; readonly by: string; readonly reason: string }[]
}
