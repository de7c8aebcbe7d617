/** Springs of rubber and what a wheel feels of them; a quarter car on a rough road in closed form. N, m, rad, Pa. */
import { formula } from '../../quantity/formula.js'

const ARM = { ref: 'statics', at: 'virtual work of a swing arm about its tube' }

export const armAngle = formula({
  id: 'ride.arm-angle',
  says: 'Angle of the arm below level under a load, by Newton from its torque',
  symbol: 'a',
  unit: 'rad',
  kind: 'procedure',
  inputs: { K: 'N*m', R: 'm', a_0: 'rad', F: 'N' },
  where: { K: 'torque of the axle for a radian', R: 'length of the arm', a_0: 'angle without load', F: 'load on the wheel' },
  eval: ({ K, R, a_0, F }) => {
    // K (a_0 - a) = F R cos a; between straight down and past level there is one answer for any spring that can hold the load
    let a = a_0 - (F * R) / K
    for (let n = 0; n < 60; n++) {
      const step = (K * (a_0 - a) - F * R * Math.cos(a)) / (-K + F * R * Math.sin(a))
      a -= step
      if (Math.abs(step) < 1e-14) break
    }
    return a
  },
  source: ARM,
  examples: [
    {
      given: { K: 2500, R: 0.15, a_0: Math.PI / 8, F: 6000 },
      gives: (1.88468 * Math.PI) / 180,
      within: 2e-7,
      from: 'derived here in closed form',
    },
    { given: { K: 2500, R: 0.15, a_0: Math.PI / 8, F: 0 }, gives: Math.PI / 8, within: 1e-12, from: 'by hand: no load, no turn' },
    { given: { K: 1000, R: 0.2, a_0: 0.5, F: 2500 }, gives: 0, within: 1e-9, from: 'by hand: 1000 x 0.5 = 2500 x 0.2' },
  ],
})

export const wheelRate = formula({
  id: 'ride.wheel-rate',
  says: 'Rate of the wheel on a swing arm',
  symbol: 'k_w',
  unit: 'N/m',
  inputs: { K: 'N*m', R: 'm', a: 'rad', F: 'N' },
  where: {
    K: 'torque of the axle for a radian',
    R: 'length of the arm',
    a: 'its angle below level under the load',
    F: 'load on the wheel',
  },
  shows: '(K - F * R * sin(a)) / (R * cos(a))^2',
  eval: ({ K, R, a, F }) => (K - F * R * Math.sin(a)) / (R * Math.cos(a)) ** 2,
  source: ARM,
  examples: [
    {
      given: { K: 2500, R: 0.15, a: (1.88468 * Math.PI) / 180, F: 6000 },
      gives: 109914.5,
      within: 1,
      from: 'derived here, and by differences of the load',
    },
  ],
  valid: { a: [-1.2, 1.2] },
})

export const bodyFrequency = formula({
  id: 'ride.body-frequency',
  says: 'Frequency of a body on its spring',
  symbol: 'f',
  unit: 'Hz',
  inputs: { k: 'N/m', m: 'kg' },
  where: { k: 'rate of the wheel', m: 'mass it carries' },
  shows: 'sqrt(k / m) / (2 * pi)',
  eval: ({ k, m }) => Math.sqrt(k / m) / (2 * Math.PI),
  source: { ref: 'mechanics', at: 'one mass on one spring' },
  examples: [{ given: { k: 109914.5, m: 6000 / 9.80665 }, gives: 2.1332, within: 5e-5, from: 'derived here' }],
})

export const bushRate = formula({
  id: 'ride.bush-rate',
  says: 'Torsion rate of a bonded rubber bush, an estimate for a rubber axle',
  symbol: 'K',
  unit: 'N*m',
  inputs: { G: 'Pa', L: 'm', D_i: 'm', D_o: 'm' },
  where: { G: 'shear modulus of the rubber', L: 'length', D_i: 'inner diameter', D_o: 'outer diameter' },
  shows: 'pi * L * G / (1 / D_i^2 - 1 / D_o^2)',
  eval: ({ G, L, D_i, D_o }) => (Math.PI * L * G) / (1 / D_i ** 2 - 1 / D_o ** 2),
  source: { ref: 'engineering handbook page on rubber bushes', at: 'torsion of a bonded bush; the integral of shear over radius' },
  examples: [{ given: { G: 0.64e6, L: 0.06, D_i: 0.025, D_o: 0.05 }, gives: 100.531, within: 1e-3, from: 'derived here' }],
})

export const bushShear = formula({
  id: 'ride.bush-shear',
  says: 'Greatest shear stress of a bonded bush',
  symbol: 'tau',
  unit: 'Pa',
  inputs: { T: 'N*m', L: 'm', D_i: 'm' },
  where: { T: 'torque', L: 'length', D_i: 'inner diameter' },
  shows: '2 * T / (pi * L * D_i^2)',
  eval: ({ T, L, D_i }) => (2 * T) / (Math.PI * L * D_i ** 2),
  source: { ref: 'engineering handbook page on rubber bushes', at: 'shear at the inner face' },
  examples: [{ given: { T: (100.531 * 10 * Math.PI) / 180, L: 0.06, D_i: 0.025 }, gives: 297870, within: 10, from: 'derived here' }],
})

export const compressionModulus = formula({
  id: 'ride.compression-modulus',
  says: 'Modulus of a bonded rubber block in compression',
  symbol: 'E_c',
  unit: 'Pa',
  inputs: { E_0: 'Pa', k: '1', S: '1' },
  where: { E_0: 'modulus in tension', k: 'factor of the hardness', S: 'loaded area over free area' },
  shows: 'E_0 * (1 + 2 * k * S^2)',
  eval: ({ E_0, k, S }) => E_0 * (1 + 2 * k * S ** 2),
  source: { ref: 'Gent and Lindley', at: 'as quoted in SV-JME 60 (2014) 506' },
  examples: [
    { given: { E_0: 2.2e6, k: 0.73, S: 0.5 }, gives: 3.003e6, within: 1, from: 'derived here' },
    { given: { E_0: 2.2e6, k: 0.73, S: 2 }, gives: 15.048e6, within: 1, from: 'derived here' },
  ],
})

export const cornerHeight = formula({
  id: 'ride.corner-height',
  says: 'Height of the corner left between a square tube and a square bar turned by an eighth',
  symbol: 'H',
  unit: 'm',
  inputs: { S_o: 'm', S_i: 'm' },
  where: { S_o: 'inside of the tube', S_i: 'side of the bar' },
  shows: 'S_o / sqrt(2) - S_i / 2',
  eval: ({ S_o, S_i }) => S_o / Math.SQRT2 - S_i / 2,
  source: { ref: 'geometry', at: 'half the diagonal of the tube less half the bar' },
  examples: [{ given: { S_o: 0.07, S_i: 0.04 }, gives: 0.0294975, within: 1e-7, from: 'derived here' }],
})

export const cornerCircle = formula({
  id: 'ride.corner-circle',
  says: 'Largest round cord that lies in that corner without being squeezed',
  symbol: 'd',
  unit: 'm',
  inputs: { H: 'm' },
  where: { H: 'height of the corner' },
  shows: '2 * H / (1 + sqrt(2))',
  eval: ({ H }) => (2 * H) / (1 + Math.SQRT2),
  source: { ref: 'geometry', at: 'circle within a right triangle of that height' },
  examples: [{ given: { H: 0.0294975 }, gives: 0.0244365, within: 1e-7, from: 'derived here' }],
})

export const cordSqueeze = formula({
  id: 'ride.cord-squeeze',
  says: 'Share by which a cord is squeezed in its corner',
  symbol: 'e',
  unit: '1',
  inputs: { d: 'm', d_c: 'm' },
  where: { d: 'largest cord that lies free', d_c: 'diameter of the cord' },
  shows: '1 - d / d_c',
  eval: ({ d, d_c }) => 1 - d / d_c,
  source: { ref: 'geometry', at: 'what is left of the diameter' },
  examples: [{ given: { d: 0.0244365, d_c: 0.029 }, gives: 0.157362, within: 1e-5, from: 'by hand' }],
})

export const cordFill = formula({
  id: 'ride.cord-fill',
  says: 'Share of the corner that its cord fills; rubber keeps its volume, so it must stay under one',
  symbol: 'phi',
  unit: '1',
  inputs: { d_c: 'm', H: 'm' },
  where: { d_c: 'diameter of the cord', H: 'height of the corner, whose area is its square' },
  shows: 'pi * d_c^2 / (4 * H^2)',
  eval: ({ d_c, H }) => (Math.PI * d_c ** 2) / (4 * H ** 2),
  source: { ref: 'geometry', at: 'circle over a right triangle of that height' },
  examples: [{ given: { d_c: 0.029, H: 0.0294975 }, gives: 0.759129, within: 1e-5, from: 'by hand' }],
})

export const coldShrink = formula({
  id: 'ride.cold-shrink',
  says: 'Share by which a length of natural rubber shrinks when cooled through its glass temperature',
  symbol: 's',
  unit: '1',
  inputs: { T_0: 'K', T_g: 'K', T_1: 'K', c_w: '1/K', c_g: '1/K' },
  where: { T_0: 'warm', T_g: 'where it turns to glass', T_1: 'cold', c_w: 'expansion above glass', c_g: 'expansion below' },
  shows: 'c_w * (T_0 - T_g) + c_g * (T_g - T_1)',
  eval: ({ T_0, T_g, T_1, c_w, c_g }) => c_w * (T_0 - T_g) + c_g * (T_g - T_1),
  source: { ref: 'expansion of natural rubber', at: '2.2e-4 per K warm, about 0.7e-4 below -70 C; from memory' },
  examples: [
    { given: { T_0: 296.15, T_g: 203.15, T_1: 203.15, c_w: 2.2e-4, c_g: 0.7e-4 }, gives: 0.02046, within: 1e-9, from: 'derived here' },
    { given: { T_0: 296.15, T_g: 203.15, T_1: 77.15, c_w: 2.2e-4, c_g: 0.7e-4 }, gives: 0.0293, within: 5e-4, from: 'derived here' },
  ],
})

export const roadSpeedDensity = formula({
  id: 'ride.road-speed-density',
  says: "Density of the road's vertical speed under a wheel, one-sided, waviness 2",
  symbol: 'S_0',
  unit: 'm^2/s',
  inputs: { G: 'm^3', n_0: '1/m', V: 'm/s' },
  where: { G: 'displacement density of the road', n_0: 'cycles a metre it is stated at', V: 'speed' },
  shows: '4 * pi^2 * G * n_0^2 * V',
  eval: ({ G, n_0, V }) => 4 * Math.PI ** 2 * G * n_0 ** 2 * V,
  source: { ref: 'ISO 8608', at: 'displacement density falling with the square of the wave number (from memory)' },
  examples: [{ given: { G: 64e-6, n_0: 0.1, V: 25 }, gives: 6.316547e-4, within: 1e-9, from: 'derived here' }],
})

export const whiteBodyRms = formula({
  id: 'ride.white-body-rms',
  says: 'Rms acceleration of the body of a quarter car on a road of waviness 2, every frequency counted',
  symbol: 'sigma',
  unit: 'm/s^2',
  inputs: { S_0: 'm^2/s', m_s: 'kg', m_u: 'kg', k_s: 'N/m', c: 'N*s/m', k_t: 'N/m' },
  where: { S_0: 'density of road speed', m_s: 'body', m_u: 'wheel', k_s: 'spring', c: 'damper', k_t: 'tyre' },
  shows: 'sqrt(S_0 / 4 * (k_t * c / m_s^2 + k_s^2 * (m_s + m_u) / (m_s^2 * c)))',
  eval: ({ S_0, m_s, m_u, k_s, c, k_t }) => Math.sqrt((S_0 / 4) * ((k_t * c) / m_s ** 2 + (k_s ** 2 * (m_s + m_u)) / (m_s ** 2 * c))),
  source: {
    ref: 'random vibration',
    at: 'closed form of a quarter car under white road speed; derived here, and by numerical integration',
  },
  examples: [
    {
      given: { S_0: 6.316547e-4, m_s: 500, m_u: 60, k_s: 45e3, c: 2500, k_t: 350e3 },
      gives: 0.916088,
      within: 1e-5,
      from: 'derived here; numerical integral .9160876',
    },
  ],
})
