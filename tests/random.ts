/** Chance with a seed, for tests: the same seed gives the same figures on every machine. */
export interface Chance {
  /** 0 to 1 */
  readonly next: () => number
  readonly between: (from: number, to: number) => number
  /** both ends included */
  readonly whole: (from: number, to: number) => number
  readonly pick: <T>(from: readonly T[]) => T
  readonly maybe: (share: number) => boolean
}

/** Mulberry32, a public-domain generator by Tommy Ettinger: 32 bits of state, good enough to spread test cases. */
export function chance(seed: number): Chance {
  let state = (seed * 0x9e3779b1) >>> 0
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = state
    t = Math.imul(t ^ (t >>> 15), t | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32
  }
  const between = (from: number, to: number): number => from + (to - from) * next()
  const whole = (from: number, to: number): number => Math.floor(between(from, to + 1))
  return { next, between, whole, pick: (from) => from[whole(0, from.length - 1)], maybe: (share) => next() < share }
}
