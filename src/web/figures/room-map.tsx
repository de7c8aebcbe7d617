/** How much may be added here: a map over the plan in one ink, read at a point that hand, keys and fields move. */
import { createEffect, createMemo, createSignal, For, Show } from 'solid-js'
import type { RoomMap } from '../../desk/figures/nouns.js'
import { parseQuantity } from '../../quantity/doors.js'
import { setLit, setNotice, units } from '../desk.js'
import { createAsked, drawn, figure, missing } from './asked.js'
import { createWidth, pathOf } from './measure.js'

/** The more ink the less may be added. */
const SHADES = [0.46, 0.34, 0.24, 0.15, 0.07, 0] as const
const INCH = 0.0254

export function RoomMapFigure() {
  const shown = createAsked(() => figure('room', units()))
  return (
    <figure class="room">
      <figcaption>How much may I add here?</figcaption>
      <Show when={missing(shown())}>{(says) => <p>{says()}</p>}</Show>
      <Show when={drawn(shown())}>{(map) => <MapWithFields map={map()} />}</Show>
    </figure>
  )
}

/** Stays where it is from one edit to the next. */
const [spot, setSpot] = createSignal<readonly [number, number] | null>(null)

function MapWithFields(props: { readonly map: RoomMap }) {
  let frame!: HTMLDivElement
  const width = createWidth(() => frame)
  const at = createMemo(() => spot() ?? props.map.start)
  const here = createAsked(() => figure('roomAt', at()[0], at()[1], units()))
  // only where somebody put it: the elevation is not marked unasked
  createEffect(() => {
    if (spot()) setLit(drawn(here())?.at ?? null)
  })
  return (
    <>
      <div class="asking">
        <Place says="Station" metres={at()[0]} put={(metres) => setSpot([metres, at()[1]])} />
        <Place
          says="From the centre line"
          metres={Math.abs(at()[1])}
          put={(metres) => setSpot([at()[0], Math.abs(metres) * (at()[1] < 0 ? -1 : 1)])}
        />
        <label>
          Side
          <select
            value={at()[1] < 0 ? 'left' : 'right'}
            onChange={(event) => setSpot([at()[0], Math.abs(at()[1]) * (event.currentTarget.value === 'left' ? -1 : 1)])}
          >
            <option value="right">right of travel</option>
            <option value="left">left of travel</option>
          </select>
        </label>
      </div>
      <p class="says" role="status" id="room-says">
        {drawn(here())?.says ?? '…'}
      </p>
      <div ref={frame}>
        <Plan map={props.map} width={width()} at={at()} />
      </div>
      <Legend map={props.map} />
      <Figures map={props.map} />
    </>
  )
}

function Place(props: { readonly says: string; readonly metres: number; readonly put: (metres: number) => void }) {
  const isInch = (): boolean => units() === 'inch'
  const shown = (): string => String(Number((props.metres / (isInch() ? INCH : 0.001)).toFixed(1)))
  const write = (box: HTMLInputElement): void => {
    const text = /[a-z"'″′]\s*$/i.test(box.value) ? box.value : `${box.value} ${isInch() ? 'in' : 'mm'}`
    const read = parseQuantity(text, 'length')
    if (read.ok) props.put(read.value)
    else setNotice(`${props.says}: ${read.says}`)
    box.value = shown()
  }
  return (
    <label>
      {props.says}, {isInch() ? 'in' : 'mm'}
      <input value={shown()} onChange={(event) => write(event.currentTarget)} />
    </label>
  )
}

const [LEFT, RIGHT, TOP, FOOT] = [34, 8, 6, 52] as const
/** Fits a screen together with its sentence, px. */
const TALL = 290
/** Squares lie over each other by so much, px, or hairlines of paper would show between them. */
const OVER = 0.7

function Plan(props: { readonly map: RoomMap; readonly width: number; readonly at: readonly [number, number] }) {
  const box = createMemo(() => {
    const all = props.map.body.flat()
    const [xs, ys] = [all.filter((_, i) => i % 2 === 0), all.filter((_, i) => i % 2 === 1)]
    return { x0: Math.min(...xs), x1: Math.max(...xs), y0: Math.min(...ys), y1: Math.max(...ys) }
  })
  const per = (): number => Math.min((props.width - LEFT - RIGHT) / (box().x1 - box().x0), TALL / (box().y1 - box().y0))
  // the nose to the left, so that the right of travel lies above, as on the elevation's plan
  const x = (station: number): number => LEFT + (station - box().x0) * per()
  const y = (buttock: number): number => TOP + (box().y1 - buttock) * per()
  const foot = (): number => y(box().y0) + 4
  const squares = (list: readonly number[]): string => {
    const [side, half] = [(props.map.cell * per() + OVER).toFixed(2), props.map.cell / 2]
    let d = ''
    for (let i = 0; i < list.length; i += 2)
      d += `M${x(list[i] - half).toFixed(2)} ${y(list[i + 1] + half).toFixed(2)}h${side}v${side}h-${side}z`
    return d
  }
  const put = (event: PointerEvent & { readonly currentTarget: Element }): void => {
    const drawnAt = event.currentTarget.getBoundingClientRect()
    const [px, py] = [event.clientX - drawnAt.left, event.clientY - drawnAt.top]
    if (py > foot()) return
    setSpot([tidy(box().x0 + (px - LEFT) / per()), tidy(box().y1 - (py - TOP) / per())])
  }
  const keys = (event: KeyboardEvent): void => {
    const step = event.shiftKey ? 0.5 : 0.1
    const by = { ArrowLeft: [-step, 0], ArrowRight: [step, 0], ArrowUp: [0, step], ArrowDown: [0, -step] }[event.key]
    if (!by) return
    event.preventDefault()
    setSpot([tidy(props.at[0] + by[0]), tidy(props.at[1] + by[1])])
  }
  const tick = (): number => (units() === 'inch' ? 20 * INCH : 0.5)
  const ticks = (from: number, to: number): readonly number[] =>
    Array.from({ length: Math.floor(to / tick()) - Math.ceil(from / tick()) + 1 }, (_, i) => (Math.ceil(from / tick()) + i) * tick())
  const tape = (metres: number): string => (metres / (units() === 'inch' ? INCH : 0.001)).toFixed(0)
  return (
    <div
      class="plan"
      role="application"
      tabindex="0"
      aria-label="Plan; arrow keys move the point"
      aria-describedby="room-says"
      onKeyDown={keys}
    >
      <svg
        aria-hidden="true"
        width={x(box().x1) + RIGHT}
        height={foot() + FOOT}
        onPointerDown={put}
        onPointerMove={(event) => event.pointerType === 'mouse' && put(event)}
      >
        <clipPath id="room-floor">
          <path d={pathOf(props.map.floor, x, y, true)} />
        </clipPath>
        <g clip-path="url(#room-floor)">
          <For each={props.map.bands}>{(band, i) => <path class="shade" d={squares(band.squares)} fill-opacity={SHADES[i()] ?? 0} />}</For>
        </g>
        <For each={props.map.body}>{(line) => <path class="thin" d={pathOf(line, x, y)} />}</For>
        <path class="line" d={pathOf(props.map.floor, x, y, true)} />
        <line class="centre" x1={x(box().x0)} x2={x(box().x1)} y1={y(0)} y2={y(0)} />
        <For each={props.map.soundings}>
          {(each) => (
            <text x={x(each.x)} y={y(each.y) + 4} text-anchor="middle">
              {each.words}
            </text>
          )}
        </For>
        <For each={ticks(box().y0, box().y1)}>
          {(buttock) => (
            <text class="faint" x={LEFT - 6} y={y(buttock) + 4} text-anchor="end">
              {tape(Math.abs(buttock))}
            </text>
          )}
        </For>
        <For each={ticks(box().x0, box().x1)}>
          {(station) => (
            <>
              <line class="thin" x1={x(station)} x2={x(station)} y1={foot()} y2={foot() + 4} />
              <text class="faint" x={x(station)} y={foot() + 16} text-anchor="middle">
                {tape(station)}
              </text>
            </>
          )}
        </For>
        <Stops map={props.map} x={x} y={foot() + 26} />
        <g class="spot">
          <circle cx={x(props.at[0])} cy={y(props.at[1])} r="11" />
          <path d={`M${x(props.at[0]) - 17} ${y(props.at[1])}h6m22 0h6M${x(props.at[0])} ${y(props.at[1]) - 17}v6m0 22v6`} />
        </g>
      </svg>
    </div>
  )
}

/** A hand means ten millimetres, not a hundredth of one. */
const tidy = (metres: number): number => Math.round(metres * 100) / 100

/** What stops it along the centre line, under the stations; a name too long for its stretch is in the table. */
function Stops(props: { readonly map: RoomMap; readonly x: (station: number) => number; readonly y: number }) {
  return (
    <For each={props.map.stops}>
      {(each) => {
        const [from, to] = [() => props.x(each.from), () => props.x(each.to)]
        return (
          <>
            <path class="thin" d={`M${from() + 1} ${props.y - 4}v6H${to() - 1}v-6`} />
            <Show when={to() - from() > each.says.length * 6.2}>
              <text x={(from() + to()) / 2} y={props.y + 17} text-anchor="middle">
                {each.says}
              </text>
            </Show>
          </>
        )
      }}
    </For>
  )
}

function Legend(props: { readonly map: RoomMap }) {
  return (
    <ul class="legend" aria-label="Shades">
      <For each={props.map.bands}>
        {(band, i) => (
          <Show when={band.squares.length > 0}>
            <li>
              <svg aria-hidden="true" width="26" height="14">
                <rect class="shade" width="26" height="14" fill-opacity={SHADES[i()] ?? 0} />
                <rect class="line" x="0.5" y="0.5" width="25" height="13" />
              </svg>
              {band.says}
            </li>
          </Show>
        )}
      </For>
    </ul>
  )
}

function Figures(props: { readonly map: RoomMap }) {
  const unit = (): string => (units() === 'inch' ? 'in' : 'mm')
  const tape = (metres: number): string => (metres / (units() === 'inch' ? INCH : 0.001)).toFixed(0)
  return (
    <details>
      <summary>The same in words</summary>
      <ul>
        <For each={props.map.places}>
          {(place) => (
            <li>
              {place.says}, STA {tape(place.x)}: {place.words}
            </li>
          )}
        </For>
        <For each={props.map.stops}>
          {(each) => (
            <li>
              On the centre line from STA {tape(each.from)} to {tape(each.to)} {unit()}, stopped by: {each.says}
            </li>
          )}
        </For>
      </ul>
    </details>
  )
}
