/** The card of the flooring jig: where the panel is stopped and every hole through it, with what each comes near. */
import type { Design } from '../../derive/design.js'
import type { FloorOpening } from '../../derive/under-nouns.js'
import type { Mark, Page } from '../drawing/page.js'
import type { Wanted } from '../drawing/place-labels.js'
import { placeLabels } from '../drawing/place-labels.js'
import type { PrintOptions } from '../drawing/sheet.js'
import { coachTitle, unitsOf } from '../drawing/sheet.js'
import { floorEdge, jointMarks, memberMarks, onPlan, openingMarks, type UnderPlan, wheelBoxMarks } from '../drawing/under-plan.js'
import { fixed, lengthNumber, lengthUnit, lengthWords } from '../drawing/units.js'
import { stackTable, stackText } from './jig-card-parts.js'
import { underSheet } from './under-sheet.js'

function names(openings: readonly FloorOpening[], plan: UnderPlan): readonly Mark[] {
  const at = openings.map((o) => onPlan(plan, o.station, o.y))
  const wanted = openings.map((o, i): Wanted => ({ lines: [o.id], at: at[i], height: 2.5 }))
  const xs = at.map((p) => p[0])
  const ys = at.map((p) => p[1])
  return placeLabels(wanted, { points: at, boxes: [] }, [
    Math.min(...xs) - 40,
    Math.min(...ys) - 30,
    Math.max(...xs) + 40,
    Math.max(...ys) + 30,
  ])
}

const nearest = (o: FloorOpening, kinds: readonly string[]) => o.clear.find((c) => kinds.includes(c.kind))

export function flooringCard(design: Design, options: PrintOptions = {}): readonly Page[] {
  const { floor, gear } = design.under
  if (!floor) return []
  const units = unitsOf(options)
  const { frames } = design.definition
  const { screws, bolts, cutter } = design.definition.floor ?? {}
  const sta = (m: number): string => fixed(m * 1000, 1)
  const title = coachTitle(design, options, 'Jig card', 'Flooring jig', 'Floor panel on the flooring jig')
  const ends = [floor.panels[0].from, ...floor.joints.map((j) => j.station), floor.panels[floor.panels.length - 1].to]
  return underSheet(design, options, {
    name: 'flooring-jig',
    says: 'Card of the flooring jig: stops, joints, holes and what they come near',
    title: { ...title, view: 'Best face up, seen from ABOVE' },
    from: 'above',
    stamp: ['BEST FACE UP, SEEN FROM ABOVE', `datum ${frames[0].id} and the centre plane`, 'members lie under the panel, dashed'],
    unproved: false,
    draw: (plan) => [
      ...floorEdge(design, plan, true),
      ...memberMarks(design, plan, false),
      ...wheelBoxMarks(design, plan),
      ...openingMarks(design, plan),
      ...jointMarks(design, plan),
      ...names(floor.openings, plan),
    ],
    stations: [
      ...ends.map((at) => ({ at, text: sta(at), bold: true })),
      ...frames.map((f) => ({ at: f.station, text: `${f.id} ${sta(f.station)}` })),
      ...(gear?.boxes[0]?.x.map((at) => ({ at, text: `wheel box ${sta(at)}` })) ?? []),
    ],
    buttocks: [floor.width / 2, ...(gear?.boxes[0] ? [gear.boxes[0].y[0]] : [])],
    columns: [
      (to) => {
        stackText(
          to,
          `Panel ${lengthWords(floor.length, units)} × ${lengthWords(floor.width, units)}, ${floor.area.toFixed(2)} m2 in its outline.`,
          true,
        )
        stackText(
          to,
          floor.joints.length === 0
            ? `In one piece from ${design.definition.stock.board.name}.`
            : `In ${floor.panels.length} panels, parted at STA ${floor.joints.map((j) => `${sta(j.station)} on ${j.member ?? 'nothing'}`).join(', ')}.`,
        )
        stackText(to, `Holes, in ${lengthUnit(units)}; room to the nearest flange along the coach, rail and wheel box`, true)
        const each = 17
        stackTable(
          to,
          [
            { head: 'Id', width: 14, bold: true },
            { head: 'For', width: to.width - 14 - 15 - 5 * each - 1 },
            { head: 'Size', width: 16, align: 'right' },
            { head: 'STA', width: each, align: 'right' },
            { head: 'BL', width: each, align: 'right' },
            { head: 'Flange', width: each, align: 'right' },
            { head: 'Rail', width: each, align: 'right' },
            { head: 'Box', width: each, align: 'right' },
          ],
          floor.openings.map((o) => {
            const written = design.definition.floor?.openings.find((w) => w.id === o.id)
            const room = (m: number | undefined): string => (m === undefined ? '—' : lengthNumber(m, units))
            return [
              o.id,
              o.says,
              written ? `${written.shape === 'round' ? 'ø' : ''}${lengthNumber(written.size, units)}` : '',
              fixed(o.station * 1000, 0),
              fixed(o.y * 1000, 0),
              room(o.toFlange?.room),
              room(nearest(o, ['rail'])?.room),
              room(nearest(o, ['wheel-box'])?.room),
            ]
          }),
        )
      },
      (to) => {
        for (const b of gear?.boxes ?? [])
          stackText(
            to,
            `${b.id}: STA ${sta(b.x[0])} to ${sta(b.x[1])}, BL ${sta(b.y[0])} to ${sta(b.y[1])} ${b.side}. It follows the axles.`,
          )
        if (bolts)
          stackText(
            to,
            `${floor.bolts} hold-down bolts of ${bolts.diameter.name} in holes of ${lengthNumber(bolts.hole, units, 1)}: rails, cross-members, outriggers.`,
          )
        if (screws)
          stackText(
            to,
            `${floor.screws} screws of ${screws.diameter.name}, ${lengthNumber(screws.edge, units)} from the edge along the edge channel.`,
          )
        if (cutter) stackText(to, `Cut with a ${lengthNumber(cutter, units)} cutter; the router program is of the same revision.`)
        stackText(
          to,
          'BL is from the centre plane, right of travel positive. Stop the panel at the datum, never at its edge. Dust of plywood is harmful: extraction and a mask.',
        )
      },
    ],
  })
}
