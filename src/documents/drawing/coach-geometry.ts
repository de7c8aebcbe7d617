/**
 * The coach in outline, in metres, seen from one side or from above: what the key figure and the cover draw.
 * Everything is true: the barrel by its section, the ends by their lofted outlines.
 */
import type { Design } from '../../derive/design.js'
import type { Point3 } from '../../derive/jig-nouns.js'
import type { Outline, Part, Pattern } from '../../derive/nouns.js'
import type { EndStands } from './end-geometry.js'
import { endsOf, linesOfPart, patchOfPart } from './end-geometry.js'
import { onSection } from './section-curve.js'
import { flatten } from './view.js'

/** `under` is the plan as well, for what lies below the roof: nothing of the roof is drawn in it. */
export type CoachView = 'right' | 'left' | 'plan' | 'under'
export const fromAbove = (view: CoachView): boolean => view === 'plan' || view === 'under'
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

/** A part's own place in a view. */
export function placeOnCoach(design: Design, part: Part, view: CoachView): readonly [number, number] {
  const { station, girth, waterline, end, buttock } = part.place
  if (end) return [station, fromAbove(view) ? end.y : waterline]
  if (buttock !== undefined) return [station, fromAbove(view) ? buttock : waterline]
  return project(design, view, station, (part.side === 'left' ? -1 : 1) * girth)
}

/** A point of the outer mould line (station, signed girth) in a view: x is the station, y the waterline or the distance from the centre. */
export function project(design: Design, view: CoachView, station: number, girth: number): readonly [number, number] {
  const at = onSection(design.section.points, Math.abs(girth))
  return fromAbove(view) ? [station, Math.sign(girth) * at.y] : [station, at.z]
}

/** The barrel's outline and those of both ends, from joint to joint round the tip. */
export function bodyOutline(design: Design, view: CoachView): { readonly barrel: Points; readonly ends: readonly Points[] } {
  const { nose, tail } = barrelEnds(design)
  const points = design.section.points
  const crown = points[0].z
  const toe = points[points.length - 1].z
  const half = Math.max(...points.map((p) => p.y))
  const [top, foot] = fromAbove(view) ? [half, -half] : [crown, toe]
  const { plan, profile } = design.ends.drawn
  const outline = fromAbove(view) ? plan : [...profile, [0, toe] as const]
  return {
    barrel: [
      [nose, foot],
      [tail, foot],
      [tail, top],
      [nose, top],
    ],
    ends: endsOf(design).map(({ joint, out }) => outline.map(([x, level]) => [joint + out * x, level] as const)),
  }
}

/** A place in the axes of an end, in a view. */
const endInView = (at: EndStands, view: CoachView, [x, y, z]: Point3): readonly [number, number] => [
  at.joint + at.out * x,
  fromAbove(view) ? y : z,
]

/** A part of an end in a view: the patch of a skin, or the line of a member; null for what has neither. */
export function endPartOnCoach(design: Design, part: Part, view: CoachView): { readonly points: Points; readonly closed: boolean } | null {
  const at = endsOf(design).find((e) => e.end === part.place.end?.which)
  if (!at) return null
  const patch = patchOfPart(design, part)
  const points = patch ?? linesOfPart(design, part)
  return points ? { points: points.map((p) => endInView(at, view, p)), closed: patch !== null } : null
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

/** A panel of the floor or a member of the chassis from above; null for what is too small or stands upright. */
export function underPartOnCoach({ under }: Design, part: Part): Points | null {
  const member = under.chassis?.members.find((m) => m.part === part.id)
  if (member) return member.plan.map(([x, y]) => [x, y] as const)
  if (part.kind !== 'floor-panel') return null
  const { outline, flat } = part.patterns[0]
  return flatten(outline, 2).map(([x, y]) => [flat.origin.station + x, y] as const)
}

/** The view a part is best seen in. */
export const viewOfPart = ({ side, place }: Pick<Part, 'side' | 'place'>): CoachView =>
  place.buttock !== undefined ? 'under' : side === 'right' ? 'right' : side === 'left' ? 'left' : 'plan'
