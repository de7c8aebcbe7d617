/** What no rule covers yet, said one by one so that a missing check is never taken for a passed one. */
import type { Check } from '../../derive/nouns.js'
import { finding } from '../check.js'
import type { Ground } from './ground.js'

export function notChecked(ground: Ground): Check[] {
  const ends = ground.input.openings.filter((o) => o.surface === 'nose' || o.surface === 'tail')
  const say = (id: string, says: string, concerns: readonly string[] = []): Check =>
    finding({ id: `not-checked.${id}`, says, source: 'no rule yet', concerns }, 'not-checked')
  return [
    ...ends.map((o) =>
      say(
        o.id,
        `${o.id} (${o.says}) lies in the ${o.surface} section, whose gores and ribs are not derived yet: nothing about it was checked.`,
        [o.id],
      ),
    ),
    say('ends', 'The nose and tail skins: the joint rows give the barrel side of their holes only.'),
    say('escape', 'Escape openings: clear size, effort to open and what stands before them.'),
    say('interior', 'Openings against furniture, wires, tanks and pipes: no interior is derived.'),
    say(
      'structure',
      'Strength and stiffness of the body. Bounds for comparison only; a qualified engineer must approve door corners, wheel openings, hold-downs and lifting points.',
    ),
    say('holes-meet', "Whether punched holes meet at the jig's temperature and tolerances."),
    say('sealant', 'Sealant: open time against the riveting crew, squeeze-out, cure.'),
  ]
}
