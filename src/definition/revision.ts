/** The name of a definition's content: what was meant counts, how it was laid out does not. */
import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js'
import type { Definition } from './types.js'

/** Another engine's last bit must change no byte: SI numbers to 1e-9. */
const GRAIN = 1e9

/** Keys sorted, numbers to 1e-9, the schema version inside. */
export function canonicalJson(definition: Definition): string {
  return canonical(definition)
}

/** First 12 hex digits of SHA-256 over the canonical JSON. */
export function revisionOf(definition: Definition): string {
  return bytesToHex(sha256(utf8ToBytes(canonicalJson(definition)))).slice(0, 12)
}

/** Canonical text of each frozen piece, kept as long as the piece is: an edit rewrites only what it changed. */
const TEXTS = new WeakMap<object, string>()

function canonical(value: unknown): string {
  if (typeof value === 'number') return JSON.stringify(Math.round(value * GRAIN) / GRAIN + 0)
  if (typeof value !== 'object' || value === null) return JSON.stringify(value) ?? 'null'
  const known = TEXTS.get(value)
  if (known !== undefined) return known
  const text = Array.isArray(value)
    ? `[${value.map(canonical).join(',')}]`
    : `{${Object.entries(value)
        .filter(([, below]) => below !== undefined)
        .sort(([a], [b]) => (a < b ? -1 : 1))
        .map(([key, below]) => `${JSON.stringify(key)}:${canonical(below)}`)
        .join(',')}}`
  // only a frozen piece is sure to stay what it was
  if (Object.isFrozen(value)) TEXTS.set(value, text)
  return text
}
