/** Weight and balance: what is written well but cannot be weighed, or would be weighed twice. */
import type { Draft } from './definition-form.js'
import type { Reading } from './faults.js'
import { mm } from './say-size.js'

type Weight = NonNullable<Draft['weight']>

export function weightFaults(draft: Draft, reading: Reading): void {
  statedFaults(draft, reading)
  const weight = draft.weight
  if (!weight) return
  stanceFaults(weight, draft.gear?.spindles, reading)
  tankFaults(weight, draft.chassis, reading)
  stowageFaults(weight, reading)
  caseFaults(weight, reading)
  liftFaults(draft, weight, reading)
}

/** Two of one name at one place are one thing written twice; a rest is of something that twins take the place of. */
function statedFaults({ masses }: Draft, reading: Reading): void {
  const seen = new Map<string, number>()
  masses?.forEach((each, i) => {
    if (!each) return
    const { item, station, y, waterline, twins, rest, mass } = each
    const same = JSON.stringify([item?.toLowerCase(), station, y, waterline])
    const before = seen.get(same)
    if (before === undefined) seen.set(same, i)
    else if (item !== undefined)
      reading.impossible(['masses', i], {
        expected: 'each thing once',
        because: `it stands at this place already, as item ${before + 1} of the list`,
        advice: 'Take one of them out, or name them apart if there are two.',
      })
    if (rest === undefined || twins === undefined || mass === undefined || rest === 0) return
    if (twins.length > 0 && rest <= mass) return
    reading.impossible(['masses', i, 'rest'], {
      expected: 'a part of what twins take the place of',
      because: twins.length === 0 ? 'nothing is named as its twin, so all of it is stated' : 'the rest is more than the whole',
      advice: twins.length === 0 ? 'Name its twins, or leave the rest out.' : 'Write what the twins do not hold.',
    })
  })
}

function stanceFaults(
  { ball, ground, axleRatings }: Weight,
  spindles: readonly (number | undefined)[] | undefined,
  reading: Reading,
): void {
  const first = spindles?.[0]
  if (first !== undefined && ball !== undefined && first <= ball)
    reading.impossible(['weight', 'ball'], {
      expected: 'a station ahead of the axles',
      because: 'the ball stands behind the first spindle',
      advice: 'Stations run aft: write a smaller one.',
    })
  if (ground !== undefined && ground >= 0)
    reading.impossible(['weight', 'ground'], {
      expected: 'a waterline below the floor',
      because: 'the ground would stand at the floor or above it',
      advice: 'Waterlines run up from the floor: write it with a minus.',
    })
  if (spindles && axleRatings && axleRatings.length !== spindles.length)
    reading.impossible(['weight', 'axle ratings'], {
      expected: 'a rating for each axle',
      because: `${axleRatings.length === 1 ? 'one rating is' : `${axleRatings.length} ratings are`} written for ${spindles.length === 1 ? 'one axle' : `${spindles.length} axles`}`,
      advice: 'Write one for each spindle, from the front.',
    })
}

/** Cubic metres of a litre. */
const LITRE = 1e-3

function tankFaults({ tanks }: Weight, chassis: Draft['chassis'], reading: Reading): void {
  tanks?.forEach((tank, i) => {
    if (!tank?.bay || chassis === undefined || (chassis && chassis.bays === undefined)) return
    const bays = chassis?.bays?.flatMap((each) => (each?.id === undefined ? [] : [each])) ?? []
    const bay = bays.find((each) => each.id === tank.bay)
    if (!bay) {
      reading.wrong(['weight', 'tanks', i, 'bay'], {
        expected: bays.length > 0 ? `one of ${bays.map((each) => each.id).join(', ')}` : 'a bay of the chassis',
        found: `"${tank.bay}"`,
        advice: 'Write the bay under the chassis, or leave this out.',
      })
      return
    }
    const { fore, aft, half, depth } = bay
    if (fore !== undefined && aft !== undefined && aft > fore && tank.station !== undefined && (tank.station < fore || tank.station > aft))
      reading.impossible(['weight', 'tanks', i, 'station'], {
        expected: `between ${mm(fore)} and ${mm(aft)}`,
        because: `its centre would hang outside its bay ${tank.bay}`,
        advice: 'Leave it out, and it hangs in the middle of the bay.',
      })
    if (tank.litres === undefined || fore === undefined || aft === undefined || half === undefined || depth === undefined) return
    const room = (aft - fore) * 2 * half * depth
    // a bay turned round is a fault of its own
    if (room <= 0 || tank.litres * LITRE <= room) return
    reading.impossible(['weight', 'tanks', i, 'litres'], {
      expected: 'a tank that goes into its bay',
      because: `it is larger than its bay of ${mm(aft - fore)} by ${mm(2 * half)} by ${mm(depth)}, which holds ${Math.floor(room / LITRE)} litres at most`,
      advice: 'Write a smaller tank or a larger bay.',
    })
  })
}

function stowageFaults({ stowage, places }: Weight, reading: Reading): void {
  stowage?.forEach((way, i) => {
    const shares = way?.shares
    if (!shares || !places) return
    const path = ['weight', 'stowage', i, 'shares']
    if (shares.length !== places.length) {
      const because = `${shares.length} shares are written for ${places.length} places`
      reading.impossible(path, { expected: 'a share for each place', because, advice: 'Write one for each place, 0 % where nothing goes.' })
      return
    }
    let whole = 0
    for (const each of shares) {
      if (each === undefined) return
      whole += each
    }
    // a millionth: shares are written in hundredths of at most six places
    if (Math.abs(whole - 1) <= 1e-6) return
    const because = `the shares come to ${Number((whole * 100).toFixed(4))} %`
    reading.impossible(path, { expected: 'shares that come to 100 %', because, advice: 'Make them come to 100 %.' })
  })
}

function caseFaults({ cases, stowage, carried }: Weight, reading: Reading): void {
  const known = (list: readonly ({ readonly id: string | undefined } | undefined)[] | undefined) => list?.map((each) => each?.id)
  const [ways, things] = [known(stowage), known(carried)]
  cases?.forEach((each, i) => {
    if (!each) return
    const path = ['weight', 'cases', i]
    if (each.stowage && ways && !ways.includes(each.stowage))
      reading.impossible([...path, 'stowage'], {
        expected: 'a stowage that is written',
        because: `no stowage is called ${each.stowage}`,
        advice: `Known are ${ways.join(', ') || 'none'}.`,
      })
    if (each.stowage === null && typeof each.cargo === 'number' && each.cargo > 0)
      reading.impossible([...path, 'cargo'], {
        expected: 'cargo that is stowed somehow',
        because: 'no stowage says where it goes',
        advice: 'Name a stowage.',
      })
    each.carrying?.forEach((id, k) => {
      if (id === undefined || !things || things.includes(id)) return
      reading.impossible([...path, 'carrying', k], {
        expected: 'something that is written under carried',
        because: `nothing carried is called ${id}`,
        advice: `Known are ${things.join(', ') || 'none'}.`,
      })
    })
  })
}

function liftFaults({ frames }: Draft, { lift }: Weight, reading: Reading): void {
  if (!lift || !frames) return
  const stationOf = (id: string | undefined): number | undefined => frames.find((frame) => frame?.id === id)?.station
  for (const key of ['fore', 'aft'] as const) {
    if (lift[key] === undefined || stationOf(lift[key]) !== undefined) continue
    reading.impossible(['weight', 'lift', key], {
      expected: 'a frame of this coach',
      because: `no frame is called ${lift[key]}`,
      advice: `Known are ${frames.map((frame) => frame?.id).join(', ')}.`,
    })
  }
  const [fore, aft] = [stationOf(lift.fore), stationOf(lift.aft)]
  if (fore === undefined || aft === undefined || fore < aft) return
  reading.impossible(['weight', 'lift', 'aft'], {
    expected: 'a frame behind the forward sling',
    because: 'the aft sling is not behind the forward one',
    advice: 'Exchange the two.',
  })
}
