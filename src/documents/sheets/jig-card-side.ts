/** The card of the roof-and-side jig: where every frame of the barrel stands, where its outer face bears, and what proves the jig square. */
import type { Design } from '../../derive/design.js'
import type { Mark, Page } from '../drawing/page.js'
import { circles, FINE, letter, line, OUTLINE, path } from '../drawing/page.js'
import { sheetsOf } from '../drawing/paper-sizes.js'
import { contour } from '../drawing/section-curve.js'
import type { PrintOptions } from '../drawing/sheet.js'
import { coachTitle, roomAbove, seriesOf, sheetsFrom, unitsOf } from '../drawing/sheet.js'
import { originMark } from '../drawing/symbols.js'
import { fixed, lengthNumber, lengthUnit, lengthWords } from '../drawing/units.js'
import type { Scale } from '../drawing/view.js'
import { scaleToFit, scaleWords } from '../drawing/view.js'
import {
  handsAndStamp,
  locatorColumns,
  locatorRow,
  type Stacked,
  stackDiagonals,
  stackTable,
  stackText,
  toleranceWords,
} from './jig-card-parts.js'

const LEFT = 200
const PAD = 4

/** The section from behind with the bearings of a hoop frame on both sides, named on the right. */
function sectionFigure(design: Design, scale: Scale, x0: number, y0: number): readonly Mark[] {
  const group = 'section'
  const k = 1000 / scale
  const half = (sign: 1 | -1) => ({
    points: contour(design.section.points, 0).map(([y, z, bulge]) => [x0 + sign * y * k, y0 - z * k, -sign * bulge] as const),
    closed: false,
  })
  const { hoop } = design.ends.sideJig
  const names = hoop.map((l) => {
    const [x, y] = [x0 + l.y * k, y0 - l.z * k]
    const [u, v] = [x + 5 * Math.cos(l.rise), y - 5 * Math.sin(l.rise)]
    return [
      line(x, y, u, v, { width: FINE, group }),
      letter(u + (l.y === 0 ? 0 : 1), v - (l.y === 0 ? 1 : 0), l.says, {
        height: 2.5,
        anchor: l.y === 0 ? 'middle' : 'start',
        sits: l.y === 0 ? 'foot' : 'middle',
        group,
      }),
    ]
  })
  return [
    path([half(1), half(-1)], { width: OUTLINE, group }),
    circles(
      hoop.flatMap((l) => (l.y === 0 ? [x0, y0 - l.z * k, 1.4] : [x0 + l.y * k, y0 - l.z * k, 1.4, x0 - l.y * k, y0 - l.z * k, 1.4])),
      { width: FINE, fill: 0, group },
    ),
    ...names.flat(),
    ...originMark(x0, y0),
    line(x0 - 70, y0, x0 + 50, y0, { width: FINE, type: 'long-dash-dot', group }),
    letter(x0 - 68, y0 - 1.2, 'WL 0', { height: 2.5, group }),
  ]
}

export function sideJigCard(design: Design, options: PrintOptions = {}): readonly Page[] {
  const units = unitsOf(options)
  const { sideJig } = design.ends
  const { market } = design.definition.coach
  const { points, width } = design.section
  const size = sheetsOf(seriesOf(options))[1]
  const room = roomAbove(size, 'slim')
  const [x, y] = [room.x + PAD, room.y + PAD]
  const tall = points[0].z - points[points.length - 1].z
  const scale = scaleToFit(width, tall, LEFT - 60, 124)
  const k = 1000 / scale
  const level = y + 62 + points[0].z * k
  const first = sideJig.frames[0]
  const skin = design.definition.shell.skin.thickness.value
  const left: Stacked = { marks: [], x, width: LEFT, y: y + 62 + tall * k + 14 }
  const say = [
    `Stations run from ${first.id} (STA ${fixed(first.station * 1000, 0)}), never from the frame before. y from the centre plane, both sides alike; WL from the top of the floor.`,
    `A locator bears on the frame's outer face: hoop frames under the barrel sheet (${lengthWords(skin, units, 1)}), joint frames under the barrel sheet and the end sheet, both one barrel sheet deeper where two sheets lap at a seam. Square: the face's normal, up from level.`,
    toleranceWords(sideJig.tolerance, units, `${first.id}, the centre plane and WL 0`),
  ]
  for (const text of say) stackText(left, text)
  const right: Stacked = { marks: [], x: x + LEFT + 6, width: room.width - LEFT - 6 - 2 * PAD, y }
  stackText(right, 'Hoop frames, outer face', true)
  stackTable(
    right,
    locatorColumns(right.width, units),
    sideJig.hoop.map((l) => locatorRow(l, units)),
  )
  stackText(right, 'Joint frames, outer face', true)
  stackTable(
    right,
    locatorColumns(right.width, units),
    sideJig.joint.map((l) => locatorRow(l, units)),
  )
  stackDiagonals(right, sideJig.diagonals, sideJig.tolerance, units)
  const frames: Stacked = right
  stackTable(
    frames,
    [
      { head: 'Frame', width: frames.width - 3 * 36, bold: true },
      { head: 'STA', width: 36, align: 'right' },
      { head: `From ${first.id} ${lengthUnit(units)}`, width: 36, align: 'right' },
      { head: 'Kind', width: 36 },
    ],
    sideJig.frames.map((f) => [
      f.id,
      fixed(f.station * 1000, 1),
      lengthNumber(f.fromFirst, units),
      f.kind === 'joint' ? 'joint frame' : 'hoop frame',
    ]),
  )
  const title = coachTitle(design, options, 'Jig card', 'Roof-and-side jig', 'Roof-and-side jig of the barrel')
  return sheetsFrom([
    {
      name: 'jig-roof-and-side',
      says: 'Card of the roof-and-side jig: stations, bearings, diagonals',
      size,
      block: 'slim',
      title: { ...title, view: 'BARREL, seen from BEHIND', scale: scaleWords(scale) },
      marks: [
        ...handsAndStamp(
          market,
          'right',
          ['SEEN FROM BEHIND', 'forward is into the page', `datum ${first.id}, centre plane, WL 0`],
          x,
          y,
          LEFT,
          y + 8,
        ),
        ...sectionFigure(design, scale, x + LEFT / 2, level),
        ...left.marks,
        ...right.marks,
      ],
    },
  ])
}
