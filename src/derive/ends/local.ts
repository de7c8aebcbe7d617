/** One end before it is put on the coach: everything that nose and tail share, made once. */
import { edgeAzimuths } from '../end-names.js'
import { type EndInput, type Ground, groundOf, type Handed } from './ground.js'
import { type Rib, ribsOf } from './members.js'
import { type LocalRow, localRows } from './rows.js'
import { runningLengths } from './running.js'
import { type EndSkin, formedSkin, type Located } from './skin.js'
import { layerPoint, type Patch, patchArea } from './surface.js'

export interface LocalEnd {
  readonly ground: Ground
  readonly skin: EndSkin
  readonly ribs: readonly Rib[]
  readonly rows: readonly LocalRow[]
  /** surface of gore k - 1 from the cap's row to the toe, and of the cap */
  readonly gores: readonly Patch[]
  readonly cap: Patch
  /** running length, on the mid surface of the member behind it, at each fastener of the cap's and the base's row */
  readonly runs: Readonly<Record<string, readonly number[]>>
}

export function localEnd(input: EndInput, handed: Handed): LocalEnd {
  const ground = groundOf(input, handed)
  const skin = formedSkin(ground)
  const rows = localRows(ground, skin)
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
    const { kind } = row.draft
    if (kind !== 'cap' && kind !== 'base') continue
    const metal = kind === 'cap' ? 2 * t + shell.frame.thickness.value / 2 : t + shell.edgeChannel.thickness.value / 2
    const sigma = (at: Located): number => (kind === 'cap' ? capSigma(at.phi) : (ground.base ?? 0))
    runs[row.draft.id] = runningLengths(row.located.map((at) => layerPoint(ground.loft, at.phi, sigma(at), metal)))
  }
  return {
    ground,
    skin,
    ribs: ribsOf(ground),
    rows,
    gores,
    cap: patchArea(ground.loft, Math.PI / 2, -Math.PI / 2, () => 0, capSigma),
    runs,
  }
}
