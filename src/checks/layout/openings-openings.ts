/** Openings against each other and against wheel openings: their rim rings must not overlap. */
import type { Check } from '../../derive/nouns.js'
import type { OpeningShape } from '../../derive/shell/opening-shape.js'
import { distanceCheck, mm } from '../check.js'
import { type Ground, middleOf } from './ground.js'
import { nearestClean } from './nearest-clean.js'

/** Distance between two rounded rectangles, negative where they overlap (by the less of the two overlaps). m. */
function distanceBetween(a: OpeningShape, b: OpeningShape): number {
  const ra = Math.min(a.corner, (a.x1 - a.x0) / 2, (a.v1 - a.v0) / 2)
  const rb = Math.min(b.corner, (b.x1 - b.x0) / 2, (b.v1 - b.v0) / 2)
  const dx = Math.max(a.x0 + ra - (b.x1 - rb), b.x0 + rb - (a.x1 - ra))
  const dv = Math.max(a.v0 + ra - (b.v1 - rb), b.v0 + rb - (a.v1 - ra))
  const cores = Math.hypot(Math.max(dx, 0), Math.max(dv, 0)) + Math.min(Math.max(dx, dv), 0)
  return cores - ra - rb
}

export function openingsAgainstEachOther(ground: Ground): Check[] {
  const shapes = ground.derived.shell.laid.shapes
  const need = 2 * ground.reach
  const checks: Check[] = []
  shapes.forEach((a, i) => {
    let nearest: { b: OpeningShape; room: number } | null = null
    for (const b of shapes.slice(i + 1)) {
      const room = distanceBetween(a, b)
      if (!nearest || room < nearest.room) nearest = { b, room }
      if (room < need - 1e-9) checks.push(pair(ground, a, b, room, need))
    }
    if (nearest && nearest.room >= need - 1e-9) checks.push(pair(ground, a, nearest.b, nearest.room, need))
  })
  return checks
}

function pair(ground: Ground, a: OpeningShape, b: OpeningShape, room: number, need: number): Check {
  const moved = a.surface === 'wheel' ? b : a
  const says =
    room < 0
      ? `${a.id} and ${b.id} overlap by ${mm(-room)} mm.`
      : `${a.id} and ${b.id} are ${mm(room)} mm apart; their rim rings need ${mm(need)} mm.`
  const check = distanceCheck(
    {
      id: `openings.${a.id}.${b.id}`,
      says,
      source: 'geometry: two rim rings behind one skin cannot overlap',
      places: [middleOf(ground, a), middleOf(ground, b)],
      concerns: [a.id, b.id],
    },
    need,
    room,
  )
  return check.verdict === 'pass' ? check : { ...check, mend: nearestClean(ground, moved) }
}
