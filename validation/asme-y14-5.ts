/** Position tolerances of matched holes, and the clearance a long row of pairs needs. */
import { clearanceNeeded, fixedTolerance, floatingTolerance } from '../src/derive/shell/formulas/fit.formulas.js'
import type { ValidationCase, ValidationFile } from './case.js'
import { inch } from './case.js'

const ASME = 'ASME Y14.5'
const SCHOLZ = 'Scholz, M&CT-TECH-99-025'

const rows = (
  [
    [1, 3.4616],
    [10, 4.5936],
    [50, 5.247],
    [100, 5.5048],
    [200, 5.751],
  ] as const
).map(
  ([K, expected]): ValidationCase => ({
    id: `scholz-${K}`,
    case: `clearance for ${K} hole pair${K > 1 ? 's' : ''} at 95 %, in sigmas`,
    source: SCHOLZ,
    at: 'independent pairs, closed form by hand',
    status: 'D',
    expected,
    tolerance: 1e-4,
    ours: () => clearanceNeeded.eval({ sigma: 1, p: 0.95, K }),
    unit: 'sigma',
  }),
)

export const asmeY145: ValidationFile = {
  bibliography:
    'ASME Y14.5, Dimensioning and Tolerancing, appendix B; F. W. Scholz, Hole Alignment Tolerance Stacking Issues, Boeing M&CT-TECH-99-025, 1999.',
  cases: [
    {
      id: 'asme-fixed-m6',
      case: 'M6 in a 6.44 mm hole, fixed fastener, each part',
      source: ASME,
      at: 'appendix B',
      status: 'R',
      expected: 0.22,
      tolerance: 1e-9,
      ours: () => fixedTolerance.eval({ H: 0.00644, F: 0.006 }) * 1000,
      unit: 'mm',
    },
    {
      id: 'asme-floating-m6',
      case: 'M6 in a 6.44 mm hole, floating fastener',
      source: ASME,
      at: 'appendix B',
      status: 'M',
      expected: 0.44,
      tolerance: 1e-9,
      ours: () => floatingTolerance.eval({ H: 0.00644, F: 0.006 }) * 1000,
      unit: 'mm',
    },
    {
      id: 'asme-rivet',
      case: '1/8 in rivet in a no. 30 hole (0.1285 in), floating',
      source: ASME,
      at: 'appendix B, worked by hand',
      status: 'D',
      expected: 0.0035,
      tolerance: 1e-9,
      ours: () => floatingTolerance.eval({ H: 0.1285 * inch, F: 0.125 * inch }) / inch,
      unit: 'in',
    },
    {
      id: 'asme-clamp',
      case: '3/32 in temporary fastener (0.0938 in) in a no. 40 hole (0.098 in), floating',
      source: ASME,
      at: 'appendix B, worked by hand',
      status: 'D',
      expected: 0.0042,
      tolerance: 1e-9,
      ours: () => floatingTolerance.eval({ H: 0.098 * inch, F: 0.0938 * inch }) / inch,
      unit: 'in',
    },
    ...rows,
    {
      id: 'scholz-punch',
      case: 'clearance for 100 pairs at 95 %, sigma 0.05 mm',
      source: SCHOLZ,
      at: 'independent pairs, closed form by hand; 20,000 trials gave 0.2755',
      status: 'D',
      expected: 0.2752,
      tolerance: 5e-5,
      ours: () => clearanceNeeded.eval({ sigma: 5e-5, p: 0.95, K: 100 }) * 1000,
      unit: 'mm',
    },
  ],
}
