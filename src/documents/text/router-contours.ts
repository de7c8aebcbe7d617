/**
 * What a router cuts of a pattern, in cutting order and direction: windows first, then the outside, each begun and left on an
 * arc so that the cutter never dwells on the edge. Metres, pattern's own axes.
 *
 * The cutter is kept on the left of the path (G41), so windows run anticlockwise and the outside clockwise: the cutter, turning
 * clockwise as seen from above, then climbs. A window too small to be entered on an arc is left to a drill, and said.
 */
import type { Outline, Pattern } from '../../derive/nouns.js'
import { outlineArea, reverseOutline } from '../../maths/outline.js'
import { netOutline } from '../drawing/net-outline.js'
import { boundsOf } from '../drawing/view.js'

type Point = readonly [number, number]

export interface RouterContour {
  readonly says: string
  /** first vertex is where the cut begins and ends; direction as cut */
  readonly path: Outline
  /** where the tool goes down, where its lead-in arc begins, and where the arc that leaves ends */
  readonly plunge: Point
  readonly enter: Point
  readonly leave: Point
  /** middle of the arc that enters, and of the one that leaves: one and the same */
  readonly about: Point
}

export interface RouterCuts {
  readonly contours: readonly RouterContour[]
  /** round windows for a drill: middle and diameter */
  readonly drilled: readonly { readonly says: string; readonly at: Point; readonly diameter: number }[]
}

/** The arc that enters is this many cutter radii: with less the compensated path would turn back on itself. Our choice. */
const LEAD = 2
/** A window narrower than this many cutter diameters cannot be entered on an arc. Our choice. */
const NARROW = 1.5

export function routerCuts(pattern: Pattern, cutter: number): RouterCuts {
  const net = netOutline(pattern)
  const drilled: { says: string; at: Point; diameter: number }[] = []
  const windows = net.windows.flatMap(({ opening, outline }): RouterContour[] => {
    const b = boundsOf([outline])
    const narrow = Math.min(b.x1 - b.x0, b.y1 - b.y0)
    if (narrow < NARROW * cutter) {
      drilled.push({ says: opening, at: [(b.x0 + b.x1) / 2, (b.y0 + b.y1) / 2], diameter: narrow })
      return []
    }
    return [ready(opening, anticlockwise(outline), cutter / 2, narrow / 2)]
  })
  const outside = net.contours.map((outline, i) =>
    ready(net.contours.length === 1 ? 'outside' : `outside of piece ${i + 1}`, reverseOutline(anticlockwise(outline)), cutter / 2, null),
  )
  return { contours: [...windows, ...outside], drilled }
}

const anticlockwise = (outline: Outline): Outline => (outlineArea(outline) < 0 ? reverseOutline(outline) : outline)

/** Begun in the middle of its longest straight edge, where a mark shows least; on a circle at its first point. */
function ready(says: string, outline: Outline, radius: number, room: number | null): RouterContour {
  const path = begunOn(outline)
  const [s, next] = [path[0], path[1 % path.length]]
  const t = tangentAt(s, next)
  const n: Point = [-t[1], t[0]]
  // inside a window the arc must turn within it, outside there is board all round
  const lead = room === null ? LEAD * radius : Math.min(LEAD * radius, (radius + room) / 2)
  const about: Point = [s[0] + n[0] * lead, s[1] + n[1] * lead]
  const enter: Point = [about[0] - t[0] * lead, about[1] - t[1] * lead]
  const leave: Point = [about[0] + t[0] * lead, about[1] + t[1] * lead]
  const back = room === null ? 2 * radius + lead : 0
  // the straight move that takes up the compensation comes from behind, along the lead
  const plunge: Point = room === null ? [enter[0] + n[0] * back, enter[1] + n[1] * back] : middleOf(path)
  return { says, path, plunge, enter, leave, about }
}

const middleOf = (outline: Outline): Point => {
  const b = boundsOf([outline])
  return [(b.x0 + b.x1) / 2, (b.y0 + b.y1) / 2]
}

function begunOn(outline: Outline): Outline {
  const length = (i: number): number => {
    const [p, q] = [outline[i], outline[(i + 1) % outline.length]]
    return p[2] === 0 ? Math.hypot(q[0] - p[0], q[1] - p[1]) : 0
  }
  let best = 0
  for (let i = 1; i < outline.length; i++) if (length(i) > length(best) + 1e-9) best = i
  if (length(best) === 0) return outline
  const [p, q] = [outline[best], outline[(best + 1) % outline.length]]
  const start = [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2, 0] as const
  return [start, ...outline.slice(best + 1), ...outline.slice(0, best + 1)]
}

/** Direction of travel where an edge begins: on an arc it is turned from the chord by half of the sweep. */
function tangentAt(p: readonly [number, number, number], q: readonly [number, number, number]): Point {
  const turn = -2 * Math.atan(p[2])
  const angle = Math.atan2(q[1] - p[1], q[0] - p[0]) + turn
  return [Math.cos(angle), Math.sin(angle)]
}
