/** Small square matrices as lists of rows: products, characteristic polynomial, eigenvalues, exponential. For a few rows, not hundreds. */
import { polynomialRoots, type Root } from './polynomial-roots.js'

export type Matrix = readonly (readonly number[])[]

function product(a: Matrix, b: Matrix): number[][] {
  return a.map((row) => b[0].map((_, j) => row.reduce((sum, each, k) => sum + each * b[k][j], 0)))
}

const identity = (n: number): number[][] => Array.from({ length: n }, (_, i) => Array.from({ length: n }, (_, j) => (i === j ? 1 : 0)))

/** Coefficients of det(x I - A), the constant first and 1 last, by the traces of Faddeev and LeVerrier. */
export function characteristicPolynomial(a: Matrix): readonly number[] {
  const n = a.length
  const out = new Array<number>(n + 1).fill(0)
  out[n] = 1
  let m = identity(n)
  for (let k = 1; k <= n; k++) {
    const am = product(a, m)
    const c = -am.reduce((sum, row, i) => sum + row[i], 0) / k
    out[n - k] = c
    m = am.map((row, i) => row.map((each, j) => each + (i === j ? c : 0)))
  }
  return out
}

export const eigenvalues = (a: Matrix): readonly Root[] => polynomialRoots(characteristicPolynomial(a))

/** Terms of the series once the matrix is halved below 1/2: the next is under 1e-21. */
const TERMS = 18

/** e^A by halving, Taylor's series, and squaring back. */
export function exponential(a: Matrix): Matrix {
  const size = Math.max(...a.map((row) => row.reduce((sum, each) => sum + Math.abs(each), 0)))
  const halvings = size > 0.5 ? Math.ceil(Math.log2(size / 0.5)) : 0
  const small = a.map((row) => row.map((each) => each / 2 ** halvings))
  let sum: Matrix = identity(a.length)
  let term: Matrix = sum
  for (let k = 1; k <= TERMS; k++) {
    term = product(term, small).map((row) => row.map((each) => each / k))
    sum = sum.map((row, i) => row.map((each, j) => each + term[i][j]))
  }
  for (let k = 0; k < halvings; k++) sum = product(sum, sum)
  return sum
}

/** Over a time dt with the input held: x(t + dt) = step x(t) + held u. For x' = A x + B u. */
export function heldStep(a: Matrix, b: readonly number[], dt: number): { readonly step: Matrix; readonly held: readonly number[] } {
  const n = a.length
  // the integral of e^(A s) B stands beside e^(A dt) when the input is carried as one more state that does not change
  const wide = [...a.map((row, i) => [...row.map((each) => each * dt), b[i] * dt]), new Array<number>(n + 1).fill(0)]
  const e = exponential(wide)
  return { step: e.slice(0, n).map((row) => row.slice(0, n)), held: e.slice(0, n).map((row) => row[n]) }
}
