/** How near points come to the curve of a seam or rib, and where a cut crosses it. */
import { clearance, type EndCut, seenOn } from '../../derive/ends/cuts.js'
import type { RibCurve } from '../../derive/ends/rib-curve.js'
import { length, sub, type Vec3 } from '../../maths/vec.js'

/** Steps a whole curve is looked at in; a few centimetres each. */
const STEPS = 64
/** Points that come nearest by those steps are measured exactly, this many of them. */
const FINALISTS = 3

const POLYLINES = new WeakMap<RibCurve, readonly Vec3[]>()

function polyline(curve: RibCurve): readonly Vec3[] {
  const known = POLYLINES.get(curve)
  if (known) return known
  const made = Array.from({ length: STEPS + 1 }, (_, i) => curve.atSigma(curve.sigmaAt((curve.length * i) / STEPS)))
  POLYLINES.set(curve, made)
  return made
}

export interface Nearest {
  /** number of the point in the list given */
  readonly index: number
  readonly distance: number
}

/** The one of some points that is nearest to a curve below a girth on it, by straight lines in space. m. */
export function nearestTo(curve: RibCurve, points: readonly Vec3[], below: number): Nearest {
  const stops = polyline(curve)
  const first = Math.ceil((below / curve.length) * STEPS)
  const rough = points.map((p, index) => {
    let [best, at] = [Number.POSITIVE_INFINITY, 0]
    for (let i = first; i <= STEPS; i++) {
      const d = (p[0] - stops[i][0]) ** 2 + (p[1] - stops[i][1]) ** 2 + (p[2] - stops[i][2]) ** 2
      if (d < best) [best, at] = [d, i]
    }
    return { index, at, distance: Math.sqrt(best) }
  })
  rough.sort((a, b) => a.distance - b.distance)
  return rough
    .slice(0, FINALISTS)
    .map(({ index, at }) => ({ index, distance: closestNear(curve, points[index], at, below) }))
    .reduce((a, b) => (b.distance < a.distance ? b : a))
}

/** Golden section about a stop of the polyline: the distance has one low place there. */
function closestNear(curve: RibCurve, p: Vec3, stop: number, below: number): number {
  const far = (l: number): number => length(sub(curve.atSigma(curve.sigmaAt(l)), p))
  const step = curve.length / STEPS
  let [low, high] = [Math.max(below, (stop - 1) * step), Math.min(curve.length, (stop + 1) * step)]
  for (let i = 0; i < 26; i++) {
    const [a, b] = [low + 0.381966 * (high - low), low + 0.618034 * (high - low)]
    if (far(a) < far(b)) high = b
    else low = a
  }
  return far((low + high) / 2)
}

export interface Crossing {
  readonly point: Vec3
  /** along the curve from the crown, m */
  readonly girth: number
  /** between the curve and the square to the cut's edge, rad; 0 where it runs straight into it */
  readonly slant: number
}

/** Where a curve passes the edge of a cut below a girth on it, from the crown down. */
export function crossings(curve: RibCurve, cut: EndCut, below: number): Crossing[] {
  const stops = polyline(curve)
  const out: Crossing[] = []
  let before = clearance(cut, stops[0])
  for (let i = 1; i <= STEPS; i++) {
    const here = clearance(cut, stops[i])
    if (before >= 0 !== here >= 0) out.push(crossingIn(curve, cut, ((i - 1) * curve.length) / STEPS, (i * curve.length) / STEPS))
    before = here
  }
  return out.filter((c) => c.girth >= below)
}

function crossingIn(curve: RibCurve, cut: EndCut, from: number, to: number): Crossing {
  const at = (l: number): Vec3 => curve.atSigma(curve.sigmaAt(l))
  let [low, high] = [from, to]
  const startsOutside = clearance(cut, at(low)) >= 0
  for (let i = 0; i < 45; i++) {
    const m = (low + high) / 2
    if (clearance(cut, at(m)) >= 0 === startsOutside) low = m
    else high = m
  }
  const point = at(low)
  const [a, b] = [seenOn(cut, at(Math.max(0, low - 1e-4))), seenOn(cut, at(Math.min(curve.length, low + 1e-4)))]
  const [du, dv] = [b[0] - a[0], b[1] - a[1]]
  const [nu, nv] = edgeNormal(cut, seenOn(cut, point))
  return { point, girth: low, slant: Math.acos(Math.min(1, Math.abs(du * nu + dv * nv) / Math.hypot(du, dv))) }
}

/** Square to the cut's edge at a place on it, on the pane. */
function edgeNormal(cut: EndCut, [u, v]: readonly [number, number]): readonly [number, number] {
  const [cu, cv] = [Math.abs(u) - (cut.a - cut.corner), Math.abs(v) - (cut.b - cut.corner)]
  if (cu > 0 && cv > 0) {
    const size = Math.hypot(cu, cv)
    return [(Math.sign(u) * cu) / size, (Math.sign(v) * cv) / size]
  }
  return cu > cv ? [1, 0] : [0, 1]
}
