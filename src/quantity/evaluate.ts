/** An expression tree's number, and which case of a branching formula applies. */

import type { Tree } from './expression.js'
import { parse } from './expression.js'
import type { Case } from './formula.js'

type Values = Readonly<Record<string, number>>

/** The functions an expression may call. Trigonometry in radians; log10, ceil, floor and round want plain numbers. */
const FUNCTIONS: Readonly<Record<string, (...args: readonly number[]) => number>> = {
  sqrt: (x = NaN) => Math.sqrt(x),
  sin: (x = NaN) => Math.sin(x),
  cos: (x = NaN) => Math.cos(x),
  tan: (x = NaN) => Math.tan(x),
  asin: (x = NaN) => Math.asin(x),
  acos: (x = NaN) => Math.acos(x),
  atan: (x = NaN) => Math.atan(x),
  tanh: (x = NaN) => Math.tanh(x),
  ln: (x = NaN) => Math.log(x),
  log10: (x = NaN) => Math.log10(x),
  exp: (x = NaN) => Math.exp(x),
  abs: (x = NaN) => Math.abs(x),
  ceil: (x = NaN) => Math.ceil(x),
  floor: (x = NaN) => Math.floor(x),
  round: (x = NaN) => Math.round(x),
  min: (...all) => Math.min(...all),
  max: (...all) => Math.max(...all),
}

/** The value of a tree for the given inputs; throws on a name or function it does not know. */
export function evaluate(tree: Tree, values: Values): number {
  switch (tree.kind) {
    case 'number':
      return tree.value
    case 'negate':
      return -evaluate(tree.of, values)
    case 'name': {
      if (tree.name === 'pi') return Math.PI
      const value = values[tree.name]
      if (value === undefined) throw new Error(`the expression names ${tree.name}, which is not an input`)
      return value
    }
    case 'call': {
      const called = FUNCTIONS[tree.name]
      if (!called) throw new Error(`the expression calls ${tree.name}, which is not a known function`)
      return called(...tree.args.map((each) => evaluate(each, values)))
    }
    case 'binary':
      return combine(tree.op, evaluate(tree.left, values), evaluate(tree.right, values))
  }
}

function combine(op: '+' | '-' | '*' | '/' | '^', a: number, b: number): number {
  switch (op) {
    case '+':
      return a + b
    case '-':
      return a - b
    case '*':
      return a * b
    case '/':
      return a / b
    case '^':
      return a ** b
  }
}

/** The index of the first case that holds for these inputs, or -1. */
export function caseFor(cases: readonly Case[], values: Values): number {
  return cases.findIndex((each) => holds(each.when, values))
}

const COMPARISON = /^(.+?)(<=|>=|<|>)(.+)$/

/** Whether a `when` (comparisons joined by `and`, or `otherwise`) holds. */
export function holds(when: string, values: Values): boolean {
  if (when.trim() === 'otherwise') return true
  return when.split(/\s+and\s+/).every((part) => {
    const match = COMPARISON.exec(part)
    if (!match) throw new Error(`cannot read the condition "${when}": write it as a < b, or "otherwise"`)
    const left = evaluate(parse(match[1] as string), values)
    const right = evaluate(parse(match[3] as string), values)
    switch (match[2]) {
      case '<':
        return left < right
      case '>':
        return left > right
      case '<=':
        return left <= right
      default:
        return left >= right
    }
  })
}
