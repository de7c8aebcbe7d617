/**
 * In which order holes are visited: several simple routes are tried and the shortest is taken. Not the shortest possible;
 * a person can follow it. The same holes give the same route.
 */
export interface Spot {
  readonly x: number
  readonly y: number
}

/** Band widths tried for the routes that go to and fro, m: about half a pitch to several pitches. */
const BANDS = [0.006, 0.013, 0.026, 0.051, 0.102, 0.203] as const

export function travelOf(spots: readonly Spot[], order: readonly number[], from: Spot): number {
  let sum = 0
  let at = from
  for (const i of order) {
    sum += Math.hypot(spots[i].x - at.x, spots[i].y - at.y)
    at = spots[i]
  }
  return sum
}

/** To and fro in bands of `width` across `across`; every other band runs back. */
function serpentine(spots: readonly Spot[], across: 'x' | 'y', width: number): readonly number[] {
  const along = across === 'x' ? 'y' : 'x'
  const least = Math.min(...spots.map((s) => s[across]))
  const band = (i: number): number => Math.floor((spots[i][across] - least) / width + 1e-9)
  const used = [...new Set(spots.map((_, i) => band(i)))].sort((a, b) => a - b)
  const turn = new Map(used.map((b, n) => [b, n % 2 === 0 ? 1 : -1]))
  return spots
    .map((_, i) => i)
    .sort(
      (a, b) =>
        band(a) - band(b) || turn.get(band(a))! * (spots[a][along] - spots[b][along]) || spots[a][across] - spots[b][across] || a - b,
    )
}

/** Always to the nearest hole not yet visited. */
function nearestFirst(spots: readonly Spot[], from: Spot): readonly number[] {
  const left = spots.map((_, i) => i)
  const order: number[] = []
  let at = from
  while (left.length) {
    let best = 0
    let least = Infinity
    for (let k = 0; k < left.length; k++) {
      const d = (spots[left[k]].x - at.x) ** 2 + (spots[left[k]].y - at.y) ** 2
      if (d < least) {
        least = d
        best = k
      }
    }
    const [taken] = left.splice(best, 1)
    order.push(taken)
    at = spots[taken]
  }
  return order
}

/** Indices of all spots, each once. */
export function shortRoute(spots: readonly Spot[], from: Spot): readonly number[] {
  if (spots.length < 2) return spots.map((_, i) => i)
  const routes = [nearestFirst(spots, from), ...BANDS.flatMap((w) => [serpentine(spots, 'x', w), serpentine(spots, 'y', w)])]
  let best = routes[0]
  for (const route of routes) if (travelOf(spots, route, from) < travelOf(spots, best, from) - 1e-9) best = route
  return best
}
