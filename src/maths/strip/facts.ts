/**
 * What a shop asks of a wrapped panel before it cuts one: how far rulings drop, how tightly it bends and twists, and how true its
 * pattern is. Lengths and areas of the pattern are measured on smooth curves, since triangles always lie flat and prove nothing.
 */
import { integrate } from '../quadrature.js'
import { cross, dot, length } from '../vec.js'
import { cubic, type Ends } from './on-strip.js'
import type { Ruling } from './ruling.js'
import type { DevelopableStrip } from './strip.js'
import { type FlatStrip, overCell } from './unroll.js'

export interface StripFacts {
  /** largest difference of height between the two ends of a ruling, m */
  readonly drop: Ends & { readonly most: number }
  /** smallest radius to which the sheet is bent, m, measured across the rulings, and on which edge; null where nothing bends */
  readonly bend: (Ends & { readonly radius: number; readonly edge: 'p' | 'q' }) | null
  /** how fast the sheet twists about an edge as one walks along it, at the most: rad/m */
  readonly twist: Ends & { readonly most: number }
  /** largest |length in space - length flat| / length, over both edges from their start to every ruling */
  readonly isometry: number
  /** m2; `residual` is their difference as a share */
  readonly area: { readonly space: number; readonly flat: number; readonly residual: number }
  readonly largestResidual: number
}

/** A cone is infinitely sharp at its point: in a fan the bend is measured this far from it, within the lap. m; common practice, no source */
const FROM_POINT = 0.025
/** Below this the sheet does not bend from one ruling to the next, rad. */
const STRAIGHT = 1e-9

export function stripFacts(strip: DevelopableStrip, flat: FlatStrip): StripFacts {
  return Object.freeze({
    drop: dropOf(strip),
    ...bends(strip),
    isometry: Math.max(lengthResidual(flat, 'p'), lengthResidual(flat, 'q')),
    area: areas(strip, flat),
    largestResidual: strip.largestResidual,
  })
}

function dropOf({ rulings }: DevelopableStrip): StripFacts['drop'] {
  const fall = (r: Ruling): number => Math.abs(r.from[2] - r.to[2])
  const most = rulings.reduce((a, b) => (fall(b) > fall(a) ? b : a))
  return { s: most.s, t: most.t, most: fall(most) }
}

/** Curvature across the rulings, from the turn of the normal over the width between neighbours at either edge; and what twist it makes. */
function bends({ rulings }: DevelopableStrip): Pick<StripFacts, 'bend' | 'twist'> {
  let sharpest = 0
  let bend: StripFacts['bend'] = null
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
      const point = run[edge] === 0 && run[other] > 0
      const near = Math.min(1, FROM_POINT / ((a.length + b.length) / 2))
      const width = point ? run[other] * Math.sin(angle[other]) * near : run[edge] * Math.sin(angle[edge])
      const curvature = turn / width
      if (curvature > sharpest) {
        sharpest = curvature
        bend = { ...place, radius: 1 / curvature, edge }
      }
      // geodesic torsion of the edge, by Euler's formula; a fan's point has no direction to walk along
      const twisting = Math.abs(curvature * Math.sin(angle[edge]) * Math.cos(angle[edge]))
      if (!point && twisting > twist.most) twist = { ...place, most: twisting }
    }
  }
  return { bend, twist }
}

function lengthResidual(flat: FlatStrip, edge: 'p' | 'q'): number {
  const along = edge === 'p' ? flat.s : flat.t
  const total = along[along.length - 1]
  let [sum, worst] = [0, 0]
  for (let k = 1; k < along.length; k++) {
    sum += integrate((u) => Math.hypot(...speedOf(flat, edge, k, u)), 0, 1, 1)
    worst = Math.max(worst, Math.abs(sum - along[k]) / total)
  }
  return worst
}

/** Derivative of the flat edge's cubic between rulings k - 1 and k. */
function speedOf(flat: FlatStrip, edge: 'p' | 'q', k: number, u: number): [number, number] {
  const { run, x, y, dx, dy } = pieceOf(flat, edge, k)
  if (run === 0) return [x[1] - x[0], y[1] - y[0]]
  return [slope(u, x[0], x[1], dx[0], dx[1]), slope(u, y[0], y[1], dy[0], dy[1])]
}

function pieceOf(flat: FlatStrip, edge: 'p' | 'q', k: number) {
  const [along, xs, ys, heading] = edge === 'p' ? [flat.s, flat.px, flat.py, flat.pHeading] : [flat.t, flat.qx, flat.qy, flat.qHeading]
  const run = along[k] - along[k - 1]
  const [a, b] = [heading[k - 1], heading[k]]
  return {
    run,
    x: [xs[k - 1], xs[k]] as const,
    y: [ys[k - 1], ys[k]] as const,
    dx: [run * Math.cos(a), run * Math.cos(b)] as const,
    dy: [run * Math.sin(a), run * Math.sin(b)] as const,
  }
}

const slope = (u: number, a: number, b: number, ma: number, mb: number): number =>
  ma + u * (2 * (3 * (b - a) - 2 * ma - mb) + 3 * u * (ma + mb - 2 * (b - a)))

function areas({ rulings }: DevelopableStrip, flat: FlatStrip): StripFacts['area'] {
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
  const plane = flatArea(flat)
  return { space, flat: plane, residual: Math.abs(space - plane) / space }
}

/** Area within the outline by Green's theorem: out along the first edge, back along the second, straight over at the ends. */
function flatArea(flat: FlatStrip): number {
  let twice = 0
  for (const edge of ['p', 'q'] as const) {
    const sign = edge === 'p' ? 1 : -1
    for (let k = 1; k < flat.s.length; k++) {
      const { x, y, dx, dy } = pieceOf(flat, edge, k)
      twice +=
        sign *
        integrate(
          (u) => {
            const [vx, vy] = speedOf(flat, edge, k, u)
            return cubic(u, x[0], x[1], dx[0], dx[1]) * vy - cubic(u, y[0], y[1], dy[0], dy[1]) * vx
          },
          0,
          1,
          1,
        )
    }
  }
  const last = flat.s.length - 1
  twice += flat.px[last] * flat.qy[last] - flat.py[last] * flat.qx[last]
  twice -= flat.px[0] * flat.qy[0] - flat.py[0] * flat.qx[0]
  return twice / 2
}
