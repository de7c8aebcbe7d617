/** Floor openings, chassis members and axle group: can they be made, and do they stand on the coach at all? */
import type { Draft } from './definition-form.js'
import type { Reading } from './faults.js'
import { barrelSpan } from './meaning-barrel.js'
import { deg, mm } from './say-size.js'

export function underFaults(draft: Draft, reading: Reading): void {
  openingFaults(draft, reading)
  fixingFaults(draft, reading)
  channelFaults(draft, reading)
  memberFaults(draft, reading)
  bayFaults(draft, reading)
  gearFaults(draft, reading)
}

function openingFaults(draft: Draft, reading: Reading): void {
  const { floor } = draft
  const span = barrelSpan(draft)
  floor?.openings?.forEach((o, i) => {
    if (!o) return
    const path = ['floor', 'openings', i]
    if (o.shape === 'round' && o.across !== null)
      reading.impossible([...path, 'across'], {
        expected: 'no width of a round hole',
        because: 'a round hole has no width across besides its size',
        advice: 'Leave it out, or make the shape a rectangle.',
      })
    if (o.shape === 'rectangle' && o.across === null)
      reading.impossible([...path, 'shape'], {
        expected: 'a width across as well',
        because: 'a rectangle has a width across the coach too',
        advice: 'Add across: 200 mm.',
      })
    const { halfWidth, endReach } = floor
    if (halfWidth !== undefined && o.y !== undefined && Math.abs(o.y) >= halfWidth)
      reading.impossible([...path, 'y'], {
        expected: `within ${mm(halfWidth)} of the centre plane`,
        because: `the floor panel ends ${mm(halfWidth)} from the centre plane`,
        advice: 'Look at the buttock line: it runs from the centre plane, right positive.',
      })
    if (!span || endReach === undefined || o.station === undefined) return
    const [from, to] = [span.from - endReach, span.to + endReach]
    if (o.station > from && o.station < to) return
    reading.impossible([...path, 'station'], {
      expected: `between ${mm(from)} and ${mm(to)}`,
      because: `the floor panel runs from station ${mm(from)} to ${mm(to)}`,
      advice: 'Look at the station: it counts from ahead of the nose.',
    })
  })
}

function fixingFaults({ floor }: Draft, reading: Reading): void {
  for (const kind of ['bolts', 'screws'] as const) {
    const fixing = floor?.[kind]
    if (!fixing) continue
    const { diameter, hole, pitch } = fixing
    // a wood screw bites in a hole smaller than itself; a bolt must pass
    if (kind === 'bolts' && diameter && hole !== undefined && hole < diameter.value)
      reading.impossible(['floor', kind, 'hole'], {
        expected: `at least ${mm(diameter.value)}`,
        because: `a hole of ${mm(hole)} does not take a bolt of ${diameter.name}`,
        advice: 'Look at the units of both.',
      })
    if (hole !== undefined && pitch !== undefined && pitch <= 2 * hole)
      reading.impossible(['floor', kind, 'pitch'], {
        expected: `more than ${mm(2 * hole)}`,
        because: `at ${mm(pitch)} apart the holes of ${mm(hole)} leave no board between them`,
        advice: 'Make the pitch wider.',
      })
  }
  const share = floor?.covering?.share
  if (share !== undefined && share > 1)
    reading.impossible(['floor', 'covering', 'share'], {
      expected: 'at most 1',
      because: `it cannot cover ${share} times the floor`,
      advice: 'Write the part that is covered, such as 0.72.',
    })
}

function channelFaults({ chassis }: Draft, reading: Reading): void {
  const channels = [
    ['rail', chassis?.rail, chassis?.rail?.height],
    ['cross-member', chassis?.crossMember, chassis?.crossMember?.height],
    ['A-frame', chassis?.aFrame, chassis?.aFrame?.height],
    ['outrigger', chassis?.outrigger, chassis?.outrigger?.tip],
  ] as const
  for (const [key, channel, height] of channels) {
    const { flange, bendRadius: radius } = channel ?? {}
    const t = channel?.thickness?.value
    if (t === undefined || radius === undefined) continue
    const bend = radius + t
    if (flange !== undefined && flange <= bend)
      reading.impossible(['chassis', key, 'flange'], {
        expected: `more than ${mm(bend)}`,
        because: `the bend alone takes ${mm(bend)} of a flange of ${mm(flange)}`,
        advice: 'Make the flange wider, or the bend radius smaller.',
      })
    if (height !== undefined && height <= 2 * bend)
      reading.impossible(['chassis', key, key === 'outrigger' ? 'tip' : 'height'], {
        expected: `more than ${mm(2 * bend)}`,
        because: `two bends take ${mm(2 * bend)} of a web of ${mm(height)}`,
        advice: 'Make the web deeper, or the bend radius smaller.',
      })
  }
  if (chassis?.kFactor !== undefined && chassis.kFactor > 0.5)
    reading.impossible(['chassis', 'k factor'], {
      expected: 'at most 0.5',
      because: 'the neutral line lies inside the middle of the sheet',
      advice: "Write the shop's own figure, such as 0.42.",
    })
}

function memberFaults({ chassis, floor }: Draft, reading: Reading): void {
  const { rail, outrigger, aFrame } = chassis ?? {}
  const holes = rail?.holes
  const web =
    rail?.height !== undefined && rail.thickness && rail.bendRadius !== undefined
      ? rail.height - 2 * (rail.thickness.value + rail.bendRadius)
      : undefined
  if (holes?.diameter !== undefined && web !== undefined && holes.diameter >= web)
    reading.impossible(['chassis', 'rail', 'holes', 'diameter'], {
      expected: `less than ${mm(web)}`,
      because: `the flat of the web is ${mm(web)} deep`,
      advice: 'Make the holes smaller.',
    })
  if (holes?.diameter !== undefined && holes.pitch !== undefined && holes.pitch <= holes.diameter)
    reading.impossible(['chassis', 'rail', 'holes', 'pitch'], {
      expected: `more than ${mm(holes.diameter)}`,
      because: `at ${mm(holes.pitch)} apart holes of ${mm(holes.diameter)} run into each other`,
      advice: 'Make the pitch wider.',
    })
  if (outrigger?.tip !== undefined && outrigger.root !== undefined && outrigger.tip > outrigger.root)
    reading.impossible(['chassis', 'outrigger', 'tip'], {
      expected: `at most ${mm(outrigger.root)}`,
      because: `an outrigger is ${mm(outrigger.root)} deep at the rail and tapers outward`,
      advice: 'Exchange root and tip.',
    })
  const half = rail?.centres === undefined ? undefined : rail.centres / 2
  const inside = floor?.halfWidth
  if (
    outrigger?.reach !== undefined &&
    half !== undefined &&
    (outrigger.reach <= half || (inside !== undefined && outrigger.reach > inside))
  ) {
    const to = inside ?? outrigger.reach
    reading.impossible(['chassis', 'outrigger', 'reach'], {
      expected: `between ${mm(half)} and ${mm(to)}`,
      because: `an outrigger runs from the rail at ${mm(half)} to the edge of the floor at ${mm(to)}`,
      advice: 'Write the buttock line of its tip.',
    })
  }
  if (half !== undefined && inside !== undefined && half >= inside)
    reading.impossible(['chassis', 'rail', 'centres'], {
      expected: `less than ${mm(2 * inside)}`,
      because: `the rails would stand outside the floor, which is ${mm(2 * inside)} wide`,
      advice: 'Bring the rails together.',
    })
  if (aFrame?.angle !== undefined && aFrame.angle > (2 * Math.PI) / 3)
    reading.impossible(['chassis', 'A-frame', 'angle'], {
      expected: 'at most 120 deg',
      because: `at ${deg(aFrame.angle)} the legs lie across the coach`,
      advice: '50 deg is usual.',
    })
}

function bayFaults({ chassis }: Draft, reading: Reading): void {
  chassis?.bays?.forEach((bay, i) => {
    if (bay?.fore === undefined || bay.aft === undefined) return
    const path = ['chassis', 'bays', i]
    if (bay.aft <= bay.fore)
      reading.impossible([...path, 'to'], {
        expected: `beyond ${mm(bay.fore)}`,
        because: `the bay would end at ${mm(bay.aft)}, ahead of where it begins`,
        advice: 'Exchange from and to.',
      })
  })
}

function gearFaults({ gear, floor, section, suspension, weight }: Draft, reading: Reading): void {
  if (!gear) return
  const { ground, tube, wheelBox, wheel } = gear
  const inside = suspension?.rubber?.tube
  if (tube?.size !== undefined && inside !== undefined && inside >= tube.size)
    reading.impossible(['gear', 'tube', 'size'], {
      expected: `more than ${mm(inside)}`,
      because: `the tube is ${mm(inside)} inside, so it cannot be ${mm(tube.size)} outside`,
      advice: 'The rubber of the suspension says the inside, the tube of the gear the outside.',
    })
  // a ground above the floor is a fault of its own
  if (ground !== undefined && ground !== null && ground < 0 && tube?.waterline !== undefined && ground >= tube.waterline)
    reading.impossible([weight?.ground === ground ? 'weight' : 'gear', 'ground'], {
      expected: `below ${mm(tube.waterline)}`,
      because: `the axle tube at waterline ${mm(tube.waterline)} would stand in the ground`,
      advice: 'Waterlines below the floor are negative.',
    })
  if (tube?.startAngle !== undefined && typeof tube.loadedAngle === 'number' && tube.loadedAngle > tube.startAngle)
    reading.impossible(['gear', 'tube', 'loaded angle'], {
      expected: `at most ${deg(tube.startAngle)}`,
      because: `the arm hangs ${deg(tube.startAngle)} below level before any load, and load turns it up`,
      advice: 'Exchange the two angles.',
    })
  if (wheelBox?.inner !== undefined && floor?.halfWidth !== undefined && wheelBox.inner >= floor.halfWidth)
    reading.impossible(['gear', 'wheel box', 'inner'], {
      expected: `less than ${mm(floor.halfWidth)}`,
      because: `the floor ends ${mm(floor.halfWidth)} from the centre plane, so the box would stand outside it`,
      advice: 'Write the buttock line of its inner face.',
    })
  if (wheelBox?.top !== undefined && (wheelBox.top <= 0 || (section?.crown !== undefined && wheelBox.top >= section.crown)))
    reading.impossible(['gear', 'wheel box', 'top'], {
      expected: 'a waterline above the floor and under the roof',
      because: `a top at waterline ${mm(wheelBox.top)} is no box on the floor`,
      advice: 'Write the waterline of its top.',
    })
  if (wheelBox?.inner !== undefined && wheel?.y !== undefined && wheel.width !== undefined && wheel.y - wheel.width / 2 <= wheelBox.inner)
    reading.impossible(['gear', 'wheel', 'y'], {
      expected: `more than ${mm(wheelBox.inner + wheel.width / 2)}`,
      because: `the tyre would stand through the inner face of its box, at ${mm(wheelBox.inner)}`,
      advice: 'Move the wheel out, or the box in.',
    })
}
