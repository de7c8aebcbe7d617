/** What is drawn of a hand's work over the elevation: the handles of what is chosen, and the guide it was drawn to. */
import type { Drawn, SnapShown } from '../desk/nouns.js'
import { handlesOf } from './handles.js'
import type { Inks } from './paint.js'
import { toX, toY, type View } from './view.js'

export function paintHandles(context: CanvasRenderingContext2D, drawn: Drawn, view: View, inks: Inks): void {
  context.fillStyle = inks.paper
  context.strokeStyle = inks.accent
  context.lineWidth = 1.5
  for (const { at } of handlesOf(drawn, view)) {
    context.beginPath()
    context.rect(at[0] - HALF, at[1] - HALF, 2 * HALF, 2 * HALF)
    context.fill()
    context.stroke()
  }
}

/** px */
const HALF = 4

export function paintGuides(
  context: CanvasRenderingContext2D,
  { width, height }: { readonly width: number; readonly height: number },
  snaps: readonly SnapShown[],
  view: View,
  inks: Inks,
): void {
  context.strokeStyle = inks.accent
  context.lineWidth = 1
  context.setLineDash([6, 4])
  for (const { axis, at } of snaps) {
    context.beginPath()
    if (axis === 'x') {
      context.moveTo(toX(view, at), 0)
      context.lineTo(toX(view, at), height)
    } else {
      context.moveTo(0, toY(view, at))
      context.lineTo(width, toY(view, at))
    }
    context.stroke()
  }
  context.setLineDash([])
}
