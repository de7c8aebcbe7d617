/**
 * The definition with one thing moved, without its text: what a drag shows from frame to frame. Where the drag ends the same
 * move is written into the text and read again, and that reading is what counts.
 */
import type { Definition } from '../definition/types.js'
import type { MoveEdit } from './nouns.js'

/** Null for what cannot be moved. The tenth of a millimetre is what will be written. */
export function movedDefinition(definition: Definition, { id, station, waterline }: MoveEdit): Definition | null {
  const { openings, gear, frames } = definition
  const at = Math.round(station * 1e4) / 1e4
  if (openings.some((each) => each.id === id)) {
    const up = waterline === null ? null : Math.round(waterline * 1e4) / 1e4
    const moved = openings.map((each) =>
      each.id === id ? { ...each, station: at, waterline: up !== null && each.waterline !== null ? up : each.waterline } : each,
    )
    return { ...definition, openings: moved }
  }
  const axle = /^axle-(\d+)$/.exec(id)
  if (axle && gear) {
    const by = at - (gear.spindles[Number(axle[1]) - 1] ?? at)
    return { ...definition, gear: { ...gear, spindles: gear.spindles.map((each) => each + by) } }
  }
  if (frames.some((each) => each.id === id))
    return { ...definition, frames: frames.map((each) => (each.id === id ? { ...each, station: at } : each)) }
  return null
}
