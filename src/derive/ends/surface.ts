/** The lofted surface of an end section, and points at a depth inside it along its normal. Local axes: x outward, y right, z up. */
import type { Definition } from '../../definition/types.js'
import { glanceAt, type Loft, loftBetween } from '../../maths/loft.js'
import { GAUSS, WEIGHT } from '../../maths/quadrature.js'
import { buildChain, girthAtZ, type TangentChain } from '../../maths/tangent-chain.js'
import type { Vec3 } from '../../maths/vec.js'

export function profileChain(input: Pick<Definition, 'section' | 'ends'>): TangentChain {
  return buildChain({ y: 0, z: input.section.crown, heading: 0 }, input.ends.profile)
}

export function endLoft(input: Pick<Definition, 'section' | 'ends'>, section: TangentChain): Loft {
  return loftBetween(section, profileChain(input), input.ends.exponent)
}

/** Section girth at a waterline. Throws off the section: callers have checked. */
export function sigmaAt(loft: Loft, z: number): number {
  const sigma = girthAtZ(loft.section, z)
  if (sigma === null) throw new Error(`WL ${z} m is off the section`)
  return sigma
}

export interface Patch {
  readonly area: number
  /** centroid, local axes, m */
  readonly centre: Vec3
}

/** Area and centroid of the surface between two azimuths, between two section girths given by azimuth. m2, m. */
export function patchArea(loft: Loft, phi0: number, phi1: number, top: (phi: number) => number, foot: (phi: number) => number): Patch {
  let [area, x, y, z] = [0, 0, 0, 0]
  const parts = Math.max(1, Math.ceil(Math.abs(phi1 - phi0) / 0.35))
  const width = (phi1 - phi0) / parts
  for (let k = 0; k < parts; k++)
    for (let j = 0; j < 5; j++) {
      const phi = phi0 + (k + GAUSS[j]) * width
      const [c, s] = [Math.cos(phi), Math.sin(phi)]
      const [from, sigma1] = [top(phi), foot(phi)]
      const stops = [from, ...loft.breaks.filter((b) => b > from + 1e-9 && b < sigma1 - 1e-9), sigma1]
      for (let i = 0; i + 1 < stops.length; i++) {
        const step = stops[i + 1] - stops[i]
        for (let q = 0; q < 5; q++) {
          const p = glanceAt(loft, phi, stops[i] + GAUSS[q] * step)
          const [px, py] = [p.rPhi * c - p.r * s, p.rPhi * s + p.r * c]
          const nx = -p.zSigma * py
          const ny = p.zSigma * px
          const nz = p.rSigma * (c * py - s * px)
          const a = WEIGHT[j] * WEIGHT[q] * Math.abs(width) * step * Math.sqrt(nx * nx + ny * ny + nz * nz)
          area += a
          x += a * p.r * c
          y += a * p.r * s
          z += a * p.z
        }
      }
    }
  return { area, centre: [x / area, y / area, z / area] }
}
