/** The elevation: the map of the coach. Wheel and pinch zoom, dragging pans or moves a thing, arrow keys nudge what is chosen. */
import { createEffect, createMemo, createSignal, For, lazy, on, onCleanup, onMount, Show, Suspense } from 'solid-js'
import { letterOfSide } from '../definition/sides.js'
import { boxRound } from '../desk/box.js'
import type { Drawn, Look } from '../desk/nouns.js'
import { abandon, edit, elevation, hand, lit, look, preview, select, selected, setLit, setLook, settle, state, units } from './desk.js'
import { editOf, type Grip, gripAt, isStill, pinched, pushed, pushOf, reachOf } from './gesture.js'
import { cursorOf } from './handles.js'
import { type Inks, type Marked, paint, thingAt } from './paint.js'
import { type Anchor, type At, createPlaceNote, Slip } from './slip.js'
import { inSpace, setInSpace } from './space/opened.js'
import { dark } from './theme.js'
import { broughtTo, fitted, fromX, fromY, toX, toY, type View, zoomed } from './view.js'

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
  const [pointed, setPointed] = createSignal<At | null>(null)
  const [isSnapping, setSnapping] = createSignal(true)
  const [isHolding, setHolding] = createSignal(false)
  // nobody asks what is under a thing that is in the hand
  const note = createPlaceNote(() => (isHolding() ? null : pointed()))
  const chosen = createMemo(() => elevation()?.drawn.find((each) => each.id !== null && each.id === selected()) ?? null)
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
    if (drawing && size().width >= 1) setView(fitted(drawing, size().width, size().height))
  }

  onMount(() => {
    const watcher = new ResizeObserver(([entry]) => {
      setSize({ width: entry.contentRect.width, height: entry.contentRect.height })
      fitAll()
    })
    watcher.observe(canvas)
    onCleanup(() => watcher.disconnect())
    canvas.addEventListener('wheel', wheeled, { passive: false })
  })
  // another look or another coach is fitted; an edit leaves the view where it is
  const shown = createMemo(() => `${elevation()?.look} ${state()?.file}`)
  createEffect(on(shown, fitAll))
  // what was asked for comes into sight
  createEffect(
    on(lit, (at) => {
      const now = view()
      if (at && now && at.look === elevation()?.look) setView(broughtTo(now, at.x, at.y, size().width, size().height))
    }),
  )
  // a place that is asked for lies on an elevation
  createEffect(() => lit() && setInSpace(false))
  createEffect(() => {
    const [drawing, at, marked] = [
      elevation(),
      view(),
      { selected: selected(), hovered: hovered()?.id ?? null, lit: lit(), layers: layers(), snaps: hand()?.snaps ?? [] },
    ]
    const { width, height } = size()
    const ratio = devicePixelRatio || 1
    const inks = inksOf(dark())
    // while the coach stands in space there is no paper to draw on
    if (!drawing || !at || width < 1 || height < 1) return
    if (canvas.width !== Math.round(width * ratio)) canvas.width = Math.round(width * ratio)
    if (canvas.height !== Math.round(height * ratio)) canvas.height = Math.round(height * ratio)
    const context = canvas.getContext('2d')
    if (!context) return
    context.setTransform(ratio, 0, 0, ratio, 0, 0)
    paint(context, { width, height }, drawing, at, marked, inks)
  })

  // a line said above the drawing moves it down: under a hand that holds something it stays where it was
  let held: DOMRect | null = null
  const place = (event: MouseEvent): readonly [number, number] => {
    const box = held ?? canvas.getBoundingClientRect()
    return [event.clientX - box.left, event.clientY - box.top]
  }
  const zoomAt = (px: number, py: number, by: number): void => {
    const at = view()
    if (at) setView(zoomed(at, px, py, by))
  }
  function wheeled(event: WheelEvent): void {
    event.preventDefault()
    const [px, py] = place(event)
    zoomAt(px, py, Math.exp(-event.deltaY * 0.0015))
  }
  const pointAt = (px: number, py: number): void => {
    const at = view()
    if (at) setPointed({ px, py, x: fromX(at, px), y: fromY(at, py) })
  }

  const fingers = new Map<number, readonly [number, number]>()
  let grip: Grip | null = null
  let hasMoved = false

  function pressed(event: PointerEvent): void {
    const [drawing, at] = [elevation(), view()]
    if (!drawing || !at) return
    canvas.setPointerCapture(event.pointerId)
    held ??= canvas.getBoundingClientRect()
    const here = place(event)
    fingers.set(event.pointerId, here)
    strokes++
    const thing = thingAt(drawing, at, here, layers(), selected())
    grip = gripAt(at, here, chosen(), thing, `drag ${strokes}`)
    setLit(null)
    setPointed(null)
    if (!grip.handle) select(thing?.id ?? null)
  }
  function moved(event: PointerEvent): void {
    const [drawing, at] = [elevation(), view()]
    if (!drawing || !at) return
    const here = place(event)
    const was = fingers.get(event.pointerId)
    if (fingers.size === 2 && was) {
      const [other] = [...fingers].filter(([finger]) => finger !== event.pointerId).map(([, each]) => each)
      fingers.set(event.pointerId, here)
      setView(pinched(at, other, was, here))
      drop()
      return
    }
    if (!grip) {
      hover(at, here)
      return
    }
    if (isStill(grip, here) && !hasMoved) return
    hasMoved = true
    setHolding(true)
    const snap = isSnapping() && !event.altKey ? { reach: reachOf(at), units: units() } : null
    const change = editOf(grip, { look: drawing.look, at: here, snap })
    if (!change) {
      setView(pushed(grip, here))
      return
    }
    pointAt(...here)
    preview(change)
  }
  function hover(at: View, here: readonly [number, number]): void {
    const drawing = elevation()
    if (!drawing) return
    const now = chosen()
    const handle = now ? gripAt(at, here, now, null, '').handle : null
    const thing = handle ? now : thingAt(drawing, at, here, layers(), selected())
    canvas.style.cursor = handle ? cursorOf(handle, at.mirror) : thing?.moves ? 'move' : 'default'
    setHovered(thing)
    pointAt(...here)
  }
  /** Lets go without a word: what was moved goes back. */
  function drop(): void {
    if (hasMoved && grip?.thing) abandon()
    letGo()
  }
  function letGo(): void {
    grip = null
    held = null
    hasMoved = false
    setHolding(false)
  }
  function released(event: PointerEvent): void {
    fingers.delete(event.pointerId)
    const [had, has] = [grip, hasMoved]
    letGo()
    if (has && had?.thing) settle()
    // a tap asks what is there, as a pointer does that rests
    else if (had && !has) pointAt(...place(event))
    if (has) setPointed(null)
  }

  function pressedKey(event: KeyboardEvent): void {
    const thing = chosen()
    const step = NUDGES[event.key]
    if (event.key === 'Escape') drop()
    else if (event.key === '0') fitAll()
    else if (event.key === '+' || event.key === '=') zoomAt(size().width / 2, size().height / 2, 1.25)
    else if (event.key === '-') zoomAt(size().width / 2, size().height / 2, 0.8)
    else if (!step) return
    else if (thing?.id && thing.moves) nudge(thing, step, event.shiftKey ? (thing.pitch ?? CENTIMETRE) : MM)
    else panBy(step)
    event.preventDefault()
  }
  const panBy = ([x, y]: readonly [number, number]): void => {
    const at = view()
    if (at) setView({ ...at, x0: at.x0 - 40 * x, y0: at.y0 + 40 * y })
  }
  function nudge(thing: Drawn, [x, y]: readonly [number, number], by: number): void {
    const at = view()
    if (at && thing.id) edit({ kind: 'nudge', id: thing.id, ...pushOf(thing, look(), [at.mirror * x, y], by) })
  }
  /** The note stands beside the thing in the hand, or else beside the pointer; below the bar over the drawing. */
  const anchor = (): Anchor | null => {
    const [at, here, held] = [view(), pointed(), hand()]
    const thing = held && elevation()?.drawn.find((each) => each.id === held.id)
    if (!at || !here) return null
    const above = canvas.offsetTop
    // a frame or a lap is as long as the coach: of those the pointer says where
    if (!thing?.closed) return { left: here.px, right: here.px, top: above + here.py + 16 }
    const { x0, x1, y1 } = boxRound([thing.points])
    const [a, b] = [toX(at, x0), toX(at, x1)]
    return { left: Math.min(a, b), right: Math.max(a, b), top: above + Math.max(0, toY(at, y1)) }
  }
  const pitchWords = (): string => {
    const pitch = chosen()?.pitch
    return pitch ? `the pitch of its row, ${Number((pitch * 1000).toFixed(1))} mm` : '10 mm, or the pitch of its row'
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
          <label class="tick apart" title="Things are drawn to clean places as they are dragged; Alt held down leaves them free">
            <input type="checkbox" checked={isSnapping()} onChange={(event) => setSnapping(event.currentTarget.checked)} />
            snap
          </label>
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
        aria-label={`Elevation, ${looks().find(([id]) => id === look())?.[1]}. Arrow keys move what is chosen by 1 mm, with shift by ${pitchWords()}; Escape puts back what is being dragged; plus, minus and 0 zoom. Choose things in the list below.`}
        onPointerDown={pressed}
        onPointerMove={moved}
        onPointerUp={released}
        onPointerCancel={(event) => {
          fingers.delete(event.pointerId)
          drop()
        }}
        onPointerLeave={(event) => {
          setHovered(null)
          if (event.pointerType === 'mouse') setPointed(null)
        }}
        onKeyDown={pressedKey}
      />
      <Show when={inSpace()}>
        <Suspense fallback={<p class="missing">Fetching the picture in space …</p>}>
          <SpaceView />
        </Suspense>
      </Show>
      <p class="hover" aria-live="off">
        {[elevation()?.drawn.find((each) => each.id === hovered()?.id && each.id !== null)?.says, note()?.address]
          .filter((each) => each !== undefined)
          .join(': ') || ' '}
      </p>
      <Slip at={inSpace() ? null : anchor()} note={note()} width={size().width} />
    </section>
  )
}

const MM = 0.001
/** what has no row is pushed by this */
const CENTIMETRE = 0.01
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
