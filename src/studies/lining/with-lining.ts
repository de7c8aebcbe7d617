/**
 * A design whose end lining has its flat patterns, every hole in them: every document draws them as it draws any other sheet. About a
 * tenth of a second, so not part of derive. A panel that no flat sheet makes keeps its place among the parts that wait, with the reason.
 */
import type { Definition } from '../../definition/types.js'
import { barrelLip } from '../../derive/common/barrel-lip.js'
import type { Design } from '../../derive/design.js'
import type { End } from '../../derive/end-names.js'
import { linedBeside, ringSigma } from '../../derive/ends/lined-curve.js'
import { type LiningFlat, liningFlats, type OnPanel } from '../../derive/ends/lining-flats.js'
import { linedRow } from '../../derive/ends/lining-rows.js'
import type { LocalEnd } from '../../derive/ends/local.js'
import { sigmaAtMeridian } from '../../derive/ends/meridian.js'
import type { Derived } from '../../derive/index.js'
import type { FastenerRow, FlatFrame, HoleSet, Outline, Part, Pattern } from '../../derive/nouns.js'
import type { Flat } from '../../maths/strip/on-strip.js'

/** `derived` is what the design was made from: the ends' own axes are there. */
export function withLining<D extends Pick<Design, 'parts' | 'definition' | 'rows'>>(design: D, derived: Pick<Derived, 'endSections'>): D {
  // a wrapped end's ribs follow their sheets: its lining waits
  if (design.definition.ends.make === 'wrapped') return design
  const { local } = derived.endSections
  const flats = new Map(liningFlats(local).flatMap((flat) => flat.panels.map((panel, i) => [panel, { flat, isTwin: i > 0 }] as const)))
  const rows = design.rows.filter((row) => row.kind === 'lining')
  const parts = design.parts.map((part) => {
    const number = part.kind === 'end-lining' ? Number(/-lining-(\d+)$/.exec(part.id)?.[1]) : Number.NaN
    const found = flats.get(number)
    if (!found) return part
    const { flat, isTwin } = found
    if (flat.refused !== null) return Object.freeze({ ...part, notComputed: `No flat sheet bends over its two ribs. ${flat.refused}` })
    return withPattern({ local, part, number, isTwin, flat, rows, definition: design.definition })
  })
  return Object.freeze({ ...design, parts })
}

const mm = (metres: number): string => (metres * 1000).toFixed(1)

type Holes = Mutable<HoleSet>
type Mutable<T> = { -readonly [K in keyof T]: T[K] extends readonly (infer V)[] ? V[] : T[K] }

interface Panel {
  readonly local: LocalEnd
  readonly part: Part
  readonly number: number
  /** of the other hand: the flat is turned over */
  readonly isTwin: boolean
  readonly flat: LiningFlat
  readonly rows: readonly FastenerRow[]
  readonly definition: Definition
}

/** Every fastener of the lining that goes through a panel, on the flat's own hand. */
function holesIn({ local, part, number, isTwin, flat, rows, definition }: Panel): HoleSet {
  const set: Holes = { rows: [], row: [], index: [], x: [], y: [], diameter: [] }
  for (const row of rows) {
    const isThrough = row.stacks.map((stack) => stack.parts.includes(part.id))
    if (!isThrough.includes(true)) continue
    const hole = definition.fasteners.find((f) => f.id === row.fastener)?.hole
    if (hole === undefined) throw new Error(`row ${row.id} has unknown fastener ${row.fastener}`)
    const place = placeOn(local, number, row, isTwin)
    const k = set.rows.push(row.id) - 1
    row.stack.forEach((stack, i) => {
      if (!isThrough[stack]) return
      const [x, y] = flat.place(place(i))
      set.row.push(k)
      set.index.push(i)
      set.x.push(x)
      set.y.push(y)
      set.diameter.push(hole)
    })
  }
  return set
}

/** Where fasteners of a row stand on a panel: on the rib right or left of it, on the ring over it, or on the barrel's lip beside it. */
function placeOn({ ribs, ground }: LocalEnd, panel: number, row: FastenerRow, isTwin: boolean): (i: number) => OnPanel {
  const { end } = row
  // the barrel's own row, by girth; only the panels beside a joint have it
  if (!end) return (i) => ({ by: 'right', sigma: Math.abs(row.girth[i]) })
  const lined = linedRow(row.id.replace(`${end.which}-`, ''))
  if (lined === 'cap')
    return (i) => ({
      by: 'ring',
      phi: isTwin ? -end.azimuth[i] : end.azimuth[i],
      sigma: sigmaAtMeridian(ground.loft, end.azimuth[i], Math.abs(row.girth[i])),
    })
  const sorted = [...ribs].sort((a, b) => b.phi - a.phi)
  const nth = sorted.findIndex((rib) => rib.row === lined)
  if (nth < 0) throw new Error(`${row.id} runs down no rib`)
  // counted from the right joint, panel n lies between ribs n - 1 and n
  const isOnLeft = nth + 1 === panel
  const by = isOnLeft === isTwin ? 'right' : 'left'
  return (i) => ({ by, sigma: sorted[nth].outer.sigmaAt(Math.abs(row.girth[i])) })
}

function withPattern(panel: Panel): Part {
  const { part, flat, isTwin, definition } = panel
  const { notComputed: _, ...rest } = part
  const holes = holesIn(panel)
  const { end } = part.place
  if (!end) throw new Error(`${part.id} is not on an end`)
  const isNose = end.which === 'nose'
  // worked out as the right half of the nose is seen; the left half and the tail's right half are its mirror images
  const seen = seenFrom(flat.outline, isTwin === isNose)
  const places = holes.x.map((x, i) => seen.at([x, holes.y[i]]))
  const pattern: Pattern = Object.freeze({
    face: 'sheet',
    flat: Object.freeze({
      view: 'outside',
      x: 'down',
      y: isNose ? 'left' : 'right',
      origin: originOf(panel, end.which),
    }),
    thickness: definition.lining.thickness.value,
    outline: seen.outline,
    cuts: [],
    marks: [],
    holes: Object.freeze({ ...holes, x: places.map(([x]) => x), y: places.map(([, y]) => y) }),
  })
  const isBesideJoint = flat.panels[0] === 1
  return Object.freeze({
    ...rest,
    patterns: [pattern],
    sag: flat.sag,
    notes: [
      ...(isBesideJoint ? ["It reaches over the joint frame to the lip, on top of the barrel's lining."] : []),
      `Bent over its ribs, it stands up to ${mm(flat.sag)} mm inside the line they would have between them.`,
      'Openings are cut when it is fitted, and rivets that they take are left out. Mass and net area are between the ribs, without the laps drawn here.',
    ],
  })
}

/** The nearest place on the coach to the corner it is dimensioned from: where the ring's row meets that of the rib, or lip, beside it. */
function originOf({ local, number, definition }: Panel, end: End): FlatFrame['origin'] {
  const { ground, ribs } = local
  const hand = end === 'nose' ? 'right' : 'left'
  const sorted = [...ribs].sort((a, b) => b.phi - a.phi)
  const rib = sorted[hand === 'right' ? number - 2 : number - 1]
  const joint = definition.frames.find((f) => f.joint === end)
  if (!joint) throw new Error(`no frame carries the ${end}`)
  const out = rib ? rib.lined.place(ringSigma(ground, rib)).point[0] : -barrelLip(definition.shell).row
  const girth = definition.ends.cap - linedBeside(definition)
  const isRight = rib ? rib.phi > -1e-9 : hand === 'right'
  return {
    station: joint.station + (end === 'nose' ? -out : out),
    girth: isRight ? girth : -girth,
    says: `upper ${hand} corner of the rectangle round it, beside where the rows of ring and ${rib ? 'rib' : 'lip'} meet`,
  }
}

interface Seen {
  readonly outline: Outline
  readonly at: (place: Flat) => Flat
}

/** From the lowest corner of the rectangle round it, anticlockwise. */
function seenFrom(points: LiningFlat['outline'], isMirrored: boolean): Seen {
  const turned = isMirrored ? [...points].reverse().map(([x, y]) => [x, -y] as const) : points
  const [x0, y0] = [Math.min(...turned.map(([x]) => x)), Math.min(...turned.map(([, y]) => y))]
  return {
    outline: turned.map(([x, y]) => [x - x0, y - y0, 0] as const),
    at: ([x, y]) => [x - x0, (isMirrored ? -y : y) - y0],
  }
}
