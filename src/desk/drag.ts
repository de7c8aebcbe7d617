/**
 * A thing in the hand: drawn to clean places, shown wherever it is, and judged by the rules of where things stand. What takes
 * longer waits until the hand rests: the other rules, and how the coach follows its tow cars. A place that is offered as
 * clean has been judged by every rule.
 */
import { design } from '../checks/index.js'
import { standingChecks } from '../checks/standing.js'
import { revisionOf } from '../definition/revision.js'
import type { Definition } from '../definition/types.js'
import type { Design } from '../derive/design.js'
import { type Derived, derive } from '../derive/index.js'
import type { Memo } from '../derive/memo.js'
import type { Check } from '../derive/nouns.js'
import { onSection } from '../documents/drawing/section-curve.js'
import { lazily } from '../quantity/lazily.js'
import type { CleanPlace } from './clean-place.js'
import { cleanPlaces } from './clean-places.js'
import type { MoveEdit, SizeEdit } from './nouns.js'
import { placedBy } from './placed.js'
import { type Across, attempts } from './snap.js'
import { axleOf, type IsWritten, writtenThing } from './written-things.js'

/** Where a drag is now. */
export interface InHand {
  /** as it is written where it ends here */
  readonly edit: MoveEdit | SizeEdit
  readonly definition: Definition
  readonly design: Design
  /** nothing was left out of the design */
  readonly isWhole: boolean
  readonly snaps: readonly CleanPlace[]
  /** ids of what was found before the drag: nobody need be told that again */
  readonly known: ReadonlySet<string>
}

export interface DragStart {
  /** the coach before the drag */
  readonly derived: Derived
  readonly design: Design
  readonly memo: Memo
  readonly isWritten: IsWritten
}

export interface Drag {
  /** null for what cannot be moved; where the coach cannot be derived so, it stays drawn as it was and the reader says why where the hand rests */
  readonly to: (edit: MoveEdit | SizeEdit) => InHand | null
}

export function startDrag(start: DragStart): Drag {
  const { definition } = start.derived
  const { checks } = start.design
  const failing = new Set(checks.filter(({ verdict }) => verdict === 'fail').map(({ id }) => id))
  const known = new Set(checks.filter(({ verdict }) => verdict !== 'pass').map(({ id }) => id))
  const standing = new Set(standingChecks(start.derived).map(({ id }) => id))
  const elsewhere = checks.filter(({ id }) => !standing.has(id))
  const judged = new Map<string, boolean>()
  let last: (InHand & { readonly key: string }) | null = null

  const put = (edit: MoveEdit | SizeEdit, snaps: readonly CleanPlace[]): InHand | null => {
    const placed = placedBy(definition, edit, start.isWritten)
    if (!placed) return null
    const key = JSON.stringify(placed.values)
    if (judged.get(key) === false && snaps.length > 0) return null
    if (last?.key === key && (last.isWhole || snaps.length === 0 || judged.get(key))) return { ...last, edit, snaps }
    const isWhole = snaps.length > 0 && !judged.has(key)
    const shown = derivedOr(null, () =>
      isWhole ? design(placed.definition, start.memo) : sketch(placed.definition, start, edit.id, elsewhere),
    )
    if (!shown) {
      judged.set(key, false)
      return snaps.length > 0 ? null : { ...(last ?? { definition, design: start.design, isWhole: true, known }), edit, snaps }
    }
    if (isWhole) judged.set(key, isClean(shown, edit.id, failing))
    if (isWhole && judged.get(key) === false) return null
    last = { edit, definition: placed.definition, design: shown, isWhole, snaps, known, key }
    return last
  }

  return {
    to: (asked) => {
      const edit = byGirth(start.design, asked)
      const tries = attempts(edit, edit.snap ? cleanPlaces(start.derived, edit) : [], acrossFrom(definition, edit))
      for (const { edit: tried, snaps } of tries) {
        const inHand = put(tried, snaps)
        if (inHand) return inHand
      }
      return null
    },
  }
}

function derivedOr<T>(otherwise: T, make: () => Design): Design | T {
  try {
    return make()
  } catch {
    return otherwise
  }
}

/** No rule fails that did not fail before, and none that names the thing. */
function isClean({ checks }: Design, id: string, before: ReadonlySet<string>): boolean {
  const names = new Set([id, `frame-${id}`, `rim-${id}`, ...(axleOf(id) === null ? [] : ['axles'])])
  return checks.every((check) => check.verdict !== 'fail' || (before.has(check.id) && !check.concerns.some((each) => names.has(each))))
}

/** Everything as it would be drawn, and the findings of other rules as they were for what is not in the hand. */
function sketch(definition: Definition, start: DragStart, id: string, elsewhere: readonly Check[]): Design {
  // what the ball carries is told of axles, tanks and masses; a window or a frame changes it by less than is said of it
  const isHeavy = ['axles', 'tanks', 'masses'].includes(writtenThing(definition, id)?.layer ?? '')
  const derived = derive(definition, start.memo, isHeavy ? 'towing' : 'weight')
  const { shell: _, endSections: __, ...made } = derived
  const { weight, towing, road } = start.design
  const rest = isHeavy ? made : { ...made, weight, towing, road }
  const kept = elsewhere.filter((check) => !check.concerns.includes(id))
  const revision = lazily(() => revisionOf(definition))
  return {
    ...rest,
    // nobody asks the name of what is still in the hand
    get revision() {
      return revision()
    },
    checks: [...standingChecks(derived), ...kept],
  }
}

/** A lap is dragged by its height on the drawing and written by its girth. */
function byGirth({ section, definition }: Design, edit: MoveEdit | SizeEdit): MoveEdit | SizeEdit {
  if (edit.kind === 'size' || edit.waterline === null || writtenThing(definition, edit.id)?.layer !== 'seams') return edit
  const level = edit.waterline
  let [low, high] = [0, section.halfGirth]
  // the section goes down all the way from the crown; a hundredth of a millimetre is ten times finer than it is written
  while (high - low > 1e-5) {
    const middle = (low + high) / 2
    if (onSection(section.points, middle).z > level) low = middle
    else high = middle
  }
  return { ...edit, waterline: null, across: (low + high) / 2 }
}

function acrossFrom({ openings }: Definition, edit: MoveEdit | SizeEdit): Across {
  const own = edit.kind === 'size' ? openings.find((each) => each.id === edit.id) : undefined
  if (!own) return {}
  const middle = own.waterline ?? own.girth
  return {
    ...{ fore: own.station + own.width / 2, aft: own.station - own.width / 2 },
    ...{ low: middle + own.height / 2, high: middle - own.height / 2 },
  }
}
