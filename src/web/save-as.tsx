/** Asks for the name a new coach is saved under; the server refuses one that is taken. */
import { createSignal, Show } from 'solid-js'
import { isNaming, open, openedFiles, savedAs, setNaming, setNotice, state } from './desk.js'
import { letGo } from './drafts.js'
import { createCoach } from './files.js'
import { askKnown, known } from './known.js'

const folderOf = (path: string): string => path.slice(0, path.lastIndexOf('/') + 1)

/** A coach from a file of somebody's has only its name: it goes where the others are. */
const suggested = (file: string): string => (file.includes('/') ? file : `${folderOf(known()[0]?.path ?? '')}${file}`)

/** What was chosen together with the coach goes where it goes; what is there already stays as it is. */
async function besides(path: string): Promise<void> {
  for (const [name, text] of Object.entries(openedFiles()))
    if (!name.includes('/') && name !== state()?.file) await createCoach(`${folderOf(path)}${name}`, text)
}

export function SaveAs() {
  const [says, setSays] = createSignal<string | null>(null)
  let box!: HTMLInputElement
  const write = async (event: Event): Promise<void> => {
    event.preventDefault()
    const now = state()
    if (!now) return
    const path = box.value.trim()
    const made = await createCoach(path, now.text)
    if (!made.ok) {
      setSays(made.says)
      return
    }
    setSays(null)
    setNaming(false)
    letGo(now.file)
    if (path === now.file) savedAs(path, now.text, made.stamp)
    else {
      await besides(path)
      await open(path)
      setNotice(`${path} is saved.`)
    }
    await askKnown()
  }
  return (
    <Show when={isNaming() && state()}>
      {(now) => (
        <form class="notice save-as" onSubmit={write} aria-label="Save as">
          <label>
            Save as
            <input
              id="save-as"
              ref={box}
              value={suggested(now().file)}
              spellcheck={false}
              autocomplete="off"
              aria-describedby="save-as-says"
            />
          </label>
          <button type="submit">Save</button>
          <button type="button" onClick={() => setNaming(false)}>
            Not yet
          </button>
          <span id="save-as-says" class="fault" role="alert">
            {says()}
          </span>
        </form>
      )}
    </Show>
  )
}
