/** The drawing of a flat pattern: wheel zooms, dragging pans, a touch takes the nearest hole, arrow keys go from hole to hole. */
import { createEffect, createMemo, createSignal, on, onMount, Show } from 'solid-js'
import type { FlatShown } from '../../desk/figures/nouns.js'
import { createWidth, pathOf } from './measure.js'

interface Props {
  readonly flat: FlatShown
  readonly hole: number | null
  readonly choose: (hole: number) => void
}

interface View {
  readonly per: number
  /** where the pattern's 0,0 lies, px */
  readonly x0: number
  readonly y0: number
}

const HEIGHT = 212
const MARGIN = 14
/** A finger's breadth, px. */
const NEAR = 24

export function FlatPicture(props: Props) {
  let frame!: HTMLDivElement
  let svg!: SVGSVGElement
  const width = createWidth(() => frame)
  const fitted = (): View => {
    const { x0, x1, y0, y1 } = props.flat.box
    const per = Math.min((width() - 2 * MARGIN) / (x1 - x0), (HEIGHT - 2 * MARGIN) / (y1 - y0))
    return { per, x0: width() / 2 - ((x0 + x1) / 2) * per, y0: HEIGHT / 2 + ((y0 + y1) / 2) * per }
  }
  const [view, setView] = createSignal<View>({ per: 1, x0: 0, y0: 0 })
  const whole = (): void => void setView(fitted())
  createEffect(on([() => `${props.flat.part} ${props.flat.face}`, width], whole))
  const x = (metres: number): number => view().x0 + metres * view().per
  const y = (metres: number): number => view().y0 - metres * view().per
  const drawn = createMemo(() => ({
    contours: props.flat.contours.map((each) => pathOf(each, x, y, true)).join(''),
    windows: props.flat.windows.map((each) => pathOf(each.outline, x, y, true)).join(''),
    marks: marksOf(props.flat.marks, x, y),
    holes: holesOf(props.flat, view(), x, y),
  }))
  const zoom = (px: number, py: number, by: number): void => {
    const now = view()
    const per = Math.min(20_000, Math.max(fitted().per * 0.8, now.per * by))
    const k = per / now.per
    setView({ per, x0: px + (now.x0 - px) * k, y0: py + (now.y0 - py) * k })
  }
  const place = (event: MouseEvent): readonly [number, number] => {
    const box = svg.getBoundingClientRect()
    return [event.clientX - box.left, event.clientY - box.top]
  }
  onMount(() =>
    svg.addEventListener(
      'wheel',
      (event) => {
        event.preventDefault()
        zoom(...place(event), Math.exp(-event.deltaY * 0.0015))
      },
      { passive: false },
    ),
  )
  let drag: { readonly from: readonly [number, number]; readonly view: View; isFar: boolean } | null = null
  const pressed = (event: PointerEvent): void => {
    svg.setPointerCapture(event.pointerId)
    drag = { from: place(event), view: view(), isFar: false }
  }
  const moved = (event: PointerEvent): void => {
    if (!drag) return
    const [px, py] = place(event)
    const [dx, dy] = [px - drag.from[0], py - drag.from[1]]
    if (Math.hypot(dx, dy) > 4) drag.isFar = true
    if (drag.isFar) setView({ ...drag.view, x0: drag.view.x0 + dx, y0: drag.view.y0 + dy })
  }
  const released = (event: PointerEvent): void => {
    const was = drag
    drag = null
    if (!was || was.isFar) return
    const nearest = holeNear(props.flat, place(event), x, y)
    if (nearest !== null) props.choose(nearest)
  }
  const keys = (event: KeyboardEvent): void => {
    const count = props.flat.x.length
    const by = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key]
    if (by) props.choose(((((props.hole ?? (by > 0 ? -1 : 0)) + by) % count) + count) % count)
    else if (event.key === '+') zoom(width() / 2, HEIGHT / 2, 1.5)
    else if (event.key === '-') zoom(width() / 2, HEIGHT / 2, 1 / 1.5)
    else if (event.key === '0') whole()
    else return
    event.preventDefault()
  }
  return (
    <div
      ref={frame}
      class="plan"
      role="application"
      tabindex="0"
      aria-label={`${props.flat.says}: ${props.flat.holes} holes; arrow keys go from hole to hole, plus and minus zoom, 0 shows the whole`}
      onKeyDown={keys}
    >
      <svg
        ref={svg}
        aria-hidden="true"
        width={width()}
        height={HEIGHT}
        onPointerDown={pressed}
        onPointerMove={moved}
        onPointerUp={released}
        onPointerCancel={() => {
          drag = null
        }}
      >
        <path class="marks" d={drawn().marks} />
        <path class="line" d={drawn().contours} />
        <path class="line" d={drawn().windows} />
        <path class={view().per * 0.003 > 3 ? 'rings' : 'dots'} d={drawn().holes} />
        <Show when={props.hole !== null && props.hole < props.flat.x.length ? props.hole : null} keyed>
          {(which) => (
            <g class="spot">
              <circle cx={x(props.flat.x[which])} cy={y(props.flat.y[which])} r="8" />
              <path
                d={`M${x(props.flat.x[which]) - 14} ${y(props.flat.y[which])}h28M${x(props.flat.x[which])} ${y(props.flat.y[which]) - 14}v28`}
              />
            </g>
          )}
        </Show>
      </svg>
    </div>
  )
}

type Scale = (metres: number) => number

/** Dots of one size while a hole is smaller than a dot, then true circles: all of them one path. */
function holesOf({ x: xs, y: ys, diameter }: FlatShown, { per }: View, x: Scale, y: Scale): string {
  const isRing = per * 0.003 > 3
  let d = ''
  for (let i = 0; i < xs.length; i++) {
    const [px, py] = [x(xs[i]).toFixed(1), y(ys[i]).toFixed(1)]
    const r = ((diameter[i] * per) / 2).toFixed(1)
    d += isRing ? `M${px} ${py}m-${r} 0a${r} ${r} 0 1 0 ${2 * Number(r)} 0a${r} ${r} 0 1 0 -${2 * Number(r)} 0` : `M${px} ${py}h0`
  }
  return d
}

function marksOf(marks: readonly number[], x: Scale, y: Scale): string {
  let d = ''
  for (let i = 0; i < marks.length; i += 4)
    d += `M${x(marks[i]).toFixed(1)} ${y(marks[i + 1]).toFixed(1)}L${x(marks[i + 2]).toFixed(1)} ${y(marks[i + 3]).toFixed(1)}`
  return d
}

function holeNear({ x: xs, y: ys }: FlatShown, [px, py]: readonly [number, number], x: Scale, y: Scale): number | null {
  let [best, least]: [number | null, number] = [null, NEAR]
  for (let i = 0; i < xs.length; i++) {
    const apart = Math.hypot(x(xs[i]) - px, y(ys[i]) - py)
    if (apart < least) [best, least] = [i, apart]
  }
  return best
}
