/** Bends: allowance, setback, deduction. Angles are the bend's own (how far the leg is turned), rad; lengths m. */
import { formula } from '../../quantity/formula.js'

const inch = 0.0254
const TURNS: readonly [number, number] = [0, Math.PI * 0.98]

export const bendAllowance = formula({
  id: 'shell.bend-allowance',
  says: 'Flat length of a bend',
  symbol: 'BA',
  unit: 'm',
  inputs: { R: 'm', K: '1', t: 'm', A: 'rad' },
  where: { R: 'inside radius', K: 'neutral line, share of thickness', t: 'thickness', A: 'angle turned' },
  shows: '(R + K * t) * A',
  eval: ({ R, K, t, A }) => (R + K * t) * A,
  valid: { K: [0, 0.5], A: [0, Math.PI] },
  source: { ref: 'geometry', at: "arc of the neutral line; K is the shop's own" },
  examples: [
    { given: { R: 0.0045, K: 0.42, t: 0.003, A: Math.PI / 2 }, gives: 0.00905, within: 5e-6, from: 'by hand: 5.76 mm x pi / 2' },
    {
      given: { R: 0.16 * inch, K: 0.5, t: 0.04 * inch, A: Math.PI / 2 },
      gives: 0.28274 * inch,
      within: 1e-5 * inch,
      from: 'by hand: half-thickness rule',
    },
  ],
})

export const setbackFactor = formula({
  id: 'shell.setback-factor',
  says: 'Setback factor',
  symbol: 'K_s',
  unit: '1',
  inputs: { A: 'rad' },
  where: { A: 'angle turned' },
  shows: 'tan(A / 2)',
  eval: ({ A }) => Math.tan(A / 2),
  valid: { A: TURNS },
  source: { ref: 'AC 43.13-1B', at: 'table 4-7' },
  examples: [{ given: { A: Math.PI / 4 }, gives: 0.4142, within: 1e-4, from: 'AC 43.13-1B, table 4-7' }],
})

export const setback = formula({
  id: 'shell.setback',
  says: 'Setback from the mould line to the bend line',
  symbol: 'SB',
  unit: 'm',
  inputs: { R: 'm', t: 'm', A: 'rad' },
  where: { R: 'inside radius', t: 'thickness', A: 'angle turned' },
  shows: 'tan(A / 2) * (R + t)',
  eval: ({ R, t, A }) => Math.tan(A / 2) * (R + t),
  valid: { A: TURNS },
  source: { ref: 'AC 43.13-1B', at: 'paragraph 4-56b(2)' },
  examples: [
    {
      given: { R: 0.25 * inch, t: 0.064 * inch, A: Math.PI / 4 },
      gives: 0.13 * inch,
      within: 0.0005 * inch,
      from: 'AC 43.13-1B, paragraph 4-56b(2)',
    },
  ],
})

export const bendDeduction = formula({
  id: 'shell.bend-deduction',
  says: 'Taken off the outside dimensions for one bend',
  symbol: 'BD',
  unit: 'm',
  inputs: { SB: 'm', BA: 'm' },
  where: { SB: 'setback', BA: 'bend allowance' },
  shows: '2 * SB - BA',
  eval: ({ SB, BA }) => 2 * SB - BA,
  source: { ref: 'geometry', at: 'two setbacks replaced by the arc' },
  examples: [{ given: { SB: 0.0075, BA: 0.009048 }, gives: 0.005952, within: 1e-9, from: 'by hand' }],
})

export const channelFlat = formula({
  id: 'shell.channel-flat',
  says: 'Blank width of a channel with two equal bends',
  symbol: 'W',
  unit: 'm',
  inputs: { h: 'm', b: 'm', BD: 'm' },
  where: { h: 'web over all', b: 'flange over all', BD: 'bend deduction' },
  shows: 'h + 2 * b - 2 * BD',
  eval: ({ h, b, BD }) => h + 2 * b - 2 * BD,
  source: { ref: 'geometry', at: 'outside dimensions less the deductions' },
  examples: [{ given: { h: 0.152, b: 0.057, BD: 0.005952 }, gives: 0.254096, within: 1e-9, from: 'by hand' }],
})

export const bendAllowanceNavy = formula({
  id: 'shell.bend-allowance-navedtra',
  says: 'Flat length of a bend, empirical',
  symbol: 'BA',
  unit: 'm',
  inputs: { R: 'm', t: 'm', A: 'rad' },
  where: { R: 'inside radius', t: 'thickness', A: 'angle turned' },
  shows: '(0.0173 * R + 0.0078 * t) * A * 180 / pi',
  eval: ({ R, t, A }) => ((0.0173 * R + 0.0078 * t) * A * 180) / Math.PI,
  source: { ref: 'NAVEDTRA 14018', at: 'page 13-19' },
  examples: [
    {
      given: { R: 0.16 * inch, t: 0.04 * inch, A: Math.PI / 2 },
      gives: 0.2772 * inch,
      within: 1e-5 * inch,
      from: 'by hand: (0.0173 x 0.16 + 0.0078 x 0.04) x 90',
    },
  ],
})

export const bendAllowanceFaa = formula({
  id: 'shell.bend-allowance-faa',
  says: 'Flat length of a bend, empirical',
  symbol: 'BA',
  unit: 'm',
  inputs: { R: 'm', t: 'm', A: 'rad' },
  where: { R: 'inside radius', t: 'thickness', A: 'angle turned' },
  shows: '(0.01743 * R + 0.0078 * t) * A * 180 / pi',
  eval: ({ R, t, A }) => ((0.01743 * R + 0.0078 * t) * A * 180) / Math.PI,
  source: { ref: 'FAA-H-8083-31', at: 'bend allowance formula' },
  examples: [
    {
      given: { R: 0.16 * inch, t: 0.04 * inch, A: Math.PI / 2 },
      gives: 0.279072 * inch,
      within: 1e-6 * inch,
      from: 'by hand: (0.01743 x 0.16 + 0.0078 x 0.04) x 90',
    },
  ],
})
