/** Sentences for every number in plain data that is not a finite one, by its path. */
export function notFinite(value: unknown, path = 'design'): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${path} is ${value}`]
  if (typeof value !== 'object' || value === null) return []
  if (Array.isArray(value) && typeof value[0] === 'number') {
    const bad = value.findIndex((each) => typeof each === 'number' && !Number.isFinite(each))
    return bad < 0 ? [] : [`${path}.${bad} is ${value[bad]}`]
  }
  return Object.entries(value).flatMap(([key, below]) => notFinite(below, `${path}.${key}`))
}
