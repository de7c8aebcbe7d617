/** What weight and balance come to, for checks, towing and sheets. SI; a load is given as the mass that weighs as much, kg. */
import type { MassDefinition, MassGroup, WeightDefinition } from '../definition/weight-types.js'
import type { Worked } from '../quantity/formula.js'
import type { MassReach } from './road-nouns.js'

/** Who says so: worked out here, the seller, the scales, or somebody's word. */
export type SaidBy = 'derived' | 'bought' | 'weighed' | 'stated'

export type Point = readonly [x: number, y: number, z: number]

/** Something derived or bought by the design itself, with the words a stated item may call it by. */
export interface Twin {
  readonly id: string
  readonly says: string
  readonly words: readonly string[]
  readonly group: MassGroup
  readonly by: SaidBy
  readonly mass: Worked<'kg'>
  readonly points: readonly MassReach[]
}

/** What the trade is handed. */
export interface WeightInput {
  readonly weight: WeightDefinition
  readonly masses: readonly MassDefinition[]
  readonly twins: readonly Twin[]
  readonly reach: ReadonlyMap<string, { readonly along: number; readonly across: number }>
  readonly spindles: readonly number[]
  readonly frames: readonly { readonly id: string; readonly station: number }[]
  readonly lastFrame: number
  readonly tail: number
  readonly wheelRate: number | null
  readonly tyre: number | null
}

/** One line of the mass schedule: a part, all the parts that stand for a stated item, or a stated item. */
export interface MassLine {
  readonly id: string
  readonly says: string
  readonly group: MassGroup
  readonly by: SaidBy
  readonly mass: Worked<'kg'>
  readonly centre: Point
  /** what it is made of, one by one, with the reach of each */
  readonly points: readonly MassReach[]
  /** parts it stands for; 1 for a thing by itself */
  readonly count: number
  /** what of its mass is stated beside what is derived, kg */
  readonly rest: number
  /** what the list says of the same, kg; null where it says nothing of it */
  readonly stated: number | null
}

export interface GroupWeighed {
  readonly group: MassGroup
  readonly mass: Worked<'kg'>
  readonly centre: Point
  /** as the list alone has it, kg */
  readonly stated: number
  readonly moments: readonly [Worked<'kg*m'>, Worked<'kg*m'>, Worked<'kg*m'>]
}

/** Something that is in one load case and not in another. */
export interface Load {
  readonly says: string
  readonly kind: 'gas' | 'water' | 'cargo' | 'carried'
  readonly mass: Worked<'kg'>
  readonly at: Point
}

export interface AxleLoad {
  readonly station: number
  readonly rating: number
  readonly load: Worked<'kg'>
  readonly left: Worked<'kg'>
  readonly right: Worked<'kg'>
}

/** How far the ball may stand below and above level, m, before an axle passes its rating; null where none gains load that way. */
export interface HeightError {
  readonly below: Worked<'m'> | null
  readonly above: Worked<'m'> | null
}

export interface CaseWeighed {
  readonly id: string
  readonly says: string
  readonly design: boolean
  readonly loads: readonly Load[]
  readonly mass: Worked<'kg'>
  readonly centre: readonly [Worked<'m'>, Worked<'m'>, Worked<'m'>]
  readonly hitch: Worked<'kg'>
  readonly share: Worked<'1'>
  readonly onAxles: Worked<'kg'>
  readonly axles: readonly AxleLoad[]
  readonly stability: Worked<'1'>
  /** of a tandem whose springs are known; null for one axle, or where they are not */
  readonly heightError: HeightError | null
  /** what is left of each limit over the limit: of the hitch's band over the weight; null where there is none */
  readonly margins: { readonly hitch: number; readonly gross: number; readonly axle: number; readonly tyre: number | null }
  /** cargo that fills it to the gross rating, and its centre; null where nothing is filled up */
  readonly filled: { readonly mass: number; readonly at: Point } | null
}

/** A stated item and the parts that stand for it, or why they do not. */
export interface Twinned {
  readonly item: string
  readonly group: MassGroup
  readonly stated: number
  /** kg, the rest with it; null where it stays as stated */
  readonly derived: number | null
  /** twins named that nothing derived answers to */
  readonly missing: readonly string[]
}

export interface Twice {
  readonly says: string
  readonly at: Point
}

export type LimitKind = 'hitch-least' | 'hitch-most' | 'gross' | 'axle' | 'tyre'

/** What may still be added at a place, kg, and what stops it; null where nothing does. */
export interface Room {
  readonly at: Point
  readonly mass: number | null
  readonly limit: LimitKind | null
  readonly case: string | null
}

/** The case that is nearest to a limit: what is left, kg, and that over what it is a limit of. */
export interface Nearest {
  readonly limit: LimitKind
  readonly case: string
  readonly left: number
  readonly margin: number
}

export interface SlingLoad {
  readonly frame: string
  readonly station: number
  /** straight up, along its two legs together, and of each leg */
  readonly load: Worked<'N'>
  readonly tension: Worked<'N'>
  readonly leg: number
  readonly angle: Worked<'rad'>
}

/** The bare body on its slings. */
export interface LiftDerived {
  readonly mass: Worked<'kg'>
  readonly centre: Point
  readonly lines: readonly string[]
  /** items left out that the list does not have */
  readonly unknown: readonly string[]
  /** why it may not be lifted so; null where it may */
  readonly blocked: string | null
  /** none where it is blocked */
  readonly slings: readonly SlingLoad[]
  readonly hook: number
  readonly spreader: number
  readonly legRated: number
}

export interface WeightDerived {
  readonly ball: number
  /** mean axle */
  readonly axle: number
  readonly ground: number
  readonly track: number
  readonly gross: number
  readonly ratings: readonly number[]
  readonly hitchBand: readonly [number, number]
  /** load one tyre bears at its pressure; null where no tyre is written */
  readonly tyre: number | null
  readonly listOnly: boolean
  readonly lines: readonly MassLine[]
  readonly groups: readonly GroupWeighed[]
  /** everything built in, and the same with full cylinders */
  readonly built: Worked<'kg'>
  readonly unloaded: Worked<'kg'>
  readonly capacity: Worked<'kg'>
  readonly cases: readonly CaseWeighed[]
  readonly places: readonly { readonly id: string; readonly says: string; readonly at: Point; readonly room: Room }[]
  readonly nearest: readonly Nearest[]
  readonly twinned: readonly Twinned[]
  readonly twice: readonly Twice[]
  /** null where nobody has said how it is lifted */
  readonly lift: LiftDerived | null
}
