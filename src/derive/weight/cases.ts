/**
 * Load cases: what is aboard in each, where its centre lies, and what ball, axles and wheels carry.
 *
 * The coach stands level and its axles are pressed alike. Does not cover a coach on a slope, slosh in half-full tanks, or
 * springs of different rates.
 */

import type { LoadCaseDefinition, PlaceDefinition, WeightDefinition } from '../../definition/weight-types.js'
import type { Worked } from '../../quantity/formula.js'
import { G } from '../../quantity/gravity.js'
import { massTotal, statedMass } from '../common/mass.formulas.js'
import type { CaseWeighed, GroupWeighed, HeightError, Load, Point } from '../weight-nouns.js'
import * as f from './weight.formulas.js'

export interface Stance {
  readonly weight: WeightDefinition
  readonly spindles: readonly number[]
  readonly axle: number
  /** the same with its working */
  readonly meanAxle: Worked<'m'>
  readonly lastFrame: number
  readonly tail: number
  /** of one wheel at gross weight, N/m; null where springs are not known */
  readonly wheelRate: number | null
  /** what one tyre bears, kg; null where no tyre is written */
  readonly tyre: number | null
}

const WATER = 1000
const LITRE = 1e-3
const WHEELS_AN_AXLE = 2
const AXES = ['x', 'y', 'z'] as const
type Moments = GroupWeighed['moments']

export function placeOf({ from, station, y, waterline }: PlaceDefinition, stance: Pick<Stance, 'axle' | 'lastFrame' | 'tail'>): Point {
  const origin = { datum: 0, axles: stance.axle, 'last frame': stance.lastFrame, tail: stance.tail }[from]
  return [origin + station, y, waterline]
}

export function caseOf(one: LoadCaseDefinition, groups: readonly GroupWeighed[], stance: Stance): CaseWeighed {
  const fixed = fixedLoads(one, stance)
  const aboard = Object.fromEntries(groups.map((each) => [each.group, each.mass]))
  const before = massTotal({ ...aboard, ...masses(fixed) })
  const { loads, filled } = cargoOf(one, before, stance)
  const all = [...fixed, ...loads]
  const mass = loads.length === 0 ? before : massTotal({ ...aboard, ...masses(all) })
  const centre = AXES.map((_, axis) => f.centre({ M: momentOf(groups, all, axis), W: mass })) as unknown as CaseWeighed['centre']
  const { ball, track, ground } = stance.weight
  const hitch = f.hitchLoad({ W: mass, x_c: centre[0], b: ball, x_a: stance.meanAxle })
  const onAxles = f.onAxles({ W: mass, T: hitch })
  const share = f.hitchShare({ T: hitch, W: mass })
  const axles = axleLoads(mass, centre[1], onAxles, stance)
  return {
    ...{ id: one.id, says: one.says, design: one.design, loads: all, mass, centre, hitch, onAxles, filled, share, axles },
    margins: marginsOf(mass.value, share.value, axles, stance),
    stability: f.stability({ t: track, z_c: centre[2], z_g: ground }),
    heightError: errorOf(axles[0].load, stance),
  }
}

const masses = (loads: readonly Load[]): Record<string, Worked<'kg'>> => Object.fromEntries(loads.map((each) => [each.says, each.mass]))

function momentOf(groups: readonly GroupWeighed[], loads: readonly Load[], axis: number): Worked<'kg*m'> {
  const terms: Record<string, Worked<'kg*m'>> = {}
  for (const each of groups) terms[each.group] = each.moments[axis] as Moments[number]
  for (const each of loads) terms[each.says] = f.lever({ m: each.mass, x: each.at[axis] as number })
  return f.moment(terms)
}

function fixedLoads(one: LoadCaseDefinition, stance: Stance): readonly Load[] {
  const { gas, tanks, carried } = stance.weight
  return [
    ...(one.gas && gas ? [{ says: 'gas', kind: 'gas' as const, mass: statedMass({ m: gas.mass }), at: placeOf(gas, stance) }] : []),
    ...tanks
      .filter((tank) => one.full.includes(tank.kind))
      .map(
        (tank): Load => ({
          ...{ says: `tank ${tank.id}`, kind: 'water', at: placeOf(tank, stance) },
          mass: f.water({ rho: WATER, V: tank.litres * LITRE }),
        }),
      ),
    ...one.carrying.map((id): Load => {
      const thing = carried.find((each) => each.id === id)
      if (!thing) throw new Error(`case ${one.id} carries ${id}, which nobody wrote`)
      return { says: `carried ${id}`, kind: 'carried', mass: statedMass({ m: thing.mass }), at: placeOf(thing, stance) }
    }),
  ]
}

/** Cargo by its shares; of a coach already at its rating or beyond there is none, and the checks say so. */
function cargoOf(one: LoadCaseDefinition, before: Worked<'kg'>, stance: Stance): { loads: readonly Load[]; filled: CaseWeighed['filled'] } {
  const { stowage, places, gross } = stance.weight
  if (one.stowage === null) return { loads: [], filled: null }
  const way = stowage.find((each) => each.id === one.stowage)
  if (!way) throw new Error(`case ${one.id} is stowed ${one.stowage}, which nobody wrote`)
  const left = gross - before.value
  if (one.cargo === null && left <= 0) return { loads: [], filled: { mass: 0, at: [stance.axle, 0, 0] } }
  const loads = places.map((place, i): Load => {
    const s = way.shares[i] ?? 0
    const mass = one.cargo === null ? f.filling({ s, G: gross, W: before }) : f.shareOf({ s, M: one.cargo })
    return { says: `cargo ${place.id}`, kind: 'cargo', mass, at: placeOf(place, stance) }
  })
  const mean = (axis: 0 | 1 | 2): number => loads.reduce((sum, each, i) => sum + (way.shares[i] ?? 0) * each.at[axis], 0)
  return { loads, filled: one.cargo === null ? { mass: left, at: [mean(0), mean(1), mean(2)] } : null }
}

function axleLoads(mass: Worked<'kg'>, y_c: Worked<'m'>, onAxles: Worked<'kg'>, { weight, spindles }: Stance): CaseWeighed['axles'] {
  const n = spindles.length
  const P = f.axleLoad({ A: onAxles, n })
  const right = f.rightWheel({ P, W: mass, y_c, n, t: weight.track })
  const left = f.leftWheel({ P, P_r: right })
  return spindles.map((station, i) => ({ station, rating: weight.axleRatings[i] as number, load: P, left, right }))
}

function marginsOf(mass: number, share: number, axles: CaseWeighed['axles'], { weight, tyre }: Stance): CaseWeighed['margins'] {
  const [least, most] = weight.hitch
  const heaviest = Math.max(...axles.flatMap(({ left, right }) => [left.value, right.value]))
  return {
    hitch: Math.min(share - least, most - share),
    gross: 1 - mass / weight.gross,
    axle: Math.min(...axles.map(({ load, rating }) => 1 - load.value / rating)),
    tyre: tyre === null ? null : 1 - heaviest / tyre,
  }
}

/** Nearest error on either side that brings an axle to its rating; each axle gains on one side and loses on the other. */
function errorOf(P: Worked<'kg'>, { weight, spindles, wheelRate }: Stance): HeightError | null {
  const n = spindles.length
  if (n < 2 || wheelRate === null) return null
  const x = spindles.map((station) => station - weight.ball)
  const [S_1, S_2] = [x.reduce((sum, d) => sum + d, 0), x.reduce((sum, d) => sum + d * d, 0)]
  const errors = x.flatMap((d, i) => {
    const gains = (d * S_1) / S_2 - 1
    // an axle in the very middle of three takes no share in the tilting
    if (Math.abs(gains) < 1e-9) return []
    const given = { R: weight.axleRatings[i] as number, P, g: G, k: WHEELS_AN_AXLE * wheelRate, x: d, S_1, S_2 }
    return [{ gains, e: f.heightError(given) }]
  })
  const nearest = (own: typeof errors): Worked<'m'> | null =>
    own.reduce<Worked<'m'> | null>((a, { e }) => (a === null || Math.abs(e.value) < Math.abs(a.value) ? e : a), null)
  return { below: nearest(errors.filter((each) => each.gains < 0)), above: nearest(errors.filter((each) => each.gains > 0)) }
}
