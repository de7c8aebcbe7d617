/**
 * The weight trade: every thing on the coach once, by group, and what ball, axles and wheels carry in each load case.
 *
 * Covers stated, bought, weighed and derived masses, growth by group, load cases, cargo capacity, stability. Does not cover
 * strength of what carries them, slosh, or a coach that does not stand level but for the error at its hitch.
 */
import type { MassDefinition, MassGroup } from '../../definition/weight-types.js'
import { MASS_GROUPS } from '../../definition/weight-types.js'
import type { Worked } from '../../quantity/formula.js'
import { massTotal, statedMass } from '../common/mass.formulas.js'
import { FORGETFUL, type Memo } from '../memo.js'
import type { MassReach } from '../road-nouns.js'
import type { GroupWeighed, MassLine, WeightDerived, WeightInput } from '../weight-nouns.js'
import { caseOf, placeOf, type Stance } from './cases.js'
import { liftOf } from './lift.js'
import { linesOf } from './lines.js'
import { middle } from './middle.js'
import { nearestOf, roomFinder } from './room.js'
import { capacity, lever, meanAxle, moment, spindleSum } from './weight.formulas.js'

export function deriveWeight(input: WeightInput, memo: Memo = FORGETFUL): WeightDerived {
  const { weight, masses, spindles, tyre } = input
  const middleAxle = meanAxle({
    S: spindleSum(Object.fromEntries(spindles.map((each, i) => [`axle ${i + 1}`, each]))),
    n: spindles.length,
  })
  const axle = middleAxle.value
  const { listOnly, growth } = weight
  const { lines, twinned, twice } = linesOf({ masses, listOnly, growth, twins: input.twins, axle, reach: input.reach }, memo)
  const groups = MASS_GROUPS.flatMap((group) => {
    const own = lines.filter((line) => line.group === group)
    return own.length === 0 ? [] : [memo.keep(`weight of group ${group}`, [masses, ...own], () => groupOf(group, own, masses))]
  })
  const built = massTotal(Object.fromEntries(groups.map((each) => [each.group, each.mass])))
  const unloaded = weight.gas ? massTotal({ built, gas: statedMass({ m: weight.gas.mass }) }) : built
  const stance: Stance = { ...input, axle, meanAxle: middleAxle }
  const { ball, ground, track, gross, axleRatings: ratings, hitch: hitchBand } = weight
  const stood = { ball, axle, ground, track, gross, ratings, hitchBand, tyre }
  const cases = weight.cases.map((each) => caseOf(each, groups, stance))
  const looked = { ...stood, cases }
  const roomAt = roomFinder(looked)
  return Object.freeze({
    ...stood,
    ...{ cases, listOnly, lines, groups, built, unloaded, twinned, twice },
    capacity: capacity({ G: gross, U: unloaded }),
    places: weight.places.map((each) => {
      const at = placeOf(each, stance)
      return { id: each.id, says: each.says, at, room: roomAt(at) }
    }),
    nearest: nearestOf(looked),
    lift: weight.lift && liftOf(weight.lift, lines, input.frames),
  })
}

function groupOf(group: MassGroup, own: readonly MassLine[], masses: readonly MassDefinition[]): GroupWeighed {
  const mass: Record<string, Worked<'kg'>> = {}
  const [x, y, z]: Record<string, Worked<'kg*m'>>[] = [{}, {}, {}]
  const points: MassReach[] = []
  for (const line of own) {
    const name = `${line.id} ${line.says}`
    mass[name] = line.mass
    x[name] = lever({ m: line.mass, x: line.centre[0] })
    y[name] = lever({ m: line.mass, x: line.centre[1] })
    z[name] = lever({ m: line.mass, x: line.centre[2] })
    points.push(...line.points)
  }
  return {
    group,
    mass: massTotal(mass),
    centre: middle(points),
    stated: masses.reduce((sum, each) => (each.group === group ? sum + each.mass : sum), 0),
    moments: [moment(x), moment(y), moment(z)],
  }
}
