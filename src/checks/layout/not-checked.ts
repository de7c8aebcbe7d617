/** What no rule covers yet, said one by one so that a missing check is never taken for a passed one. */
import type { Check } from '../../derive/nouns.js'
import { finding } from '../check.js'
import type { Ground } from './ground.js'

export function notChecked(_ground: Ground): Check[] {
  const say = (id: string, says: string): Check => finding({ id: `not-checked.${id}`, says, source: 'no rule yet' }, 'not-checked')
  return [
    say('escape', 'Escape openings: clear size, effort to open and what stands before them.'),
    say('interior', 'Openings against furniture, wires, tanks and pipes: no interior is derived.'),
    say(
      'structure',
      'Strength and stiffness of the body. Bounds for comparison only; a qualified engineer must approve door corners, wheel openings, hold-downs and lifting points.',
    ),
    say(
      'holes-meet',
      "Whether punched holes meet at the jig's temperature and tolerances: no rule says so, since it is a matter of chances. The packet works them out, joint by joint.",
    ),
    say('sealant', 'Sealant: open time against the riveting crew, squeeze-out, cure.'),
  ]
}
