/** Coaches from files and to files: chosen or dropped, known to the desk, or begun and never saved. */
import { createSignal, For, Show } from 'solid-js'
import { chosenCoach } from '../desk/mending.js'
import { open, openedFiles, revision, setNotice, state, take } from './desk.js'
import { setDoor } from './door.js'
import { letGo, unsavedCoaches } from './drafts.js'
import { filesOf, handOver, isDefinition } from './dropped.js'
import { openCoach } from './files.js'
import { known } from './known.js'
import { takeUpDraft } from './two-windows.js'

/** The coach among files chosen together; what it extends and was not chosen is taken from the coaches of the desk. */
export async function openChosen(chosen: Readonly<Record<string, string>>): Promise<void> {
  const definitions = Object.fromEntries(Object.entries(chosen).filter(([name]) => isDefinition(name)))
  const coach = chosenCoach(definitions, await everyFile())
  if (!coach) {
    setNotice('None of these files is a definition of a coach: its name ends in .yaml.')
    return
  }
  await take(coach, null)
  setDoor(null)
  setNotice(`${coach.path} is open here, and no file of the desk yet: Save asks for its name there.`)
}

/** Of all coaches the desk knows, and of the one that is open. */
async function everyFile(): Promise<Readonly<Record<string, string>>> {
  const all = await Promise.all(known().map(({ path }) => openCoach(path)))
  return Object.assign({}, ...all.map((each) => (typeof each === 'string' ? {} : each.files)), openedFiles())
}

const nameOf = (path: string): string => path.slice(path.lastIndexOf('/') + 1)

export function FilesPage() {
  const [left, setLeft] = createSignal(unsavedCoaches())
  return (
    <>
      <section class="column">
        <h2>Open</h2>
        <label class="choose">
          A coach from files: its definition, and the family and masses it extends
          <input
            type="file"
            id="open-files"
            multiple
            accept=".yaml,.yml"
            onChange={async (event) => openChosen(await filesOf(event.currentTarget.files))}
          />
        </label>
        <p class="faint">Or drop them anywhere on the desk. What they extend and the desk knows need not be chosen.</p>
        <h3>Of this desk</h3>
        <ul>
          <For each={known()}>
            {({ path, name }) => (
              <li>
                <button
                  type="button"
                  class="link"
                  onClick={async () => {
                    setDoor(null)
                    await open(path)
                    await takeUpDraft()
                  }}
                >
                  {name}
                </button>{' '}
                <small>{path}</small>
              </li>
            )}
          </For>
        </ul>
        <Show when={left().length > 0}>
          <h3>Never saved, kept in this browser</h3>
          <ul>
            <For each={left()}>
              {({ path, text, files, at }) => (
                <li>
                  <button
                    type="button"
                    class="link"
                    onClick={async () => {
                      setDoor(null)
                      // it is kept anew by this window as it is taken
                      letGo(path)
                      await take({ path, files: { ...files, [path]: text } }, null)
                    }}
                  >
                    {nameOf(path)}
                  </button>{' '}
                  <small>of {new Date(at).toLocaleString()}</small>{' '}
                  <button
                    type="button"
                    onClick={() => {
                      letGo(path)
                      setLeft(unsavedCoaches())
                    }}
                  >
                    Let go
                  </button>
                </li>
              )}
            </For>
          </ul>
        </Show>
      </section>
      <section class="column">
        <h2>Save to a file</h2>
        <Show when={state()} fallback={<p>No coach is open.</p>}>
          {(now) => (
            <>
              <p>
                {now().name}, revision {revision()}, as it is on the screen. The file holds its definition alone; what it extends stays
                where it is.
              </p>
              <button type="button" onClick={() => handOver(nameOf(now().file), now().text, 'application/yaml')}>
                Save {nameOf(now().file)}
              </button>
            </>
          )}
        </Show>
      </section>
    </>
  )
}
