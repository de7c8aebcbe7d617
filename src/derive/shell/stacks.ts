/**
 * What each fastener of a row goes through, outside to inside, and so its grip and bought length.
 * The stack is found from where the metal is, not from the kind of row: a hoop rivet at a seam holds one sheet more.
 */

import type { FastenerType, ShopRules } from '../../definition/types.js'
import { type Development, developed } from '../../maths/development.js'
import { heightAt, type TangentChain } from '../../maths/tangent-chain.js'
import { blindRivet, type StockRivet, solidRivet } from '../common/rivet-stock.js'
import type { RowDraft } from '../common/row-draft.js'
import type { Memo } from '../memo.js'
import type { FastenerRow, Stack } from '../nouns.js'
import type { OpeningShape } from './opening-shape.js'
import { type Plate, uncut } from './plates.js'

/** A row with its stacks, and for each of its plates the fasteners that go through it. */
export interface ResolvedRow {
  readonly row: FastenerRow
  readonly through: readonly { readonly row: FastenerRow; readonly plate: Plate; readonly index: readonly number[] }[]
}

/** Which plates each fastener goes through: plain indices, so that they outlive the plate objects they were found with. */
interface Found {
  readonly row: FastenerRow
  readonly index: readonly (readonly number[])[]
}

/** What a row is resolved with; `sizes` is shared by the rows of one derivation. */
export interface At {
  readonly fastener: FastenerType
  readonly rules: ShopRules
  readonly skin: Development
  readonly chain: TangentChain
  readonly sizes: Map<string, StockRivet>
}

/** `token` stands for everything but openings: the same token, the same rules, skin and chain. */
export function resolveRow(memo: Memo, token: unknown, draft: RowDraft, candidates: readonly Plate[], at: At): ResolvedRow {
  const reach = memo.keep(`reach ${draft.id}`, [draft], () => reachOf(draft, at.skin))
  const plates = candidates
    .filter((p) => p.x1 >= reach.x0 && p.x0 <= reach.x1 && p.g1 >= reach.g0 && p.g0 <= reach.g1)
    .sort((a, b) => a.order - b.order)
  return memo.keep(`row ${draft.id} through`, [draft, token, ...plates], () => throughPlates(memo, token, draft, plates, reach, at))
}

/** The same plates with other cuts elsewhere, or moved where no fastener of the row is, change nothing. */
function throughPlates(memo: Memo, token: unknown, draft: RowDraft, plates: readonly Plate[], reach: Reach, at: At): ResolvedRow {
  const inputs: unknown[] = [draft, token]
  for (const p of plates) {
    inputs.push(p.part, p.development, p.x0, p.x1, p.g0, p.g1, p.ring?.inner)
    for (const c of p.cuts) if (meets(c, reach)) inputs.push(c)
  }
  const found = memo.settle(`stack ${draft.id}`, inputs, () => findStacks(draft, plates, reach, at), sameFound)
  const hit = plates.filter((_, k) => found.index[k].length > 0)
  return memo.keep(`resolved ${draft.id}`, [found, ...hit], () => ({
    row: found.row,
    through: plates.flatMap((plate, k) => (found.index[k].length > 0 ? [{ row: found.row, plate, index: found.index[k] }] : [])),
  }))
}

/** Whether two findings for the same stations and girths name the same stacks and the same fasteners in each plate. */
function sameFound(a: Found, b: Found): boolean {
  if (a.row.station !== b.row.station || a.index.length !== b.index.length || a.row.stacks.length !== b.row.stacks.length) return false
  for (let k = 0; k < a.index.length; k++) {
    const [p, q] = [a.index[k], b.index[k]]
    if (p.length !== q.length) return false
    for (let i = 0; i < p.length; i++) if (p[i] !== q[i]) return false
  }
  // the same girths stand at other waterlines when the section itself has moved
  if (a.row.waterline.some((z, i) => z !== b.row.waterline[i])) return false
  return a.row.stacks.every((s, k) => {
    const t = b.row.stacks[k]
    return s.grip === t.grip && s.name === t.name && s.parts.join() === t.parts.join() && s.thickness.join() === t.thickness.join()
  })
}

function findStacks(draft: RowDraft, plates: readonly Plate[], reach: Reach, at: At): Found {
  const edges = new Float64Array(4 * plates.length)
  plates.forEach((p, k) => {
    edges[4 * k] = p.x0
    edges[4 * k + 1] = p.x1
    edges[4 * k + 2] = p.g0
    edges[4 * k + 3] = p.g1
  })
  // only cuts that come near the row can take metal from under it
  const near = plates.map((p) => ({ ring: p.ring, cuts: p.cuts.filter((c) => meets(c, reach)) }))
  const known = new Map<string, number>()
  const ends: number[][] = []
  const counts: number[] = []
  const n = draft.station.length
  const stack = new Array<number>(n)
  const waterline = new Array<number>(n)
  // a row along the coach stands at one girth
  let g = Number.NaN
  let v = 0
  let z = 0
  // neighbours mostly go through the same plates, so the last stack is tried first
  let last: number[] = []
  let current = -1
  const hit = new Array<number>(plates.length).fill(0)
  for (let i = 0; i < n; i++) {
    const x = draft.station[i]
    if (draft.girth[i] !== g) {
      g = draft.girth[i]
      v = developed(at.skin, g)
      z = heightAt(at.chain, Math.abs(g))
    }
    waterline[i] = z
    let hits = 0
    let same = current >= 0
    for (let k = 0; k < plates.length; k++) {
      const e = 4 * k
      if (x < edges[e] || x > edges[e + 1] || g < edges[e + 2] || g > edges[e + 3] || !uncut(near[k], x, v)) continue
      same = same && last[hits] === k
      hit[hits++] = k
    }
    if (!same || hits !== last.length) {
      last = hit.slice(0, hits)
      const key = last.join()
      current = known.get(key) ?? ends.push(last) - 1
      known.set(key, current)
      if (current === counts.length) counts.push(0)
    }
    counts[current]++
    stack[i] = current
  }
  const stacks = ends.map((hit, k): Stack => {
    const thickness = hit.map((h) => plates[h].thickness)
    const grip = thickness.reduce((a, b) => a + b, 0)
    const bought = boughtFor(at, grip)
    return { parts: hit.map((h) => plates[h].part), thickness, grip, length: bought.length.value, name: bought.name, count: counts[k] }
  })
  const index = throughEach(stack, ends, counts, plates.length)
  return { row: Object.freeze({ ...draft, waterline, stack, stacks }), index }
}

/** Which fasteners go through each plate: those whose stack holds it. Their number is known beforehand. */
function throughEach(
  stack: readonly number[],
  ends: readonly (readonly number[])[],
  counts: readonly number[],
  plates: number,
): number[][] {
  const sizes = new Array<number>(plates).fill(0)
  for (const [e, hit] of ends.entries()) for (const k of hit) sizes[k] += counts[e]
  const index = sizes.map((size) => new Array<number>(size))
  sizes.fill(0)
  for (let i = 0; i < stack.length; i++) for (const k of ends[stack[i]]) index[k][sizes[k]++] = i
  return index
}

/** The rivet bought for a grip; few grips occur, so each is looked up once a derivation. */
function boughtFor(at: At, grip: number): StockRivet {
  const key = `${at.fastener.id} ${grip}`
  const known = at.sizes.get(key)
  if (known) return known
  const { fastener, rules } = at
  const made =
    fastener.kind === 'blind' ? blindRivet(fastener.diameter.value, grip) : solidRivet(fastener.diameter.value, grip, rules.rivetLength)
  at.sizes.set(key, made)
  return made
}

interface Reach {
  readonly x0: number
  readonly x1: number
  readonly g0: number
  readonly g1: number
  readonly v0: number
  readonly v1: number
}

const meets = (c: OpeningShape, r: Reach): boolean => c.x1 >= r.x0 && c.x0 <= r.x1 && c.v1 >= r.v0 && c.v0 <= r.v1

function reachOf(draft: RowDraft, skin: Development): Reach {
  let [x0, x1, g0, g1] = [Infinity, -Infinity, Infinity, -Infinity]
  for (let i = 0; i < draft.station.length; i++) {
    x0 = Math.min(x0, draft.station[i])
    x1 = Math.max(x1, draft.station[i])
    g0 = Math.min(g0, draft.girth[i])
    g1 = Math.max(g1, draft.girth[i])
  }
  return { x0, x1, g0, g1, v0: developed(skin, g0), v1: developed(skin, g1) }
}
