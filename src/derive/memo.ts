/**
 * Keeping what has not changed. A derivation asks the memo for each piece by a key and the very objects it is made from;
 * where they are the same objects as last time, last time's piece is handed back, itself the same object.
 * The memo never changes a result: with an empty one everything is made anew and comes out equal.
 */
export interface Memo {
  readonly keep: <T>(key: string, inputs: readonly unknown[], make: () => T) => T
  /** The same for a piece whose inputs often change without changing it: what comes out equal is the old object again. */
  readonly settle: <T>(key: string, inputs: readonly unknown[], make: () => T, equal: (a: T, b: T) => boolean) => T
  /** Starts a new derivation: pieces that none of the last ones asked for are let go. */
  readonly turn: () => void
}

interface Kept {
  readonly inputs: readonly unknown[]
  readonly value: unknown
  turn: number
}

/** Keeps nothing: for a derivation that nobody will repeat, which then need not hold on to what it was made from. */
export const FORGETFUL: Memo = Object.freeze({ keep: makeAnew, settle: makeAnew, turn: () => undefined })

function makeAnew<T>(_key: string, _inputs: readonly unknown[], make: () => T): T {
  return make()
}

/** Keeps what one of the last `patience` derivations asked for. There is one piece a key, so that patience costs little. */
export function createMemo(patience = 1): Memo {
  const kept = new Map<string, Kept>()
  let turn = 0
  const settle = <T>(key: string, inputs: readonly unknown[], make: () => T, equal?: (a: T, b: T) => boolean): T => {
    const old = kept.get(key)
    if (old && same(old.inputs, inputs)) {
      old.turn = turn
      return old.value as T
    }
    const made = make()
    const value = old && equal?.(old.value as T, made) ? (old.value as T) : made
    kept.set(key, { inputs, value, turn })
    return value
  }
  return {
    keep: settle,
    settle,
    turn: () => {
      for (const [key, k] of kept) if (k.turn <= turn - patience) kept.delete(key)
      turn++
    },
  }
}

function same(a: readonly unknown[], b: readonly unknown[]): boolean {
  if (a.length !== b.length) return false
  for (let i = 0; i < a.length; i++) if (!Object.is(a[i], b[i])) return false
  return true
}
