/** Whether the coach is looked at in space: so little that the first screen may know it without the picture itself. */
import { createSignal } from 'solid-js'

export const [inSpace, setInSpace] = createSignal(false)
