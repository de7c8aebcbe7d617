/** Solid rivets need a bucking bar behind them: room to the nearest web or standing leg. */

import { placeOf } from '../../derive/holes.js'
import type { Check } from '../../derive/nouns.js'
import { cutsWeb } from '../../derive/shell/opening-shape.js'
import { distanceCheck, HAIR, mm } from '../check.js'
import { type Ground, middleOf } from './ground.js'
import { rimToFlange } from './openings-frames.js'

const SOURCE = 'rules.buck clearance of the definition; common practice, no source'

export function accessToBuck(ground: Ground): Check[] {
  const { input, derived } = ground
  const solid = (id: string): boolean => input.fasteners.find((f) => f.id === id)?.kind === 'solid'
  const need = input.rules.buckClearance
  const { shell } = input
  const checks: Check[] = []
  const add = (rule: 'hoop' | 'joint' | 'seam', room: number, to: string): void => {
    if (!solid(input.rows[rule].fastener)) return
    const row = derived.rows.find((r) => r.kind === rule)
    checks.push(
      distanceCheck(
        {
          id: `buck.${rule}`,
          says: `A bucking bar has ${mm(room)} mm from the ${rule} rivets to ${to}; it needs ${mm(need)} mm.`,
          source: SOURCE,
          places: row && row.station.length > 0 ? [placeOf(row, 0)] : [],
          concerns: row ? [row.id] : [],
          mend: room < need - HAIR ? 'A blind fastener, or the row further from the leg.' : null,
        },
        need,
        room,
      ),
    )
  }
  add('hoop', shell.frame.rowOffset - shell.frame.thickness.value / 2, 'the web of the frame')
  add('joint', shell.jointFrame.flange / 2 - shell.joint.rowSpacing / 2 - shell.jointFrame.thickness.value, 'the wall of the joint frame')
  add('seam', shell.stringer.leg / 2 - shell.stringer.thickness.value, 'the standing leg of the stringer')
  if (solid(input.rows.rim.fastener)) checks.push(...rimsAgainstWebs(ground, need))
  return checks
}

function rimsAgainstWebs(ground: Ground, need: number): Check[] {
  const { input, derived } = ground
  return derived.shell.laid.shapes.flatMap((shape) =>
    input.frames.flatMap((frame) => {
      const toFlange = rimToFlange(ground, shape, frame)
      if (toFlange === null || cutsWeb(shape, frame.station)) return []
      const room =
        Math.max(shape.x0 - ground.line - frame.station, frame.station - shape.x1 - ground.line) - input.shell.frame.thickness.value / 2
      if (room >= need - HAIR) return []
      return [
        distanceCheck(
          {
            id: `buck.rim-${shape.id}.${frame.id}`,
            says: `A bucking bar has ${mm(Math.max(0, room))} mm from the rim rivets of ${shape.id} to the web of ${frame.id}; it needs ${mm(need)} mm.`,
            source: SOURCE,
            places: [middleOf(ground, shape)],
            concerns: [shape.id, `frame-${frame.id}`],
            mend: 'Blind fasteners on that leg, or the opening further off.',
          },
          need,
          Math.max(0, room),
        ),
      ]
    }),
  )
}
