/**
 * Where a point of the patch comes to lie in its blank, and the strain there: cubics through the nodes in both directions, whose
 * slopes are those of the parabola through three neighbours, so that lines of holes run smoothly over the cells.
 */
import type { Blank } from './blank.js'

/** What of a blank is needed to find a place in it. */
export type BlankNodes = Pick<Blank, 'across' | 'along' | 'stops' | 'x' | 'y' | 'nodeMajor' | 'nodeMinor'>

/** Position in the blank of the patch's point u, v, both from 0 to 1; outside that the outermost cubic is continued. */
export function inBlank(blank: BlankNodes, u: number, v: number): readonly [x: number, y: number] {
  const [across, along] = weightsOf(blank, u, v)
  return [mixed(blank, blank.x, across, along), mixed(blank, blank.y, across, along)]
}

/** Greater and lesser principal strain at u, v. */
export function strainAt(blank: BlankNodes, u: number, v: number): { readonly major: number; readonly minor: number } {
  const [across, along] = weightsOf(blank, u, v)
  return { major: mixed(blank, blank.nodeMajor, across, along), minor: mixed(blank, blank.nodeMinor, across, along) }
}

/** Four neighbouring lines of nodes, from `first` on, and how much each counts. */
interface Weights {
  readonly first: number
  readonly shares: readonly number[]
}

function weightsOf(blank: BlankNodes, u: number, v: number): readonly [Weights, Weights] {
  const { stops, along } = blank
  return [weightsAt(u, stops.length - 1, (i) => stops[i]), weightsAt(v, along, (j) => j / along)]
}

function mixed(blank: BlankNodes, values: readonly number[], across: Weights, along: Weights): number {
  let sum = 0
  for (const [l, share] of along.shares.entries())
    for (const [k, part] of across.shares.entries()) sum += share * part * values[(along.first + l) * (blank.across + 1) + across.first + k]
  return sum
}

/** Hermite's cubic on the cell that holds x, written as weights of the values at its ends and their neighbours. */
function weightsAt(x: number, cells: number, stop: (k: number) => number): Weights {
  let [low, high] = [0, cells]
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (stop(middle) <= x) low = middle
    else high = middle
  }
  const [from, h] = [stop(low), stop(low + 1) - stop(low)]
  const t = (x - from) / h
  const first = Math.max(0, Math.min(low - 1, cells - Math.min(3, cells)))
  const shares = new Array<number>(Math.min(3, cells) + 1).fill(0)
  shares[low - first] += (1 + 2 * t) * (1 - t) ** 2
  shares[low + 1 - first] += t * t * (3 - 2 * t)
  for (const [end, by] of [
    [low, h * t * (1 - t) ** 2],
    [low + 1, h * t * t * (t - 1)],
  ] as const) {
    const middle = Math.min(Math.max(end, 1), cells - 1)
    for (const [k, slope] of slopes(stop(middle - 1), stop(middle), stop(middle + 1), stop(end)).entries())
      shares[middle - 1 + k - first] += by * slope
  }
  return { first, shares }
}

/** Slope at x of the parabola through three stops, as weights of its values there. */
function slopes(a: number, b: number, c: number, x: number): readonly [number, number, number] {
  return [(2 * x - b - c) / ((a - b) * (a - c)), (2 * x - a - c) / ((b - a) * (b - c)), (2 * x - a - b) / ((c - a) * (c - b))]
}
