/** The coach in space: turned by hand or by keys, drawn apart, cut, coloured. Draws when something has changed and never else. */
import { createEffect, createMemo, createSignal, For, on, onCleanup, onMount, Show } from 'solid-js'
import { type ColourBy, colouring } from '../../desk/space/colour.js'
import { type CutWay, cutPlane, cutRange } from '../../desk/space/cut.js'
import { sayPart, sayShown } from '../../desk/space/say.js'
import { axesOf, fittedTo, START, type Turned } from '../../desk/space/turned.js'
import type { SpaceLayer } from '../../studies/space/nouns.js'
import { select, selected, state, units, worker } from '../desk.js'
import { LayerTicks } from '../layer-ticks.jsx'
import { dark } from '../theme.js'
import { askedWith, type Held, heldWith } from './held.js'
import { onRamp, spaceInks } from './inks.js'
import { LegendView } from './legend.jsx'
import { placesOf } from './places.js'
import { type Picture, pictureOn } from './scene.js'
import { SpaceBar } from './space-bar.jsx'
import { steered } from './steering.js'
import './space.css'

type Layer = SpaceLayer | 'rivets'
const LAYERS: readonly Layer[] = ['skin', 'panes', 'frames', 'rivets', 'lining', 'floor', 'chassis', 'wheels', 'tanks']
/** What lies inside is asked for. */
const SHOWN = LAYERS.filter((layer) => layer !== 'lining')
/** ms after which a hand is taken to rest */
const REST = 150
export function SpaceView() {
  let canvas!: HTMLCanvasElement
  const [picture, setPicture] = createSignal<Picture | null>(null)
  const [isMissing, setMissing] = createSignal(false)
  const [held, setHeld] = createSignal<Held | null>(null)
  const [at, setAt] = createSignal<Turned | null>(null)
  const [size, setSize] = createSignal({ width: 0, height: 0 })
  const [layers, setLayers] = createSignal<ReadonlySet<Layer>>(new Set(SHOWN))
  const [apart, setApart] = createSignal(0)
  const [way, setWay] = createSignal<CutWay | null>(null)
  const [cutAt, setCutAt] = createSignal(0)
  const [by, setBy] = createSignal<ColourBy>('plain')

  const parts = createMemo(() => held()?.parts ?? [])
  const chosen = createMemo(() => parts().filter(({ id, thing }) => selected() !== null && (id === selected() || thing === selected())))
  const range = createMemo(() => {
    const cut = way()
    return cut
      ? cutRange(
          cut,
          parts().map(({ mesh }) => mesh.positions),
        )
      : ([0, 1] as const)
  })
  const inks = createMemo(() => spaceInks(dark()))
  const coloured = createMemo(() => colouring(parts(), by(), units(), held()?.deepest ?? 0))
  /** until a hand moves it, what is shown fills the picture, whatever becomes of either */
  let isFitted = true
  const fitAll = (): void => {
    const { width, height } = size()
    isFitted = true
    if (held() && width > 0) setAt(fittedTo(at() ?? START, placesOf(parts(), layers(), apart()), width, height))
  }

  onMount(() => {
    const made = pictureOn(canvas)
    setPicture(made)
    setMissing(made === null)
    const watcher = new ResizeObserver(([entry]) => {
      setSize({ width: entry.contentRect.width, height: entry.contentRect.height })
      made?.setSize(size().width, size().height, Math.min(2, devicePixelRatio || 1))
      if (isFitted) fitAll()
      draw()
    })
    watcher.observe(canvas)
    onCleanup(() => {
      watcher.disconnect()
      made?.dispose()
    })
    steered(canvas, {
      at,
      set: (next) => {
        isFitted = false
        setAt(next)
      },
      fitAll,
      pick: choose,
    })
  })

  // after an edit only what it changed comes over; one question at a time, and the last one again where more was edited meanwhile
  let isAsking = false
  let isStale = false
  const ask = async (): Promise<void> => {
    isStale = isAsking
    if (isAsking || !state()) return
    isAsking = true
    try {
      const before = held()
      setHeld(heldWith(before, await worker.space(askedWith(before, by() === 'distance'))))
    } finally {
      isAsking = false
      if (isStale) ask()
    }
  }
  createEffect(on([state, () => by() === 'distance'], ask))
  // another coach is fitted anew
  createEffect(
    on(
      () => state()?.file,
      () => {
        isFitted = true
      },
    ),
  )
  createEffect(on([held, apart, layers], () => isFitted && fitAll()))

  createEffect(() => {
    const [now, made] = [held(), picture()]
    if (now && made) made.load(now, layers())
  })
  createEffect(() => {
    const made = picture()
    if (!made) return
    const [washes, { values, legend }, marked] = [inks(), coloured(), new Set(chosen())]
    const of = parts().map((part, i) => {
      const value = values[i]
      const plain = part.layer === 'panes' ? washes.pane : washes.sheet
      const wash = value === null ? plain : by() === 'material' ? washes.kinds[value % washes.kinds.length] : onRamp(washes, value)
      return { ink: wash, isNone: legend !== null && value === null, isChosen: marked.has(part) }
    })
    made.colour(washes, of, legend !== null, by() === 'distance')
  })

  let waiting = 0
  let resting: ReturnType<typeof setTimeout> | undefined
  const drawn = (isOnTheWay: boolean): void => {
    waiting = 0
    const now = at()
    const cut = way()
    if (!now || !held()) return
    const isRough = picture()?.draw(now, apart(), cut ? cutPlane(cut, cutAt(), axesOf(now).ahead) : null, isOnTheWay)
    if (isRough) resting = setTimeout(() => requestAnimationFrame(() => drawn(false)), REST)
  }
  /** Once a frame, however much has changed. */
  const draw = (): void => {
    clearTimeout(resting)
    if (waiting === 0) waiting = requestAnimationFrame(() => drawn(true))
  }
  onCleanup(() => {
    cancelAnimationFrame(waiting)
    clearTimeout(resting)
  })
  createEffect(() => {
    held()
    at()
    apart()
    way()
    cutAt()
    layers()
    coloured()
    inks()
    chosen()
    draw()
  })

  function choose(x: number, y: number): void {
    const number = picture()?.pick(x, y) ?? null
    const part = number === null ? null : parts()[number]
    select(part?.thing ?? null)
    draw()
  }
  const cutBy = (next: CutWay | null): void => {
    setWay(next)
    const [low, high] = range()
    setCutAt((low + high) / 2)
  }

  const says = createMemo(() => {
    const cut = way()
    const rivets = held()?.rivets.radius.length ?? 0
    return sayShown({ layers: layers(), parts: parts(), rivets, apart: apart(), cut: cut && { way: cut, at: cutAt() }, by: by() }, units())
  })
  return (
    <div class="space">
      <SpaceBar {...{ apart, setApart, way, cutBy, cutAt, setCutAt, range, setBy, fitAll }} />
      <Show when={isMissing()}>
        <p class="missing" role="status">
          This browser draws nothing in space, since it has no WebGL 2. Everything is on the elevation and the sheets too.
        </p>
      </Show>
      <div class="stage">
        {/* biome-ignore lint/a11y/noInteractiveElementToNoninteractiveRole: the picture is turned by keys of its own, and says so */}
        <canvas
          ref={canvas}
          class="solid"
          tabindex="0"
          role="application"
          hidden={isMissing()}
          aria-label={`${says()} Arrow keys turn it, plus and minus zoom, 0 fits it. Choose parts in the list beside it.`}
        />
        <Show when={coloured().legend}>{(legend) => <LegendView legend={legend()} inks={inks()} />}</Show>
      </div>
      <div class="part">
        <label>
          Part
          <select id="part" onChange={(event) => select(parts().find(({ id }) => id === event.currentTarget.value)?.thing ?? null)}>
            <option value="" selected={chosen().length === 0}>
              none chosen
            </option>
            <For each={parts()}>
              {({ id, says: name }) => (
                <option value={id} selected={id === chosen()[0]?.id}>
                  {name}
                </option>
              )}
            </For>
          </select>
        </label>
        <span role="status">{chosen()[0] ? sayPart(chosen()[0], units()) : held() ? '' : 'Drawing the coach in space …'}</span>
        <span class="gap" />
        <LayerTicks {...{ all: LAYERS, layers, setLayers }} />
      </div>
    </div>
  )
}
