/**
 * Edge curves of a strip, walked by their own arc length. m.
 * A curve may be smooth by pieces: its tangent is continuous, its curvature may jump.
 */
import { integrate } from '../quadrature.js'
import { length, unit, type Vec3 } from '../vec.js'

export interface SpaceCurve {
  /** m */
  readonly length: number
  /** point at arc length s, 0 to length */
  readonly at: (s: number) => Vec3
  /** unit tangent in the direction of growing s */
  readonly tangent: (s: number) => Vec3
  /** arc lengths where the curvature jumps, if known: a ruling is laid through each, which keeps the steps between them smooth */
  readonly breaks?: readonly number[]
}

/** A point of an edge with its tangent. */
export interface EdgePoint {
  readonly at: number
  readonly point: Vec3
  readonly tangent: Vec3
}

export const edgePoint = (curve: SpaceCurve, at: number): EdgePoint => ({ at, point: curve.at(at), tangent: curve.tangent(at) })

/** Panels of the length table, and Newton steps on it: with the 8-point rule lengths are good to the last digits. */
const PANELS = 64
const NEWTON = 6

/** A curve given by any smooth parameter u, `from` to `to`, with its derivative, made into one walked by arc length. */
export function curveByLength(point: (u: number) => Vec3, derivative: (u: number) => Vec3, from: number, to: number): SpaceCurve {
  const speed = (u: number): number => length(derivative(u))
  const step = (to - from) / PANELS
  const lengths = [0]
  for (let i = 0; i < PANELS; i++) lengths.push(lengths[i] + integrate(speed, from + i * step, from + (i + 1) * step, 1))
  const total = lengths[PANELS]
  const parameter = (s: number): number => {
    if (s <= 0) return from
    if (s >= total) return to
    let panel = Math.min(PANELS - 1, Math.floor((s / total) * PANELS))
    while (panel > 0 && lengths[panel] > s) panel--
    while (panel < PANELS - 1 && lengths[panel + 1] < s) panel++
    const start = from + panel * step
    const rest = s - lengths[panel]
    let u = start + (step * rest) / (lengths[panel + 1] - lengths[panel])
    for (let k = 0; k < NEWTON; k++) {
      const miss = integrate(speed, start, u, 1) - rest
      u -= miss / speed(u)
      if (Math.abs(miss) < 1e-15 * total) break
    }
    return u
  }
  return { length: total, at: (s) => point(parameter(s)), tangent: (s) => unit(derivative(parameter(s))) }
}
