/** What towing, ride and the rules of the road come to, for checks and sheets. SI; damping is a share of critical. */
import type { Worked } from '../quantity/formula.js'
import type { CouplingClass, HitchTest } from '../tables/couplings.js'
import type { LabelLine } from '../tables/labels.js'
import type { LampRow } from '../tables/lamps.js'
import type { Tyre } from '../tables/tyres.js'

/** Something that could not be worked out, and why, in a sentence. */
export interface NotComputed {
  readonly notComputed: string
}

/** Something with a mass: its centre, and how far it reaches along and across, nothing for a point. kg, m. */
export interface MassReach {
  readonly mass: number
  readonly x: number
  readonly y: number
  readonly z: number
  readonly along: number
  readonly across: number
}

/** A load case as towing wants it: the coach as built, the same list in every case, and what this one loads. */
export interface TowingCase {
  readonly id: string
  readonly says: string
  readonly built: readonly MassReach[]
  readonly loads: readonly MassReach[]
}

/** A car as the equations want it. kg, kg m2, m, N/rad a whole axle; `ball` from its centre of mass aft. */
export interface TowCar {
  readonly mass: number
  readonly yawInertia: number
  readonly front: number
  readonly rear: number
  readonly ball: number
  readonly frontStiffness: number
  readonly rearStiffness: number
}

/** The trailer as the equations want it; distances from the ball. */
export interface Towed {
  readonly mass: number
  /** about its own centre of mass */
  readonly yawInertia: number
  readonly centre: number
  readonly axles: readonly { readonly at: number; readonly stiffness: number }[]
}

export interface Rig {
  readonly car: TowCar
  readonly trailer: Towed
  /** N m s */
  readonly hitchDamping: number
}

export interface CaseTowed {
  readonly id: string
  readonly says: string
  readonly mass: number
  /** STA of the centre */
  readonly station: number
  /** load on the ball over the whole weight */
  readonly hitchShare: number
  readonly yawInertia: Worked<'kg*m^2'>
  /** the same with every item a point: what a list without sizes would say */
  readonly asPoints: number
}

/** One case behind one car. */
export interface Steadiness {
  readonly case: string
  readonly car: string
  readonly rig: Rig
  /** at 100 km/h; null where nothing swings */
  readonly damping: number | null
  /** of that swing, Hz */
  readonly frequency: number | null
  /** m/s; null where every swing dies up to the fastest looked at */
  readonly zeroDamping: number | null
  /** m/s at which it leaves the straight without swinging; null where it does not */
  readonly divergence: number | null
}

/** One thing changed on the least steady case of a car, and what it does to the damping at 100 km/h. */
export interface Move {
  readonly says: string
  readonly damping: number | null
}

export interface TowingDerived {
  /** speed the damping is stated at, and the fastest looked at, m/s */
  readonly at: number
  readonly fastest: number
  readonly cars: readonly { readonly id: string; readonly says: string; readonly mass: number; readonly isInertiaReckoned: boolean }[]
  readonly cases: readonly CaseTowed[]
  readonly steadiness: readonly Steadiness[]
  /** for each car its least steady case, and what moves it, the most first */
  readonly moves: readonly {
    readonly car: string
    readonly case: string
    readonly damping: number | null
    readonly changes: readonly Move[]
  }[]
  /** cornering force of the trailer's axles a radian, in their loads */
  readonly tyres: number
  /** extents that name no stated mass */
  readonly unknownExtents: readonly string[]
}

/** One way to spring a wheel. */
export interface Suspension {
  readonly id: 'rubber' | 'rubber-damped' | 'leaf'
  readonly says: string
  /** N/m, N s/m; `loss` is the spring's own */
  readonly spring: number
  readonly damper: number
  readonly loss: number
  /** body over road at each frequency */
  readonly transmissibility: readonly number[]
  /** rms accelerations on each road, m/s2: at the floor plain and weighted, and at the spindle */
  readonly roads: readonly {
    readonly road: 'A' | 'B' | 'C' | 'D'
    readonly body: number
    readonly felt: number
    readonly says: string
    readonly wheel: number
  }[]
}

export interface RideDerived {
  /** on one wheel at gross weight: load N, angle of the arm rad, carried mass kg */
  readonly load: number
  readonly armAngle: number
  readonly arm: number
  readonly body: number
  readonly unsprung: number
  readonly tyreRate: number
  /** how the torque is known */
  readonly torque: 'measured' | 'estimated'
  readonly rate: Worked<'N/m'>
  readonly frequency: Worked<'Hz'>
  /** from no load to this one, m */
  readonly travel: number
  /** km/h of the roads, m/s */
  readonly speed: number
  readonly frequencies: readonly number[]
  readonly suspensions: readonly Suspension[]
  /** roughness index of the mean of each class, m/km */
  readonly roughness: Readonly<Record<'A' | 'B' | 'C' | 'D', number>>
  /** what the rubber of one side comes to; null where it is bought whole */
  readonly rubber: RubberDerived | null
}

export interface RubberDerived {
  readonly corner: Worked<'m'>
  readonly free: Worked<'m'>
  readonly squeeze: Worked<'1'>
  readonly fill: Worked<'1'>
  /** shrink at the glass temperature and in liquid nitrogen */
  readonly shrinkGlass: Worked<'1'>
  readonly shrinkNitrogen: Worked<'1'>
  /** torque of one side a radian, estimated as a bonded bush of the same sizes */
  readonly estimate: Worked<'N*m'>
}

export interface LampPlaced extends LampRow {
  /** waterlines the centre may stand between, m; null where no height is set */
  readonly waterlines: readonly [least: number | null, greatest: number | null]
}

export interface RoadDerived {
  /** why the rules are not applied: another market's are not in the tables */
  readonly notApplied: string | null
  readonly lamps: readonly LampPlaced[]
  readonly width: number
  readonly length: number
  readonly gross: number
  readonly axleRatings: readonly number[]
  readonly coupling: {
    readonly class: CouplingClass | null
    readonly ball: string
    readonly rated: number
    readonly chain: number
    readonly tests: readonly HitchTest[]
    readonly breakaway: boolean
    /** with each tow car, N */
    readonly dValues: readonly { readonly car: string; readonly mass: number; readonly d: number }[]
  }
  readonly tyre: Tyre
  readonly tyreDiameter: number
  /** what the tyres of one axle may be rated at, kg */
  readonly tyresCarry: number
  readonly loadRule: string
  readonly labels: LabelsDerived
}

export interface LabelsDerived {
  readonly vin: string | null
  /** why it may not be fixed yet, in sentences; none when it may */
  readonly draft: readonly string[]
  readonly certification: readonly LabelLine[]
  readonly cargo: readonly LabelLine[]
  readonly responsible: string | null
  /** gross less empty, kg; null until weighed */
  readonly capacity: number | null
  /** mass added later beyond which the label must be changed, kg */
  readonly relabelAbove: number
  /** least height of letters, m */
  readonly letters: number
}
