/** Masses of sheet parts and members, and their totals. kg, m. */
import { formula, total } from '../../quantity/formula.js'

export const sheetMass = formula({
  id: 'shell.sheet-mass',
  says: 'Mass of a sheet part',
  symbol: 'm',
  unit: 'kg',
  inputs: { rho: 'kg/m^3', t: 'm', A: 'm^2' },
  where: { rho: 'density', t: 'thickness', A: 'net area' },
  shows: 'rho * t * A',
  eval: ({ rho, t, A }) => rho * t * A,
  source: { ref: 'geometry', at: 'volume times density' },
  examples: [{ given: { rho: 2700, t: 0.001, A: 2 }, gives: 5.4, within: 1e-12, from: 'by hand' }],
})

export const memberMass = formula({
  id: 'shell.member-mass',
  says: 'Mass of a member',
  symbol: 'm',
  unit: 'kg',
  inputs: { w: 'kg/m', L: 'm' },
  where: { w: 'mass per length, from the data sheet', L: 'length' },
  shows: 'w * L',
  eval: ({ w, L }) => w * L,
  source: { ref: 'geometry', at: 'length times mass per length' },
  examples: [{ given: { w: 0.474, L: 5.84 }, gives: 2.76816, within: 1e-12, from: 'by hand' }],
})

export const angleMass = formula({
  id: 'shell.angle-mass',
  says: 'Mass of a metre of an angle',
  symbol: 'w',
  unit: 'kg/m',
  inputs: { l: 'm', t: 'm', rho: 'kg/m^3' },
  where: { l: 'width of each leg', t: 'thickness', rho: 'density' },
  shows: '(2 * l - t) * t * rho',
  eval: ({ l, t, rho }) => (2 * l - t) * t * rho,
  source: { ref: 'geometry', at: 'two legs less the corner they share' },
  examples: [{ given: { l: 0.025, t: 0.001, rho: 2700 }, gives: 0.1323, within: 1e-12, from: 'by hand: 49 square millimetres' }],
})

/** A mass the definition states (bought or weighed): carried so that it can stand in a total beside derived ones. */
export const statedMass = formula({
  id: 'shell.stated-mass',
  says: 'Mass as stated in the definition',
  symbol: 'm',
  unit: 'kg',
  inputs: { m: 'kg' },
  where: { m: 'as written' },
  shows: 'm',
  eval: ({ m }) => m,
  source: { ref: 'the definition', at: 'bought or weighed, as the shop wrote it' },
  examples: [{ given: { m: 24 }, gives: 24, within: 0, from: 'by hand' }],
})

export const massTotal = total({
  id: 'shell.mass-total',
  says: 'Total mass',
  symbol: 'M',
  unit: 'kg',
  source: { ref: 'geometry', at: 'masses add' },
  examples: [{ given: { skins: 52.3, hoops: 19.4 }, gives: 71.7, within: 1e-12, from: 'by hand' }],
})

export const rivetMass = formula({
  id: 'shell.rivet-mass',
  says: 'Mass of one rivet as it is bought',
  symbol: 'm',
  unit: 'kg',
  inputs: { rho: 'kg/m^3', D: 'm', L: 'm' },
  where: { rho: 'density of its alloy', D: 'diameter', L: 'length under the head' },
  shows: 'rho * (pi / 4 * D^2 * L + 0.717 * D^3)',
  eval: ({ rho, D, L }) => rho * ((Math.PI / 4) * D ** 2 * L + 0.717 * D ** 3),
  source: {
    ref: 'geometry',
    at: 'shank, and a head as a segment of a ball 2 D across and 0.43 D high, from memory; a blind rivet is taken as full and as long as its grip range, which is rough',
  },
  examples: [
    {
      given: { rho: 2750, D: 0.003175, L: 0.0079375 },
      gives: 2.35928e-4,
      within: 1e-7,
      from: 'derived here: 62.84 and 22.95 cubic millimetres',
    },
  ],
})

export const alikeMass = formula({
  id: 'shell.alike-mass',
  says: 'Mass of several that are alike',
  symbol: 'M',
  unit: 'kg',
  inputs: { n: '1', m: 'kg' },
  where: { n: 'how many', m: 'mass of one' },
  shows: 'n * m',
  eval: ({ n, m }) => n * m,
  source: { ref: 'geometry', at: 'masses add' },
  examples: [{ given: { n: 23, m: 2.36e-4 }, gives: 5.428e-3, within: 1e-12, from: 'by hand' }],
})
