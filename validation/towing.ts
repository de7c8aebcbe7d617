/** A trailer alone behind its ball, and damping read from a record: closed forms worked out by hand. */
import { aloneDamping, aloneFrequency, decayDamping, itemYawInertia } from '../src/derive/towing/towing.formulas.js'
import type { ValidationCase, ValidationFile } from './case.js'

const given = { C: 110e3, l: 4.4, J: 4500, m: 1800, d: 4.1 }
const one = (
  id: string,
  what: string,
  at: string,
  expected: number,
  tolerance: number,
  unit: string,
  ours: () => number,
): ValidationCase => ({
  id: `towing-${id}`,
  case: what,
  source: 'mechanics of one freedom',
  at,
  status: 'D',
  expected,
  tolerance,
  ours,
  unit,
})

export const towing: ValidationFile = {
  bibliography:
    'Mechanics: one freedom about a ball that stands still. That its damping goes as 1/V: The Forced Lateral Oscillations of Trailers, ASME Journal of Applied Mechanics 24 (4), page 515, abstract. Decrement: as ISO 9815 uses it (its scope read, its clauses not).',
  cases: [
    one('frequency', 'swing of a trailer behind a fixed ball', 'sqrt(110e3 x 4.4 / (4500 + 1800 x 4.1^2))', 3.731602, 4e-6, '1/s', () =>
      aloneFrequency.eval(given),
    ),
    one('hertz', 'the same, cycles a second', 'over 2 pi', 0.593903, 1e-6, 'Hz', () => aloneFrequency.eval(given) / (2 * Math.PI)),
    one('damping-10', 'its damping at 10 m/s', '110e3 x 4.4^2 / (2 V root)', 0.820952, 1e-6, 'of critical', () =>
      aloneDamping.eval({ ...given, V: 10 }),
    ),
    one('damping-25', 'its damping at 25 m/s', 'the same over 2.5', 0.328381, 1e-6, 'of critical', () =>
      aloneDamping.eval({ ...given, V: 25 }),
    ),
    one('decrement', 'damping of a record that falls by e to the 0.631484 a cycle', 'logarithmic decrement', 0.1, 1e-6, 'of critical', () =>
      decayDamping.eval({ x_1: Math.exp(0.631484), x_2: 1 }),
    ),
    one(
      'plate',
      'yaw inertia of a floor 5.83 by 2.32 m of 130.5 kg, 0.1 m off the centre',
      'm (0.1^2 + (5.83^2 + 2.32^2) / 12)',
      429.468,
      0.001,
      'kg m2',
      () => itemYawInertia.eval({ m: 130.5, x: 4.83, x_c: 4.73, y: 0, L: 5.83, B: 2.32 }),
    ),
  ],
}
