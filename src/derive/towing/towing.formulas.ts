/** Towing: yaw inertia, a trailer alone behind a fixed ball, and damping read from a record. kg, m, N/rad, s. */
import { formula, total } from '../../quantity/formula.js'

export const itemYawInertia = formula({
  id: 'towing.item-yaw-inertia',
  says: "Share of one item in the trailer's yaw inertia, spread evenly over its length and width",
  symbol: 'J_i',
  unit: 'kg*m^2',
  inputs: { m: 'kg', x: 'm', x_c: 'm', y: 'm', L: 'm', B: 'm' },
  where: {
    m: 'mass',
    x: 'station',
    x_c: "station of the trailer's centre of mass",
    y: 'buttock line',
    L: 'how far it reaches along',
    B: 'how far it reaches across',
  },
  shows: 'm * ((x - x_c)^2 + y^2 + (L^2 + B^2) / 12)',
  eval: ({ m, x, x_c, y, L, B }) => m * ((x - x_c) ** 2 + y ** 2 + (L ** 2 + B ** 2) / 12),
  source: { ref: 'mechanics', at: 'a flat plate and the theorem of parallel axes' },
  examples: [{ given: { m: 12, x: 5, x_c: 3, y: 1, L: 6, B: 2 }, gives: 100, within: 1e-9, from: 'by hand: 12 x (4 + 1 + 40 / 12)' }],
})

export const yawInertia = total({
  id: 'towing.yaw-inertia',
  says: "Trailer's yaw inertia about its centre of mass",
  symbol: 'J',
  unit: 'kg*m^2',
  source: { ref: 'mechanics', at: 'inertias about one axis add' },
  examples: [{ given: { rails: 480, tail: 120.5 }, gives: 600.5, within: 1e-9, from: 'by hand' }],
})

export const carYawInertia = formula({
  id: 'towing.car-yaw-inertia',
  says: "Tow car's yaw inertia where nobody has measured it",
  symbol: 'J_1',
  unit: 'kg*m^2',
  inputs: { m: 'kg', a: 'm', b: 'm' },
  where: { m: 'mass', a: 'centre of mass to front axle', b: 'to rear axle' },
  shows: 'm * a * b',
  eval: ({ m, a, b }) => m * a * b,
  source: { ref: 'from memory', at: 'passenger cars have a dynamic index near one' },
  examples: [{ given: { m: 1850, a: 1.35, b: 1.5 }, gives: 3746.25, within: 1e-9, from: 'by hand' }],
})

export const aloneFrequency = formula({
  id: 'towing.alone-frequency',
  says: 'Swing of a trailer behind a ball that stands still sideways, undamped',
  symbol: 'w_n',
  unit: '1/s',
  inputs: { C: 'N', l: 'm', J: 'kg*m^2', m: 'kg', d: 'm' },
  where: { C: 'cornering force of its axles a radian', l: 'ball to axle', J: 'yaw inertia', m: 'mass', d: 'ball to centre of mass' },
  shows: 'sqrt(C * l / (J + m * d^2))',
  eval: ({ C, l, J, m, d }) => Math.sqrt((C * l) / (J + m * d ** 2)),
  source: { ref: 'mechanics', at: 'one freedom about the ball; derived here' },
  examples: [{ given: { C: 110e3, l: 4.4, J: 4500, m: 1800, d: 4.1 }, gives: 3.731602, within: 1e-6, from: 'derived here' }],
})

export const aloneDamping = formula({
  id: 'towing.alone-damping',
  says: 'Damping of that swing, falling as speed rises',
  symbol: 'zeta',
  unit: '1',
  inputs: { C: 'N', l: 'm', J: 'kg*m^2', m: 'kg', d: 'm', V: 'm/s' },
  where: {
    C: 'cornering force of its axles a radian',
    l: 'ball to axle',
    J: 'yaw inertia',
    m: 'mass',
    d: 'ball to centre of mass',
    V: 'speed',
  },
  shows: 'C * l^2 / (2 * V * sqrt(C * l * (J + m * d^2)))',
  eval: ({ C, l, J, m, d, V }) => (C * l ** 2) / (2 * V * Math.sqrt(C * l * (J + m * d ** 2))),
  source: { ref: 'mechanics', at: 'one freedom; that it goes as 1/V is stated in ASME J. Appl. Mech. 24 (4), page 515' },
  examples: [
    { given: { C: 110e3, l: 4.4, J: 4500, m: 1800, d: 4.1, V: 10 }, gives: 0.820952, within: 1e-6, from: 'derived here' },
    { given: { C: 110e3, l: 4.4, J: 4500, m: 1800, d: 4.1, V: 25 }, gives: 0.328381, within: 1e-6, from: 'derived here' },
  ],
})

export const decayDamping = formula({
  id: 'towing.decay-damping',
  says: 'Damping read from two peaks of a yaw record a whole cycle apart',
  symbol: 'zeta',
  unit: '1',
  inputs: { x_1: '1/s', x_2: '1/s' },
  where: { x_1: 'a peak of the yaw rate', x_2: 'the next one on the same side' },
  shows: 'ln(x_1 / x_2) / sqrt(4 * pi^2 + ln(x_1 / x_2)^2)',
  eval: ({ x_1, x_2 }) => Math.log(x_1 / x_2) / Math.sqrt(4 * Math.PI ** 2 + Math.log(x_1 / x_2) ** 2),
  source: { ref: 'logarithmic decrement', at: 'as ISO 9815 uses it for car and trailer (scope read, clauses not)' },
  examples: [{ given: { x_1: 1, x_2: 0.5318 }, gives: 0.1, within: 1e-5, from: 'derived here: a decrement of 0.631484' }],
  valid: { 'x_1 / x_2': [0.2, 50] },
})
