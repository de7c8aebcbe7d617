/**
 * In a drag a drawing goes from the worker to the screen as what is new in it: most things look as they did in the last one, and to copy
 * them all over takes ten times as long as to see that. Each of them is named by its number there. At any other time all of it goes.
 */
import { same } from '../quantity/same.js'
import type { Drawn, Elevation } from './nouns.js'

export interface SentDrawing extends Omit<Elevation, 'drawn'> {
  /** which drawing this is, counted from 1 */
  readonly number: number
  readonly drawn: readonly (Drawn | number)[]
}

/** Must be handed every drawing that is sent, in its order. */
export function drawingSender(): (elevation: Elevation, isStep: boolean) => SentDrawing {
  let last: readonly Drawn[] = []
  let number = 0
  return (elevation, isStep) => {
    const before = isStep ? last : []
    last = elevation.drawn
    number++
    // one more or less among them is rare in a drag: then those after it are sent again
    return { ...elevation, number, drawn: last.map((each, i) => (i < before.length && same(each, before[i]) ? i : each)) }
  }
}

/** Throws where the drawing is missing that a step of a drag refers to; the next that comes whole is shown again. */
export function drawingReceiver(): (sent: SentDrawing) => Elevation {
  let last: readonly Drawn[] = []
  let shown = 0
  return ({ number, drawn, ...rest }) => {
    const isWhole = drawn.every((each) => typeof each !== 'number')
    if (!isWhole && number !== shown + 1) throw new Error(`drawing ${number} came after drawing ${shown}`)
    last = drawn.map((each) => (typeof each === 'number' ? last[each] : each))
    shown = number
    return { ...rest, drawn: last }
  }
}
