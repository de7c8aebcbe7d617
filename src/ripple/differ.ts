/** Small tools of a comparison: pairs, swaps and tallies. */

import { same } from '../quantity/same.js'
import type { Both, Swap, Tally } from './nouns.js'

export const both = <T>(before: T, after: T): Both<T> => ({ before, after })

/** The pair, or null where the two are the same. */
export const bothUnlessSame = <T>(before: T, after: T): Both<T> | null => (same(before, after) ? null : { before, after })

/** Names in one list only. */
export function swap(before: readonly string[], after: readonly string[]): Swap {
  if (before === after) return NOTHING
  const [old, now] = [new Set(before), new Set(after)]
  return { added: [...now].filter((name) => !old.has(name)), removed: [...old].filter((name) => !now.has(name)) }
}

export const NOTHING: Swap = Object.freeze({ added: [], removed: [] })

export const isNothing = (of: Swap): boolean => of.added.length === 0 && of.removed.length === 0

interface Named {
  readonly id: string
}

export interface Matched<T> {
  readonly added: readonly T[]
  readonly removed: readonly T[]
  /** in both, and not the very same object; in the order of the design after */
  readonly kept: readonly (readonly [before: T, after: T])[]
}

/** Two lists matched by id; were an id there twice, in turn. */
export function matched<T extends Named>(before: readonly T[], after: readonly T[]): Matched<T> {
  if (before === after) return { added: [], removed: [], kept: [] }
  const waiting = new Map<string, T[]>()
  for (const each of before) {
    const list = waiting.get(each.id)
    if (list) list.push(each)
    else waiting.set(each.id, [each])
  }
  const added: T[] = []
  const kept: (readonly [T, T])[] = []
  for (const each of after) {
    const was = waiting.get(each.id)?.shift()
    if (!was) added.push(each)
    else if (was !== each) kept.push([was, each])
  }
  return { added, removed: [...waiting.values()].flat(), kept }
}

/** Numbers by name that differ; what one side does not have counts as none of it. */
export function tallies(before: Readonly<Record<string, number>>, after: Readonly<Record<string, number>>): readonly Tally[] {
  const names = [...new Set([...Object.keys(before), ...Object.keys(after)])].sort()
  return names.flatMap((name) => {
    const [a, b] = [before[name] ?? 0, after[name] ?? 0]
    return same(a, b) ? [] : [{ name, before: a, after: b }]
  })
}

export function countBy<T>(list: readonly T[], name: (each: T) => string, weight: (each: T) => number = () => 1): Record<string, number> {
  const out: Record<string, number> = {}
  for (const each of list) out[name(each)] = (out[name(each)] ?? 0) + weight(each)
  return out
}
