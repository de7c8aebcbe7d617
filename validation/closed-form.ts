/** Geometry with known answers: arcs, ellipses, cones, offset layers, wrapped sheets. */
import { lapDifference, offsetGirth, wrapRadius } from '../src/derive/shell/formulas/surface.formulas.js'
import { developedAngle, elementLength, frustumPattern } from '../src/maths/cone.js'
import { outlineArea, roundedRectangle } from '../src/maths/outline.js'
import { ellipsePerimeter, polylineLength } from '../src/maths/quadrature.js'
import type { TangentChain } from '../src/maths/tangent-chain.js'
import { at, buildChain, girthAtOffset } from '../src/maths/tangent-chain.js'
import type { ValidationCase, ValidationFile } from './case.js'
import { degree, inch, ksi, lbf, psi } from './case.js'

const SOURCE = 'closed form'
const QUARTER = Math.PI / 2
const quarter = (radius: number): TangentChain =>
  buildChain({ y: 0, z: 0, heading: 0 }, [{ kind: 'arc', name: 'quarter', radius, to: QUARTER }])

function shortfall(steps: number): number {
  const chain = quarter(0.6)
  const points = Array.from({ length: steps + 1 }, (_, i) => at(chain, (chain.length * i) / steps)).map(({ y, z }) => [y, z] as const)
  return 1 - polylineLength(points) / chain.length
}
const chords = (
  [
    [9, 1.26876e-3],
    [18, 3.1728e-4],
    [45, 5.07688e-5],
    [90, 1.26923e-5],
  ] as const
).map(
  ([steps, expected]): ValidationCase => ({
    id: `chord-${steps}`,
    case: `how much ${steps} chords fall short of a quarter circle`,
    source: SOURCE,
    at: '1 - sin(x/2)/(x/2) for the angle x of a step',
    status: 'D',
    expected,
    tolerance: 1e-8,
    ours: () => shortfall(steps),
    unit: '',
  }),
)

// grain-direction yields and moduli as MIL-HDBK-5J prints them; 3003 is typical
const WRAPS = [
  ['clad 2024-T3', 10.5, 44, [97, 121, 152]],
  ['6061-T6', 9.9, 36, [112, 140, 175]],
  ['5052-H32', 10.1, 23, [178, 223, 279]],
  ['3003-H14', 10, 21, [194, 242, 302]],
] as const
const wraps = WRAPS.flatMap(([name, Msi, yieldKsi, radii]) =>
  [0.032, 0.04, 0.05].map(
    (t, i): ValidationCase => ({
      id: `wrap-${name}-${t}`,
      case: `elastic wrap radius, ${name}, ${t.toFixed(3)} in`,
      source: SOURCE,
      at: 'E t / 2 Fty, long-grain yield',
      status: 'D',
      expected: radii[i] as number,
      tolerance: 0.51,
      ours: () => wrapRadius.eval({ E: Msi * 1000 * ksi, t: t * inch, F_ty: yieldKsi * ksi }) * 1000,
      unit: 'mm',
    }),
  ),
)

const SCALENE = { radius: 1, offset: 1, height: 2 }
const OBLIQUE = [
  ['element at 0 degrees', 2, () => elementLength(SCALENE, 0)],
  ['element at 90 degrees', 2.44949, () => elementLength(SCALENE, QUARTER)],
  ['element at 180 degrees', 2.828427, () => elementLength(SCALENE, Math.PI)],
] as const
const TURNS = [
  ['half', Math.PI, 1.25262268],
  ['first quarter', QUARTER, 0.69139124],
] as const
const cones: readonly ValidationCase[] = [
  ...OBLIQUE.map(
    ([says, expected, ours]): ValidationCase => ({
      id: `oblique ${says}`,
      case: `oblique cone, radius 1, apex over the rim, height 2: ${says}`,
      source: SOURCE,
      at: 'distance in space',
      status: 'D',
      expected,
      tolerance: 1e-6,
      ours,
      unit: '',
    }),
  ),
  ...TURNS.map(
    ([says, to, expected]): ValidationCase => ({
      id: `oblique ${says}`,
      case: `oblique cone laid flat: angle of the ${says}`,
      source: SOURCE,
      at: 'integral of the turning of the elements',
      status: 'D',
      expected,
      tolerance: 1e-7,
      ours: () => developedAngle(SCALENE, 0, to),
      unit: 'rad',
    }),
  ),
]

const FRUSTUM = [
  ['slant', 4.272, 0.00005, 'in', () => frustumPattern(5, 8, 4).slant],
  ['inner radius', 7.12, 0.01, 'in', () => frustumPattern(5, 8, 4).innerRadius],
  ['outer radius', 11.39, 0.01, 'in', () => frustumPattern(5, 8, 4).outerRadius],
  ['sector', 126.4, 0.05, 'deg', () => frustumPattern(5, 8, 4).sector / degree],
] as const
const frustum = FRUSTUM.map(
  ([says, expected, tolerance, unit, ours]): ValidationCase => ({
    id: `frustum-${says}`,
    case: `net of a frustum, 5 and 8 in across, 4 in high: ${says}`,
    source: 'CEEMRR, Drawing nets 6',
    at: 'Net of a frustum',
    status: 'R',
    expected,
    tolerance,
    ours,
    unit,
  }),
)

const SHEET = 0.001016
const perPitch = (): number => lapDifference.eval({ theta: 25.4 / 900, t_1: SHEET, t_2: SHEET }) * 1000
const one = (
  id: string,
  says: string,
  how: string,
  expected: number,
  tolerance: number,
  unit: string,
  ours: () => number,
): ValidationCase => ({ id, case: says, source: SOURCE, at: how, status: 'D', expected, tolerance, ours, unit })

export const closedForm: ValidationFile = {
  bibliography:
    'Closed forms, worked independently of the program. CEEMRR, Drawing nets 6, "Net of a frustum". Inch and pound: international agreement of 1959.',
  cases: [
    one(
      'cylinder',
      'flat length of a quarter cylinder of radius 600 mm',
      'R pi / 2',
      942.4778,
      5e-5,
      'mm',
      () => quarter(0.6).length * 1000,
    ),
    one('chord-order', 'order of the chord error, 45 to 90 chords', 'log2 of the ratio', 2, 0.02, '', () =>
      Math.log2(shortfall(45) / shortfall(90)),
    ),
    ...chords,
    one('ellipse', 'perimeter of an ellipse, semi-axes 2 and 1', '4 a E(e)', 9.688448220547675, 1e-9, '', () => ellipsePerimeter(2, 1)),
    ...frustum,
    ...cones,
    ...wraps,
    one(
      'lap-quarter',
      'outer sheet longer round 90 degrees, both 1.016 mm',
      'theta (t1 + t2) / 2',
      1.5959,
      1e-4,
      'mm',
      () => lapDifference.eval({ theta: QUARTER, t_1: SHEET, t_2: SHEET }) * 1000,
    ),
    one('lap-pitch', 'outer sheet longer in one 25.4 mm pitch at radius 900 mm', 'theta (t1 + t2) / 2', 0.02867, 5e-6, 'mm', perPitch),
    one('lap-row', 'outer sheet longer after 40 pitches at radius 900 mm', 'theta (t1 + t2) / 2', 1.147, 1e-4, 'mm', () => perPitch() * 40),
    one(
      'lap-chain',
      'the same round 90 degrees, from the girths of two layers of the section',
      'difference of mid-surface girths',
      1.5959,
      1e-4,
      'mm',
      () =>
        (girthAtOffset(quarter(0.9), quarter(0.9).length, SHEET / 2) - girthAtOffset(quarter(0.9), quarter(0.9).length, (3 * SHEET) / 2)) *
        1000,
    ),
    one(
      'offset',
      'girth 50 mm inside a quarter circle of radius 600 mm',
      '550 pi / 2',
      (550 * Math.PI) / 2,
      1e-9,
      'mm',
      () => offsetGirth.eval({ G: quarter(0.6).length, d: 0.05, theta: QUARTER }) * 1000,
    ),
    one(
      'rounded-corner',
      'area of a 520 x 510 window with 75 mm corners',
      'w h - (4 - pi) r^2',
      520 * 510 - (4 - Math.PI) * 75 ** 2,
      1e-6,
      'mm2',
      () => outlineArea(roundedRectangle(0, 0, 520, 510, 75)),
    ),
    one('unit-ksi', '1 ksi', 'pound, inch and standard gravity, exact', 6.894757, 5e-7, 'MPa', () => (1000 * psi) / 1e6),
    one('unit-lbf', '1 lbf', 'pound and standard gravity, exact', 4.448222, 5e-7, 'N', () => lbf),
  ],
}
