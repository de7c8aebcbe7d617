/** Collecting everything wrong with a definition, each with its place and a whole sentence. */
import type { Fault } from './types.js'
import { found, label, nodeAt, type Path, type Where, type Written, whereIs } from './written.js'

/** A fault still to be worded. `expected` and `found` are phrases; `advice` whole sentences of what to do. */
export interface Wrong {
  readonly expected: string
  readonly found?: string
  readonly advice?: string
  /** where to point instead of at the value */
  readonly at?: Where
}

export interface Reading {
  readonly root: Written
  readonly faults: Fault[]
  /** something written does not read: "expected …, found …" */
  wrong(path: Path, wrong: Wrong): void
  /** something reads but cannot be built: the sentence says why */
  impossible(path: Path, wrong: Wrong & { readonly because: string }): void
}

export function startReading(root: Written): Reading {
  const faults: Fault[] = []
  const add = (path: Path, wrong: Wrong, sentence: (foundHere: string) => string): void => {
    const foundHere = wrong.found ?? found(nodeAt(root, path))
    const where = wrong.at ?? whereIs(root, path)
    const name = label(root, path)
    const says = `${name}: ${sentence(foundHere)}.${wrong.advice ? ` ${wrong.advice}` : ''}`
    faults.push({ path: name, ...where, expected: wrong.expected, found: foundHere, says })
  }
  return {
    root,
    faults,
    wrong: (path, wrong) => add(path, wrong, (here) => `expected ${wrong.expected}, found ${here}`),
    impossible: (path, wrong) => add(path, wrong, () => wrong.because),
  }
}

/** One line for a terminal: `examples/sedge-6.yaml:31:18 openings RW3 width: expected …`. */
export function faultLine(fault: Fault): string {
  return `${fault.file}:${fault.line}:${fault.column} ${fault.says}`
}

/** In reading order: by file as first met, then line and column; the same words twice at one place are said once. */
export function sortFaults(faults: readonly Fault[], files: readonly string[]): Fault[] {
  const rank = (f: Fault): number => (files.includes(f.file) ? files.indexOf(f.file) : files.length)
  const sorted = [...faults].sort((a, b) => rank(a) - rank(b) || a.line - b.line || a.column - b.column)
  return sorted.filter((f, i) => i === 0 || faultLine(f) !== faultLine(sorted[i - 1]))
}
