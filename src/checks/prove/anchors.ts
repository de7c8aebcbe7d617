/**
 * Which pairs of listed holes to start from. A pair is a good anchor when few pairs of ours are as far apart (end holes,
 * corners of a rim, a lone hole) and when it is long, so that the turn it gives is sharp.
 */
import type { PairDistances } from './pair-distances.js'
import type { Points } from './rigid.js'

export interface Anchor {
  readonly a: number
  readonly b: number
  readonly distance: number
  /** pairs of ours that may answer it */
  readonly answers: number
}

/** Only pairs among so many listed holes are weighed; a full sheet has far more than are needed. */
const MOST_CANDIDATES = 90

/** Largest distance between two of the points, and the points that stand out in 16 directions. */
function outermost(p: Points): number[] {
  const found = new Set<number>()
  for (let k = 0; k < 32; k++) {
    const c = Math.cos((k * Math.PI) / 16),
      s = Math.sin((k * Math.PI) / 16)
    let best = 0
    for (let i = 1; i < p.x.length; i++) {
      if (c * p.x[i] + s * p.y[i] > c * p.x[best] + s * p.y[best]) best = i
    }
    found.add(best)
  }
  return [...found]
}

/** Long, rare pairs first and each hole in one of them, so that one wrong hole can spoil only one; then the rest. */
export function chooseAnchors(list: Points, ours: PairDistances, slack: number, most: number): readonly Anchor[] {
  const n = list.x.length
  const chosen = new Set(outermost(list))
  const step = Math.max(1, Math.floor(n / (MOST_CANDIDATES - chosen.size)))
  for (let i = 0; i < n && chosen.size < MOST_CANDIDATES; i += step) chosen.add(i)
  const points = [...chosen]
  const all: Anchor[] = []
  for (let u = 0; u < points.length; u++) {
    for (let v = u + 1; v < points.length; v++) {
      const a = points[u]
      const b = points[v]
      const distance = Math.hypot(list.x[a] - list.x[b], list.y[a] - list.y[b])
      // no two of ours are as far apart: one of the pair is not ours, and neither may hide the other's good pairs
      const answers = distance > 4 * slack ? ours.count(distance, slack) : 0
      if (answers > 0) all.push({ a, b, distance, answers })
    }
  }
  return inOrder(all, most)
}

/** Long before short, each hole once before any twice, rare before common. */
function inOrder(all: readonly Anchor[], most: number): readonly Anchor[] {
  const longest = all.reduce((far, p) => Math.max(far, p.distance), 0)
  const rarest = [...all].sort((p, q) => p.answers - q.answers || q.distance - p.distance || p.a - q.a || p.b - q.b)
  // half the longest: the turn is then sharp enough for the far end to be looked for within a few tolerances
  const long = rarest.filter((p) => p.distance >= longest / 2)
  const short = rarest.filter((p) => p.distance < longest / 2)
  const used = new Set<number>()
  const alone: Anchor[] = []
  const again: Anchor[] = []
  for (const pair of [...long, ...short]) {
    const fresh = !used.has(pair.a) && !used.has(pair.b)
    if (fresh) used.add(pair.a).add(pair.b)
    ;(fresh ? alone : again).push(pair)
  }
  return [...alone, ...again].slice(0, most)
}
