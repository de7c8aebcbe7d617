/**
 * The frame of an end: seam ribs, mid ribs, the header ring behind the cap's edge and the base channel. Each stands in its
 * place along a curve of the skin, some depth in; its outer flange is developed as a straight strip along that curve.
 */

import { rootBetween } from '../../maths/root.js'
import type { Vec3 } from '../../maths/vec.js'
import type { End } from '../end-names.js'
import type { MarkLine, Pattern } from '../nouns.js'
import { clearance, type EndCut } from './cuts.js'
import { type Ground, mirrored } from './ground.js'
import { type LinedCurve, linedCurve, mirroredLined, wrappedLined } from './lined-curve.js'
import { type RibCurve, ribCurve } from './rib-curve.js'

/** A rib's outer flange between two girths of the mould line; `curve` is the flange's own mid surface. */
export interface RibPiece {
  readonly from: number
  readonly to: number
  readonly fromMark: string
  readonly toMark: string
}

export interface Rib {
  /** local id: seam-1 … or mid-1 …; the part is end-seam-rib-1 … */
  readonly row: string
  readonly kind: 'seam' | 'mid'
  readonly number: number
  readonly phi: number
  /** depth of the outer flange's outer face, m */
  readonly under: number
  /** on the mould line */
  readonly outer: RibCurve
  /** on the mid surface of the outer flange */
  readonly flange: RibCurve
  /** the line of the lining's rivets on the inner flange */
  readonly lined: LinedCurve
}

/**
 * A rib is an I. The skin's rivets stand in the upright plane through the crown at the rib's azimuth; the web stands in the plane
 * beside it, toward the joint (from the rib on the centre line, to the right), and that is the plane of its template and its jig; the
 * lining's rivets stand as far on the far side of the web. Offsets of each from the web, right of travel positive, square to the web;
 * drawn as they are across a flange, which leans by its bevel.
 */
export const rivetsBeside = (rib: Pick<Rib, 'phi'>, face: 'outer flange' | 'inner flange', rowOffset: number): number =>
  (rib.phi > -1e-9 ? -1 : 1) * (face === 'outer flange' ? rowOffset : -rowOffset)

/** What is left of each rib, by its row. */
export type Pieces = ReadonlyMap<string, readonly RibPiece[]>

export const ribPart = (end: End, rib: Pick<Rib, 'kind' | 'number'>): string => `${end}-${rib.kind}-rib-${rib.number}`

/** `midRib` gives the curve of gore `number`'s mid rib some depth in where it does not follow the loft. */
export function ribsOf(ground: Ground, midRib: ((number: number, depth: number) => RibCurve) | null): Rib[] {
  const t = ground.input.ends.skin.thickness.value
  const metal = ground.input.shell.frame.thickness.value
  const known = new Map<string, RibCurve>()
  const deep = (phi: number, depth: number): RibCurve => {
    const key = `${Math.abs(phi)} ${depth}`
    const drawn = known.get(key) ?? ribCurve(ground.loft, Math.abs(phi), depth)
    known.set(key, drawn)
    return phi < 0 ? mirrored(drawn) : drawn
  }
  const lines = new Map<string, LinedCurve>()
  const linedOf = (phi: number, under: number, outer: RibCurve): LinedCurve => {
    const key = `${Math.abs(phi)} ${under}`
    const drawn = lines.get(key) ?? linedCurve(ground, { phi: Math.abs(phi), under, outer: phi < 0 ? mirrored(outer) : outer })
    lines.set(key, drawn)
    return phi < -1e-9 ? mirroredLined(drawn) : drawn
  }
  const rib = (kind: Rib['kind'], number: number, phi: number, outer: RibCurve, under: number): Rib => {
    const own = (depth: number): RibCurve => (kind === 'mid' && midRib ? midRib(number, depth) : deep(phi, depth))
    const lined = midRib ? wrappedLined(ground, { phi, under, outer }, own) : linedOf(phi, under, outer)
    return { row: `${kind}-${number}`, kind, number, phi, under, outer, flange: own(under + metal / 2), lined }
  }
  return [
    ...ground.edges.slice(1, -1).map((phi, i) => rib('seam', i + 1, phi, ground.seamCurves[i + 1], 2 * t)),
    ...ground.mids.map((phi, i) => rib('mid', i + 1, phi, ground.midCurves[i], t)),
  ]
}

/** What is left of a rib between the header ring and the base channel when openings have cut it; girths on the mould line. */
export function ribPieces(ground: Ground, rib: Rib, cuts: readonly EndCut[]): RibPiece[] {
  const { shell, ends } = ground.input
  const gap = shell.memberGap
  const top = ends.cap + shell.frame.flange / 2 + gap
  const foot = rib.outer.lengthAt(ground.base ?? ground.floor) - (ground.base === null ? 0 : shell.edgeChannel.height / 2 + gap)
  let pieces: RibPiece[] = [{ from: top, to: foot, fromMark: 'ring', toMark: 'base' }]
  for (const cut of cuts) {
    const reach = (isFramed: boolean) => blockedBy(rib, cut, stopAt(ground, isFramed), top, foot)
    // a rib that is cut ends at the angle that carries it, a little farther off than one that passes the rim ring by
    const blocked = reach(false) && reach(true)
    if (blocked) pieces = pieces.flatMap((p) => without(p, blocked, cut.id))
  }
  const least = shell.rim.minStub
  return pieces.filter((p) => p.to - p.from >= least)
}

/** How far a member stops from a cut's edge: at the rim ring, or at the angle behind it where ribs are cut. m. */
export const stopAt = ({ input: { shell }, handed }: Ground, isFramed: boolean): number =>
  Math.max(handed.rimReach, isFramed ? shell.post.leg : 0) + shell.memberGap

/** Steps a rib is looked along in, and each how many of them it is looked at first. */
const STEPS = 120
const COARSE = 5

/** A rib's outer curve at equal steps of girth from the header ring down. */
type Stops = (i: number) => Vec3

const STOPS = new WeakMap<Rib, { readonly top: number; readonly foot: number; readonly at: Stops }>()

/** Each place is worked out when a cut is first looked for there, once for all cuts of nose and tail. */
function stopsOf(rib: Rib, top: number, foot: number): Stops {
  const known = STOPS.get(rib)
  if (known && known.top === top && known.foot === foot) return known.at
  const points = new Map<number, Vec3>()
  const at = (i: number): Vec3 => {
    const point = points.get(i) ?? rib.outer.atSigma(rib.outer.sigmaAt(top + ((foot - top) * i) / STEPS))
    points.set(i, point)
    return point
  }
  STOPS.set(rib, { top, foot, at })
  return at
}

/** Girths of a rib that come within `stop` of a cut, or null. */
function blockedBy(rib: Rib, cut: EndCut, stop: number, top: number, foot: number): readonly [number, number] | null {
  const stops = stopsOf(rib, top, foot)
  const near = (i: number): number => clearance(cut, stops(i)) - stop
  // a rib that stays well away at every coarse step cannot reach the cut in between
  let closest = Number.POSITIVE_INFINITY
  for (let i = 0; i <= STEPS; i += COARSE) closest = Math.min(closest, near(i))
  if (closest > ((foot - top) * COARSE) / STEPS) return null
  let [first, last] = [0, STEPS]
  while (first <= STEPS && near(first) >= 0) first++
  if (first > STEPS) return null
  while (near(last) >= 0) last--
  const at = (i: number): number => top + ((foot - top) * i) / STEPS
  const exact = (girth: number): number => clearance(cut, rib.outer.atSigma(rib.outer.sigmaAt(girth))) - stop
  const edge = (outside: number, inside: number): number =>
    rootBetween(exact, { x: at(outside), f: near(outside) }, { x: at(inside), f: near(inside) }, { x: NEAR * foot, f: NEAR * foot })
  return [first === 0 ? top : edge(first - 1, first), last === STEPS ? foot : edge(last + 1, last)]
}

/** How near the edge of a cut a rib's end is found, of its girth there. */
const NEAR = 1e-14

function without(p: RibPiece, [from, to]: readonly [number, number], id: string): RibPiece[] {
  if (to <= p.from || from >= p.to) return [p]
  return [...(from > p.from ? [{ ...p, to: from, toMark: id }] : []), ...(to < p.to ? [{ ...p, from: to, fromMark: id }] : [])]
}

/** A straight strip `length` by `width`, its holes on given running lengths. */
export function stripPattern(strip: {
  readonly face: string
  readonly thickness: number
  readonly length: number
  readonly width: number
  readonly flat: Pattern['flat']
  readonly marks?: readonly MarkLine[]
  readonly gaps?: readonly { readonly opening: string; readonly from: number; readonly to: number }[]
  readonly holes: Pattern['holes']
}): Pattern {
  const { face, thickness, length, width, flat, holes } = strip
  const box = (x0: number, x1: number): Pattern['outline'] => [
    [x0, 0, 0],
    [x1, 0, 0],
    [x1, width, 0],
    [x0, width, 0],
  ]
  return Object.freeze({
    face,
    flat,
    thickness,
    outline: box(0, length),
    cuts: (strip.gaps ?? []).map((g) => ({ opening: g.opening, outline: box(g.from, g.to) })),
    marks: strip.marks ?? [],
    holes,
  })
}
