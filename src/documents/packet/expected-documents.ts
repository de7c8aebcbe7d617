/**
 * Documents that hang on a study, told before the study is done: where they will be, and what of the design they are made from.
 * A blank is not worked out to know that it will be another one: it is another when anything it is worked out from is.
 */
import type { Design } from '../../derive/design.js'
import type { FastenerRow, Part } from '../../derive/nouns.js'
import { coachMade } from './made-from-parts.js'
import type { MadeFrom, PlannedDocument } from './planned.js'
import { BLANKS, GORE_WAYS, HOLE_FIT_LIST, HOLE_FIT_PAGE } from './study-documents.js'

export type ExpectedDocument = Omit<PlannedDocument, 'content'>

/** What a packet holds when the studies are done, beside what its plan already has. */
export interface Expected {
  readonly documents: readonly ExpectedDocument[]
  /** what documents of the plan are then made from besides, by path */
  readonly besides: ReadonlyMap<string, readonly MadeFrom[]>
}

/** Books and lists that gain a page or line for each formed panel. No tape card: nothing runs along a blank's edge. */
const GAINING: readonly string[] = [
  'cover.pdf',
  'checks/checks.pdf',
  'checks/checks.csv',
  'schedules/sheets.csv',
  'ends/flat-patterns.pdf',
  'ends/full-size.pdf',
  'holes/ends.pdf',
]

export function expectedDocuments(design: Design): Expected {
  const coach = coachMade(design)
  const panels = formedPanels(design)
  const blanks = panels.length === 0 ? [] : [shapeMade(design), ...panelsMade(design, panels)]
  const planned = ({ path, says }: { readonly path: string; readonly says: string }, made: readonly MadeFrom[]): ExpectedDocument => ({
    path,
    says,
    of: () => [coach, ...made],
  })
  const linings = linedPanels(design)
  const lined = linings.length === 0 ? [] : [liningMade(design), lapsMade(design), ...panelsMade(design, linings)]
  const fit = design.definition.process === null ? [] : [fitMade(design)]
  const gaining = [
    ...(panels.length === 0 ? [] : GAINING.map((path) => [path, blanks] as const)),
    ...(lined.length === 0 ? [] : LINED.map((path) => [path, lined] as const)),
    // how many can be laid flat hangs on their shape alone, and so does their sag
    ...(lined.length === 0 ? [] : SHAPED.map((path) => [path, [lined[0]]] as const)),
  ]
  const besides = new Map<string, readonly MadeFrom[]>()
  for (const [path, made] of gaining) besides.set(path, [...(besides.get(path) ?? []), ...made])
  return {
    documents: [
      ...(panels.length === 0 ? [] : [planned(BLANKS, blanks)]),
      planned(GORE_WAYS, [waysMade(design), ...blanks]),
      ...(fit.length === 0 ? [] : [planned(HOLE_FIT_PAGE, fit), planned(HOLE_FIT_LIST, fit)]),
      ...panels.flatMap((part, i) => panelDocuments('ends', part, [blanks[0], blanks[i + 1]], planned)),
      ...linings.flatMap((part, i) => panelDocuments('lining', part, [lined[0], lined[1], lined[i + 2]], planned)),
    ],
    besides,
  }
}

/** Parts that have no pattern until their blank is worked out. A cap over a flat roof never has one. */
export function formedPanels({ definition, parts }: Design): readonly Part[] {
  if (definition.ends.make !== 'formed') return []
  const isCapped = definition.section.chain[0].kind !== 'line'
  return parts.filter((p) => p.patterns.length === 0 && (p.kind === 'gore' || (p.kind === 'crown-cap' && isCapped)))
}

/** Lining of the ends that is laid flat for the packet; the panel inside the ring is domed and never is. */
export function linedPanels({ definition, parts }: Design): readonly Part[] {
  if (definition.ends.make === 'wrapped') return []
  return parts.filter((p) => p.kind === 'end-lining' && !p.id.endsWith('-crown'))
}

/** Books and lists that gain a page or line for each of them. */
const LINED: readonly string[] = ['schedules/sheets.csv', 'lining/flat-patterns.pdf', 'lining/full-size.pdf', 'holes/lining.pdf']

/** Sheets that say of them how many there are, or how far they sag. */
const SHAPED: readonly string[] = ['cover.pdf', 'ends/nose-and-tail.pdf']

/** What the shape of the end lining hangs on: the lofted surface, its ribs and how deep the lining lies on them. */
function liningMade({ definition }: Design): MadeFrom {
  const { section, shell, ends, lining } = definition
  return {
    name: 'the shape of the end lining',
    from: [section, shell, ends, lining],
    shows: () => [
      [section.crown, section.chain, section.fit, shell.tape, shell.frame.height, shell.skin.thickness.value],
      [ends.profile, ends.exponent, ends.seams, ends.cap, ends.make, ends.skin.thickness.value],
      [lining.thickness.value, lining.floorGap],
      [shell.frame.rowOffset, shell.frame.thickness.value, shell.jointFrame.flange],
    ],
  }
}

/** How its panels lap. */
const lapsMade = ({ definition: { lining } }: Design): MadeFrom => ({
  name: 'the laps of the lining',
  from: [lining],
  shows: () => lining.lap,
})

type Planned = (where: { readonly path: string; readonly says: string }, made: readonly MadeFrom[]) => ExpectedDocument

/** As `flatDocuments` and `holeDocuments` of the plan name them, for a part of one face. */
function panelDocuments(folder: string, { id }: Part, made: readonly MadeFrom[], planned: Planned): readonly ExpectedDocument[] {
  return [
    planned({ path: `${folder}/${id}.svg`, says: `Flat pattern of ${id} at 1:1 in mm, SVG` }, made),
    planned({ path: `${folder}/${id}.dxf`, says: `Flat pattern of ${id} at 1:1 in mm, DXF` }, made),
    planned({ path: `holes/${id}.csv`, says: `Hole table of ${id}, with its checksum` }, made),
    planned({ path: `programs/${id}.nc`, says: `Neutral coordinate program of ${id}: check before metal` }, made),
  ]
}

/** What all formed panels hang on: the lofted surface, where it is parted, how the sheets lap, and what they are cut from. */
function shapeMade({ definition }: Design): MadeFrom {
  const { section, shell, ends, stock } = definition
  return {
    name: 'the shape of the formed panels',
    from: [section, shell, ends, stock],
    shows: () => [
      [section.crown, section.chain, section.fit, shell.toe, shell.joint, shell.skin.thickness.value],
      [ends.profile, ends.exponent, ends.seams, ends.cap, ends.lap, ends.skin, ends.minThickness],
      stock,
    ],
  }
}

/** What is read from an object, read once: whoever drags a window holds a hundred designs that share nearly all their objects. */
function once<T extends object, V>(read: (of: T) => V): (of: T) => V {
  const known = new WeakMap<T, V>()
  return (of) => {
    const old = known.get(of)
    if (old !== undefined) return old
    const value = read(of)
    known.set(of, value)
    return value
  }
}

const partsThrough = once((row: FastenerRow): readonly string[] => [...new Set(row.stacks.flatMap((s) => s.parts))])

/** Of each panel: its heading, the rivets through it, whose holes it has, and the openings marked on it. */
function panelsMade(design: Design, panels: readonly Part[]): readonly MadeFrom[] {
  const { fasteners, frames, rules } = design.definition
  const joints = frames.filter((f) => f.joint !== null).map((f) => f.station)
  const through = new Map(panels.map((p) => [p.id, [] as FastenerRow[]]))
  for (const row of design.rows) for (const id of partsThrough(row)) through.get(id)?.push(row)
  return panels.map((part) => {
    const rows = through.get(part.id) ?? []
    const openings = design.openings.filter((o) => o.cutIn.includes(part.id))
    return {
      name: part.id,
      from: [part, fasteners, frames, rules, ...rows, ...openings],
      shows: () => [
        [part.says, part.side, part.material, part.thickness, part.place, part.notes, part.mass.value],
        joints,
        [rules.edgeDistance, rules.clampMargin],
        rows.map((row) => [row.id, fasteners.find((f) => f.id === row.fastener), pilotsShown(row, part.id)]),
        openings.map((o) => [o.id, o.says, o.end?.loop ?? o.outline]),
      ],
    }
  })
}

/** Each fastener of the row that goes through the part: its name and where it stands. */
function pilotsShown(row: FastenerRow, part: string): readonly unknown[] {
  const isThrough = row.stacks.map((s) => s.parts.includes(part))
  return row.stack.flatMap((stack, i) => {
    if (!isThrough[stack]) return []
    const { from, to } = row.spans[row.span[i]]
    return [[from, to, row.number[i], row.station[i], row.girth[i], row.waterline[i], row.end?.azimuth[i], row.end?.y[i]]]
  })
}

/** Gores bent over their ribs as the definition places them: how far they deviate, and what their seams cost. */
function waysMade({ definition }: Design): MadeFrom {
  const { section, ends, rows, floor } = definition
  return {
    name: 'two ways to make a gore',
    from: [section, ends, rows.gore, rows.hoop, floor],
    shows: () => [
      [section.crown, section.chain, section.fit, floor?.thickness],
      [ends.profile, ends.exponent, ends.seams, ends.cap, ends.lap, ends.skin, ends.make, ends.within],
      [rows.gore.pitch, rows.hoop.pitch],
    ],
  }
}

const jointTried = once((j: Design['joints'][number]) => [j.id, j.says, j.layers, j.rows])
const partTried = once((p: Part) => [p.id, p.says, p.kind, p.trade, p.material, p.thickness.value, p.patterns[0]?.flat.x])
const rowTried = once((r: FastenerRow) => [
  [r.id, r.kind, r.fastener, r.station, r.girth, r.waterline, r.end],
  [r.stack, r.stacks.map((s) => s.parts)],
])

/** Everything the trials of meeting holes are drawn from: how the shop works, and every fastener with what it goes through. */
function fitMade({ definition, joints, parts, rows }: Design): MadeFrom {
  const { process, fasteners, section, ends } = definition
  return {
    name: 'whether the holes meet',
    // the lists are made anew with every design: their members are looked at one by one below
    from: [process, fasteners, section, ends, joints, parts, rows],
    shows: () => [
      process,
      fasteners.map((f) => [f.id, f.hole, f.pilot, f.shank, f.diameter.value]),
      // the turn of the surface at each fastener, and whether forming moves holes nobody knows how far
      [section.crown, section.chain, section.fit, ends.make],
      joints.map(jointTried),
      parts.map(partTried),
      rows.map(rowTried),
    ],
  }
}
