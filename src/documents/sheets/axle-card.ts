/** The position card of the axles: tubes, spindles and wheel boxes from the datum, and how far the group may be moved. */
import type { Design } from '../../derive/design.js'
import type { Page } from '../drawing/page.js'
import type { PrintOptions } from '../drawing/sheet.js'
import { coachTitle, unitsOf } from '../drawing/sheet.js'
import { axleMarks, bayMarks, floorEdge, memberMarks, wheelBoxMarks } from '../drawing/under-plan.js'
import { fixed, lengthWords } from '../drawing/units.js'
import { axleElevation } from './axle-elevation.js'
import { memberButtocks } from './chassis-plan.js'
import { stackTable, stackText } from './jig-card-parts.js'
import { underSheet } from './under-sheet.js'

/** Neighbours named on the card, the dearest first. */
const MOST = 6

export function axleCard(design: Design, options: PrintOptions = {}): readonly Page[] {
  const { gear, chassis } = design.under
  const { ride } = design
  const written = design.definition.gear
  if (!gear || !written) return []
  const units = unitsOf(options)
  const sta = (m: number): string => fixed(m * 1000, 1)
  const title = coachTitle(design, options, 'Position card', 'Axles', 'Where the axles stand')
  const { half } = written.wheelOpening
  return underSheet(design, options, {
    name: 'axle-position',
    says: 'Position card of the axles: tubes, spindles, wheel boxes, and where the group may stand',
    title: { ...title, view: 'INVERTED, seen from BELOW' },
    from: 'below',
    stamp: ['AS BUILT: INVERTED, SEEN FROM BELOW', 'tubes ahead of their spindles', "hands are the coach's own"],
    unproved: true,
    draw: (plan) => [
      ...floorEdge(design, plan, false),
      ...memberMarks(design, plan, true),
      ...wheelBoxMarks(design, plan),
      ...bayMarks(design, plan),
      ...axleMarks(design, plan),
    ],
    stations: [
      ...gear.tubes.flatMap((t) => [
        { at: t.station, text: `tube ${t.axle} ${sta(t.station)}`, bold: true },
        { at: t.spindle, text: `spindle ${t.axle} ${sta(t.spindle)}`, bold: true },
      ]),
      ...(chassis?.members ?? [])
        .filter((m) => m.kind === 'cross-member')
        .map((m) => {
          const at = (m.plan[0][0] + m.plan[1][0]) / 2
          return { at, text: sta(at) }
        }),
    ],
    buttocks: [...memberButtocks(design), ...(written.wheel ? [written.wheel.y] : [])],
    below: (room) => axleElevation(design, room),
    columns: [
      (to) => {
        stackText(to, 'From the datum of the coach', true)
        stackTable(
          to,
          [
            { head: 'Axle', width: 14, bold: true },
            { head: 'Tube', width: 26, align: 'right' },
            { head: 'Spindle', width: 26, align: 'right' },
            { head: 'Opening', width: 40, align: 'right' },
            { head: 'Cross-member', width: 32, align: 'right' },
            { head: 'Clear', width: to.width - 14 - 2 * 26 - 40 - 32, align: 'right' },
          ],
          gear.tubes.map((t) => [
            String(t.axle),
            sta(t.station),
            sta(t.spindle),
            `${fixed((t.spindle - half) * 1000, 0)}–${fixed((t.spindle + half) * 1000, 0)}`,
            t.nearest ? sta(t.nearest.station) : '—',
            t.nearest ? sta(t.nearest.room) : '—',
          ]),
        )
        const tube = written.tube
        if (tube)
          stackText(
            to,
            `Tube ${lengthWords(tube.size, units)} square, its middle at WL ${sta(tube.waterline)} under; arm ${lengthWords(written.arm, units)}, ${degrees(tube.startAngle)} below level unloaded${gear.loadedAngle === null ? '' : ` and ${degrees(gear.loadedAngle)} at gross weight, the spindle then at WL ${sta(gear.tubes[0].spindleZ ?? 0)} under`}.`,
          )
        if (gear.bumpTravel !== null)
          stackText(to, `From gross weight to full bump the spindle rises ${lengthWords(gear.bumpTravel, units)}.`)
        if (gear.ground !== null && gear.sits)
          stackText(
            to,
            `Ground at WL ${sta(gear.ground)} under, as written; by arm and tyre it lies at ${sta(gear.sits.gross.value)} at gross weight and at ${sta(gear.sits.free)} with the wheels hanging.`,
          )
        if (!('notComputed' in ride))
          stackText(
            to,
            `Wheel rate ${fixed(ride.rate.value / 1000, 1)} kN/m at gross weight, ${ride.torque === 'measured' ? 'from the torque as measured' : 'ESTIMATED as a bonded bush: have the torque measured'}; tyre ${design.definition.suspension?.tyre ?? ''}, ${lengthWords(2 * (written.wheel?.radius ?? 0), units)} across.`,
          )
        if (gear.clearance) stackText(to, `Lowest: ${gear.clearance.of}, ${lengthWords(gear.clearance.height, units)} over the ground.`)
        if (gear.departure) stackText(to, `Departure angle ${degrees(gear.departure.value)}.`)
      },
      (to) => {
        stackText(to, `Where the group may stand, by its mean station (now ${sta(gear.mean)})`, true)
        stackTable(
          to,
          [
            { head: 'From', width: 24, align: 'right' },
            { head: 'To', width: 24, align: 'right' },
            { head: 'Before it', width: (to.width - 48) / 2 },
            { head: 'Behind it', width: (to.width - 48) / 2 },
          ],
          gear.window.map((w) => [sta(w.from), sta(w.to), w.before, w.after]),
        )
        stackText(to, 'What each neighbour costs: where the mean could stand without it')
        stackTable(
          to,
          [
            { head: 'Neighbour', width: to.width - 4 * 28 },
            { head: 'From', width: 28, align: 'right' },
            { head: 'To', width: 28, align: 'right' },
            { head: 'Gains', width: 28, align: 'right' },
            { head: 'In the way by', width: 28, align: 'right' },
          ],
          gear.neighbours.slice(0, MOST).map((n) => [n.what, sta(n.from), sta(n.to), sta(n.gains), n.by === null ? '—' : sta(n.by)]),
        )
        stackText(to, 'Only what would meet is looked at here. Loads have a window of their own: the axles must stand in both.')
        stackText(
          to,
          `No weld or heat within ${lengthWords(design.definition.chassis?.coldZone ?? 0, units)} of a finished tube. Measure both sides from ${design.definition.frames[0].id}, then the diagonals from the ball.`,
        )
      },
    ],
  })
}

const degrees = (rad: number): string => `${((rad * 180) / Math.PI).toFixed(1)} deg`
