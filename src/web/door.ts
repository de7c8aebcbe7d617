/** The pages that are no sheet of a coach: where one is begun, opened, laid beside others, or proved by a hole list. */
import { createSignal } from 'solid-js'

export const DOORS = ['New coach', 'Files', 'Beside', 'Prove'] as const
export type Door = (typeof DOORS)[number]

/** Null while a sheet or the text is open. */
const [door, setDoor] = createSignal<Door | null>(null)
/** a hole list that was dropped, for the page that proves it */
const [dropped, setDropped] = createSignal<{ readonly name: string; readonly text: string } | null>(null)

/** Pages with pictures of their own, that stand where the elevation of the open coach would. */
export const hasOwnPicture = (): boolean => door() !== null && door() !== 'Prove'

export { door, dropped, setDoor, setDropped }
