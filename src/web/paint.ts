/** The elevation painted on a canvas: ink on paper, one accent for what is chosen. Metres to pixels by `View`. */
import { boxRound, middleOf } from '../desk/box.js'
import type { Answer, Drawn, Elevation, SnapShown } from '../desk/nouns.js'
import { paintGuides, paintHandles } from './hand-marks.js'
import { rivetsPainted } from './paint-rivets.js'
import { fromX, fromY, toX, toY, type View } from './view.js'

export interface Inks {
  readonly ink: string
  readonly faint: string
  readonly accent: string
  readonly paper: string
}

export interface Marked {
  readonly selected: string | null
  readonly hovered: string | null
  readonly lit: Answer['at']
  readonly layers: ReadonlySet<Drawn['layer'] | 'rivets'>
  /** clean places a thing in the hand was drawn to */
  readonly snaps: readonly SnapShown[]
}

export function paint(
  context: CanvasRenderingContext2D,
  size: { readonly width: number; readonly height: number },
  drawing: Elevation,
  view: View,
  marked: Marked,
  inks: Inks,
): void {
  context.clearRect(0, 0, size.width, size.height)
  context.lineJoin = 'round'
  if (marked.layers.has('rivets')) rivetsPainted(context, size, drawing.rivets, view, inks)
  for (const drawn of drawing.drawn) {
    const isChosen = drawn.id !== null && drawn.id === marked.selected
    // what is chosen lights up though its layer is off
    if (drawn.layer !== 'skin' && !isChosen && !marked.layers.has(drawn.layer)) continue
    trace(context, drawn, view)
    context.setLineDash(drawn.layer === 'frames' ? [10, 3, 2, 3] : drawn.layer === 'tanks' ? [5, 3] : [])
    context.strokeStyle =
      isChosen || drawn.verdict === 'fail'
        ? inks.accent
        : drawn.layer === 'frames' || drawn.layer === 'seams' || drawn.layer === 'chassis'
          ? inks.faint
          : inks.ink
    context.lineWidth = isChosen ? 3 : drawn.layer === 'skin' ? 1.8 : drawn.id !== null && drawn.id === marked.hovered ? 2.2 : 1
    if (isChosen && drawn.closed) {
      context.globalAlpha = 0.14
      context.fillStyle = inks.accent
      context.fill()
      context.globalAlpha = 1
    }
    context.stroke()
  }
  context.setLineDash([])
  paintNames(context, drawing, view, marked, inks)
  if (drawing.look !== 'nose' && drawing.look !== 'tail') paintTape(context, size, drawing, view, inks)
  const chosen = drawing.drawn.find((each) => each.id !== null && each.id === marked.selected)
  if (chosen) paintHandles(context, chosen, view, inks)
  paintGuides(context, size, marked.snaps, view, inks)
  if (marked.lit?.look === drawing.look) paintLit(context, marked.lit, view, inks)
}

function trace(context: CanvasRenderingContext2D, { points, closed }: Drawn, view: View): void {
  context.beginPath()
  for (let i = 0; i < points.length; i += 2) context.lineTo(toX(view, points[i]), toY(view, points[i + 1]))
  if (closed) context.closePath()
}

function paintNames(context: CanvasRenderingContext2D, drawing: Elevation, view: View, marked: Marked, inks: Inks): void {
  context.font = "12px 'DejaVu Sans Condensed', sans-serif"
  context.textAlign = 'center'
  context.textBaseline = 'middle'
  for (const drawn of drawing.drawn) {
    // the opening a wheel stands in is named by the wheel
    if (drawn.id === null || !NAMED.has(drawn.layer) || !marked.layers.has(drawn.layer) || /^wheel-/.test(drawn.id)) continue
    const box = boxRound([drawn.points])
    const [x, y] = middleOf(box)
    // a name wider than its thing would lie over its neighbours'
    const isPointedAt = drawn.id === marked.selected || drawn.id === marked.hovered
    if (!isPointedAt && context.measureText(drawn.id).width > (box.x1 - box.x0) * view.perMetre) continue
    context.fillStyle = drawn.id === marked.selected || drawn.verdict === 'fail' ? inks.accent : inks.ink
    context.fillText(drawn.id.replace(/^axle-/, 'axle '), toX(view, x), drawn.layer === 'openings' ? toY(view, y) : toY(view, box.y0) - 9)
  }
}

/** What hangs below is named at its foot, clear of what stands before it. */
const NAMED: ReadonlySet<Drawn['layer']> = new Set(['openings', 'axles', 'tanks'])

/** px: a number of the tape with the space beside it, and a stroke with its own */
const [NUMBER_ROOM, STROKE_ROOM] = [60, 4] as const

/** The station scale, as a tape laid along the floor: a stroke each 100 mm and a number each metre or half, fewer where it is seen small. */
function paintTape(
  context: CanvasRenderingContext2D,
  { width, height }: { readonly width: number; readonly height: number },
  drawing: Elevation,
  view: View,
  inks: Inks,
): void {
  const y = height - 22
  const [from, to] = [fromX(view, view.mirror > 0 ? 0 : width), fromX(view, view.mirror > 0 ? width : 0)]
  // tenths of a metre from one number to the next, so that they never touch
  const number = [5, 10, 20, 50, 100].find((tenths) => (tenths / 10) * view.perMetre > NUMBER_ROOM) ?? 200
  context.strokeStyle = inks.ink
  context.fillStyle = inks.ink
  context.lineWidth = 1
  context.beginPath()
  context.moveTo(0, y)
  context.lineTo(width, y)
  const stroke = view.perMetre / 10 > STROKE_ROOM ? 1 : number / 2
  for (let n = Math.ceil(from * 10); n <= to * 10; n++) {
    if (n % stroke !== 0) continue
    const px = toX(view, n / 10)
    context.moveTo(px, y)
    context.lineTo(px, y + (n % number === 0 ? 8 : 4))
  }
  context.stroke()
  context.textAlign = 'center'
  for (let n = Math.ceil(from * 10); n <= to * 10; n++) if (n % number === 0) context.fillText(String(n * 100), toX(view, n / 10), y + 15)
  const frames = drawing.drawn.filter((each) => each.layer === 'frames')
  for (const frame of frames) context.fillText(frame.id ?? '', toX(view, frame.points[0]), 8)
}

function paintLit(context: CanvasRenderingContext2D, at: NonNullable<Answer['at']>, view: View, inks: Inks): void {
  const [x, y] = [toX(view, at.x), toY(view, at.y)]
  context.strokeStyle = inks.accent
  context.lineWidth = 2
  context.beginPath()
  context.arc(x, y, 9, 0, 2 * Math.PI)
  context.moveTo(x - 15, y)
  context.lineTo(x + 15, y)
  context.moveTo(x, y - 15)
  context.lineTo(x, y + 15)
  context.stroke()
}

/** The smallest thing under a point, within a finger's breadth of its lines; null where there is none. */
export function thingAt(
  drawing: Elevation,
  view: View,
  [px, py]: readonly [number, number],
  layers: Marked['layers'],
  chosen: string | null,
): Drawn | null {
  const [x, y] = [fromX(view, px), fromY(view, py)]
  const near = 6 / view.perMetre
  let best: Drawn | null = null
  let least = Number.POSITIVE_INFINITY
  for (const drawn of drawing.drawn) {
    if (drawn.id === null || (!layers.has(drawn.layer) && drawn.id !== chosen)) continue
    const { x0, x1, y0, y1 } = boxRound([drawn.points])
    if (x < x0 - near || x > x1 + near || y < y0 - near || y > y1 + near) continue
    // a line is picked only where nothing with an inside is, and what nobody moves only where nothing else is
    const size = (drawn.closed ? (x1 - x0) * (y1 - y0) : 1e6) + (drawn.layer === 'chassis' ? 1e9 : 0)
    if (size < least) [best, least] = [drawn, size]
  }
  return best
}
