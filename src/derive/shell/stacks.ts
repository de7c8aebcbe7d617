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

/** Candidates a row can have before the bits of a number run out. */
const MOST_CANDIDATES = 52

export function resolveRow(draft: RowDraft, fastener: FastenerType, rules: ShopRules, skin: Development, chain: TangentChain): ResolvedRow {
  const plates = reachable(draft).sort((a, b) => a.order - b.order)
  if (plates.length > MOST_CANDIDATES) throw new Error(`row ${draft.id} has ${plates.length} candidate layers; at most ${MOST_CANDIDATES} are foreseen`)
  const index: number[][] = plates.map(() => [])
  const keys = new Map<number, number>()
  const members: number[][] = []
  const counts: number[] = []
  const stack = new Array<number>(draft.station.length)
  for (let i = 0; i < draft.station.length; i++) {
    const v = developed(skin, draft.girth[i])
    // which plates hold metal here, as the bits of a number: a row has far fewer than 52 candidates
    let key = 0
    for (let k = 0; k < plates.length; k++) {
      if (!hasMetal(plates[k], draft.station[i], draft.girth[i], v)) continue
      key += 2 ** k
      index[k].push(i)
    }
    let at = keys.get(key)
    if (at === undefined) {
      at = members.length
      keys.set(key, at)
      members.push(plates.map((_, k) => k).filter((k) => Math.floor(key / 2 ** k) % 2 === 1))
      counts.push(0)
    }
    counts[at]++
    stack[i] = at
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

/** Candidates whose rectangle meets the row's: the others cannot hold any of its fasteners. */
function reachable(draft: RowDraft): Plate[] {
  let [x0, x1, g0, g1] = [Infinity, -Infinity, Infinity, -Infinity]
  for (let i = 0; i < draft.station.length; i++) {
    x0 = Math.min(x0, draft.station[i])
    x1 = Math.max(x1, draft.station[i])
    g0 = Math.min(g0, draft.girth[i])
    g1 = Math.max(g1, draft.girth[i])
  }
  return draft.candidates.filter((p) => p.x1 >= x0 && p.x0 <= x1 && p.g1 >= g0 && p.g0 <= g1)
}
