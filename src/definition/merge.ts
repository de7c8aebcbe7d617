/**
 * Laying one written form over another: maps merge key by key, lists whose items carry an id merge by id
 * (`omit: yes` takes an item out), everything else is replaced. A list of things known by the name of their `item` is laid
 * over by name where it says less of each than every item of the other list does: it could not stand by itself.
 */

import { didYouMean } from './near-miss.js'
import type { Fault } from './types.js'
import { child, found, idOf, keyOfItem, type Written, type WrittenEntry, type WrittenList, type WrittenMap } from './written.js'

export function mergeWritten(base: Written, over: Written, faults: Fault[], path = ''): Written {
  if (base.kind === 'map' && over.kind === 'map') return mergeMaps(base, over, faults, path)
  if (base.kind === 'list' && over.kind === 'list' && ((hasIds(base) && hasIds(over)) || saysLess(base, over)))
    return mergeLists(base, over, faults, path)
  return over
}

/** Takes `omit` items out of a file that extends nothing, where they can only be a slip. */
export function withoutOmits(node: Written, faults: Fault[], path = ''): Written {
  if (node.kind === 'list') {
    const empty: WrittenList = { kind: 'list', at: node.at, items: [] }
    return hasIds(node) && node.items.some(omits) ? mergeLists(empty, node, faults, path) : node
  }
  if (node.kind === 'scalar') return node
  const entries = new Map<string, WrittenEntry>()
  for (const [key, entry] of node.entries) entries.set(key, { ...entry, value: withoutOmits(entry.value, faults, join(path, key)) })
  return { ...node, entries }
}

function mergeMaps(base: WrittenMap, over: WrittenMap, faults: Fault[], path: string): WrittenMap {
  const entries = new Map<string, WrittenEntry>(base.entries)
  for (const [key, entry] of over.entries) {
    const below = base.entries.get(key)
    const value = below
      ? mergeWritten(below.value, entry.value, faults, join(path, key))
      : withoutOmits(entry.value, faults, join(path, key))
    entries.set(key, { keyAt: entry.keyAt, value })
  }
  return { kind: 'map', at: over.at, entries }
}

function mergeLists(base: WrittenList, over: WrittenList, faults: Fault[], path: string): WrittenList {
  const items: (Written | null)[] = [...base.items]
  const places = new Map<string, number>()
  base.items.forEach((item, i) => {
    const id = keyOfItem(item)
    if (id !== null && !places.has(id)) places.set(id, i)
  })
  for (const item of over.items) {
    const id = keyOfItem(item)
    const place = id === null ? undefined : places.get(id)
    if (omits(item)) {
      if (place === undefined) faults.push(nothingToOmit(item, id ?? '', [...places.keys()], path))
      else items[place] = null
    } else if (place === undefined) items.push(item)
    else items[place] = mergeWritten(base.items[place], item, faults, `${path} ${id}`)
    // an id met twice in one file is left standing twice: the reader says so
    if (id !== null) places.delete(id)
  }
  return { kind: 'list', at: over.items.length ? over.at : base.at, items: items.filter((item) => item !== null) }
}

const join = (path: string, key: string): string => (path ? `${path} ${key}` : key)
const hasIds = (list: WrittenList): boolean => list.items.every((item) => item.kind === 'map' && idOf(item) !== null)

/** Whether each item of `over` names one of `base` and leaves out a key that all of those have. */
function saysLess(base: WrittenList, over: WrittenList): boolean {
  const names = new Set(base.items.map((item) => (idOf(item) === null ? keyOfItem(item) : null)))
  const [first] = base.items
  if (first?.kind !== 'map' || over.items.length === 0) return false
  const always = [...first.entries.keys()].filter((key) => base.items.every((item) => child(item, key)))
  return over.items.every((item) => {
    const name = item.kind === 'map' && idOf(item) === null ? keyOfItem(item) : null
    return name !== null && names.has(name) && always.some((key) => !child(item, key))
  })
}

function omits(item: Written): boolean {
  const omit = child(item, 'omit')
  return omit?.kind === 'scalar' && (omit.value === true || omit.value === 'yes')
}

function nothingToOmit(item: Written, id: string, known: readonly string[], path: string): Fault {
  const name = `${path} ${id}`
  const advice = didYouMean(id, known) || 'Take this line out.'
  const expected = `the id of something in the list this extends`
  return {
    path: name,
    ...item.at,
    expected,
    found: found(child(item, 'id')),
    says: `${name}: is to be left out, but nothing with that id is there. ${advice}`,
  }
}
