/** How the drawing lies on the screen: metres to pixels and back, the whole of it, nearer, and a place of it brought into sight. */
import type { Elevation } from '../desk/nouns.js'

/** Pixels of the metre, and where station and waterline 0 lie. A view of the right side runs stations to the left. */
export interface View {
  readonly perMetre: number
  readonly x0: number
  readonly y0: number
  readonly mirror: 1 | -1
}

export const toX = (view: View, x: number): number => view.x0 + view.mirror * x * view.perMetre
export const toY = (view: View, y: number): number => view.y0 - y * view.perMetre
export const fromX = (view: View, px: number): number => ((px - view.x0) * view.mirror) / view.perMetre
export const fromY = (view: View, py: number): number => (view.y0 - py) / view.perMetre

/** The whole of it with a margin, the tape below it. */
export function fitted({ box, look }: Elevation, width: number, height: number): View {
  const [w, h] = [box.x1 - box.x0, box.y1 - box.y0]
  const perMetre = Math.max(1, Math.min((width - 2 * SIDE) / w, (height - TOP - TAPE) / h))
  // the right side is seen with the nose to the right
  const mirror = look === 'right' || look === 'nose' ? -1 : 1
  return {
    perMetre,
    mirror,
    x0: width / 2 - (mirror * (box.x0 + box.x1) * perMetre) / 2,
    y0: TOP + (height - TOP - TAPE + h * perMetre) / 2 + box.y0 * perMetre,
  }
}

const [SIDE, TOP, TAPE] = [16, 12, 34]

const [NEAREST, FARTHEST] = [4000, 10]

/** Nearer or farther by a factor, what lies under that pixel staying there. */
export function zoomed(view: View, px: number, py: number, by: number): View {
  const perMetre = Math.min(NEAREST, Math.max(FARTHEST, view.perMetre * by))
  const k = perMetre / view.perMetre
  return { ...view, perMetre, x0: px + (view.x0 - px) * k, y0: py + (view.y0 - py) * k }
}

/** Near enough to tell one rivet from the next. */
const NEAR = 260

/** With a place in the middle, and near enough to see what is there. */
export function broughtTo(view: View, x: number, y: number, width: number, height: number): View {
  const perMetre = Math.max(view.perMetre, NEAR)
  return { ...view, perMetre, x0: width / 2 - view.mirror * x * perMetre, y0: height / 2 + y * perMetre }
}
