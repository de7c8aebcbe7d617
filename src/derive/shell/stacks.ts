/**
 * What each fastener of a row goes through, outside to inside, and so its grip and bought length.
 * The stack is found from where the metal is, not from the kind of row: a hoop rivet at a seam holds one sheet more.
 */
import { developed, type Development } from '../../maths/development.js'
import { at, type TangentChain } from '../../maths/tangent-chain.js'
import type { FastenerType, ShopRules } from '../../definition/types.js'
import type { FastenerRow, Stack } from '../nouns.js'
import { hasMetal, type Plate } from './plates.js'
import { blindRivet, solidRivet } from './formulas/rivet-stock.js'
import type { RowDraft } from './row-draft.js'

/** A row with its stacks, and for each of its plates the fasteners that go through it. */
export interface ResolvedRow {
  readonly row: FastenerRow
  readonly through: readonly { readonly plate: Plate; readonly index: readonly number[] }[]
}

export function resolveRow(draft: RowDraft, fastener: FastenerType, rules: ShopRules, skin: Development, chain: TangentChain): ResolvedRow {
  const plates = [...draft.candidates].sort((a, b) => a.order - b.order)
  const index: number[][] = plates.map(() => [])
  const keys = new Map<string, number>()
  const members: number[][] = []
  const counts: number[] = []
  const stack: number[] = []
  for (let i = 0; i < draft.station.length; i++) {
    const v = developed(skin, draft.girth[i])
    const hit: number[] = []
    for (let k = 0; k < plates.length; k++) {
      if (!hasMetal(plates[k], draft.station[i], draft.girth[i], v)) continue
      hit.push(k)
      index[k].push(i)
    }
    const key = hit.join(',')
    let at = keys.get(key)
    if (at === undefined) {
      at = members.length
      keys.set(key, at)
      members.push(hit)
      counts.push(0)
    }
    counts[at]++
    stack.push(at)
  }
  const stacks = members.map((hit, k): Stack => {
    const thickness = hit.map((h) => plates[h].thickness)
    const grip = thickness.reduce((a, b) => a + b, 0)
    const bought = fastener.kind === 'blind' ? blindRivet(fastener.diameter.value, grip) : solidRivet(fastener.diameter.value, grip, rules.rivetLength)
    return { parts: hit.map((h) => plates[h].part), thickness, grip, length: bought.length.value, name: bought.name, count: counts[k] }
  })
  const { candidates: _, ...rest } = draft
  return {
    row: Object.freeze({ ...rest, waterline: draft.girth.map((g) => at(chain, Math.abs(g)).z), stack, stacks }),
    through: plates.map((plate, k) => ({ plate, index: index[k] })).filter((t) => t.index.length > 0),
  }
}
