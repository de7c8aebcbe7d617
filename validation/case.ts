/** What a validation case is: an outside figure, who printed it and where, and our own code computing the same thing. */

import type { QuantityKind } from '../src/quantity/doors.js'
import { parseQuantity } from '../src/quantity/doors.js'
import type { Alloy } from '../src/tables/alloys.js'
import { ALLOYS, findAlloy } from '../src/tables/alloys.js'
import type { Status } from '../src/tables/datum.js'

export interface ValidationCase {
  readonly id: string
  readonly case: string
  readonly source: string
  /** page, table, paragraph, or how it was worked out */
  readonly at: string
  readonly status: Status
  /** in `unit` */
  readonly expected: number
  /** absolute, in `unit` */
  readonly tolerance: number
  /** computed by the program, in `unit` */
  readonly ours: () => number
  readonly unit: string
}

export interface ValidationFile {
  /** full citation */
  readonly bibliography: string
  readonly cases: readonly ValidationCase[]
}

/** An SI value from the unit a source prints. */
export function si(text: string, kind: QuantityKind): number {
  const read = parseQuantity(text, kind)
  if (!read.ok) throw new Error(read.says)
  return read.value
}

export const inch = si('1 in', 'length')
export const lbf = si('1 lbf', 'force')
export const psi = si('1 psi', 'pressure')
export const ksi = si('1 ksi', 'pressure')
export const degree = si('1 deg', 'angle')

/** A row of our own table, by name and thickness in inches. */
export function alloy(name: string, inches?: number): Alloy {
  const found = findAlloy(name, inches === undefined ? undefined : inches * inch)
  if (!found.ok) throw new Error(`${found.says} (${ALLOYS.length} rows)`)
  return found.row
}
