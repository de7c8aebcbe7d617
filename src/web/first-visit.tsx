/** Three steps for the first visit; dismissed, they are gone for good. */
import { createSignal, Show } from 'solid-js'

const KEY = 'first visit'

export function FirstVisit() {
  const [isNew, setNew] = createSignal(localStorage.getItem(KEY) === null)
  return (
    <Show when={isNew()}>
      <aside class="first" aria-label="First steps">
        <ol>
          <li>Drag window RW3 along the road side, and read at the foot what moved with it.</li>
          <li>Slide an axle until something stands in its way; Undo takes it back.</li>
          <li>Open Skins and print a sheet.</li>
        </ol>
        <button
          type="button"
          onClick={() => {
            localStorage.setItem(KEY, 'seen')
            setNew(false)
          }}
        >
          Understood
        </button>
      </aside>
    </Show>
  )
}
