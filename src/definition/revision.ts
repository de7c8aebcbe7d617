/** The name of a definition's content: what was meant counts, how it was laid out does not. */
import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js'
import type { Definition } from './types.js'

/** Another engine's last bit must change no byte: SI numbers to 1e-9. */
const GRAIN = 1e9

/** Keys sorted, numbers to 1e-9, the schema version inside. */
export function canonicalJson(definition: Definition): string {
  return JSON.stringify(sorted(definition))
}

/** First 12 hex digits of SHA-256 over the canonical JSON. */
export function revisionOf(definition: Definition): string {
  return bytesToHex(sha256(utf8ToBytes(canonicalJson(definition)))).slice(0, 12)
}

function sorted(value: unknown): unknown {
  if (typeof value === 'number') return Math.round(value * GRAIN) / GRAIN + 0
  if (Array.isArray(value)) return value.map(sorted)
  if (typeof value !== 'object' || value === null) return value
  const entries = Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1))
  return Object.fromEntries(entries.map(([key, below]) => [key, sorted(below)]))
}
