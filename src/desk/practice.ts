/**
 * A hand that nobody sees. An engine compiles what it has run often, so that the first steps of a sitting's first drag would be its
 * slowest: while nobody asks for anything a window and the axles are moved to and fro, on a memo of their own, and nothing of it is kept.
 */
import type { Definition } from '../definition/types.js'
import { createMemo } from '../derive/memo.js'
import { type Drag, type DragStart, startDrag } from './drag.js'
import { dragShown } from './drag-shown.js'
import { elevationOf } from './elevation.js'
import type { Look } from './nouns.js'

/** Steps each thing is moved, and each how far from the last, m. */
const STEPS = 30
const BY = 0.002

/** Each call is one step; false after the last. */
export function practice(start: Omit<DragStart, 'memo'>, look: Look): () => boolean {
  const things = movable(start.derived.definition)
  const memo = createMemo()
  let drag: Drag | null = null
  let done = 0
  return () => {
    const thing = things[Math.floor(done / STEPS)]
    if (!thing) return false
    const step = done++ % STEPS
    if (step === 0) drag = null
    drag ??= startDrag({ ...start, memo })
    // there and back, a little farther each time
    const station = thing.station + (step % 2 === 0 ? 1 : -1) * (step + 1) * BY
    const hand = drag.to({ kind: 'move', id: thing.id, station, waterline: null })
    if (hand) {
      elevationOf(hand.design, look)
      dragShown(hand, look)
    }
    return done < things.length * STEPS
  }
}

/** The first opening of a side, and the axles. */
function movable({ openings, gear }: Definition): readonly { readonly id: string; readonly station: number }[] {
  const opening = openings.find(({ surface }) => surface === 'right' || surface === 'left')
  const [spindle] = gear?.spindles ?? []
  return [
    ...(opening ? [{ id: opening.id, station: opening.station }] : []),
    ...(spindle === undefined ? [] : [{ id: 'axle-1', station: spindle }]),
  ]
}
