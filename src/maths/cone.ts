/**
 * Cones laid flat: the pattern of a right frustum, and the elements and developed angle of an oblique cone.
 * Lengths in one unit of the caller's choosing, angles rad. A round duct or a tapered fairing is one of these.
 */
import { integrate } from './quadrature.js'

export interface FrustumPattern {
  /** along the cone from rim to rim */
  readonly slant: number
  readonly innerRadius: number
  readonly outerRadius: number
  /** angle of the flat sector */
  readonly sector: number
}

/** The flat pattern of a right circular frustum; throws when it is a cylinder, whose pattern is a rectangle. */
export function frustumPattern(smallDiameter: number, largeDiameter: number, height: number): FrustumPattern {
  const taper = (largeDiameter - smallDiameter) / 2
  if (!(taper > 0) || !(smallDiameter >= 0) || !(height > 0)) {
    throw new Error(`no frustum has diameters ${smallDiameter} and ${largeDiameter} and height ${height}`)
  }
  const slant = Math.hypot(taper, height)
  const outerRadius = (slant * (largeDiameter / 2)) / taper
  return Object.freeze({ slant, innerRadius: outerRadius - slant, outerRadius, sector: (Math.PI * largeDiameter) / outerRadius })
}

/** A cone on a circle of radius r whose apex stands `height` above the base, `offset` from its centre toward angle 0. */
export interface ObliqueCone {
  readonly radius: number
  readonly offset: number
  readonly height: number
}

/** Length of the straight line from the apex to the rim at `angle`. */
export function elementLength({ radius, offset, height }: ObliqueCone, angle: number): number {
  return Math.hypot(radius * Math.cos(angle) - offset, radius * Math.sin(angle), height)
}

/** Angle between two elements once the cone is laid flat. */
export function developedAngle(cone: ObliqueCone, from: number, to: number): number {
  const { radius, offset } = cone
  return integrate(
    (angle) => {
      const rho = elementLength(cone, angle)
      // a step along the rim less its part along the element is what turns the flat pattern
      const across = Math.sqrt((radius * rho) ** 2 - (radius * offset * Math.sin(angle)) ** 2)
      return across / rho ** 2
    },
    from,
    to,
  )
}
