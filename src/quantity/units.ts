/**
 * Unit algebra on expression trees. A unit is written as an expression of SI names (`kg*m/s^2`, `1/K`, `m^0.5`)
 * and becomes a vector of exponents. A radian counts as a plain number, so an arc is radius times angle.
 */

import { evaluate } from './evaluate.js'
import type { Tree } from './expression.js'
import { parse } from './expression.js'

/** Exponents of kg, m, s, K, A; null is a written zero, which agrees with any unit. */
export type Dimension = readonly number[] | null

const NONE = [0, 0, 0, 0, 0]
const NAMED: Readonly<Record<string, readonly number[]>> = {
  kg: [1, 0, 0, 0, 0],
  m: [0, 1, 0, 0, 0],
  s: [0, 0, 1, 0, 0],
  K: [0, 0, 0, 1, 0],
  A: [0, 0, 0, 0, 1],
  rad: NONE,
  N: [1, 1, -2, 0, 0],
  Pa: [1, -1, -2, 0, 0],
  J: [1, 2, -2, 0, 0],
  W: [1, 2, -3, 0, 0],
  Hz: [0, 0, -1, 0, 0],
  V: [1, 2, -3, 0, -1],
  ohm: [1, 2, -3, 0, -2],
}
const BASE = ['kg', 'm', 's', 'K', 'A']

/** The dimension a unit text stands for; throws on a unit it does not know. */
export function dimensionOfUnit(unit: string): Dimension {
  return dimensionOf(parse(unit), NAMED)
}

/** Whether two dimensions agree, to the rounding of rational exponents. */
export function sameDimension(a: Dimension, b: Dimension): boolean {
  return a === null || b === null || a.every((power, i) => Math.abs(power - (b[i] as number)) < 1e-9)
}

/** A dimension written out, `kg*m^-1*s^-2`; `1` for a plain number. */
export function dimensionText(dimension: Dimension): string {
  const parts = (dimension ?? NONE).flatMap((power, i) =>
    power === 0 ? [] : [power === 1 ? BASE[i] : `${BASE[i]}^${Number(power.toFixed(4))}`],
  )
  return parts.length > 0 ? parts.join('*') : '1'
}

/** The dimension of a tree whose names have the given dimensions; throws a sentence where units do not agree. */
export function dimensionOf(tree: Tree, named: Readonly<Record<string, Dimension>>): Dimension {
  switch (tree.kind) {
    case 'number':
      return tree.value === 0 ? null : NONE
    case 'negate':
      return dimensionOf(tree.of, named)
    case 'name': {
      if (tree.name === 'pi') return NONE
      const found = named[tree.name]
      if (found === undefined) throw new Error(`${tree.name} has no declared unit`)
      return found
    }
    case 'call':
      return ofCall(
        tree.name,
        tree.args.map((each) => dimensionOf(each, named)),
      )
    case 'binary':
      return tree.op === '^'
        ? ofPower(tree.left, tree.right, named)
        : ofBinary(tree.op, dimensionOf(tree.left, named), dimensionOf(tree.right, named))
  }
}

function ofBinary(op: '+' | '-' | '*' | '/', a: Dimension, b: Dimension): Dimension {
  if (op === '+' || op === '-') return agree(a, b, op === '+' ? 'added' : 'subtracted')
  if (a === null || b === null) return null
  return a.map((power, i) => power + (op === '*' ? 1 : -1) * (b[i] as number))
}

function ofPower(base: Tree, exponent: Tree, named: Readonly<Record<string, Dimension>>): Dimension {
  const dimension = dimensionOf(base, named)
  if (!sameDimension(dimensionOf(exponent, named), NONE)) throw new Error('an exponent has a unit')
  if (dimension === null || sameDimension(dimension, NONE)) return NONE
  const power = evaluate(exponent, {})
  return dimension.map((each) => each * power)
}

function ofCall(name: string, args: readonly Dimension[]): Dimension {
  const first = args[0] ?? null
  if (name === 'abs') return first
  if (name === 'sqrt') return first?.map((each) => each / 2) ?? null
  if (name === 'min' || name === 'max') return args.reduce((a, b) => agree(a, b, 'compared'), null)
  if (!sameDimension(first, NONE)) throw new Error(`${name} is taken of ${dimensionText(first)}, which is not a plain number`)
  return NONE
}

function agree(a: Dimension, b: Dimension, how: string): Dimension {
  if (!sameDimension(a, b)) throw new Error(`${dimensionText(a)} and ${dimensionText(b)} are ${how}`)
  return a ?? b
}
