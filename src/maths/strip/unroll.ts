/**
 * A developable strip laid flat without strain. Its rulings keep their lengths and their angles to both edges, and turn in the
 * plane by what they turn within the sheet: the signed length of the curve that their directions draw on the unit sphere, which is
 * exact for a developable. The first edge follows by its own arc length along its angle to the rulings.
 *
 * Every integral is Simpson's over a cell of three rulings, with derivatives from the same three: fourth order, though rulings need
 * not be evenly spaced. The second edge is laid by ruling lengths alone, so that its length in the plane proves the whole; about
 * the point of a fan at the second edge it is the other way round.
 *
 * The first edge starts at the origin and its chord runs along +x, y toward the second edge: seen from the side of p' x d.
 */
import { cross, dot, length } from '../vec.js'
import type { Ruling } from './ruling.js'
import type { DevelopableStrip } from './strip.js'

/** One entry a ruling of the strip. m, rad. */
export interface FlatStrip {
  readonly s: readonly number[]
  readonly t: readonly number[]
  readonly px: readonly number[]
  readonly py: readonly number[]
  readonly qx: readonly number[]
  readonly qy: readonly number[]
  /** heading of the ruling, and of both edges where they cross it, counter-clockwise from +x */
  readonly heading: readonly number[]
  readonly pHeading: readonly number[]
  readonly qHeading: readonly number[]
}

type Three = readonly [number, number, number]

/** Integral of g df over a cell, from both at its two bounds and its middle; fourth order over a chain of cells. */
export const overCell = (g: Three, f: Three): number =>
  (g[0] * (4 * f[1] - 3 * f[0] - f[2]) + 4 * g[1] * (f[2] - f[0]) + g[2] * (3 * f[2] + f[0] - 4 * f[1])) / 6

/** The same from the first bound to the middle: both taken as parabolas, whose product Simpson's rule integrates exactly. */
const overHalf = (g: Three, f: Three): number => {
  const [start, middle] = [4 * f[1] - 3 * f[0] - f[2], f[2] - f[0]]
  const quarter = (3 * g[0] + 6 * g[1] - g[2]) / 8
  return (g[0] * start + 2 * quarter * (start + middle) + g[1] * middle) / 12
}

export function unroll(strip: DevelopableStrip): FlatStrip {
  const { rulings } = strip
  const heading = headings(rulings)
  const [px, py] = [[0], [0]]
  for (let k = 0; k + 2 < rulings.length; k += 2) {
    const steps = firstEdge(rulings.slice(k, k + 3), heading.slice(k, k + 3))
    px.push(...steps.map(([x]) => px[k] + x))
    py.push(...steps.map(([, y]) => py[k] + y))
  }
  const last = rulings.length - 1
  return placed(rulings, px, py, heading, -Math.atan2(py[last], px[last]))
}

/** How far the first edge goes over a cell, from its first bound to its middle and to its second. */
function firstEdge([a, m, b]: readonly Ruling[], [headA, headM, headB]: readonly number[]): readonly (readonly [number, number])[] {
  if (a.t === b.t) {
    // about a point of the second edge, which stays where it is: the rulings alone lay the first
    const end = (r: Ruling, head: number) => [r.length * Math.cos(head), r.length * Math.sin(head)] as const
    const [x, y] = end(a, headA)
    return [end(m, headM), end(b, headB)].map(([u, v]) => [x - u, y - v] as const)
  }
  const s: Three = [a.s, m.s, b.s]
  const heads = [headA - a.pAngle, headM - m.pAngle, headB - b.pAngle]
  const cosines: Three = [Math.cos(heads[0]), Math.cos(heads[1]), Math.cos(heads[2])]
  const sines: Three = [Math.sin(heads[0]), Math.sin(heads[1]), Math.sin(heads[2])]
  return [
    [overHalf(cosines, s), overHalf(sines, s)],
    [overCell(cosines, s), overCell(sines, s)],
  ]
}

/** Heading of every ruling, the first one's own angle to the first edge to begin with. */
function headings(rulings: readonly Ruling[]): number[] {
  const heading = [rulings[0].pAngle]
  for (let k = 0; k + 2 < rulings.length; k += 2) {
    const [half, whole] = turns(rulings[k], rulings[k + 1], rulings[k + 2])
    heading.push(heading[k] + half, heading[k] + whole)
  }
  return heading
}

/** How many times as much one half of a cell may turn as the other to be extrapolated. */
const ALIKE = 4

/** Turn of the ruling within the sheet from a cell's first bound to its middle and to its second. */
function turns(a: Ruling, m: Ruling, b: Ruling): readonly [number, number] {
  const [first, second, both] = [turnBetween(a, m), turnBetween(m, b), turnBetween(a, b)]
  // great circles over both halves and over the whole, extrapolated to the curve between them; on halves much alike, since where
  // rulings turn back the curve has a cusp, near which it bends without bound
  if (first * second > 0 && Math.max(first / second, second / first) < ALIKE) {
    const more = (first + second - both) / 3
    // a curve leaves its great circle by its own curvature squared, which here is how fast the sheet bends for what its rulings turn
    const [mine, other] = [first * bent(a, m) ** 2, second * bent(m, b) ** 2]
    return [first + more * (mine === 0 ? 0.5 : mine / (mine + other)), first + second + more]
  }
  // at the cusp only its derivative is smooth
  const asides = [a, m, b].map((r) => cross(r.normal, r.direction))
  let [half, whole] = [0, 0]
  for (let x = 0; x < 3; x++) {
    const aside: Three = [asides[0][x], asides[1][x], asides[2][x]]
    const direction: Three = [a.direction[x], m.direction[x], b.direction[x]]
    half += overHalf(aside, direction)
    whole += overCell(aside, direction)
  }
  return [half, whole]
}

const bent = (a: Ruling, b: Ruling): number => length(cross(a.normal, b.normal))

/** Angle between two rulings, counter-clockwise about the sheet's normal. */
function turnBetween(a: Ruling, b: Ruling): number {
  const axis = cross(a.direction, b.direction)
  const angle = Math.atan2(length(axis), dot(a.direction, b.direction))
  return dot(axis, a.normal) + dot(axis, b.normal) < 0 ? -angle : angle
}

/** Turned by `by` about the origin as one piece, with the second edge at the far ends of the rulings. */
function placed(rulings: readonly Ruling[], x: readonly number[], y: readonly number[], heading: readonly number[], by: number): FlatStrip {
  const [c, s] = [Math.cos(by), Math.sin(by)]
  const px = x.map((each, k) => c * each - s * y[k])
  const py = x.map((each, k) => s * each + c * y[k])
  const turned = heading.map((each) => each + by)
  return Object.freeze({
    s: rulings.map((r) => r.s),
    t: rulings.map((r) => r.t),
    px,
    py,
    qx: px.map((each, k) => each + rulings[k].length * Math.cos(turned[k])),
    qy: py.map((each, k) => each + rulings[k].length * Math.sin(turned[k])),
    heading: turned,
    pHeading: rulings.map((r, k) => turned[k] - r.pAngle),
    qHeading: rulings.map((r, k) => turned[k] - r.qAngle),
  })
}
