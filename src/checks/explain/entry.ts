/** One number that can be asked for. */
import type { Design } from '../../derive/design.js'
import type { Derived } from '../../derive/index.js'
import type { Worked } from '../../quantity/formula.js'

export interface Entry {
  /** permanent, as long as what it is about keeps its id */
  readonly id: string
  /** what the number is */
  readonly says: string
  /** worked when it is asked for; a sentence where the figures it needs are not there */
  readonly work: () => Worked | Missing
  /** the tables may have no figure for it; it is tried before it is listed */
  readonly isDoubtful?: true
}

/** Why a number cannot be worked: a table without a figure, never a zero. */
export interface Missing {
  readonly missing: string
}

export const isMissing = (it: Worked | Missing): it is Missing => 'missing' in it

/** What the entries are made from: the design with its checks, and the shell's geometry. */
export interface Subject {
  readonly design: Design
  readonly derived: Derived
}
