/** Openings against laps: crossing one is a caution, running along one is a leak. */

import type { Check } from '../../derive/nouns.js'
import { chordAtLength } from '../../derive/shell/opening-shape.js'
import { lapsOf } from '../../derive/shell/sheets.js'
import { developed } from '../../maths/development.js'
import { distanceCheck, finding, mm } from '../check.js'
import { type Ground, placeOn } from './ground.js'
import { nearestCleanHeight } from './nearest-clean.js'

const SOURCE = 'common practice, no source: a rim must not run along a lap, where two thicknesses step under its sealant'

export function openingsAgainstLaps(ground: Ground): Check[] {
  const { skin, shapes } = ground.derived.shell.laid
  const checks: Check[] = []
  for (const shape of shapes) {
    let nearest: { room: number; check: () => Check } | null = null
    for (const lap of lapsOf(ground.input)) {
      const v = developed(skin, lap.girth)
      const name = `${lap.seam} on the ${lap.side}`
      const g = `G ${mm(Math.abs(lap.girth))}`
      const place = placeOn(ground, (shape.x0 + shape.x1) / 2, v)
      const told = { source: SOURCE, places: [place], concerns: [shape.id, `${lap.seam}-${lap.side}`] }
      const chord = chordAtLength(shape, v)
      if (chord) {
        const r = Math.min(shape.corner, (shape.v1 - shape.v0) / 2)
        const square = v >= shape.v0 + r && v <= shape.v1 - r
        checks.push(
          finding(
            {
              ...told,
              id: `opening.${shape.id}.lap.${lap.seam}-${lap.side}`,
              says: `${shape.id} crosses the lap of ${name} at ${g} (WL ${mm(place.waterline)})${square ? '; bed the rim over the step in sealant at both legs.' : ', within its corner: the rim meets the step at a slant and will leak.'}`,
              mend: square ? null : nearestCleanHeight(ground, shape),
            },
            square ? 'caution' : 'fail',
          ),
        )
        continue
      }
      const band = [developed(skin, lap.girth - lap.half), developed(skin, lap.girth + lap.half)]
      const room = Math.max(shape.v0 - ground.line - band[1], band[0] - (shape.v1 + ground.line))
      if (nearest && nearest.room <= room) continue
      nearest = {
        room,
        check: () => {
          const touches = room < 0
          const check = distanceCheck(
            {
              ...told,
              id: `opening.${shape.id}.lap`,
              says: touches
                ? `The rim of ${shape.id} touches the lap of ${name} at ${g} (WL ${mm(place.waterline)}): its rivet line runs ${mm(-room)} mm inside the lap. It would leak.`
                : `The rim rivets of ${shape.id} stand ${mm(room)} mm from the lap of ${name} (WL ${mm(place.waterline)}); they need ${mm(ground.edge)} mm.`,
            },
            ground.edge,
            room,
          )
          return check.verdict === 'pass' ? check : { ...check, mend: nearestCleanHeight(ground, shape) }
        },
      }
    }
    if (nearest) checks.push(nearest.check())
  }
  return checks
}
