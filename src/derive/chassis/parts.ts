/** Members to parts: flat patterns with bends, holes and notches, masses and centres. */
import type { Bought, Side } from '../../definition/types.js'
import { netMoments } from '../../maths/area-moments.js'
import type { Worked } from '../../quantity/formula.js'
import { sheetMass } from '../common/mass.formulas.js'
import type { FastenerRow, FlatFrame, HoleSet, MarkLine, Outline, Part, PartKind, Pattern } from '../nouns.js'

type Point = readonly [number, number, number]

export interface Draft {
  readonly id: string
  readonly says: string
  readonly kind: PartKind
  readonly side: Side
  readonly material: string
  readonly thickness: Bought
  readonly density: number
  readonly patterns: readonly Pattern[]
  readonly centre: Point
  readonly stock?: string | null
  readonly notes: readonly string[]
}

/** Net area of one flat face, its cuts taken out. m2 */
const netArea = ({ outline, cuts }: Pick<Pattern, 'outline' | 'cuts'>): number =>
  netMoments(
    outline,
    cuts.map((c) => c.outline),
  ).area

/** One pressed or cut part; it weighs what all of its faces weigh. */
export function partFrom(d: Draft): Part {
  const areas = d.patterns.map(netArea)
  const mass: Worked<'kg'> = sheetMass({ rho: d.density, t: d.thickness.value, A: areas.reduce((a, b) => a + b, 0) })
  return Object.freeze({
    id: d.id,
    says: d.says,
    trade: 'chassis' as const,
    kind: d.kind,
    material: d.material,
    thickness: d.thickness,
    side: d.side,
    place: { side: d.side, station: d.centre[0], girth: 0, waterline: d.centre[2], buttock: d.centre[1] },
    patterns: d.patterns,
    area: areas[0],
    mass,
    centre: d.centre,
    stock: d.stock ?? null,
    pieces: 1,
    notes: d.notes,
  })
}

export interface Face {
  readonly face: string
  readonly view: FlatFrame['view']
  readonly x: FlatFrame['x']
  readonly y: FlatFrame['y']
  /** where the pattern's 0, 0 is: station, buttock line (the centre plane where none is said), and in words */
  readonly origin: { readonly station: number; readonly y?: number; readonly says: string }
  readonly thickness: number
  readonly outline: Outline
  readonly cuts?: Pattern['cuts']
  readonly marks?: readonly MarkLine[]
  readonly holes?: HoleSet
}

const NO_HOLES: HoleSet = Object.freeze({ rows: [], row: [], index: [], x: [], y: [], diameter: [] })

export function pattern(f: Face): Pattern {
  return Object.freeze({
    face: f.face,
    flat: { view: f.view, x: f.x, y: f.y, origin: { station: f.origin.station, girth: f.origin.y ?? 0, says: f.origin.says } },
    thickness: f.thickness,
    outline: f.outline,
    cuts: f.cuts ?? [],
    marks: f.marks ?? [],
    holes: f.holes ?? NO_HOLES,
  })
}

/** Holes of every fastener whose stack holds the part; `at` maps its station and buttock line to the flat. */
export function holesThrough(
  part: string,
  rows: readonly FastenerRow[],
  diameterOf: (row: FastenerRow) => number,
  at: (station: number, y: number) => readonly [number, number],
): HoleSet {
  const set = {
    rows: [] as string[],
    row: [] as number[],
    index: [] as number[],
    x: [] as number[],
    y: [] as number[],
    diameter: [] as number[],
  }
  for (const row of rows) {
    const through = row.stacks.map((s) => s.parts.includes(part))
    if (!through.includes(true)) continue
    const name = set.rows.push(row.id) - 1
    row.station.forEach((station, i) => {
      if (!through[row.stack[i]]) return
      const [x, y] = at(station, row.buttock?.[i] ?? 0)
      set.row.push(name)
      set.index.push(i)
      set.x.push(x)
      set.y.push(y)
      set.diameter.push(diameterOf(row))
    })
  }
  return set
}

/** A round hole as an outline. */
export const disc = (x: number, y: number, diameter: number): Outline => [
  [x - diameter / 2, y, 1],
  [x + diameter / 2, y, 1],
]

export const rectangle = (x0: number, y0: number, x1: number, y1: number): Outline => [
  [x0, y0, 0],
  [x1, y0, 0],
  [x1, y1, 0],
  [x0, y1, 0],
]
