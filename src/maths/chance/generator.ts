/**
 * A seeded stream of 32-bit words: the small fast counting generator sfc32 of C. Doty-Humphrey (PractRand, public domain).
 * Whole-number arithmetic only, so the same seed gives the same words in every engine. Not for secrets.
 */

/** State of a stream: three words that mix and one that counts. It changes as words are drawn, and belongs to whoever made it. */
export type Generator = Int32Array

/** Words thrown away before the first is used, so that near seeds have parted (the author's own advice is 12 or more). */
const RUN_IN = 16

/** A stream of its own for a seed and a name: the draws of one thing do not depend on how many others were drawn before it. */
export function generator(seed: number, name: string): Generator {
  // FNV-1a over the name, with its published offset and prime (Fowler, Noll, Vo)
  let hash = 0x811c9dc5
  for (let i = 0; i < name.length; i++) hash = Math.imul(hash ^ name.charCodeAt(i), 0x01000193)
  const state = Int32Array.of(hash, seed | 0, Math.floor(seed / 2 ** 32) | 0, 1)
  for (let i = 0; i < RUN_IN; i++) word(state)
  return state
}

/** The next word, as a signed whole number of 32 bits. */
export function word(state: Generator): number {
  const [a, b, c, count] = [state[0], state[1], state[2], state[3]]
  const out = (((a + b) | 0) + count) | 0
  state[0] = b ^ (b >>> 9)
  state[1] = (c + (c << 3)) | 0
  state[2] = (((c << 21) | (c >>> 11)) + out) | 0
  state[3] = (count + 1) | 0
  return out
}

/** Evenly between 0 and 1, neither end ever reached. */
export const even = (state: Generator): number => ((word(state) >>> 0) + 0.5) / 2 ** 32
