/** A flat pattern with its holes, live: a hole says what it is, lights up on the coach, and leads to its mates in other sheets. */
import { createEffect, createMemo, createSignal, For, onCleanup, Show } from 'solid-js'
import type { FlatShown, HoleShown, Mate } from '../../desk/figures/nouns.js'
import { setLit, units } from '../desk.js'
import { createAsked, figure } from './asked.js'
import { FlatPicture } from './flat-picture.js'
import { light } from './light.js'

interface Chosen {
  readonly part: string
  readonly face: string
}

const [chosen, setChosen] = createSignal<Chosen | null>(null)
const [hole, setHole] = createSignal<number | null>(null)

const keyOf = ({ part, face }: Chosen): string => `${part}|${face}`

export function FlatsFigure() {
  const groups = createAsked(() => figure('flats'))
  const all = createMemo(() => groups()?.flatMap(({ flats }) => flats) ?? [])
  // a sheet that an edit took away gives way to the first
  const now = createMemo(() => all().find((each) => keyOf(each) === keyOf(chosen() ?? { part: '', face: '' })) ?? all()[0] ?? null)
  const flat = createAsked(() => {
    const named = now()
    return named ? figure('flat', named.part, named.face) : null
  })
  const found = createAsked(() => {
    const [named, which] = [now(), hole()]
    if (!named) return null
    return which === null ? Promise.resolve(null) : figure('hole', named.part, named.face, which, units())
  })
  createEffect(() => {
    const at = found()?.at
    if (at) light(at)
  })
  onCleanup(() => setLit(null))
  const follow = (mate: Mate): void => {
    if (mate.face === null) return
    setChosen({ part: mate.part, face: mate.face })
    setHole(mate.hole)
  }
  return (
    <figure class="flats">
      <figcaption>Flat pattern and its holes. {flat()?.frame}</figcaption>
      <div class="asking">
        <label>
          Sheet
          <select
            id="flat"
            onChange={(event) => {
              const next = all().find((each) => keyOf(each) === event.currentTarget.value)
              if (next) setChosen(next)
              setHole(null)
            }}
          >
            <For each={groups() ?? []}>
              {(group) => (
                <optgroup label={group.says}>
                  <For each={group.flats}>
                    {(each) => (
                      <option value={keyOf(each)} selected={now() !== null && keyOf(each) === keyOf(now() as Chosen)}>
                        {each.says}, {each.holes} holes
                      </option>
                    )}
                  </For>
                </optgroup>
              )}
            </For>
          </select>
        </label>
        <Steps flat={flat()} />
      </div>
      <Show when={flat()}>{(shown) => <FlatPicture flat={shown()} hole={hole()} choose={setHole} />}</Show>
      <HoleSays hole={found()} follow={follow} />
    </figure>
  )
}

function Steps(props: { readonly flat: FlatShown | null }) {
  const go = (by: number): void => {
    const count = props.flat?.x.length ?? 0
    if (count > 0) setHole(((((hole() ?? (by > 0 ? -1 : 0)) + by) % count) + count) % count)
  }
  return (
    <>
      <button type="button" disabled={!props.flat} onClick={() => go(-1)}>
        Hole before
      </button>
      <button type="button" disabled={!props.flat} onClick={() => go(1)}>
        Next hole
      </button>
    </>
  )
}

function HoleSays(props: { readonly hole: HoleShown | null; readonly follow: (mate: Mate) => void }) {
  return (
    <div class="hole-says" role="status">
      <Show when={props.hole} fallback={<p>Touch a hole, or go to the next one, to see what it is and where its mates are.</p>}>
        {(hole) => (
          <>
            <p>
              <b>{hole().address}</b> {hole().says}
            </p>
            <ul aria-label="Its mates">
              <For each={hole().mates}>
                {(mate) => (
                  <li>
                    <Show when={mate.face !== null} fallback={<span>{mate.says}</span>}>
                      <button type="button" class="link" onClick={() => props.follow(mate)}>
                        {mate.says}
                      </button>
                    </Show>
                    : {mate.words}
                  </li>
                )}
              </For>
              <Show when={hole().mates.length === 0}>
                <li>No other layer: it goes through this one alone.</li>
              </Show>
            </ul>
          </>
        )}
      </Show>
    </div>
  )
}
