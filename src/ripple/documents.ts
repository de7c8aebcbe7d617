/**
 * Which documents must be issued again. Nothing is drawn to find out: every planned document says what it is made from, and one
 * whose things all show the same is the same sheet but for the revision, unit and date in its heading.
 */
import type { Design } from '../derive/design.js'
import { KEY_FIGURE } from '../documents/packet/made-from-parts.js'
import { type PacketOptions, packetPlan } from '../documents/packet/plan.js'
import type { MadeFrom, PlannedDocument } from '../documents/packet/planned.js'
import type { DocumentChange } from './nouns.js'
import { same } from './same.js'

export function documentChanges(before: Design, after: Design, options: PacketOptions): readonly DocumentChange[] {
  const [old, now] = [packetPlan(before, options), packetPlan(after, options)]
  const known = new Map(old.map((d) => [d.path, d]))
  const kept = new Set(now.map((d) => d.path))
  const isSame = comparer()
  return [
    ...now.flatMap((d): readonly DocumentChange[] => {
      const was = known.get(d.path)
      if (!was) return [told(d, 'new', [])]
      const because = differences(was.of(), d.of(), isSame)
      if (was.says !== d.says) because.push('what it is called')
      return because.length === 0 ? [] : [told(d, 'reissue', because)]
    }),
    ...old.filter((d) => !kept.has(d.path)).map((d) => told(d, 'withdraw', [])),
  ]
}

const told = ({ path, says }: PlannedDocument, status: DocumentChange['status'], because: readonly string[]): DocumentChange => ({
  path,
  says,
  status,
  because,
  onlyFigure: because.length === 1 && because[0] === KEY_FIGURE,
})

type Comparer = (a: MadeFrom, b: MadeFrom) => boolean

/** Compares a thing once, though many documents are made from it. */
function comparer(): Comparer {
  const found = new Map<MadeFrom, Map<MadeFrom, boolean>>()
  return (a, b) => {
    const of = found.get(a) ?? new Map<MadeFrom, boolean>()
    found.set(a, of)
    const known = of.get(b) ?? shownAlike(a, b)
    of.set(b, known)
    return known
  }
}

function shownAlike(a: MadeFrom, b: MadeFrom): boolean {
  const identical = a.from.length === b.from.length && a.from.length > 0 && a.from.every((each, i) => Object.is(each, b.from[i]))
  return identical || same(a.shows ? a.shows() : a.from, b.shows ? b.shows() : b.from)
}

/** Names of what shows differently, or is in one only. Things of one name are taken in turn. */
function differences(old: readonly MadeFrom[], now: readonly MadeFrom[], isSame: Comparer): string[] {
  const waiting = new Map<string, MadeFrom[]>()
  for (const each of old) {
    const list = waiting.get(each.name)
    if (list) list.push(each)
    else waiting.set(each.name, [each])
  }
  const different = new Set<string>()
  for (const each of now) {
    const twin = waiting.get(each.name)?.shift()
    if (!twin || !isSame(twin, each)) different.add(each.name)
  }
  for (const [name, left] of waiting) if (left.length > 0) different.add(name)
  return [...different]
}
