/**
 * Keeps the identity of what did not change from one reading to the next, so that a derivation remembered by identity
 * runs again only for what did. Items of a list are matched by id where they have one.
 */
import { freeze } from './normal-form.js'

/** Equal to `next`, built as far as possible from the objects of `previous`; `previous` itself when nothing changed. */
export function shareUnchanged<T>(previous: T, next: T): T {
  return freeze(share(previous, next)) as T
}

function share(before: unknown, now: unknown): unknown {
  if (Object.is(before, now) || typeof now !== 'object' || now === null || typeof before !== 'object' || before === null) return now
  if (Array.isArray(now)) return Array.isArray(before) ? shareList(before, now) : now
  if (Array.isArray(before)) return now
  const old = before as Record<string, unknown>
  const out: Record<string, unknown> = {}
  let same = Object.keys(old).length === Object.keys(now).length
  for (const [key, value] of Object.entries(now)) {
    out[key] = share(old[key], value)
    same &&= key in old && Object.is(out[key], old[key])
  }
  return same ? before : out
}

function shareList(before: readonly unknown[], now: readonly unknown[]): unknown {
  const byId = new Map(before.map((item) => [idOf(item), item]))
  const out = now.map((item, i) => {
    const id = idOf(item)
    return share(id === null ? before[i] : byId.get(id), item)
  })
  return out.length === before.length && out.every((item, i) => Object.is(item, before[i])) ? before : out
}

function idOf(item: unknown): string | null {
  const id = typeof item === 'object' && item !== null ? (item as { id?: unknown }).id : null
  return typeof id === 'string' ? id : null
}
