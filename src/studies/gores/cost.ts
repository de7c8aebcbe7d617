/** What a number of gores costs: seams in metres, rivets in seams and mid ribs, sealant in the laps. Of one end. */
import { fittedPitch } from '../../derive/common/spacing.formulas.js'
import { edgeAzimuths } from '../../derive/end-names.js'
import type { Ground } from '../../derive/ends/ground.js'
import { meridianGirth } from '../../derive/ends/meridian.js'

export interface GoreCost {
  readonly gores: number
  /** from the cap's row to the toe, all seams together, m */
  readonly seamLength: number
  readonly seamRivets: number
  readonly ribRivets: number
  readonly ribs: number
  /** faying-surface sealant in the seams' laps, m3 */
  readonly sealant: number
}

/** Faying layer left in a lap after squeeze-out, m; common practice, no source. */
const FAYING_LAYER = 0.00025

export function costOf(ground: Ground, seams: readonly number[]): GoreCost {
  const edges = edgeAzimuths(seams)
  const { ends, rows } = ground.input
  const down = (phi: number, sigma: number): number => meridianGirth(ground.loft, phi, sigma) - ends.cap
  const foot = ground.base ?? ground.floor
  const rivets = (length: number, pitch: number): number => Math.round(length / fittedPitch.eval({ L: length, p_n: pitch }))
  const inner = edges.slice(1, -1)
  const mids = edges.slice(1).map((left, i) => (edges[i] + left) / 2)
  const seamLength = inner.reduce((sum, phi) => sum + down(phi, ground.toe), 0)
  return {
    gores: edges.length - 1,
    seamLength,
    seamRivets: inner.reduce((sum, phi) => sum + rivets(down(phi, ground.toe), rows.gore.pitch), 0),
    ribRivets: mids.reduce((sum, phi) => sum + rivets(down(phi, foot), rows.hoop.pitch), 0),
    ribs: inner.length + mids.length,
    sealant: seamLength * ends.lap * FAYING_LAYER,
  }
}
