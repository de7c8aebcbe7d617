/** The height of the axles: does the coach stand where the definition says, and does a tube pass under the rails? */
import type { Derived } from '../../derive/index.js'
import type { Check } from '../../derive/nouns.js'
import { finding, mm } from '../check.js'

export function axleHeight(derived: Derived): Check[] {
  return [...groundLevels(derived), ...tubesUnderRails(derived)]
}

/** A written ground is that of the coach unloaded: lower than at gross weight, higher than with its wheels hanging. */
function groundLevels({ under }: Derived): Check[] {
  const { gear } = under
  if (!gear?.sits || gear.ground === null) return []
  const { gross, free } = gear.sits
  const told = { id: 'ground.level', source: 'geometry: arm, torque and tyre', concerns: ['axles'], worked: [gross] }
  const range = `With its wheels hanging free the ground is at WL ${mm(free)}, at gross weight at ${mm(gross.value)}`
  if (gear.ground > free && gear.ground < gross.value)
    return [finding({ ...told, says: `${range}; the ground written, ${mm(gear.ground)}, lies between.` }, 'pass')]
  const off = gear.ground >= gross.value ? gear.ground - gross.value : gear.ground - free
  return [
    {
      ...finding(
        {
          ...told,
          says: `${range}; the ground written, ${mm(gear.ground)}, is not between them. The coach would stand ${off > 0 ? 'higher' : 'lower'} on its wheels than every drawing says.`,
        },
        'caution',
      ),
      mend: `Move the tubes ${off > 0 ? 'up' : 'down'} by ${mm(Math.abs(off))} mm and more, order another start angle, or write the ground as it will be.`,
    },
  ]
}

function tubesUnderRails({ under, definition }: Derived): Check[] {
  const { gear } = under
  const rail = under.chassis?.members.find((m) => m.kind === 'rail')
  if (!gear?.tubeZ || !rail || !definition.gear?.tube) return []
  const into = gear.tubeZ[1] - rail.bottom
  const told = { id: 'axle.rail', source: 'geometry', concerns: ['axles', 'rail-left', 'rail-right'] }
  if (into <= 1e-9)
    return [finding({ ...told, says: `The tubes pass ${mm(-into)} mm under the rails: that is what their brackets have.` }, 'pass')]
  return [
    {
      ...finding(
        {
          ...told,
          says: `The tubes stand from WL ${mm(gear.tubeZ[0])} to ${mm(gear.tubeZ[1])} and the rails reach down to ${mm(rail.bottom)}: each rail must be notched ${mm(into)} mm deep at each tube, and what the notch takes given back by a doubler. Neither is drawn, and strength is not checked.`,
        },
        'caution',
      ),
      mend: 'An engineer draws the notch, or a smaller start angle lets the tube pass under the rail at the same ride height.',
    },
  ]
}
