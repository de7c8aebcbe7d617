/**
 * Flat patterns of an end's lining panels: each the flat sheet bent over the inner flanges of two neighbouring ribs, from the
 * header ring to the lining's gap over the floor, with half the lining's lap past each rib and past the ring. Heavy (a strip a
 * panel), so not part of derive. Does NOT cover the panel inside the ring, which is domed, nor rivets and openings, which are drilled
 * and cut when the panel is fitted.
 */
import { type Loft, loftAt, normalOf, sigmaAtZ } from '../../maths/loft.js'
import { outlineArea } from '../../maths/outline.js'
import { distanceInside } from '../../maths/strip/fit.js'
import type { Flat } from '../../maths/strip/on-strip.js'
import { stripBetween } from '../../maths/strip/strip.js'
import { unroll } from '../../maths/strip/unroll.js'
import { add, scale, type Vec3 } from '../../maths/vec.js'
import { edgeCurve } from './edge-curve.js'
import type { Ground } from './ground.js'
import type { LocalEnd } from './local.js'
import { type RibCurve, ribCurve } from './rib-curve.js'
import { sigmaAt } from './surface.js'
import { depthInside } from './wrapped-facts.js'
import { flatEdgeOf } from './wrapped-flat.js'
import { sheetOutline } from './wrapped-outline.js'

export interface LiningFlat {
  /** panels of an end that it serves, from 1 at the right joint: its own, and the one of the other hand, turned over */
  readonly panels: readonly number[]
  /** why no flat sheet bends over its ribs, where and by how much; null where one does. The rest is then empty */
  readonly refused: string | null
  /** x down along the right-hand rib from the ring, y toward the left-hand one, seen from outside on the nose; anticlockwise. m */
  readonly outline: readonly Flat[]
  /** between its ribs, the laps left out; and as cut. m2 */
  readonly net: number
  readonly area: number
  /** how far it stands off the line the ribs' own shape would have between them, toward the room, at its most. m */
  readonly sag: number
}

/** The distinct panels of an end, those of the right half first; nose and tail are alike. */
export function liningFlats(local: LocalEnd): LiningFlat[] {
  const { ground } = local
  const ribs = ribsOf(local)
  const panels = ribs.length - 1
  return ribs.slice(0, panels / 2).map((right, i) => flatOf(ground, right, ribs[i + 1], i + 1, panels))
}

/** The lining's mid surface on every rib and both joint frames, from the right joint to the left one. */
function ribsOf({ ground, wrapped }: LocalEnd): RibCurve[] {
  const { ends, shell, lining } = ground.input
  const t = ends.skin.thickness.value
  const behind = shell.frame.height + shell.tape + lining.thickness.value / 2
  const joint = shell.skin.thickness.value + t + behind
  const edges = ground.edges.map((phi, i) => ribCurve(ground.loft, phi, i === 0 || i === ground.gores ? joint : 2 * t + behind))
  const mids = ground.mids.map((phi, i) => (wrapped ? wrapped.midRib(i + 1, t + behind) : ribCurve(ground.loft, phi, t + behind)))
  return [...edges, ...mids].sort((a, b) => b.phi - a.phi)
}

function flatOf(ground: Ground, right: RibCurve, left: RibCurve, panel: number, panels: number): LiningFlat {
  const { lap, floorGap } = ground.input.lining
  const foot = sigmaAt(ground.loft, floorGap)
  const edge = (rib: RibCurve) => edgeCurve(ground.loft, rib, ground.capSigma(rib.phi), foot)
  const strip = stripBetween(edge(right), edge(left))
  const head = { panels: [panel, panels + 1 - panel] }
  if (strip.kind === 'refused') return { ...head, refused: strip.says, outline: [], net: 0, area: 0, sag: 0 }
  const flat = unroll(strip)
  const edges = { p: flatEdgeOf({ flat }, 'p'), q: flatEdgeOf({ flat }, 'q') }
  const outlined = (by: number): Flat[] => sheetOutline(flat, edges, { p: by, q: by, top: by, foot: 0 })
  const areaOf = (points: readonly Flat[]): number => outlineArea(points.map(([x, y]) => [x, y, 0] as const))
  const outline = outlined(lap / 2)
  const shallower = Math.min(right.depth, left.depth)
  return {
    ...head,
    refused: null,
    outline,
    net: areaOf(netOf(edges)),
    area: areaOf(outline),
    sag: distanceInside(strip, (point) => normalDepth(ground.loft, point, shallower) - shallower).depth,
  }
}

/** The panel between its ribs, without laps. */
function netOf({ p, q }: Readonly<Record<'p' | 'q', ReturnType<typeof flatEdgeOf>>>): Flat[] {
  const points = (edge: typeof p): Flat[] => edge.x.map((x, k) => [x, edge.y[k]] as const)
  return [...points(p), ...points(q).reverse()]
}

/** How far a point stands inside the loft along the normal that runs through it; `about` is near enough to start from. m */
function normalDepth(loft: Loft, point: Vec3, about: number): number {
  let depth = about
  let out = normalBeside(loft, point)
  for (let i = 0; i < 12; i++) {
    const foot = add(point, scale(out, depth))
    const miss = depthInside(loft, foot)
    depth += miss
    out = normalBeside(loft, foot)
    if (Math.abs(miss) < 1e-7) break
  }
  return depth
}

/** The loft's normal at a point's azimuth and height; at the crown's height where the point stands over it. */
function normalBeside(loft: Loft, [x, y, z]: Vec3): Vec3 {
  const phi = Math.atan2(y, x)
  return normalOf(loftAt(loft, phi, sigmaAtZ(loft.section, z) ?? 0), phi)
}
