/** Section and profile with the places of the point table on them, and the table itself. */
import { createMemo, createSignal, For, Show } from 'solid-js'
import type { LinesFigure, LinesRow } from '../../desk/figures/nouns.js'
import { units } from '../desk.js'
import { createAsked, figure } from './asked.js'
import { light } from './light.js'
import { createWidth, pathOf } from './measure.js'
import { isOpened, openFigure } from './opened.js'

const [surface, setSurface] = createSignal('mould')
const [step, setStep] = createSignal('named')
const [row, setRow] = createSignal<number | null>(null)

export function SectionLinesFigure() {
  const shown = createAsked(() => figure('lines', surface(), step(), units()))
  return (
    <figure class="lines">
      <figcaption>Section, profile and points</figcaption>
      <Show when={shown()}>
        {(lines) => (
          <>
            <div class="asking">
              <label>
                Surface
                <select id="surface" onChange={(event) => setSurface(event.currentTarget.value)}>
                  <For each={lines().surfaces}>
                    {(each) => (
                      <option value={each.id} selected={each.id === lines().surface}>
                        {each.says}
                      </option>
                    )}
                  </For>
                </select>
              </label>
              <label>
                Points
                <select
                  id="step"
                  onChange={(event) => {
                    setRow(null)
                    setStep(event.currentTarget.value)
                  }}
                >
                  <For each={lines().steps}>
                    {(each) => (
                      <option value={each.id} selected={each.id === lines().step}>
                        {each.says}
                      </option>
                    )}
                  </For>
                </select>
              </label>
            </div>
            <p class="says">{lines().sentence}</p>
            <div class="beside">
              <Curves lines={lines()} />
              <Points lines={lines()} />
            </div>
          </>
        )}
      </Show>
    </figure>
  )
}

const choose = (which: number, at: LinesRow): void => {
  setRow(which)
  light({ look: 'tail', x: at.y, y: at.z })
}

const INCH = 0.0254
const [LEFT, RIGHT, TOP, FOOT] = [46, 12, 14, 34] as const

function Curves(props: { readonly lines: LinesFigure }) {
  let frame!: HTMLDivElement
  const width = createWidth(() => frame, 380)
  const extent = createMemo(() => {
    const { mould, profile } = props.lines
    const odd = (list: readonly number[]): number[] => list.filter((_, i) => i % 2 === 1)
    const even = (list: readonly number[]): number[] => list.filter((_, i) => i % 2 === 0)
    const z = [...odd(mould), ...odd(profile)]
    return { half: Math.max(...even(mould)), reach: Math.max(...even(profile)), low: Math.min(...z), high: Math.max(...z) }
  })
  const gap = 28
  const per = (): number => (width() - LEFT - RIGHT - gap) / (extent().half + extent().reach)
  const y = (z: number): number => TOP + (extent().high - z) * per()
  const across = (out: number): number => LEFT + out * per()
  // the nose is seen from the left, its tip to the right of the sheet as the section's own half is
  const along = (out: number): number => LEFT + extent().half * per() + gap + out * per()
  const height = (): number => y(extent().low) + FOOT
  const tick = (): number => (units() === 'inch' ? 10 * INCH : 0.2)
  const levels = (): readonly number[] =>
    Array.from(
      { length: Math.floor(extent().high / tick()) - Math.ceil(extent().low / tick()) + 1 },
      (_, i) => (Math.ceil(extent().low / tick()) + i) * tick(),
    )
  const tape = (metres: number): string => (metres / (units() === 'inch' ? INCH : 0.001)).toFixed(0)
  return (
    <div ref={frame} class="curves">
      <svg role="img" aria-label="Half section and profile; their points are in the table" width={width()} height={height()}>
        <For each={levels()}>
          {(z) => (
            <>
              <line class={Math.abs(z) < 1e-9 ? 'limit' : 'grid'} x1={LEFT} x2={width() - RIGHT} y1={y(z)} y2={y(z)} />
              <text class="faint" x={LEFT - 6} y={y(z) + 4} text-anchor="end">
                {tape(z)}
              </text>
            </>
          )}
        </For>
        <line class="centre" x1={across(0)} x2={across(0)} y1={TOP} y2={y(extent().low)} />
        <line class="centre" x1={along(0)} x2={along(0)} y1={TOP} y2={y(extent().low)} />
        <path class="line" d={pathOf(props.lines.mould, across, y)} />
        <path class="dashed" d={pathOf(props.lines.inner, across, y)} />
        <path class="line" d={pathOf(props.lines.profile, along, y)} />
        <For each={props.lines.rows}>
          {(each, i) => (
            <g class={i() === row() ? 'point chosen' : 'point'} onPointerDown={() => choose(i(), each)}>
              <path d={`M${across(each.y)} ${y(each.z)}l${(each.out[0] * 9).toFixed(2)} ${(-each.out[1] * 9).toFixed(2)}`} />
              <circle cx={across(each.y)} cy={y(each.z)} r={i() === row() ? 5 : each.name === null ? 1.8 : 3} />
            </g>
          )}
        </For>
        <text x={across(0)} y={height() - 6}>
          half section
        </text>
        <text x={along(0)} y={height() - 6}>
          profile from the joint
        </text>
      </svg>
    </div>
  )
}

function Points(props: { readonly lines: LinesFigure }) {
  const isInner = (): boolean => props.lines.inner.length > 0
  return (
    <table class="figures-table">
      <thead>
        <tr>
          <th scope="col">Place</th>
          <th scope="col" class="number">
            Girth, {props.lines.unit}
          </th>
          <Show when={isInner()}>
            <th scope="col" class="number">
              on it
            </th>
          </Show>
          <th scope="col" class="number">
            BL
          </th>
          <th scope="col" class="number">
            WL
          </th>
          <th scope="col" class="number">
            Normal, ° up
          </th>
        </tr>
      </thead>
      <tbody>
        <For each={props.lines.rows}>
          {(each, i) => (
            <tr class={i() === row() ? 'chosen' : ''} onPointerDown={() => choose(i(), each)}>
              <th scope="row">
                <Show when={each.working} fallback={<span class="faint">at the step</span>}>
                  {(id) => (
                    <button
                      type="button"
                      class="link"
                      aria-expanded={isOpened(id())}
                      onFocus={() => choose(i(), each)}
                      onClick={() => openFigure(id())}
                    >
                      {each.name}
                    </button>
                  )}
                </Show>
              </th>
              <td class="number">{each.girth}</td>
              <Show when={isInner()}>
                <td class="number">{each.own}</td>
              </Show>
              <td class="number">{each.buttock}</td>
              <td class="number">{each.waterline}</td>
              <td class="number">{each.normal}</td>
            </tr>
          )}
        </For>
      </tbody>
    </table>
  )
}
