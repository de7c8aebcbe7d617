/** Every number of a design that can be asked for, by id, and the number a working found on the way is known by. */
import type { Worked } from '../../quantity/formula.js'
import { type Entry, isMissing, type Subject } from './entry.js'
import { endEntries } from './explain-ends.js'
import { massEntries } from './explain-masses.js'
import { roadEntries } from './explain-road.js'
import { rowEntries } from './explain-rows.js'
import { sectionEntries } from './explain-section.js'
import { stockEntries } from './explain-stock.js'
import { underEntries } from './explain-under.js'
import { weightEntries } from './explain-weight.js'

const ENTRIES = new WeakMap<Subject, ReadonlyMap<string, Entry>>()

/** Made once for a design: a coach has thousands. */
export function numberEntries(subject: Subject): ReadonlyMap<string, Entry> {
  const known = ENTRIES.get(subject)
  if (known) return known
  const all = [
    ...massEntries(subject),
    ...sectionEntries(subject),
    ...stockEntries(subject),
    ...underEntries(subject),
    ...endEntries(subject),
    ...weightEntries(subject),
    ...roadEntries(subject),
    ...rowEntries(subject),
  ]
  // the first of two that share an id is the one that is meant: a row with two spans between the same marks names its first
  const made = new Map([...all].reverse().map((e) => [e.id, e] as const))
  const inOrder = new Map(all.map((e) => [e.id, made.get(e.id) as Entry]))
  ENTRIES.set(subject, inOrder)
  return inOrder
}

const NAMED = new WeakMap<Subject, ReadonlyMap<Worked, string>>()

/**
 * The id of the very result, where it is one that the design itself holds: what is worked anew for whoever asks is never met
 * inside another working.
 */
export function idOfWorked(subject: Subject, worked: Worked): string | null {
  const known = NAMED.get(subject)
  if (known) return known.get(worked) ?? null
  const ids = new Map<Worked, string>()
  const held = [massEntries, underEntries, weightEntries, roadEntries].flatMap((of) => of(subject))
  for (const { id, work } of held) {
    const result = work()
    if (!isMissing(result) && !ids.has(result)) ids.set(result, id)
  }
  NAMED.set(subject, ids)
  return ids.get(worked) ?? null
}
