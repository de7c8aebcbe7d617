/**
 * Whether two pieces of plain data are the same. The same object is, at once: a design made with the memo of the one before
 * holds the very objects of it wherever nothing changed. Numbers are the same to 1e-9, the grain of everything printed.
 */
const GRAIN = 1e9

export function same(a: unknown, b: unknown): boolean {
  // most numbers are the same to the last bit, which is a quicker question than any other
  if (a === b) return true
  if (typeof a === 'number' && typeof b === 'number') return Math.round(a * GRAIN) === Math.round(b * GRAIN) || Object.is(a, b)
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false
  if (Array.isArray(a) || Array.isArray(b)) return Array.isArray(a) && Array.isArray(b) && sameList(a, b)
  return sameGroup(a as Readonly<Record<string, unknown>>, b as Readonly<Record<string, unknown>>)
}

function sameList(a: readonly unknown[], b: readonly unknown[]): boolean {
  if (a.length !== b.length) return false
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i] && !same(a[i], b[i])) return false
  return true
}

function sameGroup(a: Readonly<Record<string, unknown>>, b: Readonly<Record<string, unknown>>): boolean {
  const keys = Object.keys(a)
  if (keys.length !== Object.keys(b).length) return false
  for (const key of keys) if (!(key in b) || !same(a[key], b[key])) return false
  return true
}
