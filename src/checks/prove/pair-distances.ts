/**
 * Every pair of our holes filed by its distance, so that the pairs as far apart as two listed holes are found at once.
 * 1,500 holes make 1.1 million pairs: a counting sort into narrow bins takes about 20 ms.
 */
import type { Points } from './rigid.js'

export interface PairDistances {
  /** how many pairs may be `distance` apart, give or take `slack`; bins are whole, so this is an upper count */
  readonly count: (distance: number, slack: number) => number
  /** calls `use(i, j)` with i < j for every pair whose distance is within `slack` */
  readonly each: (distance: number, slack: number, use: (i: number, j: number) => void) => void
}

const BIN = 0.00025

export function pairDistances(p: Points): PairDistances {
  const n = p.x.length
  if (n > 65535) throw new RangeError(`pairDistances: ${n} holes in one pattern, at most 65535`)
  let minX = Infinity,
    minY = Infinity,
    maxX = -Infinity,
    maxY = -Infinity
  for (let i = 0; i < n; i++) {
    minX = Math.min(minX, p.x[i])
    maxX = Math.max(maxX, p.x[i])
    minY = Math.min(minY, p.y[i])
    maxY = Math.max(maxY, p.y[i])
  }
  const bins = n < 2 ? 1 : Math.floor(Math.hypot(maxX - minX, maxY - minY) / BIN) + 2
  const binOf = (i: number, j: number): number => {
    const dx = p.x[i] - p.x[j],
      dy = p.y[i] - p.y[j]
    return Math.floor(Math.sqrt(dx * dx + dy * dy) / BIN)
  }
  const start = new Uint32Array(bins + 1)
  for (let i = 0; i < n; i++) for (let j = i + 1; j < n; j++) start[binOf(i, j) + 1]++
  for (let b = 0; b < bins; b++) start[b + 1] += start[b]
  const next = start.slice()
  const filed = new Uint32Array(start[bins])
  for (let i = 0; i < n; i++) for (let j = i + 1; j < n; j++) filed[next[binOf(i, j)]++] = (i << 16) | j
  const clamp = (b: number): number => Math.max(0, Math.min(bins, b))
  const from = (d: number): number => start[clamp(Math.floor(d / BIN))]
  const to = (d: number): number => start[clamp(Math.floor(d / BIN) + 1)]
  return {
    count: (distance, slack) => Math.max(0, to(distance + slack) - from(distance - slack)),
    each: (distance, slack, use) => {
      for (let k = from(distance - slack), end = to(distance + slack); k < end; k++) {
        const pair = filed[k]
        const i = pair >>> 16,
          j = pair & 0xffff
        if (Math.abs(Math.hypot(p.x[i] - p.x[j], p.y[i] - p.y[j]) - distance) <= slack) use(i, j)
      }
    },
  }
}
