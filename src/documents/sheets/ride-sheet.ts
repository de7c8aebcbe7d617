/** How the floor shakes on rough roads: rubber alone, with shock absorbers, and leaf springs to compare with. */
import type { Design } from '../../derive/design.js'
import type { RideDerived } from '../../derive/road-nouns.js'
import { formatMass } from '../../quantity/format.js'
import type { LineType, Page } from '../drawing/page.js'
import { sheetsOf } from '../drawing/paper-sizes.js'
import { plot } from '../drawing/plot.js'
import type { PrintOptions } from '../drawing/sheet.js'
import { coachTitle, roomAbove, seriesOf, sheetsFrom, unitsOf } from '../drawing/sheet.js'
import type { Row } from '../drawing/table.js'
import { introduction } from '../drawing/table.js'
import { fixed, lengthWords } from '../drawing/units.js'
import { type Stacked, stackRows, stackText } from './stacked.js'

const TYPES: readonly LineType[] = ['dashed', 'continuous', 'long-dash-dot']

export function rideSheets(design: Design, ride: RideDerived, options: PrintOptions = {}): readonly Page[] {
  const units = unitsOf(options)
  const size = sheetsOf(seriesOf(options))[1]
  const room = roomAbove(size, 'slim')
  const inner = { x: room.x + 4, y: room.y + 4, width: room.width - 8, foot: room.y + room.height - 3 }
  const degrees = (rad: number): string => fixed((Math.abs(rad) * 180) / Math.PI, 1)
  const head = introduction(inner.x, inner.y, inner.width, 'Ride: what the springs pass on', [
    'Indicative only: a quarter of the coach on one wheel, at gross weight, without pitch, roll or the tow car. For comparing one suspension with another.',
  ])
  const top = inner.y + head.depth + 2
  const half = inner.width * 0.48
  const side: Stacked = { marks: [], x: inner.x + half + 6, y: top, width: inner.width - half - 6 }
  const rows = ride.suspensions.flatMap((each): Row[] => [
    { heading: each.says },
    ...each.roads.map(
      (road): Row => [
        `${road.road}, ${fixed(ride.roughness[road.road], 1)}`,
        fixed(road.felt, 2),
        fixed(road.body, 2),
        fixed(road.wheel, 1),
        road.says,
      ],
    ),
  ])
  stackRows(
    side,
    [
      { head: 'Road, m/km', width: 25, bold: true },
      { head: 'felt', width: 16, align: 'right', bold: true },
      { head: 'floor', width: 16, align: 'right' },
      { head: 'spindle', width: 20, align: 'right' },
      { head: 'people would say', width: side.width - 77, wraps: true },
    ],
    rows,
    inner.foot,
  )
  const loss = ride.suspensions.find((each) => each.id === 'rubber')?.loss ?? 0
  for (const says of [
    `Rms accelerations in m/s2, 0.5 to 80 Hz, at ${fixed(ride.speed * 3.6, 0)} km/h on the mean of road classes A to D (ISO 8608), whose roughness index is beside them. Felt: weighted as a person seated on the floor feels it (ISO 2631-1, Wk).`,
    `At ${formatMass(ride.body + ride.unsprung, units, { decimals: 0 })} on the wheel the arm of ${lengthWords(ride.arm, units)} rests ${degrees(ride.armAngle)} degrees ${ride.armAngle < 0 ? 'above' : 'below'} level, ${lengthWords(ride.travel, units)} up from no load; rate ${fixed(ride.rate.value / 1000, 1)} kN/m, ${fixed(ride.frequency.value, 2)} Hz on a stiff tyre. Torque ${ride.torque === 'measured' ? 'as measured' : 'estimated as a bonded bush: ask the axle maker'}.`,
    `Rubber alone loses ${fixed(loss * 100, 0)} % of a swing's stiffness as friction, which is little: that is what the shock absorbers are for. Leaf friction is taken as the viscous damper that loses as much; the tyre is taken to lose nothing.`,
    'Classes C and D are driven more slowly than this. A wheel that shakes much more than its load allows leaves the road, which this does not follow.',
  ])
    stackText(side, says)
  const most = Math.max(...ride.suspensions.flatMap((each) => each.transmissibility))
  const curves = ride.suspensions.map((each, i) => ({
    name: { rubber: 'rubber', 'rubber-damped': 'with absorbers', leaf: 'leaf' }[each.id],
    type: TYPES[i % TYPES.length],
    isBold: each.id === 'rubber-damped',
    points: each.transmissibility.map((t, k) => [ride.frequencies[k], t] as const),
  }))
  const { frequencies: f } = ride
  const marks = plot(
    { x: inner.x, y: top, width: half, height: inner.foot - top },
    { says: 'frequency, Hz', from: f[0], to: f[f.length - 1], ticks: [0.5, 1, 2, 5, 10, 20], isLog: true, words: (v) => String(v) },
    {
      says: 'movement of the floor for one of the road',
      from: 0.002,
      to: Math.max(10, most * 1.2),
      ticks: [0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10],
      isLog: true,
      words: (v) => String(v),
    },
    curves,
    [{ along: 'x', at: 1, says: 'as the road', named: 'right' }],
  )
  return sheetsFrom([
    {
      name: 'ride',
      says: 'How the floor shakes on rough roads, for each suspension',
      size,
      block: 'slim' as const,
      title: coachTitle(design, options, 'Ride', design.definition.coach.name, 'Ride: what the springs pass on'),
      marks: [...head.marks, ...marks, ...side.marks],
    },
  ])
}
