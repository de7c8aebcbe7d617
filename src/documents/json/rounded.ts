/** Numbers as they are printed: to 1e-9, so that another engine's last bit changes no byte, and never -0. */
const GRAIN = 1e9

/** The same tree with every number rounded. A number that is not finite is a bug and throws with where it stands. */
export function rounded<T>(value: T): T {
  return walk(value, '') as T
}

function walk(value: unknown, path: string): unknown {
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) throw new Error(`${path} is ${value}`)
    return Math.round(value * GRAIN) / GRAIN + 0
  }
  if (typeof value !== 'object' || value === null) return value
  if (Array.isArray(value)) {
    const out = new Array<unknown>(value.length)
    for (let i = 0; i < value.length; i++) out[i] = walk(value[i], path)
    return out
  }
  const out: Record<string, unknown> = {}
  for (const key of Object.keys(value)) {
    const below = (value as Record<string, unknown>)[key]
    if (below !== undefined) out[key] = walk(below, `${path}.${key}`)
  }
  return out
}
