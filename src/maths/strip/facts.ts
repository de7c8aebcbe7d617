/**
 * What a shop asks of a wrapped panel before it cuts one: how far rulings drop, how tightly it bends and twists, and how true its
 * pattern is. Lengths and areas of the pattern are measured on smooth curves, since triangles always lie flat and prove nothing.
 */
import { cross, dot, length } from '../vec.js'
import { cubic, type Ends } from './on-strip.js'
import type { Ruling } from './ruling.js'
import type { DevelopableStrip } from './strip.js'
import { type FlatStrip, overCell } from './unroll.js'

export interface StripFacts {
  /** largest difference of height between the two ends of a ruling, m */
  readonly drop: Ends & { readonly most: number }
  /** smallest radius to which the sheet is bent, m, measured across the rulings, and on which edge; null where nothing bends */
  readonly bend: Bend | null
  /** the same about the points of its fans, FROM_POINT away from them: a cone is infinitely sharp at its point itself */
  readonly corner: Bend | null
  /** how fast the sheet twists about an edge as one walks along it, at the most: rad/m */
  readonly twist: Ends & { readonly most: number }
  /** largest |length in space - length flat| / length, over both edges from their start to every ruling */
  readonly isometry: number
  /** m2; `residual` is their difference as a share */
  readonly area: { readonly space: number; readonly flat: number; readonly residual: number }
  readonly largestResidual: number
}

export interface Bend extends Ends {
  readonly radius: number
  readonly edge: 'p' | 'q'
}

/** How far from the point of a fan its bend is told: about a lap, m; common practice, no source. */
export const FROM_POINT = 0.025
/** Below this the sheet does not bend from one ruling to the next: ten thousand times the rounding of a normal. rad */
const STRAIGHT = 1e-8

export function stripFacts(strip: DevelopableStrip, flat: FlatStrip): StripFacts {
  const [p, q] = [measured(flat, 'p'), measured(flat, 'q')]
  return Object.freeze({
    drop: dropOf(strip),
    ...bends(strip),
    isometry: Math.max(p.isometry, q.isometry),
    area: areas(strip, flatArea(flat, p.twiceArea, q.twiceArea)),
    largestResidual: strip.largestResidual,
  })
}

function dropOf({ rulings }: DevelopableStrip): StripFacts['drop'] {
  const fall = (r: Ruling): number => Math.abs(r.from[2] - r.to[2])
  const most = rulings.reduce((a, b) => (fall(b) > fall(a) ? b : a))
  return { s: most.s, t: most.t, most: fall(most) }
}

/** Curvature across the rulings, from the turn of the normal over the width between neighbours at either edge; and what twist it makes. */
function bends({ rulings }: DevelopableStrip): Pick<StripFacts, 'bend' | 'corner' | 'twist'> {
  const sharpest: { bend: Bend | null; corner: Bend | null } = { bend: null, corner: null }
  let twist = { s: 0, t: 0, most: 0 }
  for (let k = 1; k < rulings.length; k++) {
    const [a, b] = [rulings[k - 1], rulings[k]]
    const turn = Math.atan2(length(cross(a.normal, b.normal)), dot(a.normal, b.normal))
    if (turn < STRAIGHT) continue
    const place = { s: (a.s + b.s) / 2, t: (a.t + b.t) / 2 }
    const angle = { p: (a.pAngle + b.pAngle) / 2, q: (a.qAngle + b.qAngle) / 2 }
    const run = { p: b.s - a.s, q: b.t - a.t }
    for (const edge of ['p', 'q'] as const) {
      const other = edge === 'p' ? 'q' : 'p'
      const point = run[edge] === 0
      const near = Math.min(1, FROM_POINT / ((a.length + b.length) / 2))
      const radius = (point ? run[other] * Math.sin(angle[other]) * near : run[edge] * Math.sin(angle[edge])) / turn
      const which = point ? 'corner' : 'bend'
      if (radius < (sharpest[which]?.radius ?? Number.POSITIVE_INFINITY)) sharpest[which] = { ...place, radius, edge }
      // geodesic torsion of the edge, by Euler's formula; a fan's point has no direction to walk along
      const twisting = Math.abs((Math.sin(angle[edge]) * Math.cos(angle[edge])) / radius)
      if (!point && twisting > twist.most) twist = { ...place, most: twisting }
    }
  }
  return { ...sharpest, twist }
}

function areas({ rulings }: DevelopableStrip, plane: number): StripFacts['area'] {
  let space = 0
  for (let k = 0; k + 2 < rulings.length; k += 2) {
    const cell = [rulings[k], rulings[k + 1], rulings[k + 2]] as const
    const of = (value: (r: Ruling) => number): readonly [number, number, number] => [value(cell[0]), value(cell[1]), value(cell[2])]
    // the width between rulings runs evenly from edge to edge, so the mean of both edges' widths serves
    space += overCell(
      of((r) => (r.length * Math.sin(r.pAngle)) / 2),
      of((r) => r.s),
    )
    space += overCell(
      of((r) => (r.length * Math.sin(r.qAngle)) / 2),
      of((r) => r.t),
    )
  }
  return { space, flat: plane, residual: Math.abs(space - plane) / space }
}

/** Three-point Gauss rule on 0 to 1: exact for the areas, whose integrand is a quintic. Abramowitz and Stegun, table 25.4. */
const GAUSS = [
  [0.5 - Math.sqrt(0.15), 5 / 18],
  [0.5, 8 / 18],
  [0.5 + Math.sqrt(0.15), 5 / 18],
] as const

/**
 * An edge of the pattern measured along its cubics: the largest |length flat - length in space| / length from its start to any ruling,
 * and twice the area between it and the origin.
 */
function measured(flat: FlatStrip, edge: 'p' | 'q'): { readonly isometry: number; readonly twiceArea: number } {
  const [along, x, y, heading] = edge === 'p' ? [flat.s, flat.px, flat.py, flat.pHeading] : [flat.t, flat.qx, flat.qy, flat.qHeading]
  let [sum, isometry, twiceArea] = [0, 0, 0]
  for (let k = 1; k < along.length; k++) {
    const run = along[k] - along[k - 1]
    // an edge that stays at the point of a fan goes nowhere; whatever its pattern moves there counts as a straight line
    const [a, b] = run > 0 ? [heading[k - 1], heading[k]] : [0, 0]
    const still = run > 0 ? 0 : 1
    const dx = [run * Math.cos(a) + still * (x[k] - x[k - 1]), run * Math.cos(b) + still * (x[k] - x[k - 1])]
    const dy = [run * Math.sin(a) + still * (y[k] - y[k - 1]), run * Math.sin(b) + still * (y[k] - y[k - 1])]
    for (const [u, weight] of GAUSS) {
      const [vx, vy] = [cubicSlope(u, x[k - 1], x[k], dx[0], dx[1]), cubicSlope(u, y[k - 1], y[k], dy[0], dy[1])]
      sum += weight * Math.sqrt(vx * vx + vy * vy)
      twiceArea += weight * (cubic(u, x[k - 1], x[k], dx[0], dx[1]) * vy - cubic(u, y[k - 1], y[k], dy[0], dy[1]) * vx)
    }
    isometry = Math.max(isometry, Math.abs(sum - along[k]))
  }
  return { isometry: isometry / along[along.length - 1], twiceArea }
}

const cubicSlope = (u: number, a: number, b: number, ma: number, mb: number): number =>
  ma + u * (2 * (3 * (b - a) - 2 * ma - mb) + 3 * u * (ma + mb - 2 * (b - a)))

/** Area within the outline by Green's theorem: out along the first edge, back along the second, straight over at the ends. */
function flatArea(flat: FlatStrip, out: number, back: number): number {
  const last = flat.s.length - 1
  const far = flat.px[last] * flat.qy[last] - flat.py[last] * flat.qx[last]
  const near = flat.px[0] * flat.qy[0] - flat.py[0] * flat.qx[0]
  return (out - back + far - near) / 2
}
