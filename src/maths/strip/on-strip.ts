/**
 * Places on a strip, in space and laid flat. A place is a ruling, told by the arc lengths (s, t) of its two ends, and the share v of
 * the way from the first edge to the second. Rulings between those of the strip are found anew, so that they are torsal too.
 */
import { add, dot, length, scale, sub, type Vec3 } from '../vec.js'
import { type Line, torsalBetween } from './root.js'
import { torsal } from './ruling.js'
import { edgePoint } from './space-curve.js'
import type { DevelopableStrip } from './strip.js'
import type { FlatStrip } from './unroll.js'

/** A ruling by its ends, m along each edge. */
export interface Ends {
  readonly s: number
  readonly t: number
}

export type Flat = readonly [x: number, y: number]

/** The ruling at place `index` of the strip, which need not be whole: 12.25 lies a quarter of the way from ruling 12 to ruling 13. */
export function rulingBetween(strip: DevelopableStrip, index: number): Ends {
  const last = strip.rulings.length - 1
  const low = Math.max(0, Math.min(last - 1, Math.floor(index)))
  const share = Math.max(0, Math.min(1, index - low))
  const [a, b] = [strip.rulings[low], strip.rulings[low + 1]]
  const [ds, dt] = [b.s - a.s, b.t - a.t]
  if (share === 0) return { s: a.s, t: a.t }
  if (share === 1) return { s: b.s, t: b.t }
  if (ds === 0 || dt === 0 || a.fan !== 'none' || b.fan !== 'none') return { s: a.s + ds * share, t: a.t + dt * share }
  // the line of all places whose shares of ds and dt add up to twice `share`, as far as it lies in the cell
  const over = Math.min(2 * share, 2 - 2 * share, 1)
  const from = share < 0.5 ? { s: a.s, t: a.t + dt * over } : { s: b.s - ds * over, t: b.t }
  const to = share < 0.5 ? { s: a.s + ds * over, t: a.t } : { s: b.s, t: b.t - dt * over }
  return found(strip, from, to)
}

/** The ruling through an edge, `at` m along it. At the point of a fan it is the fan's inner one. */
export function rulingThrough(strip: DevelopableStrip, edge: 'p' | 'q', at: number): Ends {
  const { rulings } = strip
  const [own, other] = edge === 'p' ? (['s', 't'] as const) : (['t', 's'] as const)
  const k = cellAt(rulings.length, (i) => rulings[i][own], at)
  const [a, b] = [rulings[k], rulings[k + 1]]
  if (b === undefined || at <= a[own]) return { s: a.s, t: a.t }
  if (at >= b[own]) return { s: b.s, t: b.t }
  const ends = (to: number): Ends => (edge === 'p' ? { s: at, t: to } : { s: to, t: at })
  if (a[other] === b[other]) return ends(a[other])
  return found(strip, ends(a[other]), ends(b[other]), (at - a[own]) / (b[own] - a[own]))
}

/** The cell that holds a place on an edge: from the last ruling at or before it, but none of the last fan, whose rulings share its point. */
function cellAt(count: number, along: (k: number) => number, at: number): number {
  let [low, high] = [0, count - 1]
  const end = along(high)
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (along(middle) <= at && along(middle) < end) low = middle
    else high = middle
  }
  return low
}

/**
 * How far a branch may run back between two rulings, of the longer edge. Where both edges' curvatures jump within a hair of each other
 * one ruling is laid through both, and beside it the branch runs back by micrometres: no sheet feels it, and the cell's bound serves.
 */
const BACK = 1e-4

function found(strip: DevelopableStrip, from: Ends, to: Ends, even?: number): Ends {
  const { p, q } = strip
  const line = ({ s, t }: Ends): Line => ({ p: edgePoint(p, s), q: edgePoint(q, t) })
  const [a, b] = [line(from), line(to)]
  const at = torsalBetween(p, q, a, b, even)
  if (at) return { s: at.p.at, t: at.q.at }
  const [f, g] = [torsal(a.p, a.q), torsal(b.p, b.q)]
  const nearer = Math.abs(f) < Math.abs(g) ? { ends: from, off: f } : { ends: to, off: g }
  const back = Math.abs(nearer.off / (g - f)) * Math.max(to.s - from.s, Math.abs(to.t - from.t))
  if (!(back <= BACK * Math.max(p.length, q.length)))
    throw new Error(`no ruling between ${JSON.stringify(from)} and ${JSON.stringify(to)} of a strip that has one at both`)
  return nearer.ends
}

/** The point of the sheet at the share v along a ruling. */
export function pointOn(strip: DevelopableStrip, { s, t }: Ends, v: number): Vec3 {
  const from = strip.p.at(s)
  return add(from, scale(sub(strip.q.at(t), from), v))
}

/** The same point of the sheet laid flat. */
export function flatOn(flat: FlatStrip, { s, t }: Ends, v: number): Flat {
  const [a, b] = [flatEdge(flat, 'p', s), flatEdge(flat, 'q', t)]
  return [a[0] + (b[0] - a[0]) * v, a[1] + (b[1] - a[1]) * v]
}

/** A point of an edge laid flat, `at` m along it: the cubic that leaves both its neighbours in the edge's own direction. */
export function flatEdge(flat: FlatStrip, edge: 'p' | 'q', at: number): Flat {
  const [along, x, y, heading] = edge === 'p' ? [flat.s, flat.px, flat.py, flat.pHeading] : [flat.t, flat.qx, flat.qy, flat.qHeading]
  const k = cellAt(along.length, (i) => along[i], at)
  const run = along[k + 1] - along[k]
  const u = run > 0 ? Math.max(0, Math.min(1, (at - along[k]) / run)) : 0
  return [
    cubic(u, x[k], x[k + 1], run * Math.cos(heading[k]), run * Math.cos(heading[k + 1])),
    cubic(u, y[k], y[k + 1], run * Math.sin(heading[k]), run * Math.sin(heading[k + 1])),
  ]
}

/** The cubic from a at u = 0 to b at u = 1 that leaves with the slope ma and arrives with mb. */
export const cubic = (u: number, a: number, b: number, ma: number, mb: number): number =>
  a + u * (ma + u * (3 * (b - a) - 2 * ma - mb + u * (ma + mb - 2 * (b - a))))

/** Where a plane cuts the strip, ruling by ruling; a mid rib that follows the sheet runs along such a line. */
export interface Cut {
  readonly rulings: readonly Ends[]
  /** share of the way from the first edge to the second */
  readonly v: readonly number[]
  readonly points: readonly Vec3[]
  /** empty where the strip is not laid flat */
  readonly flat: readonly Flat[]
  /** arc length from the first point, m */
  readonly along: readonly number[]
}

/** The cut by the plane of all points x with normal . x = offset; rulings that miss the plane or lie in it are left out. */
export function crossPlane(strip: DevelopableStrip, normal: Vec3, offset: number, flat?: FlatStrip): Cut {
  const rulings: Ends[] = []
  const v: number[] = []
  for (const { s, t, from, to } of strip.rulings) {
    const rise = dot(normal, sub(to, from))
    const at = (offset - dot(normal, from)) / rise
    if (!(at >= 0 && at <= 1)) continue
    // rulings of a fan that all meet in one point of the plane make one point of the cut
    const last = rulings.length - 1
    if (last >= 0 && ((at === 0 && v[last] === 0 && rulings[last].s === s) || (at === 1 && v[last] === 1 && rulings[last].t === t)))
      continue
    rulings.push({ s, t })
    v.push(at)
  }
  const points = rulings.map((each, k) => pointOn(strip, each, v[k]))
  return Object.freeze({
    rulings,
    v,
    points,
    flat: flat ? rulings.map((each, k) => flatOn(flat, each, v[k])) : [],
    along: arcLengths(points),
  })
}

/** Length along a smooth curve through the points: chords, each longer by a 24th of its turn squared, as on a circle. */
function arcLengths(points: readonly Vec3[]): number[] {
  const chords = points.slice(1).map((point, k) => sub(point, points[k]))
  const lengths = chords.map(length)
  // turn from the middle of one chord to the middle of the next
  const turns = chords
    .slice(1)
    .map((chord, k) => Math.acos(Math.max(-1, Math.min(1, dot(chord, chords[k]) / (lengths[k + 1] * lengths[k])))))
  const along = [0]
  lengths.forEach((chord, k) => {
    const bends = [k - 1, k].flatMap((at) => (at >= 0 && at < turns.length ? [(2 * turns[at]) / (lengths[at] + lengths[at + 1])] : []))
    const turn = chord * (bends.reduce((a, b) => a + b, 0) / Math.max(1, bends.length))
    along.push(along[k] + chord * (1 + (turn * turn) / 24))
  })
  return along
}
