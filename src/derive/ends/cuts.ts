/**
 * Openings in an end: each a rounded rectangle in a plane of its own, the pane, which touches the skin at the opening's
 * centre on the centre line. Across is y; up is along the pane toward the crown. Width, height and corners are the pane's
 * own. A place off the pane is seen by dropping a perpendicular on it, which never makes a distance longer.
 */
import type { OpeningDefinition } from '../../definition/types.js'
import { sub, type Vec3 } from '../../maths/vec.js'
import type { End } from '../end-names.js'
import type { Ground } from './ground.js'

export interface EndCut {
  readonly id: string
  readonly opening: OpeningDefinition
  /** whether the pane faces ahead (or astern) rather than up */
  readonly upright: boolean
  /** centre on the outer mould line and the pane's outward normal, local axes */
  readonly centre: Vec3
  readonly normal: Vec3
  /** girth of the centre from the crown down the centre line */
  readonly girth: number
  /** half width, half height and corner radius, m */
  readonly a: number
  readonly b: number
  readonly corner: number
}

export function endCuts(ground: Ground, end: End, joint: number): EndCut[] {
  return ground.input.openings.filter((o) => o.surface === end).map((o) => cutOf(ground, o, Math.abs(o.station - joint)))
}

function cutOf({ outer }: Ground, opening: OpeningDefinition, x: number): EndCut {
  if (opening.waterline === null) throw new Error(`opening ${opening.id} on an end has no waterline`)
  const { point, normal, girth } = outer.onCentre(x, opening.waterline)
  return {
    id: opening.id,
    opening,
    upright: normal[2] < Math.SQRT1_2,
    centre: point,
    normal,
    girth,
    a: opening.width / 2,
    b: opening.height / 2,
    corner: opening.corner,
  }
}

/** Pane coordinates of a point, from the centre: across and up. */
export function seenOn(cut: EndCut, p: Vec3): readonly [number, number] {
  const d = sub(p, cut.centre)
  return [d[1], d[2] * cut.normal[0] - d[0] * cut.normal[2]]
}

/** Which way across and up run on a pane's drawing, seen from outside: up is toward the crown, and the nose's right is on its left. */
export const paneAxes = ({ upright }: Pick<EndCut, 'upright'>, end: End): { x: 'left' | 'right'; y: 'up' | 'forward' | 'aft' } =>
  end === 'nose' ? { x: 'left', y: upright ? 'up' : 'aft' } : { x: 'right', y: upright ? 'up' : 'forward' }

/** Distance from the cut's edge on the pane, positive outside, m. What lies far behind the pane is another side of the coach. */
export function clearance(cut: EndCut, p: Vec3): number {
  const { centre: c, normal: n, a, b, corner } = cut
  // asked of every fastener of an end: in plain numbers, without a list made for each
  const x = p[0]
  const y = p[1]
  const z = p[2]
  if ((x - c[0]) * n[0] + (y - c[1]) * n[1] + (z - c[2]) * n[2] < -2 * (a + b)) return Number.POSITIVE_INFINITY
  const dx = Math.abs(y - c[1]) - (a - corner)
  const dy = Math.abs((z - c[2]) * n[0] - (x - c[0]) * n[2]) - (b - corner)
  const out = Math.max(dx, 0)
  const up = Math.max(dy, 0)
  return Math.sqrt(out * out + up * up) + Math.min(Math.max(dx, dy), 0) - corner
}
