/** A rounded rectangle walked round its edge: places at even spacing, and its outline for a pattern. */
import type { Vertex } from '../../maths/outline.js'

export interface Rounded {
  readonly a: number
  readonly b: number
  readonly corner: number
}

export const grownBy = ({ a, b, corner }: Rounded, by: number): Rounded => ({ a: a + by, b: b + by, corner: corner + by })

export function loopLength({ a, b, corner: r }: Rounded): number {
  return 4 * (a - r) + 4 * (b - r) + 2 * Math.PI * r
}

/** `count` places, evenly spaced from the middle of the upper edge, clockwise. */
export function loopPoints(shape: Rounded, count: number): (readonly [number, number])[] {
  const whole = loopLength(shape)
  const corners = cornersOf(shape)
  return Array.from({ length: count }, (_, i) => walk(shape, corners, (whole * i) / count))
}

/** A corner's centre, the direction its arc starts in, and the edge after it. */
type Corner = readonly [x: number, y: number, from: number, edge: number]

function cornersOf({ a, b, corner: r }: Rounded): readonly Corner[] {
  const [across, up] = [2 * (a - r), 2 * (b - r)]
  return [
    [a - r, b - r, Math.PI / 2, up],
    [a - r, r - b, 0, across],
    [r - a, r - b, -Math.PI / 2, up],
    [r - a, b - r, Math.PI, across],
  ]
}

function walk({ a, b, corner: r }: Rounded, corners: readonly Corner[], s: number): readonly [number, number] {
  const arc = (Math.PI / 2) * r
  let left = s - (a - r)
  if (left <= 0) return [s, b]
  for (const [x, y, from, edge] of corners) {
    if (left <= arc) return [x + r * Math.cos(from - left / r), y + r * Math.sin(from - left / r)]
    left -= arc
    const end = from - Math.PI / 2
    if (left <= edge) return [x + r * Math.cos(end) + left * Math.sin(end), y + r * Math.sin(end) - left * Math.cos(end)]
    left -= edge
  }
  return [0, b]
}

/** Anticlockwise outline about the origin. */
export function roundedOutline({ a, b, corner: r }: Rounded): Vertex[] {
  if (r <= 0)
    return [
      [-a, -b, 0],
      [a, -b, 0],
      [a, b, 0],
      [-a, b, 0],
    ]
  const turn = Math.tan(Math.PI / 8)
  return [
    [r - a, -b, 0],
    [a - r, -b, turn],
    [a, r - b, 0],
    [a, b - r, turn],
    [a - r, b, 0],
    [r - a, b, turn],
    [-a, b - r, 0],
    [-a, r - b, turn],
  ]
}
