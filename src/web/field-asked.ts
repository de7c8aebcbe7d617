/** The field somebody wants to see in the text: asked for beside its figure, shown by the text view. */
import { createSignal } from 'solid-js'
import type { FieldShown } from '../desk/nouns.js'

const [fieldAsked, askForField] = createSignal<FieldShown | null>(null)

export { askForField, fieldAsked }
