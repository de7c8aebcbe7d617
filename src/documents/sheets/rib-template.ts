/**
 * Templates of the ribs of an end at full size: the outer face of the flange in the plane of the web, the inner face, and the
 * places a rib is set by. One of each pair is drawn, turned over for its twin; nose and tail share them, hands changed.
 */
import type { Design } from '../../derive/design.js'
import type { ContourMark, RibJig } from '../../derive/jig-nouns.js'
import type { Outline } from '../../derive/nouns.js'
import { wrap } from '../drawing/lettering.js'
import type { Mark, Page } from '../drawing/page.js'
import { FINE, letter, line, lines, OUTLINE, path, THIN } from '../drawing/page.js'
import type { PrintOptions, TitleDraft } from '../drawing/sheet.js'
import { coachTitle, sheetsFrom, unitsOf } from '../drawing/sheet.js'
import { checkSquare } from '../drawing/symbols.js'
import type { Drawing } from '../drawing/tiles.js'
import { tileBodies } from '../drawing/tiles.js'
import { BLOCK_WIDTH, FULL_BLOCK, titleBlock } from '../drawing/title-block.js'
import { fixed, lengthNumber, lengthUnit, lengthWords } from '../drawing/units.js'
import { flatten } from '../drawing/view.js'
import { sideLetter } from '../drawing/words.js'

/** Room round the drawing for names, and how far a mark runs past the two faces, mm. */
const MARGIN = 8
const PAST = 6
/** Room at the foot of a roll page for square, words and title block, mm. */
const STRIP = 116

/** `seam rib 3 and 4`, `mid rib 4`. */
export function ribWords(rib: RibJig): string {
  const numbers = rib.ribs.map((id) => id.split('-')[1])
  return `${rib.kind} rib ${numbers.join(' and ')}`
}

const nameOf = (rib: RibJig): string => `end-${rib.ribs[0].replace('-', '-rib-')}`

/** Which ribs lie as drawn and which turned over: the tail's right hand is the nose's left. */
export function handWords(design: Design, rib: RibJig): readonly [drawn: string, over: string] {
  const { market } = design.definition.coach
  if (rib.ribs.length === 1) return ['CENTRE of nose and tail', 'web on the right of travel on the nose, on the left on the tail']
  const [right, left] = [sideLetter('right', market), sideLetter('left', market)]
  return [
    `NOSE ${right} (${rib.ribs[0]}) and TAIL ${left} (${rib.ribs[1]})`,
    `nose ${left} (${rib.ribs[1]}) and tail ${right} (${rib.ribs[0]})`,
  ]
}

/** The hands as drawn, short enough for a title block. */
export function handStamp(design: Design, rib: RibJig): string {
  const { market } = design.definition.coach
  if (rib.ribs.length === 1) return 'CENTRE, nose and tail'
  return `NOSE ${sideLetter('right', market)} and TAIL ${sideLetter('left', market)}`
}

function ribDrawing(rib: RibJig, turn: number, options: PrintOptions): Drawing {
  const units = unitsOf(options)
  const [c, s] = [Math.cos(turn), Math.sin(turn)]
  const rotate = ([r, z]: readonly [number, number]): readonly [number, number] => [1000 * (r * c - z * s), -1000 * (r * s + z * c)]
  const across = (m: Pick<ContourMark, 'r' | 'z' | 'rise'>, by: number): readonly [number, number] => [
    m.r + by * Math.cos(m.rise),
    m.z + by * Math.sin(m.rise),
  ]
  const reach = [
    ...[rib.outer, rib.inner].flatMap((o) => flatten(o, 4, false).map(rotate)),
    ...rib.marks.flatMap((m) => [rotate(across(m, PAST / 1000)), rotate(across(m, -rib.height - PAST / 1000))]),
  ]
  const low = (axis: 0 | 1): number => Math.min(...reach.map((p) => p[axis])) - MARGIN
  const high = (axis: 0 | 1): number => Math.max(...reach.map((p) => p[axis])) + MARGIN
  const [x0, y0] = [low(0), low(1)]
  const on = (p: readonly [number, number]): readonly [number, number] => {
    const [x, y] = rotate(p)
    return [x - x0, y - y0]
  }
  // the page is drawn as the plane is seen, so only y running down turns an arc
  const shape = (o: Outline) => ({ points: o.map(([r, z, bulge]) => [...on([r, z]), -bulge] as const), closed: false })
  const crossing = (m: ContourMark, past: number): readonly [number, number, number, number] => [
    ...on(across(m, past)),
    ...on(across(m, -rib.height - past)),
  ]
  const levels = rib.marks.filter((m) => m.kind === 'waterline')
  const named = rib.marks.filter((m) => m.kind !== 'waterline')
  const marks: Mark[] = [
    path([shape(rib.outer)], { width: OUTLINE, group: 'outer-face' }),
    path([shape(rib.inner)], { width: THIN, group: 'inner-face' }),
    lines(
      levels.map((m) => crossing(m, 0)),
      { width: FINE, group: 'waterlines' },
    ),
    lines(
      named.map((m) => crossing(m, PAST / 1000)),
      { width: FINE, type: 'long-dash-dot', group: 'stations' },
    ),
  ]
  const written: (readonly [number, number])[] = []
  // named places first, then as many waterlines as find room
  for (const m of [...named, ...levels]) {
    const at = on([m.r, m.z])
    const apart = m.kind === 'waterline' ? 11 : 0
    if (written.some((p) => Math.hypot(p[0] - at[0], p[1] - at[1]) < apart)) continue
    written.push(at)
    const crowded = named.some((o) => o.z > m.z && Math.hypot(o.r - m.r, o.z - m.z) < 0.01)
    marks.push(nameOn(m, rib, on, across, turn, units, crowded))
  }
  return { widthMm: high(0) - x0, heightMm: high(1) - y0, marks }
}

/** A name between the faces along its cross line, never upside down: toward the crown of it, or toward the toe where a neighbour is near above. */
function nameOn(
  m: ContourMark,
  rib: RibJig,
  on: (p: readonly [number, number]) => readonly [number, number],
  across: (m: ContourMark, by: number) => readonly [number, number],
  turn: number,
  units: ReturnType<typeof unitsOf>,
  toward: boolean,
): Mark {
  const degrees = ((m.rise + turn) * 180) / Math.PI
  const upright = Math.cos((degrees * Math.PI) / 180) >= 0
  const [x, y] = on(across(m, upright ? -rib.height + 0.002 : -0.002))
  const how = { height: 2.5, turn: upright ? degrees : degrees + 180, group: 'names' } as const
  const read = (how.turn * Math.PI) / 180
  const text = m.kind === 'waterline' ? m.says : `${m.says}  r ${lengthNumber(m.r, units)}  WL ${fixed(m.z * 1000, 1)}`
  // read upright, the crown is over the line; read turned over, it is under it
  const over = toward !== upright
  const by = over ? 1 : -1
  return letter(x - by * Math.sin(read), y - by * Math.cos(read), text, { ...how, sits: over ? 'foot' : 'top' })
}

function titleOf(design: Design, rib: RibJig, options: PrintOptions): TitleDraft {
  const { frame } = design.definition.shell
  return {
    ...coachTitle(design, options, 'Rib template', nameOf(rib), `Nose and tail, ${ribWords(rib)}: outer face at full size`),
    scale: '1:1',
    view: `${handStamp(design, rib)}, from JOINT side`,
    material: frame.alloy,
    gauge: frame.thickness.name,
  }
}

function sentences(design: Design, rib: RibJig, options: PrintOptions): readonly string[] {
  const units = unitsOf(options)
  const [drawn, over] = handWords(design, rib)
  const degrees = (rad: number): string => `${fixed((rad * 180) / Math.PI, 1)}°`
  return [
    rib.ribs.length === 1 ? `As drawn: ${drawn}; ${over}.` : `As drawn: ${drawn}, seen from the joint side. Turned over: ${over}.`,
    `Heavy line: outer face of the flange in the plane of the web, ${lengthWords(rib.beside, units)} beside the rivets toward the joint and ${lengthWords(rib.depth, units, 1)} under the outer mould line (${rib.kind === 'seam' ? 'two sheets of the end' : 'one sheet of the end'}).`,
    `Thin line: inner face, ${lengthWords(rib.height, units)} in. Flange developed ${lengthWords(rib.flangeLength, units)} from ring to base, uncut.`,
    `Bevel ${degrees(rib.leastBevel.angle)} at WL ${fixed(rib.leastBevel.z * 1000, 0)} to ${degrees(rib.greatestBevel.angle)} at WL ${fixed(rib.greatestBevel.z * 1000, 0)}; plus opens the flange. r from the axis of the crown in ${lengthUnit(units)}; WL every 100 mm.`,
  ]
}

/** Each distinct rib cut into sheets with register crosses. */
export function ribTemplateTiles(design: Design, rib: RibJig, options: PrintOptions = {}): readonly Page[] {
  const notes = [...sentences(design, rib, options), 'Lay the crosses of neighbours on each other.'].flatMap((text) => wrap(text, 100, 2.5))
  return sheetsFrom(
    tileBodies(
      ribDrawing(rib, 0, options),
      titleOf(design, rib, options),
      `template-${nameOf(rib)}`,
      `Full-size template of ${ribWords(rib)} of nose and tail`,
      notes,
      options,
    ),
  )
}

/** One roll page a rib, turned so that its cap row and its toe lie along the roll. */
export function ribTemplateRoll(design: Design, rib: RibJig, options: PrintOptions = {}): Page {
  const [top, toe] = [rib.outer[0], rib.outer[rib.outer.length - 1]]
  const drawing = ribDrawing(rib, -Math.atan2(toe[1] - top[1], toe[0] - top[0]), options)
  const widthMm = Math.ceil(drawing.widthMm)
  const heightMm = Math.ceil(drawing.heightMm + STRIP)
  const foot = heightMm - STRIP
  const wide = widthMm - BLOCK_WIDTH - 10 - 130
  return {
    name: `template-${nameOf(rib)}-roll`,
    says: `Full-size template of ${ribWords(rib)} of nose and tail on one roll page`,
    widthMm,
    heightMm,
    marks: [
      ...drawing.marks,
      ...checkSquare(10, foot + 6),
      ...sentences(design, rib, options)
        .flatMap((text) => wrap(text, wide, 5))
        .map((text, i) => letter(124, foot + 14 + i * 8.4, text, { height: 5, group: 'words' })),
      line(0, 0, widthMm, 0, { width: FINE, group: 'edge' }),
      line(0, heightMm, widthMm, heightMm, { width: FINE, group: 'edge' }),
      ...titleBlock({ ...titleOf(design, rib, options), sheet: 1, of: 1 }, 'full', widthMm - BLOCK_WIDTH - 6, heightMm - FULL_BLOCK - 8),
    ],
  }
}
