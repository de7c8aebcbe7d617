/** The chassis in plan, twice: as it is built, inverted in the fixture and seen from below, and as it is used, seen from above. */
import type { Design } from '../../derive/design.js'
import type { PartKind } from '../../derive/nouns.js'
import type { Member } from '../../derive/under-nouns.js'
import type { Page } from '../drawing/page.js'
import type { PrintOptions } from '../drawing/sheet.js'
import { coachTitle, unitsOf } from '../drawing/sheet.js'
import { axleMarks, bayMarks, floorEdge, memberMarks, type UnderPlan, wheelBoxMarks } from '../drawing/under-plan.js'
import { fixed, massWords } from '../drawing/units.js'
import { stackTable, stackText } from './jig-card-parts.js'
import { underSheet } from './under-sheet.js'

export type ChassisState = 'as-built' | 'as-used'

const STAMPS: Readonly<Record<ChassisState, readonly string[]>> = {
  'as-built': ['AS BUILT: INVERTED, SEEN FROM BELOW', 'the floor side lies down on the fixture', 'hands are the coach’s own'],
  'as-used': ['AS USED: SEEN FROM ABOVE', 'the floor is taken off; members hang under it', 'hands are the coach’s own'],
}

/** Stations of the cross-members with their names, and of the A-frame. */
export function memberStations(design: Design): readonly { readonly at: number; readonly text: string }[] {
  const { chassis } = design.under
  if (!chassis) return []
  const mm = (m: number): string => fixed(m * 1000, 1)
  const across = chassis.members
    .filter((m) => m.kind === 'cross-member')
    .map((m) => ({ at: middleOf(m), text: `${m.part.replace('cross-member-', '')} ${mm(middleOf(m))}` }))
  const legs = chassis.aFrame
    ? [
        { at: chassis.aFrame.apex, text: `apex ${mm(chassis.aFrame.apex)}` },
        { at: chassis.aFrame.meets, text: `legs meet ${mm(chassis.aFrame.meets)}` },
      ]
    : []
  return [...across, ...legs]
}

const middleOf = (m: Member): number => {
  const xs = m.plan.map((p) => p[0])
  return (Math.min(...xs) + Math.max(...xs)) / 2
}

/** Outer faces that are measured from the centre plane, m. */
export function memberButtocks({ definition, under }: Design): readonly number[] {
  const rail = definition.chassis?.rail
  const half = rail ? rail.centres / 2 : null
  return [
    ...(half !== null && rail ? [half, half - rail.flange] : []),
    ...(definition.chassis?.outrigger ? [definition.chassis.outrigger.reach] : []),
    ...(under.gear?.boxes[0] ? [under.gear.boxes[0].y[0]] : []),
  ]
}

const KINDS: readonly (readonly [PartKind, string])[] = [
  ['rail', 'main rails'],
  ['cross-member', 'cross-members'],
  ['outrigger', 'outriggers'],
  ['wheel-box-header', 'wheel-box headers'],
  ['a-frame', 'legs of the A-frame'],
  ['chassis-plate', 'plates'],
  ['bay-bearer', 'bearers of tanks'],
  ['wheel-box', 'wheel boxes'],
  ['underbelly', 'underbelly sheets'],
]

export function chassisPlan(design: Design, state: ChassisState, options: PrintOptions = {}): readonly Page[] {
  const { chassis } = design.under
  if (!chassis) return []
  const units = unitsOf(options)
  const title = coachTitle(design, options, 'Chassis', `Chassis, ${state === 'as-built' ? 'as built' : 'as used'}`, 'Chassis in plan')
  const from: UnderPlan['from'] = state === 'as-built' ? 'below' : 'above'
  return underSheet(design, options, {
    name: `chassis-${state}`,
    says: `The chassis in plan, ${state === 'as-built' ? 'inverted as it is built' : 'as it is used'}`,
    title: { ...title, view: state === 'as-built' ? 'INVERTED, seen from BELOW' : 'seen from ABOVE' },
    from,
    stamp: STAMPS[state].map((s) => s.replace('’', "'")),
    unproved: true,
    draw: (plan) => [
      ...floorEdge(design, plan, false),
      ...bayMarks(design, plan),
      ...wheelBoxMarks(design, plan),
      ...axleMarks(design, plan),
      ...memberMarks(design, plan, true),
    ],
    stations: memberStations(design),
    buttocks: memberButtocks(design),
    columns: [
      (to) => {
        stackText(to, 'What it is made of', true)
        const made = KINDS.map(([kind, says]) => ({ says, parts: design.parts.filter((p) => p.kind === kind) })).filter(
          (g) => g.parts.length > 0,
        )
        stackTable(
          to,
          [
            { head: 'Members', width: to.width - 3 * 26, bold: true },
            { head: 'No.', width: 14, align: 'right' },
            { head: 'Gauge', width: 32 },
            { head: 'Mass', width: 32, align: 'right' },
          ],
          made.map(({ says, parts }) => [
            says,
            String(parts.length),
            parts[0].thickness.name,
            massWords(
              parts.reduce((sum, p) => sum + p.mass.value, 0),
              units,
            ),
          ]),
        )
        stackText(to, `Made: ${massWords(chassis.mass.value, units)}.`, true)
      },
      (to) => {
        stackText(to, 'Bought and fitted as it comes', true)
        stackTable(
          to,
          [
            { head: 'Item', width: to.width - 4 * 21, bold: true },
            { head: 'STA', width: 21, align: 'right' },
            { head: 'BL', width: 21, align: 'right' },
            { head: 'WL', width: 21, align: 'right' },
            { head: 'Mass', width: 21, align: 'right' },
          ],
          chassis.bought.map((b) => [b.says, ...b.centre.map((m) => fixed(m * 1000, 0)), massWords(b.mass, units)]),
        )
      },
      (to) => {
        if (chassis.bays.length > 0) {
          stackText(to, 'Rooms for tanks', true)
          stackTable(
            to,
            [
              { head: 'Bay', width: 18, bold: true },
              { head: 'For', width: to.width - 18 - 3 * 28 },
              { head: 'STA', width: 36 },
              { head: 'Deep', width: 20, align: 'right' },
              { head: 'Litres', width: 28, align: 'right' },
            ],
            chassis.bays.map((b) => [
              b.id,
              b.says,
              `${fixed(b.x[0] * 1000, 0)}–${fixed(b.x[1] * 1000, 0)}`,
              fixed((b.z[1] - b.z[0]) * 1000, 0),
              fixed(b.volume * 1000, 0),
            ]),
          )
        }
        const a = chassis.aFrame
        if (a?.crossing)
          stackText(
            to,
            `The foremost cross-member, ${a.crossing.part}, stops inside the legs of the A-frame, ${fixed(a.crossing.y * 1000, 1)} mm from the centre plane.`,
          )
        stackText(
          to,
          `Stations of cross-members are the middles of their flanges, webs forward. Upper flanges at WL ${fixed((chassis.members[0]?.top ?? 0) * 1000, 0)} under.`,
        )
        stackText(to, 'Lightening holes of the rails are the passage for pipes and wires: see the rails’ own sheets.'.replace('’', "'"))
      },
    ],
  })
}
