/** The coaches the desk may open, as the server last told. */
import { createSignal } from 'solid-js'
import { type CoachNamed, coaches } from './files.js'

const [known, setKnown] = createSignal<readonly CoachNamed[]>([])

export { known }

export async function askKnown(): Promise<readonly CoachNamed[]> {
  const found = await coaches().catch(() => known())
  setKnown(found)
  return found
}
