/** The ripple: one quiet line along the foot that opens upward. It is always there, because nothing changes silently. */
import { createEffect, createMemo, createSignal, For, on, Show } from 'solid-js'
import type { RippleLineShown, SideId } from '../desk/nouns.js'
import { onClock } from './clock.js'
import { lookAt, ripple, state, takeUp, units } from './desk.js'
import {
  compared,
  compareSides,
  freeze,
  from,
  goTo,
  isNoteOpen,
  loadRevisions,
  openChangeNote,
  refresh,
  revisions,
  to,
} from './revisions.js'
import './ripple-foot.css'

export function RippleFoot() {
  const [isOpen, setOpen] = createSignal(false)
  const [isAside, setAside] = createSignal(false)
  const [name, setName] = createSignal('')
  const file = createMemo(() => state()?.file)
  createEffect(on(file, (path) => path !== undefined && loadRevisions(path)))
  // whoever reads two revisions sees them anew with every edit of one of them
  createEffect(on([ripple, units, isOpen, isNoteOpen], () => state() && (isOpen() || isNoteOpen()) && refresh(), { defer: true }))
  const toggle = (): void => {
    setAside(false)
    setOpen(!isOpen())
  }
  const freezeIt = (event: Event): void => {
    event.preventDefault()
    freeze(name().trim())
    setName('')
  }
  return (
    <footer class="ripple">
      <Show when={isOpen()}>
        <div class={isAside() ? 'ripple-open aside' : 'ripple-open'}>
          <section class="ripple-lines" aria-label="What changed">
            <p class="compared">{compared()?.line}</p>
            <For each={compared()?.lines ?? []}>{(line) => <Line line={line} gone={() => setAside(true)} />}</For>
          </section>
          <Frozen />
        </div>
      </Show>
      <form class="ripple-line" onSubmit={freezeIt}>
        <button type="button" id="ripple" aria-expanded={isOpen()} onClick={toggle}>
          {ripple()?.line ?? 'The ripple is being worked out.'}
        </button>
        <button type="button" aria-pressed={isNoteOpen()} onClick={openChangeNote}>
          Change note
        </button>
        <label>
          Freeze as
          <input id="freeze-name" value={name()} onInput={(event) => setName(event.currentTarget.value)} />
        </label>
        <button type="submit" disabled={(state()?.looking ?? null) !== null}>
          Freeze
        </button>
      </form>
    </footer>
  )
}

/** A heading with how many stand under it, or a sentence that leads to its place; one that is about several leads to each in turn. */
function Line(props: { readonly line: RippleLineShown; readonly gone: () => void }) {
  let next = 0
  const go = (): void => {
    const { about } = props.line
    goTo(about[next % about.length])
    props.gone()
    next++
  }
  const { indent, count, about } = props.line
  if (indent === 0)
    return (
      <h3>
        {props.line.says}
        {count ? <small>, {count}</small> : ''}
      </h3>
    )
  return (
    <p class={indent > 1 ? 'deeper' : ''}>
      <Show when={about.length > 0} fallback={props.line.says}>
        <button type="button" class="link" onClick={go}>
          {props.line.says}
        </button>
      </Show>
    </p>
  )
}

/** Two of them compared, and each of them to be looked at or taken up. */
function Frozen() {
  const sides = createMemo((): readonly (readonly [SideId, string])[] => [
    ['now', 'as it is now'],
    ['disk', 'the file on the disk'],
    ...(revisions().length === 0 ? [['opened', 'as it was opened'] as const] : []),
    ...[...revisions()].reverse().map((each) => [each.id, each.name] as const),
  ])
  return (
    <section class="frozen" aria-label="Frozen revisions">
      <div class="sides">
        <Side id="compare-from" says="Compare" sides={sides()} value={from()} choose={(side) => compareSides(side, to())} />
        <Side id="compare-to" says="with" sides={sides()} value={to()} choose={(side) => compareSides(from(), side)} />
      </div>
      <Show
        when={revisions().length > 0}
        fallback={<p>Nothing is frozen yet. Freeze the coach under a name, and edits are compared with that.</p>}
      >
        <ul>
          <For each={[...revisions()].reverse()}>
            {(each) => (
              <li>
                <strong>{each.name}</strong>
                <small>
                  revision {each.revision}, {onClock(each.when)}
                </small>
                <button
                  type="button"
                  aria-label={`Look at ${each.name}`}
                  aria-pressed={state()?.looking === each.name}
                  onClick={() => lookAt(state()?.looking === each.name ? null : each.id)}
                >
                  Look at it
                </button>
                <button type="button" aria-label={`Take up ${each.name}`} onClick={() => takeUp(each.id)}>
                  Take it up
                </button>
              </li>
            )}
          </For>
        </ul>
      </Show>
    </section>
  )
}

function Side(props: {
  readonly id: string
  readonly says: string
  readonly sides: readonly (readonly [SideId, string])[]
  readonly value: SideId
  readonly choose: (side: SideId) => void
}) {
  return (
    <label>
      {props.says}
      <select id={props.id} onChange={(event) => props.choose(event.currentTarget.value)}>
        <For each={props.sides}>
          {([id, says]) => (
            <option value={id} selected={id === props.value}>
              {says}
            </option>
          )}
        </For>
      </select>
    </label>
  )
}
