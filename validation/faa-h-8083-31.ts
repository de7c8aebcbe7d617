/** The U-channel of the FAA airframe handbook: 0.040 in 2024-T3, inside radius 0.16 in, mould lines 1, 2 and 1 in. */
import { bendAllowance, bendAllowanceFaa, bendDeduction, channelFlat, setback } from '../src/derive/common/bending.formulas.js'
import type { ValidationFile } from './case.js'
import { degree, inch } from './case.js'

const SOURCE = 'FAA-H-8083-31'
const BEND = { R: 0.16 * inch, t: 0.04 * inch, A: 90 * degree }
const halfThickness = (): number => bendAllowance.eval({ ...BEND, K: 0.5 })
const blank = (BA: number): number =>
  channelFlat.eval({ h: 2 * inch, b: inch, BD: bendDeduction.eval({ SB: setback.eval(BEND), BA }) }) / inch

export const faa8083: ValidationFile = {
  bibliography: 'Federal Aviation Administration, FAA-H-8083-31, Aviation Maintenance Technician Handbook: Airframe, volume 1, 2012.',
  cases: [
    {
      id: 'faa-setback',
      case: 'setback of the U-channel',
      source: SOURCE,
      at: 'chapter 4, U-channel example',
      status: 'R',
      expected: 0.2,
      tolerance: 1e-9,
      ours: () => setback.eval(BEND) / inch,
      unit: 'in',
    },
    {
      id: 'faa-allowance',
      case: 'empirical bend allowance of the U-channel',
      source: SOURCE,
      at: 'chapter 4, formula, worked by hand',
      status: 'D',
      expected: 0.27907,
      tolerance: 5e-6,
      ours: () => bendAllowanceFaa.eval(BEND) / inch,
      unit: 'in',
    },
    {
      id: 'faa-half',
      case: 'bend allowance of the U-channel by the half-thickness rule',
      source: SOURCE,
      at: 'chapter 4, worked by hand',
      status: 'D',
      expected: 0.28274,
      tolerance: 5e-6,
      ours: () => halfThickness() / inch,
      unit: 'in',
    },
    {
      id: 'faa-width',
      case: 'developed width of the U-channel, empirical allowance',
      source: SOURCE,
      at: 'chapter 4, worked by hand',
      status: 'D',
      expected: 3.7581,
      tolerance: 5e-5,
      ours: () => blank(bendAllowanceFaa.eval(BEND)),
      unit: 'in',
    },
    {
      id: 'faa-width-half',
      case: 'developed width of the U-channel, half-thickness rule',
      source: SOURCE,
      at: 'chapter 4, worked by hand',
      status: 'D',
      expected: 3.7655,
      tolerance: 5e-5,
      ours: () => blank(halfThickness()),
      unit: 'in',
    },
  ],
}
