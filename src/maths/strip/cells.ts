/**
 * The branch filled with rulings. Two neighbouring bounds make a cell; a cell is split where an edge's curvature jumps inside it and
 * halved until neither sheet nor edges turn too far in it, and each keeps the ruling that halves it.
 */
import { dot, type Vec3 } from '../vec.js'
import type { Bound, Rows } from './branch.js'
import { type Line, torsalBetween } from './root.js'
import { type Ruling, rulingOf } from './ruling.js'
import { edgePoint } from './space-curve.js'

export type Cells =
  | { readonly ok: true; readonly rulings: readonly Ruling[] }
  | { readonly ok: false; readonly s: number; readonly t: number }

/** Cells halve no further than this many times. */
const DEEPEST = 10
const UNEVEN = 0.06
/** A break this near a cell's bound is the bound, m. */
const SAME = 1e-9

interface Node extends Line {
  readonly ruling: Ruling
}

type Fan = Ruling['fan']

/** Rulings at the bounds and between them, an odd count; or a place where one could not be found. `turn` in rad. */
export function cellsOf(rows: Rows, bounds: readonly Bound[], turn: number): Cells {
  const nodes = bounds.map(({ line, fan }) => nodeOf(line, fan))
  const rulings = [nodes[0].ruling]
  for (let i = 1; i < nodes.length; i++) {
    const fan = bounds[i - 1].fan === 'none' ? bounds[i].fan : bounds[i - 1].fan
    for (const [a, b] of atBreaks(rows, nodes[i - 1], nodes[i], fan)) {
      if (b && fill(rows, rulings, a, b, fan, turn, DEEPEST)) continue
      return { ok: false, s: a.p.at, t: a.q.at }
    }
  }
  return { ok: true, rulings }
}

const nodeOf = (line: Line, fan: Fan): Node => ({ ...line, ruling: rulingOf(line.p, line.q, fan) })

/** The cell in pieces between which an edge's curvature jumps; a piece without its far bound where no ruling runs through a break. */
function atBreaks(rows: Rows, a: Node, b: Node, fan: Fan): (readonly [Node, Node | null])[] {
  const { edgeP, edgeQ } = rows
  const s = edgeP.breaks?.find((at) => at > a.p.at + SAME && at < b.p.at - SAME)
  const t = edgeQ.breaks?.find((at) => at > a.q.at + SAME && at < b.q.at - SAME)
  if (s === undefined && t === undefined) return [[a, b]]
  const p = s === undefined ? null : edgePoint(edgeP, s)
  const q = s === undefined && t !== undefined ? edgePoint(edgeQ, t) : null
  const [low, high]: readonly Line[] = [
    { p: p ?? a.p, q: q ?? a.q },
    { p: p ?? b.p, q: q ?? b.q },
  ]
  const line = fan === 'none' ? torsalBetween(edgeP, edgeQ, low, high) : low
  if (!line) return [[a, null]]
  const node = nodeOf(line, fan)
  return [...atBreaks(rows, a, node, fan), ...atBreaks(rows, node, b, fan)]
}

/** Adds the rulings after a up to and with b; false where a cell has none to halve it. */
function fill(rows: Rows, into: Ruling[], a: Node, b: Node, fan: Fan, turn: number, deeper: number): boolean {
  const line = halving(rows, a, b, fan)
  if (!line) return false
  const half = nodeOf(line, fan)
  if (deeper > 0 && (turned(a, b) > turn || uneven(a, half, b) > UNEVEN))
    return fill(rows, into, a, half, fan, turn, deeper - 1) && fill(rows, into, half, b, fan, turn, deeper - 1)
  into.push(half.ruling, b.ruling)
  return true
}

/** The ruling that halves a cell: on the diagonal of its rectangle in (s, t) that the branch must cross, so that neither edge is preferred. */
function halving(rows: Rows, a: Line, b: Line, fan: Fan): Line | null {
  const { edgeP, edgeQ } = rows
  if (fan === 'p') return { p: a.p, q: edgePoint(edgeQ, (a.q.at + b.q.at) / 2) }
  if (fan === 'q') return { p: edgePoint(edgeP, (a.p.at + b.p.at) / 2), q: a.q }
  return torsalBetween(edgeP, edgeQ, { p: a.p, q: b.q }, { p: b.p, q: a.q })
}

/** How far from halving it the middle ruling divides either edge: where s and t do not run evenly, parabolas follow them badly. */
function uneven(a: Line, half: Line, b: Line): number {
  const share = (from: number, at: number, to: number): number => (to > from ? Math.abs((at - from) / (to - from) - 0.5) : 0)
  return Math.max(share(a.p.at, half.p.at, b.p.at), share(a.q.at, half.q.at, b.q.at))
}

const between = (u: Vec3, v: Vec3): number => Math.acos(Math.max(-1, Math.min(1, dot(u, v))))

/** How far the sheet, its edges or its rulings turn over a cell, rad. */
function turned(a: Node, b: Node): number {
  return Math.max(
    between(a.ruling.normal, b.ruling.normal),
    between(a.p.tangent, b.p.tangent),
    between(a.q.tangent, b.q.tangent),
    between(a.ruling.direction, b.ruling.direction),
  )
}
