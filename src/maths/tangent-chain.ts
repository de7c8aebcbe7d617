/**
 * A plane curve of arcs and straight lines, each tangent to the next, walked by its own length.
 *
 * Coordinates y (outboard) and z (up), m. Heading is the direction of travel: 0 level outboard, pi/2 straight
 * down, rad. Curvature is 1/radius, positive where the heading grows (convex outward), 0 on a line.
 * Offsets are measured inward along the normal. Everything here is exact: no sampling, no iteration.
 */
export type ChainPiece =
  | { readonly kind: 'arc'; readonly name: string; readonly radius: number; readonly to: number }
  | { readonly kind: 'line'; readonly name: string; readonly length: number }

export interface ChainElement {
  readonly name: string
  readonly curvature: number
  readonly girth0: number
  readonly girth1: number
  readonly heading0: number
  readonly heading1: number
  /** sine and cosine of heading0 */
  readonly sin0: number
  readonly cos0: number
  readonly y0: number
  readonly z0: number
}

export interface TangentChain {
  readonly elements: readonly ChainElement[]
  readonly length: number
}

export interface ChainPoint {
  readonly y: number
  readonly z: number
  readonly heading: number
}

/** Walks the pieces from a start point. Throws where an arc turns against the sign of its radius. */
export function buildChain(start: ChainPoint, pieces: readonly ChainPiece[]): TangentChain {
  const elements: ChainElement[] = []
  let { y, z, heading } = start
  let girth = 0
  for (const piece of pieces) {
    const curvature = piece.kind === 'arc' ? 1 / piece.radius : 0
    const turn = piece.kind === 'arc' ? piece.to - heading : 0
    const run = piece.kind === 'arc' ? turn * piece.radius : piece.length
    if (!(run > 0)) throw new Error(`chain piece "${piece.name}" runs ${run} m: an arc must turn the way its radius bends`)
    const element = {
      name: piece.name,
      curvature,
      girth0: girth,
      girth1: girth + run,
      heading0: heading,
      heading1: heading + turn,
      sin0: Math.sin(heading),
      cos0: Math.cos(heading),
      y0: y,
      z0: z,
    }
    elements.push(element)
    const end = pointOn(element, element.girth1)
    y = end.y
    z = end.z
    heading = element.heading1
    girth = element.girth1
  }
  return { elements, length: girth }
}

/** The element that holds girth g; the last one is carried straight on beyond the end, the first before the start. */
function elementAt(chain: TangentChain, g: number): ChainElement {
  for (const element of chain.elements) if (g <= element.girth1) return element
  return runOut(chain)
}

/** The straight line that carries the chain on past its end (a flange bent up from it starts here). */
function runOut(chain: TangentChain): ChainElement {
  const last = chain.elements[chain.elements.length - 1]
  const end = pointOn(last, last.girth1)
  return {
    name: 'run-out',
    curvature: 0,
    girth0: last.girth1,
    girth1: Number.MAX_VALUE,
    heading0: last.heading1,
    heading1: last.heading1,
    sin0: Math.sin(last.heading1),
    cos0: Math.cos(last.heading1),
    y0: end.y,
    z0: end.z,
  }
}

const headingOn = (e: ChainElement, g: number): number => e.heading0 + e.curvature * (g - e.girth0)

const outOn = (e: ChainElement, g: number): number =>
  e.curvature === 0 ? e.y0 + (g - e.girth0) * e.cos0 : e.y0 + (Math.sin(headingOn(e, g)) - e.sin0) / e.curvature

const heightOn = (e: ChainElement, g: number): number =>
  e.curvature === 0 ? e.z0 - (g - e.girth0) * e.sin0 : e.z0 + (Math.cos(headingOn(e, g)) - e.cos0) / e.curvature

const pointOn = (e: ChainElement, g: number): ChainPoint => ({ y: outOn(e, g), z: heightOn(e, g), heading: headingOn(e, g) })

/** Point, and heading there, at girth g of the curve itself, `offset` m inward along the normal. */
export function at(chain: TangentChain, g: number, offset = 0): ChainPoint {
  const p = pointOn(elementAt(chain, g), g)
  if (offset === 0) return p
  return { y: p.y - offset * Math.sin(p.heading), z: p.z - offset * Math.cos(p.heading), heading: p.heading }
}

/** Height alone, for long lists. */
export const heightAt = (chain: TangentChain, g: number): number => heightOn(elementAt(chain, g), g)

/** How far out alone, for long lists. */
export const outAt = (chain: TangentChain, g: number): number => outOn(elementAt(chain, g), g)

/** The integrals of y and of z along the curve from one girth to another of the same piece, m2. */
export function momentsAlong(chain: TangentChain, from: number, to: number): readonly [y: number, z: number] {
  const e = elementAt(chain, (from + to) / 2)
  const run = to - from
  const s = (from + to) / 2 - e.girth0
  if (e.curvature === 0) return [run * (e.y0 + s * e.cos0), run * (e.z0 - s * e.sin0)]
  const radius = 1 / e.curvature
  const middle = e.heading0 + e.curvature * s
  const chord = 2 * radius * Math.sin((e.curvature * run) / 2)
  return [
    run * (e.y0 - radius * e.sin0) + radius * chord * Math.sin(middle),
    run * (e.z0 - radius * e.cos0) + radius * chord * Math.cos(middle),
  ]
}

export const headingAt = (chain: TangentChain, g: number): number => headingOn(elementAt(chain, g), g)

/** Length along the parallel curve `offset` m inward, from the start to the foot of the normal at g. */
export function girthAtOffset(chain: TangentChain, g: number, offset: number): number {
  return g - offset * (headingAt(chain, g) - chain.elements[0].heading0)
}

/** The girth whose inward normal foot lies `length` along the parallel curve: the inverse of girthAtOffset. */
export function girthFromOffset(chain: TangentChain, length: number, offset: number): number {
  let before = 0
  for (const e of [...chain.elements, runOut(chain)]) {
    const stretch = 1 - e.curvature * offset
    const run = (e.girth1 - e.girth0) * stretch
    if (length <= before + run) return e.girth0 + (length - before) / stretch
    before += run
  }
  return chain.length
}

/** Girth at height z going down, or null where the curve does not reach it. Headings must lie in 0..pi. */
export function girthAtZ(chain: TangentChain, z: number): number | null {
  const tiny = 1e-12
  if (z > chain.elements[0].z0 + tiny) return null
  for (const e of chain.elements) {
    const endZ = pointOn(e, e.girth1).z
    if (z < endZ - tiny) continue
    if (e.curvature === 0) {
      const slope = e.sin0
      return slope === 0 ? e.girth0 : e.girth0 + Math.max(0, (e.z0 - z) / slope)
    }
    const cosine = e.cos0 + e.curvature * (z - e.z0)
    const heading = Math.acos(Math.min(1, Math.max(-1, cosine)))
    return e.girth0 + Math.max(0, (heading - e.heading0) / e.curvature)
  }
  return null
}

/** The widest place: the largest y of the curve. */
export function widest(chain: TangentChain): { readonly girth: number; readonly y: number; readonly z: number } {
  let best = { girth: 0, y: chain.elements[0].y0, z: chain.elements[0].z0 }
  for (const e of chain.elements) {
    const level = Math.PI / 2
    const turns = e.curvature !== 0 && (e.heading0 - level) * (e.heading1 - level) <= 0
    for (const g of turns ? [e.girth0 + (level - e.heading0) / e.curvature, e.girth1] : [e.girth1]) {
      const p = pointOn(e, g)
      if (p.y > best.y + 1e-15) best = { girth: g, y: p.y, z: p.z }
    }
  }
  return best
}
