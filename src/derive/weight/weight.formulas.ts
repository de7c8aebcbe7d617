/** Weight and balance: plain statics of masses on a ball and axles. A load is given as the mass that weighs as much. kg, m, N/m. */
import { formula, total } from '../../quantity/formula.js'

const statics = (at: string) => ({ ref: 'statics', at })

export const moment = total({
  id: 'weight.moment',
  says: 'Moment of masses about a plane of the coach',
  symbol: 'M',
  unit: 'kg*m',
  source: statics('moments about one plane add'),
  examples: [{ given: { stove: 22, tank: -3.5 }, gives: 18.5, within: 1e-12, from: 'by hand' }],
})

export const lever = formula({
  id: 'weight.lever',
  says: 'Moment of one thing about a plane of the coach',
  symbol: 'M',
  unit: 'kg*m',
  inputs: { m: 'kg', x: 'm' },
  where: { m: 'its mass', x: 'its centre from the plane' },
  shows: 'm * x',
  eval: ({ m, x }) => m * x,
  source: statics('mass times arm'),
  examples: [{ given: { m: 22, x: 4.1 }, gives: 90.2, within: 1e-12, from: 'by hand' }],
})

export const spindleSum = total({
  id: 'weight.spindle-sum',
  says: 'Stations of the axles added',
  symbol: 'S',
  unit: 'm',
  source: { ref: 'definition', at: 'where the spindles stand' },
  examples: [{ given: { 'axle 1': 4.69, 'axle 2': 5.48 }, gives: 10.17, within: 1e-12, from: 'by hand' }],
})

export const meanAxle = formula({
  id: 'weight.mean-axle',
  says: 'Mean station of the axles',
  symbol: 'x_a',
  unit: 'm',
  inputs: { S: 'm', n: '1' },
  where: { S: 'their stations added', n: 'how many axles there are' },
  shows: 'S / n',
  eval: ({ S, n }) => S / n,
  source: statics('axles that carry alike act where their middle is'),
  examples: [{ given: { S: 10.17, n: 2 }, gives: 5.085, within: 1e-12, from: 'by hand' }],
})

export const centre = formula({
  id: 'weight.centre',
  says: 'Centre of mass from a plane of the coach',
  symbol: 'x_c',
  unit: 'm',
  inputs: { M: 'kg*m', W: 'kg' },
  where: { M: 'moment about the plane', W: 'whole mass' },
  shows: 'M / W',
  eval: ({ M, W }) => M / W,
  source: statics('the centre is where the whole mass has the moment of its parts'),
  examples: [
    {
      given: { M: 3829, W: 1430 },
      gives: 2.677622,
      within: 1e-6,
      from: 'derived here: 420 at 2.6, 380 at 2.75, 150 at 2.8, 160 at 1.6, 140 at 4.3, 120 at 3.0, 60 at 0.9 m',
    },
  ],
})

export const hitchLoad = formula({
  id: 'weight.hitch-load',
  says: 'Load on the ball',
  symbol: 'T',
  unit: 'kg',
  inputs: { W: 'kg', x_c: 'm', b: 'm', x_a: 'm' },
  where: { W: 'whole mass', x_c: 'station of its centre', b: 'station of the ball', x_a: 'mean station of the axles' },
  shows: 'W * (1 - (x_c - b) / (x_a - b))',
  eval: ({ W, x_c, b, x_a }) => W * (1 - (x_c - b) / (x_a - b)),
  source: statics('moments about the mean axle'),
  examples: [
    {
      given: { W: 1430, x_c: 3829 / 1430, b: 0, x_a: 3829 / 1430 / 0.88 },
      gives: 171.6,
      within: 1e-6,
      from: 'derived here: 12 % of 1430',
    },
  ],
})

export const hitchShare = formula({
  id: 'weight.hitch-share',
  says: 'Load on the ball as a share of the whole',
  symbol: 'p',
  unit: '1',
  inputs: { T: 'kg', W: 'kg' },
  where: { T: 'load on the ball', W: 'whole mass' },
  shows: 'T / W',
  eval: ({ T, W }) => T / W,
  source: { ref: 'definition', at: 'hitch load over total weight' },
  examples: [{ given: { T: 214.5, W: 1430 }, gives: 0.15, within: 1e-12, from: 'by hand' }],
})

export const onAxles = formula({
  id: 'weight.on-axles',
  says: 'Load on the axles together',
  symbol: 'A',
  unit: 'kg',
  inputs: { W: 'kg', T: 'kg' },
  where: { W: 'whole mass', T: 'load on the ball' },
  shows: 'W - T',
  eval: ({ W, T }) => W - T,
  source: statics('what the ball does not carry, the axles do'),
  examples: [{ given: { W: 1430, T: 171.6 }, gives: 1258.4, within: 1e-9, from: 'by hand' }],
})

export const axleLoad = formula({
  id: 'weight.axle-load',
  says: 'Load on one axle of a coach that stands level',
  symbol: 'P',
  unit: 'kg',
  inputs: { A: 'kg', n: '1' },
  where: { A: 'load on the axles together', n: 'how many axles there are' },
  shows: 'A / n',
  eval: ({ A, n }) => A / n,
  source: statics('springs alike and pressed alike carry alike'),
  examples: [{ given: { A: 2168, n: 2 }, gives: 1084, within: 1e-12, from: 'by hand' }],
})

export const rightWheel = formula({
  id: 'weight.right-wheel',
  says: 'Load on the right wheel of one axle',
  symbol: 'P_r',
  unit: 'kg',
  inputs: { P: 'kg', W: 'kg', y_c: 'm', n: '1', t: 'm' },
  where: { P: 'load on the axle', W: 'whole mass', y_c: 'buttock line of its centre, right positive', n: 'axles', t: 'track' },
  shows: 'P / 2 + W * y_c / (n * t)',
  eval: ({ P, W, y_c, n, t }) => P / 2 + (W * y_c) / (n * t),
  source: statics('moments about the centre plane; a ball holds none'),
  examples: [{ given: { P: 1000, W: 2200, y_c: 0.02, n: 2, t: 2 }, gives: 511, within: 1e-9, from: 'by hand: 500 + 44 / 4' }],
})

export const leftWheel = formula({
  id: 'weight.left-wheel',
  says: 'Load on the left wheel of one axle',
  symbol: 'P_l',
  unit: 'kg',
  inputs: { P: 'kg', P_r: 'kg' },
  where: { P: 'load on the axle', P_r: 'load on its right wheel' },
  shows: 'P - P_r',
  eval: ({ P, P_r }) => P - P_r,
  source: statics('two wheels carry an axle'),
  examples: [{ given: { P: 1000, P_r: 511 }, gives: 489, within: 1e-12, from: 'by hand' }],
})

export const heightError = formula({
  id: 'weight.height-error',
  says: 'How far the ball may stand off level until one axle carries its rating; below level is negative',
  symbol: 'e',
  unit: 'm',
  inputs: { R: 'kg', P: 'kg', g: 'm/s^2', k: 'N/m', x: 'm', S_1: 'm', S_2: 'm^2' },
  where: {
    R: 'rating of the axle',
    P: 'its load when level',
    g: 'standard gravity',
    k: 'spring rate of one axle, both wheels, the tyres taken as stiff',
    x: 'ball to the axle',
    S_1: 'sum of all such distances',
    S_2: 'sum of their squares',
  },
  shows: '(R - P) * g / (k * (x * S_1 / S_2 - 1))',
  eval: ({ R, P, g, k, x, S_1, S_2 }) => ((R - P) * g) / (k * ((x * S_1) / S_2 - 1)),
  source: statics('springs that do not equalise, moments about a ball raised by e; for two axles within a tenth of k * spacing * e / x_a'),
  examples: [
    {
      given: { R: 1135, P: 1084, g: 9.80665, k: 220000, x: 4.6, S_1: 8.41, S_2: 35.6761 },
      gives: 0.0269459,
      within: 1e-6,
      from: 'derived here: 51 kg, 220 kN/m, and 4.6 x 8.41 / 35.6761 - 1 = 0.084367',
    },
  ],
})

export const stability = formula({
  id: 'weight.stability',
  says: 'Static stability: sideways acceleration, in g, that would tip a rigid coach over',
  symbol: 'a_y',
  unit: '1',
  inputs: { t: 'm', z_c: 'm', z_g: 'm' },
  where: { t: 'track', z_c: 'waterline of the centre of mass', z_g: 'waterline of the ground' },
  shows: 't / (2 * (z_c - z_g))',
  eval: ({ t, z_c, z_g }) => t / (2 * (z_c - z_g)),
  source: { ref: 'static stability factor', at: 'half of the track over the height; from memory, and derived here' },
  examples: [{ given: { t: 2, z_c: 0.5, z_g: -0.5 }, gives: 1, within: 1e-12, from: 'by hand: track 2 m, height 1 m' }],
})

export const capacity = formula({
  id: 'weight.capacity',
  says: 'Cargo the coach may carry',
  symbol: 'C',
  unit: 'kg',
  inputs: { G: 'kg', U: 'kg' },
  where: { G: 'gross rating', U: 'unloaded weight, cylinders full and tanks empty' },
  shows: 'G - U',
  eval: ({ G, U }) => G - U,
  source: { ref: '49 CFR 571.110', at: 'cargo carrying capacity; that cylinders are full, from memory' },
  examples: [{ given: { G: 2360, U: 1775 }, gives: 585, within: 1e-12, from: 'by hand' }],
})

export const water = formula({
  id: 'weight.water',
  says: 'Mass of a full tank',
  symbol: 'm',
  unit: 'kg',
  inputs: { rho: 'kg/m^3', V: 'm^3' },
  where: { rho: 'density of water', V: 'what it holds' },
  shows: 'rho * V',
  eval: ({ rho, V }) => rho * V,
  source: { ref: '49 CFR 571.120', at: 'water is counted at 1 kg a litre' },
  examples: [{ given: { rho: 1000, V: 0.114 }, gives: 114, within: 1e-9, from: 'by hand' }],
})

export const filling = formula({
  id: 'weight.filling',
  says: 'Cargo stowed in one place of a coach that is filled to its gross rating',
  symbol: 'm',
  unit: 'kg',
  inputs: { s: '1', G: 'kg', W: 'kg' },
  where: { s: 'share of this place', G: 'gross rating', W: 'everything else aboard' },
  shows: 's * (G - W)',
  eval: ({ s, G, W }) => s * (G - W),
  source: { ref: 'the definition', at: 'shares of its stowage' },
  examples: [{ given: { s: 0.25, G: 2360, W: 1889 }, gives: 117.75, within: 1e-9, from: 'by hand' }],
})

export const shareOf = formula({
  id: 'weight.share',
  says: 'Share of a mass',
  symbol: 'm',
  unit: 'kg',
  inputs: { s: '1', M: 'kg' },
  where: { s: 'share', M: 'of what' },
  shows: 's * M',
  eval: ({ s, M }) => s * M,
  source: { ref: 'the definition', at: 'growth of each group, or cargo of a place' },
  examples: [{ given: { s: 0.025, M: 297 }, gives: 7.425, within: 1e-12, from: 'by hand' }],
})
