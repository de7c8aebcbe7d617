/** What was written differently: single values of the two definitions by their path, items of a list by their id. */
import type { Definition } from '../definition/types.js'
import { same } from '../quantity/same.js'
import type { WrittenChange } from './nouns.js'

type Leaf = string | number | boolean | null
type Tree = Readonly<Record<string, unknown>>

export function writtenChanges(before: Definition, after: Definition): readonly WrittenChange[] {
  const out: WrittenChange[] = []
  walk(before, after, '', out)
  return out
}

const isLeaf = (value: unknown): value is Leaf | undefined => typeof value !== 'object' || value === null

function walk(before: unknown, after: unknown, path: string, out: WrittenChange[]): void {
  if (same(before, after)) return
  if (isLeaf(before) && isLeaf(after)) {
    out.push({ path, before: before ?? null, after: after ?? null })
    return
  }
  // a bought size is one value to whoever wrote it: its name
  const [a, b] = [bought(before), bought(after)]
  if (a !== null || b !== null) {
    out.push({ path, before: a ?? leafOf(before), after: b ?? leafOf(after) })
    return
  }
  const [old, now] = [branches(before), branches(after)]
  for (const key of new Set([...old.keys(), ...now.keys()])) walk(old.get(key), now.get(key), path === '' ? key : `${path} ${key}`, out)
}

const leafOf = (value: unknown): Leaf => (isLeaf(value) ? (value ?? null) : null)

function bought(value: unknown): string | null {
  if (isLeaf(value)) return null
  const { name, value: size } = value as Tree
  return typeof name === 'string' && typeof size === 'number' ? name : null
}

/** Items of a list go by their id where they have one, by their number from 1 where not. */
function branches(value: unknown): ReadonlyMap<string, unknown> {
  if (isLeaf(value)) return new Map()
  if (!Array.isArray(value)) return new Map(Object.entries(value))
  return new Map(value.map((item, i) => [typeof item?.id === 'string' ? item.id : String(i + 1), item]))
}
