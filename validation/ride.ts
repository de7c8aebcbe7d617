/** Roughness, weightings and springs: printed matrices and filters, and closed forms worked out by hand. */
import { shakingOn } from '../src/derive/ride/response.js'
import {
  armAngle,
  bodyFrequency,
  bushRate,
  bushShear,
  coldShrink,
  compressionModulus,
  cornerCircle,
  cornerHeight,
  roadSpeedDensity,
  wheelRate,
  whiteBodyRms,
} from '../src/derive/ride/ride.formulas.js'
import { densityRoughness, goldenStep, roughnessOf, sineRoughness } from '../src/derive/ride/roads.js'
import { weighting } from '../src/derive/ride/weighting.js'
import type { Status } from '../src/tables/datum.js'
import type { ValidationCase, ValidationFile } from './case.js'
import { degree } from './case.js'

const WORLD_BANK = 'World Bank technical paper 46 (Sayers, Gillespie, Paterson 1986)'
const ISO2631 = 'ISO 2631-1, table 3'

interface About {
  readonly source: string
  readonly at: string
  readonly status: Status
  readonly unit: string
}
const one = (about: About, id: string, what: string, expected: number, tolerance: number, ours: () => number): ValidationCase => ({
  ...about,
  id: `ride-${id}`,
  case: what,
  expected,
  tolerance,
  ours,
})

const printed: About = { source: WORLD_BANK, at: 'state transition over 250 mm, as five public codes carry it', status: 'R2', unit: '' }
const { step, held } = goldenStep(0.25)
const golden: readonly ValidationCase[] = (
  [
    [0, 0, 0.9966071],
    [0, 1, 0.01091514],
    [1, 0, -0.5563044],
    [1, 1, 0.9438768],
    [2, 2, 0.7508714],
    [3, 0, 3.335013],
    [3, 2, -39.12762],
    [3, 3, 0.4347564],
  ] as const
).map(([i, j, expected]) =>
  one(
    printed,
    `step-${i + 1}${j + 1}`,
    `golden car, step ${i + 1}${j + 1}`,
    expected,
    2e-6 * Math.max(1, Math.abs(expected)),
    () => step[i][j],
  ),
)
const forced: readonly ValidationCase[] = [0.005476107, 1.388776, 0.2275968, 35.79262].map((expected, i) =>
  one(printed, `held-${i + 1}`, `golden car, held slope ${i + 1}`, expected, 5e-5, () => held[i]),
)

const rectified: About = {
  source: 'random and steady vibration',
  at: 'mean of a rectified sine, 2 / pi times the answer over the speed',
  status: 'D',
  unit: 'm/km',
}
const sines: readonly ValidationCase[] = (
  [
    [2, false, 3.0671],
    [2.4, false, 2.7733],
    [10, false, 0.5039],
    [15, false, 0.4073],
    [2.4, true, 2.7241],
    [10, true, 0.5034],
    [15, true, 0.4071],
  ] as const
).map(([wavelength, averaged, expected]) =>
  one(
    rectified,
    `sine-${wavelength}${averaged ? '-foot' : ''}`,
    `roughness of a 1 mm sine of ${wavelength} m${averaged ? ', 250 mm foot' : ''}`,
    expected,
    1e-3 * expected,
    () => 1000 * sineRoughness(1e-3, wavelength, averaged),
  ),
)

const classes: readonly ValidationCase[] = (
  [
    ['A', 2.1726],
    ['B', 4.3451],
    ['C', 8.6902],
    ['D', 17.38],
  ] as const
).map(([road, expected]) =>
  one(
    {
      source: 'ISO 8608, mean of the class (from memory), with the golden car',
      at: 'root of 2 / pi times sigma over the speed; literature says 2.21 root C (from memory)',
      status: 'D',
      unit: 'm/km',
    },
    `class-${road}`,
    `roughness of road class ${road}`,
    expected,
    0.005 * expected,
    () => 1000 * densityRoughness(roughnessOf(road).mean),
  ),
)

const felt: readonly ValidationCase[] = (
  [
    ['Wk', 1, 0.482],
    ['Wk', 2, 0.531],
    ['Wk', 4, 0.967],
    ['Wk', 5, 1.039],
    ['Wk', 8, 1.036],
    ['Wk', 10, 0.988],
    ['Wk', 20, 0.636],
    ['Wk', 40, 0.314],
    ['Wk', 80, 0.132],
    ['Wd', 1, 1.011],
    ['Wd', 2, 0.89],
    ['Wd', 4, 0.512],
  ] as const
).map(([which, band, expected]) => {
  // a third-octave band's exact frequency is a power of ten
  const exact = 10 ** (Math.round(10 * Math.log10(band)) / 10)
  return one(
    { source: ISO2631, at: 'from memory; filters of ISO 8041 as an instrument manual quotes them', status: 'M', unit: '' },
    `${which}-${band}`,
    `${which} at ${band} Hz`,
    expected,
    0.015 * expected,
    () => weighting(which, exact),
  )
})

const springs = { K: 2500, R: 0.15, F: 6000 }
const rest = (): number => armAngle.eval({ ...springs, a_0: 22.5 * degree })
const arm = (unit: string): About => ({
  source: 'statics of a swing arm',
  at: 'virtual work; by differences of the load too',
  status: 'D',
  unit,
})
const rubber = (unit: string, at = 'worked out by hand'): About => ({ source: 'bonded rubber', at, status: 'D', unit })
const S0 = (): number => roadSpeedDensity.eval({ G: 64e-6, n_0: 0.1, V: 25 })
const quarter = { m_s: 500, m_u: 60, k_s: 45e3, c: 2500, k_t: 350e3 }

export const ride: ValidationFile = {
  bibliography:
    'M. W. Sayers, T. D. Gillespie, W. D. O. Paterson, Guidelines for Conducting and Calibrating Road Roughness Measurements, World Bank technical paper 46 (1986); ISO 8608; ISO 2631-1 with ISO 8041; an engineering handbook page on bonded bushes; A. N. Gent and P. B. Lindley as quoted in SV-JME 60 (2014) 506.',
  cases: [
    ...golden,
    ...forced,
    ...sines,
    ...classes,
    ...felt,
    one(arm('deg'), 'arm', 'arm of 150 mm on 2500 N m a radian from 22.5 degrees under 6 kN', 1.88468, 2e-5, () => rest() / degree),
    one(arm('N/m'), 'rate', 'rate of that wheel', 109914.5, 1, () => wheelRate.eval({ ...springs, a: rest() })),
    one(arm('mm'), 'travel', 'its travel from no load', 52.469, 1e-3, () => 150 * (Math.sin(22.5 * degree) - Math.sin(rest()))),
    one(arm('Hz'), 'hertz', 'frequency of what it carries', 2.1332, 1e-4, () =>
      bodyFrequency.eval({ k: wheelRate.eval({ ...springs, a: rest() }), m: 6000 / 9.80665 }),
    ),
    one(rubber('N m/rad'), 'bush', 'bush of 25 and 50 by 60 mm, shear 0.64 MPa', 100.531, 1e-3, () =>
      bushRate.eval({ G: 0.64e6, L: 0.06, D_i: 0.025, D_o: 0.05 }),
    ),
    one(
      rubber('MPa'),
      'shear',
      'its shear at 10 degrees',
      0.29787,
      1e-5,
      () => bushShear.eval({ T: bushRate.eval({ G: 0.64e6, L: 0.06, D_i: 0.025, D_o: 0.05 }) * 10 * degree, L: 0.06, D_i: 0.025 }) / 1e6,
    ),
    one(rubber('MPa', 'Gent and Lindley'), 'block', 'block of 2.2 MPa, shape 1', 5.412, 1e-9, () =>
      compressionModulus.eval({ E_0: 2.2, k: 0.73, S: 1 }),
    ),
    one(
      rubber('mm', 'geometry'),
      'corner',
      'corner between a tube of 70 and a bar of 40',
      29.4975,
      1e-4,
      () => 1000 * cornerHeight.eval({ S_o: 0.07, S_i: 0.04 }),
    ),
    one(
      rubber('mm', 'geometry'),
      'free',
      'cord that lies in it free',
      24.4365,
      1e-4,
      () => 1000 * cornerCircle.eval({ H: cornerHeight.eval({ S_o: 0.07, S_i: 0.04 }) }),
    ),
    one(
      rubber('mm', 'geometry'),
      'corner-60',
      'corner between a tube of 60 and a bar of 32',
      26.4264,
      1e-4,
      () => 1000 * cornerHeight.eval({ S_o: 0.06, S_i: 0.032 }),
    ),
    one(
      rubber('%', 'expansion 2.2e-4 per K, from memory'),
      'cold',
      'shrink of rubber from 23 to -70 C',
      2.05,
      0.1,
      () => 100 * coldShrink.eval({ T_0: 296.15, T_g: 203.15, T_1: 203.15, c_w: 2.2e-4, c_g: 0.7e-4 }),
    ),
    one(
      { source: 'random vibration', at: '4 pi^2 G n0^2 V', status: 'D', unit: 'm2/s' },
      'density',
      'road speed density, 64e-6 m3 at 25 m/s',
      6.316547e-4,
      1e-9,
      S0,
    ),
    one(
      { source: 'random vibration', at: 'closed form under white road speed', status: 'D', unit: 'm/s2' },
      'white',
      'body of a quarter car on it',
      0.916088,
      1e-4,
      () => whiteBodyRms.eval({ S_0: S0(), ...quarter }),
    ),
    one(
      {
        source: 'random vibration',
        at: 'the closed form again, by sums between 0.5 and 80 Hz, which leave out 2 %',
        status: 'D',
        unit: 'm/s2',
      },
      'summed',
      'the same by sums',
      0.916088,
      0.02,
      () => shakingOn({ body: 500, wheel: 60, spring: 45e3, damper: 2500, tyre: 350e3, loss: 0 }, S0()).body,
    ),
  ],
}
