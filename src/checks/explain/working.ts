/**
 * The working behind any number of a design, found by its id: masses, girths, grips, lengths, pitches, strengths, checks.
 * Every number here has its own working; a number the tables cannot give says why instead.
 */
import type { Check } from '../../derive/nouns.js'
import type { Worked } from '../../quantity/formula.js'
import { linkOf } from './chain.js'
import { numberEntries } from './entries.js'
import { type Entry, isMissing, type Subject } from './entry.js'
import { nearIds } from './near-ids.js'

export interface Explainable {
  readonly id: string
  readonly says: string
}

export type Working =
  | { readonly kind: 'number'; readonly id: string; readonly says: string; readonly worked: Worked }
  | { readonly kind: 'check'; readonly id: string; readonly says: string; readonly check: Check }
  /** `says` is why not; `near` are ids that can be explained */
  | { readonly kind: 'none'; readonly says: string; readonly near: readonly string[] }

/** Every id that can be explained on this design, in the order of the trades; what has no figures is left out. */
export function explainable(subject: Subject): readonly Explainable[] {
  const numbers = [...numberEntries(subject).values()].filter((e) => !e.isDoubtful || !isMissing(e.work()))
  return [...numbers.map(({ id, says }) => ({ id, says })), ...subject.design.checks.map((c) => ({ id: `check.${c.id}`, says: c.says }))]
}

/** An id may lead on by what a working names: `weight.case.D.hitch > W`. */
export function working(subject: Subject, id: string): Working {
  const check = subject.design.checks.find((c) => `check.${c.id}` === id)
  if (check) return { kind: 'check', id, says: check.says, check }
  const entries = numberEntries(subject)
  const entry = entries.get(id)
  const link = entry ? null : linkOf(subject, id)
  if (link) return { kind: 'number', id, says: link.says, worked: link.worked }
  if (!entry) return unknown(subject, entries, id)
  const worked = entry.work()
  if (isMissing(worked)) return { kind: 'none', says: `${id} cannot be worked. ${worked.missing}`, near: [] }
  return { kind: 'number', id, says: entry.says, worked }
}

function unknown(subject: Subject, entries: ReadonlyMap<string, Entry>, id: string): Working {
  const known = [...entries.keys(), ...subject.design.checks.map((c) => `check.${c.id}`)]
  const under = known.filter((each) => each.startsWith(`${id}.`))
  const { name } = subject.design.definition.coach
  if (under.length > 0) return { kind: 'none', says: `${id} is not one number but ${under.length}.`, near: under.slice(0, 12) }
  return { kind: 'none', says: `${name} has no number ${id}.`, near: nearIds(id, known) }
}
