/** The shop's own hole list laid on a sheet of the coach: where they differ, in sentences and on the printed sheet. */
import { createEffect, createSignal, For, on, onCleanup, onMount, Show } from 'solid-js'
import type { ProofShown, Provable } from '../desk/prove-shown.js'
import { revision, worker } from './desk.js'
import { dropped, setDropped } from './door.js'
import { filesOf, handOver } from './dropped.js'

const [part, setPart] = createSignal<string | null>(null)

export function Prove() {
  const [parts, setParts] = createSignal<readonly Provable[]>([])
  const [proof, setProof] = createSignal<ProofShown | null>(null)
  const [faults, setFaults] = createSignal<readonly string[]>([])
  const [says, setSays] = createSignal('')
  const [face, setFace] = createSignal<string | null>(null)
  const chosen = (): Provable | undefined => parts().find(({ id }) => id === part()) ?? parts()[0]
  onMount(async () => setParts(await worker.provable()))
  createEffect(
    on([dropped, part, face, revision, parts], async () => {
      const [list, on_] = [dropped(), chosen()]
      if (!list || !on_) return
      setSays('The list is being laid on the sheet …')
      const shown = await worker.prove(on_.id, list, face())
      setSays('')
      setProof('faults' in shown ? null : shown)
      setFaults('faults' in shown ? shown.faults : [])
    }),
  )
  const choose = async (files: FileList | null): Promise<void> => {
    const [[name, text] = []] = Object.entries(await filesOf(files))
    if (name !== undefined && text !== undefined) setDropped({ name, text })
  }
  return (
    <section class="prove" aria-label="Prove a sheet">
      <div class="bar">
        <h2>Prove</h2>
        <label>
          Sheet
          <select
            id="prove-part"
            value={chosen()?.id ?? ''}
            onChange={(event) => {
              setFace(null)
              setPart(event.currentTarget.value)
            }}
          >
            <For each={parts()}>
              {({ id, says: words, holes }) => (
                <option value={id}>
                  {id}: {words}, {holes} holes
                </option>
              )}
            </For>
          </select>
        </label>
        <Show when={(chosen()?.faces.length ?? 0) > 1}>
          <label>
            Face
            <select id="prove-face" onChange={(event) => setFace(event.currentTarget.value || null)}>
              <option value="">whichever fits best</option>
              <For each={chosen()?.faces ?? []}>{(each) => <option value={each}>{each}</option>}</For>
            </select>
          </label>
        </Show>
        <label>
          Hole list
          <input type="file" id="prove-list" accept=".csv,.txt,.dxf,.tsv" onChange={(event) => choose(event.currentTarget.files)} />
        </label>
        <span role="status">{says()}</span>
      </div>
      <Show when={dropped()} fallback={<Ask />}>
        {(list) => (
          <div class="sheet">
            <section class="paper" aria-label="Printed sheet">
              <Paper page={proof()?.pages[0] ?? null} says={`Proof on ${list().name}`} />
            </section>
            <section class="sentences" aria-label="Where they differ">
              <h2>{list().name}</h2>
              <ul>
                <For each={faults()}>{(each) => <li class="fault">{each}</li>}</For>
              </ul>
              <Show when={proof()}>{(shown) => <Told proof={shown()} name={list().name} />}</Show>
            </section>
          </div>
        )}
      </Show>
    </section>
  )
}

function Ask() {
  return (
    <div class="column">
      <p>Choose a sheet, and choose or drop the shop's own list of its holes: a punch program's table, a taped list, or a drawing.</p>
      <p class="faint">
        A table has x and y on a line, perhaps a number and a diameter, with its unit in the heading (x mm, y mm) or none; a taped list one
        running dimension a line. A drawing is a text DXF with each hole as a circle. It need not lie as ours does: turned, mirrored and
        shifted lists are found.
      </p>
    </div>
  )
}

function Told(props: { readonly proof: ProofShown; readonly name: string }) {
  const off = (): number => props.proof.differences.filter(({ within }) => !within).length
  const [isAll, setAll] = createSignal(false)
  const listed = (): ProofShown['differences'] =>
    isAll() ? props.proof.differences : props.proof.differences.slice(0, Math.max(off(), FEW))
  return (
    <>
      <p class="verdict" id="verdict">
        {props.proof.verdictSays}
      </p>
      <For each={props.proof.summary}>{(each) => <p>{each}</p>}</For>
      <h3>{off() === 0 ? 'The farthest off, all within the tolerance' : `Outside the tolerance: ${off()}`}</h3>
      <ul class="differences">
        <For each={listed()}>{({ says, within }) => <li class={within ? '' : 'outside'}>{says}</li>}</For>
      </ul>
      <Show when={props.proof.differences.length > FEW}>
        <button type="button" onClick={() => setAll(!isAll())}>
          {isAll() ? 'The worst only' : 'More'}
        </button>{' '}
      </Show>
      <button type="button" onClick={() => print()}>
        Print
      </button>{' '}
      <button type="button" onClick={() => handOver(`proof-of-${props.name}.csv`, props.proof.csv, 'text/csv')}>
        Save every hole as CSV
      </button>
    </>
  )
}

/** So many that agree are shown with those that do not. */
const FEW = 12

function Paper(props: { readonly page: string | null; readonly says: string }) {
  const [source, setSource] = createSignal<string | null>(null)
  createEffect(() => {
    const url = props.page ? URL.createObjectURL(new Blob([props.page], { type: 'image/svg+xml' })) : null
    setSource(url)
    if (url) onCleanup(() => URL.revokeObjectURL(url))
  })
  return <Show when={source()}>{(url) => <img class="print" src={url()} alt={props.says} />}</Show>
}
