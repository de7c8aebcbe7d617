/** Words in the head for the pages that are none, and what happens to files dropped on the desk. */
import { For, Match, onCleanup, onMount, Show, Switch } from 'solid-js'
import { Beside } from './beside.js'
import { state } from './desk.js'
import { DOORS, door, setDoor, setDropped } from './door.js'
import { filesOf, isDefinition } from './dropped.js'
import { FilesPage, openChosen } from './files-page.js'
import { NewCoach } from './new-coach.js'
import { Prove } from './prove.js'
import './doors.css'

export function DoorWords() {
  onMount(() => {
    const over = (event: DragEvent): void => event.preventDefault()
    document.addEventListener('dragover', over)
    document.addEventListener('drop', drop)
    onCleanup(() => {
      document.removeEventListener('dragover', over)
      document.removeEventListener('drop', drop)
    })
  })
  return (
    <nav class="doors" aria-label="Coaches">
      <For each={DOORS}>
        {(name) => (
          <button type="button" aria-current={door() === name ? 'page' : undefined} onClick={() => setDoor(name)}>
            {name}
          </button>
        )}
      </For>
    </nav>
  )
}

/** Definitions are opened, anything else is taken for a hole list. */
async function drop(event: DragEvent): Promise<void> {
  if (!event.dataTransfer?.files.length) return
  event.preventDefault()
  const chosen = await filesOf(event.dataTransfer.files)
  const [name] = Object.keys(chosen)
  if (name === undefined) return
  if (Object.keys(chosen).some(isDefinition)) await openChosen(chosen)
  else if (state()) {
    setDropped({ name, text: chosen[name] })
    setDoor('Prove')
  }
}

export function DoorPage() {
  return (
    <div class="door">
      <Switch>
        <Match when={door() === 'New coach'}>
          <NewCoach />
        </Match>
        <Match when={door() === 'Files'}>
          <FilesPage />
        </Match>
        <Match when={door() === 'Beside'}>
          <Show when={state()} fallback={<p>Open a coach that reads first.</p>}>
            <Beside />
          </Show>
        </Match>
        <Match when={door() === 'Prove'}>
          <Show when={state()} fallback={<p>Open a coach that reads first.</p>}>
            <Prove />
          </Show>
        </Match>
      </Switch>
    </div>
  )
}
