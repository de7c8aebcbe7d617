/**
 * Rivet rows of an end in its own axes: gore seams, mid ribs, the crown cap, the base and the toe. The cap's and the base's
 * rows own the fasteners where ribs cross them; the ribs' rows stop a pitch short.
 */

import { length, sub } from '../../maths/vec.js'
import { addSpan, type RowDraft, startRow } from '../common/row-draft.js'
import type { FastenerRow } from '../nouns.js'
import type { Ground } from './ground.js'
import type { EndSkin, Level, Located } from './skin.js'

/** A row of an end before it is put on the nose or the tail: local points beside the draft's own arrays. */
export interface LocalRow {
  readonly draft: RowDraft
  readonly located: readonly Located[]
}

/** Distance of a row's last fastener from an edge, in diameters; common practice, no source. */
export const END_DISTANCE = 2.5

/** Every fastener of an end without openings; `lessCuts` takes out what openings take. */
export function localRows(ground: Ground, skin: EndSkin): LocalRow[] {
  return [
    ...seamRows(ground, skin),
    ...midRows(ground, skin),
    aroundRow(ground, skin, 'cap'),
    ...(ground.base === null ? [] : [aroundRow(ground, skin, 'base')]),
    ...(ground.input.shell.toe.flange > 0 ? [aroundRow(ground, skin, 'toe')] : []),
  ]
}

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

const byGirth = (girth: number): Level => ({ at: 'girth', girth })

/**
 * Rows down an end, one a line from the right joint to the left one. Both hands of an end are alike, wrapped or formed: a row on the
 * left is the one across from it turned over, its girths the very same.
 */
export function downBothHands<T>(
  lines: readonly T[],
  start: (line: T, i: number) => RowDraft,
  laid: (line: T, i: number, draft: RowDraft) => LocalRow,
): LocalRow[] {
  const rows: LocalRow[] = []
  for (const [i, line] of lines.entries()) {
    const across = rows[lines.length - 1 - i]
    const draft = start(line, i)
    rows.push(across ? turnedOver(across, draft) : laid(line, i, draft))
  }
  return rows
}

function turnedOver({ draft, located }: LocalRow, { id, says, joint }: RowDraft): LocalRow {
  return {
    draft: { ...draft, id, says, joint },
    located: located.map(({ point: [x, y, z], phi, girth }) => ({ point: [x, -y, z], phi: -phi, girth })),
  }
}

function seamRows(ground: Ground, skin: EndSkin): LocalRow[] {
  return downBothHands(
    ground.edges.slice(1, -1),
    (_, i) => started(ground, `seam-${i + 1}`, `gore seam ${i + 1}`, 'gore', 'gore'),
    (phi, _, draft) => {
      const { cap } = ground.input.ends
      const toe = skin.toeGirth(phi) - END_DISTANCE * draft.diameter
      const base = ground.base === null ? null : skin.locate(phi, { at: 'base' }).girth
      const place = (girth: number): Located => skin.locate(phi, byGirth(girth))
      const upper: Mark[] = [
        { mark: 'cap', u: cap + draft.pitch },
        { mark: base === null ? 'toe' : 'base', u: base === null ? toe : base - draft.pitch },
      ]
      const row = lay(draft, upper, place)
      if (base === null || toe - base < 2 * draft.pitch) return row
      const lower = lay(
        draft,
        [
          { mark: 'base', u: base + draft.pitch },
          { mark: 'toe', u: toe },
        ],
        place,
      )
      return { ...row, located: [...row.located, ...lower.located] }
    },
  )
}

function midRows(ground: Ground, skin: EndSkin): LocalRow[] {
  return downBothHands(
    ground.mids,
    (_, i) => started(ground, `mid-${i + 1}`, `gore ${i + 1} to its mid rib`, 'rib', 'hoop'),
    (phi, i, draft) => {
      const { cap } = ground.input.ends
      const end =
        ground.base === null
          ? skin.locate(phi, byGirth(ground.midCurves[i].lengthAt(ground.floor))).girth
          : skin.locate(phi, { at: 'base' }).girth
      const marks = [
        { mark: 'cap', u: cap + draft.pitch },
        { mark: 'base', u: end - draft.pitch },
      ]
      return lay(draft, marks, (girth) => skin.locate(phi, byGirth(girth)))
    },
  )
}

/** Where a row round the end crosses a rib. */
export interface Crossing {
  readonly phi: number
  readonly mark: string
}

/** A row round the end at one level, from joint to joint, with a fastener at every rib; `lined` tells where the lining's crosses them. */
export function aroundRow(
  ground: Ground,
  skin: EndSkin,
  level: 'cap' | 'base' | 'toe',
  lined: readonly Crossing[] | null = null,
): LocalRow {
  const says = { cap: 'crown cap to gores', base: 'gores to the base channel', toe: 'toe flange to underbelly' }[level]
  const draft = lined
    ? started(ground, 'lining-cap', 'lining to the header ring', 'lining', 'lining')
    : started(ground, level, says, level, level === 'cap' ? 'gore' : level)
  // across the ring's web from the skin's rivets
  const at: Level = lined ? byGirth(ground.input.ends.cap - 2 * ground.input.shell.frame.rowOffset) : { at: level }
  const path = around(skin, at)
  // clear of the barrel's overlap, where the joint's own rows stand
  const inset = ground.input.shell.joint.overlap / 2 + END_DISTANCE * draft.diameter
  const ribs = lined ?? [
    ...ground.mids.map((phi, i) => ({ phi, mark: `mid-${i + 1}` })),
    ...ground.edges.slice(1, -1).map((phi, i) => ({ phi, mark: `seam-${i + 1}` })),
  ]
  const marks: Mark[] = [
    { mark: 'joint-right', u: inset },
    ...ribs
      .map(({ phi, mark }) => ({ mark, u: path.lengthAt(phi), shared: level === 'toe' || lined ? [] : [mark] }))
      .filter(({ u }) => u > inset + draft.pitch && u < path.length - inset - draft.pitch)
      .sort((a, b) => a.u - b.u),
    { mark: 'joint-left', u: path.length - inset },
  ]
  return lay(draft, marks, (u) => skin.locate(path.phiAt(u), at))
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

interface Path {
  readonly length: number
  readonly lengthAt: (phi: number) => number
  readonly phiAt: (length: number) => number
}

/** Steps a quarter of a turn is walked in. Chords shorten the path by a few parts in a hundred thousand, which only the even spacing feels. */
const STEPS = 40

/** The path round an end at one level, from the right joint (+90 deg) to the left one, which is alike on both hands. */
function around(skin: EndSkin, level: Level): Path {
  const phis = Array.from({ length: 2 * STEPS + 1 }, (_, i) => (Math.PI / 2) * (1 - i / STEPS))
  const lengths = [0]
  let before = skin.point(phis[0], level)
  for (let i = 1; i <= STEPS; i++) {
    const here = skin.point(phis[i], level)
    lengths.push(lengths[i - 1] + length(sub(here, before)))
    before = here
  }
  const half = lengths[STEPS]
  for (let i = STEPS - 1; i >= 0; i--) lengths.push(2 * half - lengths[i])
  const between = (xs: readonly number[], ys: readonly number[], x: number): number => {
    const down = xs[0] > xs[xs.length - 1]
    let i = 0
    while (i + 2 < xs.length && (down ? xs[i + 1] > x : xs[i + 1] < x)) i++
    return ys[i] + ((x - xs[i]) / (xs[i + 1] - xs[i])) * (ys[i + 1] - ys[i])
  }
  return { length: 2 * half, lengthAt: (phi) => between(phis, lengths, phi), phiAt: (u) => between(lengths, phis, u) }
}

/** Puts a local row on the nose or the tail. */
export function placedRow(local: LocalRow, end: 'nose' | 'tail', joint: number): Omit<FastenerRow, 'stack' | 'stacks'> {
  const sign = end === 'nose' ? -1 : 1
  const { draft } = local
  const columns = columnsOf(local)
  // an opening is named once for the whole coach; all else is of one end
  const name = (id: string): string => (draft.kind === 'rim' ? id : `${end}-${id}`)
  return {
    ...draft,
    id: name(draft.id),
    joint: `joint-${name(draft.id)}`,
    says: `${end}, ${draft.says}`,
    shared: Object.fromEntries(Object.entries(draft.shared).map(([i, rows]) => [i, rows.map(name)])),
    station: columns.out.map((x) => joint + sign * x),
    girth: columns.girth,
    waterline: columns.waterline,
    end: { which: end, azimuth: columns.azimuth, y: columns.y },
  }
}

interface Columns {
  readonly out: readonly number[]
  readonly girth: readonly number[]
  readonly waterline: readonly number[]
  readonly azimuth: readonly number[]
  readonly y: readonly number[]
}

const COLUMNS = new WeakMap<LocalRow, Columns>()

/** What a row's fasteners have on the nose and on the tail alike, once for both. */
function columnsOf(local: LocalRow): Columns {
  const known = COLUMNS.get(local)
  if (known) return known
  const { located } = local
  const made = {
    out: located.map((l) => l.point[0]),
    // on the centre line a wrapped sheet's rounding must not choose the hand
    girth: located.map((l) => (l.point[1] < -1e-9 ? -l.girth : l.girth)),
    waterline: located.map((l) => l.point[2]),
    azimuth: located.map((l) => l.phi),
    y: located.map((l) => l.point[1]),
  }
  COLUMNS.set(local, made)
  return made
}
