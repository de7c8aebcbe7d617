/**
 * Writing one value back into a definition's text: only the value's own characters change, so comments, blanks and
 * the order of lines stay as somebody left them.
 */
import { isMap, isScalar, isSeq, type Node, parseDocument, type YAMLMap, type YAMLSeq } from 'yaml'
import { child, keyOfItem, type Path, type Where, type Written, whereIs } from './written.js'

/** A key, the number of a list's item from 0, or an item by its id or, where such items have none, by its name. */
export type Step = string | number | { readonly id: string } | { readonly item: string }

/**
 * The text with the value at `steps` written as `value`. What is not there yet is added: a key at the end of its group,
 * an item with that id or name at the end of its list (which overrides the item of the extended file).
 * Throws where the text does not read or the way leads through a single value.
 */
export function setInText(text: string, steps: readonly Step[], value: string): string {
  const doc = parseDocument(text, { prettyErrors: false })
  if (doc.errors.length || steps.length === 0) throw new Error(`cannot write ${say(steps)}: ${doc.errors[0]?.message ?? 'no place given'}`)
  let node: unknown = doc.contents
  for (let i = 0; i < steps.length; i++) {
    const next = step(node, steps[i])
    if (next === undefined) return add(text, node, steps.slice(i), value)
    if (next === null || !hasRange(next))
      throw new Error(`cannot write ${say(steps)}: nothing to hold on to at ${say(steps.slice(0, i + 1))}`)
    node = next
  }
  const [from, to] = (node as Ranged).range
  const gap = from === to && text[from - 1] === ':' ? ' ' : ''
  const blockEnd = text[to - 1] === '\n' && to > from ? '\n' : ''
  return text.slice(0, from) + gap + written(value) + blockEnd + text.slice(to)
}

/** The file, line and column where a value of the merged form is written, or null where it is a default. */
export function whereWritten(merged: Written, steps: readonly Step[]): Where | null {
  const path = pathOf(merged, steps)
  return path && whereIs(merged, path)
}

/** Keys and numbers for steps that name an item by its id; null where there is no such value. */
export function pathOf(merged: Written, steps: readonly Step[]): Path | null {
  const path: (string | number)[] = []
  let node: Written | undefined = merged
  for (const s of steps) {
    const at: string | number =
      typeof s === 'object' ? (node.kind === 'list' ? node.items.findIndex((item) => keyOfItem(item) === nameIn(s)) : -1) : s
    node = child(node, at)
    if (!node) return null
    path.push(at)
  }
  return path
}

type Ranged = Node & { readonly range: [number, number, number] }

function hasRange(node: unknown): node is Ranged {
  return typeof node === 'object' && node !== null && Array.isArray((node as { range?: unknown }).range)
}

const say = (steps: readonly Step[]): string => steps.map((s) => (typeof s === 'object' ? nameIn(s) : String(s))).join(' ')

const nameIn = (s: Exclude<Step, string | number>): string => ('id' in s ? s.id : s.item)

/** Undefined where there is no such child yet. */
function step(node: unknown, s: Step): unknown {
  if (typeof s === 'object')
    return isSeq(node) ? node.items.find((item) => isMap(item) && valueIn(item, 'id' in s ? 'id' : 'item') === nameIn(s)) : undefined
  if (typeof s === 'number') return isSeq(node) ? node.items[s] : undefined
  return isMap(node) ? node.items.find((pair) => keyOf(pair.key) === s)?.value : undefined
}

const keyOf = (key: unknown): string | null =>
  isScalar(key) ? (typeof key.value === 'string' ? key.value : (key.source ?? String(key.value))) : null
const valueIn = (item: YAMLMap, name: string): string | null => keyOf(item.items.find((pair) => keyOf(pair.key) === name)?.value)

function add(text: string, parent: unknown, steps: readonly Step[], value: string): string {
  const [first, ...rest] = steps
  if (isMap(parent) && typeof first === 'string' && hasRange(parent)) return insert(text, parent, `${key(first)}: ${nest(rest, value)}`, '')
  if (isSeq(parent) && typeof first === 'object' && hasRange(parent))
    return insert(text, parent, nest([first, ...rest], value).slice(1, -1), '- ')
  if (parent === null && typeof first === 'string')
    return `${text}${text === '' || text.endsWith('\n') ? '' : '\n'}${key(first)}: ${nest(rest, value)}\n`
  throw new Error(`cannot write ${say(steps)}: it is not a group or list that could take it`)
}

/** The rest of the way as braces and brackets round the value. */
function nest(steps: readonly Step[], value: string): string {
  if (steps.length === 0) return written(value)
  const [first, ...rest] = steps
  if (typeof first === 'number') throw new Error(`cannot write ${say(steps)}: there is no list with that many items`)
  if (typeof first === 'string') return `{${key(first)}: ${nest(rest, value)}}`
  if (rest.length === 0) throw new Error(`cannot write ${say(steps)}: a value of the item is missing`)
  const inside = nest(rest, value)
  return `[{${'id' in first ? 'id' : 'item'}: ${written(nameIn(first))}, ${inside.replace(/^\{|\}$/g, '')}}]`
}

/** Puts `entry` last in a group or list, in the manner it is written in. */
function insert(text: string, parent: (YAMLMap | YAMLSeq) & Ranged, entry: string, dash: string): string {
  const items = parent.items as readonly unknown[]
  if (parent.flow) {
    const close = parent.range[1] - 1
    const body = text.slice(0, close).trimEnd()
    const comma = items.length === 0 || body.endsWith(',') ? '' : ', '
    // a comment at the end of the last line would swallow what follows it
    const onOwnLine = /(^|\s)#[^\n]*$/.test(body.slice(body.lastIndexOf('\n') + 1))
    return onOwnLine ? `${body}\n  ${comma.trim()} ${entry}\n${text.slice(close)}` : `${body}${comma}${entry}${text.slice(close)}`
  }
  const start = dash ? text.lastIndexOf('-', parent.range[0]) : parent.range[0]
  const indent = ' '.repeat(start - (text.lastIndexOf('\n', start - 1) + 1))
  let end = lastEnd(parent)
  while (text[end - 1] === '\n') end--
  const newline = text.indexOf('\n', end)
  const after = newline < 0 ? text.length : newline
  return `${text.slice(0, after)}\n${indent}${dash}${entry}${text.slice(after)}`
}

/** Where the last thing inside ends, before the comments and blank lines that follow it. */
function lastEnd(node: Ranged): number {
  if ((isMap(node) || isSeq(node)) && !node.flow && node.items.length) {
    const last = node.items[node.items.length - 1] as unknown
    const inner = isSeq(node) ? last : ((last as { value: unknown }).value ?? (last as { key: unknown }).key)
    if (hasRange(inner)) return lastEnd(inner)
  }
  return node.range[1]
}

/** Plain where YAML reads it back as it stands, in quotes where it would not. */
function written(value: string): string {
  return /^-?[A-Za-z0-9.][A-Za-z0-9 ./°'"+×-]*$/.test(value) && !/\s$/.test(value) ? value : JSON.stringify(value)
}

const key = (name: string): string => written(name)
