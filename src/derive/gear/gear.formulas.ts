/** Figures of the axle group that can be worked by hand. m, rad. */
import { formula } from '../../quantity/formula.js'

const degree = Math.PI / 180

export const departureAngle = formula({
  id: 'gear.departure-angle',
  says: 'Departure angle, from the last wheel to the lowest edge of the tail',
  symbol: 'A_d',
  unit: 'rad',
  inputs: { x_t: 'm', z_t: 'm', x_s: 'm', z_g: 'm' },
  where: {
    x_t: 'station of the lowest edge of the tail',
    z_t: 'its waterline',
    x_s: 'station of the last spindle',
    z_g: 'waterline of the ground',
  },
  shows: 'atan((z_t - z_g) / (x_t - x_s))',
  eval: ({ x_t, z_t, x_s, z_g }) => Math.atan((z_t - z_g) / (x_t - x_s)),
  source: {
    ref: 'geometry',
    at: 'line from the middle of the contact patch; a tyre that stands ahead of the line makes it a little steeper',
  },
  examples: [
    { given: { x_t: 3, z_t: 0, x_s: 1, z_g: -0.5 }, gives: Math.atan(0.25), within: 1e-12, from: 'by hand: a rise of one in four' },
    {
      given: { x_t: 7.6137, z_t: -0.204, x_s: 5.48, z_g: -0.508 },
      gives: 8.109 * degree,
      within: 0.005 * degree,
      from: 'by hand: 304 over 2133.7',
    },
  ],
})

export const spindleHeight = formula({
  id: 'gear.spindle-height',
  says: 'Waterline of the spindle on its arm',
  symbol: 'z_s',
  unit: 'm',
  inputs: { z_t: 'm', R: 'm', A: 'rad' },
  where: { z_t: 'waterline of the middle of the tube', R: 'length of the arm', A: 'arm below level' },
  shows: 'z_t - R * sin(A)',
  eval: ({ z_t, R, A }) => z_t - R * Math.sin(A),
  source: { ref: 'geometry', at: 'swing arm' },
  examples: [{ given: { z_t: -0.185, R: 0.15, A: Math.PI / 6 }, gives: -0.26, within: 1e-12, from: 'by hand: half of 150 below the tube' }],
})

export const groundLevel = formula({
  id: 'gear.ground-level',
  says: 'Waterline of the ground under a wheel that carries its load',
  symbol: 'z_g',
  unit: 'm',
  inputs: { z_t: 'm', R: 'm', A: 'rad', R_t: 'm', F: 'N', k_t: 'N/m' },
  where: {
    z_t: 'waterline of the middle of the tube',
    R: 'length of the arm',
    A: 'arm below level',
    R_t: 'radius of the tyre standing free',
    F: 'load on the tyre',
    k_t: 'vertical rate of the tyre',
  },
  shows: 'z_t - R * sin(A) - R_t + F / k_t',
  eval: ({ z_t, R, A, R_t, F, k_t }) => z_t - R * Math.sin(A) - R_t + F / k_t,
  source: { ref: 'geometry', at: 'swing arm on a tyre that gives by load over rate' },
  examples: [
    {
      given: { z_t: -0.16, R: 0.15, A: Math.PI / 6, R_t: 0.33, F: 3200, k_t: 320_000 },
      gives: -0.555,
      within: 1e-12,
      from: 'by hand: 160 and 75 and 330 down, 10 up',
    },
  ],
})
