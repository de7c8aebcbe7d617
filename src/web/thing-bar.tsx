/** What is chosen, with fields that take what the tape says: the same as by dragging, for hands on the keyboard. */
import { createEffect, createMemo, For, Index, Show } from 'solid-js'
import type { Field, Layer } from '../desk/nouns.js'
import { parseQuantity } from '../quantity/doors.js'
import { edit, elevation, select, selected, setNotice, units } from './desk.js'

const LAYERS: readonly Layer[] = ['openings', 'frames', 'seams', 'axles', 'tanks', 'masses']

export function ThingBar() {
  const movable = createMemo(() => elevation()?.drawn.filter((each) => each.id !== null && each.moves !== null) ?? [])
  // a hundred lines of a list are not written anew at every step of a drag, which changes none of them
  const things = createMemo(() => movable(), [], {
    equals: (a, b) => a.length === b.length && a.every((each, i) => each.id === b[i].id && each.says === b[i].says),
  })
  const chosen = createMemo(() => movable().find((each) => each.id === selected()) ?? null)
  return (
    <div class="thing">
      <label>
        Thing
        <select id="thing" onChange={(event) => select(event.currentTarget.value || null)}>
          <option value="" selected={chosen() === null}>
            none chosen
          </option>
          <For each={LAYERS.filter((layer) => things().some((each) => each.layer === layer))}>
            {(layer) => (
              <optgroup label={layer}>
                {/* by number: where a name changes under a drag only that is written anew */}
                <Index each={things().filter((each) => each.layer === layer)}>
                  {(each) => (
                    <option value={each().id ?? ''} selected={each().id === selected()}>
                      {each().says}
                    </option>
                  )}
                </Index>
              </optgroup>
            )}
          </For>
        </select>
      </label>
      <Show when={chosen()?.id}>
        {(id) => (
          // by number: a field keeps the focus when its thing is drawn anew
          <Index each={chosen()?.fields ?? []}>
            {(field) => (
              <Show when={field().choice} fallback={<FieldBox id={id()} field={field()} />}>
                {(choice) => <WordBox field={field()} choice={choice()} />}
              </Show>
            )}
          </Index>
        )}
      </Show>
    </div>
  )
}

const INCH = 0.0254

/** A bare figure is in the unit of the screen; `22 1/2 in` and `572 mm` are what they say, and stay so in the text. */
function FieldBox(props: { readonly id: string; readonly field: Field }) {
  const isInch = (): boolean => units() === 'inch'
  const shown = (): string => String(Number((props.field.metres / (isInch() ? INCH : 0.001)).toFixed(isInch() ? 3 : 1)))
  let box!: HTMLInputElement
  // half a figure stays as it was typed, whatever an earlier edit brings meanwhile
  let isTyping = false
  createEffect(() => {
    const text = shown()
    if (!isTyping) box.value = text
  })
  const left = (): void => {
    isTyping = false
    box.value = shown()
  }
  const write = (): void => {
    isTyping = false
    const { steps } = props.field
    const value = /[a-z"'″′]\s*$/i.test(box.value) ? box.value.trim() : `${box.value.trim()} ${isInch() ? 'in' : 'mm'}`
    const read = parseQuantity(value, 'length')
    if (!read.ok) {
      setNotice(`${props.field.says} of ${props.id}: ${read.says}`)
      box.value = shown()
      return
    }
    if (steps) edit({ kind: 'set', steps, value })
    else edit({ kind: 'move', id: props.id, station: read.value, waterline: null })
    // what is not taken leaves the field as it was
    box.value = shown()
  }
  return (
    <label>
      {props.field.says}, {isInch() ? 'in' : 'mm'}
      <input
        ref={box}
        id={props.field.says.toLowerCase().replaceAll(' ', '-')}
        onInput={() => {
          isTyping = true
        }}
        onChange={write}
        onBlur={left}
      />
    </label>
  )
}

/** A size that is one of a few words: which side of the coach. */
function WordBox(props: { readonly field: Field; readonly choice: NonNullable<Field['choice']> }) {
  const write = (value: string): void => {
    if (props.field.steps) edit({ kind: 'set', steps: props.field.steps, value })
  }
  return (
    <label>
      {props.field.says}
      <select class="word" id={props.field.says.toLowerCase()} onChange={(event) => write(event.currentTarget.value)}>
        <For each={props.choice.words}>
          {({ value, says }) => (
            <option value={value} selected={value === props.choice.value}>
              {says}
            </option>
          )}
        </For>
      </select>
    </label>
  )
}
