/** All rules of the floor, in the order a person would look at them. */
import type { Derived } from '../../derive/index.js'
import type { Check } from '../../derive/nouns.js'
import { finding } from '../check.js'
import { boltsAgainstWebs, cutterAgainstCorners, holdDowns } from './fixings.js'
import { jointsOnMembers } from './joints.js'
import { openingsAgainstMembers } from './openings.js'

export function floorChecks(derived: Derived): Check[] {
  const { floor, chassis } = derived.under
  // the board itself is looked at with the barrel, where a missing floor is said too
  if (!floor) return []
  const told = { source: 'the definition' }
  const unsaid: Check[] = chassis?.members.length
    ? []
    : [
        finding(
          { ...told, id: 'floor.members', says: 'No chassis is written under the floor, so openings were not checked against it.' },
          'not-checked',
        ),
      ]
  return [
    ...unsaid,
    ...openingsAgainstMembers(derived),
    ...jointsOnMembers(floor),
    ...holdDowns(derived),
    ...boltsAgainstWebs(derived),
    ...cutterAgainstCorners(derived),
  ]
}
