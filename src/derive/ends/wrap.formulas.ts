/** Bending a sheet round a rib without forming it. */
import { formula } from '../../quantity/formula.js'

const ksi = 6.894757e6
const inch = 0.0254

export const wrapRadius = formula({
  id: 'ends.elastic-wrap-radius',
  says: 'Smallest radius a sheet can be bent to and spring back flat',
  symbol: 'R_e',
  unit: 'm',
  inputs: { E: 'Pa', t: 'm', F_ty: 'Pa' },
  where: { E: 'modulus in tension', t: 'thickness', F_ty: 'yield strength in tension' },
  shows: 'E * t / (2 * F_ty)',
  eval: ({ E, t, F_ty }) => (E * t) / (2 * F_ty),
  source: { ref: 'beam theory', at: 'strain at the face, t / 2R, at yield' },
  examples: [
    {
      given: { E: 10.5e3 * ksi, t: 0.032 * inch, F_ty: 44 * ksi },
      gives: 0.097,
      within: 5e-4,
      from: 'D: derived, clad 2024-T3 of 0.032 in by MIL-HDBK-5J strengths',
    },
    {
      given: { E: 9.9e3 * ksi, t: 0.04 * inch, F_ty: 36 * ksi },
      gives: 0.14,
      within: 5e-4,
      from: 'D: derived, 6061-T6 of 0.040 in by MIL-HDBK-5J strengths',
    },
    {
      given: { E: 10.1e3 * ksi, t: 0.05 * inch, F_ty: 23 * ksi },
      gives: 0.279,
      within: 5e-4,
      from: 'D: derived, 5052-H32 of 0.050 in by MIL-HDBK-5J strengths',
    },
  ],
})
