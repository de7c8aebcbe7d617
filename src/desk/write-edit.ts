/** An edit as it is written into the text of a definition: only the characters of the value change. */
import { type Step, setInText } from '../definition/set-in-text.js'
import type { Definition } from '../definition/types.js'
import type { Edit, MoveEdit } from './nouns.js'

export type WrittenEdit = { readonly ok: true; readonly text: string } | { readonly ok: false; readonly says: string }

/** The text after the edit, or why it cannot be written there. */
export function writeEdit(text: string, edit: Edit, definition: Definition): WrittenEdit {
  try {
    if (edit.kind === 'text') return { ok: true, text: edit.text }
    if (edit.kind === 'set') return { ok: true, text: setInText(text, edit.steps, edit.value) }
    return writeMove(text, edit, definition)
  } catch (reason) {
    return { ok: false, says: `${reason instanceof Error ? reason.message : String(reason)}. Write it in the text instead.` }
  }
}

function writeMove(text: string, { id, station, waterline }: MoveEdit, definition: Definition): WrittenEdit {
  const opening = definition.openings.find((each) => each.id === id)
  if (opening) {
    const along = setInText(text, ['openings', { id }, 'station'], tape(station))
    const isUp = waterline !== null && opening.waterline !== null
    return { ok: true, text: isUp ? setInText(along, ['openings', { id }, 'wl'], tape(waterline)) : along }
  }
  const axle = /^axle-(\d+)$/.exec(id)
  const spindles = definition.gear?.spindles
  if (axle && spindles) {
    // the axles of a group move together: what they stand apart is the equaliser's or the brackets' business
    const by = station - (spindles[Number(axle[1]) - 1] ?? station)
    const at = (i: number): readonly Step[] => ['gear', 'spindles', i]
    return { ok: true, text: spindles.reduce((now, each, i) => setInText(now, at(i), tape(each + by)), text) }
  }
  if (definition.frames.some((each) => each.id === id))
    return { ok: true, text: setInText(text, ['frames', { id }, 'station'], tape(station)) }
  return { ok: false, says: `${id} cannot be moved: its place follows from something else.` }
}

/** As a tape says it, to the tenth of a millimetre. */
const tape = (m: number): string => `${Number((m * 1000).toFixed(1))} mm`
