/**
 * The shape that blanks of formed panels are made to: the lofted end, where it is parted, how far each sheet reaches past its
 * rivet lines and how deep it lies. `BlanksInput` is all that a blank depends on, and nothing else is, so that its text can
 * stand for the blank: windows, rivets and stations are not in it. Local axes of an end. m, rad.
 */

import type { ProfileElement } from '../../definition/types.js'
import { edgeAzimuths, goreCount } from '../../derive/end-names.js'
import { overAt } from '../../derive/ends/ground.js'
import type { Derived } from '../../derive/index.js'
import { type Loft, loftAt, loftBetween, normalOf, pointOf } from '../../maths/loft.js'
import { buildChain, type TangentChain } from '../../maths/tangent-chain.js'
import type { Vec3 } from '../../maths/vec.js'

export interface BlanksInput {
  /** half section of the barrel, crown to toe, on the outer mould line */
  readonly chain: TangentChain
  readonly crown: number
  readonly profile: readonly ProfileElement[]
  readonly exponent: number
  readonly seams: readonly number[]
  /** crown to the cap's row along each meridian */
  readonly cap: number
  /** full laps of the gore seams and of the cap */
  readonly lap: number
  /** sheet of the ends and of the barrel */
  readonly thickness: number
  readonly barrel: number
  readonly joint: { readonly overlap: number; readonly over: 'barrel' | 'end' }
  /** how far the sheet runs on past the toe */
  readonly flange: number
}

export function blanksInput({ definition, endSections }: Pick<Derived, 'definition' | 'endSections'>): BlanksInput {
  const { ends, shell, section } = definition
  const { handed, toe } = endSections.local.ground
  return Object.freeze({
    chain: handed.chain,
    crown: section.crown,
    profile: ends.profile,
    exponent: ends.exponent,
    seams: ends.seams,
    cap: ends.cap,
    lap: ends.lap,
    thickness: ends.skin.thickness.value,
    barrel: shell.skin.thickness.value,
    joint: { overlap: shell.joint.overlap, over: shell.joint.over },
    flange: handed.sheetEdge - toe,
  })
}

export interface Shape {
  readonly input: BlanksInput
  readonly loft: Loft
  /** azimuths of the gores' edges from the right joint to the left one */
  readonly edges: readonly number[]
  readonly gores: number
  /** section girth of the toe */
  readonly toe: number
}

export function shapeOf(input: BlanksInput): Shape {
  const { chain, crown, profile, exponent, seams } = input
  return {
    input,
    loft: loftBetween(chain, buildChain({ y: 0, z: crown, heading: 0 }, profile), exponent),
    edges: edgeAzimuths(seams),
    gores: goreCount(seams),
    toe: chain.length,
  }
}

/**
 * A place on the outside of an end's sheet: azimuth and section girth, how far past the toe (then sigma is the toe's), and how far
 * back past the joint along the barrel (then the azimuth is a quarter turn).
 */
export interface OnSheet {
  readonly phi: number
  readonly sigma: number
  readonly past: number
  readonly back: number
}

/** Point and outward normal there. Past the toe the sheet runs straight on down its meridian, past the joint along the barrel. */
export function sheetAt(shape: Shape, { phi, sigma, past, back }: OnSheet): { readonly point: Vec3; readonly normal: Vec3 } {
  const p = loftAt(shape.loft, phi, sigma)
  const normal = normalOf(p, phi)
  const [x, y, z] = pointOf(past === 0 ? p : straightOn(p, past), phi)
  return { point: back === 0 ? [x, y, z] : [-back, y, z], normal }
}

function straightOn(p: ReturnType<typeof loftAt>, by: number): ReturnType<typeof loftAt> {
  const speed = Math.sqrt(p.rSigma * p.rSigma + p.zSigma * p.zSigma)
  return { ...p, r: p.r + (by * p.rSigma) / speed, z: p.z + (by * p.zSigma) / speed }
}

/** Point of the sheet's mid surface `depth` inside the outside of an end there. */
export function middleAt(shape: Shape, on: OnSheet, depth: number): Vec3 {
  const { point, normal } = sheetAt(shape, on)
  return [point[0] - depth * normal[0], point[1] - depth * normal[1], point[2] - depth * normal[2]]
}

/** Depth of the mid surface of gore k (from 1) at its right or left edge: under the barrel at the joint, over or under its neighbour. */
export function depthAtEdge(shape: Shape, k: number, side: 'right' | 'left'): number {
  const { thickness, barrel, joint } = shape.input
  const edge = side === 'right' ? k - 1 : k
  if (edge === 0 || edge === shape.gores) return depthAtJoint(joint.over, thickness, barrel)
  const mine = side === 'left' ? 'right' : 'left'
  return overAt(shape, edge) === mine ? thickness / 2 : 1.5 * thickness
}

export const depthAtJoint = (over: 'barrel' | 'end', thickness: number, barrel: number): number =>
  over === 'barrel' ? barrel + thickness / 2 : -thickness / 2

/** From 0 to 1 as x does, level at both ends: how a sheet passes from one depth to another. */
export function eased(x: number): number {
  const t = Math.min(1, Math.max(0, x))
  return t * t * (3 - 2 * t)
}
