/** Lengths as an address has them, and how far the barrel reaches. */
import type { Derived } from '../../derive/index.js'
import { barrelOf } from '../../derive/shell/input.js'

/** Millimetres without their unit, a tenth where it matters. */
export function lengthText(m: number): string {
  const tenths = Math.round(m * 1e4) / 10 + 0
  return Number.isInteger(tenths) ? tenths.toFixed(0) : tenths.toFixed(1)
}

/** First and last station of the barrel's sheets, m. */
export function barrelEnds(derived: Derived): { readonly x0: number; readonly x1: number } {
  return barrelOf(derived.shell.laid.input)
}
