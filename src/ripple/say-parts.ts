/** Parts and openings of a ripple in sentences: what is scrapped first, then what comes, goes, changes and only moves. */
import type { UnitSystem } from '../quantity/format.js'
import { isNothing } from './differ.js'
import { line, type RippleLine, targets } from './line.js'
import type { OpeningChange, PartChange, PartTold, Ripple } from './nouns.js'
import { scrap } from './parts.js'
import { capital, count, list, size, some } from './words.js'

/** No part is wrapped round more than a whole turn, so a layer that lies so much deeper shortens it by 2 pi times as much at most. */
const TURN = 2 * Math.PI

export function sayParts(ripple: Ripple, units: UnitSystem): readonly RippleLine[] {
  const { added, removed, changed } = ripple.parts
  const reach = TURN * Math.max(0, ...ripple.inward.map((i) => Math.abs(i.by)))
  const shifted = changed.filter((c) => scrap(c) === 0 && c.most <= reach && c.faces.length > 0)
  const rest = changed.filter((c) => !shifted.includes(c))
  const moved = rest.filter(isOnlyMoved)
  return [
    ...rest.filter((c) => !moved.includes(c)).map((c) => line(sayPart(c, units), targets('part', [c.id]))),
    ...told('New', added),
    ...told('No longer needed', removed),
    ...(moved.length > 0 ? [line(`Moved as they are: ${list(moved.map((c) => c.id))}.`, partsOf(moved))] : []),
    ...sayInward(ripple, shifted, units),
    ...sayGauges(shifted, units),
  ]
}

const partsOf = (parts: readonly { readonly id: string }[]): RippleLine['about'] =>
  targets(
    'part',
    parts.map(({ id }) => id),
  )

const told = (word: string, parts: readonly PartTold[]): readonly RippleLine[] =>
  parts.length === 0 ? [] : [line(`${word}: ${list(parts.map((p) => `${p.id} (${p.says})`))}.`, partsOf(parts))]

/** The part itself is what it was; it only stands elsewhere. */
const isOnlyMoved = (c: PartChange): boolean =>
  c.most === 0 &&
  scrap(c) === 0 &&
  [c.material, c.thickness, c.stock, c.pieces, c.mass].every((each) => each === null) &&
  isNothing(c.notes) &&
  c.called === null &&
  c.faces.every((f) => !f.marks && f.outline === null && f.cuts.length === 0 && f.holes.length === 0)

function sayPart(c: PartChange, units: UnitSystem): string {
  const said = [...cutWords(c, units), ...holeWords(c, units), ...blankWords(c, units), ...boughtWords(c)]
  const notes = c.pieces ? [] : c.notes.added
  const head = `${capital(c.says)} (${c.id}${c.called ? `, was ${c.called.before}` : ''})`
  const what = said.length > 0 ? [`${capital(list(said))}.`] : c.pieces || notes.length > 0 ? [] : ['Its figures change.']
  return c.pieces ? [`${head} ${piecesWords(c)}`, ...what].join(' ') : `${head}: ${[...what, ...notes].join(' ')}`
}

function piecesWords(c: PartChange): string {
  const cuts = (status: 'added' | 'removed'): readonly string[] => [
    ...new Set(c.faces.flatMap((f) => f.cuts.filter((cut) => cut.status === status).map((cut) => cut.opening))),
  ]
  const [came, went] = [cuts('added'), cuts('removed')]
  const by = came.length > 0 ? `is cut by ${list(came)}` : went.length > 0 ? `is no longer cut by ${list(went)}` : 'is cut elsewhere'
  const n = c.pieces?.after ?? 1
  return `${by}: ${n === 1 ? 'one piece is' : n === 2 ? 'two pieces are' : `${n} pieces are`} left.`
}

function cutWords(c: PartChange, units: UnitSystem): readonly string[] {
  const cuts = new Map(c.faces.flatMap((f) => f.cuts.map((cut) => [`${cut.status} ${cut.opening}`, cut] as const)))
  return [...cuts.values()].flatMap((cut) => {
    if (cut.status === 'changed')
      return [
        cut.by === null
          ? `the cut of ${cut.opening} falls into other pieces`
          : `the cut of ${cut.opening} changes by ${size(cut.by, units)}`,
      ]
    return c.pieces ? [] : [`${cut.status === 'added' ? 'a new cut' : 'no cut any more'} for ${cut.opening}`]
  })
}

function holeWords(c: PartChange, units: UnitSystem): readonly string[] {
  const holes = c.faces.flatMap((f) => f.holes)
  const of = (key: 'added' | 'removed', word: string): readonly string[] => {
    const rows = holes.filter((h) => h[key] > 0)
    const n = rows.reduce((sum, h) => sum + h[key], 0)
    return n === 0
      ? []
      : [
          `${count(n, 'hole')} ${word} (${some(
            rows.map((h) => h.row),
            4,
          )})`,
        ]
  }
  const moved = holes.reduce((sum, h) => sum + h.moved, 0)
  const resized = holes.reduce((sum, h) => sum + h.resized, 0)
  return [
    ...of('removed', 'fewer'),
    ...of('added', 'more'),
    ...(moved > 0 ? [`${count(moved, 'hole moves', 'holes move')} by up to ${size(Math.max(...holes.map((h) => h.by)), units)}`] : []),
    ...(resized > 0 ? [`${count(resized, 'hole has', 'holes have')} another diameter`] : []),
  ]
}

function blankWords(c: PartChange, units: UnitSystem): readonly string[] {
  return c.faces.flatMap(({ face, outline }) => {
    if (!outline) return []
    const { width, height } = outline
    const name = c.faces.length > 1 ? `the blank of its ${face}` : 'the blank'
    const now = `${size(width.after, units)} by ${size(height.after, units)}`
    const was = `${size(width.before, units)} by ${size(height.before, units)}`
    return [now === was ? `${name} changes its shape by ${size(outline.by, units)}` : `${name} is ${now}, was ${was}`]
  })
}

const boughtWords = (c: PartChange): readonly string[] => [
  ...(c.material ? [`${c.material.after} in place of ${c.material.before}`] : []),
  ...(c.thickness ? [`${c.thickness.after} in place of ${c.thickness.before}`] : []),
  ...(c.stock ? [`from ${c.stock.after ?? 'no sheet'} in place of ${c.stock.before ?? 'none'}`] : []),
]

/** One line for all that only follows the layer before it in or out. */
function sayInward({ inward }: Ripple, shifted: readonly PartChange[], units: UnitSystem): readonly RippleLine[] {
  if (inward.length === 0) return []
  const deepest = inward.reduce((a, b) => (Math.abs(b.by) > Math.abs(a.by) ? b : a))
  const layers = inward.map((i) => i.what)
  const most = Math.max(0, ...shifted.map((c) => c.most))
  const follow =
    shifted.length > 0
      ? `; the patterns of ${count(shifted.length, 'part')} change by up to ${size(most, units)} with them, and nothing else of them`
      : ''
  return [
    line(
      `The mould line stays, so ${list(layers)} move ${deepest.by > 0 ? 'in' : 'out'} by ${layers.length > 1 && inward.some((i) => i.by !== deepest.by) ? 'up to ' : ''}${size(Math.abs(deepest.by), units)}${follow}.`,
      partsOf(shifted),
    ),
  ]
}

/** Sheets of another gauge that otherwise only follow: by what they are made of now. */
function sayGauges(shifted: readonly PartChange[], _units: UnitSystem): readonly RippleLine[] {
  const groups = new Map<string, string[]>()
  for (const c of shifted) {
    const words = list(boughtWords(c))
    if (words !== '') groups.set(words, [...(groups.get(words) ?? []), c.id])
  }
  return [...groups].map(([words, ids]) => line(`${capital(words)}: ${list(ids)}.`, targets('part', ids)))
}

export function sayOpening(
  o: OpeningChange,
  units: UnitSystem,
  address: (place: NonNullable<OpeningChange['place']['after']>) => string,
): readonly RippleLine[] {
  const name = `${o.id} (${o.says})`
  const told = (says: string): RippleLine => line(says, targets('opening', [o.id]))
  if (o.status !== 'changed') {
    const place = o.place.after ?? o.place.before
    return [
      told(
        `${name} is ${o.status === 'added' ? 'new' : 'gone'}${place ? `, ${o.status === 'added' ? 'at' : 'from'} ${address(place)}` : ''}.`,
      ),
    ]
  }
  const links = (key: 'cutsFrames' | 'crossesSeams' | 'framing', now: string, not: string): readonly string[] => [
    ...(o[key].added.length > 0 ? [`${now} ${list(o[key].added)}`] : []),
    ...(o[key].removed.length > 0 ? [`${not} ${list(o[key].removed)}`] : []),
  ]
  const said = [
    ...moveWords(o, units, address),
    ...(o.size?.after ? [`has a cut of ${size(o.size.after[0], units)} by ${size(o.size.after[1], units)} on the developed skin`] : []),
    ...links('cutsFrames', 'now cuts frame', 'no longer cuts frame'),
    ...links('crossesSeams', 'now crosses', 'no longer crosses'),
    ...links('framing', 'is now framed by', 'is no longer framed by'),
  ]
  return said.length > 0 ? [told(`${name} ${list(said)}.`)] : []
}

function moveWords(
  o: OpeningChange,
  units: UnitSystem,
  address: (place: NonNullable<OpeningChange['place']['after']>) => string,
): readonly string[] {
  if (!o.moved || !o.place.after) return []
  const { station, waterline, girth } = o.moved
  const along = Math.abs(station) < 5e-5 ? [] : [`${size(Math.abs(station), units)} ${station > 0 ? 'aft' : 'forward'}`]
  const up = Math.abs(waterline) < 5e-5 ? [] : [`${size(Math.abs(waterline), units)} ${waterline > 0 ? 'up' : 'down'}`]
  const across = up.length > 0 || Math.abs(girth) < 5e-5 ? [] : [`${size(Math.abs(girth), units)} along the girth`]
  const by = [...along, ...up, ...across]
  return by.length > 0 ? [`moves ${list(by)} to ${address(o.place.after)}`] : []
}
