/**
 * The rivet line round an opening: the cut's outline moved out by the rim distance, walked by its own length.
 * Control points are the middles of its corners and the seams it crosses square enough to share a rivet with.
 */
import { grown, type OpeningShape } from './opening-shape.js'

export interface RingControl {
  readonly mark: string
  readonly s: number
  /** seam row that shares this fastener */
  readonly shared: readonly string[]
}

export interface Ring {
  readonly shape: OpeningShape
  readonly length: number
  readonly closed: boolean
  readonly controls: readonly RingControl[]
  /** station and skin length at s */
  readonly at: (s: number) => [number, number]
}

export interface SeamCrossing {
  readonly row: string
  readonly mark: string
  readonly v: number
}

/** Steeper than this (dv/ds) a ring crosses a seam; flatter, it only touches the lap, which is a finding, not a joint. */
const STEEP = 0.5

/** `edge` is the skin length of the sheet's lower edge, for openings that run out through it; null for closed ones. */
export function ringOf(cut: OpeningShape, line: number, seams: readonly SeamCrossing[], closeTo: number, edge: number | null): Ring {
  const shape = grown(cut, line)
  const r = Math.min(shape.corner, (shape.x1 - shape.x0) / 2, (shape.v1 - shape.v0) / 2)
  const w = shape.x1 - shape.x0 - 2 * r
  const h = shape.v1 - shape.v0 - 2 * r
  const eighth = (Math.PI / 4) * r
  const { x0, x1, v0, v1 } = shape
  // clockwise in (x, v) seen with v down: along v0 aft, down x1, back along v1, up x0; corners are quarter turns
  const legs = [
    { x: x0 + r, v: v0, dx: 1, dv: 0, run: w },
    { x: x1, v: v0 + r, dx: 0, dv: 1, run: h },
    { x: x1 - r, v: v1, dx: -1, dv: 0, run: w },
    { x: x0, v: v1 - r, dx: 0, dv: -1, run: h },
  ]
  const length = 2 * w + 2 * h + 8 * eighth
  const at = (s: number): [number, number] => {
    let rest = ((s % length) + length) % length
    for (let k = 0; k < 4; k++) {
      const leg = legs[k]
      const centre: [number, number] = [leg.x - leg.dv * r, leg.v + leg.dx * r]
      // the quarter turn ends where the leg starts; its first half belongs to the side before
      if (rest < eighth) return onArc(centre, leg, r, -(eighth - rest))
      rest -= eighth
      if (rest < leg.run) return [leg.x + leg.dx * rest, leg.v + leg.dv * rest]
      rest -= leg.run
      const after: [number, number] = [leg.x + leg.dx * leg.run - leg.dv * r, leg.v + leg.dv * leg.run + leg.dx * r]
      if (rest < eighth) return onArc(after, leg, r, rest)
      rest -= eighth
    }
    return at(0)
  }
  const corners = [0, 2 * eighth + w, 4 * eighth + w + h, 6 * eighth + 2 * w + h]
  const marks = cornerMarks(cut)
  const controls: RingControl[] = corners.map((s, i) => ({ mark: marks[i], s, shared: [] }))
  for (const seam of seams) {
    // where the ring reaches a seam that the cut does not, the seam runs on above it with fasteners of its own
    const into = seam.v > cut.v0 && seam.v < cut.v1 ? crossing(seam.v, v0, v1, r) : null
    if (into === null) continue
    // the fore leg ends in the corner the walk starts from: past its middle the walk begins again
    for (const [k, s] of [
      [1, corners[1] + eighth + into],
      [3, (corners[3] + eighth + (h - into)) % length],
    ] as const) {
      if (controls.every((c) => Math.min(Math.abs(c.s - s), length - Math.abs(c.s - s)) >= closeTo)) {
        controls.push({ mark: `${seam.mark}-${k === 1 ? 'aft' : 'fore'}`, s, shared: [seam.row] })
      }
    }
  }
  controls.sort((a, b) => a.s - b.s)
  if (edge === null) return { shape, length, closed: true, controls, at }
  return openRing(cut, shape, { length, corners, eighth, h, w, controls, at }, edge)
}

/** A ring cut off at the sheet's edge: it starts and ends there and has only the upper corners. */
function openRing(
  cut: OpeningShape,
  shape: OpeningShape,
  full: {
    length: number
    corners: number[]
    eighth: number
    w: number
    h: number
    controls: RingControl[]
    at: (s: number) => [number, number]
  },
  edge: number,
): Ring {
  const { corners, eighth, controls } = full
  const right = cut.side === 'right'
  // lower edge is v1 on the right, v0 on the left: rotate so that the walk starts on the fore leg at the edge
  const r = Math.min(shape.corner, (shape.x1 - shape.x0) / 2, (shape.v1 - shape.v0) / 2)
  const drop = right ? edge - (shape.v0 + r) : shape.v1 - r - edge
  const start = right ? corners[0] - eighth - drop : corners[2] - eighth - drop
  const length = 4 * eighth + full.w + 2 * drop
  const wrap = (s: number): number => (((s - start) % full.length) + full.length) % full.length
  const inside = controls.map((c) => ({ ...c, s: wrap(c.s) })).filter((c) => c.s > 1e-6 && c.s < length - 1e-6)
  const fore = right ? 'fore' : 'aft'
  const aft = right ? 'aft' : 'fore'
  return {
    shape,
    length,
    closed: false,
    controls: [
      { mark: `${fore}-edge`, s: 0, shared: [] },
      ...inside.sort((a, b) => a.s - b.s),
      { mark: `${aft}-edge`, s: length, shared: [] },
    ],
    at: (s) => full.at(start + s),
  }
}

/** How far down a leg a seam crosses (negative: on the corner above it, still steep), or null. */
function crossing(v: number, v0: number, v1: number, r: number): number | null {
  if (v <= v0 || v >= v1) return null
  if (v >= v0 + r && v <= v1 - r) return v - v0 - r
  const alpha = v < v0 + r ? Math.acos((v0 + r - v) / r) : Math.acos((v - v1 + r) / r)
  if (Math.sin(alpha) <= STEEP) return null
  const past = r * (Math.PI / 2 - alpha)
  return v < v0 + r ? -past : v1 - v0 - 2 * r + past
}

function onArc(centre: readonly [number, number], leg: { dx: number; dv: number }, r: number, s: number): [number, number] {
  // radius vector at the leg is (dv, -dx) turned outward; rotate it by s/r along the walk
  const angle = r === 0 ? 0 : s / r
  const ux = leg.dv
  const uv = -leg.dx
  return [
    centre[0] + r * (ux * Math.cos(angle) + leg.dx * Math.sin(angle)),
    centre[1] + r * (uv * Math.cos(angle) + leg.dv * Math.sin(angle)),
  ]
}

function cornerMarks(cut: OpeningShape): string[] {
  if (cut.side === 'centre') return ['fore-left', 'aft-left', 'aft-right', 'fore-right']
  const [a, b] = cut.side === 'right' ? ['upper', 'lower'] : ['lower', 'upper']
  return [`fore-${a}`, `aft-${a}`, `aft-${b}`, `fore-${b}`]
}
