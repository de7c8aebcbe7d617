/**
 * The frame template: the section at the frame's outer face at full size, for checking a rolled frame against the floor or a board.
 * One half is drawn; it is turned over for the other side. Cut into sheets, or on one roll page turned so that it fits a 36 in roll.
 */
import type { Design } from '../../derive/design.js'
import { lettered, wrap } from '../drawing/lettering.js'
import type { Mark, Page } from '../drawing/page.js'
import { FINE, letter, line, lines, OUTLINE, path, THIN } from '../drawing/page.js'
import { contour, inward, onSection } from '../drawing/section-curve.js'
import type { PrintOptions, TitleDraft } from '../drawing/sheet.js'
import { coachTitle, sheetsFrom, unitsOf } from '../drawing/sheet.js'
import { checkSquare } from '../drawing/symbols.js'
import type { Drawing } from '../drawing/tiles.js'
import { tileBodies } from '../drawing/tiles.js'
import { FULL_BLOCK, titleBlock } from '../drawing/title-block.js'
import { fixed, lengthWords } from '../drawing/units.js'

export type FrameKind = 'hoop' | 'joint'

/** How far the frame's outer face lies inside the outer mould line, m: one skin at a hoop, barrel and end skin at a joint. */
function outerFaceDepth(design: Design, kind: FrameKind): number {
  const { shell, ends } = design.definition
  return shell.skin.thickness.value + (kind === 'joint' ? ends.skin.thickness.value : 0)
}

const frameHeight = (design: Design, kind: FrameKind): number =>
  kind === 'hoop' ? design.definition.shell.frame.height : design.definition.shell.jointFrame.height
const MARGIN = 6

/** The half section turned by `turn` (rad, anticlockwise with z up), in paper millimetres from its own top left corner. */
function templateDrawing(design: Design, kind: FrameKind, turn: number): Drawing {
  const points = design.section.points
  const depth = outerFaceDepth(design, kind)
  const outer = contour(points, depth)
  const inner = contour(points, depth + frameHeight(design, kind))
  const rotate = ([y, z]: readonly [number, number]): readonly [number, number] => [
    1000 * (y * Math.cos(turn) - z * Math.sin(turn)),
    -1000 * (y * Math.sin(turn) + z * Math.cos(turn)),
  ]
  const girths = Array.from({ length: 200 }, (_, i) => (design.section.halfGirth * i) / 199)
  const reach = girths
    .flatMap((g) => [inward(onSection(points, g), depth - 0.006), inward(onSection(points, g), depth + frameHeight(design, kind) + 0.006)])
    .map((p) => rotate(p))
  const [x0, y0] = [Math.min(...reach.map((p) => p[0])) - MARGIN, Math.min(...reach.map((p) => p[1])) - MARGIN]
  const on = (p: readonly [number, number]): readonly [number, number] => {
    const [x, y] = rotate(p)
    return [x - x0, y - y0]
  }
  const shape = (curve: readonly (readonly [number, number, number])[]) => ({
    points: curve.map(([y, z, bulge]) => [...on([y, z]), -bulge] as const),
    closed: false,
  })
  const marks: Mark[] = [
    path([shape(outer)], { width: OUTLINE, group: 'outer-face' }),
    path([shape(inner)], { width: THIN, group: 'inner-face' }),
  ]
  const cross = (girth: number, past: number): readonly [number, number, number, number] => {
    const at = onSection(points, girth)
    return [...on(inward(at, depth - past)), ...on(inward(at, depth + frameHeight(design, kind) + past))]
  }
  for (const point of points) {
    const at = onSection(points, point.girth)
    marks.push(lines([cross(point.girth, 0.006)], { width: FINE, type: 'long-dash-dot', group: 'stations' }))
    // name and figures stand between the two faces, on either side of the cross line, never upside down
    const degrees = ((Math.atan2(Math.cos(at.heading), Math.sin(at.heading)) + turn) * 180) / Math.PI
    const upright = Math.cos((degrees * Math.PI) / 180) >= 0
    const [x, y] = on(inward(at, depth + (upright ? frameHeight(design, kind) - 0.002 : 0.002)))
    const how = { height: 2.5, turn: upright ? degrees : degrees + 180, group: 'names' } as const
    const read = (how.turn * Math.PI) / 180
    const off = (by: number): readonly [number, number] => [x - by * Math.sin(read), y - by * Math.cos(read)]
    marks.push(letter(...off(1), lettered(point.says), { ...how, sits: 'foot' }))
    marks.push(letter(...off(-1), `G ${fixed(point.girth * 1000, 1)}  WL ${fixed(point.z * 1000, 1)}`, { ...how, sits: 'top' }))
  }
  for (let g = 0; g <= design.section.halfGirth; g += 0.1) marks.push(lines([cross(g, 0)], { width: FINE, group: 'girth-ticks' }))
  const [x1, y1] = [Math.max(...reach.map((p) => p[0])) + MARGIN, Math.max(...reach.map((p) => p[1])) + MARGIN]
  return { widthMm: x1 - x0, heightMm: y1 - y0, marks }
}

function titleOf(design: Design, kind: FrameKind, options: PrintOptions): TitleDraft {
  const { shell } = design.definition
  const word = kind === 'hoop' ? 'Hoop frame' : 'Joint frame'
  return {
    ...coachTitle(design, options, 'Frame template', `template-${kind}`, `${word}: outer face at full size`),
    scale: '1:1',
    view: 'RIGHT of travel, seen from BEHIND',
    material: (kind === 'hoop' ? shell.frame : shell.jointFrame).alloy,
    gauge: (kind === 'hoop' ? shell.frame : shell.jointFrame).thickness.name,
  }
}

const sentences = (design: Design, kind: FrameKind, options: PrintOptions): readonly string[] => {
  const units = unitsOf(options)
  return [
    `Heavy line: the frame's outer face, ${lengthWords(outerFaceDepth(design, kind), units, 2)} inside the outer mould line.`,
    `Thin line: its inner face, ${lengthWords(frameHeight(design, kind), units)} further in.`,
    'Half section: turn over for the left. Girths G are on the outer mould line.',
    'Lay the crosses of neighbours on each other.',
  ]
}

/** Tiles on sheets. */
export function frameTemplateTiles(design: Design, kind: FrameKind, options: PrintOptions = {}): readonly Page[] {
  const notes = sentences(design, kind, options).flatMap((text) => wrap(text, 100, 2.5))
  return sheetsFrom(
    tileBodies(
      templateDrawing(design, kind, 0),
      titleOf(design, kind, options),
      `template-${kind}`,
      `Full-size template of the ${kind} frame`,
      notes,
      options,
    ),
  )
}

/** One roll page, turned so that crown and toe lie along the roll. */
export function frameTemplateRoll(design: Design, kind: FrameKind, options: PrintOptions = {}): readonly Page[] {
  const { points } = design.section
  const [crown, toe] = [points[0], points[points.length - 1]]
  // the chord from crown to toe points along the page to the right
  const turn = -Math.atan2(toe.z - crown.z, toe.y - crown.y)
  const drawing = templateDrawing(design, kind, turn)
  const widthMm = Math.ceil(drawing.widthMm)
  const heightMm = Math.ceil(drawing.heightMm)
  const foot = heightMm - FULL_BLOCK - 12
  const title = titleOf(design, kind, options)
  return [
    {
      name: `template-${kind}-roll`,
      says: `Full-size template of the ${kind} frame on one roll page`,
      widthMm,
      heightMm,
      marks: [
        ...drawing.marks,
        ...checkSquare(widthMm / 2 - 160, heightMm - 115),
        ...sentences(design, kind, options)
          .slice(0, 3)
          .map((text, i) => letter(widthMm / 2 - 40, heightMm - 100 + i * 8, text, { height: 5, group: 'words' })),
        line(0, 0, widthMm, 0, { width: FINE, group: 'edge' }),
        line(0, heightMm, widthMm, heightMm, { width: FINE, group: 'edge' }),
        ...titleBlock({ ...title, sheet: 1, of: 1 }, 'full', widthMm / 2 + 200, foot),
      ],
    },
  ]
}
