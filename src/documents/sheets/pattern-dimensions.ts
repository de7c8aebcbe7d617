/**
 * What is written round a pattern, for a stretch of its length: running dimensions along foot and left edge, names of rows, cuts and
 * marks along top and right, and the station and girth rulers.
 */
import type { Part, Pattern } from '../../derive/nouns.js'
import { patternPoint } from '../drawing/coach-geometry.js'
import type { HoleRow } from '../drawing/hole-rows.js'
import { holeRows } from '../drawing/hole-rows.js'
import type { LetterHeight, Mark } from '../drawing/page.js'
import { FINE, letter, lines } from '../drawing/page.js'
import type { RunningPlace } from '../drawing/running.js'
import { runningDepth, runningMarks } from '../drawing/running.js'
import type { PrintUnits } from '../drawing/units.js'
import { fixed, lengthNumber } from '../drawing/units.js'
import type { Bounds, View } from '../drawing/view.js'
import { boundsOf } from '../drawing/view.js'
import { MARK_LINES } from './pattern-geometry.js'

/** `38.3`, `25.3 mostly` where a few steps differ (the ends of a staggered row), `30.9 to 37.5` where there is no usual one. */
export function pitchWords(row: HoleRow, units: PrintUnits): string {
  if (row.pitch === null) return '—'
  const [least, usual, most] = [row.pitch.least, row.pitch.usual, row.pitch.most].map((p) => lengthNumber(p, units))
  if (least === most) return usual
  return row.pitch.share >= 0.75 ? `${usual} mostly` : `${least} to ${most}`
}

/** `hoop-F3 ×31 @ 38.3`, with `, 2 runs` where the row is interrupted. */
export function rowWords(row: HoleRow, units: PrintUnits): string {
  const count = `${row.row} ×${row.holes.length}`
  return row.pitch === null ? count : `${count} @ ${pitchWords(row, units)}${row.runs > 1 ? `, ${row.runs} runs` : ''}`
}

export interface EdgePlaces {
  readonly foot: readonly RunningPlace[]
  readonly top: readonly RunningPlace[]
  readonly left: readonly RunningPlace[]
  readonly right: readonly RunningPlace[]
}

/** Everything to be written along the four edges, for the stretch of x from `from` to `to`. `ends` adds left and right. */
export function edgePlaces(
  pattern: Pattern,
  view: View,
  units: PrintUnits,
  from: number,
  to: number,
  ends: { readonly left: boolean; readonly right: boolean },
): EdgePlaces {
  const box = boundsOf([pattern.outline])
  const num = (m: number): string => lengthNumber(m, units)
  const inside = (x: number): boolean => x >= from - 1e-9 && x <= to + 1e-9
  const rows = holeRows(pattern)
  const xs: number[] = [box.x0, box.x1]
  const ys: number[] = [box.y0, box.y1]
  const top: RunningPlace[] = []
  const right: RunningPlace[] = []
  for (const row of rows) {
    if (row.lies === 'column') {
      xs.push(row.at)
      if (inside(row.at)) top.push({ at: view.x(row.at), text: rowWords(row, units), from: view.y(row.to) })
    } else if (row.lies === 'line') {
      ys.push(row.at)
      xs.push(row.from, row.to)
      right.push({ at: view.y(row.at), text: rowWords(row, units), from: view.x(Math.min(row.to, to)) })
    }
  }
  for (const mark of pattern.marks) {
    const word = mark.says === '' ? MARK_LINES[mark.kind].word : mark.says
    if (Math.abs(mark.from[0] - mark.to[0]) < 1e-6) {
      xs.push(mark.from[0])
      if (inside(mark.from[0])) top.push({ at: view.x(mark.from[0]), text: word })
    } else if (Math.abs(mark.from[1] - mark.to[1]) < 1e-6) {
      ys.push(mark.from[1])
      right.push({ at: view.y(mark.from[1]), text: word })
    }
  }
  const cutsAt = {
    x: new Map<string, { names: string[]; at: number; from: number }>(),
    y: new Map<string, { names: string[]; at: number; from: number }>(),
  }
  const note = (axis: 'x' | 'y', name: string, at: number, from: number): void => {
    const known = cutsAt[axis].get(num(at))
    // lines start at the cut furthest from the words, so that every cut named is touched
    if (known) {
      known.names.push(name)
      known.from = Math.min(known.from, from)
    } else cutsAt[axis].set(num(at), { names: [name], at, from })
  }
  for (const cut of pattern.cuts) {
    const b = boundsOf([cut.outline])
    for (const x of [b.x0, b.x1]) if (x > box.x0 + 1e-6 && x < box.x1 - 1e-6 && inside(x)) note('x', cut.opening, x, b.y1)
    for (const y of [b.y0, b.y1]) if (y > box.y0 + 1e-6 && y < box.y1 - 1e-6) note('y', cut.opening, y, b.x1)
  }
  for (const [value, { names, at, from: start }] of cutsAt.x)
    top.push({ at: view.x(at), text: `${listed(names)} cut ${value}`, from: view.y(start) })
  for (const [value, { names, at, from: start }] of cutsAt.y)
    right.push({ at: view.y(at), text: `${listed(names)} cut ${value}`, from: view.x(Math.max(from, Math.min(start, to))) })
  return {
    foot: grouped(xs.filter(inside), num).map(([x, text]) => ({ at: view.x(x), text, bold: x === box.x0 || x === box.x1 })),
    top: joined(top),
    left: ends.left ? grouped(ys, num).map(([y, text]) => ({ at: view.y(y), text, bold: y === box.y0 || y === box.y1 })) : [],
    right: ends.right ? joined(right) : [],
  }
}

/** A long row of alike cuts is told by its first and last. */
const listed = (names: readonly string[]): string =>
  names.length <= 6 ? names.join(', ') : `${names[0]} to ${names[names.length - 1]} (${names.length})`

/** Values that print alike are one dimension. */
function grouped(values: readonly number[], num: (m: number) => string): readonly (readonly [number, string])[] {
  const seen = new Map<string, number>()
  for (const value of values) if (!seen.has(num(value))) seen.set(num(value), value)
  return [...seen].map(([text, value]) => [value, text] as const)
}

/** Labels of one place are written on one line: two rows in one column, a mark under a seam. */
function joined(places: readonly RunningPlace[]): readonly RunningPlace[] {
  const out: RunningPlace[] = []
  for (const place of places) {
    const twin = out.findIndex((other) => Math.abs(other.at - place.at) < 0.02)
    if (twin < 0) {
      out.push(place)
      continue
    }
    const old = out[twin]
    out[twin] = {
      ...old,
      text: `${old.text} · ${place.text}`,
      ...(old.from === undefined || place.from === undefined ? {} : { from: Math.min(old.from, place.from) }),
    }
  }
  return out
}

const DEEP = 7

export interface Margins {
  readonly top: number
  readonly right: number
  readonly foot: number
  readonly left: number
}

/** Paper each edge needs beyond the drawing, mm. */
export function marginsFor(places: EdgePlaces, height: LetterHeight): Margins {
  const depth = (list: readonly RunningPlace[]): number => (list.length === 0 ? 4 : runningDepth({ places: list, height }))
  const figures = rulerHeight(height)
  return {
    top: depth(places.top),
    right: depth(places.right),
    foot: depth(places.foot) + DEEP + figures * 2,
    left: depth(places.left) + DEEP + figures * 4.5,
  }
}

/** Rulers are lettered one size smaller than dimensions. */
const rulerHeight = (height: LetterHeight): LetterHeight => (height > 2.5 ? 2.5 : 1.8)

/** The rows of dimensions and the two rulers round the drawing of a stretch. */
export function dimensionMarks(
  part: Part,
  pattern: Pattern,
  view: View,
  places: EdgePlaces,
  box: Bounds,
  room: { readonly x: readonly [number, number]; readonly y: readonly [number, number] },
  height: LetterHeight,
): readonly Mark[] {
  const [left, right, top, foot] = [view.x(box.x0), view.x(box.x1), view.y(box.y1), view.y(box.y0)]
  const datumX = box.x0 <= 1e-9 ? view.x(0) : null
  const marks: Mark[] = []
  if (places.foot.length > 0)
    marks.push(...runningMarks({ edge: 'foot', level: foot, places: places.foot, datum: datumX, within: room.x, height }))
  if (places.left.length > 0)
    marks.push(...runningMarks({ edge: 'left', level: left, places: places.left, datum: view.y(0), within: room.y, height }))
  if (places.top.length > 0)
    marks.push(...runningMarks({ edge: 'top', level: top, places: places.top, datum: null, within: room.x, group: 'names', height }))
  if (places.right.length > 0)
    marks.push(...runningMarks({ edge: 'right', level: right, places: places.right, datum: null, within: room.y, group: 'names', height }))
  const level = foot + (places.foot.length === 0 ? 4 : runningDepth({ places: places.foot, height })) + DEEP - 3
  marks.push(...ruler(part, pattern, view, 'x', box, level, rulerHeight(height)))
  if (places.left.length > 0)
    marks.push(
      ...ruler(part, pattern, view, 'y', box, left - runningDepth({ places: places.left, height }) - DEEP + 3, rulerHeight(height)),
    )
  return marks
}

/** Ticks and figures of a ruler, m. */
const STEPS = [
  [0.001, 0.01],
  [0.005, 0.05],
  [0.01, 0.05],
  [0.01, 0.1],
  [0.05, 0.1],
  [0.05, 0.2],
  [0.1, 0.5],
  [0.1, 1],
] as const

/** A ruler in station or girth along an axis: the pattern being good to read it by, not to cut by. Always millimetres: stations are names. */
function ruler(
  part: Part,
  pattern: Pattern,
  view: View,
  axis: 'x' | 'y',
  box: Bounds,
  level: number,
  height: LetterHeight,
): readonly Mark[] {
  // lengths of an end's members are their own: no ruler of the coach runs along them
  if (part.place.end || part.kind === 'a-frame') return []
  const under = part.place.buttock !== undefined
  // heights of a pressed blank are its own as well
  if (under && (axis === 'x' ? pattern.flat.x : pattern.flat.y) === 'up') return []
  const group = 'ruler'
  const [from, to] = axis === 'x' ? [box.x0, box.x1] : [box.y0, box.y1]
  const station =
    (axis === 'x' ? pattern.flat.x : pattern.flat.y) === 'aft' || (axis === 'x' ? pattern.flat.x : pattern.flat.y) === 'forward'
  const value = (along: number): number => {
    const at = patternPoint(pattern, part.side, axis === 'x' ? along : 0, axis === 'x' ? 0 : along)
    return station ? at.station : at.girth
  }
  const [v0, v1] = [value(from), value(to)]
  const slope = (v1 - v0) / (to - from)
  // figures stand at least this far apart on paper: a station has four digits across, a girth one line
  const apart = axis === 'x' ? height * 5 : height * 4
  const [tick, figure] = STEPS.find((step) => view.length(step[1]) >= apart && view.length(step[0]) >= 0.9) ?? STEPS[STEPS.length - 1]
  if (view.length(to - from) < apart * 2) return []
  const ends: [number, number, number, number][] = []
  const marks: Mark[] = []
  const place = (v: number): number => (axis === 'x' ? view.x(from + (v - v0) / slope) : view.y(from + (v - v0) / slope))
  ends.push(axis === 'x' ? [view.x(from), level, view.x(to), level] : [level, view.y(from), level, view.y(to)])
  const [lo, hi] = [Math.min(v0, v1), Math.max(v0, v1)]
  for (let n = Math.ceil(lo / tick - 1e-6); n * tick <= hi + 1e-9; n++) {
    const v = n * tick
    const numbered = Math.abs(v / figure - Math.round(v / figure)) < 1e-6
    const at = place(v)
    const long = numbered ? 2 : 1
    ends.push(axis === 'x' ? [at, level, at, level - long] : [level, at, level + long, at])
    if (!numbered) continue
    const text = fixed(Math.abs(v) * 1000, 0)
    marks.push(
      axis === 'x'
        ? letter(at, level + 1, text, { height, anchor: 'middle', sits: 'top', group })
        : letter(level - 1, at, text, { height, anchor: 'end', sits: 'middle', group }),
    )
  }
  marks.unshift(lines(ends, { width: FINE, group }))
  const name = station ? 'STA' : under ? 'BL' : 'G'
  marks.push(
    axis === 'x'
      ? letter(view.x(from) - height * 2.4, level + 1, name, { height, anchor: 'end', sits: 'top', group })
      : letter(level - 1, view.y(to) - 2.2 * height, name, { height, anchor: 'end', group }),
  )
  return marks
}
