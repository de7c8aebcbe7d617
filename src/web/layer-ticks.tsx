/** A tick for each layer of a picture of the coach, on paper or in space. */
import { type Accessor, For, type Setter } from 'solid-js'

export function LayerTicks<Layer extends string>(props: {
  readonly all: readonly Layer[]
  readonly layers: Accessor<ReadonlySet<Layer>>
  readonly setLayers: Setter<ReadonlySet<Layer>>
}) {
  const tick = (layer: Layer, isShown: boolean): void => {
    const next = new Set(props.layers())
    if (isShown) next.add(layer)
    else next.delete(layer)
    props.setLayers(() => next)
  }
  return (
    <For each={props.all}>
      {(layer) => (
        <label class="tick">
          <input type="checkbox" checked={props.layers().has(layer)} onChange={(event) => tick(layer, event.currentTarget.checked)} />
          {layer}
        </label>
      )}
    </For>
  )
}
