/**
 * A wrapped end as its openings meet it: panes touch the sheets, rims lie on them. The crown cap stays formed, so above its row,
 * and where a gore has no sheet, the skin is the loft.
 */
import { sigmaAtZ } from '../../maths/loft.js'
import type { Vec3 } from '../../maths/vec.js'
import { type Ground, goreAt } from './ground.js'
import { type OuterFace, outsideLoft, skinUnder } from './outer.js'
import { type SheetCut, sheetAtHeight, sheetTop } from './wrapped-cut.js'
import { type Cuts, onHand, ownPhi } from './wrapped-skin.js'
import type { GoreSheet, WrappedGore } from './wrapped-strip.js'

export function wrappedOuter(lofted: Ground, gores: readonly WrappedGore[], cuts: Cuts): OuterFace {
  const { loft, input } = lofted
  /** The sheet at an azimuth that reaches up to a height, with the azimuth on its own hand. */
  const sheetAt = (azimuth: number, z: number): { readonly gore: WrappedGore; readonly sheet: GoreSheet; readonly phi: number } | null => {
    const gore = gores[goreAt(lofted, azimuth) - 1]
    if (!gore.sheet) return null
    const phi = ownPhi(gore, azimuth)
    return z > sheetTop(gore.sheet, phi).point[2] ? null : { gore, sheet: gore.sheet, phi }
  }
  const outside = (p: Vec3): number => {
    if (p[0] < 0 || sigmaAtZ(loft.section, p[2]) === null) return 1
    const on = sheetAt(Math.atan2(p[1], p[0]), p[2])
    if (!on) return outsideLoft(loft, p)
    const skin = sheetAtHeight(on.sheet, on.phi, p[2]).point
    return Math.hypot(p[0], p[1]) / Math.hypot(skin[0], skin[1]) - 1
  }
  return {
    under: (pane, across, up) => skinUnder(outside, loft.section.length / 6, pane, across, up),
    girth: (at) => {
      const on = sheetAt(at.phi, at.point[2])
      return on ? input.ends.cap + cuts(on.sheet, on.phi).atHeight(at.point[2]).along : lofted.outer.girth(at)
    },
    onCentre: (x, z) => {
      const gore = gores[goreAt(lofted, 0) - 1]
      // where a seam runs down the centre line both sheets are on the loft there
      if (!gore.sheet || lofted.edges.some((edge) => Math.abs(edge) < 1e-9)) return lofted.outer.onCentre(x, z)
      const cut = cuts(gore.sheet, 0)
      const along = nearestOnCut(cut, x, z)
      if (along <= 0) return lofted.outer.onCentre(x, z)
      const { point, out } = onHand(gore, cut.atAlong(along))
      return { point, normal: out, girth: input.ends.cap + along }
    },
  }
}

/** The nearest of some even steps down the centre line's cut, then where the way from it stands square on the sheet. */
function nearestOnCut(cut: SheetCut, x: number, z: number): number {
  const far = (along: number): number => {
    const { point } = cut.atAlong(along)
    return (point[0] - x) ** 2 + (point[2] - z) ** 2
  }
  const step = cut.length / 64
  let best = 0
  for (let i = 1; i <= 64; i++) if (far(i * step) < far(best * step)) best = i
  let [low, high] = [(best - 1) * step, (best + 1) * step]
  const past = (along: number): number => {
    const { point, out } = cut.atAlong(along)
    // down the centre line, square to the sheet's normal
    return (point[0] - x) * out[2] - (point[2] - z) * out[0]
  }
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2
    if (past(middle) < 0) low = middle
    else high = middle
  }
  return (low + high) / 2
}
