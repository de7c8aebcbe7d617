/**
 * Things that are put somewhere else: what a drag, a nudge or a typed station comes to, and the same in the text and in the
 * definition. In a drag only the definition is changed; where it ends the text is, and what is read from that counts.
 */
import { type Step, setInText } from '../definition/set-in-text.js'
import type { Definition } from '../definition/types.js'
import type { MoveEdit, NudgeEdit } from './nouns.js'

/** Where a thing is written to stand; no waterline for what has none of its own. m */
export interface Place {
  readonly station: number
  readonly waterline: number | null
}

/** One written value: where it stands in the text, and what it becomes. */
interface Value {
  readonly steps: readonly Step[]
  readonly metres: number
}

export interface Placed {
  readonly values: readonly Value[]
  readonly definition: Definition
}

const axleOf = (id: string): number | null => {
  const found = /^axle-(\d+)$/.exec(id)
  return found ? Number(found[1]) - 1 : null
}

/** Null for what has no written place: it follows from something else. */
export function placeWritten({ openings, gear, frames }: Definition, id: string): Place | null {
  const opening = openings.find((each) => each.id === id)
  if (opening) return { station: opening.station, waterline: opening.waterline }
  const axle = axleOf(id)
  const station = axle === null ? frames.find((each) => each.id === id)?.station : gear?.spindles[axle]
  return station === undefined ? null : { station, waterline: null }
}

/** Null for what cannot be moved. To the tenth of a millimetre, as a tape says it. */
export function placedBy(definition: Definition, edit: MoveEdit | NudgeEdit): Placed | null {
  const was = placeWritten(definition, edit.id)
  if (!was) return null
  const isNudge = edit.kind === 'nudge'
  const station = tenth(isNudge ? was.station + edit.along : (edit.station ?? was.station))
  const up = isNudge ? (was.waterline ?? 0) + edit.up : edit.waterline
  return put(definition, edit.id, was, { station, waterline: was.waterline === null || up === null ? null : tenth(up) })
}

const tenth = (m: number): number => Math.round(m * 1e4) / 1e4

function put(definition: Definition, id: string, was: Place, { station, waterline }: Place): Placed {
  const { openings, gear, frames } = definition
  if (openings.some((each) => each.id === id)) {
    const values = [
      { steps: ['openings', { id }, 'station'], metres: station },
      ...(waterline === null ? [] : [{ steps: ['openings', { id }, 'wl'], metres: waterline }]),
    ]
    const moved = openings.map((each) => (each.id === id ? { ...each, station, waterline: waterline ?? each.waterline } : each))
    return { values, definition: { ...definition, openings: moved } }
  }
  if (axleOf(id) !== null && gear) {
    // the axles of a group move together: what they stand apart is the equaliser's or the brackets' business
    const spindles = gear.spindles.map((each) => tenth(each + station - was.station))
    return {
      values: spindles.map((metres, i) => ({ steps: ['gear', 'spindles', i], metres })),
      definition: { ...definition, gear: { ...gear, spindles } },
    }
  }
  return {
    values: [{ steps: ['frames', { id }, 'station'], metres: station }],
    definition: { ...definition, frames: frames.map((each) => (each.id === id ? { ...each, station } : each)) },
  }
}

/** The text with those values; throws a sentence's beginning where it cannot be written there. */
export const inText = (text: string, { values }: Placed): string =>
  values.reduce((now, { steps, metres }) => setInText(now, steps, `${Number((metres * 1000).toFixed(1))} mm`), text)
