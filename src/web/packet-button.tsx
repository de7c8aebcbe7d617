/** Writes the whole packet of the coach as it is on the screen, with its progress and a way to stop it. */
import { createSignal, Show } from 'solid-js'
import { isUnsaved, state } from './desk.js'
import { type PacketTold, writePacket } from './files.js'

export function PacketButton() {
  const [told, setTold] = createSignal<PacketTold | null>(null)
  let stop: AbortController | null = null
  const isRunning = (): boolean => told()?.kind === 'progress'
  const write = async (): Promise<void> => {
    const now = state()
    if (!now) return
    stop = new AbortController()
    setTold({ kind: 'progress', done: 0, of: null, says: 'The packet is begun.' })
    await writePacket(now.file, now.text, stop.signal, setTold)
  }
  return (
    <div class="packet">
      <button type="button" onClick={write} disabled={isRunning() || isUnsaved() || (state()?.faults.length ?? 0) > 0}>
        Write the packet
      </button>
      <Show when={isRunning()}>
        <button type="button" onClick={() => stop?.abort()}>
          Stop
        </button>
      </Show>
      <span role="status">{isUnsaved() ? 'Save the coach first: its packet is written under the name of its file.' : told()?.says}</span>
      <Show when={told()?.url}>
        {(url) => (
          <a href={`${url()}cover.pdf`} target="_blank" rel="noopener">
            Open its cover
          </a>
        )}
      </Show>
    </div>
  )
}
