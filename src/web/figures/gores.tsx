/** The gores of an end laid flat in a row, coloured by distance or strain; touching one says what it costs. */
import { createEffect, createMemo, createSignal, For, Show } from 'solid-js'
import type { GoreFlat, GoresFigure } from '../../desk/figures/nouns.js'
import { select, units } from '../desk.js'
import { createAsked, figure } from './asked.js'
import { blanks, progress, workOut } from './blanks.js'
import { light } from './light.js'
import { createWidth, pathOf } from './measure.js'

const [end, setEnd] = createSignal<GoresFigure['end']>('nose')
const [gore, setGore] = createSignal(0)

export function GoresFigureView() {
  const shown = createAsked(() => figure('gores', end(), blanks(), units()))
  // what is not worked out yet is worked out beside, and asked for again when it is there
  createEffect(() => {
    const needs = shown()?.needs
    if (needs) workOut(needs)
  })
  return (
    <figure class="gores">
      <figcaption>Gores laid flat</figcaption>
      <div class="asking">
        <label>
          End
          <select id="end" value={end()} onChange={(event) => setEnd(event.currentTarget.value === 'tail' ? 'tail' : 'nose')}>
            <option value="nose">nose</option>
            <option value="tail">tail</option>
          </select>
        </label>
        <Show when={shown()}>{(now) => <span>{now().make} gores, seen from outside, the crown at the top</span>}</Show>
      </div>
      <Show when={shown()?.needs}>
        <p class="says" role="status">
          The strain of formed gores is not computed yet: it is being worked out{progress() ? ` (${progress()})` : ''}.
        </p>
      </Show>
      <Show when={shown()}>{(now) => <Row shown={now()} />}</Show>
    </figure>
  )
}

const TALL = 250
/** Of each level above which a place lies. */
const INK = 0.22
const GAP = 10

interface Placed {
  readonly which: number
  readonly flat: GoreFlat
  readonly left: number
  readonly wide: number
  readonly tall: number
  readonly x: (across: number) => number
  readonly y: (down: number) => number
}

function Row(props: { readonly shown: GoresFigure }) {
  let frame!: HTMLDivElement
  const width = createWidth(() => frame)
  const flats = (): readonly GoreFlat[] => props.shown.gores
  // gore 1 stands on the right of travel: that is on the left of the nose for whoever stands before it
  const inOrder = (): readonly number[] => {
    const all = flats().map((_, i) => i)
    return props.shown.end === 'nose' ? all : all.reverse()
  }
  const boxes = createMemo(() => flats().map(({ outline }) => boxOf(outline)))
  const placed = createMemo((): readonly Placed[] => {
    const widths = boxes().map((box) => (box ? box.y1 - box.y0 : 0))
    const tallest = Math.max(0.1, ...boxes().map((box) => (box ? box.x1 - box.x0 : 0)))
    const all = widths.reduce((sum, each) => sum + each, 0)
    const per = Math.min((width() - GAP * widths.length) / (all || 1), TALL / tallest)
    let left = 0
    return inOrder().map((which) => {
      const [flat, box] = [flats()[which], boxes()[which]]
      const from = left
      const wide = box ? (box.y1 - box.y0) * per : (width() - GAP * widths.length) / widths.length
      left += wide + GAP
      const [x0, y0] = box ? [box.x0, box.y0] : [0, 0]
      // a pattern's y runs left on the nose and right on the tail: to the right for whoever stands before it
      return {
        ...{ which, flat, left: from, wide, tall: box ? (box.x1 - box.x0) * per : 60 },
        x: (across) => from + (across - y0) * per,
        y: (down) => 16 + (down - x0) * per,
      }
    })
  })
  const height = (): number => 24 + Math.max(...placed().map((each) => each.tall))
  const chosen = (): GoreFlat | undefined => flats()[Math.min(gore(), flats().length - 1)]
  const choose = (which: number): void => {
    const flat = flats()[which]
    if (!flat) return
    setGore(which)
    select(flat.part)
    light(flat.at)
  }
  return (
    <>
      <ul class="legend" aria-label={props.shown.measure}>
        <Show when={props.shown.bands.length > 0}>
          <li>{props.shown.measure}:</li>
        </Show>
        <For each={props.shown.bands}>
          {(says, i) => (
            <li>
              <svg aria-hidden="true" width="26" height="14">
                <rect class="heat" width="26" height="14" fill-opacity={1 - (1 - INK) ** i()} />
                <rect class="line" x="0.5" y="0.5" width="25" height="13" />
              </svg>
              {says}
            </li>
          )}
        </For>
      </ul>
      <div class="beside">
        <div ref={frame} class="row">
          <svg width={width()} height={height()} aria-label="Gores">
            <For each={placed()}>
              {(each) => (
                // biome-ignore lint/a11y/useSemanticElements: a drawn shape is the button
                <g
                  class={each.which === gore() ? 'gore chosen' : 'gore'}
                  role="button"
                  tabindex="0"
                  aria-pressed={each.which === gore()}
                  aria-label={each.flat.says}
                  onClick={() => choose(each.which)}
                  onKeyDown={(event) => {
                    if (event.key !== 'Enter' && event.key !== ' ') return
                    event.preventDefault()
                    choose(each.which)
                  }}
                >
                  <For each={each.flat.above}>{(above) => <path class="heat" fill-opacity={INK} d={quarters(above, each)} />}</For>
                  <path class="dots" d={dots(each)} />
                  <Show
                    when={each.flat.outline.length > 0}
                    fallback={<rect class="line waiting" x={each.left} y="16" width={each.wide} height={each.tall} />}
                  >
                    <path class="line" d={around(each)} />
                  </Show>
                  <text x={each.left + each.wide / 2} y="11" text-anchor="middle">
                    {each.which + 1}
                  </text>
                </g>
              )}
            </For>
          </svg>
        </div>
        <Show when={chosen()}>
          {(flat) => (
            <section aria-label={flat().says} class="of-gore">
              <h3>
                {flat().says} of the {props.shown.end}
              </h3>
              <Show when={flat().why}>
                <p>{flat().why}</p>
              </Show>
              <dl>
                <For each={flat().figures}>
                  {(each) => (
                    <>
                      <dt>{each.says}</dt>
                      <dd>{each.words}</dd>
                    </>
                  )}
                </For>
              </dl>
            </section>
          )}
        </Show>
      </div>
    </>
  )
}

function boxOf(points: readonly number[]) {
  if (points.length === 0) return null
  const [xs, ys] = [points.filter((_, i) => i % 2 === 0), points.filter((_, i) => i % 2 === 1)]
  return { x0: Math.min(...xs), x1: Math.max(...xs), y0: Math.min(...ys), y1: Math.max(...ys) }
}

/** A pattern's x runs down the paper and its y across it. */
function turned(points: readonly number[]): readonly number[] {
  const out: number[] = []
  for (let i = 0; i + 1 < points.length; i += 2) out.push(points[i + 1], points[i])
  return out
}

const around = (each: Placed): string => pathOf(turned(each.flat.outline), each.x, each.y, true)

function dots({ flat, x, y }: Placed): string {
  let d = ''
  for (let i = 0; i < flat.holes.length; i += 2) d += `M${x(flat.holes[i + 1]).toFixed(1)} ${y(flat.holes[i]).toFixed(1)}h0`
  return d
}

function quarters(band: readonly number[], { x, y }: Placed): string {
  let d = ''
  for (let i = 0; i < band.length; i += 8)
    for (let k = 0; k < 8; k += 2)
      d += `${k === 0 ? 'M' : 'L'}${x(band[i + k + 1]).toFixed(1)} ${y(band[i + k]).toFixed(1)}${k === 6 ? 'Z' : ''}`
  return d
}
