/** A check explained: what it compares, by what source, and every working behind it. */
import type { Check } from '../../derive/nouns.js'
import { display } from '../../quantity/display.js'
import type { UnitSystem } from '../../quantity/format.js'

/** Lines of a check before its workings. */
export function checkText(check: Check, units: UnitSystem): readonly string[] {
  const { demand, capacity, unit, margin } = check
  const figure = (value: number): string => display(value, unit ?? '1', units)
  return [
    check.says,
    `  verdict: ${check.verdict}${margin === null ? '' : `, margin ${(margin * 100).toFixed(1)} %`}`,
    ...(demand === null ? [] : [`  demand: ${figure(demand)}`]),
    ...(capacity === null ? [] : [`  capacity: ${figure(capacity)}`]),
    ...(margin === null || demand === null || capacity === null
      ? []
      : [`  margin = capacity / demand - 1 = ${figure(capacity)} / ${figure(demand)} - 1`]),
    `  source: ${check.source}`,
    ...(check.mend ? [`  to mend it: ${check.mend}`] : []),
  ]
}
