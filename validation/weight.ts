/** Statics of masses on a ball and axles, slings, and what people may lift: closed forms and printed charts. */
import { handLimit, handLimitInPounds, legTension, pickLoad, teamLimit } from '../src/derive/weight/lift.formulas.js'
import { centre, heightError, hitchLoad, hitchShare, onAxles, rightWheel, stability } from '../src/derive/weight/weight.formulas.js'
import type { ValidationCase, ValidationFile } from './case.js'

/** kg at m behind the ball */
const HEAP = [
  [420, 2.6],
  [380, 2.75],
  [150, 2.8],
  [160, 1.6],
  [140, 4.3],
  [120, 3.0],
  [60, 0.9],
] as const
const W = HEAP.reduce((sum, [m]) => sum + m, 0)
const M = HEAP.reduce((sum, [m, x]) => sum + m * x, 0)
const x_c = (): number => centre.eval({ M, W })

const statics = (
  id: string,
  what: string,
  at: string,
  expected: number,
  unit: string,
  ours: () => number,
  tolerance = 1e-6 * expected,
): ValidationCase => ({
  ...{ id: `weight-${id}`, case: what, source: 'statics', at, status: 'D', expected, tolerance, ours, unit },
})

const axle = (share: number, xa: number, tongue: number): readonly ValidationCase[] => [
  statics(
    `tongue-${share}`,
    `load on the ball of seven masses with the axle at ${xa} m`,
    `${share} % of 1430`,
    tongue,
    'kg',
    () => hitchLoad.eval({ W, x_c: x_c(), b: 0, x_a: xa }),
    2e-4 * tongue,
  ),
  statics(
    `share-${share}`,
    'its share of the whole',
    'the share asked for',
    share / 100,
    'of the weight',
    () => hitchShare.eval({ T: hitchLoad.eval({ W, x_c: x_c(), b: 0, x_a: xa }), W }),
    2e-6,
  ),
]

const chart = (deg: number, expected: number): ValidationCase => ({
  id: `sling-${deg}`,
  case: `tension of a sling at ${deg} degrees from level over the load it holds straight up`,
  source: 'rigging charts following ASME B30.9',
  at: `table of load factors, ${deg} degrees`,
  status: 'R',
  expected,
  tolerance: 0.001 * expected,
  ours: () => legTension.eval({ V: 1, a: Math.cos((deg * Math.PI) / 180), e: 0, h: Math.sin((deg * Math.PI) / 180) }),
  unit: 'of the load',
})

const LB = 0.45359237
const INCH = 0.0254
const hooked = (a: number, b: number): number => legTension.eval({ V: pickLoad.eval({ m: 600, g: 10, a, b }), a, e: 0, h: 1.5 })

export const weight: ValidationFile = {
  bibliography:
    'Statics. Rigging charts following ASME B30.9, as printed by makers of slings. NIOSH publication 94-110, Applications Manual for the Revised NIOSH Lifting Equation, revised September 2021. Team handling: HSE L23, from memory.',
  cases: [
    statics('centre', 'centre of seven masses behind the ball', '3829 / 1430', 2.677622, 'm', x_c),
    ...axle(10, 2.975136, 143),
    ...axle(12, 3.042753, 171.6),
    ...axle(15, 3.150144, 214.5),
    statics('axles', 'what is left on the axle with 12 % on the ball', '1430 - 171.6', 1258.4, 'kg', () => onAxles.eval({ W, T: 171.6 })),
    statics(
      'wheel',
      'right wheel of a tandem, 2200 kg whose centre is 20 mm right, track 2 m, 1000 kg on the axle',
      '500 + 2200 x 0.02 / 4',
      511,
      'kg',
      () => rightWheel.eval({ P: 1000, W: 2200, y_c: 0.02, n: 2, t: 2 }),
    ),
    statics('stability', 'static stability at track 2 m and height 1 m', 'T / 2h', 1, 'g', () =>
      stability.eval({ t: 2, z_c: 0.5, z_g: -0.5 }),
    ),
    statics(
      'height-error',
      'error of the ball that moves 50 kg to the rear of two axles 0.8 m apart, 4 m behind it, 200 kN/m each',
      'x_1 3.6, x_2 4.4: 50 g / (200e3 (4.4 x 8 / 32.32 - 1))',
      0.0275131,
      'm',
      () => heightError.eval({ R: 1050, P: 1000, g: 9.80665, k: 200e3, x: 4.4, S_1: 8, S_2: 32.32 }),
      1e-6,
    ),
    ...(
      [
        [90, 1000],
        [75, 1035],
        [60, 1155],
        [55, 1220],
        [50, 1305],
        [45, 1414],
        [40, 1555],
        [35, 1743],
        [30, 2000],
      ] as const
    ).map(([deg, thousandths]) => chart(deg, thousandths / 1000)),
    {
      ...chart(60, 1154),
      id: 'sling-two-legs',
      case: 'each of two legs at 60 degrees under 2000 lb',
      at: 'worked example of the chart',
      unit: 'lb',
      ours: () => legTension.eval({ V: 1000, a: 0.5, e: 0, h: Math.sqrt(0.75) }),
    },
    statics(
      'leg-fore',
      'nearer leg of 6000 N hung 1 and 2 m from its centre, hook at 1.5 m',
      'W x_2 / (x_1 + x_2) sqrt(x_1^2 + h^2) / h',
      4807.4,
      'N',
      () => hooked(1, 2),
      0.5,
    ),
    statics('leg-aft', 'the other leg', 'the same with the distances exchanged', 3333.3, 'N', () => hooked(2, 1), 0.4),
    ...(
      [
        ['origin', 10, 22, 0.95, 34.814],
        ['destination', 20, 59, 1, 15.253],
      ] as const
    ).map(
      ([id, H, V, CM, pounds]): ValidationCase => ({
        id: `hand-${id}`,
        case: `mass one person may lift in the package inspection, ${id}: hands at ${H} and ${V} in, raised 37 in`,
        source: 'NIOSH 94-110',
        at: 'example 4, pages 44 to 46, recomputed in full (34.9 and 15.2 printed, of rounded multipliers)',
        status: 'R',
        expected: pounds,
        tolerance: 0.001,
        ours: () => handLimitInPounds.eval({ H: H * INCH, V: V * INCH, D: 37 * INCH, A: 0, FM: 0.88, CM }) / LB,
        unit: 'lb',
      }),
    ),
    {
      ...{ id: 'hand-constant', case: 'mass one person may lift with every multiplier at its best', source: 'NIOSH 94-110', at: 'page 7' },
      ...{
        status: 'R',
        expected: 23,
        tolerance: 1e-9,
        unit: 'kg',
        ours: () => handLimit.eval({ H: 0.25, V: 0.75, D: 0.25, A: 0, FM: 1, CM: 1 }),
      },
    },
    {
      ...{
        id: 'hand-team',
        case: 'what two people may lift together, by what one may',
        source: 'HSE L23',
        at: 'two thirds of the sum; from memory',
      },
      ...{ status: 'M', expected: 4 / 3, tolerance: 1e-9, unit: 'of one', ours: () => teamLimit.eval({ m_1: 1 }) },
    },
  ],
}
