/**
 * Closed outlines of straight and circular edges, `[x, y, bulge]` with bulge = tan(angle/4), positive anticlockwise.
 * Areas are exact; clipping keeps arcs as arcs.
 */
export type Vertex = readonly [x: number, y: number, bulge: number]

/** A rectangle with all four corners rounded, anticlockwise from its lower left. `corner` may be 0. */
export function roundedRectangle(x0: number, y0: number, x1: number, y1: number, corner: number): Vertex[] {
  const r = Math.min(corner, (x1 - x0) / 2, (y1 - y0) / 2)
  if (r <= 0)
    return [
      [x0, y0, 0],
      [x1, y0, 0],
      [x1, y1, 0],
      [x0, y1, 0],
    ]
  const q = Math.tan(Math.PI / 8)
  return [
    [x0 + r, y0, 0],
    [x1 - r, y0, q],
    [x1, y0 + r, 0],
    [x1, y1 - r, q],
    [x1 - r, y1, 0],
    [x0 + r, y1, q],
    [x0, y1 - r, 0],
    [x0, y0 + r, q],
  ]
}

/** Signed area, m2, positive anticlockwise: the polygon plus each arc's segment. */
export function outlineArea(outline: readonly Vertex[]): number {
  let twice = 0
  let last = outline[outline.length - 1]
  for (let i = 0; i < outline.length; i++) {
    const here = outline[i]
    twice += last[0] * here[1] - here[0] * last[1]
    const bulge = last[2]
    if (bulge !== 0) {
      const angle = 4 * Math.atan(bulge)
      const dx = here[0] - last[0]
      const dy = here[1] - last[1]
      // radius = chord / (2 sin(angle/2)), segment = radius^2 (angle - sin angle) / 2
      twice += ((dx * dx + dy * dy) / (4 * Math.sin(angle / 2) ** 2)) * (angle - Math.sin(angle))
    }
    last = here
  }
  return twice / 2
}

/** Length round the outline, m. */
export function outlineLength(outline: readonly Vertex[]): number {
  let sum = 0
  for (let i = 0; i < outline.length; i++) {
    const [x0, y0, bulge] = outline[i]
    const [x1, y1] = outline[(i + 1) % outline.length]
    const chord = across(x1 - x0, y1 - y0)
    const angle = 4 * Math.atan(bulge)
    sum += bulge === 0 ? chord : (chord * angle) / (2 * Math.sin(angle / 2))
  }
  return sum
}

/** Reverses the direction of an outline and keeps its shape. */
export function reverseOutline(outline: readonly Vertex[]): Vertex[] {
  return outline.map((_, i) => {
    const here = outline[(outline.length - i) % outline.length]
    const before = outline[(outline.length - i - 1 + outline.length) % outline.length]
    return [here[0], here[1], -before[2]] as const
  })
}

/** Maps points by an axis-aligned flip and shift; a mirror turns the arcs' sense. */
export function moveOutline(outline: readonly Vertex[], fx: (x: number) => number, fy: (y: number) => number, mirrored: boolean): Vertex[] {
  const moved = outline.map(([x, y, b]) => [fx(x), fy(y), mirrored ? -b : b] as const)
  return mirrored ? reverseOutline(moved) : moved
}

/** Length of a step; an outline is metres wide, so that nothing is gained by the care `Math.hypot` takes, at five times the price. */
const across = (dx: number, dy: number): number => Math.sqrt(dx * dx + dy * dy)

/** A corner will do, its bulge unread. */
type Place = readonly [x: number, y: number, ...rest: number[]]

interface Piece {
  readonly from: Place
  readonly to: Place
  readonly bulge: number
}

/** The part of a convex outline inside a rectangle; empty where they do not meet. */
export function clipToRectangle(outline: readonly Vertex[], x0: number, y0: number, x1: number, y1: number): Vertex[] {
  const box = boundsOf(outline)
  if (box[0] >= x0 && box[1] >= y0 && box[2] <= x1 && box[3] <= y1) return [...outline]
  let out: Vertex[] = [...outline]
  if (box[0] < x0) out = clipHalf(out, 0, x0, 1)
  if (box[2] > x1) out = clipHalf(out, 0, x1, -1)
  if (box[1] < y0) out = clipHalf(out, 1, y0, 1)
  if (box[3] > y1) out = clipHalf(out, 1, y1, -1)
  return out.length >= 2 && Math.abs(outlineArea(out)) > 1e-14 ? out : []
}

/** A box that certainly holds the outline: each arc reaches at most its sagitta beyond its chord. */
export function boundsOf(outline: readonly Vertex[]): [x0: number, y0: number, x1: number, y1: number] {
  let x0 = Infinity
  let y0 = Infinity
  let x1 = -Infinity
  let y1 = -Infinity
  for (let i = 0; i < outline.length; i++) {
    const here = outline[i]
    const ax = here[0]
    const ay = here[1]
    const bulge = here[2]
    x0 = Math.min(x0, ax)
    y0 = Math.min(y0, ay)
    x1 = Math.max(x1, ax)
    y1 = Math.max(y1, ay)
    if (bulge === 0) continue
    const next = outline[(i + 1) % outline.length]
    const bx = next[0]
    const by = next[1]
    // the arc's middle, exactly; a quarter turn or less between axis points goes no further than its ends and middle's box
    const rise = across(bx - ax, by - ay) * Math.abs(bulge) * 0.5
    const mx = (ax + bx) / 2 + ((by - ay) / 2) * bulge
    const my = (ay + by) / 2 - ((bx - ax) / 2) * bulge
    const slack = turnsAnAxis(bx - ax, by - ay, bulge) ? rise : 0
    x0 = Math.min(x0, mx - slack)
    y0 = Math.min(y0, my - slack)
    x1 = Math.max(x1, mx + slack)
    y1 = Math.max(y1, my + slack)
  }
  return [x0, y0, x1, y1]
}

/** Whether an arc's direction passes an axis inside it, so that it may reach beyond its ends. Tangents are the chord turned by half the sweep. */
function turnsAnAxis(dx: number, dy: number, bulge: number): boolean {
  const half = 2 * Math.atan(Math.abs(bulge)) - 1e-9
  const quarter = Math.PI / 2
  const chord = ((Math.atan2(dy, dx) % quarter) + quarter) % quarter
  return chord < half || quarter - chord < half
}

/** Keeps the side of the line coordinate = limit where sign*(coordinate - limit) >= 0. */
function clipHalf(outline: readonly Vertex[], axis: 0 | 1, limit: number, sign: 1 | -1): Vertex[] {
  const side = (p: Place): number => sign * (p[axis] - limit)
  if (outline.every((corner) => corner[2] === 0 && side(corner) >= 0)) return [...outline]
  const kept: Piece[] = []
  for (let i = 0; i < outline.length; i++) {
    const from = outline[i]
    const to = outline[(i + 1) % outline.length]
    const bulge = from[2]
    // most edges lie on one side whole: an arc of up to half a turn strays from its chord by its sagitta at most
    const near = Math.min(side(from), side(to))
    const far = Math.max(side(from), side(to))
    const sagitta = bulge === 0 ? 0 : Math.abs(bulge) <= 1 ? (across(to[0] - from[0], to[1] - from[1]) * Math.abs(bulge)) / 2 : Infinity
    if (near > sagitta + 1e-12) kept.push({ from, to, bulge })
    if (near > sagitta + 1e-12 || far < -sagitta - 1e-12) continue
    for (const piece of cutEdge(from, to, bulge, axis, limit)) {
      if (side(middle(piece)) > 1e-12 || (piece.bulge === 0 && side(piece.from) >= -1e-12 && side(piece.to) >= -1e-12)) kept.push(piece)
    }
  }
  const out: Vertex[] = []
  kept.forEach((piece, i) => {
    const next = kept[(i + 1) % kept.length]
    out.push([piece.from[0], piece.from[1], piece.bulge])
    if (Math.abs(next.from[0] - piece.to[0]) + Math.abs(next.from[1] - piece.to[1]) > 1e-12) out.push([piece.to[0], piece.to[1], 0])
  })
  return out
}

function middle(p: Piece): [number, number] {
  const mx = (p.from[0] + p.to[0]) / 2
  const my = (p.from[1] + p.to[1]) / 2
  return [mx + ((p.to[1] - p.from[1]) / 2) * p.bulge, my - ((p.to[0] - p.from[0]) / 2) * p.bulge]
}

function cutEdge(a: Place, b: Place, bulge: number, axis: 0 | 1, limit: number): Piece[] {
  if (bulge === 0) {
    const t = (limit - a[axis]) / (b[axis] - a[axis])
    if (!(t > 1e-12 && t < 1 - 1e-12)) return [{ from: a, to: b, bulge }]
    const m: [number, number] = [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])]
    m[axis] = limit
    return [
      { from: a, to: m, bulge: 0 },
      { from: m, to: b, bulge: 0 },
    ]
  }
  const arc = arcOf(a, b, bulge)
  const reach = (limit - (axis === 0 ? arc.cx : arc.cy)) / arc.radius
  if (Math.abs(reach) >= 1) return [{ from: a, to: b, bulge }]
  const base = axis === 0 ? Math.acos(reach) : Math.asin(reach)
  const angles = axis === 0 ? [base, -base] : [base, Math.PI - base]
  const stops = angles
    .map((angle) => turnFrom(arc.start, angle, arc.sweep))
    .filter((t) => t > 1e-12 && t < Math.abs(arc.sweep) - 1e-12)
    .sort((p, q) => p - q)
  const ends = [0, ...stops, Math.abs(arc.sweep)]
  const point = (t: number): Place => {
    if (t === 0) return a
    if (t === Math.abs(arc.sweep)) return b
    const angle = arc.start + Math.sign(arc.sweep) * t
    const p: [number, number] = [arc.cx + arc.radius * Math.cos(angle), arc.cy + arc.radius * Math.sin(angle)]
    p[axis] = limit
    return p
  }
  return ends.slice(1).map((t, i) => ({
    from: point(ends[i]),
    to: point(t),
    bulge: Math.sign(bulge) * Math.tan((t - ends[i]) / 4),
  }))
}

/** Centre, radius, start angle and signed sweep of a bulged edge. */
export function arcOf(a: Place, b: Place, bulge: number) {
  const sweep = 4 * Math.atan(bulge)
  const chord = Math.sqrt((b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2)
  const radius = chord / (2 * Math.abs(Math.sin(sweep / 2)))
  const rise = (1 - bulge * bulge) / (4 * bulge)
  const cx = (a[0] + b[0]) / 2 - rise * (b[1] - a[1])
  const cy = (a[1] + b[1]) / 2 + rise * (b[0] - a[0])
  return { cx, cy, radius, start: Math.atan2(a[1] - cy, a[0] - cx), sweep }
}

function turnFrom(start: number, angle: number, sweep: number): number {
  const full = 2 * Math.PI
  const turn = sweep > 0 ? angle - start : start - angle
  return ((turn % full) + full) % full
}

/** Distance from a point to the boundary of an outline, m; exact on lines and arcs. */
export function distanceToOutline(outline: readonly Vertex[], x: number, y: number): number {
  let best = Infinity
  for (let i = 0; i < outline.length; i++) {
    const a = outline[i]
    const b = outline[(i + 1) % outline.length]
    best = Math.min(best, a[2] === 0 ? distanceToSegment(x, y, a[0], a[1], b[0], b[1]) : distanceToArc(x, y, a, b, a[2]))
  }
  return best
}

function distanceToSegment(x: number, y: number, ax: number, ay: number, bx: number, by: number): number {
  const dx = bx - ax
  const dy = by - ay
  const length2 = dx * dx + dy * dy
  const t = length2 === 0 ? 0 : Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / length2))
  return across(x - ax - t * dx, y - ay - t * dy)
}

function distanceToArc(x: number, y: number, a: Place, b: Place, bulge: number): number {
  const arc = arcOf(a, b, bulge)
  const turn = turnFrom(arc.start, Math.atan2(y - arc.cy, x - arc.cx), arc.sweep)
  if (turn <= Math.abs(arc.sweep)) return Math.abs(across(x - arc.cx, y - arc.cy) - arc.radius)
  return Math.min(across(x - a[0], y - a[1]), across(x - b[0], y - b[1]))
}

/** Whether a point lies inside a closed outline (boundary counts as inside within 1e-12). */
export function insideOutline(outline: readonly Vertex[], x: number, y: number): boolean {
  let winding = 0
  for (let i = 0; i < outline.length; i++) {
    const a = outline[i]
    const b = outline[(i + 1) % outline.length]
    winding += angleSwept(x, y, a[0], a[1], b[0], b[1])
    if (a[2] !== 0 && inSegment(x, y, a, b, a[2])) winding += Math.sign(a[2]) * 2 * Math.PI
  }
  return Math.abs(winding) > Math.PI
}

function angleSwept(x: number, y: number, ax: number, ay: number, bx: number, by: number): number {
  const cross = (ax - x) * (by - y) - (ay - y) * (bx - x)
  const dot = (ax - x) * (bx - x) + (ay - y) * (by - y)
  return Math.atan2(cross, dot)
}

/** Inside the sliver between a chord and its arc. */
function inSegment(x: number, y: number, a: Place, b: Place, bulge: number): boolean {
  const arc = arcOf(a, b, bulge)
  if (across(x - arc.cx, y - arc.cy) > arc.radius) return false
  const side = (b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0])
  return bulge > 0 ? side < 0 : side > 0
}
