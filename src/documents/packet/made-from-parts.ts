/** What the documents of single parts print: headings, shapes and holes, as finely as each prints them. */
import type { FastenerType } from '../../definition/types.js'
import type { Design } from '../../derive/design.js'
import { holesOf, rowNamed } from '../../derive/holes.js'
import type { FastenerRow, Part, Pattern } from '../../derive/nouns.js'
import type { CoachView } from '../drawing/coach-geometry.js'
import { viewOfPart } from '../drawing/coach-geometry.js'
import type { PrintUnits } from '../drawing/units.js'
import { massWords } from '../drawing/units.js'
import type { TapeEdge } from '../sheets/tape-card.js'
import { tapeEdges } from '../sheets/tape-card.js'
import type { ClampedEdge } from '../text/clamp-zone.js'
import { clampWords } from '../text/clamp-zone.js'
import type { MadeFrom } from './planned.js'

/** A number as a whole count of its last printed decimal. */
export const figure = (value: number | null, decimals: number): number | null =>
  value === null ? null : Math.round(value * 10 ** decimals)

/** What a heading says of the coach; family and market are on the cover and in every side's letter. */
export function coachMade({ definition: { coach } }: Design): MadeFrom {
  return { name: 'the name of the coach', from: [coach], shows: () => [coach.name, coach.maker, coach.family, coach.market] }
}

/** The coach in outline as small figures and the cover draw it; more named points on the same section draw the same curve. */
export function outlineMade(design: Design): readonly unknown[] {
  const { definition, ends, section } = design
  const [crown, toe] = [section.points[0], section.points[section.points.length - 1]]
  return [
    definition.section,
    [ends.reach, ends.drawn.profile, ends.drawn.plan],
    definition.frames.filter((f) => f.joint !== null).map((f) => f.station),
    [crown.z, toe.z, section.halfGirth, Math.max(...section.points.map((p) => p.y))],
  ]
}

/** The small figure of a title block, which shows where a part sits: outline, reach of the ends, and the openings on that side. */
export function figureMade(design: Design, view: CoachView): MadeFrom {
  const side = view === 'plan' ? 'centre' : view
  return {
    name: KEY_FIGURE,
    from: [design.definition.section, design.definition.frames, design.ends, design.openings],
    shows: () => [
      outlineMade(design),
      design.openings.filter((o) => o.side === side && o.surface !== 'nose' && o.surface !== 'tail').map((o) => o.outline),
    ],
  }
}

/** Named alone, since it is the one thing on a sheet that nobody cuts or measures by. */
export const KEY_FIGURE = 'the small figure of where it sits'

export const figureOf = (part: Part): CoachView => viewOfPart(part)

/** Lines of a pattern as they are cut, without their names. m. */
const shapeOf = (pattern: Pattern): readonly unknown[] => [
  pattern.outline,
  pattern.cuts.map((cut) => cut.outline),
  pattern.marks.map((mark) => [mark.kind, mark.from, mark.to]),
  pattern.holes.x,
  pattern.holes.y,
  pattern.holes.diameter,
]

const headOf = (part: Part, pattern: Pattern): readonly unknown[] => [part.material, part.thickness.name, ...lieOf(part, pattern)]

/** What a heading says without what the part is of. */
const lieOf = (part: Part, pattern: Pattern): readonly unknown[] => [
  part.says,
  part.side,
  pattern.flat.view,
  pattern.flat.x,
  pattern.flat.y,
  pattern.flat.origin.says,
  figure(pattern.flat.origin.station, 4),
  figure(pattern.flat.origin.girth, 4),
]

/** A bare drawing of one face. */
export const bareMade = (part: Part, pattern: Pattern): MadeFrom => ({
  name: part.id,
  from: [part],
  shows: () => [part.says, pattern.face, pattern.flat.view, shapeOf(pattern)],
})

/** The same with a heading. */
export const headedMade = (part: Part, pattern: Pattern): MadeFrom => ({
  name: part.id,
  from: [part],
  shows: () => [headOf(part, pattern), shapeOf(pattern)],
})

const rowsIn = (design: Design, patterns: readonly Pattern[]): readonly (FastenerRow | undefined)[] =>
  patterns.flatMap((pattern) => pattern.holes.rows.map((id) => rowNamed(design, id)))

/** Hole tables and programs. */
export const holesMade = (design: Design, part: Part, pattern: Pattern): MadeFrom => holesUnder(headOf, design, part, pattern)
/** The same printed, in a book whose headings name no material. */
export const holesPrinted = (design: Design, part: Part, pattern: Pattern): MadeFrom => holesUnder(lieOf, design, part, pattern)

/** Each hole's name, place in the flat and place on the coach to a micron. */
function holesUnder(headed: typeof headOf, design: Design, part: Part, pattern: Pattern): MadeFrom {
  const micron = (of: readonly number[]): readonly number[] => of.map((m) => Math.round(m * 1e6))
  return {
    name: part.id,
    from: [part, ...rowsIn(design, [pattern])],
    shows: () => {
      const holes = holesOf(design, part, pattern)
      return [
        headed(part, pattern),
        holes.map((h) => h.id),
        holes.map((h) => h.role),
        micron(pattern.holes.x),
        micron(pattern.holes.y),
        micron(pattern.holes.diameter),
        micron(holes.map((h) => h.place.station)),
        micron(holes.map((h) => h.place.buttock ?? h.place.girth)),
      ]
    },
  }
}

/** Holes the clamps are in the way of, as a program tells them. */
export const clampsMade = (design: Design, part: Part, pattern: Pattern, clamped: ClampedEdge): MadeFrom => ({
  name: `the clamps of ${part.id}`,
  from: [part, design.definition.rules],
  shows: () => {
    const holes = pattern.holes.x.map((x, i) => ({ no: i + 1, x, y: pattern.holes.y[i] }))
    return clampWords(pattern, holes, clamped, design.definition.rules.clampMargin)
  },
})

/** Sheets of every face at full size: the title, the shapes, and the names of cuts, marks and rows. */
export const fullSizeMade = (part: Part, units: PrintUnits): MadeFrom => ({
  name: part.id,
  from: [part],
  shows: () => drawnShows(part, units),
})

/** Where the small figure marks a part: floor and chassis are seen from above, where no height shows. */
const placeShown = ({ place }: Part): unknown => (place.buttock === undefined ? place : [place.side, place.station, place.buttock])

const drawnShows = (part: Part, units: PrintUnits): readonly unknown[] => [
  part.thickness,
  massWords(part.mass.value, units),
  placeShown(part),
  part.patterns.map((pattern) => [
    headOf(part, pattern),
    pattern.flat.origin,
    pattern.face,
    shapeOf(pattern),
    pattern.cuts.map((cut) => cut.opening),
    pattern.marks.map((mark) => mark.says),
    pattern.holes.rows,
    pattern.holes.row,
  ]),
]

/** A dimensioned sheet of every face: the same, and the notes beside the title block. */
export function sheetMade(design: Design, part: Part, units: PrintUnits): MadeFrom {
  const { fasteners, rows: rules, stock } = design.definition
  return {
    name: part.id,
    // a row takes the fastener its kind's rule names
    from: [part, fasteners, stock, rules],
    shows: () => [
      drawnShows(part, units),
      part.stock,
      part.stock === null ? null : stock.sheets.find((s) => s.name === part.stock),
      part.pieces,
      part.notes,
      fastenersIn(design, part),
    ],
  }
}

/** Each row of the part with its type of fastener, and what the notes say of the types. */
function fastenersIn(design: Design, part: Part): readonly unknown[] {
  const taken = rowsIn(design, part.patterns).map((row) => row?.fastener)
  return [taken, design.definition.fasteners.filter((type) => taken.includes(type.id)).map(typeShows)]
}

/** What a schedule or note says of a fastener type. */
export const typeShows = (type: FastenerType): readonly unknown[] => [
  type.id,
  type.kind,
  type.diameter.name,
  type.head,
  type.alloy,
  type.hole,
]

const TAPED = new WeakMap<Pattern, readonly TapeEdge[]>()

/** A pattern's taped edges, worked out once: the design before is looked at again with every change. */
function taped(pattern: Pattern): readonly TapeEdge[] {
  const known = TAPED.get(pattern) ?? tapeEdges(pattern)
  TAPED.set(pattern, known)
  return known
}

/** Tape cards: every stop along the edges that are taped; no masses and no notes. */
export const tapeMade = (part: Part, units: PrintUnits): MadeFrom => ({
  name: part.id,
  from: [part],
  shows: () =>
    part.patterns.map((pattern) =>
      taped(pattern).map(({ edge, datum, rows, stops }) => [
        [part.side, pattern.flat.view, pattern.face, edge, datum, rows],
        stops.map((stop) => stop.kind),
        stops.map((stop) => stop.name),
        stops.map((stop) => printed(stop.at, units)),
      ]),
    ),
})

/** A length as a whole count of what `lengthNumber` prints last: tenths of a millimetre or thousandths of an inch, a half rounded up. */
const printed = (m: number, units: PrintUnits): number => Math.round((units === 'metric' ? m * 1e4 : m / 25.4e-6) + 1e-6)
