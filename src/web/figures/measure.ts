/** How wide a figure may be: drawings are laid out in pixels, so that their lettering keeps its size. */
import { type Accessor, createSignal, onCleanup, onMount } from 'solid-js'

export function createWidth(element: () => HTMLElement, first = 760): Accessor<number> {
  const [width, setWidth] = createSignal(first)
  onMount(() => {
    const watcher = new ResizeObserver(([entry]) => setWidth(Math.max(280, Math.floor(entry.contentRect.width))))
    watcher.observe(element())
    onCleanup(() => watcher.disconnect())
  })
  return width
}

/** x, y, x, y … as the path of a line. */
export function pathOf(points: readonly number[], x: (value: number) => number, y: (value: number) => number, isClosed = false): string {
  let d = ''
  for (let i = 0; i + 1 < points.length; i += 2) d += `${i === 0 ? 'M' : 'L'}${x(points[i]).toFixed(2)} ${y(points[i + 1]).toFixed(2)}`
  return isClosed && d ? `${d}Z` : d
}
