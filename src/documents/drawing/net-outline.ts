/**
 * What is left of a blank when its cuts are made: whole contours to cut along, windows inside, and the blank edge that goes.
 * A cut that shares a stretch of a straight blank edge is a notch; its other edges become part of the contour.
 * Metres, in the pattern's own axes. Does not cover: a cut that shares an arc of the blank's edge (no part has one).
 */
import type { Outline, Pattern } from '../../derive/nouns.js'
import { outlineArea, reverseOutline } from '../../maths/outline.js'

type Vertex = readonly [number, number, number]
interface Edge {
  readonly from: Vertex
  readonly to: Vertex
}

export interface NetOutline {
  /** closed contours of the pieces left */
  readonly contours: readonly Outline[]
  /** cuts wholly inside the blank */
  readonly windows: readonly { readonly opening: string; readonly outline: Outline }[]
  /** cuts that reach an edge */
  readonly notches: readonly { readonly opening: string; readonly outline: Outline }[]
  /** stretches of the blank's edge that notches take away */
  readonly removed: readonly (readonly [x0: number, y0: number, x1: number, y1: number])[]
}

/** Points closer than this are one point, m. */
const SAME = 1e-7

const edgesOf = (outline: Outline): readonly Edge[] => outline.map((from, i) => ({ from, to: outline[(i + 1) % outline.length] }))
const length = (e: Edge): number => Math.hypot(e.to[0] - e.from[0], e.to[1] - e.from[1])

/** Where a straight edge lies along another straight one, as places on it from 0 to its length; null when it does not. */
function shared(blank: Edge, cut: Edge): readonly [number, number] | null {
  if (blank.from[2] !== 0 || cut.from[2] !== 0) return null
  const l = length(blank)
  if (l < SAME || length(cut) < SAME) return null
  const [ux, uy] = [(blank.to[0] - blank.from[0]) / l, (blank.to[1] - blank.from[1]) / l]
  const across = (p: Vertex): number => (p[0] - blank.from[0]) * -uy + (p[1] - blank.from[1]) * ux
  const along = (p: Vertex): number => (p[0] - blank.from[0]) * ux + (p[1] - blank.from[1]) * uy
  if (Math.abs(across(cut.from)) > SAME * 10 || Math.abs(across(cut.to)) > SAME * 10) return null
  const [a, b] = [along(cut.from), along(cut.to)].sort((p, q) => p - q)
  const [lo, hi] = [Math.max(0, a), Math.min(l, b)]
  return hi - lo > SAME ? [lo, hi] : null
}

/** What is left of [0, l] when the given stretches are taken out. */
function rest(l: number, taken: readonly (readonly [number, number])[]): readonly (readonly [number, number])[] {
  const out: [number, number][] = []
  let at = 0
  for (const [a, b] of [...taken].sort((p, q) => p[0] - q[0])) {
    if (a > at + SAME) out.push([at, a])
    at = Math.max(at, b)
  }
  if (l > at + SAME) out.push([at, l])
  return out
}

const pointAlong = (e: Edge, at: number): Vertex => {
  const l = length(e)
  return at <= SAME
    ? [e.from[0], e.from[1], 0]
    : at >= l - SAME
      ? [e.to[0], e.to[1], 0]
      : [e.from[0] + ((e.to[0] - e.from[0]) * at) / l, e.from[1] + ((e.to[1] - e.from[1]) * at) / l, 0]
}

/** Edges joined end to end into closed contours. Edges come with their direction; a notch's are turned to match the blank's. */
function chain(edges: readonly Edge[]): readonly Outline[] {
  const left = [...edges]
  const out: Outline[] = []
  while (left.length > 0) {
    const first = left.shift()!
    const points: Vertex[] = [first.from]
    let end = first.to
    for (;;) {
      if (Math.hypot(end[0] - first.from[0], end[1] - first.from[1]) < SAME * 20) break
      const next = left.findIndex((e) => Math.hypot(e.from[0] - end[0], e.from[1] - end[1]) < SAME * 20)
      if (next < 0) {
        points.push([end[0], end[1], 0])
        break
      }
      const [edge] = left.splice(next, 1)
      points.push(edge.from)
      end = edge.to
    }
    out.push(points)
  }
  return out
}

/** The net outline of a pattern. */
export function netOutline(pattern: Pick<Pattern, 'outline' | 'cuts'>): NetOutline {
  const blank = outlineArea(pattern.outline) < 0 ? reverseOutline(pattern.outline) : pattern.outline
  const sides = edgesOf(blank)
  const taken: (readonly [number, number])[][] = sides.map(() => [])
  const notches: { opening: string; outline: Outline }[] = []
  const windows: { opening: string; outline: Outline }[] = []
  const inner: Edge[] = []
  for (const cut of pattern.cuts) {
    // a cut runs clockwise along the edge of what stays, which the blank's anticlockwise contour then follows
    const outline = outlineArea(cut.outline) > 0 ? reverseOutline(cut.outline) : cut.outline
    const open: Edge[] = []
    let touches = false
    for (const edge of edgesOf(outline)) {
      const on = sides.map((side) => shared(side, edge))
      on.forEach((stretch, i) => {
        if (stretch) {
          taken[i].push(stretch)
          touches = true
        }
      })
      const along = on.findIndex((stretch) => stretch !== null)
      if (along < 0) open.push(edge)
    }
    if (touches) {
      notches.push(cut)
      inner.push(...open)
    } else windows.push(cut)
  }
  const removed: (readonly [number, number, number, number])[] = []
  const outer: Edge[] = []
  sides.forEach((side, i) => {
    if (side.from[2] !== 0) {
      outer.push(side)
      return
    }
    for (const [a, b] of rest(length(side), taken[i])) outer.push({ from: pointAlong(side, a), to: pointAlong(side, b) })
    for (const [a, b] of taken[i]) {
      const [p, q] = [pointAlong(side, a), pointAlong(side, b)]
      removed.push([p[0], p[1], q[0], q[1]])
    }
  })
  const contours = notches.length === 0 ? [blank] : chain([...outer, ...inner]).map(merged)
  return { contours, windows, notches, removed }
}

/** Neighbouring straight edges in one line become one edge. */
function merged(outline: Outline): Outline {
  const n = outline.length
  const kept = outline.filter((p, i) => {
    const [before, after] = [outline[(i + n - 1) % n], outline[(i + 1) % n]]
    if (before[2] !== 0 || p[2] !== 0) return true
    const cross = (p[0] - before[0]) * (after[1] - p[1]) - (p[1] - before[1]) * (after[0] - p[0])
    return Math.abs(cross) > SAME * SAME * 100 + SAME * 1e-3 * Math.hypot(after[0] - before[0], after[1] - before[1])
  })
  return kept.length >= 3 ? kept : outline
}
