/** Whether matched holes meet: position tolerances and the clearance a row of pairs needs. m. */
import { formula } from '../../../quantity/formula.js'

const inch = 0.0254

export const floatingTolerance = formula({
  id: 'shell.floating-tolerance',
  says: 'Position tolerance a part, fastener floating in both holes',
  symbol: 'T',
  unit: 'm',
  inputs: { H: 'm', F: 'm' },
  where: { H: 'smallest hole', F: 'largest shank' },
  shows: 'H - F',
  eval: ({ H, F }) => H - F,
  source: { ref: 'ASME Y14.5', at: 'appendix B, floating fastener H = F + T' },
  examples: [{ given: { H: 0.1285 * inch, F: 0.125 * inch }, gives: 0.0035 * inch, within: 1e-12, from: 'by hand' }],
})

export const fixedTolerance = formula({
  id: 'shell.fixed-tolerance',
  says: 'Position tolerance a part, fastener fixed in one',
  symbol: 'T',
  unit: 'm',
  inputs: { H: 'm', F: 'm' },
  where: { H: 'smallest clearance hole', F: 'largest shank' },
  shows: '(H - F) / 2',
  eval: ({ H, F }) => (H - F) / 2,
  source: { ref: 'ASME Y14.5', at: 'appendix B, fixed fastener H = F + 2T, projected zone' },
  examples: [{ given: { H: 0.00644, F: 0.006 }, gives: 0.00022, within: 1e-12, from: 'by hand: M6 in 6.44 mm' }],
})

/** Clearance (hole less shank) at which a row of K pairs all meets with probability p; each part normal, sigma an axis. */
export const clearanceNeeded = formula({
  id: 'shell.clearance-needed',
  says: 'Clearance a row of hole pairs needs',
  symbol: 'c',
  unit: 'm',
  inputs: { sigma: 'm', p: '1', K: '1' },
  where: { sigma: 'position scatter of each part, an axis', p: 'chance that all meet', K: 'hole pairs' },
  shows: '2 * sigma * sqrt(-ln(1 - p^(1 / K)))',
  eval: ({ sigma, p, K }) => 2 * sigma * Math.sqrt(-Math.log(1 - p ** (1 / K))),
  valid: { p: [0.01, 0.9999], K: [1, 1e6] },
  source: {
    ref: 'Scholz, Hole Alignment Tolerance Stacking Issues, Boeing M&CT-TECH-99-025',
    at: 'model of independent pairs; closed form by hand',
  },
  examples: [{ given: { sigma: 5e-5, p: 0.95, K: 100 }, gives: 2.752e-4, within: 1e-7, from: 'by hand: 5.5048 x 0.05 mm' }],
})
