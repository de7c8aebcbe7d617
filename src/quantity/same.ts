/**
 * Whether two pieces of plain data are the same. The same object is, at once: a design made with the memo of the one before
 * holds the very objects of it wherever nothing changed.
 */
type Compare = (a: unknown, b: unknown) => boolean

const GRAIN = 1e9

/** Numbers are the same to 1e-9, the grain of everything printed. */
export const same = comparing((a, b) => Math.round(a * GRAIN) === Math.round(b * GRAIN) || Object.is(a, b))

/** To the last bit: one may stand for the other. */
export const identical = comparing(Object.is)

function comparing(areAlike: (a: number, b: number) => boolean): Compare {
  const compare: Compare = (a, b) => {
    // most numbers are the same to the last bit, which is a quicker question than any other
    if (a === b) return true
    if (typeof a === 'number' && typeof b === 'number') return areAlike(a, b)
    if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false
    if (Array.isArray(a) || Array.isArray(b)) return Array.isArray(a) && Array.isArray(b) && lists(a, b)
    return groups(a as Readonly<Record<string, unknown>>, b as Readonly<Record<string, unknown>>)
  }
  const lists = (a: readonly unknown[], b: readonly unknown[]): boolean => {
    if (a.length !== b.length) return false
    for (let i = 0; i < a.length; i++) if (a[i] !== b[i] && !compare(a[i], b[i])) return false
    return true
  }
  const groups = (a: Readonly<Record<string, unknown>>, b: Readonly<Record<string, unknown>>): boolean => {
    const keys = Object.keys(a)
    if (keys.length !== Object.keys(b).length) return false
    for (const key of keys) if (!(key in b) || !compare(a[key], b[key])) return false
    return true
  }
  return compare
}
