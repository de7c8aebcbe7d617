/** What the colours of the picture mean: a scale with its figures, or a name for each wash. */
import { For, Show } from 'solid-js'
import type { Legend } from '../../desk/space/colour.js'
import { cssOf, type SpaceInks } from './inks.js'

export function LegendView(props: { readonly legend: Legend; readonly inks: SpaceInks }) {
  const scale = (): string => `linear-gradient(to right, ${props.inks.ramp.map(cssOf).join(', ')})`
  return (
    <figure class="legend">
      <figcaption>{props.legend.says}</figcaption>
      <Show when={props.legend.marks.length > 0}>
        <div class="scale" style={{ background: scale() }} />
        <div class="marks">
          <For each={props.legend.marks}>{({ at, says }) => <span style={{ left: `${100 * at}%` }}>{says}</span>}</For>
        </div>
      </Show>
      <ul>
        <For each={props.legend.kinds}>
          {(name, i) => (
            <li>
              <span class="wash" style={{ background: cssOf(props.inks.kinds[i() % props.inks.kinds.length]) }} />
              {name}
            </li>
          )}
        </For>
        <Show when={props.legend.none}>
          <li>
            <span class="wash none" />
            {props.legend.none}
          </li>
        </Show>
      </ul>
    </figure>
  )
}
