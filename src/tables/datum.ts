/**
 * One figure of the outside world: its SI value, the figure as the source gives it, the source, and how far it is verified.
 * A figure nobody has is null in its row, never zero.
 */

import type { QuantityKind } from '../quantity/doors.js'
import { parseQuantity } from '../quantity/doors.js'

/**
 * R read in the source itself; R2 read in a transcription of the source;
 * D computed from first principles; M from memory, not yet checked against print.
 */
export type Status = 'R' | 'R2' | 'D' | 'M'

export interface Datum {
  /** SI */
  readonly value: number
  /** as the source prints it */
  readonly given: string
  readonly source: string
  readonly status: Status
}

/** A datum from the source's own figure; throws on a figure that does not read, since a table is the program's own. */
export function datum(given: string, kind: QuantityKind, source: string, status: Status): Datum {
  const read = parseQuantity(given, kind)
  if (!read.ok) throw new Error(`a table holds "${given}": ${read.says}`)
  return Object.freeze({ value: read.value, given, source, status })
}

/** A look-up that may miss: the row, or a sentence and the names that would have been found. */
export type Found<T> =
  | { readonly ok: true; readonly row: T }
  | { readonly ok: false; readonly says: string; readonly known: readonly string[] }
