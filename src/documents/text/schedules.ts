/**
 * The schedules as CSV, for whoever orders, counts or plans from a spreadsheet. The same heads as every text; one fact a cell.
 * Lengths mm, areas m2, masses kg, forces in the unit the line says.
 */
import type { OpeningDefinition } from '../../definition/types.js'
import type { Design } from '../../derive/design.js'
import type { FastenerRow, Part } from '../../derive/nouns.js'
import { boundsOf } from '../drawing/view.js'
import { csvLine } from './csv.js'
import type { TextOptions } from './heading.js'
import { mmText } from './heading.js'

type Cells = readonly string[]

/** A fixed count of decimals, never an exponent; empty for what is not measured. */
const figure = (value: number | null, decimals = 3): string =>
  value === null ? '' : value.toFixed(decimals).replace(/^-(0(\.0*)?)$/, '$1')
const mm = (metres: number): string => mmText(metres, 1)

export function schedule(design: Design, title: string, columns: Cells, rows: readonly Cells[], options: TextOptions): string {
  const { coach } = design.definition
  const head = [
    `# ${title}`,
    `# coach: ${coach.name} by ${coach.maker}`,
    `# unit number: ${options.unit ?? 'MASTER'}`,
    `# revision: ${design.revision}`,
    `# date: ${options.date ?? coach.date}`,
    ...(options.program ? [`# made by: ${options.program}`] : []),
  ]
  return [...head, csvLine(columns), ...rows.map(csvLine)].map((l) => `${l}\n`).join('')
}

/** Every sheet part with its blank, for shearing and ordering. */
export function sheetScheduleCsv(design: Design, options: TextOptions = {}): string {
  const columns = [
    'part',
    'what',
    'side',
    'material',
    'gauge',
    'stock',
    'blank x mm',
    'blank y mm',
    'pieces',
    'holes',
    'net area m2',
    'mass kg',
  ]
  const line = (part: Part): Cells => {
    const [pattern] = part.patterns
    const box = boundsOf([pattern.outline])
    const holes = part.patterns.reduce((sum, p) => sum + p.holes.x.length, 0)
    return [
      part.id,
      part.says,
      part.side,
      part.material,
      part.thickness.name,
      part.stock ?? '',
      mm(box.x1 - box.x0),
      mm(box.y1 - box.y0),
      String(part.pieces),
      String(holes),
      figure(part.area),
      figure(part.mass.value),
    ]
  }
  return schedule(
    design,
    'Sheet schedule: blanks as sheared, before any cut',
    columns,
    design.parts.filter((p) => p.patterns.length).map(line),
    options,
  )
}

/** One line a row of fasteners and stack it goes through: what to fetch, how many, and why that length. */
export function fastenerScheduleCsv(design: Design, options: TextOptions = {}): string {
  const columns = [
    'row',
    'what',
    'kind',
    'fastener',
    'diameter',
    'head',
    'alloy',
    'hole mm',
    'count',
    'grip mm',
    'length mm',
    'length name',
    'through',
    'source',
  ]
  const lines = design.rows.flatMap((row): readonly Cells[] => {
    const type = design.definition.fasteners.find((f) => f.id === row.fastener)
    if (!type) throw new Error(`Row ${row.id} is of fastener ${row.fastener}, which the definition does not have`)
    return row.stacks.map((s) => [
      row.id,
      row.says,
      row.kind,
      row.fastener,
      type.diameter.name,
      type.head,
      type.alloy,
      mmText(type.hole, 2),
      String(s.count),
      mmText(s.grip, 2),
      mmText(s.length, 2),
      s.name,
      s.parts.join(' + '),
      row.source,
    ])
  })
  return schedule(design, 'Fastener schedule: outside to inside, length to the next stock size', columns, lines, options)
}

/** How many fasteners of a row stand in each span; a fastener that closes a span is counted in the span it is numbered in. */
function spanCounts(row: FastenerRow): readonly number[] {
  const counts = row.spans.map(() => 0)
  for (const span of row.span) counts[span]++
  return counts
}

/** One line a span between two permanent points: count and fitted pitch, for laying out by hand. */
export function spanScheduleCsv(design: Design, options: TextOptions = {}): string {
  const columns = [
    'row',
    'from',
    'to',
    'count',
    'fitted pitch mm',
    'wanted pitch mm',
    'first station mm',
    'last station mm',
    'first girth mm',
    'last girth mm',
  ]
  const lines = design.rows.flatMap((row): readonly Cells[] => {
    const counts = spanCounts(row)
    return row.spans.map((span, s) => {
      const at = row.span.flatMap((k, i) => (k === s ? [i] : []))
      const [first, last] = [at[0], at[at.length - 1]]
      const place = (of: readonly number[], i: number | undefined): string => (i === undefined ? '' : mm(of[i]))
      return [
        row.id,
        span.from,
        span.to,
        String(counts[s]),
        mmText(span.pitch, 3),
        mmText(row.pitch, 2),
        place(row.station, first),
        place(row.station, last),
        place(row.girth, first),
        place(row.girth, last),
      ]
    })
  })
  return schedule(design, 'Span schedule: girth from the crown, right of travel positive', columns, lines, options)
}

/** One line an opening: where, how large, and everything it touches. */
export function openingScheduleCsv(design: Design, options: TextOptions = {}): string {
  const columns = [
    'opening',
    'what',
    'surface',
    'side',
    'station mm',
    'waterline mm',
    'girth mm',
    'width mm',
    'height mm',
    'corner mm',
    'opens',
    'mass kg',
    'rim rivets',
    'rim pitch mm',
    'cut in',
    'lining',
    'trim ring',
    'frames cut',
    'posts and headers',
    'seams crossed',
  ]
  const written = new Map(design.definition.openings.map((o): readonly [string, OpeningDefinition] => [o.id, o]))
  const lines = design.openings.map((o): Cells => {
    const as = written.get(o.id)
    const words = (list: readonly string[]): string => list.join(' ')
    return [
      o.id,
      o.says,
      o.surface,
      o.side,
      mm(o.place.station),
      mm(as?.waterline ?? o.place.waterline),
      mm(o.place.girth),
      as ? mm(as.width) : '',
      as ? mm(as.height) : '',
      as ? mm(as.corner) : '',
      as ? (as.opens ? 'yes' : 'no') : '',
      as ? figure(as.mass, 1) : '',
      String(o.rim.count),
      o.rim.count ? mmText(o.rim.pitch, 2) : '',
      words(o.cutIn),
      words(o.lining),
      o.trimRing ?? '',
      words(o.cutsFrames),
      words(o.framing),
      words(o.crossesSeams),
    ]
  })
  return schedule(design, 'Opening schedule', columns, lines, options)
}

/** One line a check, worst verdict first, and what no rule covers yet at the end. */
export function checksCsv(design: Design, options: TextOptions = {}): string {
  const columns = ['verdict', 'check', 'says', 'demand', 'capacity', 'unit', 'margin', 'source', 'concerns', 'what would mend it']
  const order = ['fail', 'caution', 'not-checked', 'pass']
  const sorted = [...design.checks].sort(
    (a, b) =>
      order.indexOf(a.verdict) - order.indexOf(b.verdict) || (a.margin ?? Infinity) - (b.margin ?? Infinity) || (a.id < b.id ? -1 : 1),
  )
  const lines = sorted.map(
    (c): Cells => [
      c.verdict,
      c.id,
      c.says,
      figure(c.demand, 6),
      figure(c.capacity, 6),
      c.unit ?? '',
      figure(c.margin, 3),
      c.source,
      c.concerns.join(' '),
      c.mend ?? '',
    ],
  )
  const never = design.notCovered.map((says): Cells => ['not-checked', '', says, '', '', '', '', '', '', ''])
  return schedule(
    design,
    'Checks: demand and capacity in the unit of the line; margin is capacity over demand less one',
    columns,
    [...lines, ...never],
    options,
  )
}
