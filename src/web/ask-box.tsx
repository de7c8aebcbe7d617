/** One box for every question: a place, a thing, a figure. Ctrl or Cmd and K from anywhere. */
import { createSignal, For, onCleanup, onMount, Show } from 'solid-js'
import type { Answer } from '../desk/nouns.js'
import { ask, look, setLit, setLook } from './desk.js'

export function AskBox() {
  let box!: HTMLInputElement
  const [answer, setAnswer] = createSignal<Answer | null>(null)
  const called = (event: KeyboardEvent): void => {
    if (!(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== 'k') return
    event.preventDefault()
    box.focus()
    box.select()
  }
  onMount(() => document.addEventListener('keydown', called))
  onCleanup(() => document.removeEventListener('keydown', called))
  const put = async (event: Event): Promise<void> => {
    event.preventDefault()
    const found = await ask(box.value)
    setAnswer(found)
    if (found.at && found.at.look !== look()) await setLook(found.at.look)
    setLit(found.at)
  }
  return (
    <search>
      <form class="ask" onSubmit={put}>
        <label for="ask">Ask</label>
        <input id="ask" ref={box} type="search" placeholder="RW3, hitch, R 5745 …" autocomplete="off" />
        <Show when={answer()}>
          {(found) => (
            <div class="answer" role="status">
              <strong>{found().says}</strong>
              <ul>
                <For each={found().lines}>{(line) => <li class={line.startsWith(' ') ? 'under' : ''}>{line.trim()}</li>}</For>
              </ul>
              <button type="button" onClick={() => setAnswer(null)}>
                Close
              </button>
            </div>
          )}
        </Show>
      </form>
    </search>
  )
}
