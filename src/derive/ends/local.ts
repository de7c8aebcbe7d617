/** One end before it is put on the coach: everything that nose and tail share, made once. */
import { edgeAzimuths } from '../end-names.js'
import { type EndInput, type Ground, groundOf, type Handed } from './ground.js'
import type { LocalRow } from './laid-row.js'
import { type LiningPatch, liningPatches } from './lining.js'
import { liningRows } from './lining-rows.js'
import { type Rib, ribsOf } from './members.js'
import { localRows } from './rows.js'
import { runningBetween } from './running.js'
import { type EndSkin, formedSkin } from './skin.js'
import { type Patch, patchArea } from './surface.js'
import { type Wrapped, wrappedEnd } from './wrapped.js'

export interface LocalEnd {
  readonly ground: Ground
  readonly skin: EndSkin
  /** the sheets of an end whose gores are wrapped; null where they are formed */
  readonly wrapped: Wrapped | null
  readonly ribs: readonly Rib[]
  readonly rows: readonly LocalRow[]
  /** surface of gore k - 1 from the cap's row to the toe, and of the cap */
  readonly gores: readonly Patch[]
  readonly cap: Patch
  /** panels of the lining, from the right joint to the left one, and the crown's */
  readonly lining: readonly LiningPatch[]
  /** running length, on the mid surface of the member behind it, at each fastener of the cap's and the base's row */
  readonly runs: Readonly<Record<string, readonly number[]>>
}

export function localEnd(input: EndInput, handed: Handed): LocalEnd {
  const lofted = groundOf(input, handed)
  const wrapped = input.ends.make === 'wrapped' ? wrappedEnd(lofted) : null
  const ground = wrapped?.ground ?? lofted
  const skin = wrapped?.skin ?? formedSkin(ground)
  const ribs = ribsOf(ground, wrapped?.midRib ?? null)
  const rows = [...localRows(ground, skin), ...liningRows(ground, skin, ribs)]
  const { ends, shell } = input
  const t = ends.skin.thickness.value
  const { capSigma } = ground
  const half = Math.ceil(ground.gores / 2)
  const edges = edgeAzimuths(ends.seams)
  const right = Array.from({ length: half }, (_, i) => patchArea(ground.loft, edges[i], edges[i + 1], capSigma, () => ground.toe))
  const mirror = (p: Patch): Patch => ({ ...p, centre: [p.centre[0], -p.centre[1], p.centre[2]] })
  const gores = edges.slice(1).map((_, i) => (i < half ? right[i] : mirror(right[ground.gores - 1 - i])))
  const runs: Record<string, readonly number[]> = {}
  for (const row of rows) {
    const { kind, id } = row.draft
    const isInner = id === 'lining-cap'
    if (kind !== 'cap' && kind !== 'base' && !isInner) continue
    // mid surface of the member's flange: the ring lies under two sheets, the base channel under one
    const half = (kind === 'base' ? shell.edgeChannel : shell.frame).thickness.value / 2
    const metal = isInner ? 2 * t + shell.frame.height - half : (kind === 'cap' ? 2 : 1) * t + half
    const points = row.located.map((at) =>
      skin.inside(at.phi, isInner ? { at: 'girth', girth: at.girth } : { at: kind as 'cap' | 'base' }, metal),
    )
    // wrapped gores meet at an angle over their seams, where a member behind them is bent
    const corners = wrapped ? row.located.flatMap((at, i) => (ground.edges.some((e) => Math.abs(e - at.phi) < 1e-9) ? [i] : [])) : []
    runs[row.draft.id] = runningBetween(points, corners)
  }
  return {
    ground,
    skin,
    wrapped,
    ribs,
    rows,
    gores,
    cap: patchArea(ground.loft, Math.PI / 2, -Math.PI / 2, () => 0, capSigma),
    runs,
    lining: liningPatches(lofted),
  }
}
