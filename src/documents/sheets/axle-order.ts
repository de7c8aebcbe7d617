/** The sheet an axle is ordered by: what the coach asks of it, and a line for the maker to confirm each. */
import type { Design } from '../../derive/design.js'
import type { RideDerived } from '../../derive/road-nouns.js'
import { formatMass } from '../../quantity/format.js'
import type { Page } from '../drawing/page.js'
import type { PrintOptions } from '../drawing/sheet.js'
import { coachTitle, unitsOf } from '../drawing/sheet.js'
import type { Row } from '../drawing/table.js'
import { fixed, lengthWords, type PrintUnits } from '../drawing/units.js'
import { tableSheets, widthsFor } from './table-sheet.js'

const degrees = (rad: number): string => `${fixed((rad * 180) / Math.PI, 1)} deg`
const ASK = 'to be asked'

export function axleOrder(design: Design, options: PrintOptions = {}): readonly Page[] {
  const { gear } = design.definition
  const { ride } = design
  if (!gear || !design.under.gear) return []
  const units = unitsOf(options)
  const known = 'notComputed' in ride ? null : ride
  const rows: readonly Row[] = [
    { heading: 'Number and rating' },
    ['Axles alike', String(gear.spindles.length), ''],
    ...ratingRows(design, units),
    { heading: 'Sizes' },
    ...sizeRows(design, units),
    { heading: 'Arm and rubber' },
    ...armRows(design, known, units),
    { heading: 'Wheel' },
    ...wheelRows(design, units),
    { heading: 'The maker says' },
    ['Hub: studs and their circle', ASK, ''],
    ['Brakes and their voltage', ASK, ''],
    ['Bolts of the bracket and their torque', ASK, ''],
    ['Camber and toe as delivered', ASK, ''],
    ['Least temperature of the rubber', ASK, ''],
  ]
  return tableSheets(
    {
      name: 'axle-order',
      says: 'What the axles are ordered by, for the maker to confirm',
      heading: 'Order sheet of the axles',
      sentences: [
        'STRENGTH NOT CHECKED: brackets, rails and welds need an engineer who approves them.',
        'The maker confirms or corrects every line; a measured table of torque against turn comes with the first axle and is written into the definition.',
        ...(known ? [] : ['notComputed' in ride ? ride.notComputed : '']),
      ],
      title: coachTitle(design, options, 'Order sheet', design.definition.coach.name, 'Axles'),
      rows,
      columns: [
        { head: 'What', width: 70, bold: true, wraps: true },
        { head: 'Asked for', width: widthsFor(options, false, 70 + 38), wraps: true },
        { head: 'Confirmed', width: 38 },
      ],
    },
    options,
  )
}

function ratingRows({ road, ride }: Design, units: PrintUnits): readonly Row[] {
  const ratings = 'notComputed' in road ? [] : road.axleRatings
  return [
    ...ratings.map((rating, i) => [`Rating of axle ${i + 1}`, `at least ${formatMass(rating, units, { decimals: 0 })}`, '']),
    ...('notComputed' in ride
      ? []
      : [['Load on each wheel at gross weight', formatMass(ride.body + ride.unsprung, units, { decimals: 0 }), '']]),
  ]
}

function sizeRows({ definition, under }: Design, units: PrintUnits): readonly Row[] {
  const { gear, chassis } = definition
  const rail = under.chassis?.members.find((m) => m.kind === 'rail')
  const tubeZ = under.gear?.tubeZ ?? null
  const into = rail && tubeZ ? tubeZ[1] - rail.bottom : null
  return [
    ...(gear?.wheel ? [['Track, middle of tyre to middle of tyre', lengthWords(2 * gear.wheel.y, units), '']] : []),
    ...(chassis?.rail ? [['Brackets: rails between the outer faces of their webs', lengthWords(chassis.rail.centres, units), '']] : []),
    ...(gear?.tube ? [['Square tube, outside', lengthWords(gear.tube.size, units), '']] : []),
    ...(tubeZ ? [['Middle of tube under the floor top', lengthWords(-(tubeZ[0] + tubeZ[1]) / 2, units), '']] : []),
    ...(into === null
      ? []
      : [
          [
            'Tube and the lower edge of the rail',
            into > 0
              ? `${lengthWords(into, units)} of the tube stand above it: the rail is notched, an engineer says how`
              : `${lengthWords(-into, units)} apart`,
            '',
          ],
        ]),
  ]
}

function armRows({ definition, under }: Design, ride: RideDerived | null, units: PrintUnits): readonly Row[] {
  const { gear, suspension, chassis } = definition
  const travel = under.gear?.bumpTravel ?? null
  return [
    ['Trailing arm, tube to spindle', lengthWords(gear?.arm ?? 0, units), ''],
    ...(gear?.tube ? [['Start angle, below level, without load', degrees(gear.tube.startAngle), '']] : []),
    ...(under.gear?.loadedAngle != null
      ? [
          [
            'Angle at gross weight',
            `${degrees(Math.abs(under.gear.loadedAngle))} ${under.gear.loadedAngle < 0 ? 'above' : 'below'} level`,
            '',
          ],
        ]
      : []),
    ...(travel === null ? [] : [['Travel from there to full bump, at the spindle', lengthWords(travel, units), '']]),
    ...(suspension?.torque
      ? suspension.torque.map(({ turn, torque }) => [`Torque a side, turned ${degrees(turn)}`, `${fixed(torque, 0)} N m`, ''])
      : [['Torque of one side against turn', ride ? 'ESTIMATED as a bonded bush: measure it' : ASK, '']]),
    ...(ride ? [['Rate at the wheel, gross weight', `${fixed(ride.rate.value / 1000, 1)} kN/m`, '']] : []),
    ['Shock absorber at each wheel', suspension?.shockAbsorber ? `${fixed(suspension.shockAbsorber, 0)} N s/m` : 'none', ''],
    ...(chassis ? [['No weld or heat', `within ${lengthWords(chassis.coldZone, units)} of a finished tube`, '']] : []),
  ]
}

function wheelRows({ road, definition }: Design, units: PrintUnits): readonly Row[] {
  const { gear } = definition
  return [
    ...('notComputed' in road
      ? []
      : [
          ['Tyre', road.tyre.name, ''],
          ['Rim', `${road.tyre.rimName} in`, ''],
        ]),
    ...(gear?.wheel
      ? [['Tyre standing free', `${lengthWords(2 * gear.wheel.radius, units)} across, ${lengthWords(gear.wheel.width, units)} wide`, '']]
      : []),
  ]
}
