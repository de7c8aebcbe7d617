/** How a strip fits what it replaces and what it meets: how far it stands inside a surface, and at what angle two sheets meet. */
import { cross, dot, length, sub, unit, type Vec3 } from '../vec.js'
import { type Ends, pointOn, rulingBetween, rulingThrough } from './on-strip.js'
import type { DevelopableStrip } from './strip.js'

export interface Standoff extends Ends {
  /** m, positive inside */
  readonly depth: number
  readonly v: number
  readonly point: Vec3
}

/** Places tried across the strip, and how often the net about the deepest is drawn tighter. */
const ACROSS = 8
const TIGHTER = 6

/** Where the strip stands furthest inside a surface; `depth` tells how far inside it a point is, m. Searched on a net, then about its deepest place. */
export function distanceInside(strip: DevelopableStrip, depth: (point: Vec3) => number): Standoff {
  const last = strip.rulings.length - 1
  let best = { depth: Number.NEGATIVE_INFINITY, index: 0, v: 0 }
  const attempt = (index: number, v: number, ends: Ends): void => {
    if (index < 0 || index > last || v < 0 || v > 1) return
    const deep = depth(pointOn(strip, ends, v))
    if (deep > best.depth) best = { depth: deep, index, v }
  }
  for (let k = 0; k <= last; k += 2) for (let i = 0; i <= ACROSS; i++) attempt(k, i / ACROSS, strip.rulings[k])
  let [along, across] = [1, 0.5 / ACROSS]
  for (let n = 0; n < TIGHTER; n++) {
    const { index, v } = best
    for (const di of [-along, 0, along]) {
      const at = Math.max(0, Math.min(last, index + di))
      const ends = rulingBetween(strip, at)
      for (const dv of [-across, 0, across]) attempt(at, v + dv, ends)
    }
    along /= 2
    across /= 2
  }
  const ends = rulingBetween(strip, best.index)
  return Object.freeze({ depth: best.depth, ...ends, v: best.v, point: pointOn(strip, ends, best.v) })
}

/** Unit normal of the sheet at one of its edges, `at` m along it. */
export function edgeNormal(strip: DevelopableStrip, edge: 'p' | 'q', at: number): Vec3 {
  const { s, t } = rulingThrough(strip, edge, at)
  // in a fan about a point of the other edge it is this edge that spans the sheet with the ruling
  const tangent = edge === 'p' ? strip.p.tangent(s) : strip.q.tangent(t)
  return unit(cross(tangent, sub(strip.q.at(t), strip.p.at(s))))
}

/** Angle by which two surfaces fail to run on into each other, at the largest, from their normals at the same places; and which place. */
export function kink(one: readonly Vec3[], other: readonly Vec3[]): { readonly most: number; readonly place: number } {
  if (one.length !== other.length || one.length === 0) throw new Error(`a kink of ${one.length} normals against ${other.length}`)
  let [most, place] = [-1, 0]
  one.forEach((normal, k) => {
    const angle = Math.atan2(length(cross(normal, other[k])), dot(normal, other[k]))
    if (angle > most) [most, place] = [angle, k]
  })
  return { most, place }
}
