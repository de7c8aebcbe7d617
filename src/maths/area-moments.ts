/** Area and centre of closed outlines of straight and circular edges, exactly. */
import type { Vertex } from './outline.js'
import { outlineArea } from './outline.js'

export interface AreaCentre {
  /** signed, positive anticlockwise */
  readonly area: number
  /** first moments: area times the centre's x and y */
  readonly mx: number
  readonly my: number
}

/** The polygon of the vertices, plus each arc's segment about its own centre of area. */
export function areaMoments(outline: readonly Vertex[]): AreaCentre {
  let [mx, my] = [0, 0]
  for (let i = 0; i < outline.length; i++) {
    const here = outline[i]
    const next = outline[(i + 1) % outline.length]
    const x0 = here[0]
    const y0 = here[1]
    const x1 = next[0]
    const y1 = next[1]
    const bulge = here[2]
    const cross = x0 * y1 - x1 * y0
    mx += (cross * (x0 + x1)) / 6
    my += (cross * (y0 + y1)) / 6
    if (bulge === 0) continue
    const dx = x1 - x0
    const dy = y1 - y0
    const angle = 4 * Math.atan(bulge)
    const chord = Math.hypot(dx, dy)
    const radius = chord / 2 / Math.sin(angle / 2)
    const area = (radius * radius * (angle - Math.sin(angle))) / 2
    // from the arc's centre to the segment's: c^3 / (12 A); the arc's centre lies to the left of the chord where bulge > 0
    const out = chord ** 3 / 12 / Math.abs(area) - Math.abs(radius) * Math.cos(angle / 2)
    const side = Math.sign(bulge)
    mx += area * ((x0 + x1) / 2 + (side * out * dy) / chord)
    my += area * ((y0 + y1) / 2 - (side * out * dx) / chord)
  }
  return { area: outlineArea(outline), mx, my }
}

/** An outline less what is cut out of it, whichever way round each is drawn. Cuts must lie inside and apart. */
export function netMoments(
  outline: readonly Vertex[],
  cuts: readonly (readonly Vertex[])[],
): AreaCentre & { readonly x: number; readonly y: number } {
  const out = { area: 0, mx: 0, my: 0 }
  const add = (o: readonly Vertex[], sign: 1 | -1): void => {
    const m = areaMoments(o)
    const way = sign * Math.sign(m.area)
    out.area += way * m.area
    out.mx += way * m.mx
    out.my += way * m.my
  }
  add(outline, 1)
  for (const cut of cuts) add(cut, -1)
  return { ...out, x: out.mx / out.area, y: out.my / out.area }
}
