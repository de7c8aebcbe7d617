/** A few equations at once, by elimination with the largest pivot. For a few rows, not hundreds. */
import type { Matrix } from './matrix.js'

/** x of a x = b. Throws a RangeError where the equations do not settle it. */
export function solve(a: Matrix, b: readonly number[]): readonly number[] {
  const n = b.length
  const rows = a.map((row, i) => [...row, b[i]])
  for (let k = 0; k < n; k++) {
    let best = k
    for (let i = k + 1; i < n; i++) if (Math.abs(rows[i][k]) > Math.abs(rows[best][k])) best = i
    ;[rows[k], rows[best]] = [rows[best], rows[k]]
    const pivot = rows[k][k]
    if (pivot === 0 || !Number.isFinite(pivot)) throw new RangeError(`equations that do not settle: ${JSON.stringify(a)}`)
    for (let i = 0; i < n; i++) {
      if (i === k) continue
      const by = rows[i][k] / pivot
      for (let j = k; j <= n; j++) rows[i][j] -= by * rows[k][j]
    }
  }
  return rows.map((row, i) => row[n] / row[i])
}
