/** What no rule of the ends covers yet, said one by one. */
import type { Check } from '../../derive/nouns.js'
import { finding } from '../check.js'
import type { EndsGround } from './ground.js'

export function endsNotChecked({ definition }: EndsGround): Check[] {
  const { ends } = definition
  const say = (id: string, says: string): Check => finding({ id: `not-checked.${id}`, says, source: 'no rule yet' }, 'not-checked')
  return [
    ...(ends.make === 'formed'
      ? [
          say(
            'forming',
            `Strain and thinning of the formed gores, against the least thickness of the definition: the blanks are worked out apart from the checks, and the packet gives both.`,
          ),
        ]
      : []),
    say(
      'buck-ends',
      'Room for a bucking bar behind the rivets of the ends: on which side of its rivet line the web of a rib stands is not derived.',
    ),
  ]
}
