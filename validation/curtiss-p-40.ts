/** Shop head sizes from a wartime repair manual, which prints them to the thousandth. */
import { shopHeadDiameter, shopHeadHeight } from '../src/derive/common/lengths.formulas.js'
import type { ValidationCase, ValidationFile } from './case.js'
import { inch } from './case.js'

const SOURCE = 'P-40 repair manual'
const HEADS = [
  ['1/8', 1 / 8, 0.188, 0.063],
  ['5/32', 5 / 32, 0.234, 0.078],
  ['3/16', 3 / 16, 0.281, 0.093],
] as const

export const curtissP40: ValidationFile = {
  bibliography: 'Curtiss-Wright, P-40 structural repair manual, 1940s.',
  cases: HEADS.flatMap(([name, size, across, high]): ValidationCase[] => [
    {
      id: `p40-diameter-${name}`,
      case: `shop head diameter, ${name} in rivet`,
      source: SOURCE,
      at: 'page 8',
      status: 'R',
      expected: across,
      tolerance: 0.001,
      ours: () => shopHeadDiameter.eval({ D: size * inch }) / inch,
      unit: 'in',
    },
    {
      id: `p40-height-${name}`,
      case: `shop head height, ${name} in rivet`,
      source: SOURCE,
      at: 'page 8',
      status: 'R',
      expected: high,
      tolerance: 0.001,
      ours: () => shopHeadHeight.eval({ D: size * inch }) / inch,
      unit: 'in',
    },
  ]),
}
