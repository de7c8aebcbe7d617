/** The weld map: every joint numbered in the order it is welded, on the chassis as it lies inverted, and what is measured when. */
import type { Design } from '../../derive/design.js'
import type { Mark, Page } from '../drawing/page.js'
import { circles, FINE, letter, path, rectangleShape } from '../drawing/page.js'
import type { PrintOptions } from '../drawing/sheet.js'
import { coachTitle, unitsOf } from '../drawing/sheet.js'
import type { Row } from '../drawing/table.js'
import { memberMarks, onPlan, type UnderPlan } from '../drawing/under-plan.js'
import { fixed, lengthNumber, lengthUnit, lengthWords } from '../drawing/units.js'
import { memberButtocks, memberStations } from './chassis-plan.js'
import { stackTable, stackText } from './jig-card-parts.js'
import { tableSheets, widthsFor } from './table-sheet.js'
import { underSheet } from './under-sheet.js'

const STEPS: Readonly<Record<number, string>> = {
  1: 'Step 1: clamp and tack everything on the fixture, cold; measure.',
  2: 'Step 2: cross-members to the rails, from the middle outward, sides by turns.',
  3: 'Step 3: outriggers and wheel-box headers, from the middle outward, sides by turns.',
  4: 'Step 4: A-frame, its mitre last, and the cross-member inside it.',
  5: 'Step 5: plates and gussets.',
}

/** Numbers beside their joints: inboard of a rail for what ends inside it, outboard for what is welded to its outer face. */
function numbers(design: Design, plan: UnderPlan): readonly Mark[] {
  const welds = design.under.chassis?.welds ?? []
  const rail = design.definition.chassis?.rail
  const face = rail ? rail.centres / 2 : 0
  const taken = new Map<string, number>()
  const dots: number[] = []
  const marks = welds.flatMap((w) => {
    const [x, y] = onPlan(plan, w.station, w.y)
    const outboard = Math.abs(w.y) >= face - 1e-6
    const away = (y < plan.view.y(0) ? -1 : 1) * (outboard ? 1 : -1)
    const key = `${x.toFixed(0)} ${y.toFixed(0)} ${outboard}`
    const before = taken.get(key) ?? 0
    taken.set(key, before + 1)
    dots.push(x, y, 1.4)
    const [left, middle, text] = [x + 1.4 + before * 6, y + away * (outboard ? 3.4 : 4.8), String(w.no)]
    // members run behind most numbers: each stands on white
    return [
      path([rectangleShape(left - 0.3, middle - 1.6, text.length * 1.9 + 0.6, 3.2)], { width: null, fill: 1, group: 'welds' }),
      letter(left, middle, text, { height: 2.5, bold: true, sits: 'middle', group: 'welds' }),
    ]
  })
  return [circles(dots, { width: FINE, fill: 0, group: 'welds' }), ...marks]
}

export function weldMap(design: Design, options: PrintOptions = {}): readonly Page[] {
  const { chassis } = design.under
  if (!chassis || chassis.welds.length === 0) return []
  const units = unitsOf(options)
  const title = coachTitle(design, options, 'Weld map', 'Weld map of the chassis', 'Welds in their order')
  return underSheet(design, options, {
    name: 'weld-map',
    says: 'Weld map of the chassis, inverted as it is built',
    title: { ...title, view: 'INVERTED, seen from BELOW' },
    from: 'below',
    stamp: ['AS BUILT: INVERTED, SEEN FROM BELOW', 'numbers are the order of the welds', "hands are the coach's own"],
    unproved: true,
    draw: (plan) => [...memberMarks(design, plan, true), ...numbers(design, plan)],
    stations: memberStations(design),
    buttocks: memberButtocks(design),
    columns: [
      (to) => {
        stackText(to, 'In this order', true)
        for (const step of [1, 2, 3, 4, 5]) {
          const of = chassis.welds.filter((w) => w.step === step)
          const run = of.reduce((sum, w) => sum + w.length, 0)
          stackText(
            to,
            `${STEPS[step]}${of.length > 0 ? ` Welds ${of[0].no} to ${of[of.length - 1].no}, ${lengthWords(run, units)} of run.` : ''}`,
          )
        }
        stackText(to, 'Never weld or heat near a finished axle tube: its rubber is ruined. Weld brackets before the tube is in.')
        stackText(to, "Process, filler, throat and welder's qualification are for the engineer who approves the chassis.")
      },
      (to) => {
        stackText(to, 'Measured cold on the fixture', true)
        stackTable(
          to,
          [
            { head: 'After', width: 15 },
            { head: 'What', width: to.width - 15 - 3 * 22 },
            { head: lengthUnit(units), width: 22, align: 'right' },
            { head: '±', width: 20, align: 'right' },
            { head: 'found', width: 24 },
          ],
          chassis.distortion.map((d) => [
            `${d.after}`,
            d.says,
            d.nominal === null ? '—' : lengthNumber(d.nominal, units),
            lengthNumber(d.within, units),
            '',
          ]),
        )
        stackText(to, 'Limits are common practice, no source. Out of limits: stop, and ask before the next step.')
      },
    ],
  })
}

/** Every weld as a line, and zones where nobody drills or welds. */
export function weldList(design: Design, options: PrintOptions = {}): readonly Page[] {
  const { chassis } = design.under
  if (!chassis) return []
  const units = unitsOf(options)
  const sta = (m: number): string => fixed(m * 1000, 0)
  const rows: Row[] = []
  for (const step of [...new Set(chassis.welds.map((w) => w.step))]) {
    rows.push({ heading: STEPS[step] ?? `Step ${step}` })
    for (const w of chassis.welds.filter((each) => each.step === step))
      rows.push([String(w.no), w.parts.join(' to '), w.says, sta(w.station), sta(w.y), lengthNumber(w.length, units), ''])
  }
  rows.push({ heading: 'No drilling, no welding' })
  for (const z of chassis.zones)
    rows.push([z.kind === 'no drill' ? 'drill' : 'weld', z.part, z.says, `${sta(z.from)}–${sta(z.to)}`, '', '', ''])
  return tableSheets(
    {
      name: 'weld-list',
      says: 'List of welds in their order, and zones where nobody drills or welds',
      heading: 'Welds',
      sentences: [
        'STRENGTH NOT CHECKED: an engineer must approve.',
        `Numbers as on the weld map. STA and BL in mm, run of weld in ${lengthUnit(units)}; right of travel positive.`,
      ],
      title: coachTitle(design, options, 'Weld list', design.definition.coach.name, 'Welds and zones'),
      rows,
      wide: true,
      columns: [
        { head: 'No.', width: 16, bold: true },
        { head: 'Parts', width: 110, wraps: true },
        { head: 'What', width: widthsFor(options, true, 16 + 110 + 36 + 20 + 22 + 30), wraps: true },
        { head: 'STA', width: 36, align: 'right' },
        { head: 'BL', width: 20, align: 'right' },
        { head: 'Run', width: 22, align: 'right' },
        { head: 'Welded', width: 30 },
      ],
    },
    options,
  )
}
