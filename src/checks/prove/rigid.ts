/** Rigid moves in the plane with either hand, and the best one over given pairs. Plain numbers, m. */
import type { Placement } from './nouns.js'

/** c, s of the turn; `hand` -1 reverses x before turning. */
export interface Rigid {
  readonly hand: 1 | -1
  readonly c: number
  readonly s: number
  readonly tx: number
  readonly ty: number
}

export type Points = { readonly x: Float64Array; readonly y: Float64Array }

export const moveX = (r: Rigid, x: number, y: number): number => r.c * r.hand * x - r.s * y + r.tx
export const moveY = (r: Rigid, x: number, y: number): number => r.s * r.hand * x + r.c * y + r.ty

/** Where a point of the pattern is in the list's axes. */
export function moveBack(r: Rigid, x: number, y: number): readonly [number, number] {
  const u = x - r.tx
  const v = y - r.ty
  return [r.hand * (r.c * u + r.s * v), r.c * v - r.s * u]
}

export function toPlacement(r: Rigid): Placement {
  return { mirrored: r.hand < 0, turn: Math.atan2(r.s, r.c), x: r.tx, y: r.ty }
}

/** The move that lays segment a-b (list) on p-q (ours), middle on middle. Lengths need not agree. */
export function rigidFromPair(
  hand: 1 | -1,
  ax: number,
  ay: number,
  bx: number,
  by: number,
  px: number,
  py: number,
  qx: number,
  qy: number,
): Rigid {
  const ux = hand * (bx - ax)
  const uy = by - ay
  const vx = qx - px
  const vy = qy - py
  const size = Math.hypot(ux, uy) * Math.hypot(vx, vy)
  const c = (ux * vx + uy * vy) / size
  const s = (ux * vy - uy * vx) / size
  const mx = (hand * (ax + bx)) / 2
  const my = (ay + by) / 2
  return { hand, c, s, tx: (px + qx) / 2 - (c * mx - s * my), ty: (py + qy) / 2 - (s * mx + c * my) }
}

/**
 * Weighted least squares over pairs list[i] -> ours[to[i]] (to[i] < 0 is left out); closed form, Procrustes in the plane.
 * Null when fewer than two pairs carry weight.
 */
export function fitRigid(hand: 1 | -1, list: Points, ours: Points, to: Int32Array, weight: Float64Array | null): Rigid | null {
  let w = 0,
    ax = 0,
    ay = 0,
    bx = 0,
    by = 0,
    n = 0
  for (let i = 0; i < to.length; i++) {
    const j = to[i]
    if (j < 0) continue
    const k = weight ? weight[i] : 1
    w += k
    n++
    ax += k * hand * list.x[i]
    ay += k * list.y[i]
    bx += k * ours.x[j]
    by += k * ours.y[j]
  }
  if (n < 2 || !(w > 0)) return null
  ax /= w
  ay /= w
  bx /= w
  by /= w
  let dot = 0,
    cross = 0
  for (let i = 0; i < to.length; i++) {
    const j = to[i]
    if (j < 0) continue
    const k = weight ? weight[i] : 1
    const px = hand * list.x[i] - ax,
      py = list.y[i] - ay
    const qx = ours.x[j] - bx,
      qy = ours.y[j] - by
    dot += k * (px * qx + py * qy)
    cross += k * (px * qy - py * qx)
  }
  const size = Math.hypot(dot, cross)
  if (size === 0) return null
  const c = dot / size,
    s = cross / size
  return { hand, c, s, tx: bx - (c * ax - s * ay), ty: by - (s * ax + c * ay) }
}

/** Largest distance over the pairs, m. */
export function worstOver(r: Rigid, list: Points, ours: Points, to: Int32Array): number {
  let worst = 0
  for (let i = 0; i < to.length; i++) {
    const j = to[i]
    if (j < 0) continue
    worst = Math.max(worst, Math.hypot(moveX(r, list.x[i], list.y[i]) - ours.x[j], moveY(r, list.x[i], list.y[i]) - ours.y[j]))
  }
  return worst
}

/**
 * The move whose largest distance is least, by Lawson's reweighting (Lawson 1961; each weight grows with its distance).
 * It converges from above, so the figure returned is one that a real placement reaches.
 */
export function fitMinimax(
  start: Rigid,
  list: Points,
  ours: Points,
  to: Int32Array,
  rounds = 60,
): { readonly rigid: Rigid; readonly worst: number } {
  let best = start
  let worst = worstOver(start, list, ours, to)
  const weight = new Float64Array(to.length).fill(1)
  let now = start
  for (let round = 0; round < rounds && worst > 1e-9; round++) {
    let total = 0
    for (let i = 0; i < to.length; i++) {
      const j = to[i]
      if (j < 0) continue
      const d = Math.hypot(moveX(now, list.x[i], list.y[i]) - ours.x[j], moveY(now, list.x[i], list.y[i]) - ours.y[j])
      weight[i] = weight[i] * (d + 1e-12)
      total += weight[i]
    }
    for (let i = 0; i < weight.length; i++) weight[i] = weight[i] / total
    const next = fitRigid(start.hand, list, ours, to, weight)
    if (!next) break
    now = next
    const reached = worstOver(now, list, ours, to)
    if (reached < worst) {
      worst = reached
      best = now
    }
  }
  return { rigid: best, worst }
}
