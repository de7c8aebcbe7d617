/** Solid rivets of an end need a bucking bar behind them: room to the web of the rib or ring they go through. */
import { placeOf } from '../../derive/holes.js'
import type { Check } from '../../derive/nouns.js'
import { distanceCheck, HAIR, mm } from '../check.js'
import type { EndsGround } from './ground.js'

const SOURCE = 'rules.buck clearance of the definition; common practice, no source'

/** Ribs and ring are one section with their webs one distance from the rivets: nose and tail are judged once. */
export function accessToBuckEnds({ definition, derived }: EndsGround): Check[] {
  const { shell, fasteners, rules } = definition
  const isSolid = (id: string): boolean => fasteners.find((f) => f.id === id)?.kind === 'solid'
  const rows = derived.endSections.rows.filter((r) => (r.kind === 'gore' || r.kind === 'rib' || r.kind === 'cap') && isSolid(r.fastener))
  if (rows.length === 0) return []
  const room = shell.frame.rowOffset - shell.frame.thickness.value / 2
  const need = rules.buckClearance
  return [
    distanceCheck(
      {
        id: 'buck.ends',
        says: `A bucking bar has ${mm(room)} mm from the rivets of the ends' ribs and rings to their webs; it needs ${mm(need)} mm.`,
        source: SOURCE,
        places: rows[0].station.length > 0 ? [placeOf(rows[0], 0)] : [],
        concerns: rows.map((r) => r.id),
        mend: room < need - HAIR ? 'Blind fasteners, or the row further from the web.' : null,
      },
      need,
      room,
    ),
  ]
}
