/**
 * The working behind a number: what it is, the formula in symbols and with figures, the result, the source,
 * the cautions, and the chain of results it was made from. Built lazily: a link is explained when it is looked at.
 */

import { boughtName, display, displayInside } from './display.js'
import { caseFor } from './evaluate.js'
import { parse } from './expression.js'
import type { UnitSystem } from './format.js'
import type { AnyFormula, Source, Worked } from './formula.js'
import { printTree } from './print.js'

export type Formulas = Readonly<Record<string, AnyFormula>>

export interface ExplainedInput {
  readonly symbol: string
  /** words for the symbol, or null */
  readonly says: string | null
  readonly value: number
  readonly unit: string
  /** the working behind it, or null for a given figure */
  readonly from: Explained | null
}

export interface Explained {
  readonly formula: string
  readonly says: string
  readonly symbol: string
  /** `G + 1.5 × D`; null for a table, a procedure, or a total */
  readonly symbolic: string | null
  /** the same with figures; a total lists its terms */
  readonly substituted: string | null
  /** the condition of the branch that applies; null where there is none to state */
  readonly when: string | null
  readonly value: number
  readonly unit: string
  readonly source: Source
  readonly cautions: readonly string[]
  readonly inputs: readonly ExplainedInput[]
}

/** Explain a result. `formulas` holds every formula of its chain by id; one that is missing is a bug and throws. */
export function explain(worked: Worked, formulas: Formulas, units: UnitSystem = 'metric'): Explained {
  const f = formulas[worked.formula]
  if (!f) throw new Error(`cannot explain ${worked.formula}: it is not among the ${Object.keys(formulas).length} formulas given`)
  const value = (name: string): number => figureOf(worked.inputs[name])
  const shown = shownCase(f, worked)
  const inputUnit = (name: string): string => (f.kind === 'sum' ? f.unit : (f.inputs[name] ?? '1'))
  const figure = (name: string): string => displayInside(value(name), inputUnit(name), units)
  const names = Object.keys(worked.inputs)
  return {
    formula: f.id,
    says: f.says,
    symbol: f.symbol,
    get symbolic() {
      return shown && printTree(parse(shown.shows))
    },
    get substituted() {
      if (f.kind === 'sum') return names.map(figure).join(' + ') || '0'
      return shown && printTree(parse(shown.shows), figure)
    },
    when: shown?.when ?? null,
    value: worked.value,
    unit: worked.unit,
    source: f.source,
    cautions: worked.cautions ?? [],
    inputs: names.map((name) => ({
      symbol: name,
      says: f.where[name] ?? null,
      value: value(name),
      unit: inputUnit(name),
      get from() {
        const input = worked.inputs[name]
        return input === undefined || typeof input === 'number' ? null : explain(input, formulas, units)
      },
    })),
  }
}

function figureOf(input: number | Worked | undefined): number {
  return typeof input === 'number' ? input : (input?.value ?? Number.NaN)
}

/** What is shown for these inputs: the formula itself, or the branch of it that applies. */
function shownCase(f: AnyFormula, worked: Worked): { readonly shows: string; readonly when: string | null } | null {
  if (!f.cases) return f.shows === null ? null : { shows: f.shows, when: null }
  const plain = Object.fromEntries(Object.entries(worked.inputs).map(([name, input]) => [name, figureOf(input)]))
  const branch = f.cases[caseFor(f.cases, plain)]
  return branch ? { shows: branch.shows, when: branch.when === 'otherwise' ? null : branch.when } : null
}

/** The working as a person reads it, results first, then what they were made from, each link once. */
export function explainText(worked: Worked, formulas: Formulas, units: UnitSystem): string {
  const lines: string[] = []
  const told = new Set<Worked>()
  const waiting: Worked[] = [worked]
  for (let next = waiting.shift(); next; next = waiting.shift()) {
    if (told.has(next)) continue
    told.add(next)
    if (lines.length > 0) lines.push('')
    lines.push(...oneLink(explain(next, formulas, units), units))
    for (const input of Object.values(next.inputs)) if (typeof input !== 'number') waiting.push(input)
  }
  return lines.join('\n')
}

function oneLink(it: Explained, units: UnitSystem): string[] {
  const result = display(it.value, it.unit, units)
  const pad = ' '.repeat(it.symbol.length)
  const chain = [it.symbolic, it.substituted, result].filter((each) => each !== null)
  const lines = [`${it.says}: ${result}`, ...chain.map((each, i) => `  ${i === 0 ? it.symbol : pad} = ${each}`)]
  if (it.when) lines.push(`  because ${it.when.replaceAll('*', '×')}`)
  for (const input of it.inputs) {
    const inputSays = input.says ? `, ${input.says}` : ''
    const from = input.from ? `, from: ${input.from.says}` : ''
    // a bought size keeps its name beside the figure
    const name = input.from ? null : boughtName(input.value, input.unit, units)
    const figure = display(input.value, input.unit, units)
    lines.push(`  with ${input.symbol} = ${figure}${name ? ` (${name})` : ''}${inputSays}${from}`)
  }
  lines.push(`  source: ${it.source.ref}, ${it.source.at}`)
  for (const caution of it.cautions) lines.push(`  CAUTION ${caution}`)
  return lines
}
