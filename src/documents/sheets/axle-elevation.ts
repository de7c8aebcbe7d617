/** The axle group from the side: tubes, arms, tyres at rest and at full bump, in the room that boxes, rail and ground leave them. */
import type { Design } from '../../derive/design.js'
import type { Outline } from '../../derive/nouns.js'
import type { Mark } from '../drawing/page.js'
import { circles, FINE, letter, line, OUTLINE, path, THIN } from '../drawing/page.js'
import { runningMarks } from '../drawing/running.js'
import { fixed } from '../drawing/units.js'
import { scaleToFit, scaleWords, viewOf } from '../drawing/view.js'
import type { Box } from './under-sheet.js'

/** Room at the left for waterlines and below for the caption, mm; beyond the outer wheels, m. */
const LEVELS = 34
const CAPTION = 8
const BESIDE = 0.12

export function axleElevation({ under, definition }: Design, room: Box): readonly Mark[] {
  const { gear, chassis } = under
  const written = definition.gear
  if (!gear || !written?.tube || !written.wheel || gear.tubes[0].spindleZ === null) return []
  const { tube, wheel, wheelBox, wheelOpening } = written
  const rail = chassis?.members.find((m) => m.kind === 'rail')
  const [first, last] = [gear.tubes[0].spindle, gear.tubes[gear.tubes.length - 1].spindle]
  const reach = Math.max(wheelBox?.reach ?? 0, wheelOpening.half) + BESIDE
  const [from, to] = [first - reach, last + reach]
  const high = Math.max(wheelBox?.top ?? 0, wheelOpening.top, gear.tubes[0].spindleZ + (gear.bumpTravel ?? 0) + wheel.radius) + 0.05
  const low = (gear.ground ?? gear.tubes[0].spindleZ - wheel.radius) - 0.04
  const scale = scaleToFit(to - from, high - low, room.width - LEVELS, room.height - CAPTION)
  const view = viewOf(scale, [from, low], [room.x + LEVELS, room.y + room.height - CAPTION])
  const box = (x: readonly [number, number], z: readonly [number, number]): Outline => [
    [x[0], z[0], 0],
    [x[1], z[0], 0],
    [x[1], z[1], 0],
    [x[0], z[1], 0],
  ]
  const level = (z: number, type: 'continuous' | 'dashed', width: typeof THIN | typeof FINE) =>
    line(view.x(from), view.y(z), view.x(to), view.y(z), { width, type, group: 'elevation' })
  const thickness = definition.floor?.thickness ?? 0
  const half = tube.size / 2
  const round = (x: number, z: number): readonly number[] => [view.x(x), view.y(z), view.length(2 * wheel.radius)]
  const spindles = gear.tubes.map((t) => ({ x: t.spindle, z: t.spindleZ ?? 0, tube: t.station }))
  const levels = [
    ...(gear.ground === null ? [] : [gear.ground]),
    spindles[0].z,
    tube.waterline,
    ...(rail ? [rail.bottom] : []),
    0,
    ...(wheelBox ? [wheelBox.top] : []),
  ]
  return [
    path(
      [
        ...(thickness > 0 ? [view.shape(box([from, to], [-thickness, 0]))] : []),
        ...(rail ? [view.shape(box([from, to], [rail.bottom, rail.top]))] : []),
        ...gear.boxes.filter((b) => b.side === 'left').map((b) => view.shape(box(b.x, b.z))),
      ],
      { width: THIN, group: 'elevation' },
    ),
    path(
      spindles.map(({ x }) => view.shape(box([x - wheelOpening.half, x + wheelOpening.half], [low + 0.02, wheelOpening.top]))),
      { width: FINE, type: 'dotted', group: 'elevation' },
    ),
    ...(gear.ground === null ? [] : [level(gear.ground, 'continuous', THIN)]),
    ...(gear.sits ? [level(gear.sits.gross.value, 'dashed', FINE)] : []),
    circles(
      spindles.flatMap(({ x, z }) => round(x, z)),
      { width: THIN, group: 'elevation' },
    ),
    path(
      // the arm turns back up about its tube
      spindles.map((s) => {
        const [z, r] = [s.z + (gear.bumpTravel ?? 0), wheel.radius]
        const x = s.tube + Math.sqrt(Math.max(0, written.arm ** 2 - (z - tube.waterline) ** 2))
        return view.shape([
          [x - r, z, 1],
          [x + r, z, 1],
        ])
      }),
      { width: FINE, type: 'dashed', group: 'elevation' },
    ),
    path(
      spindles.map((s) => view.shape(box([s.tube - half, s.tube + half], [tube.waterline - half, tube.waterline + half]))),
      { width: OUTLINE, group: 'elevation' },
    ),
    ...spindles.map((s) =>
      line(
        view.x(s.tube),
        view.y(tube.waterline),
        view.x(s.tube + Math.sqrt(written.arm ** 2 - (s.z - tube.waterline) ** 2)),
        view.y(s.z),
        {
          width: OUTLINE,
          group: 'elevation',
        },
      ),
    ),
    ...runningMarks({
      edge: 'left',
      level: view.x(from) - 2,
      places: levels.map((z) => ({ at: view.y(z), text: `WL ${fixed(z * 1000, 0)}` })),
      datum: view.y(0),
      within: [room.y, room.y + room.height - CAPTION + 4],
    }),
    letter(
      room.x,
      room.y + room.height,
      `From the LEFT of travel at ${scaleWords(scale)}, forward to the left. Tyres at gross weight; dashed, at full bump, and the ground under gross weight; dotted, the wheel openings.`,
      { height: 2.5, group: 'elevation' },
    ),
  ]
}
