/** Growth with warmth between unlike metals, from published expansion coefficients. */
import { restrainedStress, thermalGrowth } from '../src/derive/shell/formulas/surface.formulas.js'
import type { ValidationCase, ValidationFile } from './case.js'
import { alloy, inch, psi, si } from './case.js'

const SOURCE = 'Aluminum Association table; Callister'
const AT = 'expansion 68 to 212 F; A36 steel 6.5e-6 per F, Callister table B.6; worked by hand'
const steel = si('6.5e-6 /F', 'expansion')
const grow = (alpha: number): number => thermalGrowth.eval({ alpha, L: 240 * inch, dT: 20 }) / inch

const against = (
  [
    ['6061-T6', 0.057],
    ['clad 2024-T3', 0.0553],
    ['3003-H14', 0.0553],
    ['5052-H34', 0.0579],
  ] as const
).map(
  ([name, expected]): ValidationCase => ({
    id: `warmth-${name}`,
    case: `${name} outgrows A36 steel over 240 in, 36 F warmer`,
    source: SOURCE,
    at: AT,
    status: 'D',
    expected,
    tolerance: 1e-4,
    ours: () => grow(alloy(name).cte.value) - grow(steel),
    unit: 'in',
  }),
)

export const warmth: ValidationFile = {
  bibliography:
    'Aluminum Association, typical physical properties of wrought alloys; W. D. Callister, Materials Science and Engineering, appendix B.',
  cases: [
    ...against,
    {
      id: 'warmth-held',
      case: '5052 wholly held, 36 F warmer',
      source: SOURCE,
      at: 'modulus 10.1 Msi, expansion 13.2e-6 per F; worked by hand',
      status: 'D',
      expected: 4800,
      tolerance: 1,
      ours: () => restrainedStress.eval({ E: alloy('5052-H32').E.value, alpha: alloy('5052-H32').cte.value, dT: 20 }) / psi,
      unit: 'psi',
    },
    {
      id: 'warmth-6061',
      case: 'scale of a 6061 hole pattern per degree',
      source: SOURCE,
      at: 'expansion 13.1e-6 per F',
      status: 'D',
      expected: 2.36e-5,
      tolerance: 5e-8,
      ours: () => alloy('6061-T6').cte.value,
      unit: 'per C',
    },
    {
      id: 'warmth-2024',
      case: 'expansion of 2024 against a second table',
      source: 'Callister, Materials Science and Engineering',
      at: 'appendix B; the two tables differ by 1.6 %',
      status: 'R2',
      expected: 12.7e-6,
      tolerance: 0.02 * 12.7e-6,
      ours: () => alloy('clad 2024-T3').cte.value / 1.8,
      unit: 'per F',
    },
  ],
}
