/** Single values of the written form: quantities, bought sizes, words, numbers, names, dates. */
import { parseQuantity } from '../quantity/doors.js'
import { ALLOYS, findAlloy } from '../tables/alloys.js'
import type { Reading } from './faults.js'
import type { Form, JsonSchema } from './form.js'
import { didYouMean, oneOf } from './near-miss.js'
import type { Bought, StockSize } from './types.js'
import { found, type Path, type Written } from './written.js'

/** Bounds in SI; `over` excludes its end. */
export interface Bounds {
  readonly over?: number
  readonly atLeast?: number
}

/** No road vehicle is longer than this (about 25 m in every market, from memory): a length beyond it is a slip of the unit. m */
const LONGEST = 30
/** Heavier than any trailer of this kind, from memory: a mass beyond it is a slip of the unit. kg */
const HEAVIEST = 50_000

/** What the written form asks for: its noun, what to write, and the farthest anybody means, SI. */
const KINDS = {
  length: { noun: 'length', example: '520 mm', farthest: LONGEST, limit: 'that fits on a road' },
  mass: { noun: 'mass', example: '24 kg', farthest: HEAVIEST, limit: 'that a trailer can weigh' },
  angle: { noun: 'angle', example: '13.5 deg', farthest: 2 * Math.PI, limit: 'within one turn' },
  temperature: { noun: 'temperature', example: '20 C', farthest: 1000, limit: 'that a shop can have' },
  linearMass: { noun: 'mass per length', example: '0.474 kg/m', farthest: 100, limit: 'that a profile can weigh' },
  force: { noun: 'force', example: '26 kN', farthest: 1e7, limit: 'that a coupling can bear' },
  stiffness: { noun: 'spring rate', example: '110 kN/m', farthest: 1e8, limit: 'that a spring can have' },
  pressure: { noun: 'stress', example: '0.8 MPa', farthest: 1e12, limit: 'that a material can bear' },
  torque: { noun: 'torque', example: '440 Nm', farthest: 1e6, limit: 'that an axle can hold' },
  damping: { noun: 'damping rate', example: '3500 Ns/m', farthest: 1e6, limit: 'that a damper can have' },
  turningDamping: { noun: 'damping of turning', example: '1000 Nms/rad', farthest: 1e6, limit: 'that a hitch can have' },
  inertia: { noun: 'moment of inertia', example: '3200 kgm2', farthest: 1e6, limit: 'that a car can have' },
  arealMass: { noun: 'mass per area', example: '10.2 kg/m2', farthest: 1000, limit: 'that a board can weigh' },
  density: { noun: 'density', example: '7850 kg/m3', farthest: 25_000, limit: 'that a metal can have' },
} as const
type Kind = keyof typeof KINDS

function text(node: Written): string | null {
  return node.kind === 'scalar' && node.value !== null ? node.text : null
}

function bare(node: Written): boolean {
  return node.kind === 'scalar' && typeof node.value === 'number'
}

/** Anything above nothing; the usual case for a size. */
const POSITIVE: Bounds = { over: 0 }
export const NOT_NEGATIVE: Bounds = { atLeast: 0 }

export function quantity(kind: Kind, bounds: Bounds = {}, example: string = KINDS[kind].example): Form<number> {
  const expects = phrase(kind, `such as ${example}`)
  return {
    expects,
    example,
    read: (node, reading, path) => readQuantity(node, reading, path, kind, bounds, expects),
    schema: () => ({ type: 'string', examples: [example] }),
  }
}

function phrase(kind: Kind, tail: string): string {
  return `${kind === 'angle' ? 'an' : 'a'} ${KINDS[kind].noun} ${tail}`
}

/** Figures nobody writes, kept from the exact arithmetic behind the quantities, which would count to them. */
const ENDLESS = /e[+-]?\d{3}|.{50}/i

function readQuantity(node: Written, reading: Reading, path: Path, kind: Kind, bounds: Bounds, expects: string): number | undefined {
  const written = text(node)
  const wrong = (expected: string, foundHere: string, advice?: string): undefined => {
    reading.wrong(path, { expected, found: foundHere, ...(advice ? { advice } : {}) })
  }
  if (written === null || ENDLESS.test(written)) return wrong(expects, found(node))
  if (bare(node)) {
    const unit = expects.slice(expects.lastIndexOf(' ') + 1)
    return wrong(expects, `${written} without a unit`, `${written} needs a unit, for instance ${written} ${unit}.`)
  }
  const parsed = parseQuantity(written, kind)
  if (!parsed.ok) return wrong(expects, parsed.found)
  if (Math.abs(parsed.value) > KINDS[kind].farthest) return wrong(phrase(kind, KINDS[kind].limit), found(node), 'Look at the unit.')
  const limit = outside(parsed.value, bounds)
  return limit === null ? parsed.value : wrong(phrase(kind, limit), found(node))
}

function outside(value: number, bounds: Bounds): string | null {
  if (bounds.over !== undefined && !(value > bounds.over)) return 'above zero'
  if (bounds.atLeast !== undefined && value < bounds.atLeast) return 'of zero or more'
  return null
}

export const length = (bounds: Bounds = POSITIVE, example?: string): Form<number> => quantity('length', bounds, example)
export const anyLength = (example?: string): Form<number> => quantity('length', {}, example)
export const mass = (bounds: Bounds = POSITIVE): Form<number> => quantity('mass', bounds)
/** Read as the shop says it and kept in degrees Celsius. */
export const temperatureC = (example: string): Form<number> => {
  const form = quantity('temperature', {}, example)
  return {
    ...form,
    read: (node, reading, path) => {
      const kelvin = form.read(node, reading, path)
      // the offset leaves the last bits of 273.15 behind, which would change the revision of an unchanged coach
      return kelvin === undefined ? undefined : Math.round((kelvin - 273.15) * 1e6) / 1e6
    },
  }
}
export const linearMass = (): Form<number> => quantity('linearMass', POSITIVE)
export const arealMass = (): Form<number> => quantity('arealMass', POSITIVE)
export const density = (): Form<number> => quantity('density', POSITIVE)
export const angle = (bounds: Bounds = {}, example?: string): Form<number> => quantity('angle', bounds, example)

/** A thickness or diameter bought by name: the name is kept as written. */
export function bought(example: string): Form<Bought> {
  const size = quantity('length', POSITIVE, example)
  return {
    ...size,
    read(node, reading, path) {
      const value = size.read(node, reading, path)
      return value === undefined ? undefined : { name: tidy(text(node) ?? ''), value }
    },
  }
}

const tidy = (written: string): string => written.trim().replace(/\s+/g, ' ')

/** `48 in x 152 in`; the smaller side becomes the width whichever way round it was written. */
export function stockSize(): Form<StockSize> {
  const example = '48 in x 152 in'
  const expects = `a sheet size such as ${example}`
  return {
    expects,
    example,
    read(node, reading, path) {
      const written = text(node)
      const sides = written === null ? [] : tidy(written).split(/\s*[x×]\s*/)
      if (sides.length !== 2) {
        reading.wrong(path, { expected: expects, found: found(node) })
        return undefined
      }
      const sizes: number[] = []
      for (const side of sides) {
        const parsed = ENDLESS.test(side) ? null : parseQuantity(side, 'length')
        if (parsed?.ok && parsed.value > 0 && parsed.value <= LONGEST) sizes.push(parsed.value)
        else {
          reading.wrong(path, {
            expected: expects,
            found: parsed && !parsed.ok ? parsed.found : found(node),
            advice: 'Each side has its own unit.',
          })
          return undefined
        }
      }
      return { name: tidy(written ?? ''), width: Math.min(...sizes), length: Math.max(...sizes) }
    },
    schema: () => ({ type: 'string', examples: [example] }),
  }
}

/** One word of a closed set. */
export function word<const W extends readonly string[]>(words: W): Form<W[number]> {
  const expects = oneOf(words)
  return {
    expects,
    example: words[0],
    read(node, reading, path) {
      const written = text(node)
      if (written !== null && words.includes(written)) return written as W[number]
      reading.wrong(path, { expected: expects, found: found(node), advice: written === null ? '' : didYouMean(written, words) })
      return undefined
    },
    schema: () => ({ enum: [...words] }),
  }
}

/** Free words on one line. */
export function words(example: string): Form<string> {
  const expects = `words such as ${example}`
  return {
    expects,
    example,
    read(node, reading, path) {
      const written = text(node)
      const clean = written !== null && written.trim() !== '' && ![...written].some((c) => c < ' ' || c === '\u007f')
      if (clean) return tidy(written)
      reading.wrong(path, { expected: written !== null && written.trim() !== '' ? 'words on one line' : expects })
      return undefined
    },
    schema: () => ({ type: 'string', minLength: 1 }),
  }
}

/** Ids end up in hole addresses and file names: letters, digits, hyphen, dot and underscore only. */
export function id(example: string): Form<string> {
  const expects = `an id such as ${example}, of letters, digits and hyphens`
  return {
    expects,
    example,
    read(node, reading, path) {
      const written = text(node)
      if (written !== null && /^[A-Za-z0-9][A-Za-z0-9._-]{0,31}$/.test(written)) return written
      reading.wrong(path, { expected: expects })
      return undefined
    },
    schema: () => ({ type: 'string', pattern: '^[A-Za-z0-9][A-Za-z0-9._-]{0,31}$' }),
  }
}

export function yesNo(): Form<boolean> {
  return {
    expects: 'yes or no',
    example: 'yes',
    read(node, reading, path) {
      const value = node.kind === 'scalar' ? node.value : null
      if (value === 'yes' || value === true) return true
      if (value === 'no' || value === false) return false
      reading.wrong(path, { expected: 'yes or no' })
      return undefined
    },
    schema: (): JsonSchema => ({ enum: ['yes', 'no', true, false] }),
  }
}

/** A plain number without a unit, such as a multiple of a diameter. */
export function multiple(example: string): Form<number> {
  const expects = `a plain number above zero such as ${example}`
  return {
    expects,
    example,
    read(node, reading, path) {
      const value = node.kind === 'scalar' ? node.value : null
      if (typeof value === 'number' && Number.isFinite(value) && value > 0) return value
      reading.wrong(path, { expected: expects })
      return undefined
    },
    schema: () => ({ type: 'number', exclusiveMinimum: 0 }),
  }
}

/** A share of a whole, `2.5 %`, kept as a fraction of one. */
export function share(example: string): Form<number> {
  const expects = `a share such as ${example}`
  return {
    expects,
    example,
    read(node, reading, path) {
      const said = /^(\d{1,3}(?:\.\d{1,6})?) ?%$/.exec(text(node) ?? '')
      const value = said ? Number(said[1]) : Number.NaN
      if (value <= 100) return value / 100
      const advice = bare(node) ? `Write it in hundredths with its sign, for instance ${example}.` : ''
      reading.wrong(path, { expected: said ? 'a share of at most 100 %' : expects, found: found(node), advice })
      return undefined
    },
    schema: () => ({ type: 'string', examples: [example] }),
  }
}

/** How many of something, at least one. */
export function count(example: string): Form<number> {
  const expects = `a whole number such as ${example}`
  return {
    expects,
    example,
    read(node, reading, path) {
      const value = node.kind === 'scalar' ? node.value : null
      if (typeof value === 'number' && Number.isInteger(value) && value >= 1 && value <= 1000) return value
      reading.wrong(path, { expected: expects })
      return undefined
    },
    schema: () => ({ type: 'integer', minimum: 1 }),
  }
}

const DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]

/** An ISO date that is in the calendar. */
export function date(): Form<string> {
  return {
    expects: 'a date such as 2026-03-02',
    example: '2026-03-02',
    read(node, reading, path) {
      const m = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text(node) ?? '')
      if (m) {
        const [year, month, day] = [Number(m[1]), Number(m[2]), Number(m[3])]
        const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0
        if (month >= 1 && month <= 12 && day >= 1 && day <= DAYS[month - 1] + (leap && month === 2 ? 1 : 0)) return m[0]
      }
      reading.wrong(path, { expected: 'a date such as 2026-03-02' })
      return undefined
    },
    schema: () => ({ type: 'string', format: 'date', examples: ['2026-03-02'] }),
  }
}

/** An alloy and temper of the table, under the table's own name. */
export function alloy(example: string): Form<string> {
  const known = [...new Set(ALLOYS.map((each) => each.name))]
  return {
    expects: `an alloy such as ${example}`,
    example,
    read(node, reading, path) {
      const written = text(node)
      const named = written === null ? null : findAlloy(written)
      if (named?.ok) return named.row.name
      const advice = written === null ? '' : didYouMean(written, known) || `Known are ${oneOf(known)}.`
      reading.wrong(path, { expected: `an alloy such as ${example}`, advice })
      return undefined
    },
    schema: () => ({ type: 'string', examples: known }),
  }
}
