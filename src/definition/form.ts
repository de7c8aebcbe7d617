/**
 * The kit the written form is described with. One description gives the reading, the faults and the JSON Schema,
 * so an editor and the program cannot disagree. Groups of keys, lists and choices here; single values in form-values.ts.
 *
 * A reading that fails gives `undefined` for that value and goes on, so that every fault comes at once.
 */
import type { Default } from './defaults.js'
import type { Reading } from './faults.js'
import { didYouMean, nearest, oneOf } from './near-miss.js'
import { child, found, type Path, type Written, type WrittenMap } from './written.js'

export type JsonSchema = { readonly [key: string]: unknown }
/** `merged` also demands what is required; a file that extends another may leave it out. */
export type SchemaFor = 'file' | 'merged'

export interface Form<T> {
  /** a phrase: "a length such as 520 mm" */
  readonly expects: string
  /** what a person would write, for advice on a missing key; null for a group */
  readonly example: string | null
  read(node: Written, reading: Reading, path: Path): T | undefined
  schema(kind: SchemaFor): JsonSchema
}

export interface Field<T> {
  readonly key: string
  readonly form: Form<T>
  readonly says: string
  /** what an absent key means */
  readonly absent: 'a fault' | 'none' | Default
}

type Fields = Readonly<Record<string, Field<unknown>>>
export type ReadOf<F> = { readonly [K in keyof F]: F[K] extends Field<infer T> ? T | undefined : never }
/** What remains of a reading without faults. */
export type Whole<T> = T extends readonly [number, number]
  ? T
  : T extends readonly (infer U)[]
    ? readonly Whole<Exclude<U, undefined>>[]
    : T extends object
      ? { readonly [K in keyof T]: Whole<Exclude<T[K], undefined>> }
      : T

export function needs<T>(key: string, form: Form<T>, says: string): Field<T> {
  return { key, form, says, absent: 'a fault' }
}

export function usually<T>(key: string, form: Form<T>, says: string, absent: Default): Field<T> {
  return { key, form, says, absent }
}

/** May be absent, which is null. */
export function maybe<T>(key: string, form: Form<T>, says: string): Field<T | null> {
  return { key, form: form as Form<T | null>, says, absent: 'none' }
}

/** May be absent because another trade says the same: written-once.ts fills it in, or finds the fault. */
export function elsewhere<T>(key: string, form: Form<T>, says: string): Field<T> {
  return { key, form, says, absent: 'none' }
}

/** Keys this version knows of but does not read; the message says so instead of calling them unknown. */
export type Reserved = readonly string[]

export function group<F extends Fields>(fields: F, reserved: Reserved = []): Form<ReadOf<F>> {
  const list = Object.entries(fields)
  const keys = list.map(([, f]) => f.key)
  return {
    expects: 'a group of keys',
    example: null,
    read(node, reading, path) {
      if (node.kind !== 'map') {
        reading.wrong(path, { expected: `the keys ${oneOf(keys)}`, found: found(node) })
        return undefined
      }
      const misspelt = strangers(node, keys, reserved, reading, path)
      const out: Record<string, unknown> = {}
      for (const [name, f] of list) {
        const value = child(node, f.key)
        if (value) out[name] = f.form.read(value, reading, [...path, f.key])
        else out[name] = absent(f, node, misspelt, reading, path)
      }
      return out as ReadOf<F>
    },
    schema(kind) {
      const properties: Record<string, JsonSchema> = {}
      for (const [, f] of list) properties[f.key] = fieldSchema(f, kind)
      const required = list.filter(([, f]) => f.absent === 'a fault').map(([, f]) => f.key)
      return { type: 'object', properties, additionalProperties: false, ...(kind === 'merged' && required.length ? { required } : {}) }
    },
  }
}

function strangers(node: WrittenMap, keys: readonly string[], reserved: Reserved, reading: Reading, path: Path): Set<string> {
  const meant = new Set<string>()
  for (const [key, entry] of node.entries) {
    if (keys.includes(key)) continue
    const at = entry.keyAt
    if (reserved.includes(key)) {
      const because = `this version does not read "${key}" yet`
      const advice = 'Take it out for now, or keep it in a file of its own.'
      reading.impossible([...path, key], { at, expected: 'a trade this version reads', found: `"${key}"`, because, advice })
      continue
    }
    const near = nearest(key, keys)
    if (near !== null) meant.add(near)
    reading.wrong([...path, key], {
      at,
      expected: 'a key that is known here',
      found: `"${key}"`,
      advice: didYouMean(key, keys) || `Known here: ${oneOf(keys)}.`,
    })
  }
  return meant
}

function absent(f: Field<unknown>, node: WrittenMap, misspelt: ReadonlySet<string>, reading: Reading, path: Path): unknown {
  if (f.absent === 'none') return null
  if (f.absent === 'a fault') {
    // A misspelt key was reported where it stands; saying that it is missing too would be the same fault twice.
    if (!misspelt.has(f.key)) {
      const advice = f.form.example === null ? `Add ${f.key}: (${f.says}).` : `Add ${f.key}: ${f.form.example} (${f.says}).`
      reading.wrong([...path, f.key], { expected: f.form.expects, found: 'nothing', advice })
    }
    return undefined
  }
  const written = f.absent.written
  const stand: Written =
    typeof written === 'object'
      ? { kind: 'list', at: node.at, items: [] }
      : { kind: 'scalar', at: node.at, value: written, text: String(written) }
  return f.form.read(stand, reading, [...path, f.key])
}

function fieldSchema(f: Field<unknown>, kind: SchemaFor): JsonSchema {
  const base = { ...f.form.schema(kind), description: f.says }
  return typeof f.absent === 'object' ? { ...base, default: f.absent.written } : base
}

export function list<T>(item: Form<T>, atLeast = 0, unique: 'id' | null = null): Form<readonly (T | undefined)[]> {
  return {
    expects: atLeast ? `a list of at least ${atLeast}` : 'a list',
    example: null,
    read(node, reading, path) {
      if (node.kind !== 'list') {
        reading.wrong(path, {
          expected: 'a list',
          found: found(node),
          advice: 'Put the items in square brackets, or each on a line of its own after a dash.',
        })
        return undefined
      }
      if (node.items.length < atLeast) reading.wrong(path, { expected: `a list of at least ${atLeast}`, found: `${node.items.length}` })
      if (unique) repeated(node.items, reading, path)
      const items = node.items.map((it, i) => item.read(it, reading, [...path, i]))
      return items.length < atLeast ? undefined : items
    },
    schema: (kind) => ({
      type: 'array',
      items: unique ? mergeable(item.schema(kind), kind) : item.schema(kind),
      ...(kind === 'merged' && atLeast ? { minItems: atLeast } : {}),
    }),
  }
}

/** In a file that extends another an item may also be left out by id. */
function mergeable(item: JsonSchema, kind: SchemaFor): JsonSchema {
  if (kind === 'merged') return item
  const omit = { enum: ['yes', true], description: 'leaves out the item of this id that the extended file has' }
  return { ...item, properties: { ...(item.properties as JsonSchema), omit }, required: ['id'] }
}

function repeated(items: readonly Written[], reading: Reading, path: Path): void {
  const seen = new Map<string, number>()
  items.forEach((item, i) => {
    const id = child(item, 'id')
    if (id?.kind !== 'scalar' || id.value === null) return
    const line = seen.get(id.text)
    if (line === undefined) seen.set(id.text, id.at.line)
    else {
      const because = `the id "${id.text}" is taken: it stands on line ${line} already`
      reading.impossible([...path, i, 'id'], { expected: 'an id of its own', because, advice: 'Give this one another id.' })
    }
  })
}

/** A group with ids for keys, such as the fasteners; each item gives its key as `id`. */
export function keyed<T extends object>(item: Form<T>): Form<readonly ((T & { readonly id: string }) | undefined)[]> {
  return {
    expects: 'a group of keys, one an item',
    example: null,
    read(node, reading, path) {
      if (node.kind !== 'map') {
        reading.wrong(path, { expected: 'a group of keys, one an item', found: found(node) })
        return undefined
      }
      return [...node.entries].map(([id, entry]) => {
        const value = item.read(entry.value, reading, [...path, id])
        return value && { ...value, id }
      })
    },
    schema: (kind) => ({ type: 'object', additionalProperties: item.schema(kind) }),
  }
}

/** The word `none` for null, so that a coach can take out what its family has. */
export function orNone<T>(form: Form<T>): Form<T | null> {
  return orWord('none', form)
}

/** A word that stands for null: `fit` for a value to be solved, `axles` for a station still to be known. */
export function orWord<T>(word: string, form: Form<T>): Form<T | null> {
  return {
    expects: `${form.expects}, or ${word}`,
    example: form.example,
    read: (node, reading, path) => (node.kind === 'scalar' && node.value === word ? null : form.read(node, reading, path)),
    schema: (kind) => ({ anyOf: [form.schema(kind), { const: word }] }),
  }
}

/** Two values of one kind under two names, such as the least and the greatest; the second may not be below the first. */
export function range(value: Form<number>, low: string, high: string): Form<readonly [number, number]> {
  const both = group({ low: needs(low, value, low), high: needs(high, value, high) })
  return {
    expects: `${low} and ${high}`,
    example: value.example === null ? null : `{${low}: ${value.example}, ${high}: ${value.example}}`,
    read(node, reading, path) {
      const read = both.read(node, reading, path)
      if (read?.low === undefined || read.high === undefined) return undefined
      if (read.low <= read.high) return [read.low, read.high]
      const because = `${high} is below ${low}`
      reading.impossible([...path, high], { expected: `not less than ${low}`, because, advice: 'Exchange the two.' })
      return undefined
    },
    schema: (kind) => both.schema(kind),
  }
}
