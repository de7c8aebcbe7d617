/** From metres on a part to millimetres on paper at an exact scale, y turned from up to down. */
import type { Outline } from '../../derive/nouns.js'
import type { Shape } from './page.js'

/** Recommended reduction scales of ISO 5455: 1 to this. */
export const SCALES = [1, 2, 5, 10, 20, 50, 100] as const
export type Scale = (typeof SCALES)[number]

export interface View {
  readonly scale: Scale
  /** paper place of the model's 0,0 */
  readonly originMm: readonly [number, number]
  x(metres: number): number
  y(metres: number): number
  length(metres: number): number
  shape(outline: Outline, closed?: boolean): Shape
}

/** Shows the model point `at` (m) at the paper point `on` (mm). A mirrored view runs the model's x to the left. */
export function viewOf(scale: Scale, at: readonly [number, number], on: readonly [number, number], mirrored = false): View {
  const k = 1000 / scale
  const hand = mirrored ? -1 : 1
  const x = (m: number): number => on[0] + hand * (m - at[0]) * k
  const y = (m: number): number => on[1] - (m - at[1]) * k
  return {
    scale,
    originMm: [x(0), y(0)],
    x,
    y,
    length: (m) => m * k,
    // an anticlockwise arc in a y-up model turns anticlockwise on paper: negative there; mirroring turns it once more
    shape: (outline, closed = true) => ({ points: outline.map(([px, py, bulge]) => [x(px), y(py), -hand * bulge] as const), closed }),
  }
}

/** The largest recommended scale at which width by height (m) fits into the given room (mm). */
export function scaleToFit(width: number, height: number, roomWidthMm: number, roomHeightMm: number): Scale {
  return SCALES.find((scale) => (width * 1000) / scale <= roomWidthMm && (height * 1000) / scale <= roomHeightMm) ?? 100
}

export const scaleWords = (scale: Scale): string => `1:${scale}`

export interface Bounds {
  readonly x0: number
  readonly x1: number
  readonly y0: number
  readonly y1: number
}

/** Point on the arc from p to q with the given bulge, at parts t of its angle; straight when the bulge is 0. */
export function alongEdge(
  p: readonly [number, number, number],
  q: readonly [number, number, number],
  t: number,
): readonly [number, number] {
  const b = p[2]
  if (Math.abs(b) < 1e-12) return [p[0] + (q[0] - p[0]) * t, p[1] + (q[1] - p[1]) * t]
  // centre from the chord: offset (1 - b^2) / (4 b) chord lengths to the left of travel
  const k = (1 - b * b) / (4 * b)
  const cx = (p[0] + q[0]) / 2 - k * (q[1] - p[1])
  const cy = (p[1] + q[1]) / 2 + k * (q[0] - p[0])
  const angle = 4 * Math.atan(b) * t
  const [dx, dy] = [p[0] - cx, p[1] - cy]
  return [cx + dx * Math.cos(angle) - dy * Math.sin(angle), cy + dx * Math.sin(angle) + dy * Math.cos(angle)]
}

/** Radius of the arc from p to q with the given bulge; null where it is straight. */
export function arcRadius(p: readonly [number, number, number], q: readonly [number, number, number]): number | null {
  const bulge = Math.abs(p[2])
  return bulge < 1e-9 ? null : (Math.hypot(q[0] - p[0], q[1] - p[1]) * (1 + bulge * bulge)) / (4 * bulge)
}

/** A closed outline as points, arcs split into `parts` chords: for bounds, hatching and labels, never for cutting. */
export function flatten(outline: Outline, parts = 8, closed = true): readonly (readonly [number, number])[] {
  const out: (readonly [number, number])[] = []
  outline.forEach((p, i) => {
    const q = outline[(i + 1) % outline.length]
    out.push([p[0], p[1]])
    if (p[2] !== 0 && (closed || i < outline.length - 1)) for (let n = 1; n < parts; n++) out.push(alongEdge(p, q, n / parts))
  })
  return out
}

/** Smallest box round outlines, in their own units (arcs to within a chord of one sixteenth of their angle). */
export function boundsOf(outlines: readonly Outline[]): Bounds {
  let [x0, x1, y0, y1] = [Infinity, -Infinity, Infinity, -Infinity]
  const reach = (x: number, y: number): void => {
    x0 = Math.min(x0, x)
    x1 = Math.max(x1, x)
    y0 = Math.min(y0, y)
    y1 = Math.max(y1, y)
  }
  for (const outline of outlines) {
    outline.forEach((p, i) => {
      reach(p[0], p[1])
      if (p[2] === 0) return
      const q = outline[(i + 1) % outline.length]
      for (let n = 1; n < 16; n++) {
        const [x, y] = alongEdge(p, q, n / 16)
        reach(x, y)
      }
    })
  }
  return { x0, x1, y0, y1 }
}
