/**
 * Symmetric positive definite systems of points in a plane, whose rows reach only a fixed number of points back: Cholesky in place.
 * Rows and columns are taken two by two, x and y of a point: four inner products then share what they read, which is what a
 * factorisation of this size spends its time on.
 */
export interface Banded {
  /** number of rows, 2 a point */
  readonly size: number
  /** numbers kept in each row, both columns of its own point last */
  readonly width: number
  /** row r, column c at r width + c - (r with its last bit cleared) + width - 2; only columns up to r count */
  readonly rows: Float64Array
}

/** An empty matrix of `points` points, each tied to none further back than `reach` points. */
export function bandedOf(points: number, reach: number): Banded {
  const width = 2 * reach + 2
  return { size: 2 * points, width, rows: new Float64Array(2 * points * width) }
}

/** Where row r keeps column 0, if it kept it: add the column. */
export const rowStart = (matrix: Banded, r: number): number => r * matrix.width + matrix.width - 2 - (r - (r % 2))

/** The first column that row r keeps. */
export const firstColumn = (matrix: Banded, r: number): number => Math.max(r - (r % 2) - matrix.width + 2, 0)

/** Overwrites the matrix with its lower factor. False where a pivot is not positive; the matrix is then of no further use. */
export function factorise(matrix: Banded): boolean {
  const { size, width, rows } = matrix
  const reach = width - 2
  for (let r = 0; r < size; r += 2) {
    const first = Math.max(r - reach, 0)
    const [p, q] = [rowStart(matrix, r), rowStart(matrix, r + 1)]
    for (let c = first; c <= r; c += 2) {
      const [s, t] = [rowStart(matrix, c), rowStart(matrix, c + 1)]
      let ps = rows[p + c]
      let pt = rows[p + c + 1]
      let qs = rows[q + c]
      let qt = rows[q + c + 1]
      for (let k = Math.max(c - reach, first); k < c; k++) {
        const a = rows[p + k]
        const b = rows[q + k]
        const d = rows[s + k]
        const e = rows[t + k]
        ps -= a * d
        pt -= a * e
        qs -= b * d
        qt -= b * e
      }
      if (c === r) {
        const [own, next] = [rows[p + r], rows[q + r + 1]]
        // a pivot lost to rounding is as bad as a negative one
        if (!(ps > 1e-13 * own)) return false
        rows[p + r] = Math.sqrt(ps)
        rows[q + r] = qs / rows[p + r]
        const rest = qt - rows[q + r] * rows[q + r]
        if (!(rest > 1e-13 * next)) return false
        rows[q + r + 1] = Math.sqrt(rest)
      } else {
        const [d, e, f] = [rows[s + c], rows[t + c], rows[t + c + 1]]
        rows[p + c] = ps / d
        rows[q + c] = qs / d
        rows[p + c + 1] = (pt - rows[p + c] * e) / f
        rows[q + c + 1] = (qt - rows[q + c] * e) / f
      }
    }
  }
  return true
}

/** Overwrites the right-hand side with the solution. */
export function solve(factor: Banded, x: Float64Array): void {
  const { size, rows } = factor
  for (let r = 0; r < size; r++) {
    const at = rowStart(factor, r)
    let sum = x[r]
    for (let c = firstColumn(factor, r); c < r; c++) sum -= rows[at + c] * x[c]
    x[r] = sum / rows[at + r]
  }
  for (let r = size - 1; r >= 0; r--) {
    const at = rowStart(factor, r)
    x[r] /= rows[at + r]
    for (let c = firstColumn(factor, r); c < r; c++) x[c] -= rows[at + c] * x[r]
  }
}
