/** How the coach is shown in space: how far apart, where it is cut, what it is coloured by. */
import { type Accessor, For, type Setter, Show } from 'solid-js'
import type { ColourBy } from '../../desk/space/colour.js'
import type { CutWay } from '../../desk/space/cut.js'
import { sayCut } from '../../desk/space/say.js'
import { units } from '../desk.js'

const COLOURS: readonly (readonly [ColourBy, string])[] = [
  ['plain', 'plain'],
  ['material', 'material'],
  ['mass', 'mass'],
  ['margin', 'check margin'],
  ['distance', 'distance from the mould line'],
]
const CUTS: readonly CutWay[] = ['along', 'across', 'level']

export interface SpaceBarProps {
  /** share of the way apart */
  readonly apart: Accessor<number>
  readonly setApart: Setter<number>
  readonly way: Accessor<CutWay | null>
  readonly cutBy: (way: CutWay | null) => void
  /** where the cut stands, and from where to where it may, m */
  readonly cutAt: Accessor<number>
  readonly setCutAt: Setter<number>
  readonly range: Accessor<readonly [number, number]>
  readonly setBy: Setter<ColourBy>
  readonly fitAll: () => void
}

export function SpaceBar({ apart, setApart, way, cutBy, cutAt, setCutAt, range, setBy, fitAll }: SpaceBarProps) {
  return (
    <div class="bar" role="toolbar" aria-label="How the coach is shown in space">
      <label>
        Apart
        <input
          type="range"
          id="apart"
          min="0"
          max="100"
          value={100 * apart()}
          onInput={(event) => setApart(event.currentTarget.valueAsNumber / 100)}
        />
      </label>
      <label>
        Cut
        <select id="cut" onChange={(event) => cutBy(CUTS.find((each) => each === event.currentTarget.value) ?? null)}>
          <option value="">not cut</option>
          <For each={CUTS}>{(each) => <option value={each}>{each}</option>}</For>
        </select>
      </label>
      <Show when={way()}>
        {(cut) => (
          <label>
            <span class="figure">{sayCut(cut(), cutAt(), units())}</span>
            <input
              type="range"
              id="cut-at"
              aria-label={`Where the cut stands, ${sayCut(cut(), cutAt(), units())}`}
              min={range()[0]}
              max={range()[1]}
              step="0.005"
              value={cutAt()}
              onInput={(event) => setCutAt(event.currentTarget.valueAsNumber)}
            />
          </label>
        )}
      </Show>
      <label>
        Colour by
        <select id="colour" onChange={(event) => setBy(COLOURS.find(([each]) => each === event.currentTarget.value)?.[0] ?? 'plain')}>
          <For each={COLOURS}>{([each, name]) => <option value={each}>{name}</option>}</For>
        </select>
      </label>
      <span class="gap" />
      <button type="button" onClick={fitAll}>
        Fit
      </button>
    </div>
  )
}
