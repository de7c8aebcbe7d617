/** Pressed channels and flat panels: bends, properties of the section, areas and centres of outlines. */

import {
  channelArea,
  channelCentre,
  channelIx,
  channelIy,
  channelJ,
  channelShearCentre,
  netIx,
  pressedMass,
} from '../src/derive/chassis/section.formulas.js'
import { bendAllowance, bendDeduction, channelFlat, setback } from '../src/derive/common/bending.formulas.js'
import { departureAngle } from '../src/derive/gear/gear.formulas.js'
import { areaMoments } from '../src/maths/area-moments.js'
import { outlineArea } from '../src/maths/outline.js'
import { superellipseHalf } from '../src/maths/superellipse.js'
import type { ValidationFile } from './case.js'
import { degree } from './case.js'

const RIGHT = Math.PI / 2
const rail = { h: 0.152, b: 0.057, t: 0.003 }
const allowance = bendAllowance.eval({ R: 0.0045, K: 0.42, t: 0.003, A: RIGHT })
const deduction = bendDeduction.eval({ SB: setback.eval({ R: 0.0045, t: 0.003, A: RIGHT }), BA: allowance })
const area = channelArea.eval(rail)
const centre = channelCentre.eval({ ...rail, A: area })

export const channels: ValidationFile = {
  bibliography:
    'Closed forms for pressed channels and plane outlines: rectangles and parallel axes, thin-walled torsion and shear centre (standard handbooks, from memory), areas under the gamma function (Abramowitz and Stegun, from memory).',
  cases: [
    {
      id: 'rail-bend-allowance',
      case: 'allowance of one right angle, 3.0 mm, inside radius 4.5, K 0.42',
      source: 'derived here',
      at: '(4.5 + 0.42 x 3) pi / 2',
      status: 'D',
      expected: (4.5 + 0.42 * 3) * RIGHT,
      tolerance: 1e-9,
      ours: () => allowance * 1000,
      unit: 'mm',
    },
    {
      id: 'rail-blank',
      case: 'blank of a channel 152 x 57 x 3.0',
      source: 'derived here',
      at: '152 + 2 x 57 - 2 x 5.95',
      status: 'D',
      expected: 254.1,
      tolerance: 0.01,
      ours: () => channelFlat.eval({ h: 0.152, b: 0.057, BD: deduction }) * 1000,
      unit: 'mm',
    },
    {
      id: 'rail-mass',
      case: 'mass of a metre of that channel with 76.2 holes at 203.3, steel of 7850 kg/m3',
      source: 'derived here',
      at: '7850 x 0.003 (0.2541 - pi/4 x 0.0762^2 / 0.2033)',
      status: 'D',
      expected: 5.456,
      tolerance: 0.001,
      ours: () => pressedMass.eval({ rho: 7850, t: 0.003, W: 0.2541, d: 0.0762, p: 0.2033 }),
      unit: 'kg/m',
    },
    {
      id: 'rail-area',
      case: 'area of a channel 152 x 57 x 3, sharp corners',
      source: 'derived here',
      at: '2 x 57 x 3 + 146 x 3',
      status: 'D',
      expected: 2 * 57 * 3 + 146 * 3,
      tolerance: 1e-9,
      ours: () => area * 1e6,
      unit: 'mm2',
    },
    {
      id: 'rail-ix',
      case: 'its second moment about the level axis',
      source: 'derived here',
      at: 'web and two flanges, parallel axes',
      status: 'D',
      expected: (3 * 146 ** 3) / 12 + 2 * ((57 * 3 ** 3) / 12 + 57 * 3 * 74.5 ** 2),
      tolerance: 1e-4,
      ours: () => channelIx.eval(rail) * 1e12,
      unit: 'mm4',
    },
    {
      id: 'rail-ix-hole',
      case: 'the same with a hole of 76.2 in the middle of the web',
      source: 'derived here',
      at: 'less 3 x 76.2^3 / 12',
      status: 'D',
      expected: (3 * 146 ** 3) / 12 + 2 * ((57 * 3 ** 3) / 12 + 57 * 3 * 74.5 ** 2) - (3 * 76.2 ** 3) / 12,
      tolerance: 1e-4,
      ours: () => netIx.eval({ I: channelIx.eval(rail), d: 0.0762, t: 0.003 }) * 1e12,
      unit: 'mm4',
    },
    {
      id: 'rail-iy',
      case: 'its second moment about the upright axis',
      source: 'derived here',
      at: 'each rectangle about the common centre',
      status: 'D',
      expected: (() => {
        const x = (2 * 171 * 28.5 + 438 * 1.5) / 780
        return 2 * ((3 * 57 ** 3) / 12 + 171 * (28.5 - x) ** 2) + (146 * 3 ** 3) / 12 + 438 * (x - 1.5) ** 2
      })(),
      tolerance: 1e-4,
      ours: () => channelIy.eval({ ...rail, A: area, x_c: centre }) * 1e12,
      unit: 'mm4',
    },
    {
      id: 'channel-torsion',
      case: 'torsion constant of a thin channel, middle line of 260 mm, 3 mm',
      source: 'standard handbooks',
      at: 'sum of length times thickness cubed over three (from memory)',
      status: 'M',
      expected: (260 * 27) / 3,
      tolerance: 1e-6,
      ours: () => channelJ.eval(rail) * 1e12,
      unit: 'mm4',
    },
    {
      id: 'channel-shear-centre',
      case: 'shear centre of a thin channel whose flange is half its web',
      source: 'standard handbooks',
      at: 'e = 3 b^2 / (h + 6 b), which is 3 h / 16 (from memory)',
      status: 'M',
      expected: (3 * 100) / 16,
      tolerance: 1e-9,
      ours: () => channelShearCentre.eval({ h: 0.101, b: 0.0505, t: 0.001 }) * 1000,
      unit: 'mm',
    },
    {
      id: 'superellipse-4',
      case: 'area inside x^4 + y^4 = 1',
      source: 'Abramowitz and Stegun',
      at: '6.1.10, gamma of a quarter: gamma^2 / (2 sqrt(pi)) (from memory)',
      status: 'M',
      expected: 3.625609908221908 ** 2 / (2 * Math.sqrt(Math.PI)),
      tolerance: 1e-5,
      ours: () => 2 * outlineArea(superellipseHalf(1, 1, 4, 48)),
      unit: '',
    },
    {
      id: 'half-disc-centre',
      case: 'centre of a half disc of radius 2 from its diameter',
      source: 'derived here',
      at: '4 r / (3 pi)',
      status: 'D',
      expected: 8 / (3 * Math.PI),
      tolerance: 1e-12,
      ours: () => {
        const m = areaMoments([
          [-2, 0, 0],
          [2, 0, 1],
        ])
        return m.my / m.area
      },
      unit: '',
    },
    {
      id: 'departure-angle',
      case: 'departure angle over a tail edge 304 up and 2133.7 behind the last wheel',
      source: 'derived here',
      at: 'atan(304 / 2133.7)',
      status: 'D',
      expected: Math.atan(304 / 2133.7) / degree,
      tolerance: 1e-9,
      ours: () => departureAngle.eval({ x_t: 7.6137, z_t: -0.204, x_s: 5.48, z_g: -0.508 }) / degree,
      unit: 'deg',
    },
  ],
}
