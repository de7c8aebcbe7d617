/** The text of a coach that does not read: its faults lead to their lines, and the drawing comes once there is none left. */
import { For, Show } from 'solid-js'
import { give, mend, mending } from './desk.js'
import { filesOf } from './dropped.js'
import { TextEditor } from './text-view.js'

export function MendView() {
  const wanted = (): readonly string[] => mending()?.wanted ?? []
  const add = async (list: FileList | null): Promise<void> => {
    const chosen = await filesOf(list)
    const named = wanted().flatMap((path) => {
      const text = chosen[path.slice(path.lastIndexOf('/') + 1)] ?? (wanted().length === 1 ? Object.values(chosen)[0] : undefined)
      return text === undefined ? [] : [[path, text] as const]
    })
    if (named.length > 0) await give(Object.fromEntries(named))
  }
  return (
    <div class="mending">
      <h2>This coach does not read yet</h2>
      <p>Mend what is said under the text; the drawing comes as soon as it reads. Nothing that you write is lost.</p>
      <Show when={wanted().length > 0}>
        <div class="wanted">
          <p>
            It extends{' '}
            <For each={wanted()}>
              {(path, i) => (
                <>
                  {i() > 0 ? ', ' : ''}
                  <strong>{path}</strong>
                </>
              )}
            </For>
            , which {wanted().length === 1 ? 'is' : 'are'} not here.
          </p>
          <label>
            Add {wanted().length === 1 ? 'that file' : 'those files'}
            <input type="file" id="wanted" multiple accept=".yaml,.yml" onChange={(event) => add(event.currentTarget.files)} />
          </label>
        </div>
      </Show>
      <TextEditor file={mending()?.file ?? ''} text={mending()?.text} faults={mending()?.faults ?? []} write={mend} />
    </div>
  )
}
