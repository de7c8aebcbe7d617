/**
 * Facts that more than one trade asks for but a shop writes once: the ground under the coach, the ball at the point of the
 * A-frame, the size of the tyre, the start angle of the arm, the flange of a cross-member, the place of a tank. Runs on the reading before
 * anything looks at it: what is absent is filled in from where it is written, and two places that disagree are a fault.
 */
import { findTyre, tyreDiameter } from '../tables/tyres.js'
import type { Draft } from './definition-form.js'
import type { Reading } from './faults.js'
import { deg, mm } from './say-size.js'
import type { Path } from './written.js'

type Value = number | null | undefined

interface Fact {
  readonly path: Path
  /** undefined where its reading failed, null where it is not written */
  readonly here: Value
  readonly there: Value
  /** "the ground of weight": where it is written otherwise */
  readonly of: string
  /** what to do where neither place says it; null where nobody need say it */
  readonly advice: string | null
  readonly expects: string
  readonly say: (value: number) => string
  /** two that are nearer are the same as a shop would measure them; null where both may stand */
  readonly same: number | null
}

const SAME_LENGTH = 0.0005
const SAME_ANGLE = Math.PI / 3600

function settle(fact: Fact, reading: Reading): Value {
  const { path, here, there, of, same } = fact
  if (typeof here === 'number') {
    if (typeof there === 'number' && same !== null && Math.abs(here - there) > same)
      reading.impossible(path, {
        expected: fact.say(there),
        because: `${of} says ${fact.say(there)}`,
        advice: 'Write it in one of the two places only.',
      })
    return here
  }
  if (here === undefined || typeof there === 'number') return here === undefined ? undefined : there
  // where the other place was written badly there is a fault already
  if (there === null && fact.advice !== null) reading.wrong(path, { expected: fact.expects, found: 'nothing', advice: fact.advice })
  return there === undefined ? undefined : null
}

/** What another trade's group says: undefined where it did not read, null where it is not written. */
const from = <T extends object>(group: T | null | undefined, value: (group: T) => Value): Value =>
  group === null || group === undefined ? group : value(group)

export function fillFromElsewhere(draft: Draft, reading: Reading): Draft {
  const { gear, chassis, suspension } = draft
  return {
    ...draft,
    gear: gear && fillGear(draft, gear, reading),
    chassis: chassis && fillChassis(draft, chassis, reading),
    weight: draft.weight && fillTanks(fillTrack(draft.weight, gear, reading), chassis, reading),
    suspension: suspension && {
      ...suspension,
      startAngle: settle(
        {
          path: ['suspension', 'start angle'],
          here: suspension.startAngle,
          there: from(gear, (g) => from(g.tube, (t) => t.startAngle)),
          of: 'the tube of the gear',
          advice: null,
          expects: 'an angle such as 22.5 deg',
          say: deg,
          same: SAME_ANGLE,
        },
        reading,
      ),
    },
  }
}

function fillGear({ weight, suspension }: Draft, gear: NonNullable<Draft['gear']>, reading: Reading): Draft['gear'] {
  const tyre = suspension?.tyre === undefined ? null : findTyre(suspension.tyre)
  const size = (key: 'radius' | 'width', here: Value, there: number | null): number | undefined =>
    settle(
      {
        path: ['gear', 'wheel', key],
        here,
        there: suspension === undefined || (suspension && suspension.tyre === undefined) ? undefined : there,
        of: 'the tyre of the suspension',
        advice: `Name the tyre in the suspension, or write ${key} here.`,
        expects: 'a length such as 205 mm',
        say: mm,
        same: SAME_LENGTH,
      },
      reading,
    ) as number | undefined
  const row = tyre?.ok ? tyre.row : null
  return {
    ...gear,
    ground: settle(
      {
        path: ['gear', 'ground'],
        here: gear.ground,
        there: from(weight, (w) => w.ground),
        of: 'the ground of weight',
        advice: null,
        expects: 'a waterline such as -508 mm',
        say: mm,
        same: SAME_LENGTH,
      },
      reading,
    ),
    wheel: gear.wheel && {
      ...gear.wheel,
      radius: size('radius', gear.wheel.radius, row && tyreDiameter(row) / 2),
      width: size('width', gear.wheel.width, row?.width ?? null),
    },
  }
}

function fillChassis({ weight }: Draft, chassis: NonNullable<Draft['chassis']>, reading: Reading): Draft['chassis'] {
  const { aFrame, crossMember } = chassis
  return {
    ...chassis,
    crossMemberFlange: settle(
      {
        path: ['chassis', 'cross-member flange'],
        here: chassis.crossMemberFlange,
        there: from(crossMember, (c) => c.flange),
        of: 'the cross-member',
        advice: 'Write the section of the cross-member, or here its flange: 38 mm.',
        expects: 'a length such as 38 mm',
        say: mm,
        same: SAME_LENGTH,
      },
      reading,
    ) as number | undefined,
    aFrame: aFrame && {
      ...aFrame,
      // a coupler may reach ahead of the point where the legs meet, so both may stand
      apex: settle(
        {
          path: ['chassis', 'A-frame', 'apex'],
          here: aFrame.apex,
          there: from(weight, (w) => w.ball),
          of: 'the ball of weight',
          advice: 'Write the ball of weight, or here the station where the two legs meet.',
          expects: 'a length such as 880 mm',
          say: mm,
          same: null,
        },
        reading,
      ) as number | undefined,
    },
  }
}

function fillTrack(weight: NonNullable<Draft['weight']>, gear: Draft['gear'], reading: Reading): NonNullable<Draft['weight']> {
  const half = from(gear, (g) => from(g.wheel, (w) => w.y))
  return {
    ...weight,
    track: settle(
      {
        path: ['weight', 'track'],
        here: weight.track,
        there: typeof half === 'number' ? 2 * half : half,
        of: 'the wheel of the gear',
        advice: 'Write the y of the wheel under the gear, or here the track.',
        expects: 'a length such as 2010 mm',
        say: mm,
        same: SAME_LENGTH,
      },
      reading,
    ) as number | undefined,
  }
}

/** A tank hangs in the middle of its bay unless it is written elsewhere. */
function fillTanks(weight: NonNullable<Draft['weight']>, chassis: Draft['chassis'], reading: Reading): Draft['weight'] {
  return {
    ...weight,
    tanks: weight.tanks?.map((tank, i) => {
      if (!tank) return tank
      const bay = tank.bay && chassis?.bays?.find((each) => each?.id === tank.bay)
      const fill = (key: 'station' | 'y', middle: Value, advice: string | null): Value =>
        settle(
          {
            path: ['weight', 'tanks', i, key],
            here: tank[key],
            // a bay that is not there is a fault already
            there: bay ? middle : tank.bay ? undefined : null,
            of: 'the middle of its bay',
            advice,
            expects: 'a length such as 3915 mm',
            say: mm,
            same: null,
          },
          reading,
        )
      const middle = bay && bay.fore !== undefined && bay.aft !== undefined ? (bay.fore + bay.aft) / 2 : undefined
      const station = fill('station', middle, 'Name the bay of the chassis it hangs in, or write its station here.')
      // where nobody says, a tank hangs on the centre line
      return {
        ...tank,
        station: station as number | undefined,
        y: (fill('y', bay ? bay.y : undefined, null) ?? (tank.y === undefined ? undefined : 0)) as number | undefined,
      }
    }),
  }
}
