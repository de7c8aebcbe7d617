/** Joints between floor panels: each on a cross-member that both are screwed to. */
import type { Check } from '../../derive/nouns.js'
import type { FloorDerived } from '../../derive/under-nouns.js'
import { finding, mm } from '../check.js'

const SOURCE = 'common practice, no source: a butt joint of the floor is carried by a cross-member'

export function jointsOnMembers({ joints, panels }: FloorDerived): Check[] {
  return joints.map(({ station, member }, i) =>
    finding(
      {
        id: `floor.joint.${i + 1}`,
        source: SOURCE,
        concerns: [panels[i].part, panels[i + 1].part, ...(member ? [member] : [])],
        places: [{ side: 'centre', station, girth: 0, waterline: 0, buttock: 0 }],
        says: member
          ? `One board cannot serve: the floor is parted at STA ${mm(station)}, on ${member}, into panels of ${mm(panels[i].to - panels[i].from)} and ${mm(panels[i + 1].to - panels[i + 1].from)} mm. The joint carries no bending across it; an engineer must say whether the floor needs to.`
          : `One board cannot serve, and no cross-member that is free of wheel boxes and openings stands where the floor could be parted: the joint would fall at STA ${mm(station)}, on nothing.`,
        mend: member ? null : 'Put a cross-member there, or scarf a longer board.',
      },
      member ? 'caution' : 'fail',
    ),
  )
}
