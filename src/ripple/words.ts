/** Figures and lists in the sentences of a ripple. SI in; millimetres and kilograms, or inches and pounds, out. */
import type { UnitSystem } from '../quantity/format.js'
import { formatLength, formatMass } from '../quantity/format.js'

/** `a, b and c`. */
export const list = (names: readonly string[]): string =>
  names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names[names.length - 1]}`

/** `3 holes`, `1 hole`. */
export const count = (n: number, one: string, many = `${one}s`): string => `${n} ${n === 1 ? one : many}`

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

/** A list that breaks off: `a, b, c and 4 more`. */
export const some = (names: readonly string[], most: number): string =>
  names.length <= most ? list(names) : `${names.slice(0, most).join(', ')} and ${names.length - most} more`

/** Tenths of a millimetre or thousandths of an inch; a hair that would print as nothing prints finer. */
export function size(m: number, units: UnitSystem): string {
  const least = units === 'metric' ? 0.00005 : 0.0005 * 0.0254
  return formatLength(m, units, m !== 0 && Math.abs(m) < least ? { decimals: units === 'metric' ? 4 : 6 } : {})
}

/** To a tenth of a kilogram or pound; what would print as nothing prints to the gram. */
export const weight = (kg: number, units: UnitSystem): string => formatMass(kg, units, Math.abs(kg) < 0.095 ? { decimals: 3 } : {})

/** `+12 %`, `-3 %`, `x15` where it is many times over. */
export function margin(value: number | null): string {
  if (value === null) return 'no margin'
  if (value >= 10) return `x${Math.round(value + 1)}`
  const percent = value * 100
  const size = Math.abs(percent).toFixed(Math.abs(percent) < 10 ? 1 : 0)
  // what just meets its limit is on neither side of it
  return Number(size) === 0 ? '0 %' : `${percent < 0 ? '-' : '+'}${size} %`
}

/** `13 fewer` or `2 more`. */
export const fewer = (before: number, after: number): string => (after < before ? `${before - after} fewer` : `${after - before} more`)
