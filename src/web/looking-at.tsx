/** Says that a frozen revision is on the screen, and leads back to the coach as it is now. */
import { Show } from 'solid-js'
import { lookAt, state } from './desk.js'

export function LookingAt() {
  return (
    <Show when={state()?.looking}>
      {(name) => (
        <p class="notice" role="status">
          You are looking at “{name()}”, as it was frozen. Nothing can be changed here.{' '}
          <button type="button" onClick={() => lookAt(null)}>
            Back to the coach as it is now
          </button>
        </p>
      )}
    </Show>
  )
}
