/**
 * A flat region between outlines, parted for bending: level by level into trapezoids, these at columns, and the boundary beside them.
 * Levels and columns are where a surface it is laid on bends; outlines may have holes, notches, and edges that lie on each other.
 */
import { arcOf, type Vertex } from '../../maths/outline.js'

export type Point = readonly [x: number, y: number]

/** Convex pieces, anticlockwise, and stretches of the boundary; no piece and no stretch crosses a level or a column. */
export interface Region {
  readonly pieces: readonly (readonly Point[])[]
  readonly boundary: readonly (readonly [Point, Point])[]
}

/** An outline with its arcs drawn in so many chords. */
export function ringOf(outline: readonly Vertex[], chords: number): Point[] {
  return outline.flatMap(([x, y, bulge], i) => {
    if (bulge === 0) return [[x, y] as const]
    const [nx, ny] = outline[(i + 1) % outline.length]
    const { cx, cy, radius, start, sweep } = arcOf([x, y], [nx, ny], bulge)
    return Array.from({ length: chords }, (_, k): Point => {
      const angle = start + (sweep * k) / chords
      return k === 0 ? [x, y] : [cx + radius * Math.cos(angle), cy + radius * Math.sin(angle)]
    })
  })
}

/** Narrower than this is nothing, m. */
const NOTHING = 1e-9

/** From x0 to x1 at the foot of a slab (a) and at its head (b). */
interface Span {
  readonly a: readonly [number, number]
  readonly b: readonly [number, number]
}

/** `rings` are closed; what an odd number of them encloses is the region. */
export function regionOf(rings: readonly (readonly Point[])[], levels: readonly number[], columns: readonly number[]): Region {
  const corners = rings.flatMap((ring) => ring.map((p) => p[1]))
  const [low, high] = [Math.min(...corners), Math.max(...corners)]
  const stops = distinct([...corners, ...levels.filter((y) => y > low && y < high)])
  const across = distinct([...columns])
  const pieces: Point[][] = []
  const boundary: (readonly [Point, Point])[] = []
  let below: readonly (readonly [number, number])[] = []
  stops.forEach((y, i) => {
    const top = stops[i + 1]
    const spans = top === undefined ? [] : spansOf(rings, y, top)
    for (const [x0, x1] of differing(
      below,
      spans.map((span) => span.a),
    )) {
      const at = [x0, ...across.filter((x) => x > x0 && x < x1), x1]
      for (let k = 0; k + 1 < at.length; k++)
        boundary.push([
          [at[k], y],
          [at[k + 1], y],
        ])
    }
    for (const { a, b } of spans) {
      pieces.push(
        ...columned(
          [
            [a[0], y],
            [a[1], y],
            [b[1], top],
            [b[0], top],
          ],
          across,
        ),
      )
      boundary.push(
        [
          [a[0], y],
          [b[0], top],
        ],
        [
          [a[1], y],
          [b[1], top],
        ],
      )
    }
    below = spans.map((span) => span.b)
  })
  return { pieces, boundary }
}

function distinct(values: number[]): number[] {
  return values.sort((a, b) => a - b).filter((v, i, all) => i === 0 || v - all[i - 1] > NOTHING)
}

/** The stretches of a slab that are inside, left to right. */
function spansOf(rings: readonly (readonly Point[])[], foot: number, head: number): Span[] {
  const middle = (foot + head) / 2
  const crossings: { a: number; b: number; m: number }[] = []
  for (const ring of rings)
    ring.forEach((p, i) => {
      const q = ring[(i + 1) % ring.length]
      if (p[1] < middle === q[1] < middle) return
      const at = (y: number): number => p[0] + ((q[0] - p[0]) * (y - p[1])) / (q[1] - p[1])
      // a corner within a hair of the level is met where it stands
      crossings.push({ a: at(foot), b: at(head), m: at(middle) })
    })
  crossings.sort((p, q) => p.m - q.m)
  const spans: Span[] = []
  for (let i = 0; i + 1 < crossings.length; i += 2) {
    const [left, right] = [crossings[i], crossings[i + 1]]
    if (right.m - left.m < NOTHING) continue
    const last = spans[spans.length - 1]
    // where two outlines lie on each other nothing parts what is on both sides of them
    if (last && left.a - last.a[1] < NOTHING && left.b - last.b[1] < NOTHING)
      spans[spans.length - 1] = { a: [last.a[0], right.a], b: [last.b[0], right.b] }
    else spans.push({ a: [left.a, right.a], b: [left.b, right.b] })
  }
  return spans
}

/** Stretches that exactly one of two lists covers. */
function differing(p: readonly (readonly [number, number])[], q: readonly (readonly [number, number])[]): [number, number][] {
  const stops = [...p.flat(), ...q.flat()].sort((a, b) => a - b)
  const covers = (list: readonly (readonly [number, number])[], x: number): boolean => list.some(([a, b]) => x > a && x < b)
  const found: [number, number][] = []
  for (let i = 0; i + 1 < stops.length; i++) {
    if (stops[i + 1] - stops[i] < NOTHING) continue
    const x = (stops[i] + stops[i + 1]) / 2
    if (covers(p, x) !== covers(q, x)) found.push([stops[i], stops[i + 1]])
  }
  return found
}

/** A convex piece parted at the columns that cross it. */
function columned(piece: readonly Point[], columns: readonly number[]): Point[][] {
  const x = piece.map((p) => p[0])
  const [from, to] = [Math.min(...x), Math.max(...x)]
  const inside = columns.filter((c) => c > from + NOTHING && c < to - NOTHING)
  if (inside.length === 0) return [[...piece]]
  const stops = [from, ...inside, to]
  return stops.slice(1).map((right, i) => sideOf(sideOf(piece, stops[i], 1), right, -1))
}

/** What of a convex piece lies to the right (sign 1) or the left (-1) of a column. */
function sideOf(piece: readonly Point[], column: number, sign: 1 | -1): Point[] {
  const kept: Point[] = []
  piece.forEach((p, i) => {
    const q = piece[(i + 1) % piece.length]
    const [a, b] = [sign * (p[0] - column), sign * (q[0] - column)]
    if (a >= 0) kept.push(p)
    if (a * b < 0) kept.push([column, p[1] + ((q[1] - p[1]) * a) / (a - b)])
  })
  return kept
}

/** Stretches of x that are inside at a level which no corner lies on. */
export function chordsAt(rings: readonly (readonly Point[])[], y: number): readonly (readonly [number, number])[] {
  return spansOf(rings, y - NOTHING, y + NOTHING).map((span) => span.a)
}
