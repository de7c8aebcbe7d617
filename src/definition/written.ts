/**
 * What somebody wrote, before it means anything: maps, lists and words, each remembering the file, line and column it came from.
 * Merged definitions mix files, so the place travels with every node and not with the tree.
 */
export interface Where {
  readonly file: string
  /** counts from 1 */
  readonly line: number
  readonly column: number
}

export interface WrittenScalar {
  readonly kind: 'scalar'
  readonly at: Where
  readonly value: string | number | boolean | null
  /** as it stands in the file: a bare 6100.0 keeps its point */
  readonly text: string
}

export interface WrittenList {
  readonly kind: 'list'
  readonly at: Where
  readonly items: readonly Written[]
}

export interface WrittenEntry {
  readonly keyAt: Where
  readonly value: Written
}

/** A Map and not an object, so that a key called __proto__ is a key like any other. */
export interface WrittenMap {
  readonly kind: 'map'
  readonly at: Where
  readonly entries: ReadonlyMap<string, WrittenEntry>
}

export type Written = WrittenScalar | WrittenList | WrittenMap
export type Path = readonly (string | number)[]

export function child(node: Written, step: string | number): Written | undefined {
  if (node.kind === 'map') return node.entries.get(String(step))?.value
  return node.kind === 'list' && typeof step === 'number' ? node.items[step] : undefined
}

export function nodeAt(root: Written, path: Path): Written | undefined {
  let node: Written | undefined = root
  for (const step of path) node = node && child(node, step)
  return node
}

/** Where a person should look: the value itself, or the nearest thing round a value that is not there. */
export function whereIs(root: Written, path: Path): Where {
  let node = root
  for (const step of path) {
    const next = child(node, step)
    if (!next) break
    node = next
  }
  return node.at
}

/** The written id of a list's item, or null. */
export function idOf(node: Written): string | null {
  const id = child(node, 'id')
  return id?.kind === 'scalar' && id.value !== null ? id.text : null
}

/** What an item of a list is known by: its id, or where such items have none the name written as its `item`; or null. */
export function keyOfItem(node: Written): string | null {
  const item = child(node, 'item')
  return idOf(node) ?? (item?.kind === 'scalar' && item.value !== null ? item.text : null)
}

const NAMES = ['id', 'arc', 'line', 'item']

/** A path as a person says it: `openings RW3 width`, `section chain shoulder radius`, `masses 4 mass`. */
export function label(root: Written, path: Path): string {
  const words: string[] = []
  let node: Written | undefined = root
  for (const step of path) {
    node = node && child(node, step)
    words.push(typeof step === 'number' ? (nameOf(node) ?? String(step + 1)) : step)
  }
  return words.length ? words.join(' ') : 'the definition'
}

function nameOf(node: Written | undefined): string | null {
  for (const key of NAMES) {
    const name = node && child(node, key)
    if (name?.kind === 'scalar' && typeof name.value === 'string') return name.text
  }
  return null
}

/** What was found, in words fit for the end of "found …". */
export function found(node: Written | undefined): string {
  if (!node) return 'nothing'
  if (node.kind === 'list') return 'a list'
  if (node.kind === 'map') return 'a group of keys'
  return node.value === null ? 'nothing' : `"${node.text.length > 60 ? `${node.text.slice(0, 57)}…` : node.text}"`
}
