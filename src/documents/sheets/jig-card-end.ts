/**
 * Cards of the end jig: one an end with hands, locators and diagonals, and one a rib with its contour. The jig's origin is at the
 * joint plane, on the centre plane, at WL 0; a locator's face is the rib's own outer face, so its thicknesses are said, not guessed.
 */
import type { Design } from '../../derive/design.js'
import type { RibJig } from '../../derive/jig-nouns.js'
import type { EndStands } from '../drawing/end-geometry.js'
import { endsOf } from '../drawing/end-geometry.js'
import type { EndViewPlace } from '../drawing/end-view.js'
import { handOf, onEndView } from '../drawing/end-view.js'
import type { Mark, Page } from '../drawing/page.js'
import { circles, FINE, letter, path, polyline, THIN } from '../drawing/page.js'
import { sheetsOf } from '../drawing/paper-sizes.js'
import type { Body, PrintOptions, TitleDraft } from '../drawing/sheet.js'
import { coachTitle, roomAbove, seriesOf, sheetsFrom, unitsOf } from '../drawing/sheet.js'
import { directionArrow, originMark } from '../drawing/symbols.js'
import { fixed, lengthNumber, lengthUnit, lengthWords } from '../drawing/units.js'
import { arcRadius, scaleToFit, scaleWords } from '../drawing/view.js'
import { projectionOf, sideLetter } from '../drawing/words.js'
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
import { handStamp, handWords, ribWords } from './rib-template.js'
import { tableSheets, widthsFor } from './table-sheet.js'

const LEFT = 252
const PAD = 4
/** Room for the names of ribs beside the outline, mm. */
const NAMES = 6

/** The jig from above: the outline, every rib through its locators, the origin and which way x and y run. */
function planFigure(design: Design, at: EndStands, place: EndViewPlace): readonly Mark[] {
  const group = 'plan'
  const on = (x: number, y: number): readonly [number, number] => onEndView(at, place, [x, y, 0])
  const marks: Mark[] = [
    path([{ points: design.ends.drawn.plan.map(([x, y]) => [...on(x, y), 0] as const), closed: true }], { width: FINE, group }),
  ]
  const dots: number[] = []
  for (const rib of design.ends.jig.ribs) {
    rib.ribs.forEach((id, n) => {
      const hand = n === 0 ? 1 : -1
      const points = rib.locators.map((l) => on(l.point[0], hand * l.point[1]))
      for (const [x, y] of points) dots.push(x, y, 1)
      marks.push(
        polyline(
          [...points].sort((a, b) => a[1] - b[1]),
          { width: THIN, group },
        ),
      )
      // named on the inside, where there is room on both hands
      const near = rib.locators[0]
      const [x, y] = on(near.point[0] * 0.93, hand * near.point[1] * 0.93)
      const across = Math.abs(near.point[1]) > 0.35 * near.r
      marks.push(
        letter(x, y, id.replace('-', ' '), {
          height: 1.8,
          anchor: across ? (x < place.x0 ? 'start' : 'end') : 'middle',
          sits: across ? 'middle' : 'foot',
          group,
        }),
      )
    })
  }
  const [x, y] = on(0, 0)
  marks.push(circles(dots, { width: FINE, fill: 0, group }), ...originMark(x, y))
  marks.push(...directionArrow(x, y, -90, 'x', 12), ...directionArrow(x, y, handOf(at) === 1 ? 0 : 180, 'y', 12))
  return marks
}

function titleOf(design: Design, options: PrintOptions, title: string, says: string, view: string): TitleDraft {
  return { ...coachTitle(design, options, 'Jig card', title, says), view }
}

/** Right-hand ribs and the centre line, then the left hand written out, so that nobody turns a sign over in his head. */
function locatorRows(design: Design, at: EndStands, options: PrintOptions): Parameters<typeof stackTable>[2] {
  const units = unitsOf(options)
  const { market } = design.definition.coach
  return ([0, 1] as const).flatMap((n) =>
    design.ends.jig.ribs
      .filter((rib) => n < rib.ribs.length)
      .flatMap((rib) => {
        const side = rib.ribs.length === 1 ? 'centre' : n === 0 ? 'right' : 'left'
        const name = rib.ribs[n].replace('-', ' rib ')
        return [
          {
            heading: `${sideLetter(side, market) ?? 'centre'}  ${name}: ${fixed((rib.azimuth * 180) / Math.PI, 2)}° from the centre line, face under ${lengthWords(rib.depth, units, 1)}`,
          },
          ...rib.locators.map((l) => [
            l.says,
            lengthNumber(l.point[0], units, 1),
            lengthNumber(n === 0 ? l.point[1] : -l.point[1], units, 1),
            fixed(l.z * 1000, 2),
            fixed(l.station[at.end] * 1000, 1),
            fixed((l.rise * 180) / Math.PI, 1),
          ]),
        ]
      }),
  )
}

function sentences(design: Design, at: EndStands, options: PrintOptions): readonly string[] {
  const units = unitsOf(options)
  const { jig } = design.ends
  const { end, barrel } = jig.thickness
  const first = jig.ribs[0]
  return [
    `Origin: joint plane (STA ${fixed(at.joint * 1000, 0)}), centre plane, WL 0. x outward (${at.end === 'nose' ? 'forward' : 'aft'}), y to the right of travel, WL up. Left-hand ribs mirror right-hand ones.`,
    `A locator bears on the rib's own outer face: seam ribs lie ${lengthWords(2 * end, units, 1)} under the outer mould line (two end sheets), mid ribs ${lengthWords(end, units, 1)} (one), the joint frame ${lengthWords(end + barrel, units, 1)} (end sheet ${lengthWords(end, units, 1)} and barrel sheet ${lengthWords(barrel, units, 1)}).`,
    ...(first
      ? [
          `Places are in the plane of the web, ${lengthWords(first.beside, units)} beside the rivets toward the joint. Square: the face's normal, up from level.`,
        ]
      : []),
    toleranceWords(jig.tolerance, units, "the jig's origin"),
  ]
}

function cardBody(design: Design, at: EndStands, options: PrintOptions): Body {
  const units = unitsOf(options)
  const { market } = design.definition.coach
  const size = sheetsOf(seriesOf(options))[1]
  const room = roomAbove(size, 'slim')
  const [x, y] = [room.x + PAD, room.y + PAD]
  const { jig, reach } = design.ends
  const scale = scaleToFit(design.section.width, reach, LEFT - 2 * NAMES, 120)
  const top = y + 56
  const place: EndViewPlace = { view: 'plan', projection: projectionOf(market), scale, x0: x + LEFT / 2, y0: top }
  const left: Stacked = { marks: [], x, width: LEFT, y: top + (reach * 1000) / scale + 14 }
  for (const text of sentences(design, at, options)) stackText(left, text)
  const right: Stacked = { marks: [], x: x + LEFT + 6, width: room.width - LEFT - 6 - 2 * PAD, y }
  stackDiagonals(right, jig.diagonals, jig.tolerance, units)
  stackText(right, 'Joint frame, outer face in the joint plane, x 0, both sides', true)
  stackTable(
    right,
    locatorColumns(right.width, units),
    jig.joint.map((l) => locatorRow(l, units)),
  )
  const end = at.end.toUpperCase()
  const down = at.end === 'nose' ? 'forward' : 'aft'
  return {
    name: `jig-${at.end}`,
    says: `Card of the end jig for the ${at.end}: hands, diagonals, joint frame`,
    size,
    block: 'slim',
    title: {
      ...titleOf(design, options, `End jig, ${at.end}`, `End jig for the ${at.end}`, `${end}, from ABOVE, ${down} is down`),
      scale: scaleWords(scale),
    },
    marks: [
      ...handsAndStamp(
        market,
        handOf(at) === 1 ? 'right' : 'left',
        [`${end}: SEEN FROM ABOVE`, `${down} is down the page`, `joint frame at the top, STA ${fixed(at.joint * 1000, 0)}`],
        x,
        y,
        LEFT,
        y + 8,
      ),
      ...planFigure(design, at, place),
      ...left.marks,
      ...right.marks,
    ],
  }
}

/** The card of one end: what proves the jig, then where every rib bears on it. */
export function endJigCard(design: Design, end: EndStands['end'], options: PrintOptions = {}): readonly Page[] {
  const at = endsOf(design).find((e) => e.end === end)
  if (!at) return []
  const units = unitsOf(options)
  const unit = lengthUnit(units)
  const wide = widthsFor(options, true, 0, 2)
  const name = `End jig, ${end}`
  return [
    ...sheetsFrom([cardBody(design, at, options)]),
    ...tableSheets(
      {
        name: `jig-${end}-locators`,
        says: `Locators of the end jig for the ${end}`,
        heading: `End jig, ${end}: locators`,
        sentences: [
          `x outward from the joint, y to the right of travel, both in ${unit}. Each place is the rib's own outer face in the plane of its web.`,
        ],
        title: titleOf(design, options, name, `Locators of the end jig for the ${end}`, `${end.toUpperCase()}, right of travel is y plus`),
        columns: [
          { head: 'Place', width: wide - 5 * 28, bold: true },
          { head: `x ${unit}`, width: 28, align: 'right' },
          { head: `y ${unit}`, width: 28, align: 'right' },
          { head: 'WL mm', width: 28, align: 'right' },
          { head: 'STA', width: 28, align: 'right' },
          { head: 'Square °', width: 28, align: 'right' },
        ],
        rows: locatorRows(design, at, options),
        wide: true,
        abreast: 2,
        style: { height: 2.5, loose: 0.6 },
      },
      options,
    ),
  ]
}

/** The contour of one rib in figures, shared by nose and tail. */
export function contourCard(design: Design, rib: RibJig, options: PrintOptions = {}): readonly Page[] {
  const units = unitsOf(options)
  const unit = lengthUnit(units)
  const wide = widthsFor(options, true, 0, 2)
  const [drawn, over] = handWords(design, rib)
  const length = (m: number): string => lengthNumber(m, units, 1)
  const degrees = (rad: number): string => fixed((rad * 180) / Math.PI, 1)
  return tableSheets(
    {
      name: `contour-${rib.ribs[0]}`,
      says: `Contour of ${ribWords(rib)} of nose and tail`,
      heading: `Contour of ${ribWords(rib)}, nose and tail`,
      sentences: [
        `${drawn}; turned over: ${over}. ${unit}; r outward from the axis of the crown in the plane of the web, ${lengthWords(rib.beside, units)} beside the rivets toward the joint.`,
        `Outer face ${lengthWords(rib.depth, units, 1)} under the outer mould line; points at most ${lengthWords(rib.spacing, units)} apart, joined by arcs of the radius given beside the first. Run: along the outer face from the cap row. Bevel: plus opens the flange.`,
        `Outer flange developed from ring to base, uncut: ${lengthWords(rib.flangeLength, units, 1)}.`,
      ],
      title: titleOf(
        design,
        options,
        `Contour, ${ribWords(rib)}`,
        `Contour of ${ribWords(rib)}`,
        `${handStamp(design, rib)}, from JOINT side`,
      ),
      columns: [
        { head: 'Point', width: wide - 7 * 22, bold: true },
        { head: 'Run', width: 22, align: 'right' },
        { head: 'r', width: 22, align: 'right' },
        { head: 'WL mm', width: 22, align: 'right' },
        { head: 'Arc', width: 22, align: 'right' },
        { head: 'Inner r', width: 22, align: 'right' },
        { head: 'Inner WL', width: 22, align: 'right' },
        { head: 'Bevel °', width: 22, align: 'right' },
      ],
      rows: [
        ...rib.outer.map((p, i) => {
          const next = rib.outer[i + 1]
          const radius = next ? arcRadius(p, next) : null
          return [
            String(i + 1),
            length(rib.run[i]),
            length(p[0]),
            fixed(p[1] * 1000, 2),
            next ? (radius === null ? 'line' : lengthNumber(radius, units)) : '',
            length(rib.inner[i][0]),
            fixed(rib.inner[i][1] * 1000, 2),
            degrees(rib.bevel[i]),
          ]
        }),
        { heading: 'Places it is set by' },
        ...rib.marks.filter((m) => m.kind !== 'waterline').map((m) => [m.says, '', length(m.r), fixed(m.z * 1000, 2), '', '', '', '']),
      ],
      wide: true,
      abreast: 2,
      style: { height: 2.5, loose: 0.4, rules: 'fifth' },
    },
    options,
  )
}
