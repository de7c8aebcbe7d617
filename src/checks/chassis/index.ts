/** All rules of chassis and axle group. Strength is not among them: that is said as well. */
import type { Derived } from '../../derive/index.js'
import type { Check } from '../../derive/nouns.js'
import { finding } from '../check.js'
import { axleHeight } from './axle-height.js'
import { axleWindow } from './axle-window.js'
import { baysClear } from './bays.js'
import { armsInsideSkin, passages } from './members.js'
import { groundClearance, wheelsInBoxes } from './wheels.js'

export function chassisChecks(derived: Derived): Check[] {
  return [
    ...wheelsInBoxes(derived),
    ...groundClearance(derived),
    ...axleHeight(derived),
    ...axleWindow(derived),
    ...baysClear(derived),
    ...armsInsideSkin(derived),
    ...passages(derived),
    ...strength(derived),
  ]
}

function strength({ under }: Derived): Check[] {
  if (!under.chassis) return []
  return [
    finding(
      {
        id: 'chassis.strength',
        says: 'Strength and stiffness of rails, A-frame, outriggers, welds and axle brackets. An engineer must approve before metal is cut.',
        source: 'no rule yet',
        concerns: under.chassis.members.map((m) => m.part),
      },
      'not-checked',
    ),
  ]
}
