/** Two ways to make each gore, side by side: bent over its ribs without stretching, or formed from a blank; and what each costs. */
import type { Design } from '../../derive/design.js'
import type { BlankStudy, FormedBlank } from '../../studies/blanks/nouns.js'
import type { GoreFinding, GoreStudy } from '../../studies/gores/study.js'
import type { Page } from '../drawing/page.js'
import type { PrintOptions } from '../drawing/sheet.js'
import { coachTitle, unitsOf } from '../drawing/sheet.js'
import type { Row } from '../drawing/table.js'
import { fixed, lengthUnit, lengthWords, type PrintUnits } from '../drawing/units.js'
import { tableSheets, widthsFor } from './table-sheet.js'

export type GoresAsPlaced = Pick<GoreStudy, 'make' | 'elastic' | 'within' | 'now'>

const CAUTION = 'Figures for planning. Form or wrap one panel and try it on the jig before a batch is cut.'

/** `blanks` is null where formed blanks were not worked out. */
export function goreWays(design: Design, study: GoresAsPlaced, blanks: BlankStudy | null, options: PrintOptions = {}): readonly Page[] {
  const units = unitsOf(options)
  const fixedWidths = 14 + 22 + 22 + 30 + 26 + 32 + 22 + 22
  const text = widthsFor(options, true, fixedWidths)
  return tableSheets(
    {
      name: 'gore-ways',
      says: 'Two ways to make the gores',
      heading: 'Two ways to make the gores: wrapped over the ribs, or formed',
      wide: true,
      sentences: sentences(study, units),
      title: coachTitle(design, options, 'Ends', design.definition.coach.name, 'Two ways to make the gores'),
      columns: [
        { head: 'gore', width: 14, bold: true },
        { head: 'width, deg', width: 22, align: 'right' },
        { head: `inside, ${lengthUnit(units)}`, width: 22, align: 'right' },
        { head: `ruling fall, ${lengthUnit(units)}`, width: 30, align: 'right' },
        { head: `bend R, ${lengthUnit(units)}`, width: 26, align: 'right' },
        { head: 'kink at its seam', width: 32, align: 'right' },
        { head: 'stretch, %', width: 22, align: 'right' },
        { head: `left, ${lengthUnit(units)}`, width: 22, align: 'right' },
        { head: 'wrapped', width: text * 0.5, wraps: true },
        { head: 'formed', width: text * 0.5, wraps: true },
      ],
      rows: study.now.gores.slice(0, Math.ceil(study.now.gores.length / 2)).map((gore) => goreRow(gore, study, blanks, units)),
      style: { height: 1.8 },
    },
    options,
  )
}

const degrees = (rad: number): string => fixed((rad * 180) / Math.PI, 1)

function sentences({ make, elastic, within, now }: GoresAsPlaced, units: PrintUnits): string[] {
  const size = (m: number): string => lengthWords(m, units)
  const { cost, joint, inside } = now
  return [
    CAUTION,
    `The definition has the gores ${make}. Nose and tail are alike, and the left half mirrors the right one: gores are counted from the joint on the right.`,
    `Wrapped: a flat sheet bent over its two seam ribs, as a developable surface; it lies inside the lofted one. ${inside === null ? 'Not every gore can be bent so.' : `The most is ${size(inside)}, where the shop allows ${size(within)}.`} ${joint ? `Against the barrel the outer gore makes ${degrees(joint.angle)} deg at WL ${size(joint.waterline)}.` : ''} A bend above a radius of ${size(elastic)} springs back flat; a tighter one stays.`,
    `Formed: stretched on a press to the lofted surface from the blank with the least strain; its edges cannot shrink without buckling, so the middle is stretched. Its holes are pilots, drilled out on the jig.`,
    `One end: ${size(cost.seamLength)} of seam with ${cost.seamRivets} rivets, ${cost.ribs} ribs with ${cost.ribRivets} rivets in the mid ribs, ${fixed(cost.sealant * 1e6, 0)} ml of sealant in the laps. "coachwright gores" tells how many gores would stay within a distance, and what they would cost.`,
  ]
}

function goreRow(gore: GoreFinding, study: GoresAsPlaced, blanks: BlankStudy | null, units: PrintUnits): Row {
  const size = (m: number): string => lengthWords(m, units).replace(/ (mm|in)$/, '')
  const blank = blanks?.blanks.find((b) => b.panel === `gore-${gore.gore}`) ?? null
  const kink = study.now.kinks.find((k) => k.seam === gore.gore)
  return [
    String(gore.gore),
    degrees(gore.width),
    gore.inside ? size(gore.inside.depth) : 'none',
    gore.drop === null ? 'none' : size(gore.drop),
    gore.bend === null ? 'none' : size(gore.bend),
    kink ? `${degrees(kink.angle)} deg` : '',
    blank ? fixed(blank.stretch.peak * 100, 1) : 'not computed',
    blank ? lengthWords(blank.leastThickness, units, 1).replace(/ (mm|in)$/, '') : 'not computed',
    wrappedWords(gore, study, units),
    blank ? formedWords(blank) : 'The blank was not worked out for this print.',
  ]
}

function wrappedWords(gore: GoreFinding, { within }: GoresAsPlaced, units: PrintUnits): string {
  if (!gore.inside) return gore.refused ?? 'It cannot be bent from flat sheet.'
  const where = `deepest at WL ${lengthWords(gore.inside.waterline, units)}`
  return gore.inside.depth <= within
    ? `It can be: within the allowed distance, ${where}.`
    : `It can be bent, but lies too far inside: ${where}.`
}

function formedWords(blank: FormedBlank): string {
  const worst = blank.checks.find((c) => c.verdict === 'fail') ?? blank.checks.find((c) => c.verdict === 'caution')
  return worst ? worst.says : `It can be: ${blank.stretch.says}`
}
