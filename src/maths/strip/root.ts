/** A torsal ruling on a straight segment of the (s, t) plane, found between two lines on either side of it. */
import { torsal } from './ruling.js'
import { type EdgePoint, edgePoint, type SpaceCurve } from './space-curve.js'

/** Both ends of a line that may become a ruling. */
export interface Line {
  readonly p: EdgePoint
  readonly q: EdgePoint
}

/** Below this F is nought within the rounding of tangents: the edges are straight and in one plane, and every line will do. */
export const FLAT = 1e-9
/** A line this near torsal serves where F touches nought without crossing it: a tenth of what a ruling is allowed. */
const TOUCH = 1e-7
/** Where the search stops: the size of F's own rounding. */
const STOP = 1e-14

/**
 * The torsal line between a and b, null where there is none. Where F is nought throughout, on a flat facet, every line is one: then it
 * is the one at the share `even` of the way.
 */
export function torsalBetween(edgeP: SpaceCurve, edgeQ: SpaceCurve, a: Line, b: Line, even = 0.5): Line | null {
  const line = (x: number): Line => ({
    p: a.p.at === b.p.at ? a.p : edgePoint(edgeP, a.p.at + (b.p.at - a.p.at) * x),
    q: a.q.at === b.q.at ? a.q : edgePoint(edgeQ, a.q.at + (b.q.at - a.q.at) * x),
  })
  let [x0, f0] = [0, torsal(a.p, a.q)]
  let [x1, f1] = [1, torsal(b.p, b.q)]
  if ((Math.abs(f0) <= FLAT && Math.abs(f1) <= FLAT) || f0 * f1 > 0) {
    const middle = line(even)
    const f = Math.abs(torsal(middle.p, middle.q))
    if (f <= FLAT) return middle
    const near = Math.abs(f0) < Math.abs(f1) ? a : b
    if (Math.min(f, Math.abs(f0), Math.abs(f1)) > TOUCH) return null
    return f <= Math.min(Math.abs(f0), Math.abs(f1)) ? middle : near
  }
  if (f0 === 0) return a
  if (f1 === 0) return b
  // regula falsi as Anderson and Bjorck amended it: never leaves the bracket, and closes in faster than bisection on kinked functions too
  for (let k = 0; k < 80; k++) {
    let x = (x0 * f1 - x1 * f0) / (f1 - f0)
    if (k > 12 && k % 3 === 0) x = (x0 + x1) / 2
    const at = line(x)
    const f = torsal(at.p, at.q)
    if (Math.abs(f) <= STOP || Math.abs(x1 - x0) < 1e-14) return at
    if (f * f1 < 0) [x0, f0] = [x1, f1]
    else {
      const share = 1 - f / f1
      f0 *= share > 0 ? share : 0.5
    }
    ;[x1, f1] = [x, f]
  }
  return line((x0 + x1) / 2)
}
