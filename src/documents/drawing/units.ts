/** Metric or inch, per print. SI goes in, words for paper come out. A bought size keeps its own name whatever is asked. */
import type { Bought, StockSize } from '../../definition/types.js'
import type { UnitSystem } from '../../quantity/format.js'
import { formatLength, formatMass } from '../../quantity/format.js'

export type PrintUnits = UnitSystem

/** A number with a fixed count of decimals and never "-0.0". */
export function fixed(value: number, decimals: number): string {
  if (!Number.isFinite(value)) throw new Error(`A sheet was asked to print the number ${value}`)
  const text = value.toFixed(decimals)
  return /^-0\.?0*$/.test(text) ? text.slice(1) : text
}

/** A length without its unit, for dimensions and tables whose heading names the unit: 0.1 mm or 0.001 in, and `finer` decimals more. */
export function lengthNumber(metres: number, units: PrintUnits, finer = 0): string {
  return formatLength(metres, units, { bare: true, decimals: (units === 'metric' ? 1 : 3) + finer })
}

export const lengthUnit = (units: PrintUnits): string => (units === 'metric' ? 'mm' : 'in')

/** A length whose last decimals are noughts loses them: 25.4, 1219, 3.3. */
export function plainLength(metres: number, units: PrintUnits): string {
  const text = formatLength(metres, units, { bare: true, decimals: units === 'metric' ? 2 : 4 })
  return `${text.replace(/\.?0+$/, '')} ${lengthUnit(units)}`
}

export function massWords(kilograms: number, units: PrintUnits): string {
  return formatMass(kilograms, units, { decimals: kilograms < 10 ? 2 : 1 })
}

const other = (name: string, units: PrintUnits): boolean => (units === 'metric' ? /\bin\b/.test(name) : /\bmm\b/.test(name))

/** The bought name; where it is in the other system, the size in this one follows in brackets: `0.032 in (0.81 mm)`. */
export const boughtWords = (bought: Bought, units: PrintUnits): string =>
  other(bought.name, units) ? `${bought.name} (${plainLength(bought.value, units)})` : bought.name

export const stockWords = (stock: StockSize, units: PrintUnits): string =>
  other(stock.name, units) ? `${stock.name} (${plainLength(stock.width, units)} × ${plainLength(stock.length, units)})` : stock.name

/** A length with its unit: 0.1 mm or 0.001 in, and `finer` decimals more. */
export const lengthWords = (metres: number, units: PrintUnits, finer = 0): string =>
  `${lengthNumber(metres, units, finer)} ${lengthUnit(units)}`
