/** Weight and balance in sentences: what it weighs, what it may carry, and each load case whose hitch is otherwise. */
import type { UnitSystem } from '../quantity/format.js'
import { line, type RippleLine, targets } from './line.js'
import { turn } from './loads.js'
import type { Both, LoadChange, Ripple } from './nouns.js'
import { weight } from './words.js'

/** Less than this is not worth the ink: a twentieth of a point of the hitch's share, and a twentieth of a kilogram. */
const POINT = 0.0005
const KILOGRAM = 0.05

export function sayLoads({ loads }: Ripple, units: UnitSystem): readonly RippleLine[] {
  const seen = loads.cases.filter((each) => turn(each) >= POINT)
  const whole = ([what, both]: readonly [string, Both<number | null> | null]): readonly RippleLine[] =>
    both && isSeen(both) ? [line(`${what} ${kg(both.before, units)} becomes ${kg(both.after, units)}.`)] : []
  return [
    ...whole(['Unloaded', loads.unloaded]),
    ...whole(['It may carry', loads.capacity]),
    ...seen.map((each) => line(sayCase(each, units), targets('case', [each.case]))),
  ]
}

const isSeen = ({ before, after }: Both<number | null>): boolean =>
  before === null || after === null || Math.abs(after - before) >= KILOGRAM

function sayCase({ case: id, says, share, hitch, design, mass }: LoadChange, units: UnitSystem): string {
  const named = `Case ${id}, ${says}${design ? '' : ' (not to be stowed so)'}`
  if (mass.before === null) return `${named}, is new: ${percent(share.after)} on the hitch, ${kg(hitch.after, units)}.`
  if (mass.after === null) return `${named}, goes.`
  return `${named}: the hitch carries ${percent(share.after)} in place of ${percent(share.before)} (${kg(hitch.after, units)}, was ${kg(hitch.before, units)}).`
}

const percent = (share: number | null): string => (share === null ? 'nothing' : `${(share * 100).toFixed(1)} %`)
const kg = (value: number | null, units: UnitSystem): string => (value === null ? 'unknown' : weight(value, units))
