/** Wheels in their boxes at full bump, and what stands nearest the ground. */
import type { Derived } from '../../derive/index.js'
import type { Check } from '../../derive/nouns.js'
import { distanceCheck, finding, mm } from '../check.js'

/** Room round a turning tyre: it grows with speed and throws stones. m */
const ROUND_TYRE = 0.02
const SOURCE = "common practice, no source: 20 mm round a tyre that stands free; the tyre maker's figure governs"

export function wheelsInBoxes({ under, definition }: Derived): Check[] {
  const { gear } = definition
  if (!gear) return []
  const { wheel, wheelBox, tube } = gear
  const spindle = under.gear?.tubes[0].spindleZ ?? null
  const travel = under.gear?.bumpTravel ?? null
  if (!wheel || !wheelBox || !tube || spindle === null || travel === null)
    return [
      finding(
        {
          id: 'wheel.room',
          says: 'No tyre, tube, loaded angle or wheel box is known, so the room of the wheels was not checked.',
          source: 'the definition',
        },
        'not-checked',
      ),
    ]
  const rises = spindle + travel + wheel.radius
  const lid = wheelBox.top - wheelBox.thickness.value
  const rooms = [
    {
      id: 'wheel.top',
      room: lid - rises,
      says: `At full bump a tyre rises to WL ${mm(rises)}, ${mm(lid - rises)} mm under the top of its box`,
      mend: 'A higher box, or less travel.',
    },
    {
      id: 'wheel.ends',
      room: wheelBox.reach - wheel.radius,
      says: `The wheel box reaches ${mm(wheelBox.reach)} mm from a spindle and the tyre ${mm(wheel.radius)} mm: ${mm(wheelBox.reach - wheel.radius)} mm are left`,
      mend: 'A longer box.',
    },
    {
      id: 'wheel.inside',
      room: wheel.y - wheel.width / 2 - wheelBox.inner,
      says: `The tyre's inner wall stands ${mm(wheel.y - wheel.width / 2 - wheelBox.inner)} mm from the inner face of its box`,
      mend: 'Move the box in, or the wheel out.',
    },
    {
      id: 'wheel.opening',
      room: gear.wheelOpening.half - wheel.radius,
      says: `The wheel opening reaches ${mm(gear.wheelOpening.half)} mm from the spindle and the tyre ${mm(wheel.radius)} mm: ${mm(gear.wheelOpening.half - wheel.radius)} mm are left`,
      mend: 'A wider wheel opening.',
    },
  ]
  return rooms.map(({ id, room, says, mend }) => {
    const check = distanceCheck(
      {
        id,
        says: `${says}; ${mm(ROUND_TYRE)} mm are asked for.`,
        source: SOURCE,
        concerns: ['axles', 'wheel-box-left', 'wheel-box-right'],
      },
      ROUND_TYRE,
      room,
    )
    return check.verdict === 'pass' ? check : { ...check, mend }
  })
}

/** Least height over the ground that a coach on metalled roads is built with. m */
const OVER_GROUND = 0.2

export function groundClearance({ under }: Derived): Check[] {
  const { gear } = under
  if (!gear) return []
  if (!gear.clearance)
    return [
      finding(
        {
          id: 'ground.clearance',
          says: 'No waterline of the ground is written, so nothing was measured from it.',
          source: 'the definition',
        },
        'not-checked',
      ),
    ]
  const { height, of, station } = gear.clearance
  const place = { side: 'centre' as const, station, girth: 0, waterline: (gear.ground ?? 0) + height, buttock: 0 }
  const checks = [
    distanceCheck(
      {
        id: 'ground.clearance',
        says: `Level and at rest, ${of} hangs ${mm(height)} mm over the ground; ${mm(OVER_GROUND)} mm are asked for.`,
        source: 'common practice, no source: 200 mm for metalled roads',
        places: [place],
        concerns: ['axles'],
      },
      OVER_GROUND,
      height,
      'caution',
    ),
  ]
  if (gear.departure)
    checks.push({
      ...finding(
        {
          id: 'ground.departure',
          says: `The departure angle is ${((gear.departure.value * 180) / Math.PI).toFixed(1)} deg, from the last wheel to the lower edge of the tail. Ramps steeper than that scrape it.`,
          source: 'geometry, level and at rest',
          concerns: ['axles'],
          worked: [gear.departure],
        },
        'pass',
      ),
    })
  return checks
}
