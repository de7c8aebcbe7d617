/** Hands and keys on the picture: one finger turns, two or the shift key slide, wheel and pinch zoom, a tap chooses. */
import { slidBy, type Turned, turnedBy, zoomedBy } from '../../desk/space/turned.js'

export interface Steered {
  readonly at: () => Turned | null
  readonly set: (at: Turned) => void
  readonly fitAll: () => void
  /** a place in pixels from the upper left corner */
  readonly pick: (x: number, y: number) => void
}

/** rad for a pixel, and for a press of a key: the coach turns once in a little more than the width of a desk's screen */
const [PER_PIXEL, PER_KEY] = [0.006, Math.PI / 36] as const
/** Pixels a finger may stray and still tap. */
const STILL = 5

const KEYS: Readonly<Record<string, readonly [yaw: number, pitch: number]>> = {
  ArrowLeft: [1, 0],
  ArrowRight: [-1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
}

export function steered(canvas: HTMLCanvasElement, { at, set, fitAll, pick }: Steered): void {
  const change = (by: (now: Turned) => Turned): void => {
    const now = at()
    if (now) set(by(now))
  }
  const place = (event: MouseEvent): readonly [number, number] => {
    const box = canvas.getBoundingClientRect()
    return [event.clientX - box.left, event.clientY - box.top]
  }
  const zoomAt = ([x, y]: readonly [number, number], by: number): void =>
    change((now) => zoomedBy(now, by, x - canvas.clientWidth / 2, canvas.clientHeight / 2 - y))

  const fingers = new Map<number, readonly [number, number]>()
  let strayed = 0
  canvas.addEventListener('pointerdown', (event) => {
    canvas.setPointerCapture(event.pointerId)
    fingers.set(event.pointerId, place(event))
    strayed = fingers.size > 1 ? Number.POSITIVE_INFINITY : 0
  })
  canvas.addEventListener('pointermove', (event) => {
    const was = fingers.get(event.pointerId)
    if (!was) return
    const here = place(event)
    const [dx, dy] = [here[0] - was[0], here[1] - was[1]]
    const other = [...fingers].find(([id]) => id !== event.pointerId)?.[1]
    fingers.set(event.pointerId, here)
    strayed += Math.hypot(dx, dy)
    if (other) {
      const [before, now] = [Math.hypot(was[0] - other[0], was[1] - other[1]), Math.hypot(here[0] - other[0], here[1] - other[1])]
      change((turned) => slidBy(turned, dx / 2, dy / 2))
      if (before > 0) zoomAt([(here[0] + other[0]) / 2, (here[1] + other[1]) / 2], now / before)
    } else if (strayed > STILL) change((now) => (event.shiftKey ? slidBy(now, dx, dy) : turnedBy(now, -dx * PER_PIXEL, dy * PER_PIXEL)))
  })
  canvas.addEventListener('pointerup', (event) => {
    const here = place(event)
    if (fingers.delete(event.pointerId) && strayed <= STILL) pick(...here)
  })
  canvas.addEventListener('pointercancel', (event) => fingers.delete(event.pointerId))
  canvas.addEventListener(
    'wheel',
    (event) => {
      event.preventDefault()
      zoomAt(place(event), Math.exp(-event.deltaY * 0.0015))
    },
    { passive: false },
  )
  canvas.addEventListener('keydown', (event) => {
    const turn = KEYS[event.key]
    const middle = [canvas.clientWidth / 2, canvas.clientHeight / 2] as const
    if (turn) change((now) => turnedBy(now, turn[0] * PER_KEY, turn[1] * PER_KEY))
    else if (event.key === '0') fitAll()
    else if (event.key === '+' || event.key === '=') zoomAt(middle, 1.25)
    else if (event.key === '-') zoomAt(middle, 0.8)
    else return
    event.preventDefault()
  })
}
