/**
 * Gores of a sphere by three rules, for whoever must know what a gore cut without forming leaves to force. Equal gores, n to the
 * whole round; s is measured along the gore's mid line from the equator, m; angles rad.
 *
 * Sinusoidal: flat, as wide at each level as its share of the circumference there (handed down among map and balloon makers).
 * Inscribed: the cylinder through two meridians. Tangent: the cylinder that touches the sphere along the mid line.
 */
import { integrate } from '../quadrature.js'
import { curveByLength, type SpaceCurve } from './space-curve.js'

/** Half the width of a sinusoidal gore. */
export const sinusoidalHalfWidth = (radius: number, n: number, s: number): number => ((Math.PI * radius) / n) * Math.cos(s / radius)

/** Half the width of an inscribed gore at the latitude: half the chord between two meridians. */
export const inscribedHalfWidth = (radius: number, n: number, latitude: number): number =>
  radius * Math.cos(latitude) * Math.sin(Math.PI / n)

/** How much longer the edge of a flat sinusoidal gore is than the meridian it must lie on, as a share: over the whole, and at the pole where it is most. */
export function sinusoidalExcess(n: number): { readonly whole: number; readonly most: number } {
  const slope = Math.PI / n
  const edge = integrate((u) => Math.sqrt(1 + (slope * Math.sin(u)) ** 2), 0, Math.PI / 2)
  return { whole: edge / (Math.PI / 2) - 1, most: Math.sqrt(1 + slope * slope) - 1 }
}

/** The seams of a gore about azimuth 0 from `from` to `to`, angles from the pole: meridians for the inscribed rule, ellipses for the tangent one. */
export function goreSeams(
  rule: 'inscribed' | 'tangent',
  radius: number,
  n: number,
  from: number,
  to: number,
): readonly [SpaceCurve, SpaceCurve] {
  const half = Math.PI / n
  const reach = rule === 'inscribed' ? radius : radius / Math.cos(half)
  const seam = (azimuth: number): SpaceCurve => {
    const [c, s] = [reach * Math.cos(azimuth), reach * Math.sin(azimuth)]
    return curveByLength(
      (u) => [c * Math.sin(u), s * Math.sin(u), radius * Math.cos(u)],
      (u) => [c * Math.cos(u), s * Math.cos(u), -radius * Math.sin(u)],
      from,
      to,
    )
  }
  return [seam(-half), seam(half)]
}
