/**
 * The coach in outline, in metres, seen from one side or from above: what the key figure and the cover draw.
 * The barrel and everything on it is true; the ends are drawn as far as their reach only, since no trade lofts them yet.
 */
import type { Design } from '../../derive/design.js'
import type { Outline, Part, Pattern } from '../../derive/nouns.js'
import { onSection } from './section-curve.js'
import { flatten } from './view.js'

export type CoachView = 'right' | 'left' | 'plan'
export type Points = readonly (readonly [number, number])[]

export interface BarrelEnds {
  readonly nose: number
  readonly tail: number
  readonly reach: number
}

/** Stations of the joint frames and how far the ends reach beyond them, m. */
export function barrelEnds(design: Design): BarrelEnds {
  const { frames } = design.definition
  const stations = frames.map((frame) => frame.station)
  return {
    nose: frames.find((f) => f.joint === 'nose')?.station ?? Math.min(...stations),
    tail: frames.find((f) => f.joint === 'tail')?.station ?? Math.max(...stations),
    reach: design.ends.reach,
  }
}

/** A point of the outer mould line (station, signed girth) in a view: x is the station, y the waterline or the distance from the centre. */
export function project(design: Design, view: CoachView, station: number, girth: number): readonly [number, number] {
  const at = onSection(design.section.points, Math.abs(girth))
  return view === 'plan' ? [station, Math.sign(girth) * at.y] : [station, at.z]
}

/** The barrel's outline and the dashed reach of both ends. */
export function bodyOutline(design: Design, view: CoachView): { readonly barrel: Points; readonly ends: readonly Points[] } {
  const { nose, tail, reach } = barrelEnds(design)
  const points = design.section.points
  const crown = points[0].z
  const toe = points[points.length - 1].z
  const half = Math.max(...points.map((p) => p.y))
  const [top, foot] = view === 'plan' ? [half, -half] : [crown, toe]
  const cap = (from: number, sign: number): Points => {
    const out: [number, number][] = []
    // a plain rounded cap of the right reach; exponent 2.6 as a fair stand-in for a body's end
    for (let i = 0; i <= 24; i++) {
      const a = -Math.PI / 2 + (Math.PI * i) / 24
      const ease = (v: number): number => Math.sign(v) * Math.abs(v) ** (2 / 2.6)
      out.push([from + sign * reach * ease(Math.cos(a)), (top + foot) / 2 + ((top - foot) / 2) * ease(Math.sin(a))])
    }
    return out
  }
  return {
    barrel: [
      [nose, foot],
      [tail, foot],
      [tail, top],
      [nose, top],
    ],
    ends: [cap(nose, -1), cap(tail, 1)],
  }
}

/** Is a thing at this signed girth seen in this view? The plan sees the roof, to where the side turns past 45 degrees. */
export function seen(design: Design, view: CoachView, girth: number): boolean {
  if (view === 'right') return girth > -1e-9
  if (view === 'left') return girth < 1e-9
  return onSection(design.section.points, Math.abs(girth)).heading < Math.PI / 4
}

/** Signed girth and station of a point of a pattern, read off its frame: good to the thickness of the sheet. */
export function patternPoint(
  pattern: Pattern,
  side: Part['side'],
  x: number,
  y: number,
): { readonly station: number; readonly girth: number } {
  const { flat } = pattern
  let { station, girth } = flat.origin
  const along = (axis: string, by: number): void => {
    if (axis === 'aft') station += by
    else if (axis === 'forward') station -= by
    else if (axis === 'right') girth += by
    else if (axis === 'left') girth -= by
    // up is toward the crown: on the right of the coach that makes the signed girth smaller
    else {
      const onLeft = side === 'left' || (side === 'centre' && flat.origin.girth < 0)
      girth += (axis === 'down') === onLeft ? -by : by
    }
  }
  along(flat.x, x)
  along(flat.y, y)
  return { station, girth }
}

/** A pattern's blank as it lies on the coach in a view. */
export function patternOnCoach(design: Design, part: Part, pattern: Pattern, view: CoachView): Points {
  const points = flatten(pattern.outline, 4)
  // edges are walked in short steps, since the section bends between their ends
  const dense = points.flatMap((p, i) => {
    const q = points[(i + 1) % points.length]
    const steps = Math.max(1, Math.ceil(Math.hypot(q[0] - p[0], q[1] - p[1]) / 0.15))
    return Array.from({ length: steps }, (_, n) => [p[0] + ((q[0] - p[0]) * n) / steps, p[1] + ((q[1] - p[1]) * n) / steps] as const)
  })
  return dense.map(([x, y]) => {
    const at = patternPoint(pattern, part.side, x, y)
    return project(design, view, at.station, at.girth)
  })
}

/** An opening's outline (station, signed girth) in a view, ending at the toe where it runs over it. */
export const openingOnCoach = (design: Design, outline: Outline, view: CoachView): Points => {
  const { halfGirth } = design.section
  return flatten(outline, 6).map(([station, girth]) => project(design, view, station, Math.max(-halfGirth, Math.min(halfGirth, girth))))
}

/** The view a side is best seen in. */
export const viewOfSide = (side: Part['side']): CoachView => (side === 'right' ? 'right' : side === 'left' ? 'left' : 'plan')
