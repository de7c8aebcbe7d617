/** What ball and axles carry otherwise: each load case of the two designs side by side, the greatest change of the hitch's share first. */
import type { Design } from '../derive/design.js'
import type { CaseWeighed, WeightDerived } from '../derive/weight-nouns.js'
import { same } from '../quantity/same.js'
import { both } from './differ.js'
import type { Both, LoadChange, Ripple } from './nouns.js'

const weighed = ({ weight }: Design): WeightDerived | null => ('notComputed' in weight ? null : weight)

export function loadChanges(before: Design, after: Design): Ripple['loads'] {
  if (before.weight === after.weight) return { unloaded: null, capacity: null, cases: [] }
  const [old, now] = [weighed(before), weighed(after)]
  const cases = new Map(old?.cases.map((each) => [each.id, each]))
  const names = [...new Set([...(now?.cases ?? []), ...(old?.cases ?? [])].map((each) => each.id))]
  return {
    unloaded: changed(old?.unloaded.value, now?.unloaded.value),
    capacity: changed(old?.capacity.value, now?.capacity.value),
    cases: names
      .flatMap(
        (id) =>
          caseChange(
            cases.get(id),
            now?.cases.find((each) => each.id === id),
          ) ?? [],
      )
      .sort((a, b) => turn(b) - turn(a)),
  }
}

function caseChange(was: CaseWeighed | undefined, is: CaseWeighed | undefined): LoadChange | null {
  const head = is ?? was
  if (!head) return null
  const change: LoadChange = {
    case: head.id,
    says: head.says,
    design: head.design,
    mass: pair(was?.mass.value, is?.mass.value),
    hitch: pair(was?.hitch.value, is?.hitch.value),
    share: pair(was?.share.value, is?.share.value),
    axle: pair(was && heaviest(was), is && heaviest(is)),
  }
  return [change.mass, change.hitch, change.share, change.axle].every((each) => same(each.before, each.after)) ? null : change
}

const heaviest = ({ axles }: CaseWeighed): number => Math.max(...axles.map((each) => each.load.value))
const pair = (was: number | undefined, is: number | undefined): Both<number | null> => both(was ?? null, is ?? null)

function changed(was: number | undefined, is: number | undefined): Both<number | null> | null {
  const values = pair(was, is)
  return same(values.before, values.after) ? null : values
}

/** How far the hitch's share goes; endless for a case only one of them has. */
export const turn = ({ share: { before, after } }: LoadChange): number =>
  before === null || after === null ? Number.POSITIVE_INFINITY : Math.abs(after - before)
