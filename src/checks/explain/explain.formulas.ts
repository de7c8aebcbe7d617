/** What is needed only to explain: how a girth is made of arcs, and how much of a sheet of stock a strake has and takes. m, rad. */
import { formula, total } from '../../quantity/formula.js'
import { findBlindRivet } from '../../tables/rivets.js'

const inch = 0.0254
const lbf = 0.45359237 * 9.80665

export const arcLength = formula({
  id: 'explain.arc-length',
  says: 'Length round an arc of the section',
  symbol: 'l',
  unit: 'm',
  inputs: { R: 'm', A: 'rad' },
  where: { R: 'radius on the outer mould line, minus where it is hollow', A: 'angle turned, minus where it turns back' },
  shows: 'R * A',
  eval: ({ R, A }) => R * A,
  source: { ref: 'geometry', at: 'arc of a circle' },
  examples: [{ given: { R: 0.38, A: (68.5 * Math.PI) / 180 }, gives: 0.4543092, within: 1e-8, from: 'by hand: 380 mm x 68.5 x pi / 180' }],
})

export const girthSum = total({
  id: 'explain.girth',
  says: 'Girth on the outer mould line from the crown',
  symbol: 'G',
  unit: 'm',
  source: { ref: 'geometry', at: 'the pieces of the section add' },
  examples: [{ given: { roof: 0.8482, shoulder: 0.4543 }, gives: 1.3025, within: 1e-12, from: 'by hand' }],
})

export const depthSum = total({
  id: 'explain.lining-depth',
  says: "Depth of the lining's outer face under the mould line",
  symbol: 'd',
  unit: 'm',
  source: { ref: 'geometry', at: 'skin, frame and tape add' },
  examples: [{ given: { skin: 0.81e-3, frame: 57e-3, tape: 1.2e-3 }, gives: 59.01e-3, within: 1e-12, from: 'by hand' }],
})

export const strakeWidth = total({
  id: 'explain.strake-width',
  says: 'Width of a strake round the mould line',
  symbol: 'w',
  unit: 'm',
  source: { ref: 'geometry', at: 'seam to seam, and half of each lap' },
  examples: [{ given: { band: 1.188, upper: 0.0125, lower: 0.0125 }, gives: 1.213, within: 1e-12, from: 'by hand' }],
})

export const stockShare = formula({
  id: 'explain.stock-share',
  says: 'Width of stock there is for one strip',
  symbol: 'w_s',
  unit: 'm',
  inputs: { W: 'm', trim: 'm', n: '1', kerf: 'm' },
  where: {
    W: 'width of the sheet bought',
    trim: 'squared off each mill edge',
    n: 'strips side by side',
    kerf: 'lost in each cut between them',
  },
  shows: '(W - 2 * trim - (n - 1) * kerf) / n',
  eval: ({ W, trim, n, kerf }) => (W - 2 * trim - (n - 1) * kerf) / n,
  source: { ref: 'shop rule', at: 'stock trim and kerf of the definition' },
  examples: [{ given: { W: 48 * inch, trim: 0.0015, n: 2, kerf: 0 }, gives: 0.6081, within: 1e-12, from: 'by hand: (1219.2 - 3) / 2' }],
})

export const blindShear = formula({
  id: 'explain.blind-shear',
  says: 'Shear strength of one blind rivet',
  symbol: 'P_s',
  unit: 'N',
  kind: 'table',
  inputs: { D: 'm' },
  where: { D: 'rivet diameter, nominal' },
  eval: ({ D }) => {
    const found = findBlindRivet(D)
    return found.ok ? found.row.shear.value : Number.NaN
  },
  source: {
    ref: 'IFI-114, 5052 body with aluminium mandrel, to be confirmed',
    at: 'least shear; the maker of a sealed rivet states his own',
  },
  examples: [
    { given: { D: 0.125 * inch }, gives: 120 * lbf, within: 0.01, from: 'IFI-114, to be confirmed' },
    { given: { D: (5 / 32) * inch }, gives: 190 * lbf, within: 0.01, from: 'IFI-114, to be confirmed' },
    { given: { D: (3 / 16) * inch }, gives: 260 * lbf, within: 0.01, from: 'IFI-114, to be confirmed' },
  ],
})
