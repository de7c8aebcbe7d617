/**
 * The door into SI: what is on the tape (`6100 mm`, `22 1/2 in`, `5' 3 1/2"`, `53 lb`, `13.5 deg`) becomes a number.
 * Nothing is guessed: a figure without its unit, or with a unit of another kind, is refused in a sentence.
 */

import type { Fraction } from './exact.js'
import { add, fromDecimal, over, times, toNumber } from './exact.js'
import type { QuantityKind, TradeUnit } from './trade-units.js'
import { KINDS } from './trade-units.js'

export type { QuantityKind } from './trade-units.js'

export type Parsed =
  /** `value` in SI; `text` as written, blanks tidied */
  | { readonly ok: true; readonly value: number; readonly text: string }
  /** `expected` and `found` are phrases for a fault; `says` is the whole sentence without a place */
  | { readonly ok: false; readonly expected: string; readonly found: string; readonly says: string }

const FIGURE = /^\s*(?:(\d+)[\s-]+(\d+)\/(\d+)|(\d+)\/(\d+)|(\d+\.?\d*(?:e[+-]?\d+)?|\.\d+(?:e[+-]?\d+)?))/i
const UNIT = /^\s*([A-Za-z°%/"'″′][A-Za-z0-9°/]*|)/
const COMPOUND: Readonly<Record<string, string>> = { ft: 'in', foot: 'in', feet: 'in', "'": 'in', '′': 'in', lb: 'oz', lbs: 'oz' }
/** Longer than anything on a tape; a longer text is a mistake, and an endless number must not be worked out. */
const LONGEST = 60
const GLYPHS: Readonly<Record<string, string>> = {
  '½': ' 1/2',
  '¼': ' 1/4',
  '¾': ' 3/4',
  '⅛': ' 1/8',
  '⅜': ' 3/8',
  '⅝': ' 5/8',
  '⅞': ' 7/8',
  '−': '-',
  '⁄': '/',
}

interface Term {
  readonly figure: Fraction
  readonly unit: string
}

/** Read a written quantity of the given kind. Exact: the value is the double nearest the true product. */
export function parseQuantity(text: string, kind: QuantityKind): Parsed {
  const tidy = text
    .replace(/[½¼¾⅛⅜⅝⅞−⁄]/g, (glyph) => GLYPHS[glyph] as string)
    .replace(/\s+/g, ' ')
    .trim()
  const wanted = KINDS[kind]
  const refuse = (found: string, says?: string): Parsed => {
    const expected = `${wanted.says}, e.g. ${wanted.example}`
    return Object.freeze({ ok: false, expected, found, says: says ?? `Expected ${expected}; found ${found}.` })
  }
  if (tidy === '') return refuse('nothing')
  if (tidy.length > LONGEST) return refuse(`${tidy.length} characters that begin "${tidy.slice(0, 20)}"`)
  const negative = tidy.startsWith('-')
  const terms = readTerms(tidy.replace(/^[-+]\s?/, ''))
  if (terms === null) return refuse(`"${tidy}", which does not read as a number and a unit`)
  const accept = (size: number): Parsed => Object.freeze({ ok: true, value: negative && size !== 0 ? -size : size, text: tidy })

  const first = terms[0] as Term
  if (kind === 'number' && terms.length === 1 && first.unit === '') return accept(toNumber(first.figure))
  const bare = terms.find((each) => each.unit === '')
  if (bare) {
    const unit = wanted.example.match(/\s(\S+)/)?.[1]
    return refuse(`${tidy} without a unit`, `${tidy} needs a unit, e.g. ${terms.length === 1 ? `${tidy} ${unit}` : wanted.example}.`)
  }
  const units: TradeUnit[] = []
  for (const { unit } of terms) {
    const known = find(kind, unit)
    if (!known) return refuse(wrongUnit(tidy, unit, kind))
    units.push(known)
  }
  if (terms.length > 2 || (terms.length === 2 && !follows(first.unit, terms[1] as Term, kind))) {
    return refuse(`"${tidy}", which strings together figures that do not follow each other`)
  }
  const size = convert(terms, units, negative)
  if (kind === 'temperature' && (negative ? size > 0 : size < 0)) return refuse(`"${tidy}", which is colder than can be`)
  return accept(size)
}

function convert(terms: readonly Term[], units: readonly TradeUnit[], negative: boolean): number {
  const { offset, perPi } = units[0] as TradeUnit
  let sum = terms.map(({ figure }, i) => times(figure, (units[i] as TradeUnit).factor)).reduce(add)
  // the caller puts the sign on, so a temperature below zero on its scale is turned round twice
  if (offset) sum = negative ? add(sum, { top: -offset.top, bottom: offset.bottom }) : add(sum, offset)
  // multiplied before divided, so that 90 deg is exactly half of pi
  return perPi === undefined ? toNumber(sum) : (toNumber(sum) * Math.PI) / perPi
}

function readTerms(text: string): readonly Term[] | null {
  const terms: Term[] = []
  let rest = text
  while (rest.trim() !== '') {
    const figure = FIGURE.exec(rest)
    if (!figure) return null
    rest = rest.slice(figure[0].length)
    const unit = UNIT.exec(rest) as RegExpExecArray
    rest = rest.slice(unit[0].length).replace(/^\s*-\s*(?=\d)/, ' ')
    const [, whole, top, bottom, onlyTop, onlyBottom, decimal] = figure
    if (/^0*$/.test(bottom ?? onlyBottom ?? '1') || /e[+-]?\d{3}/i.test(decimal ?? '')) return null
    const part = decimal
      ? fromDecimal(decimal)
      : over(fromDecimal((top ?? onlyTop) as string), fromDecimal((bottom ?? onlyBottom) as string))
    terms.push({ figure: whole ? add(fromDecimal(whole), part) : part, unit: unit[1] as string })
  }
  return terms.length > 0 ? terms : null
}

function find(kind: QuantityKind, name: string): TradeUnit | undefined {
  const { units } = KINDS[kind]
  const exact = units.find((each) => each.names.includes(name))
  if (exact) return exact
  // MM or Kg is plainly meant, but only where one unit could be: mPa and MPa are left to be told apart
  const loose = units.filter((each) => each.names.some((known) => known.toLowerCase() === name.toLowerCase()))
  return loose.length === 1 && kind !== 'pressure' ? loose[0] : undefined
}

function follows(first: string, second: Term, kind: QuantityKind): boolean {
  const then = COMPOUND[first.toLowerCase()]
  return then !== undefined && find(kind, second.unit) === find(kind, then)
}

function wrongUnit(text: string, unit: string, kind: QuantityKind): string {
  const others = (Object.keys(KINDS) as QuantityKind[]).filter((each) => each !== kind && find(each, unit) !== undefined)
  const other = others[0]
  if (other) return `"${text}", which is ${KINDS[other].says}`
  return `"${text}": "${unit}" is not a unit used for ${KINDS[kind].says}`
}
