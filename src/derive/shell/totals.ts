/** What the coach comes to: masses by kind of part, fasteners by length, sheets of stock, lengths. */
import type { Definition } from '../../definition/types.js'
import type { Worked } from '../../quantity/formula.js'
import { gathered } from '../common/gathered.js'
import { massTotal } from '../common/mass.formulas.js'
import type { FastenerRow, Part, Totals } from '../nouns.js'
import type { Shell } from './index.js'

/** What the ends add. */
export interface EndTotals {
  readonly facts: { readonly reach: number }
  readonly parts: readonly Part[]
  readonly rows: readonly FastenerRow[]
}

/** `under`: parts of floor and chassis, which are weighed and punched but not riveted. */
export function totalsOf(definition: Definition, shell: Shell, ends: EndTotals, under: readonly Part[]): Totals {
  const { reach } = ends.facts
  const groups = gathered([...shell.parts, ...ends.parts, ...under], ({ kind }) => [kind])
  const { memo } = shell.laid
  const masses: Record<string, Worked<'kg'>> = {}
  for (const [kind, parts] of groups) {
    const own = parts.map((part) => part.mass)
    masses[kind] = memo.keep(`total ${kind}`, own, () => massTotal(Object.fromEntries(parts.map(({ id, mass }) => [id, mass]))))
  }
  const kinds = new Map(definition.fasteners.map((f) => [f.id, f.kind]))
  const count = { solid: 0, blind: 0 }
  const byLength: Record<string, number> = {}
  for (const row of [...shell.rows, ...ends.rows]) {
    const kind = kinds.get(row.fastener)
    if (!kind) throw new Error(`row ${row.id} uses unknown fastener ${row.fastener}`)
    for (const stack of row.stacks) {
      count[kind] += stack.count
      const name = `${row.fastener} ${stack.name}`
      byLength[name] = (byLength[name] ?? 0) + stack.count
    }
  }
  const first = definition.frames[0].station
  const last = definition.frames[definition.frames.length - 1].station
  return Object.freeze({
    mass: memo.keep('total', Object.values(masses), () => massTotal(masses)),
    masses,
    fasteners: { ...count, byLength },
    holes: [...shell.parts, ...ends.parts, ...under].reduce((sum, p) => sum + p.patterns.reduce((s, q) => s + q.holes.x.length, 0), 0),
    sheets: shell.sheets,
    overallLength: last + reach - definition.ends.couplerFace,
    bodyLength: last - first + 2 * reach,
    overallWidth: shell.section.width,
  })
}
