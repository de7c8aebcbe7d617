/** Figures of the floor that can be worked by hand. m, kg. */
import { formula } from '../../quantity/formula.js'

export const layerMass = formula({
  id: 'floor.layer-mass',
  says: 'Mass of what lies flat',
  symbol: 'm',
  unit: 'kg',
  inputs: { w: 'kg/m^2', A: 'm^2' },
  where: { w: 'mass of a square metre, as bought', A: 'net area' },
  shows: 'w * A',
  eval: ({ w, A }) => w * A,
  source: { ref: 'geometry', at: 'area times mass per area' },
  examples: [{ given: { w: 10.2, A: 12.79 }, gives: 130.458, within: 1e-9, from: 'by hand' }],
})

export const boltLength = formula({
  id: 'floor.bolt-length',
  says: 'Bolt bought: grip, two washers, nut and what stands out, to the next 5 mm',
  symbol: 'L',
  unit: 'm',
  inputs: { G: 'm', d: 'm', s: 'm' },
  where: { G: 'grip', d: 'diameter', s: 'step between bought lengths' },
  shows: 'ceil((G + 1.5 * d) / s - 0.000001) * s',
  eval: ({ G, d, s }) => Math.ceil((G + 1.5 * d) / s - 0.000001) * s,
  source: {
    ref: 'common practice',
    at: 'washers 0.2 d each, nut 0.85 d, a thread or two beyond (proportions of ISO 7089 and 4032, from memory)',
  },
  examples: [
    { given: { G: 0.021, d: 0.008, s: 0.005 }, gives: 0.035, within: 1e-12, from: 'by hand: 21 + 12 = 33, so 35' },
    { given: { G: 0.023, d: 0.008, s: 0.005 }, gives: 0.035, within: 1e-12, from: 'by hand: 35 exactly' },
  ],
})
