/**
 * The branch of torsal rulings that a strip can follow. Rows of constant s are searched for the roots t of F(s, t) = 0, then one
 * root a row is chosen so that both parameters only grow and the lines run as evenly as they can (dynamic programming over the rows).
 * The branch may run out through t = 0 or s = 0 at the start and through the far ends at the finish; fans fill what is left.
 */

import { FLAT, type Line, torsalBetween } from './root.js'
import { sameSide, torsal } from './ruling.js'
import { type EdgePoint, edgePoint, type SpaceCurve } from './space-curve.js'

const ROWS = 28
const COLUMNS = 40

export interface Root extends Line {
  /** false where the sheet turns over along the line */
  readonly good: boolean
}

export interface Rows {
  readonly edgeP: SpaceCurve
  readonly edgeQ: SpaceCurve
  readonly p: readonly EdgePoint[]
  readonly q: readonly EdgePoint[]
  /** F at row i, column j */
  readonly F: readonly (readonly number[])[]
  readonly roots: readonly (readonly Root[])[]
  /** where F changes sign along t = 0 on the way to row i, and along the end of q on the way from it: null where it does not */
  readonly ins: readonly (Root | null)[]
  readonly outs: readonly (Root | null)[]
}

const spread = (curve: SpaceCurve, parts: number): EdgePoint[] =>
  Array.from({ length: parts + 1 }, (_, i) => edgePoint(curve, i === parts ? curve.length : (curve.length * i) / parts))

export function rowsOf(edgeP: SpaceCurve, edgeQ: SpaceCurve): Rows {
  const [p, q] = [spread(edgeP, ROWS), spread(edgeQ, COLUMNS)]
  const F = p.map((row) => q.map((column) => torsal(row, column)))
  const crossing = (i: number, j: number): Root | null => {
    if (i < 0 || i >= ROWS || F[i][j] * F[i + 1][j] >= 0) return null
    return root(torsalBetween(edgeP, edgeQ, { p: p[i], q: q[j] }, { p: p[i + 1], q: q[j] }))
  }
  return {
    edgeP,
    edgeQ,
    p,
    q,
    F,
    roots: p.map((row, i) => rootsOf(edgeP, edgeQ, row, q, F[i])),
    ins: p.map((_, i) => crossing(i - 1, 0)),
    outs: p.map((_, i) => crossing(i, COLUMNS)),
  }
}

const root = (line: Line | null): Root | null => line && { ...line, good: sameSide(line.p, line.q) > 0 }

function rootsOf(edgeP: SpaceCurve, edgeQ: SpaceCurve, p: EdgePoint, q: readonly EdgePoint[], F: readonly number[]): Root[] {
  const found: Root[] = []
  const keep = (line: Line | null): void => {
    const at = root(line)
    if (at) found.push(at)
  }
  const between = (a: number, b: number): Line | null => torsalBetween(edgeP, edgeQ, { p, q: q[a] }, { p, q: q[b] })
  for (let j = 0; j <= COLUMNS; j++) {
    if (Math.abs(F[j]) <= FLAT) {
      const crosses = j > 0 && j < COLUMNS && F[j - 1] * F[j + 1] < 0 && Math.abs(F[j - 1]) > FLAT && Math.abs(F[j + 1]) > FLAT
      keep(crosses ? between(j - 1, j + 1) : { p, q: q[j] })
    } else if (j < COLUMNS && Math.abs(F[j + 1]) > FLAT && F[j] * F[j + 1] < 0) keep(between(j, j + 1))
  }
  return found
}

export interface Rules {
  /** lines along which the sheet turns over */
  readonly turned: boolean
  /** lines that run back along q */
  readonly backward: boolean
}

export interface Branch {
  readonly first: number
  readonly lines: readonly Root[]
}

/** Cost of a fan as long as its edge, against that of a row whose line is uneven by one row. */
const FAN = 4
/** Lines may run back by this share of the edge where a facet's lines all meet in one point and rounding tells them apart. */
const BACK = 1e-9

/** The best branch that keeps the rules, or null; and the last row that lines reached from a lawful start, -1 where none starts. */
export function bestBranch(rows: Rows, rules: Rules): { readonly branch: Branch | null; readonly reached: number } {
  const { roots, edgeQ } = rows
  const costs = roots.map((row) => row.map(() => Number.POSITIVE_INFINITY))
  const before = roots.map((row) => row.map(() => -1))
  let best = { cost: Number.POSITIVE_INFINITY, row: -1, root: -1 }
  let reached = -1
  for (let i = 0; i <= ROWS; i++) {
    for (let k = 0; k < roots[i].length; k++) {
      const root = roots[i][k]
      if (!root.good && !rules.turned) continue
      const share = root.q.at / edgeQ.length
      if (i === 0 || leads(rows.ins[i], root, rules)) costs[i][k] = FAN * (i === 0 ? share : i / ROWS)
      for (let l = 0; i > 0 && l < roots[i - 1].length; l++) {
        const cost = costs[i - 1][l] + stepCost(rows, roots[i - 1][l], root, rules)
        if (cost < costs[i][k]) [costs[i][k], before[i][k]] = [cost, l]
      }
      if (costs[i][k] < Number.POSITIVE_INFINITY) reached = i
      const whole = costs[i][k] + FAN * (i === ROWS ? 1 - share : 1 - i / ROWS)
      if ((i === ROWS || leads(rows.outs[i], root, rules)) && whole < best.cost) best = { cost: whole, row: i, root: k }
    }
  }
  if (best.row < 0) return { branch: null, reached }
  const lines: Root[] = []
  let [i, k] = [best.row, best.root]
  for (; k >= 0; k = before[i--][k]) lines.unshift(roots[i][k])
  return { branch: { first: i + 1, lines }, reached }
}

function stepCost(rows: Rows, a: Line, b: Line, rules: Rules): number {
  const longest = rows.edgeQ.length
  const ahead = b.q.at - a.q.at
  if (!rules.backward && ahead < -BACK * longest) return Number.POSITIVE_INFINITY
  // near a turn of the branch the cell's corners say nothing of whether its lines are joined: nearness must do
  if (rules.backward ? Math.abs(ahead) > longest / 4 : ahead > 0 && !joined(a, b)) return Number.POSITIVE_INFINITY
  const uneven = (ahead / longest) * ROWS - 1
  return uneven * uneven
}

/** A branch that rises from a to b parts the two other corners of the cell between them. */
function joined(a: Line, b: Line): boolean {
  const [above, below] = [torsal(a.p, b.q), torsal(b.p, a.q)]
  return above * below < 0 || (Math.abs(above) <= FLAT && Math.abs(below) <= FLAT) || Math.min(Math.abs(above), Math.abs(below)) <= FLAT
}

/** Whether the branch runs out of the strip at `end` on its way from or to the root. */
const leads = (end: Root | null, to: Root, rules: Rules): boolean =>
  end !== null && (end.good || rules.turned) && (end.q.at < to.q.at ? joined(end, to) : joined(to, end))

export interface Bound {
  readonly line: Root
  readonly fan: 'none' | 'p' | 'q'
}

/** The branch with the lines where it runs out and the fans beyond them, from corner to corner. */
export function cornerToCorner(rows: Rows, { first, lines }: Branch): Bound[] {
  const { edgeP, edgeQ, p, q } = rows
  const last = first + lines.length - 1
  const corner = (i: number, j: number): Root => ({ p: p[i], q: q[j], good: true })
  const all: Bound[] = []
  const [into, out] = [rows.ins[first], rows.outs[last]]
  if (first > 0 && into) {
    if (into.p.at > 0) all.push({ line: corner(0, 0), fan: 'q' })
    all.push({ line: into, fan: 'none' })
  } else if (lines[0].q.at > 0) all.push({ line: corner(0, 0), fan: 'p' })
  let reached = 0
  for (const line of lines) {
    // rounding only: a line that must run back more was refused
    const held = line.q.at < reached ? { ...line, q: edgePoint(edgeQ, reached) } : line
    reached = held.q.at
    all.push({ line: held, fan: 'none' })
  }
  if (last < ROWS && out) {
    all.push({ line: out, fan: 'none' })
    if (out.p.at < edgeP.length) all.push({ line: corner(ROWS, COLUMNS), fan: 'q' })
  } else if (reached < edgeQ.length) all.push({ line: corner(ROWS, COLUMNS), fan: 'p' })
  return all
}
