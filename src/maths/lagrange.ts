/** A row of five times five values, in plain numbers: asked for some ten thousand times a coach. */
export const timesFive = (row: readonly number[], at: ArrayLike<number>): number =>
  row[0] * at[0] + row[1] * at[1] + row[2] * at[2] + row[3] * at[3] + row[4] * at[4]

/** Polynomials through values at given places: row p of the answer turns those values into the coefficient of x to the power p. */
export function lagrange(at: readonly number[]): number[][] {
  const rows = at.map(() => new Array<number>(at.length).fill(0))
  at.forEach((x, j) => {
    // the polynomial that is 1 at x and 0 at the other places, multiplied out factor by factor
    let product = [1]
    for (const [k, other] of at.entries()) {
      if (k === j) continue
      const next = new Array<number>(product.length + 1).fill(0)
      product.forEach((c, power) => {
        next[power] -= (c * other) / (x - other)
        next[power + 1] += c / (x - other)
      })
      product = next
    }
    product.forEach((c, power) => {
      rows[power][j] = c
    })
  })
  return rows
}
