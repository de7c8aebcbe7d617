/** Damping against speed behind the chosen tow car, each line named at its end. */
import { createMemo, createSignal, For, Show } from 'solid-js'
import type { SwayFigure, SwayLine } from '../../desk/figures/nouns.js'
import { spread } from '../../documents/drawing/spread.js'
import { units } from '../desk.js'
import { createAsked, drawn, figure, missing } from './asked.js'
import { createWidth } from './measure.js'
import { isOpened, openFigure } from './opened.js'

const [car, setCar] = createSignal<string | null>(null)
const [pointed, setPointed] = createSignal<string | null>(null)

export function SwayLinesFigure() {
  const shown = createAsked(() => figure('sway', car(), units()))
  return (
    <figure class="sway">
      <figcaption>Damping of the slowest swing against speed</figcaption>
      <Show when={missing(shown())}>{(says) => <p>{says()}</p>}</Show>
      <Show when={drawn(shown())}>
        {(sway) => (
          <>
            <div class="asking">
              <label>
                Tow car
                <select id="tow-car" value={sway().car} onChange={(event) => setCar(event.currentTarget.value)}>
                  <For each={sway().cars}>
                    {(each) => (
                      <option value={each.id} selected={each.id === sway().car}>
                        {each.says}
                      </option>
                    )}
                  </For>
                </select>
              </label>
            </div>
            <Curves sway={sway()} />
            <Cases sway={sway()} />
          </>
        )}
      </Show>
    </figure>
  )
}

const HEIGHT = 300
const [LEFT, RIGHT, TOP, FOOT] = [44, 40, 22, 38] as const
/** Told apart on a copier as well; the least steady case is the heavy one. */
const DASHES = ['none', '8 4', '14 4 2 4', '2 4'] as const

function Curves(props: { readonly sway: SwayFigure }) {
  let frame!: HTMLDivElement
  const width = createWidth(() => frame)
  const right = (): number => width() - RIGHT
  const foot = HEIGHT - FOOT
  const x = (speed: number): number => {
    const { from, to } = props.sway.speed
    return LEFT + ((right() - LEFT) * (speed - from)) / (to - from)
  }
  const y = (damping: number): number => {
    const { from, to } = props.sway.damping
    return foot - ((foot - TOP) * (damping - from)) / (to - from)
  }
  const names = createMemo(() => {
    const ends = props.sway.lines.flatMap((line, i) => {
      const last = line.points.filter(([, damping]) => damping !== null).at(-1)
      return last ? [{ line, i, at: [x(last[0]), y(last[1] as number)] as const }] : []
    })
    const sorted = ends.sort((a, b) => a.at[1] - b.at[1])
    const levels = spread(
      sorted.map(({ at }) => at[1]),
      () => 15,
      TOP,
      foot,
    )
    return sorted.map((each, n) => ({ ...each, level: levels[n] }))
  })
  const curve = (line: SwayLine): string => {
    let [d, isUp] = ['', true]
    for (const [speed, damping] of line.points) {
      if (damping !== null) d += `${isUp ? 'M' : 'L'}${x(speed).toFixed(1)} ${y(damping).toFixed(1)}`
      isUp = damping === null
    }
    return d
  }
  const marked = (line: SwayLine): string => (line.case === pointed() ? 'curve pointed' : line.isWorst ? 'curve worst' : 'curve')
  return (
    <div ref={frame}>
      <svg role="img" aria-label="The curves; their figures are in the table below" width={width()} height={HEIGHT}>
        <For each={props.sway.damping.ticks}>
          {(at) => (
            <>
              <line class="grid" x1={LEFT} x2={right()} y1={y(at)} y2={y(at)} />
              <text x={LEFT - 6} y={y(at) + 4} text-anchor="end">
                {Math.round(at * 100)}
              </text>
            </>
          )}
        </For>
        <For each={props.sway.speed.ticks}>
          {(at) => (
            <>
              <line class="grid" x1={x(at)} x2={x(at)} y1={TOP} y2={foot} />
              <text x={x(at)} y={foot + 15} text-anchor="middle">
                {Math.round(at)}
              </text>
            </>
          )}
        </For>
        <rect class="line" x={LEFT} y={TOP} width={right() - LEFT} height={foot - TOP} />
        <line class="limit" x1={LEFT} x2={right()} y1={y(0)} y2={y(0)} />
        <text x={LEFT + 6} y={y(0) + 14}>
          below this line a swing grows
        </text>
        <line class="limit" x1={x(props.sway.stated.at)} x2={x(props.sway.stated.at)} y1={TOP} y2={foot} />
        <text x={x(props.sway.stated.at) + 5} y={TOP + 13}>
          {props.sway.stated.says}
        </text>
        <text x={LEFT - 36} y={TOP - 8}>
          % of critical damping
        </text>
        <text x={(LEFT + right()) / 2} y={HEIGHT - 4} text-anchor="middle">
          speed, {props.sway.speed.unit}
        </text>
        <For each={props.sway.lines}>
          {(line, i) => <path class={marked(line)} d={curve(line)} stroke-dasharray={DASHES[i() % DASHES.length]} />}
        </For>
        <For each={names()}>
          {(name) => (
            <g class={marked(name.line)} onPointerEnter={() => setPointed(name.line.case)} onPointerLeave={() => setPointed(null)}>
              <path class="thin" d={`M${name.at[0]} ${name.at[1]}L${right() + 12} ${name.level}`} />
              <text x={right() + 16} y={name.level + 4}>
                {name.line.case}
              </text>
            </g>
          )}
        </For>
      </svg>
    </div>
  )
}

function Cases(props: { readonly sway: SwayFigure }) {
  return (
    <table class="figures-table">
      <thead>
        <tr>
          <th scope="col">Load case</th>
          <th scope="col" class="number">
            At {props.sway.stated.says}
          </th>
          <th scope="col" class="number">
            A swing stays from
          </th>
          <th scope="col">Yaw inertia</th>
        </tr>
      </thead>
      <tbody>
        <For each={props.sway.lines}>
          {(line) => (
            <tr onPointerEnter={() => setPointed(line.case)} onPointerLeave={() => setPointed(null)}>
              <th scope="row">
                <b>{line.case}</b> {line.says}
                <Show when={line.isWorst}>
                  {' '}
                  <b>least steady</b>
                </Show>
              </th>
              <td class="number">{line.atStated}</td>
              <td class="number">{line.limit}</td>
              <td>
                <button
                  type="button"
                  class="link"
                  aria-expanded={isOpened(line.working)}
                  onFocus={() => setPointed(line.case)}
                  onBlur={() => setPointed(null)}
                  onClick={() => openFigure(line.working)}
                  aria-label={`Yaw inertia in case ${line.case}: its working`}
                >
                  its working
                </button>
              </td>
            </tr>
          )}
        </For>
      </tbody>
    </table>
  )
}
