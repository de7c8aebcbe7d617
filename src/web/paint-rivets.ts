/** Every rivet that is seen, painted once on a sheet of its own and laid under the drawing until they or the view are others. */
import type { Inks } from './paint.js'
import { toX, toY, type View } from './view.js'

interface Sheet {
  readonly canvas: HTMLCanvasElement
  of: readonly unknown[]
}

let sheet: Sheet | null = null

/** The sheet is as large as the drawing is on the screen, in pixels of the screen. */
export function rivetsPainted(
  context: CanvasRenderingContext2D,
  { width, height }: { readonly width: number; readonly height: number },
  rivets: Float32Array,
  view: View,
  inks: Inks,
): void {
  const { canvas } = context
  sheet ??= { canvas: document.createElement('canvas'), of: [] }
  const of = [rivets, view, inks.faint, canvas.width, canvas.height]
  if (of.some((each, i) => each !== sheet?.of[i])) {
    sheet.of = of
    if (sheet.canvas.width !== canvas.width) sheet.canvas.width = canvas.width
    if (sheet.canvas.height !== canvas.height) sheet.canvas.height = canvas.height
    const own = sheet.canvas.getContext('2d', { willReadFrequently: true })
    if (!own) return
    const ratio = canvas.width / width
    own.setTransform(ratio, 0, 0, ratio, 0, 0)
    own.clearRect(0, 0, width, height)
    dots(own, { width, height }, rivets, view, inks.faint)
  }
  context.drawImage(sheet.canvas, 0, 0, width, height)
}

/** One rectangle a rivet: five thousand of them in a millisecond or two. Those off the drawing are left out. */
function dots(
  context: CanvasRenderingContext2D,
  { width, height }: { readonly width: number; readonly height: number },
  rivets: Float32Array,
  view: View,
  colour: string,
): void {
  const d = Math.max(1, Math.min(4, 0.006 * view.perMetre))
  context.fillStyle = colour
  for (let i = 0; i < rivets.length; i += 2) {
    const [x, y] = [toX(view, rivets[i]), toY(view, rivets[i + 1])]
    if (x > -d && y > -d && x < width + d && y < height + d) context.fillRect(x - d / 2, y - d / 2, d, d)
  }
}
