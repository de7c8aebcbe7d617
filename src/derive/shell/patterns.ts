/** Developing a plate into a flat pattern: outline, cuts and marks on its own mid surface, and every hole through it. */
import { type Development, developed, undeveloped } from '../../maths/development.js'
import { arcOf, boundsOf, clipToRectangle, outlineArea, reverseOutline, type Vertex } from '../../maths/outline.js'
import type { HoleSet, Outline, Pattern } from '../nouns.js'
import { type OpeningShape, outlineOf } from './opening-shape.js'
import { flatAxes, flatOf, fromDeveloped, type Plate, toFlat } from './plates.js'

/** A row's fasteners that pass through a plate. */
export interface Through {
  readonly row: { readonly id: string; readonly station: readonly number[]; readonly girth: readonly number[] }
  readonly index: readonly number[]
  /** punched hole, m */
  readonly hole: number
}

function holesThrough(plate: Plate, through: readonly Through[]): HoleSet {
  const n = through.reduce((sum, t) => sum + t.index.length, 0)
  const set = {
    rows: through.map((t) => t.row.id),
    row: new Array<number>(n),
    index: new Array<number>(n),
    x: new Array<number>(n),
    y: new Array<number>(n),
    diameter: new Array<number>(n),
  }
  const { swapped, s, s0, d, d0 } = flatAxes(plate)
  let at = 0
  through.forEach((t, k) => {
    const { station, girth } = t.row
    // a row along the coach stands at one girth
    let last = Number.NaN
    let w = 0
    for (const i of t.index) {
      const u = s * (station[i] - s0)
      if (girth[i] !== last) {
        last = girth[i]
        w = d * (developed(plate.development, last) - d0)
      }
      set.row[at] = k
      set.index[at] = i
      set.x[at] = swapped ? w : u
      set.y[at] = swapped ? u : w
      set.diameter[at++] = t.hole
    }
  })
  return Object.freeze(set)
}

/** `skin` is the mid surface on which the openings were drawn. */
export function patternOf(plate: Plate, skin: Development, through: readonly Through[]): Pattern {
  const { flat, width, height } = flatOf(plate)
  const outline: Outline = plate.ring
    ? clipToRectangle(mapShape(plate, plate.ring.outer, skin), 0, 0, width, height)
    : [
        [0, 0, 0],
        [width, 0, 0],
        [width, height, 0],
        [0, height, 0],
      ]
  const cuts = (plate.ring ? [plate.ring.inner] : plate.cuts).flatMap((shape) => {
    const clipped = clipToRectangle(mapShape(plate, shape, skin), 0, 0, width, height)
    return clipped.length > 0 ? [{ opening: shape.id, outline: clipped as Outline }] : []
  })
  const marks = plate.marks.map((m) => ({ ...m, from: toFlat(plate, m.from[0], m.from[1]), to: toFlat(plate, m.to[0], m.to[1]) }))
  return Object.freeze({ face: plate.face, flat, thickness: plate.thickness, outline, cuts, marks, holes: holesThrough(plate, through) })
}

const WHOLE: readonly number[] = [0, 1]

/** How far a mapped corner may stray from its true line, m. */
const ARC_ERROR = 2e-6

/** An opening's outline from the developed skin to this plate's flat, anticlockwise. */
function mapShape(plate: Plate, shape: OpeningShape, skin: Development): Vertex[] {
  const axes = flatAxes(plate)
  const map = (x: number, v: number): [number, number] => {
    // beyond the sheet the skin is carried straight on, so an outline that runs out through the edge keeps its shape
    const g = undeveloped(skin, v)
    return fromDeveloped(axes, x, developed(plate.development, g))
  }
  const source = outlineOf(shape)
  const inside = (v: number): boolean => v > shape.v0 && v < shape.v1
  const stops = plate.development === skin ? [] : kinksOn(skin, plate.development).filter(inside)
  const out: Vertex[] = []
  source.forEach(([x, v, bulge], i) => {
    const [nx, nv] = source[(i + 1) % source.length]
    if (bulge === 0) {
      out.push([...map(x, v), 0])
      return
    }
    const arc = arcOf([x, v], [nx, nv], bulge)
    const at = (f: number): [number, number] => {
      if (f === 0) return [x, v]
      if (f === 1) return [nx, nv]
      const angle = arc.start + f * arc.sweep
      return [arc.cx + arc.radius * Math.cos(angle), arc.cy + arc.radius * Math.sin(angle)]
    }
    const ends = stops.length === 0 ? WHOLE : [0, ...crossings(arc, stops), 1]
    for (let k = 0; k + 1 < ends.length; k++) mapArc(out, map, at, ends[k], ends[k + 1])
  })
  return outlineArea(out) < 0 ? reverseOutline(out) : out
}

const KINKS = new WeakMap<Development, { readonly skin: Development; readonly at: readonly number[] }>()

/** Lengths along the skin at which the map to another layer changes its stretch. */
function kinksOn(skin: Development, other: Development): readonly number[] {
  const known = KINKS.get(other)
  if (known?.skin === skin) return known.at
  const at = [...skin.length, ...other.girth.map((g) => developed(skin, g))]
  KINKS.set(other, { skin, at })
  return at
}

/** Maps a stretch of an arc over which the mapping stretches v evenly: in as few circular arcs as keep within the error. */
function mapArc(
  out: Vertex[],
  map: (x: number, v: number) => [number, number],
  at: (f: number) => [number, number],
  from: number,
  to: number,
): void {
  const a = at(from)
  const b = at(to)
  let start = map(a[0], a[1])
  const end = map(b[0], b[1])
  const stretch = Math.abs(distance(start, end) - distance(a, b))
  // an ellipse drawn in n circular arcs errs by about a fifth of its stretch over n cubed
  const parts = Math.max(1, Math.ceil(Math.cbrt((0.2 * stretch) / ARC_ERROR)))
  for (let k = 0; k < parts; k++) {
    const m = at(from + ((k + 0.5) / parts) * (to - from))
    const e = k + 1 === parts ? b : at(from + ((k + 1) / parts) * (to - from))
    const stop = k + 1 === parts ? end : map(e[0], e[1])
    out.push([start[0], start[1], bulgeThrough(start, map(m[0], m[1]), stop)])
    start = stop
  }
}

/** Fractions of a quarter turn at which it passes lengths where the mapping's stretch changes: it is parted there. */
function crossings(arc: ReturnType<typeof arcOf>, stops: readonly number[]): number[] {
  const found = stops.flatMap((v) => {
    const sine = (v - arc.cy) / arc.radius
    if (Math.abs(sine) >= 1) return []
    return [Math.asin(sine), Math.PI - Math.asin(sine)].map((angle) => {
      const turn = (arc.sweep > 0 ? angle - arc.start : arc.start - angle) % (2 * Math.PI)
      return (turn < 0 ? turn + 2 * Math.PI : turn) / Math.abs(arc.sweep)
    })
  })
  return found
    .filter((f) => f > 1e-6 && f < 1 - 1e-6)
    .sort((a, b) => a - b)
    .filter((f, i, all) => i === 0 || f - all[i - 1] > 1e-6)
}

/** Plain square root: lengths here are metres, and the general function for any size costs ten times as much. */
function distance(a: readonly [number, number], b: readonly [number, number]): number {
  const dx = b[0] - a[0]
  const dy = b[1] - a[1]
  return Math.sqrt(dx * dx + dy * dy)
}

/** Bulge of the circle through three points in order. */
function bulgeThrough(a: readonly [number, number], m: readonly [number, number], b: readonly [number, number]): number {
  const chord = distance(a, b)
  if (chord === 0) return 0
  const sagitta = ((b[0] - a[0]) * (m[1] - a[1]) - (b[1] - a[1]) * (m[0] - a[0])) / chord
  const along = ((b[0] - a[0]) * (m[0] - a[0]) + (b[1] - a[1]) * (m[1] - a[1])) / chord
  // circle through a(0,0), b(chord,0) and m(along, sagitta): its height at mid chord
  if (Math.abs(sagitta) < 1e-15) return 0
  const k = (along * (chord - along) - sagitta * sagitta) / (2 * sagitta)
  const radius = Math.sqrt((chord * chord) / 4 + k * k)
  const rise = sagitta > 0 ? radius - k : -(radius + k)
  return -(2 * rise) / chord
}

export function netArea(pattern: Pick<Pattern, 'outline' | 'cuts'>): number {
  return pattern.cuts.reduce((area, cut) => area - outlineArea(cut.outline), outlineArea(pattern.outline))
}

/** Separate pieces the cuts leave, counting a cut that runs from edge to edge across the blank. */
export function piecesOf(pattern: Pick<Pattern, 'outline' | 'cuts'>): number {
  if (pattern.cuts.length === 0) return 1
  const [, , w, h] = boundsOf(pattern.outline)
  let pieces = 1
  for (const cut of pattern.cuts) {
    const [x0, y0, x1, y1] = boundsOf(cut.outline)
    const across = y0 < 1e-9 && y1 > h - 1e-9
    const along = x0 < 1e-9 && x1 > w - 1e-9
    const atEnd = across ? x0 < 1e-9 || x1 > w - 1e-9 : y0 < 1e-9 || y1 > h - 1e-9
    if (across || along) pieces += atEnd ? 0 : 1
  }
  return pieces
}
