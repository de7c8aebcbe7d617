/**
 * Tape cards: one strip an edge, read beside the tape. Every hole of the rows along that edge, the lines of holes that cross it and
 * the cuts that reach it, in order, each with its running dimension from one corner. Spaced evenly, not to scale.
 */
import type { Design } from '../../derive/design.js'
import type { Part, Pattern } from '../../derive/nouns.js'
import { holeRows } from '../drawing/hole-rows.js'
import { lettered, shorten, textWidth } from '../drawing/lettering.js'
import type { Mark, Page } from '../drawing/page.js'
import { circles, FINE, letter, line, lines, OUTLINE, THIN } from '../drawing/page.js'
import { sheetsOf } from '../drawing/paper-sizes.js'
import type { Body, PrintOptions } from '../drawing/sheet.js'
import { partTitle, roomAbove, seriesOf, sheetsFrom, unitsOf } from '../drawing/sheet.js'
import { introduction } from '../drawing/table.js'
import { lengthNumber } from '../drawing/units.js'
import { boundsOf } from '../drawing/view.js'
import { sideLetter } from '../drawing/words.js'

export interface TapeStop {
  /** distance from the datum corner along the edge, m */
  readonly at: number
  readonly kind: 'end' | 'hole' | 'line' | 'cut'
  readonly name: string
}

export interface TapeEdge {
  readonly edge: string
  /** where the tape is hooked */
  readonly datum: string
  readonly rows: readonly string[]
  readonly stops: readonly TapeStop[]
}

/** A row this near an edge is taped along it, m: laps, joints and flanges lie within it. */
const NEAR = 0.045

const ends = (axis: string): readonly [low: string, high: string] =>
  axis === 'aft'
    ? ['forward', 'aft']
    : axis === 'forward'
      ? ['aft', 'forward']
      : axis === 'up'
        ? ['lower', 'upper']
        : axis === 'right'
          ? ['left', 'right']
          : axis === 'left'
            ? ['right', 'left']
            : ['upper', 'lower']

/** Edges of a pattern along which a row of holes runs, each with its stops in order. */
export function tapeEdges(pattern: Pattern): readonly TapeEdge[] {
  const box = boundsOf([pattern.outline])
  const rows = holeRows(pattern)
  const cuts = pattern.cuts.map((cut) => ({ opening: cut.opening, b: boundsOf([cut.outline]) }))
  const [xEnds, yEnds] = [ends(pattern.flat.x), ends(pattern.flat.y)]
  const out: TapeEdge[] = []
  for (const along of ['x', 'y'] as const) {
    const [lies, crosses] = along === 'x' ? (['line', 'column'] as const) : (['column', 'line'] as const)
    const [from, to, low, high] = along === 'x' ? [box.x0, box.x1, box.y0, box.y1] : [box.y0, box.y1, box.x0, box.x1]
    const [alongEnds, sideEnds] = along === 'x' ? [xEnds, yEnds] : [yEnds, xEnds]
    const places = along === 'x' ? pattern.holes.x : pattern.holes.y
    let before: readonly string[] = []
    for (const end of [0, 1] as const) {
      const level = end === 0 ? low : high
      const taped = rows.filter((row) => row.lies === lies && Math.abs(row.at - level) <= NEAR && row.holes.length > 2)
      // a strip narrower than the reach is taped once
      if (taped.length === 0 || (high - low < 2 * NEAR && end === 1 && taped.every((row) => before.includes(row.row)))) continue
      before = taped.map((row) => row.row)
      const stops: TapeStop[] = [
        { at: from, kind: 'end', name: 'end' },
        { at: to, kind: 'end', name: 'end' },
      ]
      for (const row of taped) for (const hole of row.holes) stops.push({ at: places[hole], kind: 'hole', name: row.row })
      for (const row of rows) if (row.lies === crosses && row.holes.length > 1) stops.push({ at: row.at, kind: 'line', name: row.row })
      for (const { opening, b } of cuts) {
        const reaches =
          along === 'x' ? (end === 0 ? b.y0 <= low + 1e-6 : b.y1 >= high - 1e-6) : end === 0 ? b.x0 <= low + 1e-6 : b.x1 >= high - 1e-6
        if (reaches)
          for (const at of along === 'x' ? [b.x0, b.x1] : [b.y0, b.y1])
            if (at > from + 1e-6 && at < to - 1e-6) stops.push({ at, kind: 'cut', name: `${opening} cut` })
      }
      stops.sort((a, b) => a.at - b.at)
      out.push({ edge: `${sideEnds[end]} edge`, datum: `${alongEnds[0]} end`, rows: before, stops })
    }
  }
  return out
}

const PITCH = 6
const BAND = 44
const ABOVE = 22
/** Room for names under the rail, mm. */
const UNDER = BAND - ABOVE - 4
/** Height of the head, where the hand letter stands 40 mm high. */
const HEAD = 48

/** One strip: a rail with a tick and a value at each stop; names of crossing lines and hole numbers under it. */
function strip(
  stops: readonly TapeStop[],
  numbers: readonly string[],
  x: number,
  y: number,
  value: (m: number) => string,
): readonly Mark[] {
  const group = 'tape'
  const rail = y + ABOVE
  const marks: Mark[] = [line(x, rail, x + stops.length * PITCH, rail, { width: OUTLINE, group })]
  const dots: number[] = []
  const ticks: [number, number, number, number][] = []
  stops.forEach((stop, i) => {
    const at = x + (i + 0.5) * PITCH
    ticks.push([at, rail - (stop.kind === 'hole' ? 2 : 3.5), at, rail + (stop.kind === 'hole' ? 0 : 2)])
    if (stop.kind === 'hole') dots.push(at, rail, 1.6)
    marks.push(letter(at, rail - 4.2, value(stop.at), { height: 3.5, turn: 90, sits: 'middle', bold: stop.kind !== 'hole', group }))
    if (stop.kind === 'hole') marks.push(letter(at, rail + 1.8, numbers[i], { height: 1.8, anchor: 'middle', sits: 'top', group }))
    else {
      const name = lettered(stop.name)
      const height = textWidth(name, 2.5) <= UNDER ? 2.5 : 1.8
      marks.push(letter(at, rail + 2.8, shorten(name, UNDER, height), { height, turn: 90, anchor: 'end', sits: 'middle', group }))
    }
  })
  marks.push(lines(ticks, { width: THIN, group }))
  if (dots.length > 0) marks.push(circles(dots, { width: FINE, fill: 0, group }))
  return marks
}

function cardBodies(design: Design, part: Part, pattern: Pattern, edge: TapeEdge, options: PrintOptions): readonly Body[] {
  const units = unitsOf(options)
  const size = sheetsOf(seriesOf(options))[0]
  const room = roomAbove(size, 'slim')
  const inner = { x: room.x + 4, y: room.y + 4, width: room.width - 8 }
  const most = Math.floor(inner.width / PITCH)
  // strips of one length rather than a last one with a single stop
  const perBand = Math.ceil(edge.stops.length / Math.ceil(edge.stops.length / most))
  const perPage = Math.max(1, Math.floor((room.height - 8 - HEAD) / BAND)) * perBand
  const hand = sideLetter(part.side, design.definition.coach.market)
  let count = 0
  const numbers = edge.stops.map((stop) => (stop.kind === 'hole' ? String(++count) : ''))
  const title = partTitle(design, options, 'Tape card', part, pattern)
  const face = part.patterns.length > 1 ? `${part.id}, ${pattern.face}` : part.id
  const bodies: Body[] = []
  for (let from = 0; from < edge.stops.length; from += perPage) {
    const last = from + perPage >= edge.stops.length
    const marks: Mark[] = [
      ...introduction(inner.x, inner.y, inner.width - (hand ? 44 : 0), `${face}: ${edge.edge}`, [
        `Hook the tape at the ${edge.datum}. Running dimensions in ${units === 'metric' ? 'mm' : 'inches'}, all from that one end; never from the hole before.`,
        `Dots are holes of ${edge.rows.join(' and ')}, numbered under the rail. Long ticks are lines of holes that cross this edge, cuts and ends. Evenly spaced, not to scale. ${count} holes.`,
      ]).marks,
    ]
    if (hand)
      marks.push(
        letter(inner.x + inner.width - 1, inner.y + 1, hand, { height: 40, anchor: 'end', sits: 'top', bold: true, group: 'hand' }),
      )
    for (let n = 0; n * perBand < Math.min(perPage, edge.stops.length - from); n++) {
      const a = from + n * perBand
      const b = Math.min(a + perBand, from + perPage, edge.stops.length)
      marks.push(...strip(edge.stops.slice(a, b), numbers.slice(a, b), inner.x, inner.y + HEAD + n * BAND, (m) => lengthNumber(m, units)))
    }
    const name = `${part.id}${part.patterns.length > 1 ? `-${pattern.face}` : ''}-tape-${edge.edge.split(' ')[0]}${from === 0 && last ? '' : `-${from / perPage + 1}`}`
    bodies.push({ name, says: `Tape card of the ${edge.edge} of ${part.says}`, size, block: 'slim', title, marks })
  }
  return bodies
}

/** Tape cards of all edges of all patterns of a part along which rows of holes run. */
export function tapeCards(design: Design, part: Part, options: PrintOptions = {}): readonly Page[] {
  return sheetsFrom(
    part.patterns.flatMap((pattern) => tapeEdges(pattern).flatMap((edge) => cardBodies(design, part, pattern, edge, options))),
  )
}
