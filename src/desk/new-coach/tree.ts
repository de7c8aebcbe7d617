/** A written form as plain data that can be changed and printed again: leaves are figures and words as they stand in a text. */
import type { Written } from '../../definition/written.js'

export type Tree = string | readonly Tree[] | Branch
export interface Branch {
  readonly [key: string]: Tree
}

export const isBranch = (tree: Tree | undefined): tree is Branch => typeof tree === 'object' && !Array.isArray(tree)

/** A word that YAML would take for something else stands in quotes. */
export const word = (text: string): string =>
  /^[A-Za-z][A-Za-z0-9 ./%()-]*$/.test(text) && !/^(true|false|null|nan)$/i.test(text) && !/ $/.test(text) ? text : JSON.stringify(text)

export function treeOf(node: Written): Tree {
  if (node.kind === 'list') return node.items.map(treeOf)
  if (node.kind === 'map') return Object.fromEntries([...node.entries].map(([key, { value }]) => [key, treeOf(value)]))
  if (typeof node.value !== 'string') return node.value === null ? '""' : node.text
  // a size with its unit reads as a word whatever it begins with
  return /^-?[\d./]+ ?[A-Za-z%]+[A-Za-z0-9/]*$|^[\d./-]+ in x [\d./-]+ in$/.test(node.text) ? node.text : word(node.text)
}

const same = (a: Tree, b: Tree): boolean => JSON.stringify(a) === JSON.stringify(b)

/** Items that carry an id are laid over one another by it. */
const idsOf = (items: readonly Tree[]): readonly string[] | null =>
  items.length > 0 && items.every((item) => isBranch(item) && typeof item.id === 'string')
    ? items.map((item) => String((item as Branch).id))
    : null

/** What `over` says that `base` does not, so that it laid on base is over again; null where that is nothing. */
export function beyond(base: Tree | undefined, over: Tree): Tree | null {
  if (base === undefined) return Array.isArray(over) && over.length === 0 ? null : over
  if (isBranch(over) && isBranch(base)) {
    const left = Object.entries(over).flatMap(([key, value]) => {
      const more = beyond(base[key], value)
      return more === null ? [] : [[key, more] as const]
    })
    return left.length > 0 ? Object.fromEntries(left) : null
  }
  if (Array.isArray(over) && Array.isArray(base)) {
    const [now, was] = [idsOf(over), idsOf(base)]
    if (was && (now || over.length === 0)) return itemsBeyond(base, was, over, now ?? [])
  }
  return same(base, over) ? null : over
}

function itemsBeyond(base: readonly Tree[], was: readonly string[], over: readonly Tree[], now: readonly string[]): Tree | null {
  const gone = was.filter((id) => !now.includes(id)).map((id) => ({ id, omit: 'yes' }))
  const left = over.flatMap((item, i): Tree[] => {
    const at = was.indexOf(now[i])
    const more = at < 0 ? item : beyond(base[at], item)
    return more === null ? [] : [isBranch(more) ? { id: now[i], ...more } : more]
  })
  return gone.length + left.length > 0 ? [...gone, ...left] : null
}

/** As the examples are written: groups as blocks, an item a line, what is below that in braces. `said` stands above its group. */
export function printed(tree: Branch, said: Readonly<Record<string, string>>): string {
  const lines: string[] = []
  for (const [key, value] of Object.entries(tree)) {
    lines.push('')
    if (said[key]) for (const line of said[key].split('\n')) lines.push(`# ${line}`)
    lines.push(...group(key, value, '', 2))
  }
  return `${lines.join('\n').trim()}\n`
}

/** Longer than this in braces is hard to read on a sheet. */
const WIDE = 110

function group(key: string, value: Tree, indent: string, deep: number): string[] {
  const one = `${indent}${key}: ${flow(value)}`
  const isFlat = isBranch(value) && Object.values(value).every((each) => typeof each === 'string')
  if (typeof value === 'string' || deep === 0 || (isFlat && one.length <= WIDE)) return [one]
  if (isBranch(value)) return [`${indent}${key}:`, ...Object.entries(value).flatMap(([k, v]) => group(k, v, `${indent}  `, deep - 1))]
  const items = value as readonly Tree[]
  if (items.length === 0 || items.every((item) => typeof item === 'string')) return [one]
  return [`${indent}${key}:`, ...items.map((item) => `${indent}  - ${flow(item)}`)]
}

function flow(tree: Tree): string {
  if (typeof tree === 'string') return tree
  if (Array.isArray(tree)) return `[${tree.map(flow).join(', ')}]`
  return `{${Object.entries(tree)
    .map(([key, value]) => `${key}: ${flow(value)}`)
    .join(', ')}}`
}
