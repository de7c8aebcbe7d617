/** Damping against speed for every load case behind every tow car: the curves of the towing sheet. */
import type { NotComputed, TowingDerived } from '../../derive/road-nouns.js'
import { swaySweep } from '../../derive/towing/sway.js'

export interface SwayCurves {
  /** m/s, alike for every curve */
  readonly speeds: readonly number[]
  /** damping as a share of critical; null where nothing swings */
  readonly curves: readonly { readonly case: string; readonly car: string; readonly damping: readonly (number | null)[] }[]
}

/** Speeds of a curve: 60 from 40 to 160 km/h. */
const COUNT = 60
const [FROM, TO] = [40 / 3.6, 160 / 3.6]
const SPEEDS: readonly number[] = Object.freeze(Array.from({ length: COUNT }, (_, i) => FROM + ((TO - FROM) * i) / (COUNT - 1)))

/** Null where towing was not computed. */
export function swayCurves(towing: TowingDerived | NotComputed): SwayCurves | null {
  if ('notComputed' in towing) return null
  return Object.freeze({
    speeds: SPEEDS,
    curves: towing.steadiness.map(({ case: id, car, rig }) => ({
      case: id,
      car,
      damping: swaySweep(rig, SPEEDS).map((each) => each.damping),
    })),
  })
}
