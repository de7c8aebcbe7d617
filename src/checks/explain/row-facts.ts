/** Two facts of a row that several workings start from. */
import type { FastenerRow } from '../../derive/nouns.js'
import type { Subject } from './entry.js'

/** What is worked from the design alone, without the trades' own geometry. */
export type OfDesign = Pick<Subject, 'design'>

/** The stack most fasteners of a row have. */
export function usualStack(row: FastenerRow): number {
  return row.stacks.reduce((best, s, i) => (s.count > row.stacks[best].count ? i : best), 0)
}

export function typeOf(subject: OfDesign, row: FastenerRow): Subject['design']['definition']['fasteners'][number] {
  const type = subject.design.definition.fasteners.find((f) => f.id === row.fastener)
  if (!type) throw new Error(`row ${row.id} has the unknown fastener ${row.fastener}`)
  return type
}
