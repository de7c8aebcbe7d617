/** Five hundred pairs of ribs drawn at random: every strip is developable, checked anew from the curves, or refused for cause. */
import { describe, expect, it } from 'vitest'
import { count } from '../../../tests/counts.js'
import { randomRibs } from '../../../tests/made-up-edges.js'
import { chance } from '../../../tests/random.js'
import type { Vec3 } from '../vec.js'
import { stripFacts } from './facts.js'
import { rulingBetween } from './on-strip.js'
import type { SpaceCurve } from './space-curve.js'
import { type DevelopableStrip, stripBetween } from './strip.js'
import { unroll } from './unroll.js'

/** det[u, w, d] by Sarrus' rule, written apart from the solver's own. */
const det = (u: Vec3, w: Vec3, d: Vec3): number =>
  u[0] * w[1] * d[2] + u[1] * w[2] * d[0] + u[2] * w[0] * d[1] - u[2] * w[1] * d[0] - u[1] * w[0] * d[2] - u[0] * w[2] * d[1]

/** |F| / (|p'||q'||d|), from points of the curves alone: tangents by difference, so as not to trust those that the curve states. */
function residual(p: SpaceCurve, q: SpaceCurve, s: number, t: number): number {
  const h = 1e-5
  const slope = (c: SpaceCurve, at: number): Vec3 => {
    const [a, b] = [c.at(Math.max(0, at - h)), c.at(Math.min(c.length, at + h))]
    return [b[0] - a[0], b[1] - a[1], b[2] - a[2]]
  }
  const [from, to] = [p.at(s), q.at(t)]
  const d: Vec3 = [to[0] - from[0], to[1] - from[1], to[2] - from[2]]
  const [u, w] = [slope(p, s), slope(q, t)]
  return Math.abs(det(u, w, d)) / (Math.hypot(...u) * Math.hypot(...w) * Math.hypot(...d))
}

/** The same with the tangents the curves state. */
function exact(p: SpaceCurve, q: SpaceCurve, s: number, t: number): number {
  const [from, to] = [p.at(s), q.at(t)]
  const d: Vec3 = [to[0] - from[0], to[1] - from[1], to[2] - from[2]]
  return Math.abs(det(p.tangent(s), q.tangent(t), d)) / Math.hypot(...d)
}

const SHARES = [0.27, 0.71]

function held(strip: DevelopableStrip): void {
  const { p, q, rulings } = strip
  const [first, last] = [rulings[0], rulings[rulings.length - 1]]
  expect([first.s, first.t, last.s, last.t]).toEqual([0, 0, p.length, q.length])
  let [worst, side] = [0, 0]
  let before = { s: 0, t: 0 }
  for (let k = 0; k + 1 < rulings.length; k++) {
    for (const share of SHARES) {
      const { s, t } = rulingBetween(strip, k + share)
      if (s < before.s || t < before.t) throw new Error(`runs back at ${k + share}`)
      before = { s, t }
      const inFan = rulings[k].fan !== 'none' || rulings[k + 1].fan !== 'none'
      if (inFan) {
        const corners = [s, t, s - p.length, t - q.length]
        if (!corners.includes(0)) throw new Error(`a fan about no corner at ${s}, ${t}`)
      } else worst = Math.max(worst, exact(p, q, s, t))
      // the sheet keeps its upper side up: width between rulings never turns negative anywhere across
      const d = q.at(t).map((x, i) => x - p.at(s)[i]) as unknown as Vec3
      const up: Vec3 = rulings[k].normal
      const [wide, far] = [det(p.tangent(s), d, up), det(q.tangent(t), d, up)]
      if (!inFan) side = Math.min(side, wide, far)
    }
  }
  expect(worst).toBeLessThanOrEqual(1e-6)
  expect(side).toBe(0)
}

describe('strips between ribs drawn at random', () => {
  const c = chance(20240)
  const pairs = Array.from({ length: count(500) }, () => randomRibs(c))
  const strips = pairs.map(([p, q]) => stripBetween(p, q))
  const good = strips.filter((strip) => strip.kind === 'developable')

  it('are developable to 1e-6 on every ruling between those stored, on one branch, with no edge of regression inside', () => {
    for (const strip of good) held(strip)
    expect(good.length).toBeGreaterThan(0.8 * strips.length)
    expect(good.length).toBeLessThan(strips.length)
  })
  it('are developable by points of the curves alone', () => {
    for (const { p, q, rulings } of good.slice(0, count(50)))
      for (const { s, t, fan } of rulings)
        if (fan === 'none' && Math.min(s, t, p.length - s, q.length - t) > 1e-4) {
          const near = [...(p.breaks ?? []).map((at) => at - s), ...(q.breaks ?? []).map((at) => at - t)]
          if (near.every((gap) => Math.abs(gap) > 2e-5)) expect(residual(p, q, s, t)).toBeLessThan(1e-6)
        }
  })
  it('lie flat with both edges as long as the curves, and as much area', () => {
    for (const strip of good) {
      const facts = stripFacts(strip, unroll(strip))
      expect(facts.isometry).toBeLessThan(5e-7)
      expect(facts.area.residual).toBeLessThan(5e-7)
    }
  })
  it('are refused with a place, a warp and a sentence; where there is no root, F keeps its sign there', () => {
    strips.forEach((strip, i) => {
      if (strip.kind === 'developable') return
      const [p, q] = pairs[i]
      expect(['no root', 'not monotone', 'edge of regression']).toContain(strip.reason)
      expect(strip.says).toMatch(/^No flat sheet wraps between these edges: \d+ mm along the first edge /)
      expect(strip.at.s).toBeGreaterThanOrEqual(0)
      expect(strip.at.s).toBeLessThanOrEqual(p.length)
      if (strip.reason !== 'no root') return
      expect(strip.leastWarp).toBeGreaterThan(0)
      const from = p.at(strip.at.s)
      const F = Array.from({ length: 201 }, (_, k) => {
        const to = q.at((q.length * k) / 200)
        const d: Vec3 = [to[0] - from[0], to[1] - from[1], to[2] - from[2]]
        const [u, w] = [p.tangent(strip.at.s), q.tangent((q.length * k) / 200)]
        // only lines along which the sheet is not turned over count
        const same =
          u[0] * w[0] +
          u[1] * w[1] +
          u[2] * w[2] -
          ((u[0] * d[0] + u[1] * d[1] + u[2] * d[2]) * (w[0] * d[0] + w[1] * d[1] + w[2] * d[2])) / (d[0] ** 2 + d[1] ** 2 + d[2] ** 2)
        return same > 0 ? Math.sign(det(u, w, d)) : 0
      }).filter((sign) => sign !== 0)
      expect(new Set(F).size, `${i}: ${strip.says}`).toBe(1)
    })
  })
})
