/**
 * One gore bent over its two seam ribs without stretching: whether it can be, and at what price. Everything on the outer mould
 * line, from the crown cap's row to the toe; thicknesses of sheet move it by a millimetre and are left to the pattern itself.
 */
import { edgeCurve } from '../../derive/ends/edge-curve.js'
import type { Ground } from '../../derive/ends/ground.js'
import { type RibCurve, ribCurve } from '../../derive/ends/rib-curve.js'
import { depthInside, loftAt, normalOf, sigmaAtZ } from '../../maths/loft.js'
import { type StripFacts, stripFacts } from '../../maths/strip/facts.js'
import { distanceInside, edgeNormal } from '../../maths/strip/fit.js'
import { type DevelopableStrip, type Strip, stripBetween } from '../../maths/strip/strip.js'
import { unroll } from '../../maths/strip/unroll.js'
import { dot, type Vec3 } from '../../maths/vec.js'

/** How far sheet or edges may turn from ruling to ruling: coarser than a pattern needs, fine enough to judge by. rad */
const TURN = 0.12

/** Azimuths of the two edges, the one nearer the right joint first. rad */
export interface Panel {
  readonly right: number
  readonly left: number
  readonly strip: Strip
}

export function panelBetween(ground: Ground, right: number, left: number): Panel {
  return { right, left, strip: stripBetween(edge(ground, right), edge(ground, left), { turn: TURN }) }
}

function edge(ground: Ground, phi: number) {
  const rib = ribAt(ground, phi)
  return edgeCurve(ground.loft, rib, ground.capSigma(phi), ground.toe)
}

function ribAt(ground: Ground, phi: number): RibCurve {
  return [...ground.seamCurves, ...ground.midCurves].find((c) => c.phi === phi) ?? ribCurve(ground.loft, phi, 0)
}

export interface Inside {
  /** m */
  readonly depth: number
  readonly azimuth: number
  readonly waterline: number
}

/** Where the panel lies furthest inside the loft; null where there is no panel. */
export function insideOf(ground: Ground, { strip }: Panel): Inside | null {
  if (strip.kind === 'refused') return null
  const { depth, point } = distanceInside(strip, (p) => depthInside(ground.loft, p))
  return { depth, azimuth: Math.atan2(point[1], point[0]), waterline: point[2] }
}

export function factsOf(strip: DevelopableStrip): StripFacts {
  return stripFacts(strip, unroll(strip))
}

export interface Kink {
  /** rad, at its largest */
  readonly angle: number
  readonly waterline: number
}

/** Places along a seam at which the kink is looked for. */
const LOOKS = 40

/** Angle between the two panels that share a seam, at its largest; null where either is missing. */
export function seamKink(_ground: Ground, right: Panel, left: Panel): Kink | null {
  if (right.strip.kind === 'refused' || left.strip.kind === 'refused') return null
  const [a, b] = [right.strip, left.strip]
  return largest(a.q.length, (s) => [edgeNormal(a, 'q', s), edgeNormal(b, 'p', s), a.q.at(s)])
}

/** Angle between the outermost panel and the barrel it meets, at its largest. */
export function jointKink(ground: Ground, panel: Panel, side: 'right' | 'left'): Kink | null {
  const { strip } = panel
  if (strip.kind === 'refused') return null
  const [name, curve] = side === 'right' ? (['p', strip.p] as const) : (['q', strip.q] as const)
  const phi = side === 'right' ? Math.PI / 2 : -Math.PI / 2
  return largest(curve.length, (s) => {
    const point = curve.at(s)
    const sigma = sigmaAtZ(ground.loft.section, point[2]) ?? ground.toe
    return [edgeNormal(strip, name, s), normalOf(loftAt(ground.loft, phi, sigma), phi), point]
  })
}

function largest(length: number, at: (s: number) => readonly [Vec3, Vec3, Vec3]): Kink {
  let worst: Kink = { angle: 0, waterline: 0 }
  for (let i = 0; i <= LOOKS; i++) {
    const [a, b, point] = at((length * i) / LOOKS)
    // a panel's normal may point either way: surfaces meet at the lesser angle
    const angle = Math.acos(Math.min(1, Math.abs(dot(a, b))))
    if (angle > worst.angle) worst = { angle, waterline: point[2] }
  }
  return worst
}
