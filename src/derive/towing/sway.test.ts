import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { count } from '../../../tests/counts.js'
import { chance } from '../../../tests/random.js'
import { eigenvalues, type Matrix } from '../../maths/linear/matrix.js'
import type { Rig } from '../road-nouns.js'
import { divergenceSpeed, swayModes, swaySweep, zeroDampingSpeed } from './sway.js'

/** A car and a trailer of no make, on which variants are tried. */
interface Given {
  readonly m1: number
  readonly J1: number
  readonly a: number
  readonly b: number
  readonly e: number
  readonly m2: number
  readonly J2: number
  readonly d: number
  readonly l: number
  readonly Cf: number
  readonly Cr: number
  readonly Ct: number
  readonly ch: number
}
const BASE: Given = {
  ...{ m1: 1800, J1: 3000, a: 1.35, b: 1.45, e: 2.45 },
  ...{ m2: 1800, J2: 4500, d: 4.1, l: 4.4, Cf: 110e3, Cr: 130e3, Ct: 110e3, ch: 0 },
}
const rig = (change: Partial<Given> = {}): Rig => {
  const g = { ...BASE, ...change }
  return {
    car: { mass: g.m1, yawInertia: g.J1, front: g.a, rear: g.b, ball: g.e, frontStiffness: g.Cf, rearStiffness: g.Cr },
    trailer: { mass: g.m2, yawInertia: g.J2, centre: g.d, axles: [{ at: g.l, stiffness: g.Ct }] },
    hitchDamping: g.ch,
  }
}

/** By Newton's equations written out one by one: an independent way to the same roots. States v, r, phi', phi. */
function newton(g: Given, V: number): Matrix {
  const { m1, J1, a, b, e, m2, J2, d, l, Cf, Cr, Ct, ch } = g
  // m (v', r', phi'') = rest (v, r, phi', phi)
  const m = [
    [m1 + m2, -m2 * (e + d), m2 * d],
    [-e * m2, J1 + e * m2 * (e + d), -e * m2 * d],
    [-d * m2, J2 + d * m2 * (e + d), -J2 - d * m2 * d],
  ]
  const front = [-Cf / V, (-Cf * a) / V, 0, 0]
  const rear = [-Cr / V, (Cr * b) / V, 0, 0]
  const towed = [-Ct / V, (Ct * (e + l)) / V, (-Ct * l) / V, -Ct]
  const sum = (...terms: readonly (readonly [number, readonly number[]])[]): number[] =>
    [0, 1, 2, 3].map((k) => terms.reduce((all, [by, of]) => all + by * of[k], 0))
  const turning = [0, V, 0, 0]
  const hitch = [0, 0, ch, 0]
  const rest = [
    sum([1, front], [1, rear], [1, towed], [-(m1 + m2), turning]),
    sum([a, front], [-b, rear], [-e, towed], [-1, hitch], [e * m2, turning]),
    sum([-l, towed], [1, hitch], [d * m2, turning]),
  ]
  return [...solve(m, rest), [0, 0, 1, 0]]
}

function solve(m: readonly (readonly number[])[], right: readonly (readonly number[])[]): number[][] {
  const rows = m.map((row, i) => [...row, ...right[i]])
  for (let i = 0; i < 3; i++) {
    for (let k = 0; k < 3; k++) {
      if (k === i) continue
      const by = rows[k][i] / rows[i][i]
      rows[k] = rows[k].map((each, j) => each - by * rows[i][j])
    }
    rows[i] = rows[i].map((each) => each / rows[i][i])
  }
  return rows.map((row) => row.slice(3))
}

interface Pinned {
  readonly roots: Readonly<Record<string, readonly (readonly [number, number])[]>>
  readonly damping: Readonly<Record<string, number>>
  readonly zeroDamping: readonly { readonly change: Partial<Given>; readonly speed: number }[]
  readonly hitchShare: readonly { readonly share: number; readonly kmh: number | null }[]
}
const pinned = JSON.parse(readFileSync('golden/sway.json', 'utf8')) as Pinned

describe('car and trailer', () => {
  it.each(Object.keys(pinned.roots))('at %s m/s has the pinned roots and damping', (V) => {
    const { roots, damping } = swayModes(rig(), Number(V))
    pinned.roots[V].forEach(([re, im], i) => {
      expect(roots[i].re).toBeCloseTo(re, 5)
      expect(roots[i].im).toBeCloseTo(im, 5)
    })
    expect(damping).toBeCloseTo(pinned.damping[V], 5)
  })
  it('has the same roots by Newton as by Lagrange, on any car and trailer', () => {
    const random = chance(11)
    for (let n = 0; n < count(60); n++) {
      const change: Given = {
        m1: random.between(1200, 3500),
        J1: random.between(1500, 8000),
        a: random.between(1, 2),
        b: random.between(1, 2),
        e: random.between(2, 4),
        m2: random.between(500, 3500),
        J2: random.between(500, 15000),
        d: random.between(2.5, 6),
        l: random.between(2.5, 6),
        Cf: random.between(5e4, 2e5),
        Cr: random.between(5e4, 2e5),
        Ct: random.between(5e4, 3e5),
        ch: random.between(0, 3000),
      }
      const V = random.between(5, 40)
      const ours = swayModes(rig(change), V).roots
      const other = eigenvalues(newton(change, V))
      const size = Math.max(...ours.map((r) => Math.hypot(r.re, r.im)))
      for (const r of ours) {
        const near = Math.min(...other.map((o) => Math.hypot(o.re - r.re, o.im - r.im)))
        expect(near / size, JSON.stringify({ change, V })).toBeLessThan(1e-6)
      }
    }
  })
  it.each(pinned.zeroDamping)('with $change swings on for ever at $speed m/s', ({ change, speed }) => {
    const found = zeroDampingSpeed(rig(change), 90)
    expect(found).toBeCloseTo(speed, 3)
    expect(Math.abs(swayModes(rig(change), found ?? 0).damping ?? 1)).toBeLessThan(1e-9)
  })
  it.each(pinned.hitchShare)('with $share of its weight on the hitch reaches that at $kmh km/h', ({ share, kmh }) => {
    const found = zeroDampingSpeed(rig({ d: BASE.l * (1 - share) }), 90)
    if (kmh === null) expect(found).toBeNull()
    else expect((found ?? 0) * 3.6).toBeCloseTo(kmh, 2)
  })
  it('is steadier with a damped hitch, less yaw inertia, stiffer tyres and a shorter overhang', () => {
    const at = (change: Partial<Given>): number => swayModes(rig(change), 27).damping ?? 1
    for (const better of [{ ch: 2000 }, { J2: 3500 }, { Ct: 140e3 }, { e: 1.8 }, { d: 3.9 }]) expect(at(better)).toBeGreaterThan(at({}))
  })
  it('is one axle when two stand on one spot, and steadier when they stand apart', () => {
    const pair = (apart: number): Rig => ({
      ...rig(),
      trailer: { ...rig().trailer, axles: [-1, 1].map((s) => ({ at: BASE.l + (s * apart) / 2, stiffness: BASE.Ct / 2 })) },
    })
    expect(swayModes(pair(0), 25).damping).toBeCloseTo(swayModes(rig(), 25).damping ?? 0, 10)
    expect(swayModes(pair(0.9), 25).damping).toBeGreaterThan(swayModes(rig(), 25).damping ?? 0)
  })
  it('is found to diverge where a car that oversteers would, and never where it does not', () => {
    // Alone a car with Cr b < Cf a spins out at V^2 = Cf Cr L^2 / (m (Cf a - Cr b)): D, closed form. A feather behind it changes nothing.
    const change = { Cr: 70e3, m2: 1e-6, J2: 1e-6 }
    const { m1, a, b, Cf } = BASE
    const alone = Math.sqrt((Cf * change.Cr * (a + b) ** 2) / (m1 * (Cf * a - change.Cr * b)))
    expect(divergenceSpeed(rig({ ...change, Ct: 1e-3 }), 90)).toBeCloseTo(alone, 4)
    expect(swayModes(rig({ ...change, Ct: 1e-3 }), alone + 1).diverges).toBe(true)
    expect(divergenceSpeed(rig(), 90)).toBeNull()
  })
  it('is swept over eight cases and sixty speeds within 50 ms', () => {
    const speeds = Array.from({ length: 60 }, (_, i) => 5 + i * 0.5)
    const sweep = (): number => {
      const begun = performance.now()
      for (let n = 0; n < 8; n++) swaySweep(rig({ d: 4 + n * 0.05 }), speeds)
      return performance.now() - begun
    }
    sweep()
    const best = Math.min(...[1, 2, 3].map(sweep))
    expect(best).toBeLessThan(50)
  })
})
