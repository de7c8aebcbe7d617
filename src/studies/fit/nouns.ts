/** What the study of meeting holes says: plain data, joints in order of risk. Lengths m, chances from 0 to 1. */
import type { HoleRole } from '../../derive/nouns.js'

/** What puts a hole out of place. Punching strikes each hole for itself; the others move a whole sheet or member at once. */
export type Cause = 'punching' | 'warmth' | 'drift' | 'thickness' | 'jig'

export interface CauseSize {
  readonly cause: Cause
  /** how far it puts the worst hole out, exceeded in about one coach of twenty, m */
  readonly size: number
}

/** What could be changed, and how the joint would stand then. */
export interface Help {
  readonly what: 'temperature' | 'punch' | 'pilot' | 'slot' | 'pitch' | 'jig'
  readonly says: string
  /** chance that every fastener goes in at the least-squares placement */
  readonly chance: number
  /** holes expected to need reaming */
  readonly reaming: number
}

export interface FitRow {
  readonly row: string
  readonly fastener: string
  /** fasteners of the row that stand in this joint's bodies */
  readonly count: number
  /** chance that all of them go in at the least-squares placement, and how many are expected not to */
  readonly chance: number
  readonly reaming: number
  /** chance that all pilots drill out whole */
  readonly pilots: number
  readonly role: HoleRole
  readonly reason: string
}

/** A joint with each of its sheets against its mates, or one whole sheet against every frame it lies on. */
export interface Fit {
  readonly id: string
  readonly says: string
  /** sheets that are placed, each for itself */
  readonly bodies: readonly string[]
  readonly fasteners: number
  /** most layers a fastener goes through */
  readonly layers: number
  /** least hole less largest shank, m */
  readonly clearance: number
  /** chance that every fastener goes in: nothing moved at all, at least squares, at the best placement there is */
  readonly noFit: number
  readonly leastSquares: number
  readonly minimax: number
  /** fasteners expected to need a reamer at the least-squares placement */
  readonly reaming: number
  /** chance that all pilots drill out whole */
  readonly pilots: number
  /** largest first */
  readonly causes: readonly CauseSize[]
  /** best first */
  readonly helps: readonly Help[]
  readonly rows: readonly FitRow[]
}

/** Joints of one kind together, for a page that has no room for each. */
export interface FitGroup {
  readonly id: string
  readonly says: string
  /** ids of its fits, the worst first */
  readonly fits: readonly string[]
  /** over all of them */
  readonly fasteners: number
  readonly reaming: number
  /** of the worst of them */
  readonly noFit: number
  readonly leastSquares: number
  readonly minimax: number
  /** how many rows have each role, of all that were tried */
  readonly roles: Readonly<Record<HoleRole, number>>
}

export interface FitStudy {
  readonly trials: number
  readonly seed: number
  /** a row is punched full size when its chance is at least this and less than one hole is expected to need reaming */
  readonly target: number
  /** most holes to ream first */
  readonly joints: readonly Fit[]
  /** whole sheets on the frames of the jig, most holes to ream first */
  readonly sheets: readonly Fit[]
  /** the same by kind: joints, then whole sheets; most holes to ream for each fastener first */
  readonly groups: readonly FitGroup[]
  /** what was taken for granted, in sentences */
  readonly assumptions: readonly string[]
  /** why nothing was computed, or null */
  readonly notComputed: string | null
}
