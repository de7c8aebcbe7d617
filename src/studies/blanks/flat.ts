/**
 * A panel's blank as it is drawn and cut: outline, holes and lines, laid so that the rectangle round it has its corner at 0,0. The
 * drawn one is seen from outside on the tail, x down and y to the right of travel; a part that is `turned` has it upside down.
 */

import type { MarkLine, Outline } from '../../derive/nouns.js'
import { inBlank } from '../../maths/blank/in-blank.js'
import { arcOf, boundsOf, moveOutline } from '../../maths/outline.js'
import type { PanelBlank } from './compute.js'

export type Point = readonly [x: number, y: number]

export interface Frame {
  /** subtracted from the blank's own x and y */
  readonly x0: number
  readonly y0: number
  /** of the rectangle, along x and along y */
  readonly length: number
  readonly width: number
}

/** How far an arc of the outline may stand off the edge, m. */
const OFF = 2e-5

/** u, v round the patch: along the left edge, the foot, back up the right edge, the top. Anticlockwise in the blank it runs u first. */
const EDGES: readonly ((s: number) => Point)[] = [(s) => [0, s], (s) => [s, 1], (s) => [1, 1 - s], (s) => [1 - s, 0]]

/** The blank's own edge as arcs, each through a point of the edge half way, anticlockwise. */
export function edgeOf(blank: PanelBlank): Outline {
  return EDGES.flatMap((edge) => {
    const at = (s: number): Point => {
      const [u, v] = edge(s)
      return inBlank(blank, u, v)
    }
    return arcsAlong(at, 0, 1, 0)
  })
}

/** Arcs from s0 to s1 without the last point. */
function arcsAlong(at: (s: number) => Point, s0: number, s1: number, depth: number): [number, number, number][] {
  const [a, m, b] = [at(s0), at((s0 + s1) / 2), at(s1)]
  const bulge = bulgeThrough(a, m, b)
  if (depth >= 3 && (depth > 9 || [0.2, 0.4, 0.6, 0.8].every((t) => offArc(a, b, bulge, at(s0 + t * (s1 - s0))) < OFF))) {
    return [[a[0], a[1], bulge]]
  }
  const half = (s0 + s1) / 2
  return [...arcsAlong(at, s0, half, depth + 1), ...arcsAlong(at, half, s1, depth + 1)]
}

/** tan(angle / 4) of the arc from a over m to b: twice its rise over its chord, taken where m stands. */
function bulgeThrough(a: Point, m: Point, b: Point): number {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]]
  const [ax, ay, bx, by] = [m[0] - a[0], m[1] - a[1], b[0] - m[0], b[1] - m[1]]
  // the angle turned from a-m to m-b is half the arc's
  const turn = Math.atan2(ax * by - ay * bx, ax * bx + ay * by)
  return Math.abs(turn) < 1e-9 || Math.hypot(dx, dy) === 0 ? 0 : Math.tan(turn / 2)
}

function offArc(a: Point, b: Point, bulge: number, p: Point): number {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]]
  const chord = Math.hypot(dx, dy)
  if (bulge === 0) return Math.abs((p[0] - a[0]) * dy - (p[1] - a[1]) * dx) / chord
  const { cx, cy, radius } = arcOf(a, b, bulge)
  return Math.abs(Math.hypot(p[0] - cx, p[1] - cy) - radius)
}

export function frameOf(edge: Outline): Frame {
  const [x0, y0, x1, y1] = boundsOf(edge)
  return { x0, y0, length: x1 - x0, width: y1 - y0 }
}

export function outlineIn(frame: Frame, turned: boolean, edge: Outline): Outline {
  const up = (y: number): number => (turned ? frame.width - (y - frame.y0) : y - frame.y0)
  return moveOutline(edge, (x) => x - frame.x0, up, turned)
}

/** Into the frame, upside down for a part that is turned. */
export function placedIn(frame: Frame, turned: boolean, [x, y]: Point): Point {
  const up = y - frame.y0
  return [x - frame.x0, turned ? frame.width - up : up]
}

/** A line on the panel as straight pieces, its words on the first; one piece where it is straight to a hundredth of a millimetre. */
export function chainOf(says: string, kind: MarkLine['kind'], points: readonly Point[]): MarkLine[] {
  const last = points[points.length - 1]
  const straight = points.every((p) => offArc(points[0], last, 0, p) < 1e-5)
  const ends = straight ? [points[0], last] : slanting(points)
  return ends.slice(1).map((to, i) => ({ says: i === 0 ? says : '', kind, from: ends[i], to }))
}

/** Without points that would make a piece of a curve run just along an axis: sheets dimension such lines, and this is none. */
function slanting(points: readonly Point[]): readonly Point[] {
  const kept = [points[0]]
  for (const [x, y] of points.slice(1, -1)) {
    const [fromX, fromY] = kept[kept.length - 1]
    if (Math.abs(x - fromX) > LEVEL && Math.abs(y - fromY) > LEVEL) kept.push([x, y])
  }
  return [...kept, points[points.length - 1]]
}

const LEVEL = 1e-5
