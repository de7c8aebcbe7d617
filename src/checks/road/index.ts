/** Rules of towing, springs, coupling, tyres, lamps and labels. Each law in force governs; ratings are checked, strength is not. */
import type { Derived } from '../../derive/index.js'
import type { Check } from '../../derive/nouns.js'
import type { NotComputed, RideDerived, RoadDerived, TowingDerived } from '../../derive/road-nouns.js'
import { COUPLING_SOURCE } from '../../tables/couplings.js'
import { capacityCheck, distanceCheck, finding } from '../check.js'

export function roadChecks({ towing, ride, road, shell }: Derived): Check[] {
  const { memo } = shell.laid
  return [
    ...memo.keep('checks of towing', [towing], () => either(towing, 'towing', towingRules)),
    ...memo.keep('checks of the ride', [ride], () => either(ride, 'ride', rideRules)),
    ...memo.keep('checks of the road', [road], () => either(road, 'road', roadRules)),
  ]
}

function either<T extends object>(it: T | NotComputed, id: string, rules: (it: T) => Check[]): Check[] {
  if (!('notComputed' in it)) return rules(it)
  return [
    finding({ id: `${id}.not-computed`, says: `${it.notComputed} Nothing of it was checked.`, source: 'the definition' }, 'not-checked'),
  ]
}

/** Damping of a combination below which a speed is held to be its limit: ISO 9815's reference, from memory. */
const LEAST_DAMPING = 0.05
const per = (share: number): string => `${(share * 100).toFixed(1)} %`

/** One check a tow car, on its least steady case: the table of all cases is on the towing sheet. */
function towingRules({ cars, cases, moves, steadiness, unknownExtents }: TowingDerived): Check[] {
  const checks = moves.map(({ car, case: id, changes }) => {
    const says = cars.find((each) => each.id === car)?.says ?? car
    const worst = steadiness.find((each) => each.car === car && each.case === id)
    const loading = cases.find((each) => each.id === id)
    const damping = worst?.damping ?? null
    const told = {
      id: `towing.${car}`,
      source: 'linear single-track model; least damping from ISO 9815 (from memory)',
      concerns: ['axles'],
    }
    const lead = `Behind the ${says} at 100 km/h`
    if (damping === null) return finding({ ...told, says: `${lead} nothing swings in any case.` }, 'pass')
    const limit = worst?.zeroDamping ? ` It would swing on without end from ${Math.round(worst.zeroDamping * 3.6)} km/h.` : ''
    const rest = `a swing is damped by ${per(damping)} of critical in the least steady case, ${id} (${loading?.says}).${limit} Indicative: the limits of a tow car are for the buyer to check.`
    return distanceLike(
      { ...told, says: `${lead} ${rest}`, mend: damping < LEAST_DAMPING ? mendOf(changes, damping) : null },
      LEAST_DAMPING,
      damping,
    )
  })
  const unknown = unknownExtents.map((item) =>
    finding(
      {
        id: `towing.extent-${item.toLowerCase().replace(/[^a-z0-9]+/g, '-')}`,
        says: `How far "${item}" reaches is written, but no stated mass has that name, so it counts for nothing.`,
        source: 'the definition',
        mend: 'Name it as it is named in the stated masses.',
      },
      'caution',
    ),
  )
  return [...checks, ...unknown]
}

/** A share that must be at least so much; falling short is for a person to weigh, since no law sets it. */
function distanceLike(told: Parameters<typeof distanceCheck>[0], required: number, available: number): Check {
  return { ...distanceCheck(told, required, available, 'caution'), unit: '1' }
}

function mendOf(changes: TowingDerived['moves'][number]['changes'], now: number): string {
  const best = changes.filter((each) => each.damping !== null && each.damping > now)[0]
  return best ? `Most would be gained by ${best.says}: ${per(best.damping ?? 0)}. Or forbid that loading.` : 'Forbid that loading.'
}

/** A cord that is squeezed less slips, one squeezed more tears going in. Common practice, no source. */
const [LEAST_SQUEEZE, MOST_SQUEEZE] = [0.1, 0.3]

function rideRules({ rate, frequency, armAngle, torque, rubber }: RideDerived): Check[] {
  const degrees = (rad: number): string => ((Math.abs(rad) * 180) / Math.PI).toFixed(1)
  const how = torque === 'measured' ? 'by its measured torque' : 'by the formula of a bonded bush, an estimate only'
  const checks = [
    finding(
      {
        id: 'ride.rate',
        says: `At gross weight the arm rests ${degrees(armAngle)} degrees ${armAngle < 0 ? 'above' : 'below'} level and the wheel has ${(rate.value / 1000).toFixed(0)} kN/m, ${frequency.value.toFixed(2)} Hz, ${how}.`,
        source: 'statics of a swing arm',
        concerns: ['axles'],
        worked: [rate, frequency],
        mend: torque === 'measured' ? null : 'Ask the axle maker for torque against turn, or measure it.',
      },
      torque === 'measured' ? 'pass' : 'caution',
    ),
  ]
  if (!rubber) return checks
  const { squeeze, fill } = rubber
  return [
    ...checks,
    capacityCheck(
      {
        id: 'ride.cord-fill',
        says: `The cord fills ${per(fill.value)} of its corner; rubber keeps its volume, so it must stay under the whole of it.`,
        source: 'geometry of the corner',
        concerns: ['axles'],
        worked: [fill],
      },
      fill.value,
      1,
      '1',
    ),
    finding(
      {
        id: 'ride.cord-squeeze',
        says: `The cord is squeezed by ${per(squeeze.value)} of its diameter; ${per(LEAST_SQUEEZE)} to ${per(MOST_SQUEEZE)} is usual.`,
        source: 'common practice, no source; the axle maker governs',
        concerns: ['axles'],
        worked: [squeeze],
      },
      squeeze.value >= LEAST_SQUEEZE && squeeze.value <= MOST_SQUEEZE ? 'pass' : 'caution',
    ),
  ]
}

const POUND = 0.45359237
const both = (kg: number): string => `${Math.round(kg)} kg (${Math.round(kg / POUND)} lb)`

function roadRules(road: RoadDerived): Check[] {
  if (road.notApplied !== null)
    return [...tyreRules(road), finding({ id: 'road.market', says: road.notApplied, source: 'the tables of this program' }, 'not-checked')]
  const devices = road.lamps.reduce((sum, row) => sum + row.count, 0)
  const { draft } = road.labels
  return [
    ...couplingRules(road),
    ...tyreRules(road),
    finding(
      {
        id: 'road.lamps',
        says: `The schedule asks for ${devices} lamps and reflectors. Where they stand is not written, so their heights were not checked.`,
        source: '49 CFR 571.108, table I-b; the law in force governs',
      },
      'not-checked',
    ),
    finding(
      {
        id: 'road.labels',
        says:
          draft.length === 0 ? 'The labels are made from weighed values and answered for.' : `The labels are drafts. ${draft.join(' ')}`,
        source: "49 CFR 567.4, 571.110 and 571.120; the duty to certify is the manufacturer's",
      },
      draft.length === 0 ? 'pass' : 'not-checked',
    ),
  ]
}

function couplingRules({ coupling, gross }: RoadDerived): Check[] {
  const { class: needed, rated, chain } = coupling
  const concerns = ['coupler']
  if (!needed)
    return [
      finding(
        {
          id: 'coupling.class',
          says: `${both(gross)} is above 10 000 lb, which the standard for couplings does not cover.`,
          source: COUPLING_SOURCE,
          concerns,
        },
        'not-checked',
      ),
    ]
  return [
    capacityCheck(
      {
        id: 'coupling.rating',
        says: `The coupler is rated ${both(rated)} for a gross weight of ${both(gross)}: class ${needed.class}.`,
        source: COUPLING_SOURCE,
        concerns,
      },
      gross,
      rated,
      'kg',
    ),
    capacityCheck(
      {
        id: 'coupling.chains',
        says: `Each of the two safety chains breaks at ${(chain / 1000).toFixed(1)} kN; ${(needed.chain / 1000).toFixed(1)} kN are asked for.`,
        source: COUPLING_SOURCE,
        concerns,
        mend: chain < needed.chain ? 'Fit heavier chains with hooks and lugs to match.' : null,
      },
      needed.chain,
      chain,
      'N',
    ),
  ]
}

/** Reserve of tyres over their axle's rating below which a shop should think again. From memory. */
const RESERVE = 0.1

function tyreRules({ tyre, tyresCarry, axleRatings }: RoadDerived): Check[] {
  const axleRating = Math.max(...axleRatings)
  const told = { id: 'tyre.rating', concerns: ['axles'], source: `${tyre.source}; FMVSS 120 S5.1.2 for the sum` }
  const says = `Two ${tyre.name} carry ${both(tyresCarry)} for an axle rated ${both(axleRating)}`
  const check = capacityCheck({ ...told, says: `${says}.` }, axleRating, tyresCarry, 'kg')
  if (check.verdict !== 'pass' || tyresCarry >= axleRating * (1 + RESERVE)) return [check]
  return [{ ...check, verdict: 'caution', says: `${says}: less than ${per(RESERVE)} in reserve.`, mend: 'Take the next load range.' }]
}
