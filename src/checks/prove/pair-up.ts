/** One listed hole to one of ours: nearest pairs first, nothing farther than a few millimetres. */
import type { HoleFinder } from './hole-finder.js'
import type { Points, Rigid } from './rigid.js'
import { moveX, moveY } from './rigid.js'

/** to[i] is our hole for listed hole i, or -1. `reach` in m. A hole of ours is given to the nearest listed hole only. */
export function pairUp(r: Rigid, list: Points, ours: HoleFinder, points: Points, reach: number): Int32Array {
  const near: { readonly i: number; readonly j: number; readonly d: number }[] = []
  for (let i = 0; i < list.x.length; i++) {
    const x = moveX(r, list.x[i], list.y[i]),
      y = moveY(r, list.x[i], list.y[i])
    for (const j of ours.within(x, y, reach)) near.push({ i, j, d: Math.hypot(x - points.x[j], y - points.y[j]) })
  }
  near.sort((p, q) => p.d - q.d || p.i - q.i || p.j - q.j)
  const to = new Int32Array(list.x.length).fill(-1)
  const taken = new Set<number>()
  for (const { i, j } of near) {
    if (to[i] >= 0 || taken.has(j)) continue
    to[i] = j
    taken.add(j)
  }
  return to
}
