/**
 * The half section between its listed points: from girth to place and back, exact on arcs and lines, because the points
 * include every end of an element and the heading turns evenly between two of them. Metres, rad; y outboard, z up.
 */
import type { SectionPoint } from '../../derive/nouns.js'

export interface OnSection {
  readonly girth: number
  readonly y: number
  readonly z: number
  readonly heading: number
}

/** Place at a girth (unsigned, from the crown). Beyond the ends it runs on straight. */
export function onSection(points: readonly SectionPoint[], girth: number): OnSection {
  if (points.length < 2) throw new Error(`A section of ${points.length} points cannot be drawn`)
  let i = 0
  while (i < points.length - 2 && points[i + 1].girth <= girth) i++
  const [p, q] = [points[i], points[i + 1]]
  const span = q.girth - p.girth
  const along = girth - p.girth
  if (along <= 0 && i === 0 && girth < p.girth) return straight(p, along)
  if (girth > q.girth) return straight(q, girth - q.girth)
  const turn = span > 0 ? (q.heading - p.heading) / span : 0
  const heading = p.heading + turn * along
  if (Math.abs(turn * along) < 1e-9) return { girth, y: p.y + along * Math.cos(p.heading), z: p.z - along * Math.sin(p.heading), heading }
  return {
    girth,
    heading,
    y: p.y + (Math.sin(heading) - Math.sin(p.heading)) / turn,
    z: p.z + (Math.cos(heading) - Math.cos(p.heading)) / turn,
  }
}

const straight = (p: SectionPoint, by: number): OnSection => ({
  girth: p.girth + by,
  y: p.y + by * Math.cos(p.heading),
  z: p.z - by * Math.sin(p.heading),
  heading: p.heading,
})

/** The same place moved inward along the normal. */
export const inward = (at: OnSection, by: number): readonly [y: number, z: number] => [
  at.y - by * Math.sin(at.heading),
  at.z - by * Math.cos(at.heading),
]

/**
 * The contour moved inward by `depth`, crown to toe, as `[y, z, bulge]`: one arc or line between listed points.
 * Bulge is positive anticlockwise with y to the right and z up; the contour turns clockwise on its way down.
 */
export function contour(points: readonly SectionPoint[], depth: number): readonly (readonly [number, number, number])[] {
  return points.map((p, i) => {
    const turn = i < points.length - 1 ? points[i + 1].heading - p.heading : 0
    const [y, z] = inward(p, depth)
    return [y, z, Math.abs(turn) < 1e-9 ? 0 : -Math.tan(turn / 4)] as const
  })
}

/** Largest distance between a listed point and the curve run on from the point before it, m: the verifier of this file. */
export function sectionCurveResidual(points: readonly SectionPoint[]): number {
  return points.slice(1).reduce((worst, q, i) => {
    const p = points[i]
    const end = onSection([p, { ...q, girth: q.girth }], q.girth)
    return Math.max(worst, Math.hypot(end.y - q.y, end.z - q.z))
  }, 0)
}
