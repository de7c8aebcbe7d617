/** Lengths that change between layers, with curvature and with warmth. m, rad, K. */
import { formula } from '../../../quantity/formula.js'

const inch = 0.0254
const ksi = (1000 * 0.45359237 * 9.80665) / inch ** 2

/** d is positive inward on a convex section; exact for any chain of arcs and lines whose radii stay larger than d. */
export const offsetGirth = formula({
  id: 'shell.offset-girth',
  says: 'Girth along a layer inside the outer mould line',
  symbol: 'G_d',
  unit: 'm',
  inputs: { G: 'm', d: 'm', theta: 'rad' },
  where: { G: 'girth on the outer mould line', d: 'distance inward', theta: 'heading turned' },
  shows: 'G - d * theta',
  eval: ({ G, d, theta }) => G - d * theta,
  source: { ref: 'geometry', at: 'parallel curves: each arc loses d times its angle' },
  examples: [
    {
      given: { G: Math.PI * 0.3, d: 0.05, theta: Math.PI / 2 },
      gives: Math.PI * 0.275,
      within: 1e-12,
      from: 'by hand: quarter circles of radius 600 and 550 mm',
    },
  ],
})

export const lapDifference = formula({
  id: 'shell.lap-difference',
  says: 'How much longer the outer sheet is round a curved lap',
  symbol: 'dL',
  unit: 'm',
  inputs: { theta: 'rad', t_1: 'm', t_2: 'm' },
  where: { theta: 'heading turned', t_1: 'outer sheet', t_2: 'inner sheet' },
  shows: 'theta * (t_1 + t_2) / 2',
  eval: ({ theta, t_1, t_2 }) => (theta * (t_1 + t_2)) / 2,
  source: { ref: 'geometry', at: 'mid surfaces half of each thickness apart' },
  examples: [
    { given: { theta: Math.PI / 2, t_1: 0.001016, t_2: 0.001016 }, gives: 1.5959e-3, within: 1e-7, from: 'by hand: pi / 2 x 1.016 mm' },
  ],
})

export const wrapRadius = formula({
  id: 'shell.wrap-radius',
  says: 'Smallest radius a flat sheet wraps to and springs back from',
  symbol: 'R_w',
  unit: 'm',
  inputs: { E: 'Pa', t: 'm', F_ty: 'Pa' },
  where: { E: "Young's modulus", t: 'thickness', F_ty: 'tension yield' },
  shows: 'E * t / (2 * F_ty)',
  eval: ({ E, t, F_ty }) => (E * t) / (2 * F_ty),
  source: { ref: 'bending of thin sheet', at: 'outer fibre strain t / 2R at yield' },
  examples: [
    { given: { E: 10500 * ksi, t: 0.032 * inch, F_ty: 44 * ksi }, gives: 0.097, within: 0.0005, from: 'by hand: 10500 x 0.032 in / 88' },
  ],
})

export const thermalGrowth = formula({
  id: 'shell.thermal-growth',
  says: 'Growth with warmth',
  symbol: 'dL',
  unit: 'm',
  inputs: { alpha: '1/K', L: 'm', dT: 'K' },
  where: { alpha: 'expansion', L: 'length', dT: 'temperature rise' },
  shows: 'alpha * L * dT',
  eval: ({ alpha, L, dT }) => alpha * L * dT,
  source: { ref: 'definition of thermal expansion', at: 'linear' },
  examples: [
    {
      given: { alpha: 13.1e-6 * 1.8, L: 240 * inch, dT: 20 },
      gives: 0.113184 * inch,
      within: 1e-9,
      from: 'by hand: 13.1e-6 x 240 in x 36 F',
    },
  ],
})

export const restrainedStress = formula({
  id: 'shell.restrained-stress',
  says: 'Stress when growth is wholly held',
  symbol: 'sigma',
  unit: 'Pa',
  inputs: { E: 'Pa', alpha: '1/K', dT: 'K' },
  where: { E: "Young's modulus", alpha: 'expansion', dT: 'temperature rise' },
  shows: 'E * alpha * dT',
  eval: ({ E, alpha, dT }) => E * alpha * dT,
  source: { ref: 'elasticity', at: 'strain alpha dT held at zero' },
  examples: [{ given: { E: 70e9, alpha: 23e-6, dT: 10 }, gives: 16.1e6, within: 1, from: 'by hand' }],
})

/** What a solved section still misses, measured on the finished chain and not taken from the solver. */
export const fitResidual = formula({
  id: 'shell.fit-residual',
  says: 'Largest miss of a size the section was fitted to',
  symbol: 'r',
  unit: 'm',
  inputs: { w: 'm', h: 'm', b: 'm', f: 'm' },
  where: { w: 'miss of the width', h: 'miss of the height', b: 'miss of the belt line', f: 'miss of the width at the floor' },
  shows: 'max(abs(w), abs(h), abs(b), abs(f))',
  eval: ({ w, h, b, f }) => Math.max(Math.abs(w), Math.abs(h), Math.abs(b), Math.abs(f)),
  source: { ref: 'definition', at: 'the largest difference between a size asked for and the size drawn' },
  examples: [{ given: { w: 1e-6, h: -3e-6, b: 0, f: 2e-6 }, gives: 3e-6, within: 0, from: 'by hand' }],
})
