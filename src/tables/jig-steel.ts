/** The steel that jigs are welded from: only how it grows with warmth. */
import { datum } from './datum.js'

/** Thermal expansion, 1/K. */
export const JIG_STEEL_CTE = datum(
  '6.5e-6 /F',
  'expansion',
  'A36 structural steel; Callister, Materials Science and Engineering, table B.6',
  'R2',
)
