/** Springs and papers: what is written well but cannot be, and needs more than one value to see. */
import { composeVin } from '../tables/vin.js'
import type { Draft } from './definition-form.js'
import type { Reading } from './faults.js'

export function roadFaults(draft: Draft, reading: Reading): void {
  springFaults(draft, reading)
  numberFaults(draft, reading)
}

function springFaults(draft: Draft, reading: Reading): void {
  const springs = draft.suspension
  if (!springs) return
  const points = springs.torque ?? []
  points.forEach((point, i) => {
    const before = points[i - 1]
    if (!point || !before || point.turn === undefined || before.turn === undefined) return
    if (point.torque === undefined || before.torque === undefined) return
    if (point.turn > before.turn && point.torque > before.torque) return
    reading.impossible(['suspension', 'torque', i], {
      expected: 'more turn and more torque than the point before',
      because: 'the table falls or stands still',
      advice: 'Put the points in order of their turn; a spring that gives way was measured wrongly.',
    })
  })
  const { tube, bar, cord } = springs.rubber ?? {}
  if (tube === undefined || bar === undefined || cord === undefined) return
  const corner = tube / Math.SQRT2 - bar / 2
  if (corner <= 0 || (Math.PI * cord * cord) / 4 >= corner * corner)
    reading.impossible(['suspension', 'rubber', 'cord'], {
      expected: 'a cord whose section is less than its corner',
      because: 'rubber keeps its volume, and this cord has more than there is room for between bar and tube',
      advice: 'Make the cord thinner, the bar smaller or the tube larger.',
    })
}

function numberFaults(draft: Draft, reading: Reading): void {
  const vin = draft.papers?.vin
  if (!vin) return
  const { maker, attributes, year, plant, smallMaker, serial } = vin
  if (maker === undefined || attributes === undefined || year === undefined || plant === undefined) return
  if (smallMaker === undefined || serial === undefined) return
  const made = composeVin({ maker, attributes, year, plant, smallMaker, serial: serial ?? 1 })
  if (!('faults' in made)) return
  for (const because of made.faults)
    reading.impossible(['papers', 'vin'], {
      expected: 'pieces that make a vehicle identification number',
      because: because.charAt(0).toLowerCase() + because.slice(1, -1),
      advice: 'Compare them with what the shop has filed.',
    })
}
