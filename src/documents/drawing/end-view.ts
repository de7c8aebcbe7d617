/**
 * One view of an end: outlines, gores, ribs, cap, openings and every rivet, to scale. Views stand as the market's projection
 * has them; outward runs down the page in plan, so that plan and front view share their middles. Paper millimetres.
 */
import type { Design } from '../../derive/design.js'
import type { EndLine, Point3 } from '../../derive/jig-nouns.js'
import type { EndStands } from './end-geometry.js'
import { intoEnd, seenFromAbove } from './end-geometry.js'
import { lettered, textWidth } from './lettering.js'
import type { Mark, Shape } from './page.js'
import { circles, FINE, letter, OUTLINE, path, rectangle, THIN } from './page.js'
import { contour } from './section-curve.js'
import type { Scale } from './view.js'

export type EndViewName = 'front' | 'side' | 'plan'

export interface EndViewPlace {
  readonly view: EndViewName
  readonly projection: 'first' | 'third'
  readonly scale: Scale
  /** paper place of the local origin: joint plane, centre plane, WL 0 */
  readonly x0: number
  readonly y0: number
}

/** Which way right of travel runs on paper where the end is seen square on, from outside. */
export const handOf = (at: EndStands): 1 | -1 => (at.end === 'nose' ? -1 : 1)

/** The side of travel a side view shows: the viewer's right in third angle, the viewer's left in first. */
export const sideShown = (at: EndStands, projection: EndViewPlace['projection']): 'right' | 'left' =>
  (handOf(at) === 1) === (projection === 'third') ? 'right' : 'left'

/** Paper place of a point of the end. */
export function onEndView(at: EndStands, place: EndViewPlace, [x, y, z]: Point3): readonly [number, number] {
  const k = 1000 / place.scale
  switch (place.view) {
    case 'front':
      return [place.x0 + handOf(at) * y * k, place.y0 - z * k]
    case 'side':
      return [place.x0 + (place.projection === 'third' ? -1 : 1) * x * k, place.y0 - z * k]
    case 'plan':
      return [place.x0 + handOf(at) * y * k, place.y0 + x * k]
  }
}

/** Which half a side view sees. */
function sees(at: EndStands, place: EndViewPlace, y: number): boolean {
  if (place.view !== 'side' || Math.abs(y) < 1e-9) return true
  return sideShown(at, place.projection) === (y > 0 ? 'right' : 'left')
}

const PENS: Readonly<Record<EndLine['kind'], Parameters<typeof path>[1]>> = {
  joint: { width: OUTLINE, group: 'joint' },
  seam: { width: THIN, group: 'seams' },
  mid: { width: FINE, type: 'long-dash-dot', group: 'mid-ribs' },
  cap: { width: THIN, group: 'cap' },
  floor: { width: FINE, type: 'dashed', group: 'floor' },
  toe: { width: OUTLINE, group: 'toe' },
}

/** Lines, outline, openings and rivets. */
export function endViewMarks(design: Design, at: EndStands, place: EndViewPlace): readonly Mark[] {
  const { drawn } = design.ends
  const on = (p: Point3): readonly [number, number] => onEndView(at, place, p)
  const shape = (points: readonly Point3[], closed = false): Shape => ({
    points: points.map((p) => [...on(p), 0] as const),
    closed,
  })
  const marks: Mark[] = []
  const lowest = lowestFromAbove(design)
  for (const kind of ['floor', 'mid', 'seam', 'cap', 'toe', 'joint'] as const) {
    const shapes = drawn.lines
      .filter((line) => line.kind === kind)
      .map((line) => (place.view !== 'plan' ? line.points : line.kind === 'floor' || line.kind === 'toe' ? [] : seenFromAbove(line)))
      .map((points) => points.filter(([, y]) => sees(at, place, y)))
      .filter((points) => points.length > 1)
      .map((points) => shape(points))
    if (shapes.length > 0) marks.push(path(shapes, PENS[kind]))
  }
  marks.push(...outlineMarks(design, shape, place.view))
  const dots: number[] = []
  for (const row of design.rows) {
    // the lining's rivets are not seen from outside
    if (row.end?.which !== at.end || row.kind === 'lining') continue
    row.station.forEach((station, i) => {
      const [y, z] = [row.end?.y[i] ?? 0, row.waterline[i]]
      if (!sees(at, place, y) || (place.view === 'plan' && z < lowest)) return
      dots.push(...on(intoEnd(at, station, y, z)), 0.4)
    })
  }
  if (dots.length > 0) marks.push(circles(dots, { width: FINE, fill: 0, group: 'rivets' }))
  for (const opening of design.openings) {
    if (opening.surface !== at.end || !opening.end) continue
    const loop = opening.end.loop.map(([station, y, z]) => intoEnd(at, station, y, z))
    const seen = loop.map(([, y, z]) => sees(at, place, y) && (place.view !== 'plan' || z >= lowest))
    // a loop half hidden is drawn from where it comes into sight
    const start = seen.findIndex((s, i) => s && !seen[(i + seen.length - 1) % seen.length])
    const points = [...loop.keys()]
      .map((i) => (i + Math.max(0, start)) % loop.length)
      .filter((i) => seen[i])
      .map((i) => loop[i])
    if (points.length < 3) continue
    marks.push(path([shape(points, start < 0)], { width: OUTLINE, fill: place.view === 'front' ? 1 : null, group: 'openings' }))
  }
  return marks
}

/** Below this everything is hidden from above, m. */
const lowestFromAbove = (design: Design): number =>
  Math.max(...design.ends.drawn.lines.filter((l) => l.kind === 'seam' || l.kind === 'mid').map((l) => seenFromAbove(l).at(-1)?.[2] ?? 0))

function outlineMarks(design: Design, shape: (points: readonly Point3[], closed?: boolean) => Shape, view: EndViewName): readonly Mark[] {
  const { drawn } = design.ends
  const pen = { width: OUTLINE, group: 'outline' } as const
  if (view === 'plan')
    return [
      path(
        [
          shape(
            drawn.plan.map(([x, y]) => [x, y, 0] as const),
            true,
          ),
        ],
        pen,
      ),
    ]
  if (view === 'side') {
    const [top, foot] = [drawn.profile[0][1], drawn.profile[drawn.profile.length - 1][1]]
    return [path([shape([[0, 0, foot], [0, 0, top], ...drawn.profile.map(([x, z]) => [x, 0, z] as const)], true)], pen)]
  }
  // square on an end is as wide as the section it joins; an arc turns the other way on the mirrored half
  const section = contour(design.section.points, 0)
  const half = (sign: number): Shape => {
    const { points } = shape(section.map(([y, z]) => [0, sign * y, z]))
    const turn = points[points.length - 1][0] > points[0][0] ? -1 : 1
    return { points: points.map(([x, y], i) => [x, y, turn * section[i][2]] as const), closed: false }
  }
  return [path([half(1), half(-1)], pen)]
}

/** Names: gores on their middles; in the front view also seams under the toe and openings in themselves. */
export function endViewNames(design: Design, at: EndStands, place: EndViewPlace): readonly Mark[] {
  const group = 'names'
  const { lines } = design.ends.drawn
  const marks: Mark[] = []
  const boxed = (x: number, y: number, text: string, height: 3.5 | 2.5): void => {
    const half = textWidth(text, height, true) / 2 + 0.8
    marks.push(
      rectangle(x - half, y - height * 0.8, half * 2, height * 1.6, { width: null, fill: 1, group }),
      letter(x, y, text, { height, bold: true, anchor: 'middle', sits: 'middle', group }),
    )
  }
  const wide = (design.section.width * 500) / place.scale
  for (const line of lines.filter((l) => l.kind === 'mid')) {
    const seen = place.view === 'plan' ? seenFromAbove(line) : line.points
    const [x, y] = onEndView(at, place, seen[Math.round((seen.length - 1) * (place.view === 'plan' ? 0.5 : 0.76))])
    // square on, the outermost gores are seen too much from the side to be named
    if (place.view === 'plan' || Math.abs(x - place.x0) < wide - 6) boxed(x, y, line.id.replace('mid-', ''), 3.5)
  }
  if (place.view === 'plan') return marks
  marks.push(...seamNames(design, at, place, group))
  for (const opening of design.openings.filter((o) => o.surface === at.end)) {
    const { station, waterline, end } = opening.place
    const [x, y] = onEndView(at, place, intoEnd(at, station, end?.y ?? 0, waterline))
    boxed(x, y, lettered(opening.id), 3.5)
  }
  return marks
}

/** Between two names on a line, and from one line to the next, mm. */
const [CLEAR, LINE] = [1.5, 3.6]

/** Under the toe, from left to right: one that would run into another steps down a line. */
function seamNames(design: Design, at: EndStands, place: EndViewPlace, group: string): readonly Mark[] {
  const named = design.ends.drawn.lines
    .filter((line) => line.kind === 'seam')
    .map((line) => {
      const [x, y] = onEndView(at, place, line.points[line.points.length - 1])
      return { x, y, text: line.id.replace('-', ' ') }
    })
    .sort((a, b) => a.x - b.x)
  // how far each line is taken
  const taken: number[] = []
  return named.map(({ x, y, text }) => {
    const half = textWidth(text, 2.5) / 2
    const free = taken.findIndex((end) => x - half > end + CLEAR)
    const nth = free < 0 ? taken.length : free
    taken[nth] = x + half
    return letter(x, y + 1.6 + nth * LINE, text, { height: 2.5, anchor: 'middle', sits: 'top', group })
  })
}
