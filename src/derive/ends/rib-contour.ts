/**
 * The outer face of a rib's flange where the plane of its web cuts it: the surface some depth inside the mould line, met by
 * an upright plane beside the crown's axis. In that plane a place is (r, z): r outward along the azimuth, z the waterline.
 */
import { type Loft, loftAt, normalOf, pointOf } from '../../maths/loft.js'
import type { Vec3 } from '../../maths/vec.js'
import type { Outline } from '../nouns.js'

export interface ContourPoint {
  readonly sigma: number
  readonly r: number
  readonly z: number
  /** outward normal of the contour in the plane */
  readonly out: readonly [r: number, z: number]
  /** how far the skin's normal leans out of the plane, toward the side the plane stands on, rad */
  readonly bevel: number
  /** how far round the end the place stands from the azimuth, m */
  readonly way: number
}

export interface WebPlane {
  readonly loft: Loft
  /** azimuth of the plane of the rivets, 0 to pi/2 */
  readonly phi: number
  /** of the web's plane beside it, toward greater azimuths, m */
  readonly beside: number
  readonly depth: number
}

/**
 * The contour's point at a section girth; `guess` is how far its place stood beside the plane of the rivets nearby, rad m.
 * Throws where the plane misses the surface there, which is nearer the crown than a cap.
 */
export function contourAt(plane: WebPlane, sigma: number, guess = plane.beside): ContourPoint {
  const { loft, phi, beside, depth } = plane
  const [c, s] = [Math.cos(phi), Math.sin(phi)]
  let angle = phi + guess / loftAt(loft, phi, sigma).r
  for (let i = 0; i < 20; i++) {
    const on = loftAt(loft, angle, sigma)
    const [n, q] = [normalOf(on, angle), pointOf(on, angle)]
    const p: Vec3 = [q[0] - depth * n[0], q[1] - depth * n[1], q[2] - depth * n[2]]
    const off = p[1] * c - p[0] * s - beside
    if (Math.abs(off) < NEAR) return contourPoint(sigma, p, n, [c, s], (angle - phi) * on.r)
    // the slope of the mould line will do: the face lies a sheet or two under it
    angle -= off / (on.rPhi * Math.sin(angle - phi) + on.r * Math.cos(angle - phi))
  }
  throw new Error(`no contour ${beside} m beside azimuth ${phi} at girth ${sigma}`)
}

/** How near the plane is near enough, m. */
const NEAR = 5e-10

/** A place of a web's plane with the skin's normal there; `c` and `s` turn the azimuth. */
export function contourPoint(sigma: number, p: Vec3, n: Vec3, [c, s]: Pair, way: number): ContourPoint {
  const [outR, outZ] = [n[0] * c + n[1] * s, n[2]]
  const flat = Math.sqrt(outR * outR + outZ * outZ)
  return { sigma, r: p[0] * c + p[1] * s, z: p[2], out: [outR / flat, outZ / flat], bevel: Math.atan2(n[1] * c - n[0] * s, flat), way }
}

/** A place some way inside the contour, square to it in the plane. */
const insideOf = (p: ContourPoint, by: number): readonly [number, number] => [p.r - by * p.out[0], p.z - by * p.out[1]]

const APART = 1e-3

export interface Walked {
  readonly points: readonly ContourPoint[]
  readonly outer: Outline
  readonly inner: Outline
  readonly run: readonly number[]
}

/** The contour between two section girths as arcs no longer than `spacing`, none across a jump of curvature. */
export function walkContour(plane: WebPlane, from: number, to: number, height: number, spacing: number): Walked {
  // two jumps closer than a millimetre are one to any arc
  const jumps = plane.loft.breaks.filter((b, i, all) => b > from + APART && b < to - APART && !(b - all[i - 1] < APART))
  const stops = [from, ...jumps, to]
  const points: ContourPoint[] = [contourAt(plane, from)]
  for (let i = 0; i + 1 < stops.length; i++) {
    const start = points[points.length - 1]
    const end = contourAt(plane, stops[i + 1], start.way)
    // the girth and the contour part ways by a third at most; a quarter more pieces than the chord asks for is enough
    const parts = Math.max(1, Math.ceil((1.25 * Math.hypot(end.r - start.r, end.z - start.z)) / spacing))
    const step = (stops[i + 1] - stops[i]) / parts
    for (let k = 1; k < parts; k++) {
      const [before, last] = [points[points.length - 2], points[points.length - 1]]
      // where it goes on as it did, the next place is all but found
      const guess = k > 1 ? 2 * last.way - before.way : last.way
      points.push(contourAt(plane, stops[i] + k * step, guess))
    }
    points.push(end)
  }
  return walkedThrough(points, height)
}

/** Arcs through points walked downward. */
export function walkedThrough(points: readonly ContourPoint[], height: number): Walked {
  const bulges = points.map((p, i) => (i + 1 < points.length ? bulgeBetween(p.out, points[i + 1].out) : 0))
  const outer: Outline = points.map((p, i) => [p.r, p.z, bulges[i]])
  const inner: Outline = points.map((p, i) => [...insideOf(p, height), bulges[i]])
  const run = [0]
  for (let i = 0; i + 1 < points.length; i++) run.push(run[i] + arcLength(outer[i], outer[i + 1]))
  return { points, outer, inner, run }
}

type Pair = readonly [number, number]

/** Of the arc that turns as much as the normal does: what it misses is odd about its middle, so middle and ends are true. */
function bulgeBetween(a: Pair, b: Pair): number {
  const turn = Math.atan2(a[0] * b[1] - a[1] * b[0], a[0] * b[0] + a[1] * b[1])
  return Math.abs(turn) < 1e-7 ? 0 : Math.tan(turn / 4)
}

function arcLength(p: Outline[number], q: Outline[number]): number {
  const chord = Math.hypot(q[0] - p[0], q[1] - p[1])
  const angle = 4 * Math.atan(Math.abs(p[2]))
  return angle === 0 ? chord : (chord * angle) / (2 * Math.sin(angle / 2))
}

/** The place of a contour's arcs whose outward normal rises `rise` over the level, rad; null where none does. The normal sinks on the way down. */
export function atRise(points: readonly ContourPoint[], outer: Outline, rise: number): { readonly r: number; readonly z: number } | null {
  const riseOf = (p: ContourPoint): number => Math.atan2(p.out[1], p.out[0])
  for (let i = 0; i + 1 < points.length; i++) {
    const [a, b] = [riseOf(points[i]), riseOf(points[i + 1])]
    if (a < rise || b > rise) continue
    return onArc(outer[i], outer[i + 1], a === b ? 0 : (a - rise) / (a - b))
  }
  return null
}

/** The place of a contour's arcs at a height, and which way it faces; null where they do not pass it. */
export function atHeight(outer: Outline, z: number): { readonly r: number; readonly rise: number } | null {
  for (let i = 0; i + 1 < outer.length; i++) {
    const [p, q] = [outer[i], outer[i + 1]]
    if (p[1] < z || q[1] > z) continue
    // Newton from the chord's own share: an arc turns too little for the way down to be far from even
    let share = p[1] === q[1] ? 0 : (p[1] - z) / (p[1] - q[1])
    const run = arcLength(p, q)
    for (let k = 0; k < 20; k++) {
      const on = onArc(p, q, share)
      const slope = run * Math.sin(on.rise - Math.PI / 2)
      const step = slope === 0 ? 0 : (z - on.z) / slope
      share = Math.min(1, Math.max(0, share + step))
      if (Math.abs(step) < 1e-14) break
    }
    return onArc(p, q, share)
  }
  return null
}

/** A share of the way along an arc of a contour walked downward, and its outward normal there. */
function onArc(p: Outline[number], q: Outline[number], share: number): { readonly r: number; readonly z: number; readonly rise: number } {
  const [dx, dz] = [q[0] - p[0], q[1] - p[1]]
  const chord = Math.atan2(dz, dx)
  const angle = 4 * Math.atan(p[2])
  const heading = chord - angle / 2 + angle * share
  const [r, z] =
    p[2] === 0
      ? [p[0] + dx * share, p[1] + dz * share]
      : alongArc(p, heading, chord - angle / 2, Math.hypot(dx, dz) / 2 / Math.sin(angle / 2))
  return { r, z, rise: heading + Math.PI / 2 }
}

/** From the start of an arc with a signed radius, heading from one angle to another. */
const alongArc = (p: Outline[number], to: number, from: number, radius: number): Pair => [
  p[0] + radius * (Math.sin(to) - Math.sin(from)),
  p[1] - radius * (Math.cos(to) - Math.cos(from)),
]
