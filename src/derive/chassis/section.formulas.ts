/**
 * Properties of a plain channel, sharp corners: h web over all, b flange over all, t thickness. m, m2, m4.
 * The bends of a pressed channel take away one or two hundredths of what is worked out here; the mass is taken from the blank.
 */
import { formula } from '../../quantity/formula.js'

const GEOMETRY = { ref: 'geometry', at: 'rectangles added and taken away, sharp corners' }
const channel = { h: 'm', b: 'm', t: 'm' } as const
const where = { h: 'web over all', b: 'flange over all', t: 'thickness' }
/** 152 x 57 x 3.0, by rectangles: two flanges of 57 x 3 and a web of 146 x 3. */
const RAIL = { h: 0.152, b: 0.057, t: 0.003 }
const RAIL_AREA = 2 * 57 * 3 + 146 * 3

export const channelArea = formula({
  id: 'chassis.channel-area',
  says: 'Area of a channel section',
  symbol: 'A',
  unit: 'm^2',
  inputs: channel,
  where,
  shows: 't * (h + 2 * b - 2 * t)',
  eval: ({ h, b, t }) => t * (h + 2 * b - 2 * t),
  source: GEOMETRY,
  examples: [{ given: RAIL, gives: RAIL_AREA * 1e-6, within: 1e-12, from: 'by hand: 2 x 57 x 3 + 146 x 3 = 780 mm2' }],
})

export const channelCentre = formula({
  id: 'chassis.channel-centre',
  says: 'Centre of area from the outer face of the web',
  symbol: 'x_c',
  unit: 'm',
  inputs: { ...channel, A: 'm^2' },
  where: { ...where, A: 'area' },
  shows: '(b^2 * t + (h - 2 * t) * t^2 / 2) / A',
  eval: ({ h, b, t, A }) => (b * b * t + ((h - 2 * t) * t * t) / 2) / A,
  source: GEOMETRY,
  examples: [
    {
      given: { ...RAIL, A: RAIL_AREA * 1e-6 },
      gives: ((2 * 57 * 3 * 28.5 + 146 * 3 * 1.5) / RAIL_AREA) * 1e-3,
      within: 1e-9,
      from: 'by hand: two flanges at 28.5 and the web at 1.5 mm',
    },
  ],
})

export const channelIx = formula({
  id: 'chassis.channel-ix',
  says: 'Second moment of area about the level axis',
  symbol: 'I_x',
  unit: 'm^4',
  inputs: channel,
  where,
  shows: '(b * h^3 - (b - t) * (h - 2 * t)^3) / 12',
  eval: ({ h, b, t }) => (b * h ** 3 - (b - t) * (h - 2 * t) ** 3) / 12,
  source: GEOMETRY,
  examples: [
    {
      given: RAIL,
      gives: ((3 * 146 ** 3) / 12 + 2 * ((57 * 3 ** 3) / 12 + 57 * 3 * 74.5 ** 2)) * 1e-12,
      within: 1e-15,
      from: 'by hand: web and two flanges about the middle, parallel axes',
    },
  ],
})

export const channelIy = formula({
  id: 'chassis.channel-iy',
  says: 'Second moment of area about the upright axis',
  symbol: 'I_y',
  unit: 'm^4',
  inputs: { ...channel, A: 'm^2', x_c: 'm' },
  where: { ...where, A: 'area', x_c: 'centre of area from the outer face of the web' },
  shows: '(2 * t * b^3 + (h - 2 * t) * t^3) / 3 - A * x_c^2',
  eval: ({ h, b, t, A, x_c }) => (2 * t * b ** 3 + (h - 2 * t) * t ** 3) / 3 - A * x_c * x_c,
  source: GEOMETRY,
  examples: [
    {
      given: { h: 0.1, b: 0.05, t: 0.01, A: 2 * 50 * 10e-6 + 80 * 10e-6, x_c: (2 * 500 * 25 + 800 * 5) / 1800e3 },
      gives: (2 * ((10 * 50 ** 3) / 12 + 500 * (25 - 29000 / 1800) ** 2) + (80 * 10 ** 3) / 12 + 800 * (29000 / 1800 - 5) ** 2) * 1e-12,
      within: 1e-15,
      from: 'by hand: each rectangle about the common centre',
    },
  ],
})

export const channelJ = formula({
  id: 'chassis.channel-j',
  says: 'Torsion constant of a thin open section',
  symbol: 'J',
  unit: 'm^4',
  inputs: channel,
  where,
  shows: 't^3 * ((h - t) + 2 * (b - t / 2)) / 3',
  eval: ({ h, b, t }) => (t ** 3 * (h - t + 2 * (b - t / 2))) / 3,
  source: { ref: 'thin-walled theory', at: 'sum of length times thickness cubed over three along the middle line (standard; from memory)' },
  examples: [{ given: RAIL, gives: ((3 ** 3 * (149 + 2 * 55.5)) / 3) * 1e-12, within: 1e-18, from: 'by hand: 260 mm of middle line' }],
})

export const channelShearCentre = formula({
  id: 'chassis.channel-shear-centre',
  says: "Shear centre, outside the web's middle line",
  symbol: 'e',
  unit: 'm',
  inputs: channel,
  where,
  shows: '3 * (b - t / 2)^2 / ((h - t) + 6 * (b - t / 2))',
  eval: ({ h, b, t }) => (3 * (b - t / 2) ** 2) / (h - t + 6 * (b - t / 2)),
  source: { ref: 'thin-walled theory', at: 'channel of even thickness, middle line (standard handbooks; from memory)' },
  examples: [
    {
      given: { h: 0.101, b: 0.0505, t: 0.001 },
      gives: (3 * 50 ** 2) / (100 + 300) / 1000,
      within: 1e-12,
      from: 'by hand: b = h / 2 gives 3 h / 16',
    },
  ],
})

export const netArea = formula({
  id: 'chassis.net-area',
  says: 'Area with a hole in the web',
  symbol: 'A_n',
  unit: 'm^2',
  inputs: { A: 'm^2', d: 'm', t: 'm' },
  where: { A: 'area without it', d: 'diameter of the hole', t: 'thickness' },
  shows: 'A - d * t',
  eval: ({ A, d, t }) => A - d * t,
  source: GEOMETRY,
  examples: [{ given: { A: 780e-6, d: 0.0762, t: 0.003 }, gives: (780 - 228.6) * 1e-6, within: 1e-12, from: 'by hand' }],
})

/** The flange round a lightening hole is left out of account, on the safe side. */
export const netIx = formula({
  id: 'chassis.net-ix',
  says: 'Second moment of area with a hole in the middle of the web',
  symbol: 'I_n',
  unit: 'm^4',
  inputs: { I: 'm^4', d: 'm', t: 'm' },
  where: { I: 'without it', d: 'diameter of the hole', t: 'thickness' },
  shows: 'I - t * d^3 / 12',
  eval: ({ I, d, t }) => I - (t * d ** 3) / 12,
  source: GEOMETRY,
  examples: [
    { given: { I: 3e-6, d: 0.06, t: 0.002 }, gives: 3e-6 - 2e-3 * 1.8e-5, within: 1e-15, from: 'by hand: 2 x 60^3 / 12 = 36 000 mm4' },
  ],
})

export const pressedMass = formula({
  id: 'chassis.pressed-mass',
  says: 'Mass of a metre of a pressed channel',
  symbol: 'w',
  unit: 'kg/m',
  inputs: { rho: 'kg/m^3', t: 'm', W: 'm', d: 'm', p: 'm' },
  where: { rho: 'density', t: 'thickness', W: 'width of the blank', d: 'diameter of the lightening holes', p: 'from hole to hole' },
  shows: 'rho * t * (W - pi / 4 * d^2 / p)',
  eval: ({ rho, t, W, d, p }) => rho * t * (W - ((Math.PI / 4) * d * d) / p),
  source: { ref: 'geometry', at: 'volume times density; a flanged hole keeps the metal of its flange, which is not added' },
  examples: [
    {
      given: { rho: 7850, t: 0.003, W: 0.2541, d: 0.0762, p: 0.2033 },
      gives: 5.456,
      within: 0.001,
      from: 'by hand: 5.984 kg/m of sheet less 0.528 of holes',
    },
  ],
})
