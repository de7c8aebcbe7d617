/** Numbers as they are printed: to 1e-9, so that another engine's last bit changes no byte, and never -0. */
const GRAIN = 1e9

/** The same tree with every number rounded. A number that is not finite is a bug and throws with where it stands. */
export function rounded<T>(value: T): T {
  return walk(value, value) as T
}

function walk(value: unknown, root: unknown): unknown {
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) throw new Error(`${placeOf(root) ?? 'the value'} is ${value}`)
    return Math.round(value * GRAIN) / GRAIN + 0
  }
  if (typeof value !== 'object' || value === null) return value
  if (Array.isArray(value)) {
    const out = new Array<unknown>(value.length)
    for (let i = 0; i < value.length; i++) out[i] = walk(value[i], root)
    return out
  }
  const out: Record<string, unknown> = {}
  for (const key of Object.keys(value)) {
    const below = (value as Record<string, unknown>)[key]
    if (below !== undefined) out[key] = walk(below, root)
  }
  return out
}

/** Where the first number that is not finite stands: looked for only once there is one, since paths are dear to carry along. */
function placeOf(value: unknown): string | null {
  if (typeof value === 'number') return Number.isFinite(value) ? null : ''
  if (typeof value !== 'object' || value === null) return null
  for (const [key, below] of Object.entries(value)) {
    const place = placeOf(below)
    if (place !== null) return `.${key}${place}`
  }
  return null
}
