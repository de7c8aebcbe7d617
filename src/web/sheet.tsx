/** The open sheet: its paper on the left, its sentences with their margins and workings on the right. */
import { createEffect, createMemo, createSignal, For, onCleanup, Show } from 'solid-js'
import type { Sentence } from '../desk/nouns.js'
import { margin as marginWords } from '../ripple/words.js'
import { openPage, openWorking, page, select, setWorking, sheet, working } from './desk.js'
import { FigureOrPaper, FigureView, hasFigure, isFigure, showPaper } from './figures/figure-view.js'
import { PacketButton } from './packet-button.js'

export function SheetView() {
  return (
    <div class="sheet">
      <Paper />
      <Sentences />
    </div>
  )
}

function Paper() {
  const which = (): number => page()?.page ?? 0
  const [source, setSource] = createSignal<string | null>(null)
  createEffect(() => {
    const svg = page()?.svg
    const url = svg ? URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' })) : null
    setSource(url)
    if (url) onCleanup(() => URL.revokeObjectURL(url))
  })
  const turn = (by: number): void => {
    const shown = page()
    if (shown) openPage(shown.path, shown.page + by)
  }
  return (
    <section class="paper" aria-label="Paper">
      <div class="bar">
        <Show when={hasFigure()}>
          <FigureOrPaper />
        </Show>
        <label>
          Document
          <select
            id="document"
            value={page()?.path ?? ''}
            onChange={(event) => {
              showPaper()
              openPage(event.currentTarget.value, 0)
            }}
          >
            <For each={sheet()?.documents ?? []}>{(each) => <option value={each.path}>{each.path}</option>}</For>
          </select>
        </label>
        <Show when={!isFigure() && (page()?.pages ?? 1) > 1}>
          <button type="button" onClick={() => turn(-1)} disabled={which() === 0}>
            Page before
          </button>
          <span>
            {which() + 1} of {page()?.pages}
          </span>
          <button type="button" onClick={() => turn(1)} disabled={which() + 1 >= (page()?.pages ?? 1)}>
            Page after
          </button>
        </Show>
        <span class="gap" />
        <button type="button" onClick={() => print()} disabled={!page()}>
          Print
        </button>
      </div>
      <Show when={!isFigure()} fallback={<FigureView />}>
        <Show
          when={source()}
          fallback={
            <pre class="plain" tabindex="0">
              {page()?.text ?? ''}
            </pre>
          }
        >
          {(url) => <img class="print" src={url()} alt={page()?.says ?? ''} />}
        </Show>
      </Show>
    </section>
  )
}

function Sentences() {
  const [isAll, setAll] = createSignal(false)
  const sentences = createMemo(() => sheet()?.sentences ?? [])
  const shown = createMemo(() => (isAll() ? sentences() : sentences().slice(0, FIRST)))
  return (
    <section class="sentences" aria-label={`Sentences of ${sheet()?.name ?? ''}`}>
      <h2>{sheet()?.name}</h2>
      <Show when={sheet()?.name === 'Packet'}>
        <PacketButton />
      </Show>
      <ul>
        <For each={shown()}>{(each) => <SentenceLine sentence={each} />}</For>
      </ul>
      <Show when={sentences().length > FIRST}>
        <button type="button" onClick={() => setAll(!isAll())}>
          {isAll() ? 'The worst only' : `All ${sentences().length}`}
        </button>
      </Show>
      <Show when={(sheet()?.figures.length ?? 0) > 0}>
        <h3>Figures</h3>
        <ul class="figures">
          <For each={sheet()?.figures ?? []}>
            {(each) => (
              <li>
                <button type="button" class="link" aria-expanded={working()?.id === each.id} onClick={() => openWorking(each.id)}>
                  {each.says}
                </button>
                <Show when={working()?.id === each.id}>
                  <Margin />
                </Show>
              </li>
            )}
          </For>
        </ul>
      </Show>
    </section>
  )
}

/** So many sentences fit a screen. */
const FIRST = 12

const VERDICTS = { fail: 'FAILS', caution: 'caution', 'not-checked': 'not checked', pass: 'passes' } as const

function SentenceLine({ sentence }: { readonly sentence: Sentence }) {
  const { id, says, verdict, margin, source, mend, about } = sentence
  const share = margin === null ? null : Math.min(1, Math.max(0, 0.5 + margin / 2))
  return (
    <li class={`verdict-${verdict}`}>
      <span class="word">{verdict === null ? '' : VERDICTS[verdict]}</span>
      <button type="button" class="link" aria-expanded={working()?.id === id} onClick={() => openWorking(id)}>
        {says}
      </button>
      <Show when={share !== null && margin !== null}>
        <meter min="0" max="1" value={share ?? 0} aria-label={`margin ${marginWords(margin)}`} />
        <small>{marginWords(margin)}</small>
      </Show>
      <Show when={verdict !== 'pass' && mend}>
        <p class="mend">{mend}</p>
      </Show>
      <Show when={working()?.id === id}>
        <p class="source">{source}</p>
        <For each={about}>
          {(thing) => (
            <button type="button" onClick={() => select(thing)}>
              {thing}
            </button>
          )}
        </For>
        <Margin />
      </Show>
    </li>
  )
}

/** A working stands beside its number as a note in the margin. */
function Margin() {
  return (
    <aside class="working" aria-label="Working">
      <pre tabindex="0">{working()?.text || working()?.says}</pre>
      <button type="button" onClick={() => setWorking(null)}>
        Close the working
      </button>
    </aside>
  )
}
