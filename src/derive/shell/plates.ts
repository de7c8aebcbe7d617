/**
 * A plate is one developed face of a part: a rectangle of station by signed girth at some depth in the stack,
 * with the map that unrolls it. Sheets, frame flanges, stringer legs, rim rings and lining panels are all plates,
 * so that a fastener's hole is placed in each of them by the same two lines of arithmetic.
 */
import { type Development, developed, undeveloped } from '../../maths/development.js'
import type { FlatFrame, MarkLine, PartKind } from '../nouns.js'
import { contains, type OpeningShape } from './opening-shape.js'

export interface Plate {
  readonly part: string
  readonly face: string
  readonly kind: PartKind | 'not-derived'
  readonly says: string
  readonly material: string
  readonly thickness: number
  /** stations and signed girths it reaches, m */
  readonly x0: number
  readonly x1: number
  readonly g0: number
  readonly g1: number
  /** layers are sorted by this, outside first */
  readonly order: number
  readonly development: Development
  /** which flat axis the station runs along, and which way it is seen */
  readonly lie: 'left-hand' | 'right-hand' | 'centre' | 'hoop'
  readonly cuts: readonly OpeningShape[]
  /** ring-shaped plates: only the band between these two outlines is metal */
  readonly ring: { readonly inner: OpeningShape; readonly outer: OpeningShape } | null
  readonly marks: readonly MarkLine[]
}

/** The flat frame's words, and the pattern's size. Origin at the lower left of the pattern as drawn. */
export function flatOf(plate: Plate): { flat: FlatFrame; width: number; height: number } {
  const run = developed(plate.development, plate.g1) - developed(plate.development, plate.g0)
  const length = plate.x1 - plate.x0
  if (plate.lie === 'hoop') {
    return {
      flat: { view: 'outside', x: 'right', y: 'forward', origin: origin(plate.x1, plate.g0, 'left foot, aft edge') },
      width: run,
      height: length,
    }
  }
  if (plate.lie === 'centre') {
    return {
      flat: { view: 'outside', x: 'aft', y: 'right', origin: origin(plate.x0, plate.g0, 'forward left corner') },
      width: length,
      height: run,
    }
  }
  const right = plate.lie === 'right-hand'
  return {
    flat: {
      view: 'outside',
      x: right ? 'forward' : 'aft',
      y: 'up',
      origin: right ? origin(plate.x1, plate.g1, 'aft lower corner') : origin(plate.x0, plate.g0, 'forward lower corner'),
    },
    width: length,
    height: run,
  }
}

const origin = (station: number, girth: number, says: string) => ({ station, girth, says })

/** How station and developed length become flat x and y: u = s (station - s0) and w = d (length - d0); x is w where swapped. */
export interface FlatAxes {
  readonly swapped: boolean
  readonly s: 1 | -1
  readonly s0: number
  readonly d: 1 | -1
  readonly d0: number
}

export function flatAxes(plate: Plate): FlatAxes {
  const upper = (): number => developed(plate.development, plate.g0)
  if (plate.lie === 'hoop') return { swapped: true, s: -1, s0: plate.x1, d: 1, d0: upper() }
  if (plate.lie === 'right-hand') return { swapped: false, s: -1, s0: plate.x1, d: -1, d0: developed(plate.development, plate.g1) }
  return { swapped: false, s: 1, s0: plate.x0, d: 1, d0: upper() }
}

/** Flat coordinates of the foot of the normal at (station, signed girth). */
export function toFlat(plate: Plate, station: number, girth: number): [number, number] {
  return fromDeveloped(flatAxes(plate), station, developed(plate.development, girth))
}

/** Flat coordinates from a station and a developed length on the plate's own mid surface. */
export function fromDeveloped(axes: FlatAxes, station: number, length: number): [number, number] {
  const u = axes.s * (station - axes.s0)
  const w = axes.d * (length - axes.d0)
  return axes.swapped ? [w, u] : [u, w]
}

/** Back from flat coordinates to station and signed girth: rolls the hole up again. */
export function fromFlat(plate: Plate, x: number, y: number): [station: number, girth: number] {
  const axes = flatAxes(plate)
  const [u, w] = axes.swapped ? [y, x] : [x, y]
  return [axes.s0 + axes.s * u, undeveloped(plate.development, axes.d0 + axes.d * w)]
}

/** Which lie a plate of this signed girth range has. */
export function lieOf(g0: number, g1: number): Plate['lie'] {
  if (g0 >= 0) return 'right-hand'
  return g1 <= 0 ? 'left-hand' : 'centre'
}

/** Whether the plate has metal at a point of its rectangle of station and girth: clear of its cuts, and on the ring if it is one. */
export function uncut(plate: Pick<Plate, 'ring' | 'cuts'>, station: number, skinLength: number): boolean {
  if (plate.ring && (!contains(plate.ring.outer, station, skinLength) || contains(plate.ring.inner, station, skinLength))) return false
  for (const cut of plate.cuts) if (contains(cut, station, skinLength)) return false
  return true
}
