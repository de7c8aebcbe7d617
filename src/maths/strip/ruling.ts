/**
 * One ruling: the straight line from a point of edge p to a point of edge q. It lies in a developable sheet when the tangents of
 * both edges and the line itself lie in one plane, F = det[p', q', d] = 0 with d from p to q: the torsal condition, classical.
 * Then the sheet's plane is the same all along the line. How far from it a line is can be said two ways: the residual
 * |F| / (|p'||q'||d|), and the warp, the angle between the planes at its two ends.
 */
import { cross, dot, length, scale, sub, unit, type Vec3 } from '../vec.js'
import type { EdgePoint } from './space-curve.js'

export interface Ruling {
  /** arc lengths along p and along q, m */
  readonly s: number
  readonly t: number
  /** in a fan one end stays at its edge's own end while the other moves: a cone about that point, developable whatever F is */
  readonly fan: 'none' | 'p' | 'q'
  readonly from: Vec3
  readonly to: Vec3
  /** m */
  readonly length: number
  /** unit, from p to q; where the edges meet, the limit of a symmetric strip */
  readonly direction: Vec3
  /** unit normal of the sheet, p' x d */
  readonly normal: Vec3
  /** |F| / (|p'||q'||d|); 0 in a fan */
  readonly residual: number
  /** the planes at the two ends face away from each other: the sheet would fold over along the line. Never so in a fan */
  readonly turnedOver: boolean
  /** angles from the tangents of p and of q to the ruling, 0 to pi */
  readonly pAngle: number
  readonly qAngle: number
}

/** Edges nearer than this have met, m. */
const MET = 1e-9

/** F / |d| for unit tangents, signed; 0 where the edges meet. */
export function torsal(p: EdgePoint, q: EdgePoint): number {
  const [a, b] = [p.point, q.point]
  const [u, w] = [p.tangent, q.tangent]
  const x = b[0] - a[0]
  const y = b[1] - a[1]
  const z = b[2] - a[2]
  const far = Math.sqrt(x * x + y * y + z * z)
  if (far < MET) return 0
  return (u[0] * (w[1] * z - w[2] * y) + u[1] * (w[2] * x - w[0] * z) + u[2] * (w[0] * y - w[1] * x)) / far
}

/** (p' x d) . (q' x d) / |d|^2: below zero where the sheet turns over along the line, which puts its edge of regression inside. */
export function sameSide(p: EdgePoint, q: EdgePoint): number {
  const d = sub(q.point, p.point)
  const square = dot(d, d)
  if (square < MET * MET) return 1
  return dot(p.tangent, q.tangent) - (dot(p.tangent, d) * dot(q.tangent, d)) / square
}

/** Angle between the sheet's planes at the two ends, 0 to pi. */
export function warp(p: EdgePoint, q: EdgePoint): number {
  const d = sub(q.point, p.point)
  const [m, n] = [cross(p.tangent, d), cross(q.tangent, d)]
  return Math.atan2(length(cross(m, n)), dot(m, n))
}

export function rulingOf(p: EdgePoint, q: EdgePoint, fan: Ruling['fan']): Ruling {
  const d = sub(q.point, p.point)
  const far = length(d)
  const met = far < MET
  const direction = met ? unit(sub(q.tangent, p.tangent)) : scale(d, 1 / far)
  const [across, other] = [cross(p.tangent, direction), cross(q.tangent, direction)]
  const normal =
    fan === 'p' ? unit(other) : fan === 'q' ? unit(across) : unit([across[0] + other[0], across[1] + other[1], across[2] + other[2]])
  return {
    s: p.at,
    t: q.at,
    fan,
    from: p.point,
    to: q.point,
    length: met ? 0 : far,
    direction,
    normal,
    residual: fan === 'none' ? Math.abs(torsal(p, q)) : 0,
    turnedOver: fan === 'none' && dot(across, other) <= 0,
    pAngle: Math.atan2(length(across), dot(p.tangent, direction)),
    qAngle: Math.atan2(length(other), dot(q.tangent, direction)),
  }
}
