/**
 * How an SI value is shown to a person inside a working, in metric or inch units.
 * Angles keep radians inside a substituted formula, since an arc is radius times radians.
 */

import type { UnitSystem } from './format.js'
import { formatLength } from './format.js'
import { G } from './gravity.js'

interface Shown {
  readonly unit: string
  /** how many SI units one shown unit is */
  readonly factor: number
  readonly figures: number
}

// Exact by definition (international inch and pound, 1959; standard gravity, 1901); the rest follow from them.
const INCH = 0.0254
const POUND = 0.45359237
export const POUND_FORCE = POUND * G
const PSI = POUND_FORCE / INCH ** 2

const METRIC: Readonly<Record<string, Shown>> = {
  m: { unit: 'mm', factor: 1e-3, figures: 5 },
  'm^2': { unit: 'm2', factor: 1, figures: 5 },
  kg: { unit: 'kg', factor: 1, figures: 4 },
  'kg/m': { unit: 'kg/m', factor: 1, figures: 4 },
  'kg/m^3': { unit: 'kg/m3', factor: 1, figures: 5 },
  N: { unit: 'N', factor: 1, figures: 5 },
  Pa: { unit: 'MPa', factor: 1e6, figures: 5 },
  'N/m': { unit: 'kN/m', factor: 1e3, figures: 4 },
  '1/m': { unit: 'per m', factor: 1, figures: 4 },
}
const IMPERIAL: Readonly<Record<string, Shown>> = {
  m: { unit: 'in', factor: INCH, figures: 5 },
  'm^2': { unit: 'sq ft', factor: (12 * INCH) ** 2, figures: 5 },
  kg: { unit: 'lb', factor: POUND, figures: 4 },
  'kg/m': { unit: 'lb/ft', factor: POUND / (12 * INCH), figures: 4 },
  'kg/m^3': { unit: 'lb/in3', factor: POUND / INCH ** 3, figures: 4 },
  N: { unit: 'lbf', factor: POUND_FORCE, figures: 5 },
  Pa: { unit: 'ksi', factor: 1000 * PSI, figures: 5 },
  'N/m': { unit: 'lbf/in', factor: POUND_FORCE / INCH, figures: 4 },
  '1/m': { unit: 'per in', factor: 1 / INCH, figures: 4 },
}

/** A value and its unit as text: `2.62 mm`, `0.10315 in`, `22.5 deg`; units without a trade form keep their SI name. */
export function display(value: number, unit: string, system: UnitSystem): string {
  if (unit === 'rad') return `${plain((value * 180) / Math.PI, 5)} deg`
  if (unit === '1') return plain(value, 6)
  const shown = (system === 'metric' ? METRIC : IMPERIAL)[unit]
  return shown ? `${plain(value / shown.factor, shown.figures)} ${shown.unit}` : `${plain(value, 6)} ${unit}`
}

/** A value as it stands inside a substituted formula: as `display`, but an angle in radians and a unit in brackets when compound. */
export function displayInside(value: number, unit: string, system: UnitSystem): string {
  if (unit === 'rad') return `${plain(value, 6)} rad`
  const text = display(value, unit, system)
  return text.startsWith('-') ? `(${text})` : text
}

/** A number at so many significant figures without trailing zeros; large and tiny ones in powers of ten. */
function plain(value: number, figures: number): string {
  const size = Math.abs(value)
  const rounded = Number(value.toPrecision(figures))
  if (size !== 0 && (size < 1e-4 || size >= 1e9)) return rounded.toExponential()
  return String(size >= 10 ** figures ? Math.round(value) : rounded)
}

/** A given length that is a whole number of 1/64 in, by the name it is bought under (`1/8 in`); null for any other. */
export function boughtName(value: number, unit: string, system: UnitSystem): string | null {
  const parts = (value / INCH) * 64
  if (unit !== 'm' || value === 0 || Math.abs(parts - Math.round(parts)) > 1e-9) return null
  const name = formatLength(value, 'inch', { fraction: 64 })
  return system === 'metric' || name.includes('/') ? name : null
}
