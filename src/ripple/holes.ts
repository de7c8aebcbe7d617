/**
 * Holes of one face before and after: which came, went and moved. A hole that stands where one of its row stood stays, whatever
 * its span is called now. The rest are matched within a span, in order and by nearest (a span that was fitted anew has moved its
 * holes), and what is left in a row, as when an opening breaks a span in two, by nearest within a pitch. Nothing moves by less than a micron.
 */
import type { Design } from '../derive/design.js'
import { rowNamed } from '../derive/holes.js'
import type { FastenerRow, HoleSet, Pattern } from '../derive/nouns.js'
import type { HolesChange } from './nouns.js'

/** m */
const STILL = 1e-6
/** The grain of everything printed, m. */
const NO_SIZE = 1e-9

interface Spot {
  readonly x: number
  readonly y: number
  readonly diameter: number
  readonly span: string
}

/** How far the pattern of the design after is to be shifted before it is laid on the one before, m. */
export type Shift = readonly [x: number, y: number]

export function holeChanges(before: Design, after: Design, was: Pattern, now: Pattern, shift: Shift): readonly HolesChange[] {
  const [old, places] = [holesByRow(was), holesByRow(now)]
  return [...new Set([...old.keys(), ...places.keys()])].sort().flatMap((id) => {
    const [a, b] = [old.get(id) ?? [], places.get(id) ?? []]
    if (allStand(was.holes, a, now.holes, b, shift)) return []
    const pitch = Math.max(rowNamed(before, id)?.pitch ?? 0, rowNamed(after, id)?.pitch ?? 0)
    const change = rowChange(spotsOf(before, id, was.holes, a, [0, 0]), spotsOf(after, id, now.holes, b, shift), pitch)
    return change.added + change.removed + change.moved + change.resized === 0 ? [] : [{ row: id, ...change }]
  })
}

/** Places in the hole arrays of each row's holes, in the row's order. */
function holesByRow({ holes }: Pattern): ReadonlyMap<string, readonly number[]> {
  const lists = holes.rows.map((): number[] => [])
  for (const [k, row] of holes.row.entries()) lists[row].push(k)
  return new Map(holes.rows.map((id, row) => [id, lists[row]]))
}

/** Most rows of a changed sheet are as they were, hole for hole. */
function allStand(old: HoleSet, a: readonly number[], now: HoleSet, b: readonly number[], [dx, dy]: Shift): boolean {
  if (a.length !== b.length) return false
  for (let i = 0; i < a.length; i++) {
    const [p, q] = [a[i], b[i]]
    if (Math.abs(now.x[q] + dx - old.x[p]) > NO_SIZE || Math.abs(now.y[q] + dy - old.y[p]) > NO_SIZE) return false
    if (Math.abs(now.diameter[q] - old.diameter[p]) > NO_SIZE) return false
  }
  return true
}

function spotsOf(design: Design, id: string, holes: HoleSet, list: readonly number[], [dx, dy]: Shift): readonly Spot[] {
  if (list.length === 0) return []
  const row = rowNamed(design, id)
  if (!row) throw new Error(`a pattern holds holes of the unknown row ${id}`)
  return list.map((k) => ({ x: holes.x[k] + dx, y: holes.y[k] + dy, diameter: holes.diameter[k], span: spanOf(row, holes.index[k]) }))
}

function spanOf(row: FastenerRow, i: number): string {
  const { from, to } = row.spans[row.span[i]]
  return `${from} ${to}`
}

type Tally = Omit<HolesChange, 'row'>

function rowChange(before: readonly Spot[], after: readonly Spot[], pitch: number): Tally {
  const still = pairsStill(before, after)
  let moved = 0
  let by = 0
  let resized = still.filter(([a, b]) => Math.abs(a.diameter - b.diameter) > NO_SIZE).length
  const [old, now] = [new Set(before), new Set(after)]
  const take = (pairs: readonly Pair[]): void => {
    for (const [a, b] of pairs) {
      old.delete(a)
      now.delete(b)
    }
  }
  take(still)
  const move = (pairs: readonly Pair[]): void => {
    take(pairs)
    moved += pairs.length
    for (const [a, b] of pairs) {
      by = Math.max(by, distance(a, b))
      if (Math.abs(a.diameter - b.diameter) > NO_SIZE) resized++
    }
  }
  const spans = bySpan(old)
  for (const [span, came] of bySpan(now)) move(spanPairs(spans.get(span) ?? [], came))
  move(nearestPairs([...old], [...now], pitch))
  return { added: now.size, removed: old.size, moved, by, resized }
}

function bySpan(spots: Iterable<Spot>): ReadonlyMap<string, readonly Spot[]> {
  const out = new Map<string, Spot[]>()
  for (const spot of spots) {
    const list = out.get(spot.span)
    if (list) list.push(spot)
    else out.set(spot.span, [spot])
  }
  return out
}

type Pair = readonly [before: Spot, after: Spot]
const distance = (a: Spot, b: Spot): number => Math.hypot(a.x - b.x, a.y - b.y)

/** Holes that stand within a micron of one of the same row. */
function pairsStill(before: readonly Spot[], after: readonly Spot[]): readonly Pair[] {
  const sorted = [...before].sort((a, b) => a.x - b.x)
  const used = new Set<Spot>()
  return after.flatMap((b): readonly Pair[] => {
    for (let i = firstFrom(sorted, b.x - STILL); i < sorted.length && sorted[i].x <= b.x + STILL; i++) {
      if (used.has(sorted[i]) || distance(sorted[i], b) > STILL) continue
      used.add(sorted[i])
      return [[sorted[i], b]]
    }
    return []
  })
}

function firstFrom(sorted: readonly Spot[], x: number): number {
  let [low, high] = [0, sorted.length]
  while (low < high) {
    const middle = (low + high) >> 1
    if (sorted[middle].x < x) low = middle + 1
    else high = middle
  }
  return low
}

/**
 * Holes of one span keep their order: the fewer are matched with as many of the more, so that the distances add up to the least.
 * As many as before are simply the same holes fitted to another pitch.
 */
function spanPairs(before: readonly Spot[], after: readonly Spot[]): readonly Pair[] {
  if (before.length <= after.length) return inOrder(before, after).map(([a, b]) => [a, b])
  return inOrder(after, before).map(([b, a]) => [a, b])
}

/** Least sum by stages: hole i of the fewer goes to hole i + k of the more, k never falling. */
function inOrder(few: readonly Spot[], many: readonly Spot[]): readonly Pair[] {
  const spare = many.length - few.length
  const choices: Int32Array[] = []
  let least = new Float64Array(spare + 1)
  for (const [i, spot] of few.entries()) {
    const sum = new Float64Array(spare + 1)
    const from = new Int32Array(spare + 1)
    let best = 0
    for (let k = 0; k <= spare; k++) {
      if (least[k] < least[best]) best = k
      from[k] = best
      sum[k] = least[best] + distance(spot, many[i + k])
    }
    choices.push(from)
    least = sum
  }
  let k = least.reduce((best, sum, at) => (sum < least[best] ? at : best), 0)
  const pairs: Pair[] = []
  for (let i = few.length - 1; i >= 0; i--) {
    pairs.push([few[i], many[i + k]])
    k = choices[i][k]
  }
  return pairs
}

/** The nearest two first, then the nearest two of the rest; ties go by place, which does not depend on which design came first. */
function nearestPairs(before: readonly Spot[], after: readonly Spot[], within: number): readonly Pair[] {
  if (before.length === 0 || after.length === 0) return []
  const all = before.flatMap((a) => after.map((b) => ({ a, b, d: distance(a, b), at: a.x + b.x, level: a.y + b.y })))
  const near = all.filter(({ d }) => d < within).sort((p, q) => p.d - q.d || p.at - q.at || p.level - q.level)
  const used = new Set<Spot>()
  return near.flatMap(({ a, b }): readonly Pair[] => {
    if (used.has(a) || used.has(b)) return []
    used.add(a).add(b)
    return [[a, b]]
  })
}
