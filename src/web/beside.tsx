/** Several coaches beside each other, drawn to one scale, with the figures that differ first. */
import { wrap } from 'comlink'
import { createEffect, createMemo, createSignal, For, on, Show } from 'solid-js'
import { rowsBeside, type Side } from '../desk/side-by-side.js'
import { look, state, worker } from './desk.js'
import { openCoach } from './files.js'
import { known } from './known.js'
import type { DeskWorker } from './worker.js'

/** A hand of its own, made when the first coach is laid beside: deriving it does not hold up the one that is worked on. */
let other: ReturnType<typeof wrap<DeskWorker>> | null = null
const beside = (): ReturnType<typeof wrap<DeskWorker>> => {
  other ??= wrap<DeskWorker>(new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' }))
  return other
}

const [paths, setPaths] = createSignal<readonly string[]>([])
const [sides, setSides] = createSignal<Readonly<Record<string, Side>>>({})
/** as many as a screen holds beside the open one */
const MOST = 3

export function Beside() {
  const [mine, setMine] = createSignal<Side | null>(null)
  const [says, setSays] = createSignal('')
  createEffect(
    on([() => state()?.text, look], async () => {
      if (state()) setMine(await worker.side(look()))
    }),
  )
  createEffect(on(look, () => setSides({}), { defer: true }))
  createEffect(async () => {
    const path = paths().find((each) => !sides()[each])
    const at = look()
    if (path === undefined) return
    setSays('It is being derived …')
    const found = await openCoach(path)
    const side = typeof found === 'string' ? null : await beside().sideOfFiles({ path, files: found.files }, at)
    if (side && !('faults' in side)) {
      setSays('')
      setSides((all) => ({ ...all, [path]: side }))
      return
    }
    setSays(typeof found === 'string' ? found : `${path} does not read: ${side && 'faults' in side ? side.faults[0]?.says : ''}`)
    setPaths((all) => all.filter((each) => each !== path))
  })
  const shown = createMemo((): readonly Side[] => {
    const first = mine()
    return [...(first ? [first] : []), ...paths().flatMap((path) => sides()[path] ?? [])]
  })
  const rows = createMemo(() => rowsBeside(shown()))
  const free = (): readonly { readonly path: string; readonly name: string }[] =>
    known().filter(({ path }) => path !== state()?.file && !paths().includes(path))
  return (
    <section class="beside" aria-label="Coaches beside each other">
      <div class="bar">
        <h2>Beside</h2>
        <label>
          Lay beside it
          <select
            id="beside"
            disabled={paths().length >= MOST || free().length === 0}
            onChange={(event) => {
              const path = event.currentTarget.value
              if (path) setPaths((all) => [...all, path])
              event.currentTarget.value = ''
            }}
          >
            <option value="">choose a coach</option>
            <For each={free()}>{({ path, name }) => <option value={path}>{name}</option>}</For>
          </select>
        </label>
        <span role="status">{says()}</span>
      </div>
      <Pictures sides={shown()} />
      <section class="beside-table" tabindex="0" aria-label="What they come to">
        <table>
          <thead>
            <tr>
              <th scope="col">What they come to</th>
              <For each={shown()}>
                {(side, i) => (
                  <th scope="col">
                    {side.name} <small>revision {side.revision}</small>
                    <Show when={i() > 0}>
                      {' '}
                      <button
                        type="button"
                        aria-label={`Take ${side.name} away`}
                        onClick={() => setPaths((all) => all.filter((each) => each !== side.file))}
                      >
                        Take away
                      </button>
                    </Show>
                  </th>
                )}
              </For>
            </tr>
          </thead>
          <tbody>
            <For each={rows()}>
              {(row) => (
                <tr class={row.differs ? 'differs' : ''}>
                  <th scope="row">{row.name}</th>
                  <For each={row.says}>{(each) => <td>{each}</td>}</For>
                </tr>
              )}
            </For>
          </tbody>
        </table>
      </section>
    </section>
  )
}

/** One under the other from one datum, so that stations line up and a longer coach is seen to be longer. */
function Pictures(props: { readonly sides: readonly Side[] }) {
  const round = (m: number): string => (m * 1000).toFixed(0)
  const span = createMemo(() => ({
    x0: Math.min(...props.sides.map(({ box }) => box.x0)),
    x1: Math.max(...props.sides.map(({ box }) => box.x1)),
  }))
  return (
    <div class="pictures">
      <For each={props.sides}>
        {(side) => (
          <figure>
            <svg
              role="img"
              aria-label={`${side.name}, to the same scale as the others`}
              viewBox={`${round(span().x0)} ${round(-side.box.y1 - 0.05)} ${round(span().x1 - span().x0)} ${round(side.box.y1 - side.box.y0 + 0.1)}`}
            >
              <For each={side.drawn}>
                {({ points, closed, layer }) => (
                  <polyline
                    class={layer}
                    points={[...points, ...(closed ? points.slice(0, 2) : [])].map((v, i) => round(i % 2 === 0 ? v : -v)).join(' ')}
                  />
                )}
              </For>
            </svg>
            <figcaption>{side.name}</figcaption>
          </figure>
        )}
      </For>
    </div>
  )
}
