/**
 * Rules of weight and balance: the hitch band, ratings of axles, tyres and the whole, and nothing counted twice. Cases the
 * coach is not designed for are ways it may not be stowed: their figures are cautions, and are never left out.
 */
import type { Derived } from '../../derive/index.js'
import type { Check } from '../../derive/nouns.js'
import type { CaseWeighed, WeightDerived } from '../../derive/weight-nouns.js'
import { capacityCheck, distanceCheck, finding, mm } from '../check.js'
import { carryRules, liftRules } from './lift.js'

export function weightChecks(derived: Derived): Check[] {
  const { memo } = derived.shell.laid
  const { market } = derived.definition.coach
  return [...balance(derived), ...memo.keep('checks of carrying', [market, ...derived.parts], () => carryRules(derived.parts, market))]
}

function balance({ weight, shell }: Derived): Check[] {
  return shell.laid.memo.keep('checks of weight', [weight], () => {
    if ('notComputed' in weight)
      return [
        finding({ id: 'weight.not-computed', says: `${weight.notComputed} Nothing was weighed.`, source: 'the definition' }, 'not-checked'),
      ]
    return [
      ...weight.cases.flatMap((each) => [...hitchRules(weight, each), ...loadRules(weight, each)]),
      ...heightRules(weight.cases),
      ...ratingRules(weight),
      ...listRules(weight),
      ...(weight.lift ? liftRules(weight.lift) : []),
    ]
  })
}

const HITCH_SOURCE = "vehicle makers' handbooks; the coach's own band is in its definition"
const per = (share: number): string => `${(share * 100).toFixed(1)} %`
const kg = (mass: number): string => `${Math.round(mass)} kg`

/** Both ends of the band in one check: the margin is of the nearer one. */
function hitchRules(weight: WeightDerived, one: CaseWeighed): Check[] {
  const [least, most] = weight.hitchBand
  const share = one.share.value
  const isLow = share - least < most - share
  const says = `Case ${one.id}, ${one.says}: the hitch carries ${kg(one.hitch.value)}, ${per(share)} of ${kg(one.mass.value)}`
  const told = {
    ...{ id: `weight.hitch.${one.id}`, source: HITCH_SOURCE, concerns: ['hitch'], worked: [one.share] },
    says: `${says}; ${per(least)} to ${per(most)} are wanted.`,
    mend: share < least || share > most ? mendOf(weight, one, isLow) : null,
  }
  const failing = one.design ? 'fail' : 'caution'
  const check = isLow ? distanceCheck(told, least, share, failing) : capacityCheck(told, share, most, '1', failing)
  return [{ ...check, unit: '1' }]
}

function mendOf({ hitchBand: [least, most], axle, ball }: WeightDerived, one: CaseWeighed, isLow: boolean): string {
  if (!one.design) return `Forbid this stowage in the owner's papers: ${isLow ? 'it makes the coach swing' : 'it overloads the car'}.`
  // the share wanted with the same centre: x_a = b + (x_c - b) / (1 - p)
  const wanted = ball + (one.centre[0].value - ball) / (1 - (isLow ? least : most))
  return `Move the axles ${mm(Math.abs(wanted - axle))} mm ${wanted > axle ? 'aft' : 'forward'}, or move mass ${isLow ? 'forward' : 'aft'}.`
}

function loadRules({ gross, tyre }: WeightDerived, one: CaseWeighed): Check[] {
  const head = `Case ${one.id}, ${one.says}`
  // a case that cargo fills up is at its rating by intent
  const isFilled = one.filled !== null && one.filled.mass > 0
  const checks = [
    ...(isFilled
      ? []
      : [
          capacityCheck(
            {
              ...{ id: `weight.gross.${one.id}`, source: 'the gross rating of the definition', concerns: ['rating'], worked: [one.mass] },
              says: `${head}: it weighs ${kg(one.mass.value)} of ${kg(gross)}.`,
              mend: one.mass.value > gross ? 'Take mass out, or rate the coach higher with axles, tyres and coupling to match.' : null,
            },
            one.mass.value,
            gross,
            'kg',
            one.design ? 'fail' : 'caution',
          ),
        ]),
    ...one.axles.map(({ load, rating }, i) =>
      capacityCheck(
        {
          ...{ id: `weight.axle-${i + 1}.${one.id}`, source: 'the rating of the axle', concerns: ['axles'], worked: [load] },
          says: `${head}: ${axleName(i, one.axles.length)} carries ${kg(load.value)} of ${kg(rating)}, level.`,
          mend: load.value > rating ? 'Take a stronger axle with tyres to match, or move mass forward.' : null,
        },
        load.value,
        rating,
        'kg',
      ),
    ),
  ]
  const heaviest = one.axles
    .flatMap(({ left, right }) => [
      { side: 'right', load: right },
      { side: 'left', load: left },
    ])
    .reduce((a, b) => (b.load.value > a.load.value ? b : a))
  const tyres =
    tyre === null
      ? []
      : [
          capacityCheck(
            {
              ...{ id: `weight.tyre.${one.id}`, source: "the tyre's load at its pressure", concerns: ['axles'], worked: [heaviest.load] },
              says: `${head}: the heaviest wheel, on the ${heaviest.side}, carries ${kg(heaviest.load.value)} of the ${kg(tyre)} its tyre bears.`,
              mend: heaviest.load.value > tyre ? 'Take the next load range, or move mass to the other side.' : null,
            },
            heaviest.load.value,
            tyre,
            'kg',
          ),
        ]
  return [...checks, ...tyres]
}

const axleName = (i: number, n: number): string =>
  n === 1 ? 'the axle' : i === 0 ? 'the front axle' : i === n - 1 ? 'the rear axle' : `axle ${i + 1}`

/** Balls are set to the nearest hole of a shank and cars sag: less than this is not to be relied on, m. Common practice, no source. */
const SETTING = 0.02

/** Of the case that bears least of it. */
function heightRules(cases: readonly CaseWeighed[]): Check[] {
  const rooms = cases.flatMap((one) => {
    const errors = [one.heightError?.below, one.heightError?.above].flatMap((each) => (each ? [each] : []))
    return errors.length === 0 ? [] : [{ one, errors, room: Math.max(0, Math.min(...errors.map((each) => Math.abs(each.value)))) }]
  })
  const worst = rooms.sort((a, b) => a.room - b.room)[0]
  if (!worst) return []
  const sides = worst.errors.map((each) => `${mm(Math.abs(each.value))} mm ${each.value < 0 ? 'below level' : 'above it'}`)
  return [
    distanceCheck(
      {
        ...{ id: 'weight.height-error', concerns: ['axles', 'hitch'], worked: worst.errors },
        says: `Case ${worst.one.id}, ${worst.one.says}: the axles do not equalise, and one passes its rating with the ball ${sides.join(' or ')}; tyres are taken as stiff, which is on the safe side.`,
        source: 'statics of springs that do not equalise',
        mend: worst.room < SETTING ? "State the height of the ball in the owner's papers, and fit a hitch that can be set to it." : null,
      },
      SETTING,
      worst.room,
      'caution',
    ),
  ]
}

function ratingRules({ ratings, gross, hitchBand: [least], capacity }: WeightDerived): Check[] {
  const sum = ratings.reduce((all, each) => all + each, 0)
  return [
    capacityCheck(
      {
        ...{
          id: 'weight.ratings',
          concerns: ['rating', 'axles'],
          source: '49 CFR 567.4, from memory: axles and hitch together bear the gross rating',
        },
        says: `At the gross rating and the least load of the hitch the axles carry ${kg(gross * (1 - least))} of ${kg(sum)} together.`,
        mend: gross * (1 - least) > sum ? 'Take stronger axles, or rate the coach lower.' : null,
      },
      gross * (1 - least),
      sum,
      'kg',
    ),
    finding(
      {
        ...{
          id: 'weight.capacity',
          source: '49 CFR 571.110; the label takes it from the scales',
          concerns: ['rating'],
          worked: [capacity],
        },
        says: `It may carry ${kg(capacity.value)}, by calculation.`,
        mend: capacity.value <= 0 ? 'Take mass out, or rate the coach higher.' : null,
      },
      capacity.value > 0 ? 'pass' : 'fail',
    ),
  ]
}

function listRules({ twice, twinned, listOnly }: WeightDerived): Check[] {
  const waiting = twinned.filter((each) => each.derived === null)
  return [
    ...twice.map((each, i) =>
      finding(
        {
          ...{ id: `weight.twice.${i + 1}`, source: 'each thing weighs once', concerns: ['masses'] },
          says: `Counted twice: ${each.says}, at station ${mm(each.at[0])}.`,
          mend: 'Take it out of the list of masses, or name what is derived as its twin.',
        },
        'fail',
      ),
    ),
    ...(listOnly
      ? [
          finding(
            {
              id: 'weight.list-only',
              says: 'The stated list alone was weighed: no derived part counts.',
              source: 'the definition',
              concerns: ['masses'],
            },
            'caution',
          ),
        ]
      : []),
    ...(waiting.length === 0
      ? []
      : [
          finding(
            {
              ...{ id: 'weight.stated', source: 'the list of masses', concerns: ['masses'] },
              says: `${waiting.length} of the stated masses stand as they are written, since not every twin they name is derived: ${waiting
                .map((each) => `${each.item} (no ${each.missing.join(', no ')})`)
                .join('; ')}.`,
            },
            'not-checked',
          ),
        ]),
  ]
}
