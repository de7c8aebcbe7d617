/** Lifting by slings and by hand. kg, m, N, rad. */
import { formula } from '../../quantity/formula.js'

export const pickLoad = formula({
  id: 'lift.pick-load',
  says: 'Load of one sling frame, straight up',
  symbol: 'V',
  unit: 'N',
  inputs: { m: 'kg', g: 'm/s^2', a: 'm', b: 'm' },
  where: { m: 'mass lifted', g: 'standard gravity', a: 'its centre to this frame, along', b: 'its centre to the other frame' },
  shows: 'm * g * b / (a + b)',
  eval: ({ m, g, a, b }) => (m * g * b) / (a + b),
  source: { ref: 'statics', at: 'moments about the other frame' },
  examples: [{ given: { m: 600, g: 10, a: 1, b: 2 }, gives: 4000, within: 1e-9, from: 'by hand' }],
  valid: { a: [0, 100], b: [0, 100] },
})

const LEG = {
  a: 'hook to this frame, along',
  e: 'hook to an end of its beam, across',
  h: 'hook above the beams, which lie on the crown',
}

export const legTension = formula({
  id: 'lift.leg-tension',
  says: 'Tension along the legs of one sling frame, from the hook to the ends of its beam, both together',
  symbol: 'T',
  unit: 'N',
  inputs: { V: 'N', a: 'm', e: 'm', h: 'm' },
  where: { V: 'load straight up', ...LEG },
  shows: 'V * sqrt(a^2 + e^2 + h^2) / h',
  eval: ({ V, a, e, h }) => (V * Math.sqrt(a * a + e * e + h * h)) / h,
  source: {
    ref: 'statics',
    at: 'the hook stands over the centre; each of the two holds half of the load; legs of unequal length fore and aft',
  },
  examples: [
    {
      given: { V: 4000, a: 1, e: 0, h: 1.5 },
      gives: 4807.4,
      within: 0.1,
      from: 'derived here: 6000 N, centre at 1 and 2 m, hook at 1.5 m',
    },
    { given: { V: 2000, a: 2, e: 0, h: 1.5 }, gives: 3333.3, within: 0.1, from: 'derived here: the other leg of the same' },
    { given: { V: 1, a: 1, e: 0, h: Math.sqrt(3) }, gives: 1.1547, within: 1e-4, from: 'rigging chart: 60 degrees from level, 1.155' },
    { given: { V: 3000, a: 2, e: 1, h: 2 }, gives: 4500, within: 1e-9, from: 'by hand: a leg 3 m long under a hook at 2 m' },
  ],
})

export const legAngle = formula({
  id: 'lift.leg-angle',
  says: 'Angle of a leg from level',
  symbol: 'q',
  unit: 'rad',
  inputs: { a: 'm', e: 'm', h: 'm' },
  where: LEG,
  kind: 'procedure',
  eval: ({ a, e, h }) => Math.atan2(h, Math.hypot(a, e)),
  source: { ref: 'geometry', at: 'arc tangent' },
  examples: [
    { given: { a: 1, e: 0, h: 1 }, gives: Math.PI / 4, within: 1e-12, from: 'by hand' },
    { given: { a: 0, e: 0, h: 2 }, gives: Math.PI / 2, within: 1e-12, from: 'by hand' },
    { given: { a: 1, e: Math.SQRT2, h: 1 }, gives: Math.PI / 6, within: 1e-12, from: 'by hand' },
  ],
})

const HANDS = {
  H: 'hands ahead of the ankles',
  V: 'hands above the ground',
  D: 'how far it is raised',
  A: 'turn of the body',
  FM: 'multiplier of how often',
  CM: 'multiplier of how well it can be held',
} as const
const HAND_UNITS = { H: 'm', V: 'm', D: 'm', A: 'rad', FM: '1', CM: '1' } as const
const NIOSH = 'NIOSH 94-110, revised 9/2021'
const BEST = { H: 0.25, V: 0.75, D: 0.25, A: 0, FM: 1, CM: 1 }
const degrees = (rad: number): number => (rad * 180) / Math.PI

/** The revised lifting equation; nothing where the hands cannot go. */
export const handLimit = formula({
  id: 'lift.hand-limit',
  says: 'Mass one person may lift, metric constants',
  symbol: 'RWL',
  unit: 'kg',
  inputs: HAND_UNITS,
  where: HANDS,
  kind: 'procedure',
  eval: ({ H, V, D, A, FM, CM }) => {
    const [h, v, d, a] = [Math.max(25, H * 100), V * 100, Math.max(25, D * 100), degrees(A)]
    if (h > 63 || v > 175 || d > 175 || a > 135) return 0
    return 23 * (25 / h) * (1 - 0.003 * Math.abs(v - 75)) * (0.82 + 4.5 / d) * (1 - 0.0032 * a) * FM * CM
  },
  source: { ref: NIOSH, at: 'pages 7 to 15: 23 kg, 25/H, 1 - 0.003 |V - 75|, 0.82 + 4.5/D, 1 - 0.0032 A, cm and degrees' },
  examples: [
    { given: BEST, gives: 23, within: 1e-9, from: 'page 7: the load constant, every multiplier 1' },
    { given: { ...BEST, H: 0.5 }, gives: 11.5, within: 1e-9, from: 'by hand: 25 / 50' },
    { given: { ...BEST, H: 0.7 }, gives: 0, within: 0, from: 'page 8: beyond 63 cm nothing' },
  ],
})

const INCH = 0.0254
const POUND = 0.45359237

/** The same by its pound and inch constants, which are not the metric ones converted. */
export const handLimitInPounds = formula({
  id: 'lift.hand-limit-pounds',
  says: 'Mass one person may lift, pound and inch constants',
  symbol: 'RWL',
  unit: 'kg',
  inputs: HAND_UNITS,
  where: HANDS,
  kind: 'procedure',
  eval: ({ H, V, D, A, FM, CM }) => {
    const [h, v, d, a] = [Math.max(10, H / INCH), V / INCH, Math.max(10, D / INCH), degrees(A)]
    if (h > 25 || v > 70 || d > 70 || a > 135) return 0
    return 51 * POUND * (10 / h) * (1 - 0.0075 * Math.abs(v - 30)) * (0.82 + 1.8 / d) * (1 - 0.0032 * a) * FM * CM
  },
  source: { ref: NIOSH, at: 'pages 7 to 15: 51 lb, 10/H, 1 - 0.0075 |V - 30|, 0.82 + 1.8/D, 1 - 0.0032 A, inches and degrees' },
  examples: [
    {
      given: { H: 10 * INCH, V: 22 * INCH, D: 37 * INCH, A: 0, FM: 0.88, CM: 0.95 },
      gives: 34.814 * POUND,
      within: 0.001,
      from: 'example 4, page 44, origin, recomputed in full',
    },
    {
      given: { H: 20 * INCH, V: 59 * INCH, D: 37 * INCH, A: 0, FM: 0.88, CM: 1 },
      gives: 15.253 * POUND,
      within: 0.001,
      from: 'example 4, pages 44 to 46, destination, recomputed in full',
    },
    { given: { ...BEST, H: 26 * INCH }, gives: 0, within: 0, from: 'page 8: beyond 25 in nothing' },
  ],
})

export const teamLimit = formula({
  id: 'lift.team-limit',
  says: 'Mass two people may lift together',
  symbol: 'm_2',
  unit: 'kg',
  inputs: { m_1: 'kg' },
  where: { m_1: 'what one of them may' },
  shows: '2 / 3 * 2 * m_1',
  eval: ({ m_1 }) => (2 / 3) * 2 * m_1,
  source: { ref: 'from memory, HSE L23', at: 'a team of two lifts two thirds of the sum' },
  examples: [{ given: { m_1: 23 }, gives: 30.6667, within: 1e-4, from: 'derived here' }],
})
