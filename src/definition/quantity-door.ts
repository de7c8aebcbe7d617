/** Quantities as they are on the tape, to SI. A thin door, so that the definition knows one function only. */
export type Dimension = 'length' | 'mass' | 'angle' | 'linear mass'

export type ParsedQuantity =
  | { readonly ok: true; readonly value: number; readonly text: string }
  | { readonly ok: false; readonly expected: string; readonly found: string }

const UNITS: Readonly<Record<Dimension, Readonly<Record<string, number>>>> = {
  length: { mm: 1e-3, cm: 1e-2, m: 1, in: 0.0254, '"': 0.0254, ft: 0.3048 },
  mass: { kg: 1, g: 1e-3, lb: 0.45359237 },
  angle: { deg: Math.PI / 180, '°': Math.PI / 180, rad: 1 },
  'linear mass': { 'kg/m': 1, 'lb/ft': 0.45359237 / 0.3048 },
}
export const EXAMPLE: Readonly<Record<Dimension, string>> = { length: '520 mm', mass: '24 kg', angle: '13.5 deg', 'linear mass': '0.474 kg/m' }
const NUMBER = /^([+-]?)(?:(\d+)\s+(\d+)\/(\d+)|(\d+)\/(\d+)|(\d+(?:\.\d*)?|\.\d+))\s*(.*)$/

export function parseQuantity(text: string, dimension: Dimension): ParsedQuantity {
  const expected = `${dimension === 'angle' ? 'an' : 'a'} ${dimension} such as ${EXAMPLE[dimension]}`
  const no = (found: string): ParsedQuantity => ({ ok: false, expected, found })
  const m = NUMBER.exec(text.trim())
  if (!m) return no(`"${text}"`)
  const size = m[2] ? Number(m[2]) + Number(m[3]) / Number(m[4]) : m[5] ? Number(m[5]) / Number(m[6]) : Number(m[7])
  const unit = m[8].trim()
  if (unit === '') return no(`${text.trim()} without a unit`)
  const factor = UNITS[dimension][unit]
  if (factor !== undefined && Number.isFinite(size)) return { ok: true, value: (m[1] === '-' ? -size : size) * factor, text: text.trim() }
  for (const other of Object.keys(UNITS) as Dimension[]) {
    if (UNITS[other][unit] !== undefined) return no(`"${text}", which is ${other === 'angle' ? 'an' : 'a'} ${other}`)
  }
  return no(`"${text}"`)
}
