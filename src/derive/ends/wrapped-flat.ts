/** Places on a wrapped sheet laid flat: along and beside its edges, and on it by azimuth and girth. x down, y from the right edge to the left. m. */
import { loftAt, sigmaAtZ } from '../../maths/loft.js'
import { cubic, type Flat } from '../../maths/strip/on-strip.js'
import type { Ground } from './ground.js'
import { beyondFoot, type SheetCut, sheetAtHeight, sheetTop } from './wrapped-cut.js'
import type { GoreSheet, SheetEdge } from './wrapped-strip.js'

/** An edge laid flat, by its own length from the cap's row; no two of its points are one. */
export interface FlatEdge {
  readonly along: readonly number[]
  readonly x: readonly number[]
  readonly y: readonly number[]
  readonly heading: readonly number[]
}

export type Hand = 'p' | 'q'

/** Of the rulings of a fan that share a point of the edge, the one that leaves the fan counts: the edge's heading is known there. */
export function flatEdgeOf({ flat }: Pick<GoreSheet, 'flat'>, hand: Hand): FlatEdge {
  const [along, x, y, heading] = hand === 'p' ? [flat.s, flat.px, flat.py, flat.pHeading] : [flat.t, flat.qx, flat.qy, flat.qHeading]
  const last = along.length - 1
  const keep = along.flatMap((a, k) => {
    if (a === along[0]) return k === last || along[k + 1] > a ? [k] : []
    // where the sheet's curvature jumps, rulings of both sides may stand at one place
    return along[k - 1] === a ? [] : [k]
  })
  const of = (list: readonly number[]): number[] => keep.map((k) => list[k])
  return { along: of(along), x: of(x), y: of(y), heading: of(heading) }
}

/** A place `s` m along an edge and `off` m beside it, away from the sheet; past the edge's ends straight on. With the edge's heading. */
export function besideEdge(edge: FlatEdge, hand: Hand, s: number, off: number): { readonly at: Flat; readonly heading: number } {
  const { at, heading } = onEdge(edge, s)
  const side = hand === 'p' ? off : -off
  return { at: [at[0] + side * Math.sin(heading), at[1] - side * Math.cos(heading)], heading }
}

function onEdge({ along, x, y, heading }: FlatEdge, s: number): { readonly at: Flat; readonly heading: number } {
  const last = along.length - 1
  if (s <= 0 || s >= along[last]) {
    const k = s <= 0 ? 0 : last
    const on = s - along[k]
    return { at: [x[k] + on * Math.cos(heading[k]), y[k] + on * Math.sin(heading[k])], heading: heading[k] }
  }
  let [low, high] = [0, last]
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (along[middle] <= s) low = middle
    else high = middle
  }
  const run = along[high] - along[low]
  const u = (s - along[low]) / run
  const [h, g] = [heading[low], heading[high]]
  const across = (of: readonly number[], turn: (a: number) => number): readonly [number, number] => {
    const [a, b, ma, mb] = [of[low], of[high], run * turn(h), run * turn(g)]
    const slope = ma + u * (2 * (3 * (b - a) - 2 * ma - mb) + 3 * u * (ma + mb - 2 * (b - a)))
    return [cubic(u, a, b, ma, mb), slope]
  }
  const [[px, dx], [py, dy]] = [across(x, Math.cos), across(y, Math.sin)]
  return { at: [px, py], heading: Math.atan2(dy, dx) }
}

/** What of a fastener says where it stands on a sheet; azimuth on the sheet's own hand. */
export interface OnEnd {
  readonly phi: number
  /** from the crown down the vertical plane at the azimuth, m */
  readonly girth: number
  readonly height: number
  /** by what it stands: a level of the end, a girth down a seam or a mid rib, or (a rim, an opening's edge) its height */
  readonly by: 'cap' | 'base' | 'toe' | 'girth' | 'height'
}

export interface FlatPlaces {
  readonly p: FlatEdge
  readonly q: FlatEdge
  readonly cutAt: (phi: number) => SheetCut
  readonly of: (at: OnEnd) => Flat
  /** a fastener of the barrel: section girth, and metres ahead of the joint */
  readonly atJoint: (girth: number, ahead: number) => Flat
}

/** `cutAt` gives the sheet's cut at an azimuth on its own hand. */
export function flatPlaces(ground: Ground, sheet: GoreSheet, cutAt: (phi: number) => SheetCut): FlatPlaces {
  const edges = { p: flatEdgeOf(sheet, 'p'), q: flatEdgeOf(sheet, 'q') }
  const off = ground.handed.toeRow - ground.toe
  const { cap } = ground.input.ends
  const alongEdge = (edge: SheetEdge, sigma: number): number => edge.curve.lengthAt(sigma) - edge.from
  const sigmaOn = (edge: SheetEdge, girth: number): number => {
    const known = ground.seamCurves.find((c) => Math.abs(c.phi - edge.phi) < 1e-9)
    if (!known) throw new Error(`no curve of an end at azimuth ${edge.phi}`)
    return known.sigmaAt(girth)
  }
  return {
    ...edges,
    cutAt,
    of: ({ phi, girth, height, by }) => {
      for (const hand of ['p', 'q'] as const) {
        const edge = sheet[hand]
        // past a seam the sheet runs on folded along it, so a place keeps its distance from the seam
        const beyond = hand === 'p' ? phi - edge.phi : edge.phi - phi
        if (beyond < -1e-9) continue
        const length = edges[hand].along[edges[hand].along.length - 1]
        if (by === 'toe') return besideEdge(edges[hand], hand, length + off, 0).at
        const sigma = by === 'girth' || by === 'cap' ? sigmaOn(edge, girth) : sigmaAtHeight(ground, height)
        const apart = beyond < 1e-9 ? 0 : loftAt(ground.loft, edge.phi, sigma).r * Math.sin(beyond)
        return besideEdge(edges[hand], hand, alongEdge(edge, sigma), apart).at
      }
      switch (by) {
        case 'cap':
          return sheetTop(sheet, phi).flat
        case 'toe':
          return beyondFoot(sheet, phi, off).flat
        case 'girth':
          return cutAt(phi).atAlong(girth - cap).flat
        default:
          return sheetAtHeight(sheet, phi, height).flat
      }
    },
    atJoint: (girth, ahead) => {
      const hand = sheet.p.joint ? 'p' : 'q'
      return besideEdge(edges[hand], hand, alongEdge(sheet[hand], girth), -ahead).at
    },
  }
}

function sigmaAtHeight({ loft }: Ground, z: number): number {
  const sigma = sigmaAtZ(loft.section, z)
  if (sigma === null) throw new Error(`WL ${z} m is off the end`)
  return sigma
}
