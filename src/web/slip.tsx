/** The quiet note beside the pointer: what is there where it rests, and while a thing is in the hand why it was drawn where it is. */
import { createEffect, createSignal, For, on, onCleanup, Show } from 'solid-js'
import type { PlaceNote } from '../desk/nouns.js'
import './slip.css'
import { elevation, hand, placeAt } from './desk.js'

/** Where on the drawing the pointer is: pixels, and metres along its axes. */
export interface At {
  readonly px: number
  readonly py: number
  readonly x: number
  readonly y: number
}

/** ms a pointer rests before it is told what is there: in passing nobody reads */
const REST = 140

/** The newest answer to where the pointer rests; one question at a time, and those overtaken are not asked. */
export function createPlaceNote(at: () => At | null) {
  const [note, setNote] = createSignal<PlaceNote | null>(null)
  let timer: ReturnType<typeof setTimeout> | undefined
  let asked = 0
  createEffect(
    on(at, (where) => {
      clearTimeout(timer)
      asked++
      setNote(null)
      if (!where) return
      const mine = asked
      timer = setTimeout(async () => {
        const found = await placeAt(where.x, where.y).catch(() => null)
        if (mine === asked) setNote(found)
      }, REST)
    }),
  )
  // after an edit what is there may be something else
  createEffect(on(elevation, () => setNote(null), { defer: true }))
  onCleanup(() => clearTimeout(timer))
  return note
}

/** What the note stands beside, on the screen, px: a thing from one side to the other and its top, or a pointer. */
export interface Anchor {
  readonly left: number
  readonly right: number
  readonly top: number
}

/** px: clear of the pointer or the handles of a thing, and as wide as the note may be */
const [OFF, WIDE] = [22, 400]

export function Slip(props: { readonly at: Anchor | null; readonly note: PlaceNote | null; readonly width: number }) {
  const left = (): string => {
    const { left: from, right: to } = props.at ?? { left: 0, right: 0 }
    return to + OFF + WIDE < props.width ? `${to + OFF}px` : `${Math.max(0, from - OFF - WIDE)}px`
  }
  return (
    <Show when={props.at}>
      {(at) => (
        <Show
          when={hand()}
          fallback={
            <Show when={props.note}>
              {(note) => (
                <div class="slip" style={{ left: left(), top: `${at().top}px` }}>
                  <p class="address">{note().address}</p>
                  <For each={note().lines}>
                    {({ says, text }) => (
                      <p>
                        <span class="where">{says}</span> {text}
                      </p>
                    )}
                  </For>
                </div>
              )}
            </Show>
          }
        >
          {(held) => (
            <div class="slip" id="in-hand" role="status" style={{ left: left(), top: `${at().top}px` }}>
              <For each={held().snaps}>{({ says }) => <p class="address">{says}</p>}</For>
              <For each={held().says}>{(says) => <p>{says}</p>}</For>
            </div>
          )}
        </Show>
      )}
    </Show>
  )
}
