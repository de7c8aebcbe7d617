/** How the coach follows each tow car: damping against speed for every load case, the cases in figures, and what moves it most. */
import type { Design } from '../../derive/design.js'
import type { CaseTowed, Steadiness, TowingDerived } from '../../derive/road-nouns.js'
import { formatMass } from '../../quantity/format.js'
import type { SwayCurves } from '../../studies/sway/study.js'
import type { LineType, Mark, Page } from '../drawing/page.js'
import { sheetsOf } from '../drawing/paper-sizes.js'
import { type Curve, plot } from '../drawing/plot.js'
import type { PrintOptions } from '../drawing/sheet.js'
import { coachTitle, roomAbove, seriesOf, sheetsFrom, unitsOf } from '../drawing/sheet.js'
import type { Column, Row } from '../drawing/table.js'
import { introduction } from '../drawing/table.js'
import type { PrintUnits } from '../drawing/units.js'
import { fixed, lengthNumber, lengthUnit } from '../drawing/units.js'
import { type Stacked, stackRows, stackText } from './stacked.js'

/** Said on every sheet: never one number, and never a promise. */
const CAUTIONS = [
  "Indicative only: a linear model on a straight, level road without wind, for comparing one loading with another. It is no promise of a safe speed; the law's limit and the driver's judgment stand.",
  'What a tow car may pull and carry on its ball is for the buyer to check with the maker of the car. Load the heavy things over the axles, and check the load of the hitch on a scale before driving.',
]
const TYPES: readonly LineType[] = ['continuous', 'dashed', 'long-dash-dot', 'dotted']

export function towingSheets(design: Design, towing: TowingDerived, sway: SwayCurves | null, options: PrintOptions = {}): readonly Page[] {
  const size = sheetsOf(seriesOf(options))[1]
  const title = coachTitle(design, options, 'Towing', design.definition.coach.name, 'Damping against speed for every load case')
  return sheetsFrom(
    towing.cars.map((car) => ({
      name: `towing-${car.id}`,
      says: `How the coach follows a ${car.says} in every load case`,
      size,
      block: 'slim' as const,
      title,
      marks: body(towing, car, sway, roomAbove(size, 'slim'), unitsOf(options)),
    })),
  )
}

type Car = TowingDerived['cars'][number]

function body(
  towing: TowingDerived,
  car: Car,
  sway: SwayCurves | null,
  room: ReturnType<typeof roomAbove>,
  units: PrintUnits,
): readonly Mark[] {
  const inner = { x: room.x + 4, y: room.y + 4, width: room.width - 8, foot: room.y + room.height - 3 }
  const head = introduction(
    inner.x,
    inner.y,
    inner.width,
    `Behind the ${car.says}, ${formatMass(car.mass, units, { decimals: 0 })}`,
    CAUTIONS,
  )
  const top = inner.y + head.depth + 2
  const half = inner.width * 0.46
  const side: Stacked = { marks: [], x: inner.x + half + 6, y: top, width: inner.width - half - 6 }
  const own = towing.steadiness.filter((each) => each.car === car.id)
  stackRows(
    side,
    columnsFor(side.width, units),
    towing.cases.map((each) => caseRow(each, own, units)),
    inner.foot,
  )
  for (const says of wordsOf(towing, car)) stackText(side, says)
  return [
    ...head.marks,
    ...(sway ? curves(sway, car.id, towing, { x: inner.x, y: top, width: half, height: inner.foot - top }) : []),
    ...side.marks,
  ]
}

function columnsFor(width: number, units: PrintUnits): readonly Column[] {
  const figures: readonly Column[] = [
    { head: units === 'metric' ? 'kg' : 'lb', width: 15, align: 'right' },
    { head: `STA, ${lengthUnit(units)}`, width: 21, align: 'right' },
    { head: 'hitch', width: 17, align: 'right' },
    { head: 'J, kg m2', width: 20, align: 'right' },
    { head: 'at 100', width: 18, align: 'right', bold: true },
    { head: 'limit', width: 18, align: 'right' },
  ]
  const used = figures.reduce((sum, each) => sum + each.width, 10)
  return [{ head: '', width: 10, bold: true }, { head: 'Load case', width: width - used, wraps: true }, ...figures]
}

function caseRow(each: CaseTowed, own: readonly Steadiness[], units: PrintUnits): Row {
  const steady = own.find((s) => s.case === each.id)
  return [
    each.id,
    each.says,
    formatMass(each.mass, units, { decimals: 0, bare: true }),
    lengthNumber(each.station, units),
    `${fixed(each.hitchShare * 100, 1)} %`,
    fixed(each.yawInertia.value, 0),
    dampingWords(steady?.damping ?? null),
    steady?.zeroDamping ? fixed(steady.zeroDamping * 3.6, 0) : 'none',
  ]
}

const dampingWords = (damping: number | null): string => (damping === null ? 'none' : `${fixed(damping * 100, 1)} %`)

function wordsOf(towing: TowingDerived, car: Car): readonly string[] {
  const moves = towing.moves.find((each) => each.car === car.id)
  const low = towing.cases.map((each) => 1 - each.asPoints / each.yawInertia.value)
  const less = [...new Set([Math.min(...low), Math.max(...low)].map((share) => fixed(share * 100, 0)))]
  const leaving = towing.steadiness.filter((each) => each.car === car.id && each.divergence !== null)
  return [
    `At 100: damping of the slowest swing at 100 km/h, as a share of critical. Limit: km/h from which a swing would not die away at all; none up to ${fixed(towing.fastest * 3.6, 0)}. J: yaw inertia about the centre of mass, with the reach of long items: taken as points it would read ${less.join(' to ')} % less.`,
    ...leaving.map(
      (each) => `In case ${each.case} it leaves the straight without swinging from ${fixed((each.divergence ?? 0) * 3.6, 0)} km/h.`,
    ),
    ...(moves
      ? [
          `What moves it most, in case ${moves.case} (${dampingWords(moves.damping)} at 100 km/h):`,
          ...moves.changes.map((change) => `${dampingWords(change.damping)} with ${change.says}.`),
        ]
      : []),
    `Taken for this: tyres of the trailer answer with ${fixed(towing.tyres, 1)} times their load a radian of slip, with no play or friction in the ball${car.isInertiaReckoned ? "; the car's yaw inertia is reckoned as mass times the distances of its axles" : ''}. Each axle carries an even share.`,
  ]
}

function curves(sway: SwayCurves, car: string, towing: TowingDerived, room: Parameters<typeof plot>[0]): readonly Mark[] {
  const drawn = sway.curves.filter((each) => each.car === car)
  const worst = towing.moves.find((each) => each.car === car)?.case
  const most = Math.max(...drawn.flatMap((each) => each.damping.map((d) => d ?? 0)))
  const step = most > 0.6 ? 0.2 : 0.1
  const top = Math.ceil(most / step) * step
  const levels = Array.from({ length: Math.round(top / step) + 2 }, (_, i) => (i - 1) * step)
  const percent = (value: number): string => fixed(value * 100, 0)
  return plot(
    room,
    {
      says: 'speed, km/h',
      from: sway.speeds[0] * 3.6,
      to: sway.speeds[sway.speeds.length - 1] * 3.6,
      ticks: [40, 60, 80, 100, 120, 140, 160],
      words: (v) => fixed(v, 0),
    },
    { says: 'damping of the slowest swing, % of critical; below 0 it grows', from: levels[0], to: top, ticks: levels, words: percent },
    drawn.map(
      (each, i): Curve => ({
        name: each.case,
        type: TYPES[i % TYPES.length],
        isBold: each.case === worst,
        points: each.damping.map((d, k) => [sway.speeds[k] * 3.6, d] as const),
      }),
    ),
    [
      { along: 'x', at: 0, says: 'swings on without end' },
      { along: 'y', at: towing.at * 3.6, says: '100 km/h' },
    ],
  )
}
