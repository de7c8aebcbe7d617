/** Figures of an end that can be worked by hand: its reach, its own edge at the joint, its area as a sum of panels. m, rad, m2. */
import { formula, total } from '../../quantity/formula.js'

/** Hollow arcs and arcs that turn back come out right: the sines carry the sign. */
export const arcReach = formula({
  id: 'ends.arc-reach',
  says: 'Reach outward of an arc of the centre-line profile',
  symbol: 'x',
  unit: 'm',
  inputs: { R: 'm', A_0: 'rad', A_1: 'rad' },
  where: { R: 'radius on the outer mould line', A_0: 'heading where it starts', A_1: 'heading where it ends, at most straight down' },
  shows: 'R * (sin(A_1) - sin(A_0))',
  eval: ({ R, A_0, A_1 }) => R * (Math.sin(A_1) - Math.sin(A_0)),
  source: { ref: 'geometry', at: 'arc of a circle' },
  examples: [
    { given: { R: 1.8, A_0: 0, A_1: Math.PI / 12 }, gives: 0.465874, within: 1e-6, from: 'by hand: 1800 x 0.258819' },
    { given: { R: 0.3, A_0: 0, A_1: Math.PI / 2 }, gives: 0.3, within: 1e-12, from: 'by hand: a quarter circle reaches its radius' },
  ],
})

export const endReachSum = total({
  id: 'ends.reach',
  says: 'Reach of the tip beyond the joint frame',
  symbol: 'L',
  unit: 'm',
  source: { ref: 'geometry', at: 'the pieces of the profile add, down to where it heads straight down' },
  examples: [{ given: { roof: 0.465874, brow: 0.408524 }, gives: 0.874398, within: 1e-9, from: 'by hand' }],
})

export const jointEdge = formula({
  id: 'ends.joint-edge',
  says: "Outside of an end's own edge at the joint, toe to toe",
  symbol: 'E',
  unit: 'm',
  inputs: { G: 'm', d: 'm', A: 'rad' },
  where: {
    G: 'girth of the section from the crown to the toe, on the outer mould line',
    d: 'distance of the edge inside the mould line, one barrel sheet; minus where it lies over the barrel',
    A: 'angle the section turns from the crown to the toe',
  },
  shows: '2 * (G - d * A)',
  eval: ({ G, d, A }) => 2 * (G - d * A),
  source: { ref: 'geometry', at: 'parallel curves: each arc loses its distance times its angle' },
  examples: [
    {
      given: { G: 0.3 * Math.PI, d: 0.05, A: Math.PI },
      gives: 0.5 * Math.PI,
      within: 1e-12,
      from: 'by hand: half circles of 300 and 250 mm, twice',
    },
  ],
})

export const endArea = total({
  id: 'ends.area',
  says: 'Area of the whole lofted surface of one end',
  symbol: 'A',
  unit: 'm^2',
  source: { ref: 'geometry', at: 'gores from the edge of the cap to the toe, and the cap, add' },
  examples: [{ given: { 'gore 1': 1.2, 'gore 2': 1.1, cap: 0.3 }, gives: 2.6, within: 1e-12, from: 'by hand' }],
})
