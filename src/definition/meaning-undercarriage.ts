/** Gear, chassis, floor and stated masses: do they fit the coach they carry? */
import { at, girthAtZ, type TangentChain } from '../maths/tangent-chain.js'
import type { Draft } from './definition-form.js'
import type { Reading } from './faults.js'
import { barrelSpan, orderFaults } from './meaning-barrel.js'
import { mm } from './say-size.js'

export function undercarriageFaults(draft: Draft, chain: TangentChain | null, reading: Reading): void {
  wheelFaults(draft, chain, reading)
  const members = draft.chassis?.crossMembers
  if (members)
    orderFaults(
      members,
      (i) => ['chassis', 'cross-members', i],
      () => 'the cross-member',
      reading,
    )
  floorFaults(draft, chain, reading)
  if (draft.gear === null) {
    draft.masses?.forEach((m, i) => {
      if (m?.station !== null) return
      reading.impossible(['masses', i, 'station'], {
        expected: 'a station',
        because: 'this coach has no gear, so there is no axle station',
        advice: 'Write its station.',
      })
    })
  }
}

function wheelFaults(draft: Draft, chain: TangentChain | null, reading: Reading): void {
  const gear = draft.gear
  if (!gear?.spindles) return
  orderFaults(
    gear.spindles,
    (i) => ['gear', 'spindles', i],
    () => 'the spindle',
    reading,
  )
  const span = barrelSpan(draft)
  const { half, top, corner } = gear.wheelOpening ?? {}
  if (span && half !== undefined) {
    gear.spindles.forEach((s, i) => {
      if (s === undefined || (s - half >= span.from && s + half <= span.to)) return
      const because = `its wheel opening runs from station ${mm(s - half)} to ${mm(s + half)}, off the barrel, which is ${mm(span.from)} to ${mm(span.to)}`
      reading.impossible(['gear', 'spindles', i], {
        expected: 'a wheel opening on the barrel',
        because,
        advice: 'Move the spindle, or make the opening narrower.',
      })
    })
  }
  const path = ['gear', 'wheel opening']
  if (half !== undefined && corner !== undefined && corner > half) {
    const because = `corners of ${mm(corner)} do not fit an opening that reaches ${mm(half)} each side`
    reading.impossible([...path, 'corner'], { expected: `at most ${mm(half)}`, because, advice: `Make the corner ${mm(half)} or less.` })
  }
  if (!chain || top === undefined) return
  const [crown, toe] = [at(chain, 0).z, at(chain, chain.length).z]
  if (top < crown && top - (corner ?? 0) > toe) return
  const because = `a top at waterline ${mm(top)} is off the section, which is ${mm(toe)} to ${mm(crown)}`
  reading.impossible([...path, 'top'], {
    expected: `between ${mm(toe)} and ${mm(crown)}`,
    because,
    advice: 'Write the waterline of its upper edge.',
  })
}

function floorFaults(draft: Draft, chain: TangentChain | null, reading: Reading): void {
  const floor = draft.floor
  if (!floor) return
  const line = chain && girthAtZ(chain, 0)
  const inside = chain && line !== null ? at(chain, line as number).y : undefined
  if (inside !== undefined && floor.halfWidth !== undefined && floor.halfWidth >= inside) {
    const because = `the floor would stand outside the skin, which is ${mm(inside)} from the centre plane at waterline 0`
    reading.impossible(['floor', 'half width'], {
      expected: `less than ${mm(inside)}`,
      because,
      advice: 'Make it smaller: it is half of the panel, from the centre plane.',
    })
  }
}
