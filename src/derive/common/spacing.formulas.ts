/** Where fasteners may stand: pitch, edge distance, rows, and how many to the inch. Lengths m, pitches per m. */
import { formula } from '../../quantity/formula.js'

const inch = 0.0254

/** Nearest by ratio: one space a third too wide and two a third too narrow are equally far from the pitch asked for. */
export const fittedPitch = formula({
  id: 'shell.fitted-pitch',
  says: 'Pitch fitted to whole spaces',
  symbol: 'p',
  unit: 'm',
  inputs: { L: 'm', p_n: 'm' },
  where: { L: 'length between control points', p_n: 'nominal pitch' },
  cases: [
    { when: 'L < p_n', shows: 'L' },
    { when: '(L / p_n)^2 < floor(L / p_n) * (floor(L / p_n) + 1)', shows: 'L / floor(L / p_n)' },
    { when: 'otherwise', shows: 'L / (floor(L / p_n) + 1)' },
  ],
  eval: ({ L, p_n }) => {
    const whole = Math.floor(L / p_n)
    if (whole < 1) return L
    return L / ((L / p_n) ** 2 < whole * (whole + 1) ? whole : whole + 1)
  },
  source: { ref: 'shop practice', at: 'whole spaces between control points, the number whose pitch is nearest in ratio to the nominal' },
  examples: [
    { given: { L: 0.61, p_n: 0.0254 }, gives: 0.61 / 24, within: 1e-12, from: 'by hand: 610 / 25.4 = 24.02, so 24 spaces' },
    { given: { L: 0.01, p_n: 0.0254 }, gives: 0.01, within: 1e-12, from: 'by hand: never less than one space' },
    {
      given: { L: 0.0541, p_n: 0.0381 },
      gives: 0.0541 / 2,
      within: 1e-12,
      from: 'by hand: 1.42 is over the square root of 1 x 2, so two spaces',
    },
  ],
})

export const edgeRatio = formula({
  id: 'shell.edge-ratio',
  says: 'Edge distance in rivet diameters',
  symbol: 'e/D',
  unit: '1',
  inputs: { e: 'm', D: 'm' },
  where: { e: 'centre to edge', D: 'rivet diameter' },
  shows: 'e / D',
  eval: ({ e, D }) => e / D,
  // below 1.5 D no bearing strength is tabulated at all
  valid: { 'e / D': [1.5, Number.POSITIVE_INFINITY] },
  source: { ref: 'AC 43.13-1B', at: 'paragraph 4-57c(1)' },
  examples: [{ given: { e: 0.25 * inch, D: 0.125 * inch }, gives: 2, within: 1e-12, from: 'AC 43.13-1B, paragraph 4-57c(1): 2 D' }],
})

export const minimumEdge = formula({
  id: 'shell.minimum-edge',
  says: 'Least edge distance',
  symbol: 'e_min',
  unit: 'm',
  inputs: { k: '1', D: 'm' },
  where: { k: 'diameters asked for, 2 for a single row', D: 'rivet diameter' },
  shows: 'k * D',
  eval: ({ k, D }) => k * D,
  source: { ref: 'AC 43.13-1B', at: 'paragraph 4-57c(1)' },
  examples: [{ given: { k: 2, D: 0.125 * inch }, gives: 0.25 * inch, within: 1e-12, from: 'AC 43.13-1B, paragraph 4-57c(1)' }],
})

export const leastPitch = formula({
  id: 'shell.least-pitch',
  says: 'Least distance between fasteners',
  symbol: 'p_min',
  unit: 'm',
  inputs: { k: '1', D: 'm' },
  where: { k: 'diameters asked for, 3 at the least', D: 'rivet diameter' },
  shows: 'k * D',
  eval: ({ k, D }) => k * D,
  source: { ref: 'NAVEDTRA 14018', at: 'page 13-43: never under 3 D' },
  examples: [{ given: { k: 3, D: 0.125 * inch }, gives: 0.375 * inch, within: 1e-12, from: 'by hand' }],
})

export const pitchRatio = formula({
  id: 'shell.pitch-ratio',
  says: 'Pitch in rivet diameters',
  symbol: 'p/D',
  unit: '1',
  inputs: { p: 'm', D: 'm' },
  where: { p: 'pitch', D: 'rivet diameter' },
  shows: 'p / D',
  eval: ({ p, D }) => p / D,
  source: { ref: 'NAVEDTRA 14018', at: 'page 13-43: never under 3 D, seldom under 4 D or over 8 D' },
  examples: [{ given: { p: 1 * inch, D: 0.125 * inch }, gives: 8, within: 1e-12, from: 'by hand: 1 in is 8 of 1/8 in' }],
})

export const transverseGuide = formula({
  id: 'shell.transverse-guide',
  says: 'Usual distance between rows',
  symbol: 'p_t',
  unit: 'm',
  inputs: { p: 'm' },
  where: { p: 'pitch along the row' },
  shows: '0.75 * p',
  eval: ({ p }) => 0.75 * p,
  source: { ref: 'common practice', at: 'transverse pitch 75 % of the pitch, as aviation maintenance texts teach it' },
  examples: [{ given: { p: 0.0254 }, gives: 0.01905, within: 1e-12, from: 'by hand' }],
})

export const transverseMinimum = formula({
  id: 'shell.transverse-minimum',
  says: 'Least distance between rows',
  symbol: 'p_t,min',
  unit: 'm',
  inputs: { k: '1', D: 'm' },
  where: { k: 'diameters asked for, 2.5', D: 'rivet diameter' },
  shows: 'k * D',
  eval: ({ k, D }) => k * D,
  source: { ref: 'TM 10-5410-229-13P', at: 'row spacing at least 2 1/2 D' },
  examples: [{ given: { k: 2.5, D: 0.125 * inch }, gives: 0.3125 * inch, within: 1e-12, from: 'by hand' }],
})

/** The rule behind AC 43.13-1B tables 4-9 to 4-11; the ratios of each table are in tables/rivets.ts (PER_INCH). */
export const rivetsPerLength = formula({
  id: 'shell.rivets-per-length',
  says: "Rivets that carry the sheet's full strength",
  symbol: 'N',
  unit: '1/m',
  inputs: { t: 'm', D_h: 'm', r_b: '1', r_s: '1' },
  where: { t: 'sheet thickness', D_h: 'driven hole', r_b: 'sheet bearing over sheet tension', r_s: 'rivet shear over sheet tension' },
  cases: [
    { when: 'r_s * pi / 4 * D_h < r_b * t', shows: 't / (r_s * pi / 4 * D_h^2)' },
    { when: 'otherwise', shows: '1 / (r_b * D_h)' },
  ],
  eval: ({ t, D_h, r_b, r_s }) => Math.max(1 / (r_b * D_h), t / (r_s * (Math.PI / 4) * D_h ** 2)),
  source: { ref: 'AC 43.13-1B', at: 'tables 4-9 to 4-11' },
  examples: [
    {
      given: { t: 0.032 * inch, D_h: 0.1285 * inch, r_b: 1.6, r_s: 0.5 },
      gives: 4.9 / inch,
      within: 0.07 / inch,
      from: 'AC 43.13-1B, table 4-10',
    },
    {
      given: { t: 0.016 * inch, D_h: 0.159 * inch, r_b: 1.6, r_s: 0.5 },
      gives: 1 / (1.6 * 0.159 * inch),
      within: 1e-9,
      from: 'by hand: thin sheet, bearing governs',
    },
  ],
})

export const wholeRivets = formula({
  id: 'shell.whole-rivets',
  says: 'Rivets needed, whole',
  symbol: 'n',
  unit: '1',
  inputs: { N: '1', f: '1' },
  where: { N: 'rivets for the full strength', f: 'share that suffices here' },
  shows: 'ceil(N * f - 0.000001)',
  eval: ({ N, f }) => Math.ceil(N * f - 0.000001),
  source: { ref: 'AC 43.13-1B', at: 'notes to tables 4-9 to 4-11 and paragraph 4-58g' },
  examples: [{ given: { N: 49, f: 0.75 }, gives: 37, within: 0, from: 'AC 43.13-1B, paragraph 4-58g: 36.75, so 37' }],
})
