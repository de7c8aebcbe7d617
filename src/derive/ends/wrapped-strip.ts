/**
 * Wrapped gores: each the developable sheet through its two edges, from the cap's row to the toe, at its own mid surface. Where
 * no flat sheet wraps between the edges the gore says so and has no sheet. Gores of the left half mirror those of the right one.
 */
import type { RefusedStrip } from '../../maths/strip/refusal.js'
import { type DevelopableStrip, stripBetween } from '../../maths/strip/strip.js'
import { type FlatStrip, unroll } from '../../maths/strip/unroll.js'
import { scale, type Vec3 } from '../../maths/vec.js'
import { edgeCurve } from './edge-curve.js'
import { edgeDepth, type Ground } from './ground.js'
import { type RibCurve, ribCurve } from './rib-curve.js'

/** One edge of a sheet: the curve it is walked on, and its length from the crown to the cap's row. */
export interface SheetEdge {
  /** azimuth, right positive, rad */
  readonly phi: number
  readonly curve: RibCurve
  readonly from: number
  /** the barrel's joint, not a seam */
  readonly joint: boolean
  /** how far the sheet goes on past the edge, straight on: half the lap, or the tab at the joint. m */
  readonly past: number
}

/** A wrapped sheet, edge p on the right and edge q on the left of it. */
export interface GoreSheet {
  readonly strip: DevelopableStrip
  /** x down along the right-hand edge, y toward the left one */
  readonly flat: FlatStrip
  readonly p: SheetEdge
  readonly q: SheetEdge
  /** unit normals of the rulings, outward */
  readonly out: readonly Vec3[]
  readonly thickness: number
}

export interface WrappedGore {
  /** from 1 at the right joint */
  readonly number: number
  /** the sheet is that of the other half, turned over about the centre plane */
  readonly turned: boolean
  readonly sheet: GoreSheet | null
  readonly refused: RefusedStrip | null
}

export function wrappedGores(ground: Ground): WrappedGore[] {
  const { gores } = ground
  const made: WrappedGore[] = []
  for (let k = 1; k <= gores; k++) {
    const twin = gores + 1 - k
    const alike =
      twin < k &&
      edgeDepth(ground, k, 'left') === edgeDepth(ground, twin, 'right') &&
      edgeDepth(ground, k, 'right') === edgeDepth(ground, twin, 'left')
    made.push(alike ? { ...made[twin - 1], number: k, turned: true } : goreOf(ground, k))
  }
  return made
}

function goreOf(ground: Ground, k: number): WrappedGore {
  const [p, q] = [edgeOf(ground, k, 'right'), edgeOf(ground, k, 'left')]
  const walked = (edge: SheetEdge) => edgeCurve(ground.loft, edge.curve, ground.capSigma(edge.phi), ground.toe)
  const strip = stripBetween(walked(p), walked(q))
  if (strip.kind === 'refused') return { number: k, turned: false, sheet: null, refused: strip }
  return {
    number: k,
    turned: false,
    refused: null,
    sheet: {
      strip,
      flat: unroll(strip),
      p,
      q,
      // p runs down and the rulings to the left, so their product points inward
      out: strip.rulings.map((r) => scale(r.normal, -1)),
      thickness: ground.input.ends.skin.thickness.value,
    },
  }
}

function edgeOf(ground: Ground, k: number, side: 'right' | 'left'): SheetEdge {
  const { ends, shell } = ground.input
  const edge = side === 'right' ? k - 1 : k
  const phi = ground.edges[edge]
  const curve = ribCurve(ground.loft, phi, edgeDepth(ground, k, side))
  const joint = edge === 0 || edge === ground.gores
  return { phi, curve, from: curve.lengthAt(ground.capSigma(phi)), joint, past: (joint ? shell.joint.overlap : ends.lap) / 2 }
}
