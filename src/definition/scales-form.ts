/** What the scales said of a coach, as a shop writes it down: a small file of its own, read with its faults and their lines. */
import { startReading } from './faults.js'
import { group, list, needs, type Whole } from './form.js'
import { date, id, mass, NOT_NEGATIVE } from './form-values.js'
import { readYaml } from './read-yaml.js'
import type { Fault } from './types.js'

const scalesForm = group({
  case: needs('case', id('B'), 'load case it stood in on the scales'),
  on: needs('on', date(), 'day of the weighing'),
  uncertainty: needs('uncertainty', mass(), 'of one reading, one standard deviation'),
  hitch: needs('hitch', mass(NOT_NEGATIVE), 'under the hitch, the coach level'),
  axles: needs(
    'axles',
    list(group({ left: needs('left', mass(), 'under the left wheel'), right: needs('right', mass(), 'under the right wheel') }), 1),
    'wheels of each axle, from the front',
  ),
})

export type ScaleReadings = Whole<NonNullable<ReturnType<typeof scalesForm.read>>>

/** Readings, or every fault at once. */
export function readScales(file: string, text: string): { readonly readings: ScaleReadings | null; readonly faults: readonly Fault[] } {
  const { root, faults } = readYaml(text, file)
  if (!root) return { readings: null, faults }
  const reading = startReading(root)
  const draft = scalesForm.read(root, reading, [])
  const all = [...faults, ...reading.faults]
  return all.length > 0 || !draft ? { readings: null, faults: all } : { readings: draft as ScaleReadings, faults: [] }
}
