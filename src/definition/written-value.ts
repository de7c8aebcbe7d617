/** The SI number a written value says, for whoever wants to find a figure in the text again. */
import { parseQuantity } from '../quantity/doors.js'
import { KINDS, type QuantityKind } from '../quantity/trade-units.js'
import type { Written } from './written.js'

/** Null where it says no number of that unit. A stock size says its width, which is its smaller side. */
export function valueWritten(node: Written | undefined, unit: string): number | null {
  if (node?.kind !== 'scalar' || node.value === null) return null
  if (unit === '1') return plain(node.text)
  const sides = node.text.split(/\s*[x×]\s*/)
  if (sides.length === 2) {
    const [a, b] = sides.map((side) => quantity(side, unit))
    return a === null || b === null ? null : Math.min(a, b)
  }
  return quantity(node.text, unit)
}

function plain(text: string): number | null {
  const share = /^(.+?) ?%$/.exec(text)
  const value = Number(share ? share[1] : text)
  return text.trim() === '' || !Number.isFinite(value) ? null : share ? value / 100 : value
}

function quantity(text: string, unit: string): number | null {
  for (const kind of Object.keys(KINDS) as QuantityKind[]) {
    if (KINDS[kind].si !== unit) continue
    const read = parseQuantity(text, kind)
    if (read.ok) return read.value
  }
  return null
}
