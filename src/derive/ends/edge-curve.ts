/** Edges of a wrapped panel: a layer over a rib from one place down it to another, walked by its own length, with its tangent. */
import { type Loft, loftAt } from '../../maths/loft.js'
import type { SpaceCurve } from '../../maths/strip/space-curve.js'
import { scale, sub, unit, type Vec3 } from '../../maths/vec.js'
import type { RibCurve } from './rib-curve.js'

/** Half step of the central difference that gives a tangent, of the section's length. */
const H = 2e-6

/** From section girth `top` to `foot`. */
export function edgeCurve(loft: Loft, rib: RibCurve, top: number, foot: number): SpaceCurve {
  const from = rib.lengthAt(top)
  const length = rib.lengthAt(foot) - from
  const sigma = (s: number): number => rib.sigmaAt(from + s)
  const h = H * loft.section.length
  const [c, t] = [Math.cos(rib.phi), Math.sin(rib.phi)]
  const tangent = (s: number): Vec3 => {
    // on the mould line itself the derivative is known
    if (rib.depth === 0) {
      const p = loftAt(loft, rib.phi, sigma(s))
      return unit([p.rSigma * c, p.rSigma * t, p.zSigma])
    }
    // one-sided by a hair at a break, where the curvature jumps but the tangent does not
    const at = sigma(s)
    const [a, b] = [Math.max(at - h, top), Math.min(at + h, foot)]
    return unit(scale(sub(rib.atSigma(b), rib.atSigma(a)), 1 / (b - a)))
  }
  return {
    length,
    at: (s) => rib.atSigma(sigma(s)),
    tangent,
    breaks: apart(
      loft.breaks.filter((b) => b > top + 1e-6 && b < foot - 1e-6),
      loft.section.length,
    ).map((b) => rib.lengthAt(b) - from),
  }
}

/** Where section and profile change curvature at one height but for this much of the section, one break serves: no ruling fits between the two. */
const ONE = 3e-5

function apart(breaks: readonly number[], whole: number): number[] {
  const kept: number[] = []
  for (const b of breaks) if (kept.length === 0 || b - kept[kept.length - 1] > ONE * whole) kept.push(b)
  return kept
}
