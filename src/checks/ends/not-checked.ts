/** What no rule of the ends covers yet, said. */
import type { Check } from '../../derive/nouns.js'
import { finding } from '../check.js'
import type { EndsGround } from './ground.js'

const FORMING = {
  id: 'not-checked.forming',
  says: 'Strain and thinning of the formed gores, against the least thickness of the definition: the blanks are worked out apart from the checks, and the packet gives both.',
  source: 'no rule yet',
}

export function endsNotChecked({ definition }: EndsGround): Check[] {
  return definition.ends.make === 'formed' ? [finding(FORMING, 'not-checked')] : []
}
