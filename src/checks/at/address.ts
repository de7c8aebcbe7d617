/**
 * Addresses as a shop writes them: side, station, and waterline, girth, lining girth or distance from the centre plane.
 *
 * `R 5745 WL 1160`, `C 3620 G 1500`, `STA 3915 G 0`, `R 5745 g 1670.9`, `roof 4000 BL -300`, `C T -300 WL 500`,
 * `R 226 in WL 45.7 in`. A bare number is millimetres here, and only here, because that is how an address is written.
 * Reading only: whether the coach has such a place is found in place-of-address.ts.
 */
import { oneOf } from '../../definition/near-miss.js'
import { parseQuantity } from '../../quantity/doors.js'

/** Words a person may start with; C and R are settled by the market. */
export type SideWord = 'right' | 'left' | 'C' | 'R' | 'roof'

export interface Address {
  readonly side: SideWord | null
  /** m */
  readonly station: { readonly from: 'nose datum' | 'last frame'; readonly value: number }
  /** what else was written, m; G and g, WL, BL */
  readonly height: { readonly key: HeightKey; readonly value: number }
  /** a second height in brackets, as addresses are printed, to be compared */
  readonly also: { readonly key: HeightKey; readonly value: number } | null
}

export type HeightKey = 'WL' | 'G' | 'g' | 'BL'

const HEIGHTS = ['WL', 'G', 'g', 'BL'] as const
const isHeight = (key: string): key is HeightKey => (HEIGHTS as readonly string[]).includes(key)

export type ReadAddress = { readonly ok: true; readonly address: Address } | { readonly ok: false; readonly says: string }

const SIDES: Readonly<Record<string, SideWord>> = {
  right: 'right',
  left: 'left',
  curb: 'C',
  c: 'C',
  road: 'R',
  r: 'R',
  roof: 'roof',
  centre: 'roof',
  center: 'roof',
  crown: 'roof',
}
const SIDE = /^(right|left|curb|road|roof|centre|center|crown|c|r)(?=[\s\d.+-]|$)/i
const KEY = /(?<![a-z])(station|sta|wl|bl|g|t)(?=[\s\d.+-])/gi
const EXAMPLES = 'for instance "R 5745 WL 1160" or "STA 3915 G 0"'

export function tidied(text: string): string {
  return text
    .replace(/[−–]/g, '-')
    .replace(/[,;()]/g, ' ')
    .replace(/\s+/g, ' ')
    .trim()
}

/** A side at the beginning, and what follows it. */
export function sideFirst(tidy: string): { readonly side: SideWord | null; readonly rest: string } {
  const sided = SIDE.exec(tidy)
  return { side: sided ? SIDES[sided[1].toLowerCase()] : null, rest: tidy.slice(sided ? sided[0].length : 0).trim() }
}

export function readAddress(text: string): ReadAddress {
  const tidy = tidied(text)
  if (tidy === '') return refuse(`An address is a side, a station and a height, ${EXAMPLES}.`)
  const { side, rest } = sideFirst(tidy)
  const read = readValues(text, rest, EXAMPLES)
  return read.ok ? assemble(text, side, read.values) : read
}

export type ReadValues = { readonly ok: true; readonly values: ReadonlyMap<string, number> } | { readonly ok: false; readonly says: string }

/** Lengths by their keys, m: STA, T, WL, BL, G, g. `examples` closes each refusal. */
export function readValues(text: string, rest: string, examples: string): ReadValues {
  const values = new Map<string, number>()
  for (const { key, figure } of pieces(rest)) {
    const name = key.toLowerCase() === 'station' ? 'STA' : key === 'g' ? 'g' : key.toUpperCase()
    if (values.has(name)) return refuse(`"${text}" says ${name} twice. Write each once, ${examples}.`)
    const value = lengthOf(figure, name, examples)
    if (typeof value === 'string') return refuse(value)
    values.set(name, value)
  }
  return { ok: true, values }
}

interface Piece {
  readonly key: string
  readonly figure: string
}

/** What stands before the first key is the station. */
function pieces(rest: string): readonly Piece[] {
  const keys = [...rest.matchAll(KEY)]
  const first = rest.slice(0, keys[0]?.index ?? rest.length).trim()
  const named = keys.map((m, i) => ({ key: m[1], figure: rest.slice(m.index + m[1].length, keys[i + 1]?.index ?? rest.length).trim() }))
  return first === '' ? named : [{ key: 'STA', figure: first }, ...named]
}

/** m, or a sentence. A waterline under the floor may be said with the word: `WL 18 under`. */
function lengthOf(figure: string, name: string, examples: string): number | string {
  const under = name === 'WL' && /\bunder$/i.test(figure)
  const bare = figure.replace(/\s*\bunder$/i, '').trim()
  const parsed = parseQuantity(/^[+-]?\s?\d*\.?\d+$|^[+-]?\s?\d+\.$/.test(bare) ? `${bare} mm` : bare, 'length')
  if (!parsed.ok || Math.abs(parsed.value) > 1000) {
    const found = figure === '' ? 'nothing' : `"${figure}"`
    return `${name === 'STA' ? 'The station' : name} should be a length such as 5745 or 226 in; it says ${found}. Write ${examples}.`
  }
  return under ? -Math.abs(parsed.value) : parsed.value
}

function assemble(text: string, side: SideWord | null, values: ReadonlyMap<string, number>): ReadAddress {
  const sta = values.get('STA')
  const t = values.get('T')
  if (sta !== undefined && t !== undefined) return refuse(`"${text}" gives the station twice, as STA and as T. Write one of them.`)
  const station = sta ?? t
  if (station === undefined) return refuse(`"${text}" gives no station. Write ${EXAMPLES}.`)
  const heights = [...values].flatMap(([key, value]) => (isHeight(key) ? [{ key, value }] : []))
  const [height, also] = heights
  if (!height) return refuse(`"${text}" gives a station only. Add how high it is: ${oneOf(HEIGHTS)} and a length, ${EXAMPLES}.`)
  if (heights.length > 2) return refuse(`"${text}" says how high in ${heights.length} ways. Write one of them, ${EXAMPLES}.`)
  return {
    ok: true,
    address: { side, station: { from: sta === undefined ? 'last frame' : 'nose datum', value: station }, height, also: also ?? null },
  }
}

function refuse(says: string): { readonly ok: false; readonly says: string } {
  return { ok: false, says }
}
