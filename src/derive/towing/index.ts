/**
 * The towing trade: how steadily the coach follows each tow car in each load case, and what would change it most.
 *
 * Covers yaw inertia with the reach of long items, damping at 100 km/h, the speed at which a swing no longer dies away, and
 * where nothing swings but everything leaves the straight. Does not cover what sway.ts leaves out; figures are for comparing
 * one loading with another, not a promise about a road.
 */

import type { ExtentDefinition, TowCarDefinition } from '../../definition/road-types.js'
import { G } from '../../quantity/gravity.js'
import type { CaseTowed, MassReach, Move, Rig, Steadiness, TowCar, TowingCase, TowingDerived } from '../road-nouns.js'
import { divergenceSpeed, swayModes, zeroDampingSpeed } from './sway.js'
import { carYawInertia, yawInertia } from './towing.formulas.js'

export interface TowingInput {
  readonly cases: readonly TowingCase[]
  /** STA of the ball and of each spindle */
  readonly ball: number
  readonly spindles: readonly number[]
  /** STA of the tail's tip, where things get hung */
  readonly tail: number
  readonly cars: readonly TowCarDefinition[]
  readonly tyres: number
  readonly hitchDamping: number
  readonly extents: readonly ExtentDefinition[]
  readonly items: readonly string[]
}

/** The speed a trailer's damping is usually stated at, 100 km/h, and the fastest looked at, 200 km/h. Common practice, no source. */
const AT = 100 / 3.6
const FASTEST = 200 / 3.6

/** Of a list about the ball's plane: kg, kg m, kg m2, and the part of the last that long items add about their own middles. */
interface Moments {
  readonly mass: number
  readonly first: number
  readonly second: number
  readonly spread: number
  /** how many items are longer than a point */
  readonly long: number
}

interface Heap {
  readonly mass: number
  readonly station: number
  /** about its own centre */
  readonly inertia: number
  readonly asPoints: number
  readonly long: number
}

const NOTHING: Moments = { mass: 0, first: 0, second: 0, spread: 0, long: 0 }

/** Moments about the plane at `from`; `onto` those of a list that comes before this one, so that what is built is summed once. */
function momentsOf(items: readonly MassReach[], from: number, onto: Moments = NOTHING): Moments {
  let { mass, first, second, spread, long } = onto
  for (const { mass: m, x, y, along, across } of items) {
    const d = x - from
    mass += m
    first += m * d
    second += m * (d * d + y * y)
    spread += (m * (along * along + across * across)) / 12
    if (along > 0 || across > 0) long++
  }
  return { mass, first, second, spread, long }
}

/** About its own centre. */
function heapOf({ mass, first, second, spread, long }: Moments, from: number): Heap {
  const centre = first / mass
  const asPoints = second - mass * centre * centre
  return { mass, station: from + centre, inertia: asPoints + spread, asPoints, long }
}

export function deriveTowing(input: TowingInput): TowingDerived {
  const { cases, ball, spindles, cars, tyres } = input
  const built = new Map([...new Set(cases.map((each) => each.built))].map((list) => [list, momentsOf(list, ball)]))
  const moments = cases.map((each) => momentsOf(each.loads, ball, built.get(each.built)))
  const heaps = moments.map((each) => heapOf(each, ball))
  const steadiness = cases.flatMap((each, c) =>
    cars.map((car): Steadiness => {
      const rig = rigOf(heaps[c], car, input)
      return { case: each.id, car: car.id, rig, ...steady(rig) }
    }),
  )
  return Object.freeze({
    at: AT,
    fastest: FASTEST,
    cars: cars.map(({ id, says, mass, yawInertia: known }) => ({ id, says, mass, isInertiaReckoned: known === null })),
    cases: cases.map((each, i) => caseTowed(each, heaps[i], ball, mean(spindles))),
    steadiness,
    moves: cars.flatMap((car) => movesOf(car, steadiness, moments, input)),
    tyres,
    unknownExtents: input.extents.map((each) => each.item).filter((item) => !input.items.includes(item)),
  })
}

const mean = (of: readonly number[]): number => of.reduce((sum, each) => sum + each, 0) / of.length

/** Its tyres answer in proportion to their load, and the ball's load `hitch` (N) lifts the front axle and presses the rear one. */
function carOf(car: TowCarDefinition, hitch: number): TowCar {
  const { mass, front, rear, overhang } = car
  const base = front + rear
  const frontLoad = (mass * G * rear - hitch * overhang) / base
  const rearLoad = (mass * G * front + hitch * (base + overhang)) / base
  return {
    mass,
    yawInertia: car.yawInertia ?? carYawInertia.eval({ m: mass, a: front, b: rear }),
    front,
    rear,
    ball: rear + overhang,
    // an axle lifted off the road has no grip; never less than none
    frontStiffness: car.frontTyres * Math.max(0, frontLoad),
    rearStiffness: car.rearTyres * Math.max(0, rearLoad),
  }
}

/** Each axle carries an even share of what the axles carry: what a tandem does when the coach stands level. */
function rigOf({ mass, station, inertia }: Heap, car: TowCarDefinition, { ball, spindles, tyres, hitchDamping }: TowingInput): Rig {
  const [centre, axle] = [station - ball, mean(spindles) - ball]
  const onAxles = (mass * G * centre) / axle
  const stiffness = (tyres * onAxles) / spindles.length
  return {
    car: carOf(car, mass * G - onAxles),
    trailer: { mass, yawInertia: inertia, centre, axles: spindles.map((s) => ({ at: s - ball, stiffness })) },
    hitchDamping,
  }
}

function steady(rig: Rig): Pick<Steadiness, 'damping' | 'frequency' | 'zeroDamping' | 'divergence'> {
  const { damping, frequency } = swayModes(rig, AT)
  return { damping, frequency, zeroDamping: zeroDampingSpeed(rig, FASTEST), divergence: divergenceSpeed(rig, FASTEST) }
}

function caseTowed({ id, says }: TowingCase, { mass, station, inertia, asPoints, long }: Heap, ball: number, axle: number): CaseTowed {
  return {
    id,
    says,
    mass,
    station,
    hitchShare: 1 - (station - ball) / (axle - ball),
    yawInertia: yawInertia({
      'items as points': asPoints,
      [`reach of ${long} items`]: inertia - asPoints,
    }),
    asPoints,
  }
}

/** What is tried on the least steady case. Sizes a shop or an owner might really change; common practice, no source. */
const CARRIED = 50
const HITCH_DAMPER = 1500
const MORE = 1.1

function movesOf(
  car: TowCarDefinition,
  all: readonly Steadiness[],
  moments: readonly Moments[],
  input: TowingInput,
): TowingDerived['moves'] {
  const own = all.filter((each) => each.car === car.id)
  const worst = own.reduce<Steadiness | null>((a, b) => (a === null || (b.damping ?? 1) < (a.damping ?? 1) ? b : a), null)
  if (!worst) return []
  const loaded = moments[input.cases.findIndex((each) => each.id === worst.case)]
  const { rig } = worst
  const { trailer } = rig
  const axle = mean(input.spindles)
  const moved = (x: number, says: string): Move => {
    const point = { y: 0, z: 0, along: 0, across: 0 }
    const carried = [
      { mass: CARRIED, x, ...point },
      { mass: -CARRIED, x: axle, ...point },
    ]
    return tried(says, rigOf(heapOf(momentsOf(carried, input.ball, loaded), input.ball), car, input))
  }
  const tried = (says: string, other: Rig): Move => ({ says, damping: swayModes(other, AT).damping })
  const stiffer = (by: number) => trailer.axles.map(({ at, stiffness }) => ({ at, stiffness: stiffness * by }))
  const changes: Move[] = [
    moved(input.tail, `${CARRIED} kg from over the axles to the tail`),
    moved(input.ball + 0.6, `${CARRIED} kg from over the axles to the drawbar`),
    tried('yaw inertia a tenth less, the centre where it is', { ...rig, trailer: { ...trailer, yawInertia: trailer.yawInertia / MORE } }),
    tried("the trailer's tyres a tenth stiffer", { ...rig, trailer: { ...trailer, axles: stiffer(MORE) } }),
    tried(`a friction device of ${HITCH_DAMPER} N m s at the ball`, { ...rig, hitchDamping: rig.hitchDamping + HITCH_DAMPER }),
  ]
  const effect = ({ damping }: Move): number => Math.abs((damping ?? 1) - (worst.damping ?? 1))
  return [{ car: car.id, case: worst.case, damping: worst.damping, changes: changes.sort((a, b) => effect(b) - effect(a)) }]
}
