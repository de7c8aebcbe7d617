/** The whole derived design: what `derive(definition)` returns and every document and command reads. */
import type { Definition } from '../definition/types.js'
import type { Worked } from '../quantity/formula.js'
import type { Check, EndsDerived, FastenerRow, Joint, OpeningDerived, Part, SectionPoint, Totals } from './nouns.js'
import type { NotComputed, RideDerived, RoadDerived, TowingDerived } from './road-nouns.js'
import type { UnderDerived } from './under-nouns.js'
import type { WeightDerived } from './weight-nouns.js'

export interface Design {
  readonly definition: Definition
  /** first 12 hex digits of SHA-256 over the canonical definition */
  readonly revision: string
  readonly section: {
    readonly points: readonly SectionPoint[]
    /** crown to toe on one side, m */
    readonly halfGirth: number
    /** crown to the floor line, m */
    readonly floorGirth: number
    readonly width: number
    readonly residual: Worked | null
  }
  readonly ends: EndsDerived
  /** floor, chassis and axle group; each null where the definition does not say enough to derive it */
  readonly under: UnderDerived
  readonly parts: readonly Part[]
  readonly rows: readonly FastenerRow[]
  /** bolts and screws of floor and chassis: bought by their own rules, and so kept apart from the rivets */
  readonly bolts: readonly FastenerRow[]
  readonly joints: readonly Joint[]
  readonly openings: readonly OpeningDerived[]
  readonly checks: readonly Check[]
  readonly totals: Totals
  /** what it weighs, and what ball and axles carry in each load case */
  readonly weight: WeightDerived | NotComputed
  /** how it follows each tow car; why not, where nobody has said what that takes */
  readonly towing: TowingDerived | NotComputed
  readonly ride: RideDerived | NotComputed
  readonly road: RoadDerived | NotComputed
  /** trades of the job that no rule of the program covers yet, each with what it would check */
  readonly notCovered: readonly string[]
}
