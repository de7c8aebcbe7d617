/** Grip, rivet length and shop head. All lengths in m. Not covered: countersunk grips (measured to the head's outer face). */
import { formula, total } from '../../quantity/formula.js'

const inch = 0.0254
const NAVEDTRA = { ref: 'NAVEDTRA 14018', at: 'figure 13-43' }

/** The stack a fastener holds: the sum of its layers, named. */
export const grip = total({
  id: 'shell.grip',
  says: 'Grip of the stack',
  symbol: 'G',
  unit: 'm',
  source: { ref: 'geometry', at: 'the layers add' },
  examples: [
    { given: { skin: 0.81e-3, skin_under: 0.81e-3, stringer: 1e-3 }, gives: 2.62e-3, within: 1e-12, from: 'by hand' },
    { given: { skin: 0.81e-3, end_skin: 1.02e-3, frame: 1.6e-3 }, gives: 3.43e-3, within: 1e-12, from: 'by hand' },
  ],
})

export const rivetLengthNeeded = formula({
  id: 'shell.rivet-length-needed',
  says: 'Length of solid rivet needed',
  symbol: 'L',
  unit: 'm',
  inputs: { G: 'm', D: 'm' },
  where: { G: 'grip', D: 'rivet diameter' },
  shows: 'G + 1.5 * D',
  eval: ({ G, D }) => G + 1.5 * D,
  source: NAVEDTRA,
  examples: [
    { given: { G: 0.064 * inch, D: 0.125 * inch }, gives: 0.2515 * inch, within: 1e-12, from: 'by hand from NAVEDTRA 14018 figure 13-43' },
    { given: { G: 2.62e-3, D: 3.175e-3 }, gives: 7.3825e-3, within: 1e-12, from: 'by hand' },
  ],
})

// A millionth of a step over a stock size is rounding, not metal, hence the 0.000001.
export const stockLengthNextUp = formula({
  id: 'shell.stock-length-next-up',
  says: 'Rivet length bought, next size up',
  symbol: 'L_b',
  unit: 'm',
  inputs: { L: 'm', s: 'm' },
  where: { L: 'length needed', s: 'step between stock lengths' },
  shows: 'ceil(L / s - 0.000001) * s',
  eval: ({ L, s }) => Math.ceil(L / s - 0.000001) * s,
  source: { ref: 'shop rule', at: 'rivet length: next up; half sizes of 1/16 in exist, AC 43.13-1B page 4-16' },
  examples: [
    { given: { L: 7.3825e-3, s: inch / 32 }, gives: (10 / 32) * inch, within: 1e-12, from: 'by hand' },
    { given: { L: 8.1925e-3, s: inch / 32 }, gives: (11 / 32) * inch, within: 1e-12, from: 'by hand' },
    { given: { L: inch / 4, s: inch / 32 }, gives: inch / 4, within: 1e-12, from: 'by hand: an exact size stays' },
  ],
})

export const stockLengthNearest = formula({
  id: 'shell.stock-length-nearest',
  says: 'Rivet length bought, nearest size',
  symbol: 'L_b',
  unit: 'm',
  inputs: { L: 'm', s: 'm' },
  where: { L: 'length needed', s: 'step between stock lengths' },
  shows: 'max(1, round(L / s)) * s',
  eval: ({ L, s }) => Math.max(1, Math.round(L / s)) * s,
  source: { ref: 'NAVEDTRA 14018', at: 'figure 13-43, nearest stock length; half sizes exist, AC 43.13-1B page 4-16' },
  examples: [
    { given: { L: 0.2515 * inch, s: inch / 32 }, gives: inch / 4, within: 1e-12, from: 'by hand' },
    { given: { L: 0.2675 * inch, s: inch / 32 }, gives: (9 / 32) * inch, within: 1e-12, from: 'by hand' },
    { given: { L: 0.4073 * inch, s: inch / 32 }, gives: (13 / 32) * inch, within: 1e-12, from: 'by hand' },
  ],
})

export const blindGripBought = formula({
  id: 'shell.blind-grip',
  says: 'Grip range of blind rivet bought, its upper end',
  symbol: 'G_b',
  unit: 'm',
  inputs: { G: 'm', s: 'm', n: '1' },
  where: { G: 'grip', s: 'step between grip ranges', n: 'number of the shortest range made in this diameter' },
  shows: 'max(n, ceil(G / s - 0.000001)) * s',
  eval: ({ G, s, n }) => Math.max(n, Math.ceil(G / s - 0.000001)) * s,
  source: { ref: 'IFI-114', at: "grip numbers in 1/16 in (from memory); the maker's range governs" },
  examples: [
    { given: { G: 2.25e-3, s: inch / 16, n: 1 }, gives: (2 / 16) * inch, within: 1e-12, from: 'by hand' },
    { given: { G: 0.5e-3, s: inch / 16, n: 1 }, gives: inch / 16, within: 1e-12, from: 'by hand' },
    {
      given: { G: 1.44e-3, s: inch / 16, n: 2 },
      gives: inch / 8,
      within: 1e-12,
      from: 'by hand: no shorter range is made in this diameter',
    },
    { given: { G: inch / 8, s: inch / 16, n: 1 }, gives: inch / 8, within: 1e-12, from: 'by hand' },
  ],
})

const P40 = { ref: 'Curtiss P-40 repair manual', at: 'page 8, shop head sizes' }

export const shopHeadDiameter = formula({
  id: 'shell.shop-head-diameter',
  says: 'Shop head diameter',
  symbol: 'D_s',
  unit: 'm',
  inputs: { D: 'm' },
  where: { D: 'rivet diameter' },
  shows: '1.5 * D',
  eval: ({ D }) => 1.5 * D,
  source: P40,
  examples: [{ given: { D: 0.125 * inch }, gives: 0.188 * inch, within: 0.001 * inch, from: 'Curtiss P-40 repair manual, page 8' }],
})

export const shopHeadHeight = formula({
  id: 'shell.shop-head-height',
  says: 'Shop head height',
  symbol: 'h_s',
  unit: 'm',
  inputs: { D: 'm' },
  where: { D: 'rivet diameter' },
  shows: '0.5 * D',
  eval: ({ D }) => 0.5 * D,
  source: P40,
  examples: [{ given: { D: 0.125 * inch }, gives: 0.063 * inch, within: 0.001 * inch, from: 'Curtiss P-40 repair manual, page 8' }],
})
