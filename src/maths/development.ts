/**
 * Unrolling a sheet that lies at some depth inside a tangent chain: a map from girth on the chain to length on the
 * sheet's own mid surface. A sheet that dips under another at a lap lies deeper there; the step itself has no length.
 * Because curvature is constant on each arc and depth on each zone, the map is exactly piecewise linear.
 *
 * Girth is signed: positive on the right half, negative on the left, which is the mirror image. m.
 */
import type { TangentChain } from './tangent-chain.js'

export interface Development {
  /** ascending signed girths where the slope changes */
  readonly girth: readonly number[]
  /** developed length at each, 0 at the crown */
  readonly length: readonly number[]
  /** slope from each breakpoint to the next; the first also serves before it, the last after it */
  readonly slope: readonly number[]
}

/** A zone of signed girth where the mid surface lies at another depth than elsewhere. */
export interface DepthZone {
  readonly from: number
  readonly to: number
  readonly depth: number
}

/** Develops the mid surface `depth` m inside the chain, `zones` overriding it where they reach. */
export function developAt(chain: TangentChain, depth: number, zones: readonly DepthZone[] = []): Development {
  const reach = chain.length
  const stops = new Set<number>([0, reach, -reach])
  for (const e of chain.elements) {
    stops.add(e.girth0)
    stops.add(-e.girth0)
  }
  for (const zone of zones) {
    stops.add(zone.from)
    stops.add(zone.to)
  }
  const girth = [...stops].sort((a, b) => a - b)
  const slope = girth.map((g, i) => {
    const mid = i + 1 < girth.length ? (g + girth[i + 1]) / 2 : g + 1
    return 1 - curvatureAt(chain, Math.abs(mid)) * depthAt(mid, depth, zones)
  })
  const length = new Array<number>(girth.length).fill(0)
  const zero = girth.indexOf(0)
  for (let i = zero + 1; i < girth.length; i++) length[i] = length[i - 1] + slope[i - 1] * (girth[i] - girth[i - 1])
  for (let i = zero - 1; i >= 0; i--) length[i] = length[i + 1] - slope[i] * (girth[i + 1] - girth[i])
  return { girth, length, slope }
}

function curvatureAt(chain: TangentChain, g: number): number {
  for (const e of chain.elements) if (g <= e.girth1) return e.curvature
  return 0
}

export function depthAt(g: number, depth: number, zones: readonly DepthZone[]): number {
  for (const zone of zones) if (g > zone.from && g < zone.to) return zone.depth
  return depth
}

/** Developed length at signed girth g, m from the crown. */
export function developed(d: Development, g: number): number {
  const i = intervalOf(d.girth, g)
  return d.length[i] + d.slope[i] * (g - d.girth[i])
}

/** Signed girth at a developed length: the inverse of `developed`. */
export function undeveloped(d: Development, length: number): number {
  const i = intervalOf(d.length, length)
  return d.girth[i] + (length - d.length[i]) / d.slope[i]
}

/** The interval that was found last: places are mostly asked for one beside the other, thousands a coach. */
const LAST = { stops: [] as readonly number[], low: 0 }

function intervalOf(stops: readonly number[], value: number): number {
  if (stops === LAST.stops && value >= stops[LAST.low] && value < stops[LAST.low + 1]) return LAST.low
  let low = 0
  let high = stops.length - 1
  if (value >= stops[high]) return high
  while (high - low > 1) {
    const mid = (low + high) >> 1
    if (stops[mid] <= value) low = mid
    else high = mid
  }
  LAST.stops = stops
  LAST.low = low
  return low
}
