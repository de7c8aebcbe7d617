/** Rivet lengths and an empirical bend allowance from the Navy's structural course. */

import { bendAllowanceNavy } from '../src/derive/common/bending.formulas.js'
import { rivetLengthNeeded } from '../src/derive/common/lengths.formulas.js'
import { solidRivet } from '../src/derive/common/rivet-stock.js'
import type { ValidationCase, ValidationFile } from './case.js'
import { degree, inch } from './case.js'

const SOURCE = 'NAVEDTRA 14018'
const LENGTHS = [
  [0.064, '1/8', 1 / 8, 0.2515, 4],
  [0.08, '1/8', 1 / 8, 0.2675, 4.5],
  [0.09, '5/32', 5 / 32, 0.3244, 5],
  [0.126, '3/16', 3 / 16, 0.4073, 6.5],
] as const

const lengths = LENGTHS.flatMap(([grip, name, diameter, needed, sixteenths]): ValidationCase[] => [
  {
    id: `navy-needed-${name}-${grip}`,
    case: `length needed, ${name} in rivet, grip ${grip.toFixed(3)} in`,
    source: SOURCE,
    at: 'figure 13-43, worked by hand',
    status: 'D',
    expected: needed,
    tolerance: 5e-5,
    ours: () => rivetLengthNeeded.eval({ G: grip * inch, D: diameter * inch }) / inch,
    unit: 'in',
  },
  {
    id: `navy-bought-${name}-${grip}`,
    case: `nearest stock length, ${name} in rivet, grip ${grip.toFixed(3)} in`,
    source: SOURCE,
    at: 'figure 13-43, worked by hand',
    status: 'D',
    expected: sixteenths,
    tolerance: 1e-9,
    ours: () => solidRivet(diameter * inch, grip * inch, 'nearest').length.value / (inch / 16),
    unit: 'sixteenths of an inch',
  },
])

export const navedtra: ValidationFile = {
  bibliography: 'Naval Education and Training, NAVEDTRA 14018, Aviation Structural Mechanic, nonresident training course.',
  cases: [
    ...lengths,
    {
      id: 'navy-allowance',
      case: 'empirical bend allowance, 0.040 in, inside radius 0.16 in, 90 degrees',
      source: SOURCE,
      at: 'page 13-19, worked by hand',
      status: 'D',
      expected: 0.2772,
      tolerance: 5e-6,
      ours: () => bendAllowanceNavy.eval({ R: 0.16 * inch, t: 0.04 * inch, A: 90 * degree }) / inch,
      unit: 'in',
    },
  ],
}
