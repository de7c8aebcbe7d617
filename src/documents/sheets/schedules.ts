/** Strake, rivet and opening schedules: what to shear, what to drive where, what to cut. */
import type { Design } from '../../derive/design.js'
import type { FastenerRow, OpeningDerived, Part } from '../../derive/nouns.js'
import type { Page } from '../drawing/page.js'
import type { PrintOptions } from '../drawing/sheet.js'
import { coachTitle, unitsOf } from '../drawing/sheet.js'
import type { Row } from '../drawing/table.js'
import { boughtWords, fixed, lengthNumber, lengthUnit, massWords, plainLength, stockWords } from '../drawing/units.js'
import { boundsOf } from '../drawing/view.js'
import { placeWords, sideWords } from '../drawing/words.js'
import { tableSheets, widthsFor } from './table-sheet.js'

const none = (list: readonly string[]): string => (list.length === 0 ? '—' : list.join(', '))

/** Strakes and lining panels: blank, stock, gauge, mass, holes; then how the stock is shared. */
export function strakeSchedule(design: Design, options: PrintOptions = {}): readonly Page[] {
  const units = unitsOf(options)
  const unit = lengthUnit(units)
  const of = (kind: Part['kind'], heading: string): readonly Row[] => {
    const parts = design.parts.filter((part) => part.kind === kind)
    return parts.length === 0
      ? []
      : [
          { heading: `${heading}: ${parts.length}` },
          ...parts.map((part) => {
            const b = boundsOf([part.patterns[0].outline])
            return [
              part.id,
              part.says,
              sideWords(part.side, design.definition.coach.market),
              `${part.material} ${boughtWords(part.thickness, units)}`,
              lengthNumber(b.x1 - b.x0, units),
              lengthNumber(b.y1 - b.y0, units),
              part.stock ?? '—',
              String(part.patterns[0].holes.x.length),
              none(part.patterns[0].cuts.map((c) => c.opening)),
              massWords(part.mass.value, units),
            ]
          }),
        ]
  }
  const sheets = design.totals.sheets.map((use, i) => [
    `Sheet ${i + 1}`,
    use.parts.join(' + '),
    '',
    '',
    '',
    `${lengthNumber(use.used, units)} of ${lengthNumber(use.available, units)}`,
    use.stock,
    '',
    '',
    `${fixed((100 * use.used) / use.available, 1)} %`,
  ])
  const rows: Row[] = [
    ...of('strake', 'Strakes'),
    ...of('lining', 'Lining panels'),
    ...(sheets.length > 0 ? [{ heading: 'Stock: parts sheared from one sheet, width used of width available' }, ...sheets] : []),
  ]
  const market = design.definition.stock.sheets.map((s) => stockWords(s, units)).join('; ')
  return tableSheets(
    {
      name: 'strake-schedule',
      says: 'Strake schedule',
      heading: 'Strakes and lining panels',
      wide: true,
      sentences: [
        `Blank sizes in ${unit}, at the sheet's mid surface, laps and flanges included.`,
        `Stock: ${market}. ${plainLength(design.definition.stock.trim, units)} is squared off each mill edge.`,
      ],
      title: coachTitle(design, options, 'Strake schedule', design.definition.coach.name, 'Strakes and lining panels'),
      rows,
      columns: [
        { head: 'Part', width: 48, bold: true },
        { head: 'What', width: widthsFor(options, true, 48 + 46 + 38 + 18 + 34 + 30 + 14 + 42 + 20), wraps: true },
        { head: 'Side', width: 46 },
        { head: 'Material', width: 38 },
        { head: `x ${unit}`, width: 18, align: 'right' },
        { head: `y ${unit}`, width: 34, align: 'right' },
        { head: 'Stock', width: 30 },
        { head: 'Holes', width: 14, align: 'right' },
        { head: 'Cuts', width: 42, wraps: true },
        { head: 'Mass', width: 20, align: 'right' },
      ],
    },
    options,
  )
}

/** Stacks of a row that take the same fastener through the same grip, their counts added. */
function stacksOf(row: FastenerRow): readonly { readonly grip: number; readonly name: string; readonly count: number }[] {
  const out = new Map<string, { grip: number; name: string; count: number }>()
  for (const stack of row.stacks) {
    const key = `${stack.name} ${stack.grip.toFixed(6)}`
    const known = out.get(key)
    if (known) known.count += stack.count
    else out.set(key, { grip: stack.grip, name: stack.name, count: stack.count })
  }
  return [...out.values()].sort((a, b) => b.count - a.count)
}

const span = (values: readonly number[], units: Parameters<typeof lengthNumber>[1]): string => {
  const [least, most] = [lengthNumber(Math.min(...values), units), lengthNumber(Math.max(...values), units)]
  return least === most ? least : `${least}–${most}`
}

/** By joint and row: fastener, grip, length by its bought name, pitch, count. */
function rivetsByJoint(design: Design, options: PrintOptions): readonly Page[] {
  const units = unitsOf(options)
  const unit = lengthUnit(units)
  const types = new Map(design.definition.fasteners.map((type) => [type.id, type]))
  const byId = new Map(design.rows.map((row) => [row.id, row]))
  const rows: Row[] = design.joints.flatMap((joint): readonly Row[] => [
    {
      heading: `${joint.id}: ${joint.says}. ${joint.layers.map((layer) => layer.says).join(' over ')}${joint.lap ? `. ${joint.lap}` : ''}`,
    },
    ...joint.rows.flatMap((id) => {
      const row = byId.get(id)
      if (!row) return []
      const type = types.get(row.fastener)
      return stacksOf(row).map((stack, i) => [
        i === 0 ? row.id : '',
        i === 0 ? row.says : '',
        type ? `${type.id} ${type.diameter.name} ${type.kind}, ${type.head}` : row.fastener,
        lengthNumber(stack.grip, units, 1),
        stack.name,
        i === 0
          ? row.spans.length > 0
            ? span(
                row.spans.map((s) => s.pitch),
                units,
              )
            : '—'
          : '',
        String(stack.count),
      ])
    }),
  ])
  const { solid, blind, byLength } = design.totals.fasteners
  return tableSheets(
    {
      name: 'rivet-schedule',
      says: 'Rivet schedule by joint and row',
      heading: 'Rivets by joint and row',
      wide: true,
      sentences: [
        `${solid} solid and ${blind} blind fasteners. Grip and pitch in ${unit}; the length is the bought name, from the real stack.`,
        `To buy: ${Object.entries(byLength)
          .sort((a, b) => b[1] - a[1])
          .map(([name, n]) => `${n} of ${name}`)
          .join(', ')}; add what the shop loses.`,
      ],
      title: coachTitle(design, options, 'Rivet schedule', design.definition.coach.name, 'Rivets by joint and row'),
      rows,
      columns: [
        { head: 'Row', width: 46, bold: true },
        { head: 'What', width: widthsFor(options, true, 46 + 74 + 24 + 40 + 36 + 22), wraps: true },
        { head: 'Fastener', width: 74 },
        { head: `Grip ${unit}`, width: 24, align: 'right' },
        { head: 'Length', width: 40 },
        { head: `Pitch ${unit}`, width: 36, align: 'right' },
        { head: 'Count', width: 22, align: 'right' },
      ],
    },
    options,
  )
}

/** Counts of each row by bay: from one frame's centre line up to the next. Rows beyond the joints stand in the outer columns. */
function rivetsByStation(design: Design, options: PrintOptions): readonly Page[] {
  const frames = [...design.definition.frames].sort((a, b) => a.station - b.station)
  const bays = [
    `before ${frames[0].id}`,
    ...frames.slice(1).map((frame, i) => `${frames[i].id} to ${frame.id}`),
    `${frames[frames.length - 1].id} on`,
  ]
  const bayOf = (station: number): number => frames.filter((frame) => frame.station <= station + 1e-9).length
  const sums = bays.map(() => 0)
  const rows: Row[] = design.rows.map((row) => {
    const counts = bays.map(() => 0)
    for (const station of row.station) counts[bayOf(station)]++
    counts.forEach((n, i) => {
      sums[i] += n
    })
    return [row.id, ...counts.map((n) => (n === 0 ? '·' : String(n))), String(row.station.length)]
  })
  rows.push(['All', ...sums.map(String), String(sums.reduce((a, b) => a + b, 0))])
  const wide = Math.min(34, widthsFor(options, true, 50 + 24) / bays.length)
  return tableSheets(
    {
      name: 'rivet-stations',
      says: 'Rivet schedule by station',
      heading: 'Rivets by station',
      wide: true,
      sentences: [
        `Counts by bay; a bay runs from the centre line of its first frame up to the next. ${frames.map((f) => `${f.id} STA ${fixed(f.station * 1000, 0)}`).join(', ')}.`,
      ],
      title: coachTitle(design, options, 'Rivet schedule', design.definition.coach.name, 'Rivets by station'),
      rows,
      columns: [
        { head: 'Row', width: 50, bold: true },
        ...bays.map((bay) => ({ head: bay, width: wide, align: 'right' as const })),
        { head: 'All', width: 24, align: 'right' },
      ],
    },
    options,
  )
}

export function rivetSchedule(design: Design, options: PrintOptions = {}): readonly Page[] {
  const pages = [...rivetsByJoint(design, options), ...rivetsByStation(design, options)]
  return pages
}

function openingRow(design: Design, opening: OpeningDerived, options: PrintOptions): Row {
  const units = unitsOf(options)
  const market = design.definition.coach.market
  const bare = (m: number): string => plainLength(m, units).split(' ')[0]
  const stated = design.definition.openings.find((o) => o.id === opening.id)
  const b = opening.outline.length > 0 ? boundsOf([opening.outline]) : null
  const size = stated
    ? `${bare(stated.width)} × ${bare(stated.height)}, R ${bare(stated.corner)}`
    : b
      ? `${bare(b.x1 - b.x0)} × ${bare(b.y1 - b.y0)} girth`
      : '—'
  return [
    opening.id,
    opening.says,
    placeWords(opening.place, market),
    size,
    none(opening.cutIn),
    opening.rim.count > 0 ? `${opening.rim.count} @ ${lengthNumber(opening.rim.pitch, units)}` : '—',
    none(opening.cutsFrames),
    none(opening.crossesSeams),
    none(opening.framing),
    none([...opening.lining, ...(opening.trimRing ? [opening.trimRing] : [])]),
  ]
}

/** Openings in the end sections stand in the list as they were written, since no trade derives their cuts yet. */
function endOpenings(design: Design, options: PrintOptions): readonly Row[] {
  const units = unitsOf(options)
  const bare = (m: number): string => plainLength(m, units).split(' ')[0]
  const derived = new Set(design.openings.map((o) => o.id))
  return design.definition.openings
    .filter((o) => !derived.has(o.id))
    .map((o) => [
      o.id,
      o.says,
      `${o.surface}, STA ${fixed(o.station * 1000, 0)}${o.waterline === null ? '' : ` WL ${fixed(o.waterline * 1000, 0)}`}`,
      `${bare(o.width)} × ${bare(o.height)}, R ${bare(o.corner)}`,
      'not derived here',
      ...Array.from({ length: 5 }, () => '—'),
    ])
}

export function openingSchedule(design: Design, options: PrintOptions = {}): readonly Page[] {
  const units = unitsOf(options)
  return tableSheets(
    {
      name: 'opening-schedule',
      says: 'Opening schedule',
      heading: 'Openings',
      wide: true,
      sentences: [
        `${design.openings.length} openings derived. Sizes are of the cut: length along the station by height on a side, by girth on the roof, then the corner radius. Places are of the centre.`,
        `All in ${lengthUnit(units)}, places always in mm. An opening in an end section is listed; its cut is not derived here.`,
      ],
      title: coachTitle(design, options, 'Opening schedule', design.definition.coach.name, 'Openings'),
      rows: [...design.openings.map((opening) => openingRow(design, opening, options)), ...endOpenings(design, options)],
      columns: [
        { head: 'Id', width: 28, bold: true },
        { head: 'What', width: 38, wraps: true },
        { head: 'Place', width: 52, wraps: true },
        { head: 'Cut', width: 44, wraps: true },
        { head: 'Cut in', width: 40, wraps: true },
        { head: 'Rim rivets', width: 25 },
        { head: 'Frames cut', width: 24, wraps: true },
        { head: 'Seams', width: 26, wraps: true },
        { head: 'Framing', width: 42, wraps: true },
        { head: 'Lining', width: widthsFor(options, true, 28 + 38 + 52 + 44 + 40 + 25 + 24 + 26 + 42), wraps: true },
      ],
    },
    options,
  )
}
