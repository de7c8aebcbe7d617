/** Ten thousand random sections: every length found exactly equals the same length summed in space. */
import { describe, expect, it } from 'vitest'
import { count } from '../../tests/counts.js'
import { type Chance, chance } from '../../tests/random.js'
import { type DepthZone, depthAt, developAt, developed, undeveloped } from './development.js'
import {
  at,
  buildChain,
  type ChainPiece,
  girthAtOffset,
  girthAtZ,
  girthFromOffset,
  headingAt,
  type TangentChain,
  widest,
} from './tangent-chain.js'

const START = { y: 0, z: 2, heading: 0 }

/** Two to seven arcs and lines, some of them concave; headings stay between level outboard and level inboard. */
function randomPieces(c: Chance): ChainPiece[] {
  const pieces: ChainPiece[] = []
  let heading = 0
  const n = c.whole(2, 7)
  for (let i = 0; i < n; i++) {
    const name = `piece ${i}`
    const concave = heading > 0.3 && c.maybe(0.2)
    const room = concave ? heading : Math.PI - heading
    if (c.maybe(0.25) || room < 0.02) pieces.push({ kind: 'line', name, length: c.maybe(0.1) ? c.between(1e-4, 1e-2) : c.between(0.01, 3) })
    else {
      const turn = room * c.between(0.02, c.maybe(0.2) ? 1 : 0.7)
      heading += concave ? -turn : turn
      const radius = c.maybe(0.15) ? c.between(50, 5000) : c.between(0.15, 8)
      pieces.push({ kind: 'arc', name, radius: concave ? -radius : radius, to: heading })
    }
  }
  return pieces
}

/** Turn a chord may span: what is left after extrapolation is TURN ** 4 / 7680 of the length, under 1e-9. rad */
const TURN = 0.05

/** Length by chords on either side of each joint, extrapolated from two counts of them. */
function summed(chain: TangentChain, from: number, to: number, depth: (g: number) => number, stops: readonly number[] = []): number {
  const inside = [...chain.elements.map((e) => e.girth1), ...stops].filter((g) => g > from && g < to)
  const ends = [from, ...inside.sort((a, b) => a - b), to]
  let sum = 0
  for (let i = 0; i + 1 < ends.length; i++) {
    const [a, b] = [ends[i], ends[i + 1]]
    const deep = depth((a + b) / 2)
    const n = 1 + Math.ceil(Math.abs(headingAt(chain, b) - headingAt(chain, a)) / TURN)
    const [coarse, fine] = [n, 2 * n].map((parts) => {
      let length = 0
      let p = at(chain, a, deep)
      for (let k = 1; k <= parts; k++) {
        const q = at(chain, a + ((b - a) * k) / parts, deep)
        length += Math.hypot(q.y - p.y, q.z - p.z)
        p = q
      }
      return length
    })
    sum += fine + (fine - coarse) / 3
  }
  return sum
}

/** Relative size of a miss against the length it is part of, floored at a metre. */
const miss = (a: number, b: number, scale: number): number => Math.abs(a - b) / Math.max(1, scale)

function eachSection(cases: number, salt: number, look: (chain: TangentChain, c: Chance, pieces: ChainPiece[]) => void): void {
  for (let seed = 1; seed <= cases; seed++) {
    const c = chance(seed + salt)
    const pieces = randomPieces(c)
    try {
      look(buildChain(START, pieces), c, pieces)
    } catch (error) {
      throw new Error(`section seed ${seed}, ${JSON.stringify(pieces)}: ${error instanceof Error ? error.message : error}`)
    }
  }
}

describe('random sections', () => {
  it('are as long in space as they are unrolled, at any depth, laps and all', () => {
    eachSection(count(10_000), 0, (chain, c) => {
      const depth = c.between(0, 0.1)
      const [a, b] = [c.between(0, chain.length), c.between(0, chain.length)].sort((p, q) => p - q)
      expect(
        miss(
          chain.length,
          summed(chain, 0, chain.length, () => 0),
          chain.length,
        ),
      ).toBeLessThan(1e-9)
      expect(
        miss(
          girthAtOffset(chain, b, depth) - girthAtOffset(chain, a, depth),
          summed(chain, a, b, () => depth),
          b,
        ),
      ).toBeLessThan(1e-9)
      const zones = randomZones(c, chain.length, depth)
      const flat = developAt(chain, depth, zones)
      const inSpace = summed(
        chain,
        a,
        b,
        (g) => depthAt(g, depth, zones),
        zones.flatMap((z) => [z.from, z.to]),
      )
      expect(miss(developed(flat, b) - developed(flat, a), inSpace, b)).toBeLessThan(1e-9)
      expect(miss(developed(flat, -a) - developed(flat, -b), inSpace, b)).toBeLessThan(1e-9)
    })
  })

  it('turn back: girth from a length, and girth from a height', () => {
    eachSection(count(10_000), 1e6, (chain, c) => {
      const depth = c.between(0, 0.1)
      const g = c.between(0, chain.length)
      expect(miss(girthFromOffset(chain, girthAtOffset(chain, g, depth), depth), g, g)).toBeLessThan(1e-12)
      const flat = developAt(chain, depth, randomZones(c, chain.length, depth))
      expect(miss(undeveloped(flat, developed(flat, -g)), -g, g)).toBeLessThan(1e-12)
      const { z, heading } = at(chain, g)
      const back = girthAtZ(chain, z)
      expect(back).not.toBeNull()
      expect(Math.abs(at(chain, back as number).z - z)).toBeLessThan(1e-11)
      // where the section lies level a height says little about a girth
      if (Math.sin(heading) > 0.05) expect(Math.abs((back as number) - g)).toBeLessThan(1e-10)
    })
  })

  it('are smooth: each piece starts where and as the one before it ends, and the normal stands square', () => {
    eachSection(count(2_000), 2e6, (chain, c) => {
      for (const e of chain.elements.slice(1)) {
        const [p, q] = [at(chain, e.girth0 - 1e-7), at(chain, e.girth0 + 1e-7)]
        expect(Math.hypot(q.y - p.y, q.z - p.z)).toBeLessThan(2.1e-7)
        expect(Math.abs(q.heading - p.heading)).toBeLessThan(2e-6)
      }
      const g = c.between(0, chain.length)
      const depth = c.between(0.001, 0.1)
      const [p, q] = [at(chain, g), at(chain, g, depth)]
      // some of these sections are kilometres across, where the last bit of a coordinate is a picometre
      expect(miss(Math.hypot(q.y - p.y, q.z - p.z), depth, chain.length)).toBeLessThan(5e-13)
      const s = 1e-6
      const [before, after] = [at(chain, g - s), at(chain, g + s)]
      const along = (after.y - before.y) * (q.y - p.y) + (after.z - before.z) * (q.z - p.z)
      expect(Math.abs(along) / (2 * s * depth)).toBeLessThan(1e-4)
      const w = widest(chain)
      for (let k = 0; k <= 20; k++) expect(at(chain, (chain.length * k) / 20).y).toBeLessThan(w.y + 1e-12 * Math.max(1, chain.length))
    })
  })

  it('grow with their pieces, and do not care which way they start', () => {
    eachSection(count(2_000), 3e6, (chain, c, pieces) => {
      const k = c.between(0.1, 10)
      const depth = c.between(0, 0.1)
      const large = buildChain(
        { y: 0, z: 2 * k, heading: 0 },
        pieces.map((p) => (p.kind === 'arc' ? { ...p, radius: k * p.radius } : { ...p, length: k * p.length })),
      )
      const turn = c.between(-3, 3)
      const turned = buildChain(
        { y: c.between(-5, 5), z: c.between(-5, 5), heading: turn },
        pieces.map((p) => (p.kind === 'arc' ? { ...p, to: p.to + turn } : p)),
      )
      for (let i = 0; i <= 5; i++) {
        const g = (chain.length * i) / 5
        expect(miss(girthAtOffset(large, k * g, k * depth), k * girthAtOffset(chain, g, depth), k * chain.length)).toBeLessThan(1e-12)
        expect(miss(girthAtOffset(turned, g, depth), girthAtOffset(chain, g, depth), chain.length)).toBeLessThan(1e-12)
        const [p, q] = [at(chain, g), at(large, k * g)]
        expect(miss(q.y, k * p.y, k * chain.length) + miss(q.z, k * p.z, k * chain.length)).toBeLessThan(1e-12)
      }
    })
  })

  it('are refused, by name, when an arc turns the wrong way or a piece has no length', () => {
    for (let seed = 1; seed <= count(1_000); seed++) {
      const c = chance(seed + 4e6)
      const pieces = randomPieces(c)
      const i = c.whole(0, pieces.length - 1)
      const bad = pieces[i]
      pieces[i] =
        bad.kind === 'arc'
          ? { ...bad, radius: c.pick([-bad.radius, 0, Number.NaN]) }
          : { ...bad, length: c.pick([-bad.length, 0, Number.NaN]) }
      expect(() => buildChain(START, pieces), `section seed ${seed}`).toThrow(bad.name)
    }
  })
})

/** Up to three laps that do not lie on each other, mirrored as a coach's are. */
function randomZones(c: Chance, length: number, depth: number): DepthZone[] {
  const n = c.whole(0, 3)
  return Array.from({ length: n }, (_, i) => {
    const from = (length * (i + c.between(0.1, 0.4))) / n
    const to = Math.min((length * (i + 0.95)) / n, from + c.between(0.005, 0.05))
    return { from, to: Math.max(to, from + 1e-4), depth: depth + c.between(0, 0.003) }
  }).flatMap((z) => [z, { from: -z.to, to: -z.from, depth: z.depth }])
}
