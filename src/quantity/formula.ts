/**
 * A formula is a value: what it says, what it shows, what it computes, where it is from, and worked examples.
 * Called with inputs it gives a `Worked` result, plain frozen data that can be explained later;
 * its `eval` gives the bare number for loops. Both throw on a result that is not a finite number.
 */

import { evaluate } from './evaluate.js'
import type { Tree } from './expression.js'
import { parse } from './expression.js'
import { lazily } from './lazily.js'

declare const unit: unique symbol
/** A number in the SI unit U. Plain arithmetic works; a kilogram handed where a newton is wanted does not compile. */
export type Q<U extends string> = number & { readonly [unit]?: U }

/** The result of a declared formula: JSON-able, frozen; inputs may be Worked themselves. `value` in `unit`, always SI. */
export interface Worked<U extends string = string> {
  readonly value: Q<U>
  readonly unit: U
  readonly formula: string
  readonly inputs: Readonly<Record<string, number | Worked>>
  readonly cautions?: readonly string[]
}

export interface Source {
  /** e.g. AC 43.13-1B, statics, common practice, from memory */
  readonly ref: string
  /** page, table, paragraph, or the argument it follows from */
  readonly at: string
}

export interface Example {
  readonly given: Readonly<Record<string, number>>
  readonly gives: number
  /** absolute tolerance in the formula's unit */
  readonly within: number
  /** who says so: a publication and page, or "by hand" */
  readonly from: string
}

/** One branch of a formula: `when` is a comparison of the inputs (`a / b < 2 and t > 0`) or `otherwise`. */
export interface Case {
  readonly when: string
  readonly shows: string
}

export type Kind = 'expression' | 'table' | 'procedure' | 'sum'

/** What every formula tells about itself, whatever its inputs. */
export interface AnyFormula {
  readonly id: string
  readonly says: string
  readonly symbol: string
  readonly unit: string
  readonly inputs: Readonly<Record<string, string>>
  /** words for the inputs' symbols */
  readonly where: Readonly<Record<string, string>>
  readonly shows: string | null
  readonly cases: readonly Case[] | null
  readonly source: Source
  readonly examples: readonly Example[]
  /** input names, or expressions of them (`t / D`), to the range the formula is good for */
  readonly valid: Readonly<Record<string, readonly [min: number, max: number]>>
  readonly kind: Kind
  eval(given: Readonly<Record<string, number>>): number
}

type Units = Readonly<Record<string, string>>
type Given<I extends Units> = { readonly [K in keyof I]: Q<I[K]> | Worked<I[K]> }
type Plain<I extends Units> = { readonly [K in keyof I]: number }

/** A declared formula: call it for a Worked result, `eval` for a bare number. */
export interface Formula<I extends Units, U extends string> extends AnyFormula {
  (given: Given<I>): Worked<U>
  eval(given: Plain<I>): Q<U>
}

/** A total of any number of named terms of one unit. The list of terms becomes its inputs, and is frozen. */
export interface Total<U extends string> extends AnyFormula {
  (terms: Readonly<Record<string, Q<U> | Worked<U>>>): Worked<U>
  eval(terms: Readonly<Record<string, number>>): Q<U>
}

interface Declared {
  readonly id: string
  readonly says: string
  readonly symbol: string
  readonly source: Source
  readonly examples: readonly Example[]
}

interface Declaration<I extends Units, U extends string> extends Declared {
  readonly unit: U
  readonly inputs: I
  readonly where?: { readonly [K in keyof I]?: string }
  readonly shows?: string
  readonly cases?: readonly Case[]
  readonly eval: (given: Plain<I>) => number
  readonly valid?: Readonly<Record<string, readonly [number, number]>>
  readonly kind?: 'expression' | 'table' | 'procedure'
}

/** Declare a formula. `shows` (or `cases`) is what a reader sees, `eval` what the machine does; the audit compares them. */
export function formula<const I extends Units, const U extends string>(told: Declaration<I, U>): Formula<I, U> {
  const about = {
    ...told,
    where: (told.where ?? {}) as Record<string, string>,
    shows: told.shows ?? null,
    cases: told.cases ?? null,
    valid: told.valid ?? {},
    kind: told.kind ?? ('expression' as const),
  }
  return build(about, told.eval as (given: Readonly<Record<string, number>>) => number, Object.keys(told.inputs)) as unknown as Formula<
    I,
    U
  >
}

/** Declare a total: the sum of whatever named terms it is called with. */
export function total<const U extends string>(told: Declared & { readonly unit: U }): Total<U> {
  const about = { ...told, inputs: {}, where: {}, shows: null, cases: null, valid: {}, kind: 'sum' as const }
  return build(about, sum, null) as unknown as Total<U>
}

function sum(terms: Readonly<Record<string, number>>): number {
  let all = 0
  for (const term of Object.values(terms)) all += term
  return all
}

type About = Omit<AnyFormula, 'eval'>

function build(about: About, compute: (given: Readonly<Record<string, number>>) => number, names: readonly string[] | null) {
  const finite = (value: number, given: Readonly<Record<string, number | Worked>>): number => {
    if (!Number.isFinite(value)) throw new Error(`${about.id} gives ${value} for ${JSON.stringify(given, showNonFinite)}`)
    return value
  }
  const evalSafely = (given: Readonly<Record<string, number>>): number => {
    return finite(compute(given), given)
  }
  const limits = lazily(() => Object.entries(about.valid).map(([text, range]) => ({ text, range, tree: parse(text) })))
  const call = (given: Readonly<Record<string, number | Worked>>): Worked => {
    const plain: Record<string, number> = {}
    // a total keeps the very terms it was handed: there may be hundreds, and they were listed for it
    const inputs: Record<string, number | Worked> = names ? {} : given
    let isCautioned = false
    let all = 0
    for (const name of names ?? Object.keys(given)) {
      const it = given[name]
      if (it === undefined) throw new Error(`${about.id} was called without ${name}`)
      const value = typeof it === 'number' ? it : it.value
      if (names) {
        inputs[name] = it
        plain[name] = value
      } else all += value
      if (typeof it !== 'number' && it.cautions) isCautioned = true
      if (!Number.isFinite(value)) throw new Error(`${about.id} was given ${name} = ${value}`)
    }
    // most have no limit and come from none that has: they are asked nothing
    const cautions = isCautioned || limits().length > 0 ? collectCautions(about, plain, inputs, limits()) : NONE
    const worked = {
      value: names ? evalSafely(plain) : finite(all, given),
      unit: about.unit,
      formula: about.id,
      inputs: Object.freeze(inputs),
    }
    return Object.freeze(cautions.length > 0 ? { ...worked, cautions: Object.freeze(cautions) } : worked)
  }
  return Object.freeze(Object.assign(call, about, { eval: evalSafely }))
}

const NONE: readonly string[] = Object.freeze([])

interface Limit {
  readonly text: string
  readonly range: readonly [number, number]
  readonly tree: Tree
}

function collectCautions(
  about: About,
  plain: Readonly<Record<string, number>>,
  inputs: Readonly<Record<string, number | Worked>>,
  limits: readonly Limit[],
): readonly string[] {
  const found = new Set<string>()
  for (const it of Object.values(inputs)) if (typeof it !== 'number') for (const each of it.cautions ?? []) found.add(each)
  for (const {
    text,
    range: [min, max],
    tree,
  } of limits) {
    const value = evaluate(tree, plain)
    if (value >= min && value <= max) continue
    const unit = about.inputs[text] && about.inputs[text] !== '1' ? ` ${about.inputs[text]}` : ''
    const words = about.where[text] ? `${about.where[text]} (${text})` : text
    const bound = value < min ? `from ${min}${unit} up` : `up to ${max}${unit}`
    found.add(`${about.says}: ${words} is ${Number(value.toPrecision(4))}${unit}, and the formula holds only ${bound}.`)
  }
  return [...found]
}

function showNonFinite(_key: string, value: unknown): unknown {
  return typeof value === 'number' && !Number.isFinite(value) ? String(value) : value
}
