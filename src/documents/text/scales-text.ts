/** Weighed against calculated, as a person reads it on a screen. */
import { GROUP_WORDS, type MassGroup } from '../../definition/weight-types.js'
import { formatMass } from '../../quantity/format.js'
import type { PrintUnits } from '../drawing/units.js'

interface Compared {
  readonly case: string
  readonly weighed: number
  readonly calculated: number
  readonly readings: readonly { readonly says: string; readonly read: number; readonly calculated: number; readonly left: number }[]
  readonly groups: readonly {
    readonly group: MassGroup
    readonly calculated: number
    readonly bias: number
    readonly before: number
    readonly after: number
  }[]
  readonly agrees: boolean
}

export function scalesText(coach: string, found: Compared, units: PrintUnits): readonly string[] {
  const mass = (kg: number): string => formatMass(kg, units, { decimals: 1 })
  const signed = (kg: number): string => `${kg < 0 ? '' : '+'}${mass(kg)}`
  return [
    `${coach}, case ${found.case}: weighed ${mass(found.weighed)}, calculated ${mass(found.calculated)}, ${signed(found.weighed - found.calculated)}.`,
    found.agrees
      ? 'The readings lie within what the list and the scales are unsure of.'
      : 'The readings lie beyond what the list and the scales are unsure of: something is not in the list, or a scale is off.',
    '',
    ...found.readings.map(
      (each) =>
        `${each.says.padEnd(14)} read ${mass(each.read).padStart(10)}   calculated ${mass(each.calculated).padStart(10)}   unexplained ${signed(each.left)}`,
    ),
    '',
    'Bias of each group, one standard deviation after and before the weighing:',
    ...found.groups.map(
      (each) =>
        `${each.group} ${GROUP_WORDS[each.group].padEnd(13)} ${mass(each.calculated).padStart(10)}  ${signed(each.bias).padStart(10)}  ±${mass(each.after)} (±${mass(each.before)})`,
    ),
  ]
}
