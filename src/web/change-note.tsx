/** The change note between the two revisions that are compared: its pages on the screen, all of them on the printer, and its text. */
import { createEffect, createMemo, createResource, createSignal, For, onCleanup, Show } from 'solid-js'
import './change-note.css'
import { dayOf } from './clock.js'
import { revision, ripple, units, worker } from './desk.js'
import { closeChangeNote, compared, from, to } from './revisions.js'

export function ChangeNoteView() {
  const [at, setAt] = createSignal(0)
  const [urls, setUrls] = createSignal<readonly string[]>([])
  // an edit of either of the two draws it anew
  const asked = createMemo(() => ({ from: from(), to: to(), units: units(), of: ripple() }))
  const [pages] = createResource(
    asked,
    async (it): Promise<readonly string[] | string> => await worker.notePages(it.from, it.to, dayOf(new Date()), it.units),
  )
  const says = (): string | null => {
    const found = pages.latest
    return typeof found === 'string' ? found : null
  }
  createEffect(() => {
    const found = pages.latest
    const made = Array.isArray(found) ? found.map((svg) => URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }))) : []
    setUrls(made)
    onCleanup(() => {
      for (const url of made) URL.revokeObjectURL(url)
    })
  })
  const page = (): number => Math.min(at(), Math.max(0, urls().length - 1))
  const text = (): string => `data:text/plain;charset=utf-8,${encodeURIComponent((compared()?.text ?? []).join('\n'))}`
  return (
    <section class="paper note" aria-label="Change note">
      <div class="bar">
        <h2>Change note</h2>
        <Show when={urls().length > 1}>
          <button type="button" onClick={() => setAt(page() - 1)} disabled={page() === 0}>
            Page before
          </button>
          <span>
            {page() + 1} of {urls().length}
          </span>
          <button type="button" onClick={() => setAt(page() + 1)} disabled={page() + 1 >= urls().length}>
            Page after
          </button>
        </Show>
        <span class="gap" />
        <a href={text()} download={`change-note-${revision() ?? ''}.txt`}>
          As text
        </a>
        <button type="button" onClick={() => print()} disabled={urls().length === 0}>
          Print
        </button>
        <button type="button" onClick={closeChangeNote}>
          Close the note
        </button>
      </div>
      <Show when={says()}>{(why) => <p role="status">{why()}</p>}</Show>
      <Show when={urls()[page()]}>
        {(url) => <img class="print" src={url()} alt={`Change note, page ${page() + 1} of ${urls().length}: ${compared()?.line ?? ''}`} />}
      </Show>
      <div class="note-pages" aria-hidden="true">
        <For each={urls()}>{(url) => <img src={url} alt="" />}</For>
      </div>
    </section>
  )
}
