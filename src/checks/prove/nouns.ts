/** What proving a hole list takes and gives. All lengths m and angles rad unless a name ends in another unit. */
import type { FlatFrame, Outline } from '../../derive/nouns.js'

export type ListUnit = 'mm' | 'in'

/** One hole somebody listed, in the list's own unit and axes. `line` counts from 1 in the file it came from. */
export interface Reading {
  readonly label: string
  readonly line: number
  readonly x: number
  readonly y: number
  /** in the list's unit, null where the list does not say */
  readonly diameter: number | null
}

/**
 * A hole list as it was written. `unit` null means the list does not say and both are tried.
 * `corners` are places the list says are corners of the sheet, not holes; they anchor the fit.
 * `taped` is true when only one running dimension a hole was given: the readings then lie on one straight line.
 */
export interface HoleList {
  readonly name: string
  readonly unit: ListUnit | null
  readonly taped: boolean
  /** the row of ours the list says it was taped along, or null */
  readonly row: string | null
  readonly readings: readonly Reading[]
  readonly corners: readonly (readonly [number, number])[]
  /** things the reader noticed and a person should know, in sentences */
  readonly notes: readonly string[]
}

/** A hole of our pattern, in the pattern's axes. */
export interface OurHole {
  readonly id: string
  readonly row: string
  readonly x: number
  readonly y: number
  readonly diameter: number
}

/** The pattern a list is laid on. */
export interface OurPattern {
  readonly part: string
  readonly face: string
  readonly flat: FlatFrame
  readonly outline: Outline
  readonly cuts: readonly Outline[]
  readonly holes: readonly OurHole[]
}

/** pattern = turn(list, its x reversed first when mirrored) + (x, y). The list is already in metres. */
export interface Placement {
  readonly mirrored: boolean
  readonly turn: number
  readonly x: number
  readonly y: number
}

/** One listed hole against ours. `at` is where the list puts it in our axes; dx, dy = list minus ours. */
export interface Compared {
  readonly label: string
  readonly line: number
  readonly at: readonly [number, number]
  readonly hole: string | null
  readonly dx: number | null
  readonly dy: number | null
  readonly distance: number | null
  readonly within: boolean
  /** listed minus ours, null where the list gives none */
  readonly diameterDifference: number | null
}

/** How the list lies when placed one way. `worst` is of the least-squares fit, `leastWorst` of the minimax fit. */
export interface Fitted {
  readonly unit: ListUnit
  readonly placement: Placement
  /** holes of the list within tolerance, and how many it has */
  readonly agree: number
  readonly of: number
  readonly rms: number
  readonly worst: number
  readonly leastWorst: number
  /** how much longer the list is than ours, m a metre, and what is left when that is taken out; null with too few holes to say */
  readonly stretch: { readonly perMetre: number; readonly rms: number; readonly worst: number } | null
  readonly compared: readonly Compared[]
}

/** The hole that tells the placements apart. `listed` is where to look in the list's own axes and unit. */
export interface AskFor {
  readonly hole: string
  readonly x: number
  readonly y: number
  readonly listed: readonly [number, number]
  readonly listUnit: ListUnit
  /** distance to our nearest hole if the second placement were the right one */
  readonly apart: number
}

export type ProveVerdict = 'agrees' | 'disagrees' | 'undecided'

export interface ProveReport {
  readonly part: string
  readonly face: string
  readonly list: string
  readonly revision: string
  readonly tolerance: number
  readonly verdict: ProveVerdict
  /** the best placement; null when the list fits nowhere */
  readonly best: Fitted | null
  readonly second: Fitted | null
  /** placements besides the best that fit as well (counting stops at a limit) */
  readonly rivals: number
  /** true when the pattern is the same turned or mirrored on itself, so that no hole can tell which way the list lies */
  readonly selfAlike: boolean
  readonly askFor: AskFor | null
  /** true when the list holds so few of ours that what it leaves out says nothing */
  readonly sample: boolean
  /** how many of ours within the extent of the list it lacks, sample or not */
  readonly lacking: number
  /** ours within the extent of the list that the list lacks; empty for a sample */
  readonly missing: readonly { readonly hole: string; readonly x: number; readonly y: number }[]
  /** listed and not ours */
  readonly extra: readonly { readonly label: string; readonly line: number; readonly x: number; readonly y: number }[]
  readonly summary: readonly string[]
}
