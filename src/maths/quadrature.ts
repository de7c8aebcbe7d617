/** Integrals of smooth functions, and lengths found by them. Composite 8-point Gauss-Legendre: exact to degree 15 a panel. */

// Abscissae and weights of the 8-point rule on [-1, 1], one of each pair (Abramowitz and Stegun, table 25.4).
const NODES: readonly (readonly [x: number, weight: number])[] = [
  [0.1834346424956498, 0.362683783378362],
  [0.525532409916329, 0.3137066458778873],
  [0.7966664774136267, 0.2223810344533745],
  [0.9602898564975363, 0.1012285362903763],
]

/** Five Gauss-Legendre points and weights on 0 to 1, exact to degree 9 (Abramowitz and Stegun, table 25.4). */
export const GAUSS = [0.046910077030668, 0.230765344947158, 0.5, 0.769234655052842, 0.953089922969332] as const
export const WEIGHT = [0.1184634425280945, 0.2393143352496832, 0.2844444444444444, 0.2393143352496832, 0.1184634425280945] as const

/** The integral of f from a to b. Smooth f only; more panels where it bends sharply. */
export function integrate(f: (x: number) => number, a: number, b: number, panels = 32): number {
  const half = (b - a) / panels / 2
  let sum = 0
  for (let i = 0; i < panels; i += 1) {
    const middle = a + half * (2 * i + 1)
    for (const [x, weight] of NODES) sum += weight * (f(middle - half * x) + f(middle + half * x))
  }
  return sum * half
}

/** Perimeter of an ellipse with semi-axes a and b, in their unit. */
export function ellipsePerimeter(a: number, b: number): number {
  return 4 * integrate((t) => Math.hypot(a * Math.sin(t), b * Math.cos(t)), 0, Math.PI / 2, 64)
}

/** Length of the straight lines through the points, in their unit. */
export function polylineLength(points: readonly (readonly [x: number, y: number])[]): number {
  let sum = 0
  for (let i = 1; i < points.length; i += 1) {
    const [[x0, y0], [x1, y1]] = [points[i - 1], points[i]] as [readonly [number, number], readonly [number, number]]
    sum += Math.hypot(x1 - x0, y1 - y0)
  }
  return sum
}
