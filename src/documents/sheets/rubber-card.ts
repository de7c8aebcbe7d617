/** Method card of putting frozen rubber cords into an axle: its dangers first, then its figures, then the steps. */
import type { Design } from '../../derive/design.js'
import type { RubberDerived } from '../../derive/road-nouns.js'
import { lettered, wrap } from '../drawing/lettering.js'
import type { Page } from '../drawing/page.js'
import { letter, OUTLINE, rectangle } from '../drawing/page.js'
import { sheetsOf } from '../drawing/paper-sizes.js'
import type { PrintOptions } from '../drawing/sheet.js'
import { coachTitle, roomAbove, seriesOf, sheetsFrom, unitsOf } from '../drawing/sheet.js'
import { introduction } from '../drawing/table.js'
import { fixed, lengthWords, plainLength } from '../drawing/units.js'
import { type Stacked, stackRows, stackText } from './stacked.js'

/** From memory of cryogenic safety sheets; the supplier's own sheet and the local rules govern. */
const DANGERS = [
  "Only by a person trained for liquid nitrogen, never alone. The supplier's safety sheet and the local rules govern.",
  'Cold burns: face shield, loose dry insulated gloves, apron, trousers over closed shoes. Nothing cold is touched with bare skin.',
  'Suffocation: one litre boils off to some 700 litres of gas that displaces air without warning. Ventilate, wear an oxygen alarm (19.5 %), never in a pit, cellar or closed van.',
  'Never close a vessel of liquid nitrogen: it bursts. Use vessels made for it.',
  'Press: the force comes suddenly when a cord grips. Guards closed, nobody in line with the bar, force measured on a trial piece first.',
  'No weld, flame, grinder or drill near the finished tube, ever: heat destroys the rubber, and its smoke is poisonous. Brackets are welded before the rubber goes in.',
]

const STEPS = [
  'Weld and straighten tube and brackets; let them cool; deburr and clean the inside. Gauge tube and bar at both ends and the middle.',
  'Press the four cords in their clamp to the shape of the corner, at room temperature, and hold them there.',
  'Freeze them in the clamp until the boiling calms. They must keep their shape when the clamp opens: it is the frozen shape that lets them in, not the shrinking.',
  'Set the bar at its start angle in the fixture, take the cords from the bath and press them in without a stop; common practice allows about half a minute. A cord that has gone soft is taken out and frozen again.',
  'Leave it a day at room temperature. Do the other side.',
  'Gauge the start angle of both arms: within one degree of each other. Measure torque against turn on the first of a batch and write the table into the definition; an axle that was never measured is only estimated.',
  'Mark the tube: NO WELD, NO DRILL. Write batch of rubber, date, force and names on the card.',
]

export function rubberCard(design: Design, rubber: RubberDerived, options: PrintOptions = {}): readonly Page[] {
  const units = unitsOf(options)
  const size = sheetsOf(seriesOf(options))[0]
  const room = roomAbove(size, 'slim')
  const inner = { x: room.x + 4, y: room.y + 4, width: room.width - 8, foot: room.y + room.height - 3 }
  const written = design.definition.suspension?.rubber
  const head = introduction(inner.x, inner.y, inner.width, 'Rubber axle: putting in frozen cords', [
    'Method card. The maker of the rubber and a person trained for the work must approve it before it is used.',
  ])
  const to: Stacked = { marks: [...head.marks], x: inner.x + 4, y: inner.y + head.depth + 5, width: inner.width - 8 }
  const boxed = to.y - 3
  to.marks.push(letter(to.x, to.y + 3.5, 'DANGER', { height: 5, bold: true, group: 'danger' }))
  to.y += 7
  for (const says of DANGERS) stackText(to, says, true)
  to.marks.push(rectangle(inner.x, boxed, inner.width, to.y - boxed, { width: OUTLINE, group: 'danger' }))
  const under: Stacked = { marks: to.marks, x: inner.x, width: inner.width, y: to.y + 3 }
  const share = (value: number): string => `${fixed(value * 100, 1)} %`
  const size3 = (m: number): string => lengthWords(m, units, 1)
  stackRows(
    under,
    [
      { head: 'Figure', width: 98 },
      { head: '', width: inner.width - 98, bold: true },
    ],
    [
      ...(written
        ? [
            [
              'Square tube, inside; square bar, turned by an eighth',
              `${plainLength(written.tube, units)}; ${plainLength(written.bar, units)}`,
            ],
            ['Cord, and length of the rubber of one side', `${plainLength(written.cord, units)}; ${plainLength(written.length, units)}`],
          ]
        : []),
      ['Height of the corner; largest cord that lies in it free', `${size3(rubber.corner.value)}; ${size3(rubber.free.value)}`],
      ['Squeezed by; share of the corner filled', `${share(rubber.squeeze.value)}; ${share(rubber.fill.value)}`],
      ['Shrinks at its glass temperature; in liquid nitrogen', `${share(rubber.shrinkGlass.value)}; ${share(rubber.shrinkNitrogen.value)}`],
      ['Torque of one side as a bonded bush: an estimate only', `${fixed(rubber.estimate.value, 0)} N m a radian`],
    ],
    inner.foot,
  )
  stackText(
    under,
    `Cooling shrinks a cord by ${share(rubber.shrinkNitrogen.value)} at most, and it has to be squeezed by ${share(rubber.squeeze.value)}: shrinking alone never lets it in.`,
    true,
  )
  STEPS.forEach((says, i) => {
    const rows = wrap(lettered(says), inner.width - 8, 2.5)
    under.marks.push(letter(inner.x, under.y + 2.5, String(i + 1), { height: 2.5, bold: true, group: 'words' }))
    for (const row of rows) {
      under.marks.push(letter(inner.x + 8, under.y + 2.5, row, { height: 2.5, group: 'words' }))
      under.y += 4.2
    }
    under.y += 1
  })
  return sheetsFrom([
    {
      name: 'rubber-axle',
      says: 'Method card of putting frozen rubber cords into an axle',
      size,
      block: 'slim' as const,
      title: coachTitle(design, options, 'Method card', design.definition.coach.name, 'Rubber axle: putting in frozen cords'),
      marks: under.marks,
    },
  ])
}
