/** The elevation: the map of the coach. Wheel and pinch zoom, dragging pans or moves a thing, arrow keys nudge what is chosen. */
import { createEffect, createMemo, createSignal, For, lazy, on, onCleanup, onMount, Show, Suspense } from 'solid-js'
import { letterOfSide } from '../definition/sides.js'
import type { Drawn, Look } from '../desk/nouns.js'
import { edit, elevation, lit, look, preview, select, selected, setLit, setLook, settle, state } from './desk.js'
import { fitted, fromX, fromY, type Inks, type Marked, paint, thingAt, type View } from './paint.js'
import { inSpace, setInSpace } from './space/opened.js'
import { dark } from './theme.js'

const LAYERS: readonly (Drawn['layer'] | 'rivets')[] = ['openings', 'frames', 'seams', 'rivets', 'chassis', 'axles', 'tanks', 'masses']
/** Masses are asked for: ninety squares over everything else are not what one looks at first. */
const SHOWN = LAYERS.filter((layer) => layer !== 'masses')

/** Loaded when somebody looks: the first screen does without. */
const SpaceView = lazy(async () => ({ default: (await import('./space/space-view.jsx')).SpaceView }))

let strokes = 0

export function ElevationView() {
  let canvas!: HTMLCanvasElement
  const [size, setSize] = createSignal({ width: 800, height: 260 })
  const [view, setView] = createSignal<View | null>(null)
  const [hovered, setHovered] = createSignal<Drawn | null>(null)
  const [layers, setLayers] = createSignal<Marked['layers']>(new Set(SHOWN))
  // the letters of the sides go by the traffic of the market
  const looks = createMemo((): readonly (readonly [Look, string])[] => {
    const side = (of: 'left' | 'right'): string => (letterOfSide(of, state()?.market ?? 'us') === 'C' ? 'Curb side' : 'Road side')
    return [
      ['left', side('left')],
      ['right', side('right')],
      ['plan', 'Plan'],
      ['nose', 'Nose'],
      ['tail', 'Tail'],
    ]
  })
  const fitAll = (): void => {
    const drawing = elevation()
    if (drawing) setView(fitted(drawing, size().width, size().height))
  }

  onMount(() => {
    const watcher = new ResizeObserver(([entry]) => {
      setSize({ width: entry.contentRect.width, height: entry.contentRect.height })
      fitAll()
    })
    watcher.observe(canvas)
    onCleanup(() => watcher.disconnect())
    canvas.addEventListener('wheel', zoomed, { passive: false })
  })
  // another look or another coach is fitted; an edit leaves the view where it is
  const shown = createMemo(() => `${elevation()?.look} ${state()?.file}`)
  createEffect(on(shown, fitAll))
  // a place that is asked for lies on an elevation
  createEffect(() => lit() && setInSpace(false))
  createEffect(() => {
    const [drawing, at, marked] = [
      elevation(),
      view(),
      { selected: selected(), hovered: hovered()?.id ?? null, lit: lit(), layers: layers() },
    ]
    const { width, height } = size()
    const ratio = devicePixelRatio || 1
    const inks = inksOf(dark())
    if (!drawing || !at) return
    if (canvas.width !== Math.round(width * ratio)) canvas.width = Math.round(width * ratio)
    if (canvas.height !== Math.round(height * ratio)) canvas.height = Math.round(height * ratio)
    const context = canvas.getContext('2d')
    if (!context) return
    context.setTransform(ratio, 0, 0, ratio, 0, 0)
    paint(context, { width, height }, drawing, at, marked, inks)
  })

  const place = (event: MouseEvent): readonly [number, number] => {
    const box = canvas.getBoundingClientRect()
    return [event.clientX - box.left, event.clientY - box.top]
  }
  const zoomAt = (px: number, py: number, by: number): void => {
    const at = view()
    if (!at) return
    const perMetre = Math.min(4000, Math.max(10, at.perMetre * by))
    const k = perMetre / at.perMetre
    setView({ ...at, perMetre, x0: px + (at.x0 - px) * k, y0: py + (at.y0 - py) * k })
  }
  function zoomed(event: WheelEvent): void {
    event.preventDefault()
    const [px, py] = place(event)
    zoomAt(px, py, Math.exp(-event.deltaY * 0.0015))
  }

  let hasMoved = false
  const fingers = new Map<number, readonly [number, number]>()
  let drag: {
    readonly thing: Drawn | null
    readonly from: readonly [number, number]
    readonly view: View
    readonly stroke: string
  } | null = null

  function pressed(event: PointerEvent): void {
    const [drawing, at] = [elevation(), view()]
    if (!drawing || !at) return
    canvas.setPointerCapture(event.pointerId)
    fingers.set(event.pointerId, place(event))
    const [px, py] = place(event)
    const thing = thingAt(drawing, at, px, py, layers())
    setLit(null)
    select(thing?.id ?? null)
    strokes++
    drag = {
      thing: thing?.moves ? thing : null,
      from: [px, py],
      view: at,
      stroke: `drag ${strokes}`,
    }
  }
  function moved(event: PointerEvent): void {
    const [drawing, at] = [elevation(), view()]
    if (!drawing || !at) return
    const [px, py] = place(event)
    if (fingers.size === 2 && fingers.has(event.pointerId)) {
      pinched(event.pointerId, px, py)
      return
    }
    if (!drag) {
      setHovered(thingAt(drawing, at, px, py, layers()))
      return
    }
    const { thing, from, view: began, stroke } = drag
    if (!thing?.id || !thing.place) {
      setView({ ...began, x0: began.x0 + px - from[0], y0: began.y0 + py - from[1] })
      return
    }
    if (Math.hypot(px - from[0], py - from[1]) < 3) return
    const mm = (v: number): number => Math.round(v * 1000) / 1000
    const station = mm(thing.place.station + fromX(at, px) - fromX(at, from[0]))
    const waterline = thing.place.waterline === null ? null : mm(thing.place.waterline + fromY(at, py) - fromY(at, from[1]))
    // a drag along the coach keeps its waterline until it plainly leaves it
    const isLevel = Math.abs(py - from[1]) < 8
    hasMoved = true
    preview({ kind: 'move', id: thing.id, station, waterline: isLevel ? null : waterline, stroke })
  }
  function pinched(id: number, px: number, py: number): void {
    const [[other]] = [...fingers].filter(([finger]) => finger !== id).map(([, at]) => [at] as const)
    const was = fingers.get(id)
    fingers.set(id, [px, py])
    if (!was || !other) return
    const [before, now] = [Math.hypot(was[0] - other[0], was[1] - other[1]), Math.hypot(px - other[0], py - other[1])]
    if (before > 0) zoomAt((px + other[0]) / 2, (py + other[1]) / 2, now / before)
    drag = null
  }
  function released(event: PointerEvent): void {
    fingers.delete(event.pointerId)
    drag = null
    if (hasMoved) settle()
    hasMoved = false
  }

  function pressedKey(event: KeyboardEvent): void {
    const thing = elevation()?.drawn.find((each) => each.id !== null && each.id === selected())
    const step = NUDGES[event.key]
    if (event.key === '0') fitAll()
    else if (event.key === '+' || event.key === '=') zoomAt(size().width / 2, size().height / 2, 1.25)
    else if (event.key === '-') zoomAt(size().width / 2, size().height / 2, 0.8)
    else if (!step) return
    else if (thing?.id && thing.moves) nudge(thing.id, step, event.shiftKey ? PITCH : MM)
    else panBy(step)
    event.preventDefault()
  }
  const panBy = ([x, y]: readonly [number, number]): void => {
    const at = view()
    if (at) setView({ ...at, x0: at.x0 - 40 * x, y0: at.y0 + 40 * y })
  }
  function nudge(id: string, [x, y]: readonly [number, number], by: number): void {
    const at = view()
    if (at) edit({ kind: 'nudge', id, along: at.mirror * x * by, up: y * by })
  }

  return (
    <section class="elevation" classList={{ 'in-space': inSpace() }} aria-label="Elevation">
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
          <For each={LAYERS}>
            {(layer) => (
              <label class="tick">
                <input
                  type="checkbox"
                  checked={layers().has(layer)}
                  onChange={(event) => {
                    const next = new Set(layers())
                    if (event.currentTarget.checked) next.add(layer)
                    else next.delete(layer)
                    setLayers(next)
                  }}
                />
                {layer}
              </label>
            )}
          </For>
          <button type="button" onClick={fitAll}>
            Fit
          </button>
        </Show>
      </div>
      {/* biome-ignore lint/a11y/noInteractiveElementToNoninteractiveRole: the drawing is moved about by keys of its own, and says so */}
      <canvas
        ref={canvas}
        tabindex="0"
        role="application"
        aria-label={`Elevation, ${looks().find(([id]) => id === look())?.[1]}. Arrow keys move what is chosen by 1 mm, with shift by 25.4 mm; plus, minus and 0 zoom. Choose things in the list below.`}
        onPointerDown={pressed}
        onPointerMove={moved}
        onPointerUp={released}
        onPointerCancel={released}
        onPointerLeave={() => setHovered(null)}
        onKeyDown={pressedKey}
      />
      <Show when={inSpace()}>
        <Suspense fallback={<p class="missing">Fetching the picture in space …</p>}>
          <SpaceView />
        </Suspense>
      </Show>
      <p class="hover" aria-live="off">
        {hovered()?.says ?? ' '}
      </p>
    </section>
  )
}

const MM = 0.001
const PITCH = 0.0254
const NUDGES: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
}

/** The colours as the sheet of styles has them, asked again when it turns dark. */
function inksOf(_isDark: boolean): Inks {
  const style = getComputedStyle(document.documentElement)
  const colour = (name: string): string => style.getPropertyValue(name).trim()
  return { ink: colour('--ink'), faint: colour('--faint'), accent: colour('--accent'), paper: colour('--paper') }
}
