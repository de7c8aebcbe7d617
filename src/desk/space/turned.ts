/**
 * How the coach is turned and how much of it is seen: parallel, as a drawing is, so that lengths can be compared. The eye looks along
 * `ahead`; `right` and `up` lie in the picture. rad, m.
 */
import { cross, dot, type Vec3 } from '../../maths/vec.js'

export interface Turned {
  /** about the upright, 0 looking at the left side */
  readonly yaw: number
  /** from above, up to a right angle */
  readonly pitch: number
  /** what stands in the middle of the picture */
  readonly centre: Vec3
  /** m of the coach in a pixel */
  readonly perPixel: number
}

export interface Axes {
  readonly ahead: Vec3
  readonly right: Vec3
  readonly up: Vec3
}

/** From the front left and a little above: the door side of most looks best so. */
export const START: Pick<Turned, 'yaw' | 'pitch'> = { yaw: -0.6, pitch: 0.38 }
const MOST = Math.PI / 2

export function axesOf({ yaw, pitch }: Pick<Turned, 'yaw' | 'pitch'>): Axes {
  const [c, s] = [Math.cos(yaw), Math.sin(yaw)]
  // the left side is seen with the nose on the left: aft to the right
  const right: Vec3 = [c, s, 0]
  const ahead: Vec3 = [-s * Math.cos(pitch), c * Math.cos(pitch), -Math.sin(pitch)]
  return { ahead, right, up: cross(right, ahead) }
}

export const turnedBy = (at: Turned, yaw: number, pitch: number): Turned => ({
  ...at,
  yaw: at.yaw + yaw,
  pitch: Math.min(MOST, Math.max(-MOST, at.pitch + pitch)),
})

/** Slid in the picture by so many pixels, to the right and down. */
export function slidBy(at: Turned, dx: number, dy: number): Turned {
  const { right, up } = axesOf(at)
  const [a, b] = [-dx * at.perPixel, dy * at.perPixel]
  return {
    ...at,
    centre: [at.centre[0] + a * right[0] + b * up[0], at.centre[1] + a * right[1] + b * up[1], at.centre[2] + a * right[2] + b * up[2]],
  }
}

const [LEAST, WIDEST] = [0.00005, 0.1] as const

/** Zoomed in by a factor about a place of the picture, in pixels right and up of its middle. */
export function zoomedBy(at: Turned, by: number, px: number, py: number): Turned {
  const perPixel = Math.min(WIDEST, Math.max(LEAST, at.perPixel / by))
  const slid = px * (1 - perPixel / at.perPixel)
  const risen = py * (1 - perPixel / at.perPixel)
  return { ...slidBy(at, -slid, risen), perPixel }
}

/** The whole of what these points enclose, in a picture of so many pixels with a margin round it. */
export function fittedTo(at: Pick<Turned, 'yaw' | 'pitch'>, points: Iterable<Vec3>, width: number, height: number): Turned {
  const { ahead, right, up } = axesOf(at)
  const [low, high] = [
    [Infinity, Infinity, Infinity],
    [-Infinity, -Infinity, -Infinity],
  ]
  for (const p of points)
    for (const [i, axis] of [right, up, ahead].entries()) {
      low[i] = Math.min(low[i], dot(p, axis))
      high[i] = Math.max(high[i], dot(p, axis))
    }
  if (!(high[0] > low[0])) return { ...at, centre: [0, 0, 0], perPixel: 0.01 }
  const [a, b, c] = [0, 1, 2].map((i) => (low[i] + high[i]) / 2)
  const sum = (i: 0 | 1 | 2): number => a * right[i] + b * up[i] + c * ahead[i]
  const room = MARGIN
  return {
    ...at,
    centre: [sum(0), sum(1), sum(2)],
    perPixel: Math.max((high[0] - low[0]) / Math.max(1, width - 2 * room), (high[1] - low[1]) / Math.max(1, height - 2 * room)),
  }
}

/** Pixels left free round the coach. */
const MARGIN = 22
