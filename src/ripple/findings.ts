/** Checks that fail now and did not, that no longer do, and margins gained and lost. */
import type { Check, Verdict } from '../derive/nouns.js'
import { same } from '../quantity/same.js'
import { both, matched } from './differ.js'
import type { FindingTold, MarginChange, Ripple } from './nouns.js'

/** Worst last: a check that turns from not checked into a caution has found something. */
const RANK: readonly Verdict[] = ['pass', 'not-checked', 'caution', 'fail']
const gravity = (verdict: Verdict | null): number => (verdict === null ? -1 : RANK.indexOf(verdict))

export function checkChanges(before: readonly Check[], after: readonly Check[]): Ripple['checks'] {
  const { added, removed, kept } = matched(before, after)
  const appeared: FindingTold[] = added.filter(isFinding).map((c) => told(c, null))
  const gone: FindingTold[] = removed.filter(isFinding).map((c) => told(c, null))
  const margins: MarginChange[] = []
  for (const [was, now] of kept) {
    const worse = gravity(now.verdict) - gravity(was.verdict)
    if (worse > 0) appeared.push(told(now, was.verdict))
    else if (worse < 0) gone.push(told(was, now.verdict))
    else if (!(same(was.margin, now.margin) && was.says === now.says && was.mend === now.mend)) margins.push(marginOf(was, now))
  }
  return {
    appeared: byGravity(appeared),
    gone: byGravity(gone),
    margins: margins.sort((a, b) => leastMargin(a) - leastMargin(b) || (a.id < b.id ? -1 : 1)),
    asked: { added: added.filter((c) => !isFinding(c)).map((c) => c.id), removed: removed.filter((c) => !isFinding(c)).map((c) => c.id) },
  }
}

const isFinding = (check: Check): boolean => check.verdict !== 'pass'

const told = ({ id, says, verdict, margin, places, concerns, mend }: Check, other: Verdict | null): FindingTold => ({
  id,
  says,
  verdict,
  other,
  margin,
  places,
  concerns,
  mend,
})

const marginOf = (was: Check, now: Check): MarginChange => ({
  id: now.id,
  says: now.says,
  verdict: both(was.verdict, now.verdict),
  margin: both(was.margin, now.margin),
  mend: now.mend,
})

/** Tightest first, on whichever side it is the tighter, so that the order is the same both ways round. */
const leastMargin = ({ margin }: MarginChange): number => Math.min(margin.before ?? Infinity, margin.after ?? Infinity)

const byGravity = (list: FindingTold[]): readonly FindingTold[] =>
  list.sort(
    (a, b) =>
      gravity(b.verdict) - gravity(a.verdict) ||
      (a.margin ?? Infinity) - (b.margin ?? Infinity) ||
      (a.id < b.id ? -1 : a.id > b.id ? 1 : 0),
  )
