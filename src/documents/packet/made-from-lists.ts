/** What schedules, check lists, templates and the cover print, one thing a line or drawing, as finely as each prints it. */
import type { Design } from '../../derive/design.js'
import type { FastenerRow, OpeningDerived, Part } from '../../derive/nouns.js'
import type { PrintOptions } from '../drawing/sheet.js'
import { unitsOf } from '../drawing/sheet.js'
import type { PrintUnits } from '../drawing/units.js'
import { lengthNumber, massWords, plainLength } from '../drawing/units.js'
import { boundsOf } from '../drawing/view.js'
import { placeWords } from '../drawing/words.js'
import { everyCheck, verdictCounts, worstFirst } from '../sheets/checks-list.js'
import { verdictSentences } from '../sheets/cover.js'
import { figure, outlineMade, typeShows } from './made-from-parts.js'
import type { MadeFrom } from './planned.js'

/** One line a check, and the order they stand in. `printed` also has the places and the margin's bar. */
export function checksMade(design: Design, printed: boolean): readonly MadeFrom[] {
  const { market } = design.definition.coach
  return [
    ...design.checks.map((c) => ({
      name: c.id,
      from: [c],
      shows: () => [
        c.verdict,
        c.says,
        c.source,
        c.mend,
        figure(c.demand, 6),
        figure(c.capacity, 6),
        c.unit,
        ...(printed
          ? [figure(c.margin, 5), c.places.slice(0, 4).map((p) => placeWords(p, market)), c.places.length]
          : [figure(c.margin, 3), c.concerns]),
      ],
    })),
    { name: 'what no rule covers', from: [design.notCovered] },
    { name: 'the order of the checks', from: [design.checks], shows: () => worstFirst(design.checks).map((c) => c.id) },
  ]
}

/** Blanks of parts: `fine` for the spreadsheet, which gives areas and grams. */
export function blanksMade(parts: readonly Part[], fine: boolean, units: PrintUnits): readonly MadeFrom[] {
  return parts.map((part) => ({
    name: part.id,
    from: [part],
    shows: () => {
      const box = boundsOf([part.patterns[0].outline])
      const said = [part.says, part.side, part.material, part.thickness, part.stock]
      const size = (m: number): string | number | null => (fine ? figure(m, 4) : lengthNumber(m, units))
      const blank = [size(box.x1 - box.x0), size(box.y1 - box.y0)]
      return fine
        ? [said, blank, part.pieces, part.patterns.map((p) => p.holes.x.length), figure(part.area, 3), figure(part.mass.value, 3)]
        : [said, blank, part.patterns[0].holes.x.length, part.patterns[0].cuts.map((c) => c.opening), massWords(part.mass.value, units)]
    },
  }))
}

/** How the stock is shared, and what stock there is. */
export function stockMade({ totals, definition: { stock } }: Design, units: PrintUnits): MadeFrom {
  return {
    name: 'the sheets of stock',
    from: [totals.sheets, stock],
    shows: () => [
      totals.sheets.map((s) => [
        s.stock,
        s.parts,
        lengthNumber(s.used, units),
        lengthNumber(s.available, units),
        figure(s.used / s.available, 5),
      ]),
      stock.sheets,
      plainLength(stock.trim, units),
    ],
  }
}

/** Which of the three rivet lists: by joint and station on paper, by stack, or by span for a spreadsheet. */
export type RowList = 'paper' | 'stacks' | 'spans'

export function rowsMade(design: Design, list: RowList, units: PrintUnits): readonly MadeFrom[] {
  const { fasteners, frames } = design.definition
  const typed = new Map(fasteners.map((f) => [f.id, f]))
  const shows = { paper: paperRow(design, units), stacks: stacksRow, spans: spansRow }[list]
  return design.rows.map((row) => ({
    name: row.id,
    from: [row, typed.get(row.fastener), frames],
    shows: () => {
      const type = typed.get(row.fastener)
      return [row.fastener, list === 'spans' || !type ? null : typeShows(type), shows(row)]
    },
  }))
}

function paperRow(design: Design, units: PrintUnits): (row: FastenerRow) => unknown {
  const stations = design.definition.frames.map((f) => f.station)
  return (row) => {
    const pitches = row.spans.map((s) => s.pitch)
    const bays = stations.map(() => 0)
    for (const at of row.station) {
      const bay = stations.filter((s) => s <= at + 1e-9).length
      bays[bay] = (bays[bay] ?? 0) + 1
    }
    const stacks = row.stacks.map((s) => [s.name, figure(s.grip, 6), s.count])
    const span = pitches.length === 0 ? null : [Math.min(...pitches), Math.max(...pitches)].map((p) => lengthNumber(p, units))
    return [row.says, stacks, span, bays]
  }
}

const stacksRow = (row: FastenerRow): unknown => [
  row.says,
  row.kind,
  row.source,
  row.stacks.map((s) => [s.name, figure(s.grip, 5), figure(s.length, 5), s.count, s.parts]),
]

const spansRow = (row: FastenerRow): unknown => [
  figure(row.pitch, 5),
  row.spans.map((s, k) => {
    const [first, last] = [row.span.indexOf(k), row.span.lastIndexOf(k)]
    const at = (of: readonly number[], i: number): number | null => (i < 0 ? null : figure(of[i], 4))
    return [
      s.from,
      s.to,
      s.count,
      figure(s.pitch, 6),
      at(row.station, first),
      at(row.station, last),
      at(row.girth, first),
      at(row.girth, last),
    ]
  }),
]

export function jointsMade(design: Design): readonly MadeFrom[] {
  const { solid, blind, byLength } = design.totals.fasteners
  return [
    ...design.joints.map((j) => ({
      name: j.id,
      from: [j],
      shows: () => [j.says, j.layers.map((layer) => layer.says), j.lap, j.rows],
    })),
    { name: 'the count of rivets', from: [solid, blind, byLength] },
    { name: 'the frames', from: [design.definition.frames], shows: () => framesShow(design) },
  ]
}

const framesShow = (design: Design): unknown => design.definition.frames.map((f) => [f.id, figure(f.station, 3)])

/** `fine` for the spreadsheet, which gives places to a tenth and masses. Openings that are written but not derived are listed too. */
export function openingsMade(design: Design, fine: boolean, units: PrintUnits): readonly MadeFrom[] {
  const { market } = design.definition.coach
  const written = new Map(design.definition.openings.map((o) => [o.id, o]))
  const derived = new Set(design.openings.map((o) => o.id))
  const place = (o: OpeningDerived): unknown =>
    fine
      ? [
          o.surface,
          o.side,
          figure(o.place.station, 4),
          figure(written.get(o.id)?.waterline ?? o.place.waterline, 4),
          figure(o.place.girth, 4),
        ]
      : placeWords(o.place, market)
  const size = (o: OpeningDerived): unknown => {
    const as = written.get(o.id)
    if (fine) return as ? [figure(as.width, 4), figure(as.height, 4), figure(as.corner, 4), as.opens, figure(as.mass, 1)] : null
    const box = o.outline.length > 0 ? boundsOf([o.outline]) : null
    if (as) return [as.width, as.height, as.corner].map((m) => plainLength(m, units))
    return box ? [plainLength(box.x1 - box.x0, units), plainLength(box.y1 - box.y0, units)] : null
  }
  return [
    ...design.openings.map((o) => ({
      name: o.id,
      from: [o, written.get(o.id)],
      shows: () => [
        o.says,
        place(o),
        size(o),
        o.cutIn,
        o.rim.count,
        o.rim.count === 0 ? null : fine ? figure(o.rim.pitch, 5) : lengthNumber(o.rim.pitch, units),
        o.cutsFrames,
        o.crossesSeams,
        o.framing,
        o.lining,
        o.trimRing,
      ],
    })),
    ...(fine
      ? []
      : design.definition.openings
          .filter((o) => !derived.has(o.id))
          .map((o) => ({
            name: o.id,
            from: [o],
            shows: () => [
              o.says,
              o.surface,
              figure(o.station, 3),
              o.waterline === null ? null : figure(o.waterline, 3),
              o.width,
              o.height,
              o.corner,
            ],
          }))),
  ]
}

/** The half section as a full-size template draws it, and the frame laid on it. */
export function templateMade({ definition: { shell, ends }, section }: Design, kind: 'hoop' | 'joint'): readonly MadeFrom[] {
  const frame = kind === 'hoop' ? shell.frame : shell.jointFrame
  return [
    {
      name: 'the section',
      from: [section.points],
      shows: () => section.points.map((p) => [p.says, p.girth, p.y, p.z, p.heading]),
    },
    { name: `the ${kind} frame`, from: [frame], shows: () => [frame.alloy, frame.thickness.name, frame.height] },
    {
      name: 'the thickness of the skin',
      from: [shell.skin, ends.skin],
      shows: () => [shell.skin.thickness.value, kind === 'joint' ? ends.skin.thickness.value : null],
    },
  ]
}

/** Everything a glance at the cover takes in. `contents` are the packet's other documents. */
export function coverMade(
  design: Design,
  contents: readonly { readonly path: string; readonly says: string }[],
  options: PrintOptions,
): readonly MadeFrom[] {
  const { definition: d, totals } = design
  const units = unitsOf(options)
  const market = d.coach.market
  return [
    { name: 'the list of documents', from: [], shows: () => contents.map(({ path, says }) => [path, says]) },
    {
      name: 'the checks',
      from: [design.checks, design.notCovered],
      // a sentence there is no room for on the cover changes nothing there
      shows: () => [verdictCounts(everyCheck(design)), verdictSentences(design, options)],
    },
    {
      name: 'the sizes over all',
      from: [design.parts, totals],
      shows: () => [
        design.parts.length,
        design.parts.reduce((sum, part) => sum + part.patterns.length, 0),
        totals.holes,
        totals.fasteners.solid,
        totals.fasteners.blind,
        totals.sheets.length,
        ...[totals.overallLength, totals.bodyLength, totals.overallWidth].map((m) => plainLength(m, units)),
        massWords(totals.mass.value, units),
      ],
    },
    { name: 'the frames', from: [d.frames] },
    { name: 'the outline', from: [d.section, d.frames, design.ends], shows: () => outlineMade(design) },
    { name: 'the seams', from: [d.shell.seams], shows: () => d.shell.seams.map((s) => s.girth) },
    ...design.openings.map((o) => ({
      name: o.id,
      from: [o],
      shows: () => [o.says, o.side, o.surface, placeWords(o.place, market), o.outline],
    })),
  ]
}
