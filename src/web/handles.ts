/** The handles of what is chosen: on each edge and corner of an opening a place to pull it by, wide enough for a finger. */
import { boxRound } from '../desk/box.js'
import type { Drawn } from '../desk/nouns.js'
import { toX, toY, type View } from './view.js'

/** Which edges a handle pulls: the one at the lesser or the greater end of each axis of the drawing, or neither. */
export interface Handle {
  readonly x: -1 | 0 | 1
  readonly y: -1 | 0 | 1
  /** on the screen, px */
  readonly at: readonly [number, number]
}

/** px: outside the thing, so that its inside stays free to be dragged; a hit is 24 wide, as wide as a finger needs */
const [OUTSIDE, HIT] = [11, 12]

export function handlesOf(drawn: Drawn, view: View): readonly Handle[] {
  if (!drawn.isSized) return []
  const { x0, x1, y0, y1 } = boxRound([drawn.points])
  const between = (a: number, b: number, t: -1 | 0 | 1): number => (t < 0 ? a : t > 0 ? b : (a + b) / 2)
  return ENDS.flatMap((x) =>
    ENDS.filter((y) => x !== 0 || y !== 0).map((y) => ({
      x,
      y,
      at: [toX(view, between(x0, x1, x)) + view.mirror * x * OUTSIDE, toY(view, between(y0, y1, y)) - y * OUTSIDE] as const,
    })),
  )
}

const ENDS = [-1, 0, 1] as const

/** The handle under a point, the nearest where two are; null where none is. */
export function handleAt(handles: readonly Handle[], px: number, py: number): Handle | null {
  const off = ({ at }: Handle): number => Math.max(Math.abs(at[0] - px), Math.abs(at[1] - py))
  const [nearest] = handles.filter((each) => off(each) <= HIT).sort((a, b) => off(a) - off(b))
  return nearest ?? null
}

/** The pointer over a handle says which way it pulls. */
export function cursorOf(handle: Handle, mirror: 1 | -1): string {
  if (handle.y === 0) return 'ew-resize'
  if (handle.x === 0) return 'ns-resize'
  return handle.x * mirror * handle.y > 0 ? 'nesw-resize' : 'nwse-resize'
}
