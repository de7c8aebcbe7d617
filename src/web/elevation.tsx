/** The elevation: the map of the coach. Wheel and pinch zoom, dragging pans or moves a thing, arrow keys nudge what is chosen. */
import { createEffect, createMemo, createSignal, lazy, on, onCleanup, onMount, Show, Suspense } from 'solid-js'
import { letterOfSide } from '../definition/sides.js'
import { boxRound } from '../desk/box.js'
import type { Drawn, Look } from '../desk/nouns.js'
import { elevation, hand, lit, look, selected, state } from './desk.js'
import { ElevationBar, SHOWN } from './elevation-bar.jsx'
import { handsOn } from './elevation-hands.js'
import { type Inks, type Marked, paint } from './paint.js'
import { type Anchor, type At, createPlaceNote, Slip } from './slip.js'
import { inSpace, setInSpace } from './space/opened.js'
import { dark } from './theme.js'
import { broughtTo, fitted, toX, toY, type View } from './view.js'

/** Loaded when somebody looks: the first screen does without. */
const SpaceView = lazy(async () => ({ default: (await import('./space/space-view.jsx')).SpaceView }))

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
    canvas.addEventListener('wheel', hands.wheeled, { passive: false })
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
    // lines and dots are drawn as fast without a graphics card, and ten times as fast as where one is only imitated
    const context = canvas.getContext('2d', { willReadFrequently: true })
    if (!context) return
    context.setTransform(ratio, 0, 0, ratio, 0, 0)
    paint(context, { width, height }, drawing, at, marked, inks)
    // for whoever measures how long a first look takes
    if (performance.getEntriesByName(FIRST).length === 0) performance.mark(FIRST)
  })

  const hands = handsOn({
    ...{ canvas: () => canvas, view, setView, chosen, layers, isSnapping },
    ...{ setHovered, setPointed, setHolding, fitAll },
  })
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
      <ElevationBar {...{ looks, layers, setLayers, isSnapping, setSnapping, fitAll }} />
      {/* biome-ignore lint/a11y/noInteractiveElementToNoninteractiveRole: the drawing is moved about by keys of its own, and says so */}
      <canvas
        ref={canvas}
        tabindex="0"
        role="application"
        aria-label={`Elevation, ${looks().find(([id]) => id === look())?.[1]}. Arrow keys move what is chosen by 1 mm, with shift by ${pitchWords()}; Escape puts back what is being dragged; plus, minus and 0 zoom. Choose things in the list below.`}
        onPointerDown={hands.pressed}
        onPointerMove={hands.moved}
        onPointerUp={hands.released}
        onPointerCancel={hands.lost}
        onPointerLeave={(event) => {
          setHovered(null)
          if (event.pointerType === 'mouse') setPointed(null)
        }}
        onKeyDown={hands.pressedKey}
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

const FIRST = 'coach first drawn'

/** The colours as the sheet of styles has them, asked again when it turns dark. */
function inksOf(_isDark: boolean): Inks {
  const style = getComputedStyle(document.documentElement)
  const colour = (name: string): string => style.getPropertyValue(name).trim()
  return { ink: colour('--ink'), faint: colour('--faint'), accent: colour('--accent'), paper: colour('--paper') }
}
