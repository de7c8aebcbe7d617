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
