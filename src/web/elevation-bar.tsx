/** How the coach is looked at: which side, which layers, whether what is dragged snaps. */
import { type Accessor, For, type Setter, Show } from 'solid-js'
import type { Drawn, Look } from '../desk/nouns.js'
import { look, setLook } from './desk.js'
import { LayerTicks } from './layer-ticks.jsx'
import type { Marked } from './paint.js'
import { inSpace, setInSpace } from './space/opened.js'

const LAYERS: readonly (Drawn['layer'] | 'rivets')[] = ['openings', 'frames', 'seams', 'rivets', 'chassis', 'axles', 'tanks', 'masses']
/** Masses are asked for: ninety squares over everything else are not what one looks at first. */
export const SHOWN = LAYERS.filter((layer) => layer !== 'masses')

export interface ElevationBarProps {
  readonly looks: Accessor<readonly (readonly [Look, string])[]>
  readonly layers: Accessor<Marked['layers']>
  readonly setLayers: Setter<Marked['layers']>
  readonly isSnapping: Accessor<boolean>
  readonly setSnapping: Setter<boolean>
  readonly fitAll: () => void
}

export function ElevationBar({ looks, layers, setLayers, isSnapping, setSnapping, fitAll }: ElevationBarProps) {
  return (
    <div class="bar" role="toolbar" aria-label="How the coach is looked at">
      <For each={looks()}>
        {([id, says]) => (
          <button
            type="button"
            aria-pressed={!inSpace() && look() === id}
            onClick={() => {
              setInSpace(false)
              setLook(id)
            }}
          >
            {says}
          </button>
        )}
      </For>
      <button type="button" aria-pressed={inSpace()} onClick={() => setInSpace(true)}>
        In space
      </button>
      <span class="gap" />
      <Show when={!inSpace()}>
        <LayerTicks {...{ all: LAYERS, layers, setLayers }} />
        <label class="tick apart" title="Things are drawn to clean places as they are dragged; Alt held down leaves them free">
          <input type="checkbox" checked={isSnapping()} onChange={(event) => setSnapping(event.currentTarget.checked)} />
          snap
        </label>
        <button type="button" onClick={fitAll}>
          Fit
        </button>
      </Show>
    </div>
  )
}
