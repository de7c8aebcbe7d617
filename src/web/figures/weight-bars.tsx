/** The load cases as bars: a table whose cells are drawn. Touching a bar opens the working of its figure. */
import { For, Show } from 'solid-js'
import type { Bar, WeightBars } from '../../desk/figures/nouns.js'
import { units } from '../desk.js'
import { createAsked, drawn, figure, missing } from './asked.js'
import { isOpened, openFigure } from './opened.js'

const WORDS = { fail: 'FAILS', caution: 'caution', 'not-checked': 'not checked', pass: 'passes' } as const

export function WeightBarsFigure() {
  const shown = createAsked(() => figure('weight', units()))
  return (
    <figure class="bars">
      <figcaption>Load cases: the hitch against its band, the axles against their rating</figcaption>
      <Show when={missing(shown())}>{(says) => <p>{says()}</p>}</Show>
      <Show when={drawn(shown())}>{(bars) => <BarTable bars={bars()} />}</Show>
    </figure>
  )
}

function BarTable(props: { readonly bars: WeightBars }) {
  const ticks = (end: number, step: number): readonly number[] =>
    Array.from({ length: Math.floor(end / step + 1e-9) + 1 }, (_, i) => i * step)
  return (
    <table>
      <thead>
        <tr>
          <th scope="col" class="bars-case">
            Load case
          </th>
          <th scope="col" class="bars-hitch">
            Hitch, % of weight (band {props.bars.band.says})
            <Scale at={ticks(props.bars.ends.share, 0.05)} end={props.bars.ends.share} />
          </th>
          <th scope="col" class="bars-axles">
            Axles, % of rating
            <Scale at={ticks(props.bars.ends.axle, 0.5)} end={props.bars.ends.axle} />
          </th>
        </tr>
      </thead>
      <tbody>
        <For each={props.bars.cases}>
          {(one) => (
            <tr>
              <th scope="row">
                <b>{one.id}</b> {one.says}
                <Show when={!one.isDesign}>
                  <span class="faint"> not a design case</span>
                </Show>
              </th>
              <td>
                <BarButton bar={one.share} end={props.bars.ends.share} from={props.bars.band.least} to={props.bars.band.most} />
              </td>
              <td>
                <For each={one.axles}>{(axle) => <BarButton bar={axle} end={props.bars.ends.axle} from={1} to={1} />}</For>
              </td>
            </tr>
          )}
        </For>
      </tbody>
    </table>
  )
}

const per = (value: number, end: number): string => `${((100 * value) / end).toFixed(3)}%`

function Scale(props: { readonly at: readonly number[]; readonly end: number }) {
  return (
    <svg class="scale" aria-hidden="true">
      <For each={props.at}>
        {(at) => (
          <text x={per(at, props.end)} y="13" text-anchor={at === 0 ? 'start' : at > props.end - 1e-9 ? 'end' : 'middle'}>
            {Math.round(at * 100)}
          </text>
        )}
      </For>
    </svg>
  )
}

/** The band, or the one limit, stands behind the bar all down the column. */
function BarButton(props: { readonly bar: Bar; readonly end: number; readonly from: number; readonly to: number }) {
  const verdict = () => props.bar.verdict ?? 'not-checked'
  return (
    <button
      type="button"
      class={`bar verdict-${verdict()}`}
      aria-expanded={isOpened(props.bar.working)}
      aria-label={`${props.bar.says}: ${props.bar.words}, ${WORDS[verdict()]}. Its working.`}
      onClick={() => openFigure(props.bar.working)}
    >
      <svg aria-hidden="true">
        <rect class="band" x={per(props.from, props.end)} width={per(props.to - props.from, props.end)} y="0" height="100%" />
        <line class="limit" x1={per(props.from, props.end)} x2={per(props.from, props.end)} y1="0" y2="100%" />
        <line class="limit" x1={per(props.to, props.end)} x2={per(props.to, props.end)} y1="0" y2="100%" />
        <rect class="length" x="0" width={per(props.bar.value, props.end)} height="9" />
      </svg>
      <span class="words">
        {props.bar.words}
        <Show when={verdict() !== 'pass'}>
          {' '}
          <b>{WORDS[verdict()]}</b>
        </Show>
      </span>
    </button>
  )
}
