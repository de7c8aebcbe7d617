/**
 * A drawing goes from the worker to the screen as what is new in it: in a drag most things look as they did in the last one, and to copy
 * them all over takes ten times as long as to see that. Each of them is named by its number there.
 */
import type { Drawn, Elevation } from './nouns.js'

export interface SentDrawing extends Omit<Elevation, 'drawn'> {
  /** drawings sent before this one: the numbers are of the last of them */
  readonly after: number
  readonly drawn: readonly (Drawn | number)[]
}

/** Must be handed every drawing that is sent, in its order. */
export function drawingSender(): (elevation: Elevation) => SentDrawing {
  let last: readonly Drawn[] = []
  let count = 0
  return (elevation) => {
    const before = last
    last = elevation.drawn
    // one more or less among them is rare in a drag: then those after it are sent again
    return { ...elevation, drawn: last.map((each, i) => (isAlike(each, before[i]) ? i : each)), after: count++ }
  }
}

/** Throws where a drawing was left out: nobody could say what the numbers of the next one mean. */
export function drawingReceiver(): (sent: SentDrawing) => Elevation {
  let last: readonly Drawn[] = []
  let count = 0
  return ({ after, drawn, ...rest }) => {
    if (after !== count) throw new Error(`drawing ${after + 1} came when ${count + 1} was waited for`)
    count++
    last = drawn.map((each) => (typeof each === 'number' ? last[each] : each))
    return { ...rest, drawn: last }
  }
}

/** Of plain data. */
function isAlike(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false
  if (Array.isArray(a)) {
    if (!Array.isArray(b) || a.length !== b.length) return false
    for (let i = 0; i < a.length; i++) if (!isAlike(a[i], b[i])) return false
    return true
  }
  const keys = Object.keys(a)
  if (Array.isArray(b) || keys.length !== Object.keys(b).length) return false
  return keys.every((key) => key in b && isAlike(a[key as keyof typeof a], b[key as keyof typeof b]))
}
