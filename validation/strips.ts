/** Sheets wrapped between two edge curves and laid flat, against surfaces whose patterns are known. */
import { stripFacts } from '../src/maths/strip/facts.js'
import { distanceInside } from '../src/maths/strip/fit.js'
import { rulingThrough } from '../src/maths/strip/on-strip.js'
import { warp } from '../src/maths/strip/ruling.js'
import { curveByLength, edgePoint, type SpaceCurve } from '../src/maths/strip/space-curve.js'
import { goreSeams, inscribedHalfWidth, sinusoidalExcess, sinusoidalHalfWidth } from '../src/maths/strip/sphere-gores.js'
import { type DevelopableStrip, stripBetween } from '../src/maths/strip/strip.js'
import { type FlatStrip, unroll } from '../src/maths/strip/unroll.js'
import { length, type Vec3 } from '../src/maths/vec.js'
import type { ValidationCase, ValidationFile } from './case.js'
import { degree } from './case.js'

const SOURCE = 'closed form'

function wrapped([p, q]: readonly [SpaceCurve, SpaceCurve], turn?: number): DevelopableStrip {
  const strip = stripBetween(p, q, turn === undefined ? {} : { turn })
  if (strip.kind === 'refused') throw new Error(strip.says)
  return strip
}

/** A level ellipse about a centre, semi-axes a along x and b along y, from angle 0. */
const level = ([x, y, z]: Vec3, a: number, b: number, to: number): SpaceCurve =>
  curveByLength(
    (u) => [x + a * Math.cos(u), y + b * Math.sin(u), z],
    (u) => [-a * Math.sin(u), b * Math.cos(u), 0],
    0,
    to,
  )

/** The points at distance v along the tangents of a helix of radius 1 and rise 0.5 a radian, one turn. */
const onTangents = (v: number): SpaceCurve => {
  const c = Math.hypot(1, 0.5)
  return curveByLength(
    (u) => [Math.cos(u) - (v * Math.sin(u)) / c, Math.sin(u) + (v * Math.cos(u)) / c, 0.5 * u + (0.5 * v) / c],
    (u) => [-Math.sin(u) - (v * Math.cos(u)) / c, Math.cos(u) - (v * Math.sin(u)) / c, 0.5],
    0,
    2 * Math.PI,
  )
}

const straight = (from: Vec3, along: Vec3): SpaceCurve => ({
  length: 1,
  at: (s) => [from[0] + s * along[0], from[1] + s * along[1], from[2] + s * along[2]],
  tangent: () => along,
})

const turnOf = ({ heading }: FlatStrip): number => Math.abs(heading[heading.length - 1] - heading[0])
const chord = (x: readonly number[], y: readonly number[]): number => Math.hypot(x[x.length - 1] - x[0], y[y.length - 1] - y[0])
const radius = (flat: FlatStrip, edge: 'p' | 'q'): number =>
  (edge === 'p' ? chord(flat.px, flat.py) : chord(flat.qx, flat.qy)) / (2 * Math.sin(turnOf(flat) / 2))

const cylinder = (): FlatStrip => unroll(wrapped([level([0, 0, 0], 0.6, 0.6, Math.PI / 2), level([0, 0, 1], 0.6, 0.6, Math.PI / 2)]))
const elliptic = (): FlatStrip => unroll(wrapped([level([0, 0, 0], 2, 1, 2 * Math.PI), level([0, 0, 1], 2, 1, 2 * Math.PI)]))
const frustum = (): FlatStrip => unroll(wrapped([level([0, 0, 4], 2.5, 2.5, Math.PI), level([0, 0, 0], 4, 4, Math.PI)]))
// half way to an apex over the rim at height 2 the section is half the rim about a point half as far off
const oblique = (to: number): DevelopableStrip => wrapped([level([0, 0, 0], 1, 1, to), level([0.5, 0, 1], 0.5, 0.5, to)])
const helix = (turn?: number): DevelopableStrip => wrapped([onTangents(1), onTangents(2)], turn)
const gore = (rule: 'inscribed' | 'tangent', n: number): DevelopableStrip => wrapped(goreSeams(rule, 0.9, n, 0, Math.PI / 2))
const turnMiss = (turn: number): number => Math.abs(turnOf(unroll(helix(turn))) - (2 * Math.PI * 1) / Math.hypot(1, 0.5))

const one = (
  id: string,
  says: string,
  at: string,
  expected: number,
  tolerance: number,
  unit: string,
  ours: () => number,
): ValidationCase => ({
  id: `strip-${id}`,
  case: says,
  source: SOURCE,
  at,
  status: 'D',
  expected,
  tolerance,
  ours,
  unit,
})

const HELIX = 'tangent developable of a helix, radius 1, rise 0.5 a radian, from 1 to 2 along its tangents, one turn'
const SKEW_LINES = 0.3
const skew = (): readonly [SpaceCurve, SpaceCurve] => [
  straight([0, 0, 0], [1, 0, 0]),
  straight([0, 1.5, 0], [Math.cos(SKEW_LINES), 0, Math.sin(SKEW_LINES)]),
]
/** What the solver says of two skew edges, and only if it refuses them: the warp of the line square to both, which is the angle between them. */
function skewWarp(): number {
  const [p, q] = skew()
  if (stripBetween(p, q).kind !== 'refused') throw new Error('a sheet between skew lines')
  return warp(edgePoint(p, 0), edgePoint(q, 0))
}

const EXCESS = [
  [8, 3.7504, 7.434],
  [12, 1.6921, 3.37],
  [16, 0.957, 1.909],
  [24, 0.427, 0.853],
  [32, 0.2405, 0.481],
] as const
const STANDOFF = [
  [8, 74.15],
  [12, 31.75],
  [16, 17.63],
  [24, 7.77],
] as const

export const strips: ValidationFile = {
  bibliography:
    'Closed forms of developable surfaces: their rulings lie in planes tangent at both edges (classical), worked independently of the program. Sphere gores: width at each level as the share of the circumference there, themathdoctors.org.',
  cases: [
    one('cylinder', 'quarter cylinder of radius 600 mm between two arcs, laid flat: length', 'R pi / 2', 942.4778, 5e-5, 'mm', () => {
      const { px, py } = cylinder()
      return chord(px, py) * 1000
    }),
    one('elliptic', 'elliptic cylinder, semi-axes 2 and 1, laid flat: once round', '4 a E(e)', 9.688448220547675, 1e-8, '', () => {
      const { px, py } = elliptic()
      return chord(px, py)
    }),
    one(
      'frustum-inner',
      'frustum 5 and 8 across, 4 high, wrapped between its rims: inner radius',
      'slant by taper',
      7.120003,
      1e-6,
      '',
      () => radius(frustum(), 'p'),
    ),
    one('frustum-outer', 'the same: outer radius', 'slant by taper', 11.392005, 1e-6, '', () => radius(frustum(), 'q')),
    one('frustum-sector', 'the same: sector', 'pi D / radius', 126.40444, 1e-5, 'deg', () => (2 * turnOf(frustum())) / degree),
    one(
      'oblique-half',
      'oblique cone, radius 1, apex over the rim, height 2, wrapped between two sections: half turn',
      'integral of the turning of the elements',
      1.25262268,
      1e-7,
      'rad',
      () => turnOf(unroll(oblique(Math.PI))),
    ),
    one('oblique-quarter', 'the same: first quarter', 'integral of the turning of the elements', 0.69139124, 1e-7, 'rad', () =>
      turnOf(unroll(oblique(Math.PI / 2))),
    ),
    one(
      'oblique-element',
      'the same: element at 180 degrees',
      'distance in space',
      2.828427,
      1e-6,
      '',
      () => 2 * (oblique(Math.PI).rulings.at(-1)?.length ?? Number.NaN),
    ),
    one('helix-turn', `${HELIX}: angle laid flat`, '2 pi a / root of a^2 + b^2', 5.61985178, 1e-7, 'rad', () => turnOf(unroll(helix()))),
    one('helix-inner', 'the same: inner radius laid flat', 'root of 1.25^2 + 1', 1.60078106, 1e-7, '', () => radius(unroll(helix()), 'p')),
    one('helix-outer', 'the same: outer radius laid flat', 'root of 1.25^2 + 4', 2.35849528, 1e-7, '', () => radius(unroll(helix()), 'q')),
    one('helix-p', 'the same: first edge', 'helix of radius 1.34164079', 8.99615229, 1e-7, '', () => helix().p.length),
    one('helix-q', 'the same: second edge', 'helix of radius 2.04939015', 13.25439393, 1e-7, '', () => helix().q.length),
    one('helix-area', 'the same: area laid flat', 'angle by half the difference of squares', 8.42977768, 1e-7, '', () => {
      const strip = helix()
      return stripFacts(strip, unroll(strip)).area.flat
    }),
    one('helix-edge', 'the same: radius of the edge of regression laid flat', '1 / curvature', 1.25, 1e-7, '', () =>
      Math.sqrt(radius(unroll(helix()), 'p') ** 2 - 1),
    ),
    one('order', 'order of the unrolling, steps of 0.16 to 0.08 rad', 'log2 of the ratio of misses', 4, 0.2, '', () =>
      Math.log2(turnMiss(0.16) / turnMiss(0.08)),
    ),
    one(
      'circles',
      'two level circles set off, radii 1 and 2: angle on the second where the ruling from 0.6 rad of the first ends',
      'equal angles',
      0.6,
      1e-9,
      'rad',
      () => rulingThrough(wrapped([level([0, 0, 0], 1, 1, 1), level([0.3, 0.2, 1], 2, 2, 1)]), 'p', 0.6).t / 2,
    ),
    one(
      'skew',
      'two skew straight edges are refused: warp of the line square to both',
      'angle between the edges, F = -L sin B',
      SKEW_LINES,
      1e-12,
      'rad',
      skewWarp,
    ),
    one(
      'sinusoidal',
      'sinusoidal gore of a sphere of radius 900 mm, n = 12: width at the equator',
      '2 pi R / n',
      (2 * Math.PI * 900) / 12,
      1e-9,
      'mm',
      () => 2000 * sinusoidalHalfWidth(0.9, 12, 0),
    ),
    one(
      'inscribed',
      'gore wrapped between two meridians, n = 12: half width at the equator',
      'R sin(pi / n)',
      900 * Math.sin(Math.PI / 12),
      1e-9,
      'mm',
      () => 500 * (gore('inscribed', 12).rulings.at(-1)?.length ?? Number.NaN),
    ),
    one(
      'inscribed-rule',
      'the same by rule at 60 degrees of latitude',
      'R cos(phi) sin(pi / n)',
      450 * Math.sin(Math.PI / 12),
      1e-9,
      'mm',
      () => 1000 * inscribedHalfWidth(0.9, 12, Math.PI / 3),
    ),
    one(
      'inscribed-mid',
      'the same: length of the mid line from pole to equator, laid flat',
      'quarter of an ellipse of semi-axes R and R cos(pi / n), a E(e)',
      1389.7354472,
      1e-4,
      'mm',
      () => {
        const { px, py, qx, qy } = unroll(gore('inscribed', 12))
        return (
          500 *
          chord(
            px.map((x, k) => x + qx[k]),
            py.map((y, k) => y + qy[k]),
          )
        )
      },
    ),
    ...EXCESS.flatMap(([n, whole, most]) => [
      one(
        `excess-${n}`,
        `sinusoidal gore, n = ${n}: flat edge longer than its meridian by`,
        'complete elliptic integral',
        whole,
        1e-4,
        '%',
        () => 100 * sinusoidalExcess(n).whole,
      ),
      one(
        `excess-most-${n}`,
        `the same at the pole, n = ${n}`,
        'root of 1 + (pi / n)^2, less 1',
        most,
        1e-3,
        '%',
        () => 100 * sinusoidalExcess(n).most,
      ),
    ]),
    ...STANDOFF.map(([n, expected]) =>
      one(
        `standoff-${n}`,
        `gore wrapped to touch a sphere of radius 900 mm along its mid line, n = ${n}: seam stands off by`,
        'R (1 / cos(pi / n) - 1)',
        expected,
        0.05,
        'mm',
        () => 1000 * distanceInside(gore('tangent', n), (point) => length(point) - 0.9).depth,
      ),
    ),
  ],
}
