/**
 * The working behind any number of a design, found by its id: masses, girths, grips, lengths, pitches, strengths, checks.
 * Every number here has its own working; a number the tables cannot give says why instead.
 */
import * as chassisFormulas from '../../derive/chassis/section.formulas.js'
import * as endsFormulas from '../../derive/ends/ends.formulas.js'
import * as wrapFormulas from '../../derive/ends/wrap.formulas.js'
import * as floorFormulas from '../../derive/floor/floor.formulas.js'
import * as gearFormulas from '../../derive/gear/gear.formulas.js'
import type { Check } from '../../derive/nouns.js'
import * as rideFormulas from '../../derive/ride/ride.formulas.js'
import { shellFormulas } from '../../derive/shell/formulas/index.js'
import * as towingFormulas from '../../derive/towing/towing.formulas.js'
import * as liftFormulas from '../../derive/weight/lift.formulas.js'
import * as weightFormulas from '../../derive/weight/weight.formulas.js'
import type { Formulas } from '../../quantity/explain.js'
import type { AnyFormula, Worked } from '../../quantity/formula.js'
import { type Entry, isMissing, type Subject } from './entry.js'
import * as explainFormulas from './explain.formulas.js'
import { endEntries } from './explain-ends.js'
import { massEntries } from './explain-masses.js'
import { roadEntries } from './explain-road.js'
import { rowEntries } from './explain-rows.js'
import { sectionEntries } from './explain-section.js'
import { stockEntries } from './explain-stock.js'
import { underEntries } from './explain-under.js'
import { weightEntries } from './explain-weight.js'
import { nearIds } from './near-ids.js'

/** Every formula a working of a design may hold, for `explain`. */
export const designFormulas: Formulas = Object.freeze({
  ...shellFormulas,
  ...Object.fromEntries(
    [
      endsFormulas,
      wrapFormulas,
      chassisFormulas,
      floorFormulas,
      gearFormulas,
      rideFormulas,
      towingFormulas,
      weightFormulas,
      liftFormulas,
      explainFormulas,
    ]
      .flatMap((file) => Object.values(file as Readonly<Record<string, AnyFormula>>))
      .map((each) => [each.id, each]),
  ),
})

export interface Explainable {
  readonly id: string
  readonly says: string
}

export type Working =
  | { readonly kind: 'number'; readonly id: string; readonly says: string; readonly worked: Worked }
  | { readonly kind: 'check'; readonly id: string; readonly says: string; readonly check: Check }
  /** `says` is why not; `near` are ids that can be explained */
  | { readonly kind: 'none'; readonly says: string; readonly near: readonly string[] }

const ENTRIES = new WeakMap<Subject, ReadonlyMap<string, Entry>>()

/** By id, made once for a design: a coach has thousands. */
function numberEntries(subject: Subject): ReadonlyMap<string, Entry> {
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

/** Every id that can be explained on this design, in the order of the trades; what has no figures is left out. */
export function explainable(subject: Subject): readonly Explainable[] {
  const numbers = [...numberEntries(subject).values()].filter((e) => !e.isDoubtful || !isMissing(e.work()))
  return [...numbers.map(({ id, says }) => ({ id, says })), ...subject.design.checks.map((c) => ({ id: `check.${c.id}`, says: c.says }))]
}

export function working(subject: Subject, id: string): Working {
  const check = subject.design.checks.find((c) => `check.${c.id}` === id)
  if (check) return { kind: 'check', id, says: check.says, check }
  const entries = numberEntries(subject)
  const entry = entries.get(id)
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
