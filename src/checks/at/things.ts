/** What the three lists share: how near is near, order, and words. */
import type { Derived } from '../../derive/index.js'
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
