/** What the three lists share: how near is near, order, and words. */
import { fastenerId } from '../../derive/holes.js'
import type { Derived } from '../../derive/index.js'
import type { FastenerRow } from '../../derive/nouns.js'
import type { Thing } from './at.js'
import { lengthText } from './lengths.js'

/** Things farther away than this are not told, m. A hand's width more than a window rim reaches; our choice. */
export const NEAR = 0.15

export const byDistance = (a: Thing, b: Thing): number => a.distance - b.distance

/** Those within `near`, and the nearest one however far it is. */
export function withNearest(things: readonly Thing[], near: number): readonly Thing[] {
  const sorted = [...things].sort(byDistance)
  return sorted.filter((t, i) => i === 0 || t.distance <= near)
}

export const away = (m: number): string => `${lengthText(m)} mm away`

/** `0.81 mm 5052-H34`. */
export function alloyOf(derived: Derived, id: string): string {
  const part = derived.parts.find((p) => p.id === id)
  return part ? `${part.thickness.name} ${part.material}` : 'not derived'
}

/** Fastener i of a row with the stack it goes through. */
export function fastenerThing(derived: Derived, row: FastenerRow, i: number, distance: number): Thing {
  const stack = row.stacks[row.stack[i]]
  const type = derived.definition.fasteners.find((f) => f.id === row.fastener)
  const how = `${type ? `${type.diameter.name} ${type.kind} rivet` : 'Fastener'} ${row.fastener} ${stack.name}`
  const where = distance < 5e-5 ? 'here' : away(distance)
  const sentence = `${how} of row ${row.id} (${row.says}), through ${stack.parts.join(', ')}, ${where}.`
  return { kind: 'fastener', id: fastenerId(row, i), sentence, distance }
}
