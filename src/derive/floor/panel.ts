/** The floor's outline, and the panels it is cut in where one board cannot serve. */
import { outlineArea, outlineLength } from '../../maths/outline.js'
import { superellipseHalf, superellipseStray } from '../../maths/superellipse.js'
import type { Outline } from '../nouns.js'
import type { FloorInput } from './input.js'

/** Arcs a quarter of an end: they stray less than a router's own error. */
const ARCS = 16

export interface PanelPlan {
  /** x station, y right positive, anticlockwise seen from above */
  readonly outline: Outline
  readonly area: number
  readonly perimeter: number
  readonly stray: number
  readonly from: number
  readonly to: number
}

/** Half of an end's plan, inset by so much, from its left corner round the tip to its right corner, x outward from the joint. */
export const endPlan = ({ floor, exponent }: FloorInput, inset = 0): Outline =>
  superellipseHalf(floor.endReach - inset, floor.halfWidth - inset, exponent, ARCS)

export function panelPlan(input: FloorInput): PanelPlan {
  const { floor, frames, exponent } = input
  const [first, last] = [frames[0].station, frames[frames.length - 1].station]
  const end = endPlan(input)
  const outline: Outline = [
    ...end.map(([x, y, b]) => [x + last, y, b] as const),
    // the nose is the tail turned half a turn
    ...end.map(([x, y, b]) => [first - x, -y, b] as const),
  ]
  return {
    outline,
    area: outlineArea(outline),
    perimeter: outlineLength(outline),
    stray: superellipseStray(floor.endReach, floor.halfWidth, exponent, end),
    from: first - floor.endReach,
    to: last + floor.endReach,
  }
}

export interface PanelJoint {
  readonly station: number
  readonly member: string | null
}

/**
 * Where panels meet: on the cross-member that leaves the longest board on the tail side while the board ahead still serves;
 * never where a wheel box cuts the panel or an opening stands on the line. Without a cross-member at hand it falls where the
 * board ends, and the checks say so.
 */
export function panelJoints(input: FloorInput, plan: PanelPlan): PanelJoint[] {
  const joints: PanelJoint[] = []
  let from = plan.from
  while (plan.to - from > input.board.length + 1e-9) {
    const farthest = from + input.board.length
    const middle = (from + plan.to) / 2
    const free = input.members
      .filter((m) => m.kind === 'cross-member')
      .map((m) => ({ part: m.part, station: (m.plan[0][0] + m.plan[1][0]) / 2 }))
      .filter(({ station }) => station > from + 1e-6 && station <= farthest + 1e-9 && isFree(input, station))
      // as near the middle as the boards allow: two handy panels rather than one and a strip
      .filter(({ station }) => plan.to - station <= input.board.length + 1e-9 || station > farthest - input.board.width / 2)
      .sort((a, b) => Math.abs(a.station - middle) - Math.abs(b.station - middle))
    const at = free[0] ?? { part: null, station: farthest }
    joints.push({ station: at.station, member: at.part })
    from = at.station
  }
  return joints
}

function isFree({ boxes, floor }: FloorInput, station: number): boolean {
  return (
    boxes.every((b) => station <= b.x[0] || station >= b.x[1]) &&
    floor.openings.every((o) => Math.abs(o.station - station) > o.size / 2 + 3 * floor.thickness)
  )
}
