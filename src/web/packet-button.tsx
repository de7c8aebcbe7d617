/** Writes the whole packet of the coach as it is on the screen, with its progress and a way to stop it. */
import { createMemo, createSignal, For, Show } from 'solid-js'
import { isUnsaved, sheet, state } from './desk.js'
import { type PacketTold, writePacket } from './files.js'

export function PacketButton() {
  const [told, setTold] = createSignal<PacketTold | null>(null)
  let stop: AbortController | null = null
  // what will be written, folder by folder, as it will lie on the disk
  const folders = createMemo(() => {
    const counted = new Map<string, number>()
    for (const { path } of sheet()?.documents ?? []) {
      const folder = path.includes('/') ? path.slice(0, path.indexOf('/')) : 'on top'
      counted.set(folder, (counted.get(folder) ?? 0) + 1)
    }
    return [...counted].sort(([a], [b]) => (a < b ? -1 : 1))
  })
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
      <button
        type="button"
        onClick={write}
        disabled={isRunning() || isUnsaved() || (state()?.faults.length ?? 0) > 0 || state()?.looking !== null}
      >
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
      <p>
        {sheet()?.documents.length ?? 0} documents, and those of blanks and linings that are worked out as it is written; packet.json names
        each with its sum. Check before metal: dry run, clamps, first-off.
      </p>
      <table>
        <caption>Documents by folder</caption>
        <tbody>
          <For each={folders()}>
            {([folder, count]) => (
              <tr>
                <th scope="row">{folder}</th>
                <td>{count}</td>
              </tr>
            )}
          </For>
        </tbody>
      </table>
    </div>
  )
}
