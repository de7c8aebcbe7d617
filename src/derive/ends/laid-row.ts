/** A row of an end in its own axes: how one is begun, laid between marks along it, and thinned where openings take fasteners. */
import { addSpan, type RowDraft, startRow } from '../common/row-draft.js'
import type { Ground } from './ground.js'
import type { Located } from './skin.js'

/** A row of an end before it is put on the nose or the tail: local points beside the draft's own arrays. */
export interface LocalRow {
  readonly draft: RowDraft
  readonly located: readonly Located[]
}

/** Distance of a row's last fastener from an edge, in diameters; common practice, no source. */
export const END_DISTANCE = 2.5

export function started(ground: Ground, id: string, says: string, kind: RowDraft['kind'], rule: keyof Ground['input']['rows']): RowDraft {
  const { fastener, pitch } = ground.input.rows[rule]
  return startRow({
    id,
    says,
    kind,
    joint: `joint-${id}`,
    fastener,
    diameter: diameterOf(ground, fastener),
    pitch,
    source: `rows.${rule} of the definition`,
  })
}

function diameterOf(ground: Ground, id: string): number {
  const found = ground.input.fasteners.find((f) => f.id === id)
  if (!found) throw new Error(`no fastener "${id}" in the definition`)
  return found.diameter.value
}

export interface Mark {
  readonly mark: string
  readonly u: number
  readonly shared?: readonly string[]
}

export function lay(draft: RowDraft, marks: readonly Mark[], place: (u: number) => Located): LocalRow {
  const located: Located[] = []
  let last: Located | null = null
  const at = (u: number): readonly [number, number] => {
    last = place(u)
    return [last.point[0], last.girth]
  }
  for (let i = 0; i + 1 < marks.length; i++) {
    const [a, b] = [marks[i], marks[i + 1]]
    if (b.u - a.u < draft.pitch / 1000) continue
    addSpan(
      draft,
      {
        from: a.mark,
        to: b.mark,
        start: a.u,
        end: b.u,
        atStart: true,
        atEnd: i + 2 === marks.length,
        sharedStart: a.shared ?? [],
        sharedEnd: b.shared ?? [],
      },
      at,
      () => true,
      () => last && located.push(last),
    )
  }
  return { draft, located }
}

/** The row with the fasteners left out that `clear` refuses; the others keep their names. */
export function lessCuts(row: LocalRow, clear: (at: Located) => boolean): LocalRow {
  const kept = row.located.map((at) => clear(at))
  if (kept.every((k) => k)) return row
  const { draft } = row
  const only = <T>(list: readonly T[]): T[] => list.filter((_, i) => kept[i])
  const renamed = new Map<number, number>()
  for (const [i, k] of kept.entries()) if (k) renamed.set(i, renamed.size)
  const span = only(draft.span)
  const shared: Record<number, string[]> = {}
  for (const [i, rows] of Object.entries(draft.shared)) {
    const now = renamed.get(Number(i))
    if (now !== undefined) shared[now] = rows
  }
  return {
    located: only(row.located),
    draft: {
      ...draft,
      span,
      number: only(draft.number),
      station: only(draft.station),
      girth: only(draft.girth),
      shared,
      spans: draft.spans.map((s, k) => ({ ...s, first: span.filter((of) => of < k).length, count: span.filter((of) => of === k).length })),
    },
  }
}
