/**
 * Keeping what has not changed. A derivation asks the memo for each piece by a key and the very objects it is made from;
 * where they are the same objects as last time, last time's piece is handed back, itself the same object.
 * The memo never changes a result: with an empty one everything is made anew and comes out equal.
 */
export interface Memo {
  readonly keep: <T>(key: string, inputs: readonly unknown[], make: () => T) => T
  /** The same for a piece whose inputs often change without changing it: what comes out equal is the old object again. */
  readonly settle: <T>(key: string, inputs: readonly unknown[], make: () => T, equal: (a: T, b: T) => boolean) => T
  /** One piece a thing of a long list, by the thing and by what all of them hang on; `make` asks the memo for nothing. */
  readonly each: <T extends object, R>(key: string, inputs: readonly unknown[], things: readonly T[], make: (thing: T) => R) => R[]
  /** Starts a new derivation: pieces that none of the last ones asked for are let go. */
  readonly turn: () => void
}

interface Kept {
  readonly inputs: readonly unknown[]
  value: unknown
  turn: number
  /** the piece that asked for this one while it was made; null where the derivation itself did */
  owner: Kept | null
  isGone: boolean
}

/** Keeps nothing: for a derivation that nobody will repeat, which then need not hold on to what it was made from. */
export const FORGETFUL: Memo = Object.freeze({ keep: makeAnew, settle: makeAnew, each: eachAnew, turn: () => undefined })

function makeAnew<T>(_key: string, _inputs: readonly unknown[], make: () => T): T {
  return make()
}

function eachAnew<T, R>(_key: string, _inputs: readonly unknown[], things: readonly T[], make: (thing: T) => R): R[] {
  return things.map((thing) => make(thing))
}

/** Keeps what one of the last `patience` derivations asked for. There is one piece a key, so that patience costs little. */
export function createMemo(patience = 1): Memo {
  const kept = new Map<string, Kept>()
  let turn = 0
  let making: Kept | null = null
  const settle = <T>(key: string, inputs: readonly unknown[], make: () => T, equal?: (a: T, b: T) => boolean): T => {
    const old = kept.get(key)
    if (old && same(old.inputs, inputs)) {
      old.turn = turn
      old.owner = making
      return old.value as T
    }
    const piece: Kept = { inputs, value: undefined, turn, owner: making, isGone: false }
    making = piece
    try {
      const made = make()
      piece.value = old && equal?.(old.value as T, made) ? old.value : made
    } finally {
      making = piece.owner
    }
    if (old) old.isGone = true
    kept.set(key, piece)
    return piece.value as T
  }
  const each = <T extends object, R>(key: string, inputs: readonly unknown[], things: readonly T[], make: (thing: T) => R): R[] => {
    const old = kept.get(key)
    const before = old && same(old.inputs, inputs) ? (old.value as ReadonlyMap<T, R>) : null
    const now = new Map<T, R>()
    const pieces = things.map((thing) => {
      const piece = before?.has(thing) ? (before.get(thing) as R) : make(thing)
      now.set(thing, piece)
      return piece
    })
    if (old) old.isGone = true
    kept.set(key, { inputs, value: now, turn, owner: making, isGone: false })
    return pieces
  }
  // what a kept piece was made from is not asked for again, and must be there on the day it is made anew
  const isWanted = (piece: Kept): boolean =>
    !piece.isGone && (piece.turn > turn - patience || (piece.owner !== null && isWanted(piece.owner)))
  return {
    keep: settle,
    settle,
    each,
    turn: () => {
      for (const [key, piece] of kept) {
        if (isWanted(piece)) continue
        piece.isGone = true
        kept.delete(key)
      }
      turn++
    },
  }
}

function same(a: readonly unknown[], b: readonly unknown[]): boolean {
  if (a.length !== b.length) return false
  for (let i = 0; i < a.length; i++) if (!Object.is(a[i], b[i])) return false
  return true
}
