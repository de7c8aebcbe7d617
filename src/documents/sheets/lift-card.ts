/** The lift card of the bare body: what it weighs, where its centre lies, what each leg holds; or that it must not be lifted so. */
import type { Design } from '../../derive/design.js'
import type { LiftDerived } from '../../derive/weight-nouns.js'
import { POUND_FORCE } from '../../quantity/display.js'
import { formatMass } from '../../quantity/format.js'
import type { Page } from '../drawing/page.js'
import type { PrintOptions } from '../drawing/sheet.js'
import { coachTitle, unitsOf } from '../drawing/sheet.js'
import type { Row } from '../drawing/table.js'
import type { PrintUnits } from '../drawing/units.js'
import { fixed, lengthWords } from '../drawing/units.js'
import { tableSheets, widthsFor } from './table-sheet.js'

const force = (n: number, units: PrintUnits): string =>
  units === 'metric' ? `${fixed(n / 1000, 2)} kN` : `${fixed(n / POUND_FORCE, 0)} lbf`
const degrees = (rad: number): string => `${fixed((rad * 180) / Math.PI, 0)} deg`

export function liftCard(design: Design, lift: LiftDerived, options: PrintOptions = {}): readonly Page[] {
  const units = unitsOf(options)
  const { coach } = design.definition
  const { mass, centre, slings, hook, spreader, legRated, blocked, lines } = lift
  const place = (m: number): string => lengthWords(Math.round(m * 1000) / 1000, units)
  const body: readonly Row[] = [
    ['Mass', formatMass(mass.value, units, { decimals: 0 }), 'weigh it with the hook before it leaves the floor'],
    ['Centre, station', place(centre[0]), 'mark it on both sides'],
    ['Centre, y and WL', `${place(centre[1])}, ${place(centre[2])}`, ''],
  ]
  const held: readonly Row[] = slings.flatMap((each): Row[] => [
    { heading: `Sling at ${each.frame}, station ${place(each.station)}` },
    ['Straight up', force(each.load.value, units), 'both legs together'],
    ['Along each leg', force(each.leg, units), `from the hook to the beam's end; rated ${force(legRated, units)}`],
    ['Angle from level', degrees(each.angle.value), 'not below 30 deg'],
  ])
  return tableSheets(
    {
      name: 'lift-card',
      says: 'Lift card of the bare body',
      heading: blocked === null ? 'Lift of the bare body' : 'DO NOT LIFT',
      sentences:
        blocked === null
          ? [
              'By calculation. A competent person plans the lift, weighs the body with the hook, and tries it a hand above the floor. Nobody under the load.',
              `Hook over the centre, ${place(hook)} above the crown; across the crown over each frame a beam of ${place(spreader)}, and over its ends the two legs of the frame, clear of the skin. Slings go round the frames, on pads, never round skin alone.`,
              `In the body: ${lines.join('; ')}.`,
              'Strength of the beams, and of the frames where the slings pull, was not checked.',
            ]
          : [blocked, 'No figures are given for such a lift.'],
      title: coachTitle(design, options, 'Lift card', coach.name, 'Lift card'),
      columns: [
        { head: 'What', width: 52, bold: true },
        { head: 'Figure', width: 52 },
        { head: 'Note', width: widthsFor(options, false, 104), wraps: true },
      ],
      rows: blocked === null ? [...body, ...held] : [],
    },
    options,
  )
}
