/** Pieces of surface whose blanks are known or must behave: rolled and coned sheets, strips of a sphere, a gore of a domed end. */
import type { Patch } from '../src/maths/blank/mesh.js'
import { at, buildChain, girthAtZ } from '../src/maths/tangent-chain.js'

type Shape = (u: number, v: number) => readonly [number, number]

/** A flat shape rolled round a cylinder of the given radius whose axis is square to the shape's first coordinate. */
export const rolled = (radius: number, shape: Shape): Patch => ({
  point: (u, v) => {
    const [x, y] = shape(u, v)
    return [radius * Math.sin(x / radius), y, radius * Math.cos(x / radius)]
  },
})

/** A flat shape in polar coordinates (distance from the apex, angle) rolled into a cone whose elements lean `half` rad from its axis. */
export const coned = (half: number, polar: Shape): Patch => ({
  point: (u, v) => {
    const [slant, angle] = polar(u, v)
    const turn = angle / Math.sin(half)
    return [slant * Math.sin(half) * Math.cos(turn), slant * Math.sin(half) * Math.sin(turn), -slant * Math.cos(half)]
  },
})

/** A strip of a sphere of radius 1 along a great circle. */
export const sphereStrip = (halfWidth: number, long: number): Patch => ({
  point: (u, v) => {
    const [x, y] = [(v - 0.5) * long, (2 * u - 1) * halfWidth]
    return [Math.cos(y) * Math.sin(x), Math.sin(y), Math.cos(y) * Math.cos(x)]
  },
})

const degree = Math.PI / 180
const curve = (...arcs: readonly (readonly [radius: number, to: number])[]) =>
  buildChain(
    { y: 0, z: 2, heading: 0 },
    arcs.map(([radius, to]) => ({ kind: 'arc' as const, name: `to ${to}`, radius, to: to * degree })),
  )
// invented: about 2.3 m wide, 1.1 m long, 2 m high
const SECTION = curve([3.4, 14], [0.4, 82], [6.8, 95], [0.3, 140])
const PROFILE = curve([1.8, 15], [0.6, 70], [3.6, 94], [0.4, 160])
const EXPONENT = 2.6
const CAP = 0.45

/** |y/Y(z)|^2.6 + |x/L(z)|^2.6 = 1 between two azimuths from the centre line, degrees, from a cap at the crown to the toe. */
export const domedGore = (from: number, to: number): Patch => ({
  point: (u, v) => {
    const phi = (from + (to - from) * u) * degree
    const { y: wide, z } = at(SECTION, CAP + (SECTION.length - CAP) * v)
    const below = girthAtZ(PROFILE, z)
    if (below === null) throw new Error(`the profile does not reach z ${z}`)
    const reach = at(PROFILE, below).y
    const r = (Math.abs(Math.cos(phi) / reach) ** EXPONENT + Math.abs(Math.sin(phi) / wide) ** EXPONENT) ** (-1 / EXPONENT)
    return [r * Math.cos(phi), r * Math.sin(phi), z]
  },
})
