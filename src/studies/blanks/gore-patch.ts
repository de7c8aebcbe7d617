/**
 * A gore with all that is cut with it: half a lap past each seam, the tab under the barrel, half a lap under the cap, the flange
 * past the toe. v runs down from the cap's lap to the flange's edge, u from the left edge to the right one.
 */

import { sigmaAtMeridian } from '../../derive/ends/meridian.js'
import { ribCurve } from '../../derive/ends/rib-curve.js'
import { loftAt } from '../../maths/loft.js'
import type { Panel } from './panel.js'
import { depthAtEdge, eased, middleAt, type OnSheet, type Shape } from './shape.js'

/**
 * The sheet comes up from under the cap over this length down the mid rib, and from under its neighbours over the half width of
 * the gore. How a sheet really passes from one depth to the other is up to the metal; a millimetre over such a length stretches
 * it by a few parts in a hundred thousand.
 */
const EASE = 0.3

/** Places the cap's edge is found at across a gore; between them it is a polynomial, good to a nanometre on a smooth loft. */
const PLACES = 9

export function gorePanel(shape: Shape, k: number): Panel {
  const { loft, toe, edges, input } = shape
  const { thickness: t, lap, cap, flange } = input
  const [right, left] = [edges[k - 1], edges[k]]
  const middle = (right + left) / 2
  const mid = ribCurve(loft, middle, 0)
  const top = topOf(shape, k, cap - lap / 2)
  const [start, whole] = [cap - lap / 2, mid.length - (cap - lap / 2) + flange]
  const topMid = mid.sigmaAt(start)
  const [deepRight, deepLeft] = [depthAtEdge(shape, k, 'right') - t / 2, depthAtEdge(shape, k, 'left') - t / 2]

  /** Share of the way from the cap's lap to the toe by section girth, and how far past the toe. */
  const shareAt = (v: number): { readonly share: number; readonly past: number } => {
    const girth = start + v * whole
    if (girth >= mid.length) return { share: 1, past: girth - mid.length }
    return { share: (mid.sigmaAt(girth) - topMid) / (toe - topMid), past: 0 }
  }
  const girthOf = ({ share, past }: { readonly share: number; readonly past: number }): number =>
    share >= 1 ? mid.length + past : mid.lengthAt(topMid + share * (toe - topMid))
  const spread = (share: number): readonly [left: number, right: number] => [
    left - edgeReach(shape, left, topOfEdge(top, left, share, toe)),
    right + edgeReach(shape, right, topOfEdge(top, right, share, toe)),
  ]
  const onSheet = (u: number, v: number): OnSheet => {
    const { share, past } = shareAt(v)
    const [from, to] = spread(share)
    return placed(shape, from + u * (to - from), top, share, past)
  }
  const locate = (on: OnSheet): readonly [number, number] => {
    const upper = top(on.phi)
    const at = { share: on.past > 0 ? 1 : (on.sigma - upper) / (toe - upper), past: on.past }
    const [from, to] = spread(at.share)
    return [(turned(shape, on) - from) / (to - from), (girthOf(at) - start) / whole]
  }
  const depth = (v: number, on: OnSheet): number => {
    const aside = (turned(shape, on) - middle) / ((right - left) / 2)
    const under = aside > 0 ? deepRight * eased(aside) : deepLeft * eased(-aside)
    return t / 2 + under + t * eased(1 - (start + v * whole - cap) / EASE)
  }
  return {
    id: `gore-${k}`,
    kind: 'gore',
    number: k,
    onSheet,
    locate,
    girthAt: (v) => start + v * whole,
    patch: {
      point: (u, v) => {
        const on = onSheet(u, v)
        return middleAt(shape, on, depth(v, on))
      },
    },
  }
}

/** Section girth of the cap's lap, `girth` down each meridian, as a polynomial through places across the gore (and across its laps). */
function topOf(shape: Shape, k: number, girth: number): (phi: number) => number {
  const { loft, edges } = shape
  const [left, right] = [edges[k], edges[k - 1]]
  const places = Array.from(
    { length: PLACES },
    (_, i) => (left + right) / 2 - ((right - left) / 2) * Math.cos((i * Math.PI) / (PLACES - 1)),
  )
  const values = places.map((phi) => sigmaAtMeridian(loft, phi, girth))
  return (phi) => {
    let [above, below] = [0, 0]
    for (let i = 0; i < PLACES; i++) {
      const off = phi - places[i]
      if (off === 0) return values[i]
      // the barycentric weights of these places: alternating, halved at both ends
      const w = (((i % 2) * -2 + 1) * (i === 0 || i === PLACES - 1 ? 0.5 : 1)) / off
      above += w * values[i]
      below += w
    }
    return above / below
  }
}

const topOfEdge = (top: (phi: number) => number, phi: number, share: number, toe: number): number => top(phi) + share * (toe - top(phi))

/** How much azimuth the sheet reaches past an edge: half a lap square to the seam, or the tab along the barrel. */
function edgeReach(shape: Shape, phi: number, sigma: number): number {
  const { lap, joint } = shape.input
  const p = loftAt(shape.loft, phi, sigma)
  if (Math.abs(phi) > Math.PI / 2 - 1e-9) return Math.atan(joint.overlap / 2 / p.r)
  const along = p.rSigma * p.rSigma + p.zSigma * p.zSigma
  const slope = (p.rPhi * p.rSigma) ** 2 / along
  return lap / 2 / Math.sqrt(p.r * p.r + p.rPhi * p.rPhi - slope)
}

/** Past a quarter turn the azimuth stands for the way back along the barrel. */
function placed(shape: Shape, phi: number, top: (phi: number) => number, share: number, past: number): OnSheet {
  const quarter = Math.PI / 2
  const at = Math.min(quarter, Math.max(-quarter, phi))
  const sigma = top(at) + share * (shape.toe - top(at))
  const back = Math.abs(phi) <= quarter ? 0 : loftAt(shape.loft, at, sigma).r * Math.tan(Math.abs(phi) - quarter)
  return { phi: at, sigma, past, back }
}

function turned(shape: Shape, on: OnSheet): number {
  if (on.back === 0) return on.phi
  return Math.sign(on.phi) * (Math.PI / 2 + Math.atan(on.back / loftAt(shape.loft, on.phi, on.sigma).r))
}
