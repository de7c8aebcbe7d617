/** A working stands beside its figure as a note in the margin: its formula, its source, and inputs that open in turn. */
import { createEffect, createMemo, createSignal, For, on, Show } from 'solid-js'
import type { FieldShown, InputShown, WorkingShown } from '../desk/nouns.js'
import { ask, look, openWorking, revision, select, setLook, units, working } from './desk.js'
import { askForField } from './field-asked.js'
import './reading-note.css'
import { closeNote, follow, goBack, noteAt, stepsBack } from './way.js'

/** So many inputs are read at a glance; a total may have hundreds. */
const FIRST = 8

export function ReadingNote() {
  let head!: HTMLHeadingElement
  const [isAll, setAll] = createSignal(false)
  const inputs = createMemo(() => working()?.inputs ?? [])
  const shown = createMemo(() => (isAll() ? inputs() : inputs().slice(0, FIRST)))
  // an edit or another unit changes the figures that are being read
  const reading = createMemo(() => `${revision()} ${units()}`)
  createEffect(
    on(
      reading,
      () => {
        const id = working()?.id
        if (id !== undefined) openWorking(id)
      },
      { defer: true },
    ),
  )
  /** What is read next is said, and found by the keys, where the note begins. */
  const lead = async (going: Promise<void>): Promise<void> => {
    setAll(false)
    await going
    head.focus()
  }
  const keys = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape') return
    event.stopPropagation()
    const steps = stepsBack()
    if (steps.length > 0) lead(goBack(steps.length - 1))
    else closeNote()
  }
  return (
    <Show when={working()}>
      {(it) => (
        <aside class="working" aria-label="Working" onKeyDown={keys}>
          <Show when={stepsBack().length > 0}>
            <nav class="way" aria-label="Way to this figure">
              <For each={stepsBack()}>
                {(step, i) => (
                  <>
                    <button type="button" class="link" onClick={() => lead(goBack(i()))}>
                      {step.says}
                    </button>
                    <span aria-hidden="true"> &gt; </span>
                  </>
                )}
              </For>
            </nav>
          </Show>
          <h4 ref={head} tabindex="-1">
            {stepsBack().length === 0 && it().id === noteAt() && it().what !== null ? it().what : it().says}
          </h4>
          <Show when={it().figure !== null}>
            <dl class="formula">
              <dt>{it().symbol}</dt>
              <dd>
                <For each={rowsOf(it())}>{(row) => <p class={row === it().figure ? 'result' : ''}>= {row}</p>}</For>
              </dd>
            </dl>
          </Show>
          <Show when={it().because}>
            <p class="because">because {it().because}</p>
          </Show>
          <Show when={inputs().length > 0}>
            <ul class="inputs" aria-label="What it is made from">
              <For each={shown()}>{(input) => <InputLine input={input} open={(id) => lead(follow(id))} />}</For>
            </ul>
            <Show when={inputs().length > FIRST}>
              <button type="button" onClick={() => setAll(!isAll())}>
                {isAll() ? 'The greatest only' : `All ${inputs().length}`}
              </button>
            </Show>
          </Show>
          <Show when={it().near.length > 0}>
            <p>Near to it:</p>
            <For each={it().near}>
              {(id) => (
                <button type="button" class="link" onClick={() => lead(follow(id))}>
                  {id}
                </button>
              )}
            </For>
          </Show>
          <For each={it().cautions}>{(caution) => <p class="caution">Caution: {caution}</p>}</For>
          <Show when={it().source}>
            <p class="source">Source: {it().source}</p>
          </Show>
          <button type="button" onClick={closeNote}>
            Close the working
          </button>
        </aside>
      )}
    </Show>
  )
}

/** A stated figure is said once, not three times over. */
const rowsOf = ({ symbol, symbolic, substituted, figure }: WorkingShown): readonly string[] =>
  [symbolic === symbol ? null : symbolic, substituted === figure ? null : substituted, figure].filter((each) => each !== null)

function InputLine(props: { readonly input: InputShown; readonly open: (id: string) => void }) {
  const words = (): string => props.input.says ?? ''
  return (
    <li>
      <Show
        when={props.input.working}
        fallback={
          <>
            <span class="symbol">{props.input.symbol}</span> <span class="amount">{props.input.figure}</span>{' '}
            <span class="says">{words()}</span>
          </>
        }
      >
        {(id) => (
          <button type="button" class="input" onClick={() => props.open(id())}>
            <span class="symbol">{props.input.symbol}</span> <span class="amount">{props.input.figure}</span>{' '}
            <span class="says">{words()}</span>
          </button>
        )}
      </Show>
      <Show when={props.input.from}>
        <span class="from">
          {props.input.from}
          <Show when={props.input.field}>{(field) => <FieldButtons field={field()} />}</Show>
        </span>
      </Show>
    </li>
  )
}

function FieldButtons(props: { readonly field: FieldShown }) {
  const fileName = (): string => props.field.file.slice(props.field.file.lastIndexOf('/') + 1)
  const show = async (thing: string): Promise<void> => {
    const { at } = await ask(thing)
    if (at && at.look !== look()) await setLook(at.look)
    select(thing)
  }
  return (
    <>
      {', '}
      <button
        type="button"
        class="link"
        aria-label={`Go to the field ${props.field.says}, line ${props.field.line} of ${fileName()}`}
        onClick={() => askForField(props.field)}
      >
        line {props.field.line} of {fileName()}
      </button>
      <Show when={props.field.thing}>
        {(thing) => (
          <>
            {', '}
            <button type="button" class="link" onClick={() => show(thing())}>
              {thing()} on the elevation
            </button>
          </>
        )}
      </Show>
    </>
  )
}
