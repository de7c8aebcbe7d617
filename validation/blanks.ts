/** Blanks of doubly curved panels: developable patches that must come out exactly, and narrow strips whose strain has a closed form. */
import { type Blank, blankOf } from '../src/maths/blank/blank.js'
import { inBlank, strainAt } from '../src/maths/blank/in-blank.js'
import type { Patch } from '../src/maths/blank/mesh.js'
import type { ValidationCase, ValidationFile } from './case.js'
import { degree } from './case.js'

const SOURCE = 'closed form'
type Curve = (u: number, v: number) => readonly [number, number, number]
const patch = (point: Curve): Patch => ({ point })
/** Worked out once, when the first figure of it is asked for. */
function once(make: () => Blank): () => Blank {
  let made: Blank | undefined
  return () => {
    made ??= make()
    return made
  }
}

const quarter = Math.PI / 2
const cylinder = once(() =>
  blankOf(
    patch((u, v) => [0.6 * Math.sin(quarter * u), v, 0.6 * Math.cos(quarter * u)]),
    { across: 16, along: 16 },
  ),
)
/** A quarter of the frustum of diameters 5 and 8 and height 4. */
const frustum = once(() =>
  blankOf(
    patch((u, v) => [(2.5 + 1.5 * v) * Math.cos(quarter * u), (2.5 + 1.5 * v) * Math.sin(quarter * u), -4 * v]),
    { across: 16, along: 24 },
  ),
)
/** Apex at height 2 over angle 0 of the rim of radius 1, cut off at three tenths of its elements; the first quarter of the rim. */
const oblique = once(() =>
  blankOf(
    patch((u, v) => {
      const share = 0.3 + 0.7 * v
      return [1 + share * (Math.cos(quarter * u) - 1), share * Math.sin(quarter * u), 2 - 2 * share]
    }),
    { across: 16, along: 32 },
  ),
)
/** The tangents of the helix (cos s, sin s, s/2) from 1 to 2 along them, a quarter turn. */
const tangents = once(() =>
  blankOf(
    patch((u, v) => {
      const [s, t] = [quarter * v, (1 + u) / Math.sqrt(1.25)]
      return [Math.cos(s) - t * Math.sin(s), Math.sin(s) + t * Math.cos(s), 0.5 * s + 0.5 * t]
    }),
    { across: 16, along: 48 },
  ),
)
/** Turn of the flat sector in one of the 48 steps, rad. */
const STEP = 5.61985178 / 4 / 48
const chord = (blank: Blank, a: readonly [number, number], b: readonly [number, number]): number => {
  const [[x0, y0], [x1, y1]] = [inBlank(blank, ...a), inBlank(blank, ...b)]
  return Math.hypot(x1 - x0, y1 - y0)
}
/** Angle between the two edges of a blank whose edges are straight, rad. */
function spread(blank: Blank): number {
  const heading = (u: number): number => {
    const [[x0, y0], [x1, y1]] = [inBlank(blank, u, 0), inBlank(blank, u, 1)]
    return Math.atan2(y1 - y0, x1 - x0)
  }
  return heading(1) - heading(0)
}
/** Radius of the circle through both ends and the middle of an edge. */
function radius(blank: Blank, u: number): number {
  const [whole, half] = [chord(blank, [u, 0], [u, 1]), chord(blank, [u, 0], [u, 0.5])]
  return half ** 2 / (2 * Math.sqrt(half ** 2 - (whole / 2) ** 2))
}

const HALF = 0.05
const strip = (penalty: number) =>
  once(() =>
    blankOf(
      patch((u, v) => {
        const [x, y] = [0.6 * (v - 0.5), (2 * u - 1) * HALF]
        return [Math.cos(y) * Math.sin(x), Math.sin(y), Math.cos(y) * Math.cos(x)]
      }),
      { across: 24, along: 96, shrinkPenalty: penalty },
    ),
  )
const [even, dear] = [strip(1), strip(100)]
/** Twisted by half a radian a metre about its straight mid line: K = -1/4 there. */
const twisted = once(() =>
  blankOf(
    patch((u, v) => {
      const [x, y] = [1.6 * (v - 0.5), (2 * u - 1) * 0.1]
      return [x, y * Math.cos(x / 2), y * Math.sin(x / 2)]
    }),
    { across: 24, along: 96, shrinkPenalty: 1 },
  ),
)
const gore = once(() =>
  blankOf(
    patch((u, v) => {
      const [from, turn] = [0.3 + 1.2 * v, 0.4 * (u - 0.5)]
      return [Math.sin(from) * Math.cos(turn), Math.sin(from) * Math.sin(turn), Math.cos(from)]
    }),
    { across: 16, along: 48 },
  ),
)

const one = (
  id: string,
  says: string,
  how: string,
  expected: number,
  tolerance: number,
  unit: string,
  ours: () => number,
): ValidationCase => ({ id: `blank-${id}`, case: says, source: SOURCE, at: how, status: 'D', expected, tolerance, ours, unit })
const net = (id: string, says: string, expected: number, tolerance: number, unit: string, ours: () => number): ValidationCase => ({
  ...one(
    `frustum-${id}`,
    `blank of a quarter frustum, 5 and 8 in across, 4 in high: ${says}`,
    'Net of a frustum',
    expected,
    tolerance,
    unit,
    ours,
  ),
  source: 'CEEMRR, Drawing nets 6',
  status: 'R',
})
const HOW = 'a line y off the middle is K y^2 / 2 shorter; least cost over the width'
const inSquares = (strain: number, half: number): number => strain / half ** 2

export const blanks: ValidationFile = {
  bibliography:
    'Strain of narrow strips of a curved surface, developments of cones and of the tangents of a helix: worked from first principles, independently of the program.',
  cases: [
    one(
      'cylinder',
      'blank of a quarter cylinder of radius 600 mm: width',
      'R pi / 2',
      942.4778,
      1e-3,
      'mm',
      () => chord(cylinder(), [0, 0.5], [1, 0.5]) * 1000,
    ),
    net('slant', 'slant', 4.272, 0.00005, 'in', () => chord(frustum(), [0.5, 0], [0.5, 1])),
    net('sector', 'whole sector', 126.4, 0.05, 'deg', () => (4 * spread(frustum())) / degree),
    net('outer', 'outer radius', 11.39, 0.01, 'in', () => chord(frustum(), [0, 1], [1, 1]) / (2 * Math.sin(spread(frustum()) / 2))),
    one(
      'oblique',
      'blank of an oblique cone, apex over the rim: angle of the first quarter',
      'integral of the turning of the elements',
      0.69139124,
      1e-5,
      'rad',
      () => spread(oblique()),
    ),
    one(
      'tangents-area',
      'blank of a quarter turn of the tangents of a helix (1, 0.5), 1 to 2 along them: area',
      '(v2^2 - v1^2) / 2 x turn, less the slivers outside 48 chords: x sin(d) / d',
      (8.42977768 / 4) * (Math.sin(STEP) / STEP),
      1e-5,
      'm2',
      () => tangents().areaFlat,
    ),
    one('tangents-inner', 'the same: radius of the inner edge', 'sqrt(1.25^2 + 1)', 1.60078106, 1e-4, 'm', () => radius(tangents(), 0)),
    one('tangents-outer', 'the same: radius of the outer edge', 'sqrt(1.25^2 + 2^2)', 2.35849528, 1e-4, 'm', () => radius(tangents(), 1)),
    one(
      'sphere-middle',
      'strip of a sphere, shrink as cheap as stretch: stretch in the middle, in K b^2',
      `${HOW}: 1/6`,
      1 / 6,
      0.004,
      '',
      () => inSquares(strainAt(even(), 0.5, 0.5).major, HALF),
    ),
    one('sphere-edge', 'the same: shrink at the edge, in K b^2', `${HOW}: 1/3`, -1 / 3, 0.012, '', () =>
      inSquares(strainAt(even(), 0, 0.5).minor, HALF),
    ),
    one(
      'sphere-dear',
      'strip of a sphere, shrink penalised 100 to 1: stretch in the middle, in K b^2',
      `${HOW}: t^2 / 2 with 2 t^3 = 100 (1 - t)^2 (1 + 2 t)`,
      0.4282135,
      0.009,
      '',
      () => inSquares(strainAt(dear(), 0.5, 0.5).major, HALF),
    ),
    one(
      'sphere-dear-spread',
      'the same: stretch in the middle less that at the edge, in K b^2',
      `${HOW}: 1/2 whatever shrink costs`,
      0.5,
      0.01,
      '',
      () => inSquares(strainAt(dear(), 0.5, 0.5).major - strainAt(dear(), 0, 0.5).minor, HALF),
    ),
    one(
      'twist-edge',
      'strip twisted 0.5 rad/m, shrink as cheap as stretch: stretch at the edge, in |K| b^2',
      'K = -tau^2: 1/3',
      1 / 3,
      0.012,
      '',
      () => inSquares(strainAt(twisted(), 0, 0.5).major, 0.1) * 4,
    ),
    one(
      'twist-middle',
      'the same: shrink in the middle, in |K| b^2',
      'K = -tau^2: 1/6',
      -1 / 6,
      0.004,
      '',
      () => inSquares(strainAt(twisted(), 0.5, 0.5).minor, 0.1) * 4,
    ),
    one(
      'sphere-area',
      'gore of a sphere of radius 1, 0.4 rad wide, from 0.3 to 1.5 rad off the pole: area formed',
      '0.4 (cos 0.3 - cos 1.5)',
      0.4 * (Math.cos(0.3) - Math.cos(1.5)),
      1e-4,
      'm2',
      () => gore().areaFormed,
    ),
  ],
}
