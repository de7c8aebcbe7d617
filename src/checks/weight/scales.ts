/**
 * Weighed against calculated: what the scales said, laid on the schedule of masses, gives a bias for each group and how sure of it
 * one may be. Every line is taken to be off by its own share, more for what somebody stated than for what was bought; the readings
 * then move each group as far as it is unsure and as far as it bears on them (generalised least squares).
 */
import type { ScaleReadings } from '../../definition/scales-form.js'
import type { MassGroup } from '../../definition/weight-types.js'
import type { CaseWeighed, MassLine, WeightDerived } from '../../derive/weight-nouns.js'
import { solve } from '../../maths/linear/solve.js'

export interface GroupBias {
  readonly group: MassGroup
  readonly calculated: number
  /** to be added to it, and one standard deviation of the group before and after, kg */
  readonly bias: number
  readonly before: number
  readonly after: number
}

export interface Reconciled {
  readonly case: string
  readonly weighed: number
  readonly calculated: number
  /** hitch, left wheels and right wheels: as read, as calculated, and what the biases leave, kg */
  readonly readings: readonly { readonly says: string; readonly read: number; readonly calculated: number; readonly left: number }[]
  readonly groups: readonly GroupBias[]
  /** sum of squares of the differences in their own uncertainties; three readings: above 7.81 once in twenty by chance */
  readonly surprise: number
  readonly agrees: boolean
}

/** One standard deviation as a share of a line's mass, by who says so. Common practice, no source. */
const UNSURE: Readonly<Record<MassLine['by'], number>> = { derived: 0.03, bought: 0.02, weighed: 0.005, stated: 0.1 }
/** Growth is a guess: half of it may not come, or half as much again. Common practice, no source. */
const UNSURE_GROWTH = 0.5
/** What is stated in part is as unsure in that part as anything stated. */
const variance = ({ group, by, mass, rest }: MassLine): number =>
  group === 'GR' ? (mass.value * UNSURE_GROWTH) ** 2 : ((mass.value - rest) * UNSURE[by]) ** 2 + (rest * UNSURE.stated) ** 2

/** Chi squared of three freedoms at 95 %; tables of the distribution. */
const SURPRISING = 7.815

export function reconcile(weight: WeightDerived, readings: ScaleReadings, one: CaseWeighed): Reconciled {
  const sum = (of: readonly number[]): number => of.reduce((all, each) => all + each, 0)
  const read = [readings.hitch, sum(readings.axles.map((a) => a.left)), sum(readings.axles.map((a) => a.right))]
  const model = [one.hitch.value, sum(one.axles.map((a) => a.left.value)), sum(one.axles.map((a) => a.right.value))]
  const unsure = [readings.uncertainty, ...[0, 1].map(() => readings.uncertainty * Math.sqrt(readings.axles.length))]
  const groups = weight.groups.map((each) => {
    const own = weight.lines.filter((line) => line.group === each.group)
    return { group: each.group, mass: each.mass.value, bears: bearing(weight, each.centre), variance: sum(own.map(variance)) }
  })
  // H S H' + R, three by three
  const spread = read.map((_, i) =>
    read.map(
      (__, j) =>
        sum(groups.map((g) => g.variance * (g.bears[i] as number) * (g.bears[j] as number))) + (i === j ? (unsure[i] as number) ** 2 : 0),
    ),
  )
  const off = read.map((value, i) => value - (model[i] as number))
  const weights = solve(spread, off)
  const biases = groups.map((g): GroupBias => {
    const own = g.bears.map((b) => b * g.variance)
    const pull = solve(spread, own)
    return {
      group: g.group,
      calculated: g.mass,
      bias: sum(own.map((each, i) => each * (weights[i] as number))),
      before: Math.sqrt(g.variance),
      after: Math.sqrt(Math.max(0, g.variance - sum(own.map((each, i) => each * (pull[i] as number))))),
    }
  })
  const moved = read.map((_, i) => sum(groups.map((g, k) => (g.bears[i] as number) * (biases[k] as GroupBias).bias)))
  const surprise = sum(off.map((each, i) => each * (weights[i] as number)))
  return {
    case: one.id,
    weighed: sum(read),
    calculated: one.mass.value,
    readings: ['hitch', 'left wheels', 'right wheels'].map((says, i) => ({
      says,
      read: read[i] as number,
      calculated: model[i] as number,
      left: (off[i] as number) - (moved[i] as number),
    })),
    groups: biases,
    surprise,
    agrees: surprise <= SURPRISING,
  }
}

/** What a kilogram at a place adds to hitch, left and right wheels. */
function bearing({ ball, axle, track }: WeightDerived, [x, y]: readonly [number, number, number]): readonly number[] {
  const onAxles = (x - ball) / (axle - ball)
  return [1 - onAxles, onAxles / 2 - y / track, onAxles / 2 + y / track]
}
