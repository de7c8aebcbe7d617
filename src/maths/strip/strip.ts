/**
 * The developable strip through two edge curves in space: a flat sheet, bent along straight lines only, that touches both.
 *
 * F(s, t) = det[p'(s), q'(t), q(t) - p(s)] = 0 for every ruling, all rulings on one branch along which s and t only grow; a fan at
 * either end where the branch runs out before an edge does. Along such a branch the edge of regression stays outside the strip
 * exactly where the planes at both ends of a ruling face the same way: the sheet's width between neighbouring rulings runs from
 * sin(pAngle) ds to sin(qAngle) dt with one sign. dt/ds is the ratio of the edges' curvatures normal to the sheet, so a strip asks
 * for edges that bend to the same side.
 *
 * It does not cover sheets with more than one branch (a crease inside the strip), nor an edge that is one point.
 */
import { dot } from '../vec.js'
import { bestBranch, cornerToCorner, type Rows, rowsOf } from './branch.js'
import { cellsOf } from './cells.js'
import { type RefusedStrip, refusedAt, whyLost, whyRefused } from './refusal.js'
import type { Ruling } from './ruling.js'
import type { SpaceCurve } from './space-curve.js'

export interface DevelopableStrip {
  readonly kind: 'developable'
  readonly p: SpaceCurve
  readonly q: SpaceCurve
  /** from the start of both edges to their ends; an odd count: those at even places bound cells, the odd ones halve them */
  readonly rulings: readonly Ruling[]
  readonly largestResidual: number
  /** how much of an edge each fan takes, m; 0 where there is none. `edge` is the one along which the fan runs */
  readonly fans: { readonly start: Fan; readonly end: Fan }
}

export interface Fan {
  readonly edge: 'p' | 'q' | 'none'
  readonly length: number
}

export type Strip = DevelopableStrip | RefusedStrip

export interface StripOptions {
  /** how far sheet or edges may turn from one cell's bound to the next, rad */
  readonly turn?: number
}

/** What a ruling may leave of |F| / (|p'||q'||d|). */
const DEVELOPABLE = 1e-6
/** Error of the development goes by the fourth power of it: at 0.06 under a fifth of a micrometre a metre on five thousand random strips. */
const TURN = 0.06
/** An edge that runs along its ruling, within this angle, is an edge of regression. rad */
const ALONG = 1e-6

/** The strip between two edges that run the same way; or why there is none, and where. Throws for an edge without length. */
export function stripBetween(p: SpaceCurve, q: SpaceCurve, options: StripOptions = {}): Strip {
  const { turn = TURN } = options
  if (!(p.length > 0) || !(q.length > 0) || !(turn > 0))
    throw new Error(`no strip: edges of ${p.length} and ${q.length} m, turn ${turn} rad`)
  const rows = rowsOf(p, q)
  const { branch, reached } = bestBranch(rows, { turned: false, backward: false })
  if (!branch) return whyRefused(rows, reached)
  const cells = cellsOf(rows, cornerToCorner(rows, branch), turn)
  if (!cells.ok) return whyLost(rows, cells.s, cells.t)
  return judged(rows, cells.rulings)
}

/** Every ruling held to what makes a sheet: torsal, not turned over, and none against its neighbour. */
function judged(rows: Rows, rulings: readonly Ruling[]): Strip {
  let largestResidual = 0
  for (let i = 0; i < rulings.length; i++) {
    const { s, t, fan, residual, pAngle, qAngle, normal, turnedOver } = rulings[i]
    const along = (angle: number): boolean => angle < ALONG || angle > Math.PI - ALONG
    const overNeighbour = i > 0 && dot(normal, rulings[i - 1].normal) <= 0
    if (turnedOver || overNeighbour || (fan !== 'p' && along(pAngle)) || (fan !== 'q' && along(qAngle)))
      return refusedAt(rows, 'edge of regression', s, t)
    if (residual > DEVELOPABLE) return refusedAt(rows, 'no root', s, t)
    largestResidual = Math.max(largestResidual, residual)
  }
  return Object.freeze({
    kind: 'developable' as const,
    p: rows.edgeP,
    q: rows.edgeQ,
    rulings: Object.freeze(rulings.map((r) => Object.freeze(r))),
    largestResidual,
    fans: fansOf(rulings),
  })
}

function fansOf(rulings: readonly Ruling[]): DevelopableStrip['fans'] {
  // between the fans lies a branch with a line at the least
  const whole = rulings.flatMap((r, i) => (r.fan === 'none' ? [i] : []))
  const [first, last] = [rulings[whole[0]], rulings[whole[whole.length - 1]]]
  return Object.freeze({
    start: fan(rulings[0], rulings[0], first),
    end: fan(rulings[rulings.length - 1], last, rulings[rulings.length - 1]),
  })
}

function fan(corner: Ruling, a: Ruling, b: Ruling): Fan {
  if (corner.fan === 'none') return { edge: 'none', length: 0 }
  return corner.fan === 'p' ? { edge: 'q', length: b.t - a.t } : { edge: 'p', length: b.s - a.s }
}
