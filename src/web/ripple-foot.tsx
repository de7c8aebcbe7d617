/** The ripple: one quiet line along the foot that opens upward. It is always there, because nothing changes silently. */
import { createSignal, For, Show } from 'solid-js'
import { freeze, ripple, state } from './desk.js'

export function RippleFoot() {
  const [isOpen, setOpen] = createSignal(false)
  const [name, setName] = createSignal('')
  const note = (): string => `data:text/plain;charset=utf-8,${encodeURIComponent((ripple()?.lines ?? []).join('\n'))}`
  return (
    <footer class="ripple">
      <Show when={isOpen()}>
        <section class="ripple-lines" aria-label="What changed">
          <For each={ripple()?.lines ?? []}>
            {(line) => (line.startsWith(' ') ? <p class={line.startsWith('    ') ? 'deeper' : ''}>{line.trim()}</p> : <h3>{line}</h3>)}
          </For>
        </section>
      </Show>
      <div class="ripple-line">
        <button type="button" id="ripple" aria-expanded={isOpen()} onClick={() => setOpen(!isOpen())}>
          {ripple()?.line ?? 'The ripple is being worked out.'}
        </button>
        <a href={note()} download={`change-note-${state()?.revision ?? ''}.txt`}>
          Change note
        </a>
        <label>
          Freeze as
          <input id="freeze-name" value={name()} onInput={(event) => setName(event.currentTarget.value)} />
        </label>
        <button
          type="button"
          onClick={() => {
            freeze(name().trim() || `revision ${state()?.revision ?? ''}`)
            setName('')
          }}
        >
          Freeze
        </button>
      </div>
    </footer>
  )
}
