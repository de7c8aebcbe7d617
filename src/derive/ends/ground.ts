/**
 * What every piece of an end section is laid out on: the lofted surface, where it is parted into gores, and the depths of
 * its layers. Nose and tail are alike here; only stations and openings tell them apart. Lengths m, azimuths rad.
 */
import type { Definition } from '../../definition/types.js'
import type { Loft } from '../../maths/loft.js'
import type { TangentChain } from '../../maths/tangent-chain.js'
import { edgeAzimuths, goreCount } from '../end-names.js'
import type { FastenerRow } from '../nouns.js'
import { sigmaAtMeridian } from './meridian.js'
import { loftedOuter, type OuterFace } from './outer.js'
import { type RibCurve, ribCurve } from './rib-curve.js'
import { endLoft, sigmaAt } from './surface.js'

/** The slice of a definition the ends depend on; openings come with each end. */
export type EndInput = Pick<
  Definition,
  'section' | 'shell' | 'lining' | 'ends' | 'fasteners' | 'rows' | 'rules' | 'openings' | 'frames' | 'floor' | 'process'
>

/** What the barrel has settled before its ends are made. */
export interface Handed {
  readonly chain: TangentChain
  /** section girth of the toe flange's rivets and of the sheet's edge, m */
  readonly toeRow: number
  readonly sheetEdge: number
  /** cut to the outer edge of a rim ring, m */
  readonly rimReach: number
}

/** A row of the barrel that runs through a sheet of an end, and which of its fasteners go through each. */
export interface BarrelRow {
  readonly row: FastenerRow
  readonly through: ReadonlyMap<string, readonly number[]>
}

export interface Ground {
  readonly input: EndInput
  readonly handed: Handed
  readonly loft: Loft
  /** azimuths of the gores' edges from the right joint to the left one */
  readonly edges: readonly number[]
  readonly gores: number
  /** azimuths of the mid ribs, one a gore */
  readonly mids: readonly number[]
  /** section girths of the toe, the floor line and the base row; the last null without a floor */
  readonly toe: number
  readonly floor: number
  readonly base: number | null
  /** outer mould line over each seam rib (index 1 to gores - 1; the joints at both ends) and each mid rib (index 0 to gores - 1) */
  readonly seamCurves: readonly RibCurve[]
  readonly midCurves: readonly RibCurve[]
  /** section girth of the cap's row at an azimuth */
  readonly capSigma: (phi: number) => number
  /** the skin as openings meet it */
  readonly outer: OuterFace
}

export function groundOf(input: EndInput, handed: Handed): Ground {
  const loft = endLoft(input, handed.chain)
  const edges = edgeAzimuths(input.ends.seams)
  const gores = goreCount(input.ends.seams)
  const mids = Array.from({ length: gores }, (_, k) => (edges[k] + edges[k + 1]) / 2)
  // the left half mirrors the right one, so each curve is walked once
  const known = new Map<number, RibCurve>()
  const curve = (phi: number): RibCurve => {
    const right = Math.abs(phi)
    const drawn = known.get(right) ?? ribCurve(loft, right, 0)
    known.set(right, drawn)
    return phi < 0 ? mirrored(drawn) : drawn
  }
  return {
    input,
    handed,
    loft,
    edges,
    gores,
    mids,
    toe: handed.chain.length,
    floor: sigmaAt(loft, 0),
    base: input.floor ? sigmaAt(loft, -input.floor.thickness / 2) : null,
    seamCurves: edges.map(curve),
    midCurves: mids.map(curve),
    capSigma: alikeOnBothHands((phi) => sigmaAtMeridian(loft, phi, input.ends.cap)),
    outer: loftedOuter(loft),
  }
}

/** In the section's own plane the profile has no say, so that plane is met exactly. */
const FLANK = Math.round((Math.PI / 2) * 1e10)

/**
 * A figure that is asked for again and again at azimuths that mirror each other, worked out once for both hands, which come to theirs
 * by different sums: to a ten-billionth of a radian, whichever of them asks first.
 */
export function alikeOnBothHands(of: (right: number) => number): (phi: number) => number {
  const known = new Map<number, number>()
  return (phi) => {
    const key = Math.round(Math.abs(phi) * 1e10)
    const found = known.get(key)
    if (found !== undefined) return found
    const value = of(key === FLANK ? Math.PI / 2 : key / 1e10)
    known.set(key, value)
    return value
  }
}

export function mirrored(curve: RibCurve): RibCurve {
  return {
    ...curve,
    phi: -curve.phi,
    atSigma: (sigma) => {
      const [x, y, z] = curve.atSigma(sigma)
      return [x, -y, z]
    },
  }
}

/** The gore (from 1) an azimuth falls on; on a seam, the one nearer the right joint. */
export function goreAt(ground: Pick<Ground, 'edges' | 'gores'>, phi: number): number {
  for (let k = 1; k < ground.gores; k++) if (phi >= ground.edges[k] - 1e-9) return k
  return ground.gores
}

/**
 * The gore nearer the centre line lies over its neighbour, so that on the nose every seam faces away from the driven rain;
 * the tail is made on the same jig. Of two about the centre line the right one lies over.
 */
export function overAt(ground: Pick<Ground, 'edges'>, seam: number): 'right' | 'left' {
  return ground.edges[seam] > 1e-9 ? 'left' : 'right'
}

/** Depth of gore k's mid surface at one of its edges (right or left), m: under the barrel at a joint, under or over its neighbour at a seam. */
export function edgeDepth(ground: Ground, k: number, side: 'right' | 'left'): number {
  const { ends, shell } = ground.input
  const t = ends.skin.thickness.value
  const edge = side === 'right' ? k - 1 : k
  if (edge === 0 || edge === ground.gores) return shell.joint.over === 'barrel' ? shell.skin.thickness.value + t / 2 : t / 2 - t
  const over = overAt(ground, edge)
  // the right-hand neighbour of seam k is gore k: over there when `over` is right
  const mine = side === 'left' ? 'right' : 'left'
  return over === mine ? t / 2 : 1.5 * t
}
