/**
 * The chain behind a number, link by link: each input of a working is a number with an id of its own, one that is worked on the
 * way and found by what it is called there (`weight.case.D.hitch > x_c > M`), or a given figure with where it comes from.
 */
import type { Worked } from '../../quantity/formula.js'
import { designFormulas } from './design-formulas.js'
import { idOfWorked, numberEntries } from './entries.js'
import { isMissing, type Subject } from './entry.js'
import { givenOf } from './given.js'
import type { Given } from './given-nouns.js'

/** Between the names of an id that leads on. */
const ON = ' > '

/** One working, and the way to it from a number or a check that has an id. */
export interface Link {
  readonly id: string
  readonly says: string
  readonly worked: Worked
  readonly root: string
  readonly path: readonly string[]
}

export interface LinkInput {
  readonly symbol: string
  /** words for the symbol, or null */
  readonly says: string | null
  /** SI */
  readonly value: number
  readonly unit: string
  /** id of its own working; null for a given figure */
  readonly working: string | null
  /** where a given figure comes from; null for what is worked */
  readonly given: Given | null
}

/** Null where the id leads nowhere. */
export function linkOf(subject: Subject, id: string): Link | null {
  const [root] = id.split(ON, 1)
  let rest = id.slice(root.length)
  let worked = rootOf(subject, root)
  let says = numberEntries(subject).get(root)?.says ?? ''
  const path: string[] = []
  // a check has no one working: the first name says which of its workings is meant
  if (worked === null && root.startsWith('check.')) {
    const name = rest.slice(ON.length).split(ON, 1)[0]
    const check = subject.design.checks.find((each) => `check.${each.id}` === root)
    worked = check?.worked[Number(name) - 1] ?? null
    if (worked) says = designFormulas[worked.formula]?.says ?? worked.formula
    path.push(name)
    rest = rest.slice(ON.length + name.length)
  }
  while (worked !== null && rest !== '') {
    const name = nameAtHead(Object.keys(worked.inputs), rest)
    const next: Worked | number | undefined = name === null ? undefined : worked.inputs[name]
    if (name === null || next === undefined || typeof next === 'number') return null
    says = wordsFor(worked, name, next)
    path.push(name)
    rest = rest.slice(ON.length + name.length)
    worked = next
  }
  return worked === null ? null : { id, says, worked, root, path }
}

function rootOf(subject: Subject, id: string): Worked | null {
  const result = numberEntries(subject).get(id)?.work()
  return result === undefined || isMissing(result) ? null : result
}

/** Names are any words, so the longest that fits is the one that is meant. */
function nameAtHead(names: readonly string[], rest: string): string | null {
  const fits = names.filter((name) => rest === `${ON}${name}` || rest.startsWith(`${ON}${name}${ON}`))
  return fits.reduce<string | null>((best, name) => (best === null || name.length > best.length ? name : best), null)
}

/** A term of a total goes by its own name, an input of a formula by the words for its symbol. */
function wordsFor(worked: Worked, name: string, next: Worked): string {
  const f = designFormulas[worked.formula]
  const own = designFormulas[next.formula]?.says ?? next.formula
  return f?.kind === 'sum' ? `${name}: ${own.charAt(0).toLowerCase()}${own.slice(1)}` : (f?.where[name] ?? own)
}

/** The id a result goes by: its own where the design holds it, else the way to it. */
function idFor(subject: Subject, worked: Worked, otherwise: string): string {
  return idOfWorked(subject, worked) ?? otherwise
}

export function inputsOf(subject: Subject, { id, root, path, worked }: Link): readonly LinkInput[] {
  const f = designFormulas[worked.formula]
  return Object.entries(worked.inputs).map(([symbol, input]) => {
    const isGiven = typeof input === 'number'
    return {
      symbol,
      says: f?.where[symbol] ?? null,
      value: isGiven ? input : input.value,
      unit: f?.kind === 'sum' ? worked.unit : (f?.inputs[symbol] ?? '1'),
      working: isGiven ? null : idFor(subject, input, `${id}${ON}${symbol}`),
      given: isGiven ? givenOf({ subject, root, path, formula: worked.formula, symbol, value: input }) : null,
    }
  })
}
