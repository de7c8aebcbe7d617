/** What the definition says of weight and balance: ratings, tanks, gas, stowage and the load cases looked at. SI. */

/** Where a station is counted from: the datum, the mean axle, the last joint frame, or the tip of the tail. */
export type CountedFrom = 'datum' | 'axles' | 'last frame' | 'tail'

/** A place for something that is not built in. m. */
export interface PlaceDefinition {
  readonly from: CountedFrom
  readonly station: number
  readonly y: number
  readonly waterline: number
}

export type TankKind = 'fresh' | 'grey' | 'black'

export interface TankDefinition extends PlaceDefinition {
  readonly id: string
  readonly kind: TankKind
  readonly litres: number
  /** id of the bay of the chassis it hangs in; null where nobody has said */
  readonly bay: string | null
}

/** A way to stow: shares of the cargo in the places, in their order. */
export interface StowageDefinition {
  readonly id: string
  readonly says: string
  readonly shares: readonly number[]
}

export interface LoadCaseDefinition {
  readonly id: string
  readonly says: string
  /** gas cylinders full */
  readonly gas: boolean
  /** kinds of tank that are full */
  readonly full: readonly TankKind[]
  /** id of a stowage; null for no cargo */
  readonly stowage: string | null
  /** cargo, kg; null for as much as the gross rating leaves */
  readonly cargo: number | null
  /** ids of what is carried besides */
  readonly carrying: readonly string[]
  /** a case the coach is designed for; the others show how it may not be stowed */
  readonly design: boolean
}

/** Slings round two frames of the bare body, under a hook. m. */
export interface LiftDefinition {
  readonly groups: readonly MassGroup[]
  /** items of those groups that are not in it yet */
  readonly without: readonly string[]
  /** frames the slings go round */
  readonly fore: string
  readonly aft: string
  /** hook above the crown of the frames */
  readonly hook: number
  /** beam that holds the legs apart over each frame */
  readonly spreader: number
  /** what a leg may hold, N */
  readonly legRated: number
}

export interface WeightDefinition {
  /** STA of the ball, WL of the ground, between the middles of the two wheels of an axle, m */
  readonly ball: number
  readonly ground: number
  readonly track: number
  /** gross rating, and that of each axle from the front, kg */
  readonly gross: number
  readonly axleRatings: readonly number[]
  /** least and greatest load of the hitch, as shares of the whole weight */
  readonly hitch: readonly [number, number]
  /** growth allowance of each group of masses, as a share of it; null for what the list states */
  readonly growth: Readonly<Record<Exclude<MassGroup, 'GR'>, number>> | null
  /** what the cylinders hold, kg */
  readonly gas: (PlaceDefinition & { readonly mass: number }) | null
  readonly tanks: readonly TankDefinition[]
  readonly places: readonly (PlaceDefinition & { readonly id: string; readonly says: string })[]
  readonly stowage: readonly StowageDefinition[]
  readonly carried: readonly (PlaceDefinition & { readonly id: string; readonly says: string; readonly mass: number })[]
  readonly cases: readonly LoadCaseDefinition[]
  /** how the bare body is lifted; null where nobody has said */
  readonly lift: LiftDefinition | null
  /** the stated list alone is weighed: no derived part counts, and no growth but what the list states */
  readonly listOnly: boolean
}

export const MASS_GROUPS = ['CH', 'RG', 'FL', 'SH', 'OP', 'FU', 'AP', 'WA', 'EL', 'LP', 'EX', 'GR'] as const
export const GROUP_WORDS = {
  CH: 'chassis',
  RG: 'running gear',
  FL: 'floor',
  SH: 'shell',
  OP: 'openings',
  FU: 'furniture',
  AP: 'appliances',
  WA: 'water',
  EL: 'electrical',
  LP: 'gas',
  EX: 'exterior',
  GR: 'growth',
} as const satisfies Readonly<Record<(typeof MASS_GROUPS)[number], string>>
export type MassGroup = (typeof MASS_GROUPS)[number]

/** A stated mass: kg at station, buttock line and waterline. */
export interface MassDefinition {
  readonly group: MassGroup
  readonly item: string
  readonly mass: number
  /** null at the mean axle */
  readonly station: number | null
  readonly y: number
  readonly waterline: number
  readonly by: 'stated' | 'bought' | 'weighed'
  /** what is derived in its stead once it is: `strake`, `nose gore`, `opening D1`, `rivets`, `growth` */
  readonly twins: readonly string[]
  /** what of it no twin holds, and stays stated beside them, kg */
  readonly rest: number
}
