/** Pairs of edge curves whose strips are known: arcs, circles, helices, lines, and ribs drawn at random. */
import { curveByLength, type SpaceCurve } from '../src/maths/strip/space-curve.js'
import { at, buildChain, type ChainPiece, type TangentChain } from '../src/maths/tangent-chain.js'
import { add, scale, length as size, sub, unit, type Vec3 } from '../src/maths/vec.js'
import type { Chance } from './random.js'

export function line(from: Vec3, to: Vec3): SpaceCurve {
  const along = unit(sub(to, from))
  return { length: size(sub(to, from)), at: (s) => add(from, scale(along, s)), tangent: () => along }
}

/** A level circle about a centre, from angle `from` to angle `to`, either way round. */
export function circle(centre: Vec3, radius: number, from: number, to: number): SpaceCurve {
  const turn = Math.sign(to - from)
  const angle = (s: number): number => from + (turn * s) / radius
  return {
    length: radius * Math.abs(to - from),
    at: (s) => add(centre, [radius * Math.cos(angle(s)), radius * Math.sin(angle(s)), 0]),
    tangent: (s) => [-turn * Math.sin(angle(s)), turn * Math.cos(angle(s)), 0],
  }
}

/** Radius a, rise b a radian; the strip between points v1 and v2 along the tangents of this helix has helices for its edges too. */
export function tangentHelix(a: number, b: number, v: number, turns: number): SpaceCurve {
  const c = Math.sqrt(a * a + b * b)
  const velocity = (u: number): Vec3 => [-a * Math.sin(u) - (v * a * Math.cos(u)) / c, a * Math.cos(u) - (v * a * Math.sin(u)) / c, b]
  const speed = size(velocity(0))
  const point = (u: number): Vec3 => [
    a * Math.cos(u) - (v * a * Math.sin(u)) / c,
    a * Math.sin(u) + (v * a * Math.cos(u)) / c,
    b * u + (v * b) / c,
  ]
  return { length: 2 * Math.PI * turns * speed, at: (s) => point(s / speed), tangent: (s) => unit(velocity(s / speed)) }
}

/** A plane curve with y outward and z up, stood in the vertical plane at azimuth phi. */
export function rib(chain: TangentChain, phi: number): SpaceCurve {
  const [c, s] = [Math.cos(phi), Math.sin(phi)]
  return {
    length: chain.length,
    at: (g) => {
      const { y, z } = at(chain, g)
      return [y * c, y * s, z]
    },
    tangent: (g) => {
      const { heading } = at(chain, g)
      return [Math.cos(heading) * c, Math.cos(heading) * s, -Math.sin(heading)]
    },
    breaks: chain.elements.slice(1).map((e) => e.girth0),
  }
}

/** An ellipse about the z axis in the vertical plane at azimuth phi, from the top at angle `from` to angle `to` from the vertical. */
export function ellipticRib(reach: number, height: number, phi: number, from: number, to: number): SpaceCurve {
  const [c, s] = [Math.cos(phi), Math.sin(phi)]
  return curveByLength(
    (u) => [reach * Math.sin(u) * c, reach * Math.sin(u) * s, height * Math.cos(u)],
    (u) => [reach * Math.cos(u) * c, reach * Math.cos(u) * s, -height * Math.sin(u)],
    from,
    to,
  )
}

/**
 * Two neighbouring ribs of a domed end: convex, of one to four arcs (now and then a straight piece), standing 5 to 60 degrees apart,
 * the second like the first but with every radius its own. Now and then they have nothing to do with each other.
 */
export function randomRibs(c: Chance): readonly [SpaceCurve, SpaceCurve] {
  const start = { y: c.between(0.05, 0.6), z: c.between(1.5, 2.5), heading: c.between(0, 0.5) }
  const pieces = c.whole(1, 4)
  const turns = Array.from({ length: pieces }, () => ({
    turn: c.between(0.15, 2.1 / pieces),
    radius: c.between(0.3, 4),
    straight: c.maybe(0.1),
  }))
  const chain = (other: boolean): TangentChain => {
    let { heading } = start
    const strange = other && c.maybe(0.15)
    const arcs = turns.map(({ turn, radius, straight }, i): ChainPiece => {
      const name = `piece ${i}`
      if (straight) return { kind: 'line', name, length: radius / 4 }
      heading += turn * (strange ? c.between(0.4, 1.15) : other ? c.between(0.85, 1.15) : 1)
      return { kind: 'arc', name, radius: radius * (strange ? c.between(0.3, 3) : other ? c.between(0.8, 1.25) : 1), to: heading }
    })
    return buildChain({ ...start, y: start.y * (other ? c.between(0.9, 1.1) : 1), z: start.z + (other ? c.between(-0.02, 0.02) : 0) }, arcs)
  }
  const phi = c.between(-1.5, 1)
  return [rib(chain(false), phi), rib(chain(true), phi + (c.between(5, 60) * Math.PI) / 180)]
}
