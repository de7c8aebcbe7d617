/** Hands on the elevation: a press takes hold of a thing or of the paper, a second finger pinches, keys nudge what is chosen. */
import type { Accessor, Setter } from 'solid-js'
import type { Drawn } from '../desk/nouns.js'
import { abandon, edit, elevation, look, preview, select, selected, setLit, settle, units } from './desk.js'
import { editOf, type Grip, gripAt, isStill, pinched, pushed, pushOf, reachOf } from './gesture.js'
import { cursorOf } from './handles.js'
import { type Marked, thingAt } from './paint.js'
import type { At } from './slip.js'
import { fromX, fromY, type View, zoomed } from './view.js'

/** The view the hands are on, and what they change of it. */
export interface HandsOn {
  readonly canvas: () => HTMLCanvasElement
  readonly view: Accessor<View | null>
  readonly setView: (view: View) => void
  readonly chosen: Accessor<Drawn | null>
  readonly layers: Accessor<Marked['layers']>
  readonly isSnapping: Accessor<boolean>
  readonly setHovered: Setter<Drawn | null>
  readonly setPointed: Setter<At | null>
  /** whether something is in the hand and on its way */
  readonly setHolding: Setter<boolean>
  readonly fitAll: () => void
}

export interface Hands {
  readonly pressed: (event: PointerEvent) => void
  readonly moved: (event: PointerEvent) => void
  readonly released: (event: PointerEvent) => void
  readonly lost: (event: PointerEvent) => void
  readonly pressedKey: (event: KeyboardEvent) => void
  readonly wheeled: (event: WheelEvent) => void
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

let strokes = 0

export function handsOn({ canvas, view, setView, chosen, layers, isSnapping, setHovered, setPointed, setHolding, fitAll }: HandsOn): Hands {
  // a line said above the drawing moves it down: under a hand that holds something it stays where it was
  let held: DOMRect | null = null
  const place = (event: MouseEvent): readonly [number, number] => {
    const box = held ?? canvas().getBoundingClientRect()
    return [event.clientX - box.left, event.clientY - box.top]
  }
  const zoomAt = (px: number, py: number, by: number): void => {
    const at = view()
    if (at) setView(zoomed(at, px, py, by))
  }
  const zoomBy = (by: number): void => zoomAt(canvas().clientWidth / 2, canvas().clientHeight / 2, by)
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
    canvas().setPointerCapture(event.pointerId)
    held ??= canvas().getBoundingClientRect()
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
    canvas().style.cursor = handle ? cursorOf(handle, at.mirror) : thing?.moves ? 'move' : 'default'
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

  function lost(event: PointerEvent): void {
    fingers.delete(event.pointerId)
    drop()
  }

  function pressedKey(event: KeyboardEvent): void {
    const thing = chosen()
    const step = NUDGES[event.key]
    if (event.key === 'Escape') drop()
    else if (event.key === '0') fitAll()
    else if (event.key === '+' || event.key === '=') zoomBy(1.25)
    else if (event.key === '-') zoomBy(0.8)
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
  return { pressed, moved, released, lost, pressedKey, wheeled }
}
