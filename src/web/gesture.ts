/** What a hand on the drawing means: a thing moved, an edge pulled, the paper pushed, two fingers drawn apart. Pixels in, edits out. */
import { axesOf } from '../desk/axes.js'
import type { Drawn, Look, MoveEdit, SizeEdit, SnapWish } from '../desk/nouns.js'
import { type Handle, handleAt, handlesOf } from './handles.js'
import { fromX, fromY, type View, zoomed } from './view.js'

export interface Grip {
  readonly thing: Drawn | null
  readonly handle: Handle | null
  readonly from: readonly [number, number]
  readonly view: View
  readonly stroke: string
}

/** px: a hand that shakes moves nothing, and one that goes along keeps its height until it plainly leaves it */
const [STILL, STRAIGHT] = [3, 8]
/** px: nearer than this to a clean place a thing is drawn there */
const REACH = 6

export interface Pointed {
  readonly look: Look
  readonly at: readonly [number, number]
  readonly snap: SnapWish | null
}

/** How near to a clean place the hand must come on this view. */
export const reachOf = ({ perMetre }: View): number => REACH / perMetre

export const isStill = ({ from }: Grip, [px, py]: readonly [number, number]): boolean => Math.hypot(px - from[0], py - from[1]) < STILL

/** The handle or thing under a point; what is chosen comes first. */
export function gripAt(view: View, at: readonly [number, number], chosen: Drawn | null, thing: Drawn | null, stroke: string): Grip {
  const handle = chosen ? handleAt(handlesOf(chosen, view), at[0], at[1]) : null
  const held = handle ? chosen : thing
  return { thing: held?.moves && held.place ? held : null, handle, from: at, view, stroke }
}

/** What the coach is asked for where the hand is now; null where it pushes the paper. m */
export function editOf({ thing, handle, from, view, stroke }: Grip, { look, at, snap }: Pointed): MoveEdit | SizeEdit | null {
  if (!thing?.id || !thing.place) return null
  const along = Math.abs(at[0] - from[0])
  const upward = Math.abs(at[1] - from[1])
  const by = { x: fromX(view, at[0]) - fromX(view, from[0]), y: fromY(view, at[1]) - fromY(view, from[1]) }
  const wish = { id: thing.id, stroke, ...(snap ? { snap } : {}) }
  if (handle) return { kind: 'size', ...wish, ...edgesOf(thing, handle, by) }
  const axes = axesOf(look)
  const to = { station: null, waterline: null, across: null } as Record<'station' | 'waterline' | 'across', number | null>
  const place = thing.place
  const put = (key: keyof typeof to, off: number): void => {
    const was = place[key]
    if (was !== null) to[key] = millimetre(was + off)
  }
  if (thing.moves !== 'up' && (along >= STRAIGHT || upward < STRAIGHT || thing.moves === 'along')) put(axes.x, by.x)
  if (thing.moves !== 'along' && (upward >= STRAIGHT || thing.moves === 'up')) put(axes.y, by.y)
  return { kind: 'move', ...wish, ...to }
}

const millimetre = (m: number): number => Math.round(m * 1000) / 1000

function edgesOf(
  thing: Drawn,
  { x, y }: Handle,
  by: { readonly x: number; readonly y: number },
): Pick<SizeEdit, 'fore' | 'aft' | 'low' | 'high'> {
  const size = (says: string): number => thing.fields.find((each) => each.says === says)?.metres ?? 0
  const { station, waterline, across } = thing.place ?? { station: 0, waterline: 0, across: 0 }
  const edge = (middle: number | null, whole: number, end: -1 | 1, off: number): number =>
    millimetre((middle ?? 0) + (end * whole) / 2 + off)
  const up = waterline ?? across
  return {
    fore: x === -1 ? edge(station, size('Width'), -1, by.x) : null,
    aft: x === 1 ? edge(station, size('Width'), 1, by.x) : null,
    low: y === -1 ? edge(up, size('Height'), -1, by.y) : null,
    high: y === 1 ? edge(up, size('Height'), 1, by.y) : null,
  }
}

/** The paper pushed from where it was taken hold of. */
export const pushed = ({ from, view }: Grip, [px, py]: readonly [number, number]): View => ({
  ...view,
  x0: view.x0 + px - from[0],
  y0: view.y0 + py - from[1],
})

/** Two fingers, one of which came from `was` to `now`. */
export function pinched(
  view: View,
  other: readonly [number, number],
  was: readonly [number, number],
  now: readonly [number, number],
): View {
  const [before, after] = [Math.hypot(was[0] - other[0], was[1] - other[1]), Math.hypot(now[0] - other[0], now[1] - other[1])]
  return before > 0 ? zoomed(view, (now[0] + other[0]) / 2, (now[1] + other[1]) / 2, after / before) : view
}

/** A push by a key along the axes of the drawing, m. A lap goes up as its girth grows less. */
export function pushOf(thing: Drawn, look: Look, [x, y]: readonly [number, number], by: number) {
  const axes = axesOf(look)
  const to = { along: 0, up: 0, across: 0 }
  const names = { station: 'along', waterline: 'up', across: 'across' } as const
  if (thing.moves !== 'up') to[names[axes.x]] += x * by
  if (thing.moves !== 'along' && thing.layer === 'seams') to.across -= y * by
  else if (thing.moves !== 'along') to[names[axes.y]] += y * by
  return to
}
