/** Where a figure that no formula gave comes from: a value of the written definition, or what it was read or measured off. */
import type { Step } from '../../definition/set-in-text.js'
import type { Subject } from './entry.js'

/** A given figure of a working: which number or check, the way from it to the working, and the symbol there. */
export interface GivenAt {
  readonly subject: Subject
  readonly root: string
  readonly path: readonly string[]
  readonly formula: string
  readonly symbol: string
  /** SI */
  readonly value: number
}

/** A value of the written form, by its written keys. */
export interface WrittenAt {
  readonly steps: readonly Step[]
  /** the figure is so many times what is written: half a lap, a litre as a cubic metre */
  readonly times?: number
  /** SI unit of what is written, where it is not that of the figure */
  readonly unit?: string
}

export interface Given {
  /** the first of these that is written and says just this is where it comes from */
  readonly written: readonly WrittenAt[]
  /** where it comes from in words, for what is not written */
  readonly says: string
}

export type Origin = (at: GivenAt) => Given

/** By formula and symbol; `*` for every term of a total. */
export type Origins = Readonly<Record<string, Readonly<Record<string, Origin>>>>

export const told = (says: string): Given => ({ says, written: [] })
export const words =
  (says: string): Origin =>
  () =>
    told(says)

/** Not written in so many words, then it is what the form says otherwise. */
export const DEFAULT = 'not written: a default of the written form'

export const writtenAt = (steps: readonly Step[], says = DEFAULT): Given => ({ says, written: [{ steps }] })
export const field =
  (...steps: readonly Step[]): Origin =>
  () =>
    writtenAt(steps)

/** The name of the working itself on the way to it: a term of a total. */
export const lastOf = ({ path, root }: GivenAt): string => path[path.length - 1] ?? root
