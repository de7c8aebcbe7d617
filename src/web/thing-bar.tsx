/** What is chosen, with fields that take what the tape says: the same moves as by dragging, for hands on the keyboard. */
import { createMemo, For, Show } from 'solid-js'
import { edit, elevation, select, selected } from './desk.js'
import { centreOf } from './paint.js'

export function ThingBar() {
  const things = createMemo(() => elevation()?.drawn.filter((each) => each.id !== null && each.moves !== null) ?? [])
  const chosen = createMemo(() => things().find((each) => each.id === selected()) ?? null)
  const mm = (v: number): string => String(Number((v * 1000).toFixed(1)))
  const written = (text: string): number | null => {
    const value = Number(text.replace(/\s*mm$/, '').replace(',', '.'))
    return text.trim() !== '' && Number.isFinite(value) ? value / 1000 : null
  }
  const move = (station: number | null, waterline: number | null): void => {
    const thing = chosen()
    if (!thing?.id) return
    edit({ kind: 'move', id: thing.id, station: station ?? centreOf(thing)[0], waterline })
  }
  return (
    <div class="thing">
      <label>
        Thing
        <select id="thing" onChange={(event) => select(event.currentTarget.value || null)}>
          <option value="" selected={chosen() === null}>
            none chosen
          </option>
          <For each={things()}>
            {(each) => (
              <option value={each.id ?? ''} selected={each.id === selected()}>
                {each.says}
              </option>
            )}
          </For>
        </select>
      </label>
      <Show when={chosen()}>
        {(thing) => (
          <>
            <label>
              Station, mm
              <input
                id="station"
                inputmode="decimal"
                value={mm(centreOf(thing())[0])}
                onChange={(event) => {
                  const to = written(event.currentTarget.value)
                  if (to !== null) move(to, null)
                  else event.currentTarget.value = mm(centreOf(thing())[0])
                }}
              />
            </label>
            <Show when={thing().moves === 'both'}>
              <label>
                Waterline, mm
                <input
                  id="waterline"
                  inputmode="decimal"
                  value={mm(centreOf(thing())[1])}
                  onChange={(event) => {
                    const to = written(event.currentTarget.value)
                    if (to !== null) move(null, to)
                    else event.currentTarget.value = mm(centreOf(thing())[1])
                  }}
                />
              </label>
            </Show>
          </>
        )}
      </Show>
    </div>
  )
}
