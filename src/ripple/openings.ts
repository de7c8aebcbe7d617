/** Openings that came, went, moved, changed their size, or touch other things than before. */
import type { OpeningDerived } from '../derive/nouns.js'
import { boundsOf } from '../documents/drawing/view.js'
import { same } from '../quantity/same.js'
import { both, isNothing, matched, NOTHING, swap } from './differ.js'
import type { OpeningChange } from './nouns.js'

export function openingChanges(before: readonly OpeningDerived[], after: readonly OpeningDerived[]): readonly OpeningChange[] {
  const { added, removed, kept } = matched(before, after)
  return [
    ...added.map((o) => whole(o, 'added')),
    ...removed.map((o) => whole(o, 'removed')),
    ...kept.flatMap(([was, now]) => changeOf(was, now) ?? []),
  ]
}

type Links = Pick<OpeningChange, 'cutsFrames' | 'crossesSeams' | 'framing' | 'cutIn' | 'lining'>
const LINKS = ['cutsFrames', 'crossesSeams', 'framing', 'cutIn', 'lining'] as const

function linksOf(was: OpeningDerived | null, now: OpeningDerived | null): Links {
  const link = (key: (typeof LINKS)[number]) => swap(was?.[key] ?? [], now?.[key] ?? [])
  return {
    cutsFrames: link('cutsFrames'),
    crossesSeams: link('crossesSeams'),
    framing: link('framing'),
    cutIn: link('cutIn'),
    lining: link('lining'),
  }
}

/** Bounds of the outline on the developed outer mould line, m; null where no trade has laid it out. */
function sizeOf({ outline }: OpeningDerived): readonly [number, number] | null {
  if (outline.length === 0) return null
  const box = boundsOf([outline])
  return [box.x1 - box.x0, box.y1 - box.y0]
}

function whole(o: OpeningDerived, status: 'added' | 'removed'): OpeningChange {
  const came = status === 'added'
  return {
    id: o.id,
    says: o.says,
    status,
    place: came ? both(null, o.place) : both(o.place, null),
    moved: null,
    size: came ? both(null, sizeOf(o)) : both(sizeOf(o), null),
    ...linksOf(came ? null : o, came ? o : null),
  }
}

function changeOf(was: OpeningDerived, now: OpeningDerived): OpeningChange | null {
  const [old, size] = [sizeOf(was), sizeOf(now)]
  const sign = (o: OpeningDerived): number => (o.place.side === 'left' ? -1 : 1)
  const move = {
    station: now.place.station - was.place.station,
    girth: sign(now) * now.place.girth - sign(was) * was.place.girth,
    waterline: now.place.waterline - was.place.waterline,
  }
  const links = same(
    LINKS.map((key) => was[key]),
    LINKS.map((key) => now[key]),
  )
    ? null
    : linksOf(was, now)
  const stays = same(was.place, now.place)
  const change: OpeningChange = {
    id: now.id,
    says: now.says,
    status: 'changed',
    place: both(was.place, now.place),
    moved: stays ? null : move,
    size: same(old, size) ? null : both(old, size),
    ...(links ?? { cutsFrames: NOTHING, crossesSeams: NOTHING, framing: NOTHING, cutIn: NOTHING, lining: NOTHING }),
  }
  const isSame = stays && change.size === null && LINKS.every((key) => isNothing(change[key]))
  return isSame && was.says === now.says ? null : change
}
