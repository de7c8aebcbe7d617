/**
 * The audit of a formula: what it shows is what it computes, its units come out, its examples run, it has a source.
 * Both halves are needed: unit algebra catches a missing g, an outside example catches pounds left as kilograms.
 */
import { caseFor, evaluate } from './evaluate.js'
import type { Tree } from './expression.js'
import { namesIn, parse } from './expression.js'
import type { AnyFormula } from './formula.js'
import type { Dimension } from './units.js'
import { dimensionOf, dimensionOfUnit, dimensionText, sameDimension } from './units.js'

type Values = Readonly<Record<string, number>>
const TRIALS = 200
const ENOUGH = 20

/** Every complaint about a formula, as sentences; empty when it is sound. `seed` fixes the random inputs. */
export function auditFormula(f: AnyFormula, seed = 1): readonly string[] {
  const complaints: string[] = []
  const complain = (text: string): void => void complaints.push(`${f.id}: ${text}`)
  if (!f.source.ref.trim() || !f.source.at.trim()) complain('it has no source.')
  const owed = f.kind === 'table' || f.kind === 'procedure' ? 3 : 1
  if (f.examples.length < owed) complain(`it needs ${owed} worked example${owed > 1 ? 's' : ''} and has ${f.examples.length}.`)
  attempt(complain, () => auditExamples(f, complain))
  attempt(complain, () => dimensionOfUnit(f.unit))
  if (f.kind === 'sum') auditTotal(f, complain)
  else if (f.shows !== null || f.cases !== null) attempt(complain, () => auditShown(f, seed, complain))
  else if (owed === 1) complain('it shows nothing: give shows, cases, or say it is a table or a procedure.')
  return complaints
}

function attempt(complain: (text: string) => void, check: () => unknown): void {
  try {
    check()
  } catch (error) {
    complain(`${error instanceof Error ? error.message : String(error)}.`)
  }
}

function auditExamples(f: AnyFormula, complain: (text: string) => void): void {
  f.examples.forEach((example, i) => {
    const missing = Object.keys(f.inputs).filter((name) => !(name in example.given))
    if (missing.length > 0) {
      complain(`example ${i + 1} does not give ${missing.join(', ')}.`)
      return
    }
    const got = f.eval(example.given)
    // a computed double may differ from the printed figure in its last bits even where the example says "within 0"
    if (Math.abs(got - example.gives) > example.within + 1e-12 * Math.abs(example.gives)) {
      complain(`example ${i + 1} (${example.from}) gives ${got}, not ${example.gives}.`)
    }
  })
}

function auditTotal(f: AnyFormula, complain: (text: string) => void): void {
  const got = f.eval({ one: 1.5, two: 2.25, three: -0.5 })
  if (got !== 3.25) complain(`the total of 1.5, 2.25 and -0.5 came out as ${got}.`)
}

function auditShown(f: AnyFormula, seed: number, complain: (text: string) => void): void {
  const shown = f.cases ? f.cases.map((each) => each.shows) : [f.shows as string]
  const trees = shown.map(parse)
  const used = new Set([...trees.flatMap(namesIn), ...(f.cases ?? []).flatMap((each) => each.when.match(/[A-Za-z_]\w*/g) ?? [])])
  for (const name of Object.keys(f.inputs)) if (!used.has(name)) complain(`the input ${name} is never shown.`)
  auditUnits(f, trees, complain)
  auditValues(f, trees, seed, complain)
}

function auditUnits(f: AnyFormula, trees: readonly Tree[], complain: (text: string) => void): void {
  const named: Record<string, Dimension> = {}
  for (const [name, unit] of Object.entries(f.inputs)) named[name] = dimensionOfUnit(unit)
  const declared = dimensionOfUnit(f.unit)
  for (const tree of trees) {
    const got = dimensionOf(tree, named)
    if (!sameDimension(got, declared)) complain(`it shows ${dimensionText(got)} but declares ${f.unit} (${dimensionText(declared)}).`)
  }
}

function auditValues(f: AnyFormula, trees: readonly Tree[], seed: number, complain: (text: string) => void): void {
  const random = sequence(seed)
  const reached = new Set<number>()
  let compared = 0
  for (let trial = 0; trial < TRIALS; trial += 1) {
    const given = sample(f, random)
    if (given === null) continue
    const which = f.cases ? caseFor(f.cases, given) : 0
    const shown = which < 0 ? Number.NaN : evaluate(trees[which] as Tree, given)
    if (which >= 0 && !Number.isFinite(shown)) continue
    const complaint = which < 0 ? `no case covers ${JSON.stringify(given)}.` : compare(f.eval(given), shown, given)
    if (complaint !== null) {
      complain(complaint)
      return
    }
    compared += 1
    reached.add(which)
  }
  if (compared < ENOUGH) complain(`only ${compared} of ${TRIALS} random inputs could be compared: widen its examples or its valid range.`)
  else for (let i = 0; i < trees.length; i += 1) if (!reached.has(i)) complain(`the case "${f.cases?.[i]?.when}" was never reached.`)
}

function compare(got: number, shown: number, given: Values): string | null {
  const agrees = Math.abs(got - shown) <= 1e-9 * Math.max(Math.abs(got), Math.abs(shown))
  return agrees ? null : `it shows ${shown} but computes ${got} for ${JSON.stringify(given)}.`
}

/** Random inputs within the valid ranges: a stated finite range is sampled whole, else half to twice an example. */
function sample(f: AnyFormula, random: () => number): Values | null {
  const given: Record<string, number> = {}
  const example = f.examples[Math.floor(random() * f.examples.length)]?.given ?? {}
  for (const name of Object.keys(f.inputs)) {
    const [min, max] = f.valid[name] ?? [-Infinity, Infinity]
    const near = (example[name] ?? 1) * (0.5 + 1.5 * random())
    const whole = Number.isFinite(min) && Number.isFinite(max)
    given[name] = whole ? min + (max - min) * random() : example[name] === 0 ? random() - 0.5 : near
  }
  const within = Object.entries(f.valid).every(([text, [min, max]]) => {
    const value = evaluate(parse(text), given)
    return value >= min && value <= max
  })
  return within ? given : null
}

/** A small seeded generator (mulberry32, public domain) so that an audit says the same thing every time. */
function sequence(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = Math.imul(state ^ (state >>> 15), 1 | state)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
}
