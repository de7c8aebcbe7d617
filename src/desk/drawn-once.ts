/** What is drawn of a thing is drawn once, as long as it and what else it is drawn from are the same objects; on each look. */
import type { Drawn, Look } from './nouns.js'

interface Kept {
  readonly from: readonly unknown[]
  readonly drawn: readonly Drawn[]
}

const KEPT = new WeakMap<object, Map<string, Kept>>()

/** `from` is everything else that is read, by identity; `kind` tells two drawings of one thing apart. */
export function drawnOnce(
  thing: object,
  kind: string,
  look: Look,
  from: readonly unknown[],
  draw: () => readonly Drawn[],
): readonly Drawn[] {
  const own = KEPT.get(thing) ?? new Map<string, Kept>()
  const key = `${kind} ${look}`
  const known = own.get(key)
  if (known && known.from.length === from.length && known.from.every((each, i) => Object.is(each, from[i]))) return known.drawn
  const drawn = draw()
  own.set(key, { from, drawn })
  KEPT.set(thing, own)
  return drawn
}
