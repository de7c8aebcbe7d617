/**
 * Every way a list of holes can lie on a pattern: either hand, any turn, any origin.
 *
 * Each anchor pair of the list is laid on every pair of ours as far apart; each such placement is tried on the rest of the
 * list and dropped as soon as it misses more than the best so far. A misfit spoils one anchor only, and the anchors share no
 * hole, so looking from one anchor more than the best has misfits finds every placement that fits as well as the best.
 */
import type { Anchor } from './anchors.js'
import { chooseAnchors } from './anchors.js'
import type { HoleFinder } from './hole-finder.js'
import type { PairDistances } from './pair-distances.js'
import type { Points, Rigid } from './rigid.js'
import { fitRigid, moveX, moveY, rigidFromPair } from './rigid.js'

export interface Ours {
  readonly points: Points
  readonly finder: HoleFinder
  readonly pairs: PairDistances
  readonly corners: HoleFinder
}

export interface Found {
  readonly rigid: Rigid
  /** listed holes, and listed corners, that no hole or corner of ours is near enough to */
  readonly misfits: number
  readonly rms: number
}

export interface SearchTask {
  readonly list: Points
  readonly corners: Points
  readonly tolerance: number
  /** how far a listed corner of the sheet may be from ours, m */
  readonly cornerTolerance: number
  /** nothing with more misfits than this is wanted */
  readonly allowed: number
}

const MOST_ANCHORS = 24
const MOST_KEPT = 400
/** A short anchor's turn is loose; looking wider than this for the far end finds only wrong holes, m. */
const MOST_REACH = 0.004

/** Rows are straight: a list on one line looks the same mirrored across it, so only one hand need be tried. */
function onOneLine(p: Points, slack: number): boolean {
  const n = p.x.length
  let far = 0
  for (let i = 1; i < n; i++) if (Math.hypot(p.x[i] - p.x[0], p.y[i] - p.y[0]) > Math.hypot(p.x[far] - p.x[0], p.y[far] - p.y[0])) far = i
  const dx = p.x[far] - p.x[0],
    dy = p.y[far] - p.y[0]
  const size = Math.hypot(dx, dy)
  if (size === 0) return true
  for (let i = 0; i < n; i++) if (Math.abs((p.x[i] - p.x[0]) * dy - (p.y[i] - p.y[0]) * dx) / size > slack) return false
  return true
}

/** A fixed shuffle, so that a few places taken from the front are spread over the list. */
function spread(n: number): Int32Array {
  const order = Int32Array.from({ length: n }, (_, i) => i)
  let seed = 12345
  for (let i = n - 1; i > 0; i--) {
    seed = (Math.imul(seed, 1103515245) + 12345) & 0x7fffffff
    const j = seed % (i + 1)
    const held = order[i]
    order[i] = order[j]
    order[j] = held
  }
  return order
}

function cornerMisfits(r: Rigid, corners: Points, ours: HoleFinder, tolerance: number): number {
  let misfits = 0
  for (let i = 0; i < corners.x.length; i++) {
    if (ours.nearest(moveX(r, corners.x[i], corners.y[i]), moveY(r, corners.x[i], corners.y[i]), tolerance) < 0) misfits++
  }
  return misfits
}

/** Holes with none of ours within `reach`; counting stops past `allowed`. */
function missesOf(r: Rigid, list: Points, order: Int32Array, ours: HoleFinder, reach: number, allowed: number): number {
  let misses = 0
  for (let k = 0; k < order.length; k++) {
    const i = order[k]
    if (!ours.any(moveX(r, list.x[i], list.y[i]), moveY(r, list.x[i], list.y[i]), reach)) {
      if (++misses > allowed) return misses
      // hopeless from the first two dozen: a real placement answers at least half of the list
      if (k < 24 && misses > 15) return Infinity
    }
  }
  return misses
}

/** Pairs each listed hole with the nearest of ours and fits again, closing in to the tolerance. */
function refine(start: Rigid, task: SearchTask, ours: Ours, reach: number): Found {
  const { list, tolerance } = task
  const n = list.x.length
  const to = new Int32Array(n)
  let now = start
  for (const radius of [reach, 3 * tolerance, 2 * tolerance, tolerance, tolerance, tolerance]) {
    let paired = 0
    for (let i = 0; i < n; i++) {
      to[i] = ours.finder.nearest(moveX(now, list.x[i], list.y[i]), moveY(now, list.x[i], list.y[i]), radius)
      if (to[i] >= 0) paired++
    }
    if (paired < 2 || 2 * paired < n) break
    now = fitRigid(now.hand, list, ours.points, to, null) ?? now
  }
  let misfits = 0,
    squares = 0
  for (let i = 0; i < n; i++) {
    const x = moveX(now, list.x[i], list.y[i]),
      y = moveY(now, list.x[i], list.y[i])
    const j = ours.finder.nearest(x, y, tolerance)
    if (j < 0) misfits++
    else squares += (x - ours.points.x[j]) ** 2 + (y - ours.points.y[j]) ** 2
  }
  const rms = misfits < n ? Math.sqrt(squares / (n - misfits)) : Infinity
  return { rigid: now, misfits: misfits + cornerMisfits(now, task.corners, ours.corners, task.cornerTolerance), rms }
}

/** Two placements are one when they put every listed hole in the same place; the list's outermost holes decide. */
function sameOn(a: Rigid, b: Rigid, list: Points, probes: readonly number[], near: number): boolean {
  return probes.every(
    (i) =>
      Math.abs(moveX(a, list.x[i], list.y[i]) - moveX(b, list.x[i], list.y[i])) <= near &&
      Math.abs(moveY(a, list.x[i], list.y[i]) - moveY(b, list.x[i], list.y[i])) <= near,
  )
}

function candidatesOf(anchor: Anchor, list: Points, ours: Ours, slack: number, hands: readonly (1 | -1)[], use: (r: Rigid) => void): void {
  const { a, b } = anchor
  const p = ours.points
  ours.pairs.each(anchor.distance, slack, (i, j) => {
    for (const hand of hands) {
      use(rigidFromPair(hand, list.x[a], list.y[a], list.x[b], list.y[b], p.x[i], p.y[i], p.x[j], p.y[j]))
      use(rigidFromPair(hand, list.x[a], list.y[a], list.x[b], list.y[b], p.x[j], p.y[j], p.x[i], p.y[i]))
    }
  })
}

/** Every placement that fits as well as the best one, best first (fewest misfits, then least rms). */
export function searchPlacements(task: SearchTask, ours: Ours): readonly Found[] {
  const { list, tolerance } = task
  const slack = 2 * tolerance
  const anchors = chooseAnchors(list, ours.pairs, slack, MOST_ANCHORS)
  const longest = Math.max(0, ...anchors.map((a) => a.distance))
  const probes = [...new Set(anchors.slice(0, 3).flatMap((a) => [a.a, a.b]))]
  const order = spread(list.x.length)
  const hands: readonly (1 | -1)[] = onOneLine(list, 3 * tolerance) ? [1] : [1, -1]
  let kept: Found[] = []
  let best = task.allowed
  for (let k = 0; k < anchors.length && k <= best; k++) {
    const anchor = anchors[k]
    // the placement of an anchor may be out by a tolerance at its middle and by the turn it gives at the far end
    const reach = Math.min(tolerance * (2 + (4 * longest) / anchor.distance), Math.max(MOST_REACH, 6 * tolerance))
    const tried: { readonly r: Rigid; readonly misses: number }[] = []
    candidatesOf(anchor, list, ours, slack, hands, (r) => {
      const misses = missesOf(r, list, order, ours.finder, reach, best)
      if (misses <= best) tried.push({ r, misses })
    })
    tried.sort((p, q) => p.misses - q.misses)
    for (const { r, misses } of tried) {
      if (misses > best) break
      if (kept.some((f) => sameOn(f.rigid, r, list, probes, reach + tolerance))) continue
      const found = refine(r, task, ours, reach)
      if (found.misfits > best || kept.some((f) => sameOn(f.rigid, found.rigid, list, probes, 3 * tolerance))) continue
      if (found.misfits < best) {
        best = found.misfits
        kept = kept.filter((f) => f.misfits <= best)
      }
      if (kept.length < MOST_KEPT) kept.push(found)
    }
  }
  return kept.sort((p, q) => p.misfits - q.misfits || p.rms - q.rms)
}
