/** An edit as it is written into the text of a definition: only the characters of the value change. */
import { setInText } from '../definition/set-in-text.js'
import type { Definition } from '../definition/types.js'
import type { Edit } from './nouns.js'
import { inText, placedBy } from './placed.js'
import { type IsWritten, massOf } from './written-things.js'

export type WrittenEdit = { readonly ok: true; readonly text: string } | { readonly ok: false; readonly says: string }

/** The text after the edit, or why it cannot be written there. */
export function writeEdit(text: string, edit: Edit, definition: Definition, isWritten?: IsWritten): WrittenEdit {
  try {
    if (edit.kind === 'text') return { ok: true, text: edit.text }
    if (edit.kind === 'set') return { ok: true, text: setInText(text, edit.steps, edit.value) }
    const placed = placedBy(definition, edit, isWritten)
    if (!placed) return { ok: false, says: whyNot(definition, edit.id) }
    return { ok: true, text: inText(text, placed) }
  } catch (reason) {
    return { ok: false, says: `${reason instanceof Error ? reason.message : String(reason)}. Write it in the text instead.` }
  }
}

function whyNot({ masses }: Definition, id: string): string {
  const mass = masses[massOf(id) ?? -1]
  if (mass && masses.some((each) => each !== mass && each.item === mass.item))
    return `${mass.item} cannot be moved here: two masses have that name, and only the name tells them apart. Give one another name in the text.`
  return `${id} cannot be moved: its place follows from something else.`
}
