/**
 * Solving a tangent chain for measured sizes: Newton's method on the unknown headings and lengths.
 * The chain has as many `null` values as there are targets; the residual is given back, never hidden.
 */
import { at, buildChain, type ChainPiece, type ChainPoint, girthAtZ, type TangentChain, widest } from './tangent-chain.js'

export type OpenPiece =
  | { readonly kind: 'arc'; readonly name: string; readonly radius: number; readonly to: number | null }
  | { readonly kind: 'line'; readonly name: string; readonly length: number | null }

/** Sizes to meet, m; null where not asked. `floorWidth` is the full width at z = 0. */
export interface ChainTargets {
  readonly width: number | null
  readonly height: number | null
  readonly belt: number | null
  readonly floorWidth: number | null
}

export interface ChainFit {
  readonly chain: TangentChain
  readonly pieces: readonly ChainPiece[]
  /** largest remaining difference from a target, m */
  readonly residual: number
}

/** Met when every target is within a tenth of a micrometre. */
const CLOSE = 1e-7
const STEP = 1e-7

/** Null where no chain of these radii meets the sizes. */
export function fitChain(start: ChainPoint, pieces: readonly OpenPiece[], targets: ChainTargets): ChainFit | null {
  for (const guess of guesses(start, pieces)) {
    const solved = newton(start, pieces, targets, guess)
    if (solved && solved.residual < CLOSE) return solved
  }
  return null
}

function close(pieces: readonly OpenPiece[], values: readonly number[]): ChainPiece[] {
  let next = 0
  return pieces.map((p): ChainPiece => {
    if (p.kind === 'arc') return { ...p, to: p.to ?? values[next++] }
    return { ...p, length: p.length ?? values[next++] }
  })
}

function misses(start: ChainPoint, pieces: readonly OpenPiece[], t: ChainTargets, values: readonly number[]): number[] | null {
  let chain: TangentChain
  try {
    chain = buildChain(start, close(pieces, values))
  } catch {
    return null
  }
  const wide = widest(chain)
  const out: number[] = []
  if (t.width !== null) out.push(2 * wide.y - t.width)
  if (t.height !== null) out.push(start.z - at(chain, chain.length).z - t.height)
  if (t.belt !== null) out.push(wide.z - t.belt)
  if (t.floorWidth !== null) {
    const g = girthAtZ(chain, 0)
    out.push(g === null ? 1 : 2 * at(chain, g).y - t.floorWidth)
  }
  return out
}

function newton(start: ChainPoint, pieces: readonly OpenPiece[], t: ChainTargets, guess: readonly number[]): ChainFit | null {
  let x = [...guess]
  let f = misses(start, pieces, t, x)
  if (!f || f.length !== x.length) return null
  for (let round = 0; round < 60 && worst(f) > 1e-13; round++) {
    const jacobian = f.map(() => new Array<number>(x.length).fill(0))
    for (let j = 0; j < x.length; j++) {
      const up = misses(
        start,
        pieces,
        t,
        x.map((v, i) => (i === j ? v + STEP : v)),
      )
      const down = misses(
        start,
        pieces,
        t,
        x.map((v, i) => (i === j ? v - STEP : v)),
      )
      if (!up || !down) return null
      for (let i = 0; i < f.length; i++) jacobian[i][j] = (up[i] - down[i]) / (2 * STEP)
    }
    const step = solveLinear(jacobian, f)
    if (!step) return null
    let scale = 1
    let better: { x: number[]; f: number[] } | null = null
    for (; scale > 1e-6 && !better; scale /= 2) {
      const tryX = x.map((v, i) => v - scale * step[i])
      const tryF = misses(start, pieces, t, tryX)
      if (tryF && worst(tryF) < worst(f)) better = { x: tryX, f: tryF }
    }
    if (!better) break
    x = better.x
    f = better.f
  }
  const closed = close(pieces, x)
  return { chain: buildChain(start, closed), pieces: closed, residual: worst(f) }
}

const worst = (f: readonly number[]): number => f.reduce((m, v) => Math.max(m, Math.abs(v)), 0)

/** Starting values: headings spread between their written neighbours in a few proportions, lengths of a third of a metre. */
function* guesses(start: ChainPoint, pieces: readonly OpenPiece[]): Generator<number[]> {
  for (const lean of [0.5, 0.3, 0.7, 0.15, 0.85, 0.05, 0.95]) {
    for (const length of [0.3, 0.05, 1]) {
      const out: number[] = []
      let heading = start.heading
      pieces.forEach((p, i) => {
        if (p.kind === 'line') {
          if (p.length === null) out.push(length)
          return
        }
        if (p.to !== null) {
          heading = p.to
          return
        }
        const laterArcs = pieces.slice(i + 1).filter((q) => q.kind === 'arc')
        const open = laterArcs.findIndex((q) => q.kind === 'arc' && q.to !== null)
        const known = open < 0 ? Math.PI * 0.9 : (laterArcs[open] as { to: number }).to
        const steps = (open < 0 ? laterArcs.length : open) + 1
        heading += (known - heading) * (steps === 1 ? lean : Math.min(0.95, (2 * lean) / steps))
        out.push(heading)
      })
      yield out
    }
  }
}

/** Gaussian elimination with partial pivoting; null where the matrix is singular. */
function solveLinear(matrix: readonly (readonly number[])[], right: readonly number[]): number[] | null {
  const n = right.length
  const a = matrix.map((row, i) => [...row, right[i]])
  for (let c = 0; c < n; c++) {
    let p = c
    for (let r = c + 1; r < n; r++) if (Math.abs(a[r][c]) > Math.abs(a[p][c])) p = r
    if (Math.abs(a[p][c]) < 1e-14) return null
    ;[a[c], a[p]] = [a[p], a[c]]
    for (let r = c + 1; r < n; r++) {
      const k = a[r][c] / a[c][c]
      for (let j = c; j <= n; j++) a[r][j] -= k * a[c][j]
    }
  }
  const x = new Array<number>(n).fill(0)
  for (let r = n - 1; r >= 0; r--) {
    let s = a[r][n]
    for (let j = r + 1; j < n; j++) s -= a[r][j] * x[j]
    x[r] = s / a[r][r]
  }
  return x
}
