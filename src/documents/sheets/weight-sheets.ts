/** Weight and balance on paper: every load case against every limit, worst first, and the schedule of masses by group. */
import { GROUP_WORDS } from '../../definition/weight-types.js'
import type { Design } from '../../derive/design.js'
import type { CaseWeighed, LimitKind, MassLine, Room, WeightDerived } from '../../derive/weight-nouns.js'
import { formatMass } from '../../quantity/format.js'
import type { Page } from '../drawing/page.js'
import type { PrintOptions } from '../drawing/sheet.js'
import { coachTitle, unitsOf } from '../drawing/sheet.js'
import type { Row } from '../drawing/table.js'
import type { PrintUnits } from '../drawing/units.js'
import { fixed, lengthWords } from '../drawing/units.js'
import { tableSheets, widthsFor } from './table-sheet.js'

const mass = (kg: number, units: PrintUnits): string => formatMass(kg, units, { decimals: 0 })
const finer = (kg: number, units: PrintUnits): string => formatMass(kg, units, { decimals: 1 })
const per = (share: number): string => `${fixed(share * 100, 1)} %`
/** Whole millimetres or tenths of an inch: a centre of mass is known no better. */
const place = (m: number, units: PrintUnits): string => (units === 'metric' ? fixed(m * 1000, 0) : fixed(m / 0.0254, 1))

/** The least that is left of any limit: cases are put in its order. */
const least = ({ margins }: CaseWeighed): number =>
  Math.min(margins.hitch, margins.gross, margins.axle, margins.tyre ?? Number.POSITIVE_INFINITY)

export const worstCaseFirst = (cases: readonly CaseWeighed[]): readonly CaseWeighed[] => [...cases].sort((a, b) => least(a) - least(b))

export function statementSheets(design: Design, weight: WeightDerived, options: PrintOptions = {}): readonly Page[] {
  const units = unitsOf(options)
  const { coach } = design.definition
  const unit = units === 'metric' ? 'mm' : 'in'
  const [low, high] = weight.hitchBand
  const isBeyond = (share: number): boolean => share < low || share > high
  const tandem = weight.ratings.length > 1
  return tableSheets(
    {
      name: 'weight-and-balance',
      says: 'Weight and balance: every load case against every limit, worst first',
      heading: 'Weight and balance',
      sentences: [
        `By calculation, the coach level on its hitch; labels are made from the scales. Unloaded, cylinders full and tanks empty, it weighs ${mass(weight.unloaded.value, units)}; rated ${mass(weight.gross, units)} gross, it may carry ${mass(weight.capacity.value, units)}. Ball at STA ${place(weight.ball, units)}, mean axle at STA ${place(weight.axle, units)}, track ${lengthWords(weight.track, units)}, ground at WL ${place(weight.ground, units)} ${unit}.`,
        `The hitch of a design case carries ${per(low)} to ${per(high)}. The others are limits of stowage: the coach must not be loaded so, and the owner's papers say it.`,
        `Here may still be added, all in one place: ${weight.places.map((each) => `${each.says} (STA ${place(each.at[0], units)}) ${roomWords(each.room, units)}`).join('; ')}.`,
        ...(tandem
          ? [
              'Ball off: how far it may stand below and above level before an axle passes its rating. The axles do not equalise; tyres are taken as stiff.',
            ]
          : []),
        ...(weight.listOnly ? ['The stated list alone: no derived part counts.'] : []),
      ],
      title: coachTitle(design, options, 'Weight and balance', coach.name, 'Weight and balance'),
      columns: [
        { head: 'Case', width: 12, bold: true },
        { head: 'What is aboard', width: widthsFor(options, true, tandem ? 312 : 284), wraps: true },
        { head: 'Use', width: 27, wraps: true },
        { head: 'Weight', width: 24, align: 'right' },
        { head: 'of gross', width: 21, align: 'right' },
        { head: `STA, ${unit}`, width: 21, align: 'right' },
        { head: `y, ${unit}`, width: 15, align: 'right' },
        { head: `WL, ${unit}`, width: 20, align: 'right' },
        { head: 'Hitch', width: 24, align: 'right' },
        { head: 'share', width: 19, align: 'right', bold: true },
        { head: 'Each axle', width: 24, align: 'right' },
        { head: 'left of it', width: 21, align: 'right' },
        { head: 'Wheels L, R', width: 36, align: 'right' },
        { head: 'Tips at, g', width: 20, align: 'right' },
        ...(tandem ? [{ head: `Ball off, ${unit}`, width: 28, align: 'right' as const }] : []),
      ],
      wide: true,
      rows: worstCaseFirst(weight.cases).map((one): Row => {
        const [x, y, z] = one.centre
        const first = one.axles[0]
        return [
          one.id,
          one.says,
          one.design
            ? isBeyond(one.share.value)
              ? 'design: OUTSIDE'
              : 'design'
            : isBeyond(one.share.value)
              ? 'NOT to be stowed so'
              : 'inside as well',
          mass(one.mass.value, units),
          per(one.mass.value / weight.gross),
          place(x.value, units),
          place(y.value, units),
          place(z.value, units),
          mass(one.hitch.value, units),
          per(one.share.value),
          first ? mass(first.load.value, units) : '',
          per(one.margins.axle),
          first ? `${mass(first.left.value, units)}, ${mass(first.right.value, units)}` : '',
          fixed(one.stability.value, 2),
          ...(tandem ? [errorWords(one, units)] : []),
        ]
      }),
    },
    options,
  )
}

function errorWords({ heightError }: CaseWeighed, units: PrintUnits): string {
  if (!heightError) return 'not known'
  const { below, above } = heightError
  return [below, above].map((each) => (each ? place(Math.abs(each.value), units) : 'any')).join(', ')
}

const STOPPED: Readonly<Record<LimitKind, string>> = {
  'hitch-least': 'the hitch would be too light',
  'hitch-most': 'the hitch would be too heavy',
  gross: 'the gross rating',
  axle: 'the rating of an axle',
  tyre: 'a tyre',
}

export function roomWords({ mass: kg, limit, case: id }: Room, units: PrintUnits): string {
  if (kg === null || limit === null) return 'anything'
  return `${kg < 1 ? 'nothing' : mass(Math.floor(kg), units)} (case ${id}: ${STOPPED[limit]})`
}

const sayBy = ({ by, rest }: MassLine): string => (rest > 0 ? `${by}, in part` : by)

export function massSheets(design: Design, weight: WeightDerived, options: PrintOptions = {}): readonly Page[] {
  const units = unitsOf(options)
  const { coach } = design.definition
  const unit = units === 'metric' ? 'mm' : 'in'
  const waiting = weight.twinned.filter((each) => each.derived === null)
  return tableSheets(
    {
      name: 'masses',
      says: 'Schedule of masses by group, with who says so',
      heading: 'Masses',
      sentences: [
        `Everything built in: ${finer(weight.built.value, units)}. Each thing stands here once; derived is worked out from the design, in the stead of what the list states.`,
        ...(waiting.length > 0
          ? [
              `${waiting.length} of the stated items will give way once what they name is derived: ${waiting.map((each) => each.item).join('; ')}.`,
            ]
          : []),
      ],
      title: coachTitle(design, options, 'Masses', coach.name, 'Masses'),
      columns: [
        { head: 'Item', width: widthsFor(options, false, 134), bold: true, wraps: true },
        { head: 'By', width: 26, wraps: true },
        { head: 'Mass', width: 24, align: 'right' },
        { head: 'Listed', width: 24, align: 'right' },
        { head: `STA, ${unit}`, width: 22, align: 'right' },
        { head: `y, ${unit}`, width: 17, align: 'right' },
        { head: `WL, ${unit}`, width: 21, align: 'right' },
      ],
      rows: weight.groups.flatMap(({ group, mass: sum, centre, stated }): Row[] => [
        {
          heading: `${group} ${GROUP_WORDS[group]}: ${finer(sum.value, units)} at STA ${place(centre[0], units)}, WL ${place(centre[2], units)}; the list says ${finer(stated, units)}`,
        },
        ...weight.lines
          .filter((line) => line.group === group)
          .map(
            (line): Row => [
              line.says,
              sayBy(line),
              finer(line.mass.value, units),
              line.stated === null ? '' : finer(line.stated, units),
              place(line.centre[0], units),
              place(line.centre[1], units),
              place(line.centre[2], units),
            ],
          ),
      ]),
    },
    options,
  )
}
