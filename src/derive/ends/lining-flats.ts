/**
 * Flat patterns of an end's lining panels: each the flat sheet bent from the line of its rivets on one rib to that on the next, from
 * its row round the header ring to the lining's gap over the floor, with half the lining's lap past each. The panel beside the barrel
 * reaches to the row on the joint frame's lip, over the barrel's lining. Of two panels on a rib the one nearer the joint lies against
 * it, the other one thickness farther in. Heavy (a strip a panel), so not part of derive. Does NOT cover the panel inside the ring,
 * which is domed, nor openings, which are cut when the panel is fitted, nor wrapped ends.
 */

import { depthInside, type Loft, loftAt, normalOf, pointInside, sigmaAtZ } from '../../maths/loft.js'
import { outlineArea } from '../../maths/outline.js'
import type { Flat } from '../../maths/strip/on-strip.js'
import { ontoStrip } from '../../maths/strip/onto.js'
import type { SpaceCurve } from '../../maths/strip/space-curve.js'
import { type DevelopableStrip, stripBetween } from '../../maths/strip/strip.js'
import { type FlatStrip, unroll } from '../../maths/strip/unroll.js'
import { at } from '../../maths/tangent-chain.js'
import { add, scale, type Vec3 } from '../../maths/vec.js'
import { barrelLip } from '../common/barrel-lip.js'
import { endLiningDepth, liningDepth } from '../common/lining-depth.js'
import { edgeCurve } from './edge-curve.js'
import type { Ground } from './ground.js'
import { linedBeside, linedEdge, ringSigma } from './lined-curve.js'
import type { LocalEnd } from './local.js'
import type { Rib } from './members.js'
import { sigmaAtMeridian } from './meridian.js'
import { curveFrom, type RibCurve } from './rib-curve.js'
import type { Located } from './skin.js'
import { sigmaAt } from './surface.js'
import { besideEdge, flatEdgeOf } from './wrapped-flat.js'
import { sheetOutline } from './wrapped-outline.js'

/** A fastener of a panel: down its right-hand or left-hand edge by section girth, or round the ring by azimuth and section girth. */
export type OnPanel =
  | { readonly by: 'right' | 'left'; readonly sigma: number }
  | { readonly by: 'ring'; readonly phi: number; readonly sigma: number }

export interface LiningFlat {
  /** panels of an end that it serves, from 1 at the right joint: its own, and the one of the other hand, turned over */
  readonly panels: readonly number[]
  /** why no flat sheet bends over its ribs, where and by how much; null where one does. The rest is then empty */
  readonly refused: string | null
  /** x down along the right-hand rib from the ring, y toward the left-hand one, seen from outside on the nose; anticlockwise. m */
  readonly outline: readonly Flat[]
  /** on its own hand */
  readonly place: (on: OnPanel) => Flat
  /** from rivet line to rivet line, the laps left out; and as cut. m2 */
  readonly net: number
  readonly area: number
  /** how far it stands off the line the ribs' own shape would have between them, toward the room, at its most. m */
  readonly sag: number
}

/** The distinct panels of an end, those of the right half first; nose and tail are alike. The rib on the centre line has two sides. */
export function liningFlats({ ground, ribs, rows }: LocalEnd): LiningFlat[] {
  const ring = rows.find((row) => row.draft.id === 'lining-cap')?.located ?? []
  const sorted: (Rib | null)[] = [null, ...[...ribs].sort((a, b) => b.phi - a.phi), null]
  const panels = sorted.length - 1
  return sorted.slice(0, panels / 2 + 1).map((right, i): LiningFlat => {
    const own = i + 1
    const hasTwin = own < panels / 2
    return { panels: hasTwin ? [own, panels + 1 - own] : [own], ...flatOf(ground, ring, right, sorted[i + 1]) }
  })
}

interface Edge {
  readonly line: RibCurve
  readonly curve: SpaceCurve
}

/** The rivet line of a panel's edge on a rib, or (null) on the lip of the joint frame. */
function edgeOf(ground: Ground, rib: Rib | null, isRightEdge: boolean): Edge {
  const { thickness, floorGap } = ground.input.lining
  const foot = sigmaAt(ground.loft, floorGap)
  if (!rib) {
    const line = lipLine(ground, isRightEdge ? 1 : -1)
    return { line, curve: edgeCurve(ground.loft, line, ground.input.ends.cap - linedBeside(ground.input), foot) }
  }
  const isNearerJoint = isRightEdge ? rib.phi < -1e-9 : rib.phi > -1e-9
  const line = linedEdge(ground, rib, isNearerJoint ? 0 : thickness.value)
  return { line, curve: edgeCurve(ground.loft, line, ringSigma(ground, rib), foot) }
}

/** The barrel's row on the lip of its joint frame, one thickness inside the barrel's own lining. */
function lipLine({ loft, input }: Ground, hand: 1 | -1): RibCurve {
  const { shell, lining, ends } = input
  const depth = liningDepth(input) + 1.5 * lining.thickness.value
  const atSigma = (sigma: number): Vec3 => {
    const { y, z } = at(loft.section, sigma, depth)
    return [-barrelLip(shell).row, hand * y, z]
  }
  return { phi: (hand * Math.PI) / 2, depth, atSigma, ...curveFrom(loft, ends.cap - linedBeside(input), atSigma) }
}

function flatOf(ground: Ground, ring: readonly Located[], rightRib: Rib | null, leftRib: Rib | null): Omit<LiningFlat, 'panels'> {
  const { loft, input } = ground
  const { lining } = input
  const [right, left] = [edgeOf(ground, rightRib, true), edgeOf(ground, leftRib, false)]
  const strip = stripBetween(right.curve, left.curve)
  if (strip.kind === 'refused') return { refused: strip.says, outline: [], place: () => [Number.NaN, Number.NaN], net: 0, area: 0, sag: 0 }
  const flat = unroll(strip)
  const edges = { p: flatEdgeOf({ flat }, 'p'), q: flatEdgeOf({ flat }, 'q') }
  const areaOf = (points: readonly Flat[]): number => outlineArea(points.map(([x, y]) => [x, y, 0] as const))
  const onto = ontoStrip(strip, flat)
  // against the ring, which lies under the cap and a gore
  const onRing = endLiningDepth(input, 2) + lining.thickness.value / 2
  const by = lining.lap / 2
  // the ring's rivets stand along a curve: the upper edge, cut straight, keeps half a lap from the highest of them
  const [most, least] = [(rightRib?.phi ?? Math.PI / 2) + NEAR, (leftRib?.phi ?? -Math.PI / 2) - NEAR]
  const heights = ring
    .filter(({ phi }) => phi < most && phi > least)
    .map(({ phi, girth }) => fromTop(flat, onto(pointInside(loft, phi, sigmaAtMeridian(loft, phi, girth), onRing))))
    .filter(({ across }) => across > -by && across < strip.rulings[0].length + by)
    .map(({ past }) => past)
  const outline = sheetOutline(flat, edges, { p: by, q: by, top: by + Math.max(0, ...heights), foot: 0 })
  return {
    refused: null,
    outline,
    place: (on) => {
      if (on.by === 'ring') return onto(pointInside(loft, on.phi, on.sigma, onRing))
      const hand = on.by === 'right' ? 'p' : 'q'
      return besideEdge(edges[hand], hand, { p: right, q: left }[hand].line.lengthAt(on.sigma), 0).at
    },
    net: areaOf(netOf(edges)),
    area: areaOf(outline),
    sag: sagOf(loft, strip, right.line.depth),
  }
}

/** Rivets of the ring farther round than this past a panel's ribs are not over it, rad. */
const NEAR = 0.2

/** How far along a sheet's first ruling a place stands, and how far past it. */
function fromTop({ px, py, heading }: FlatStrip, [x, y]: Flat): { readonly across: number; readonly past: number } {
  const [u, v] = [x - px[0], y - py[0]]
  const [c, s] = [Math.cos(heading[0]), Math.sin(heading[0])]
  return { across: u * c + v * s, past: v * c - u * s }
}

/** Rulings left between those that are looked at, and places looked at on each. */
const EVERY = 4
const ACROSS = 8

/** How much deeper a strip lies than a sheet would that goes evenly from the depth of one edge to that of the other, at its most. */
function sagOf(loft: Loft, { rulings }: DevelopableStrip, about: number): number {
  let most = 0
  for (let k = 0; k < rulings.length; k += EVERY) {
    const { from, to, fan } = rulings[k]
    if (fan !== 'none') continue
    // beside the joint an edge lies in the barrel, as deep as where it comes out of it
    const ends = [from, to].map((end) => (end[0] > 0 ? normalDepth(loft, end, about) : about))
    for (let i = 1; i < ACROSS; i++) {
      const v = i / ACROSS
      const point = add(scale(from, 1 - v), scale(to, v))
      if (point[0] > 0) most = Math.max(most, normalDepth(loft, point, about) - (1 - v) * ends[0] - v * ends[1])
    }
  }
  return most
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
