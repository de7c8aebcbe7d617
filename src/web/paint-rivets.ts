/** Every rivet that is seen, painted once on a sheet of its own and laid under the drawing until they or the view are others. */
import { colourOf, setDots } from './dots.js'
import type { Inks } from './paint.js'
import { toX, toY, type View } from './view.js'

interface Sheet {
  readonly canvas: HTMLCanvasElement
  picture: ImageData | null
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
  sheet ??= { canvas: document.createElement('canvas'), picture: null, of: [] }
  const of = [rivets, view, inks.faint, canvas.width, canvas.height]
  if (of.some((each, i) => each !== sheet?.of[i])) {
    sheet.of = of
    dot(sheet, canvas, canvas.width / width, rivets, view, inks.faint)
  }
  context.drawImage(sheet.canvas, 0, 0, width, height)
}

/** `ratio` is pixels of the screen in one of the drawing. */
function dot(
  on: Sheet,
  { width, height }: { readonly width: number; readonly height: number },
  ratio: number,
  rivets: Float32Array,
  view: View,
  faint: string,
): void {
  const { canvas } = on
  if (canvas.width !== width) canvas.width = width
  if (canvas.height !== height) canvas.height = height
  const own = canvas.getContext('2d', { willReadFrequently: true })
  if (!own) return
  if (on.picture?.width !== width || on.picture.height !== height) on.picture = own.createImageData(width, height)
  const pixels = new Uint32Array(on.picture.data.buffer)
  pixels.fill(0)
  // asked back, a colour is written in one way
  own.fillStyle = faint
  const [x0, y0] = [toX(view, 0) * ratio, toY(view, 0) * ratio]
  const onto = { x0, y0, perX: toX(view, 1) * ratio - x0, perY: toY(view, 1) * ratio - y0 }
  const side = ratio * Math.max(1, Math.min(4, 0.006 * view.perMetre))
  setDots(pixels, { width, height }, rivets, onto, side, colourOf(own.fillStyle))
  own.putImageData(on.picture, 0, 0)
}
