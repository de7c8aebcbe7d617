/** What the rules of the road ask of the coach: the schedule of lamps and reflectors, and coupling, chains, tyres and rims. */
import type { Design } from '../../derive/design.js'
import type { RoadDerived } from '../../derive/road-nouns.js'
import { formatMass } from '../../quantity/format.js'
import type { Page } from '../drawing/page.js'
import type { PrintOptions } from '../drawing/sheet.js'
import { coachTitle, unitsOf } from '../drawing/sheet.js'
import type { Row } from '../drawing/table.js'
import type { PrintUnits } from '../drawing/units.js'
import { fixed, lengthWords } from '../drawing/units.js'
import { tableSheets, widthsFor } from './table-sheet.js'

const GOVERNS = 'The law in force where the coach is sold and driven governs; a qualified person must compare this sheet with it.'

/** A limit rounded inward, so that a lamp set by the sheet is never a hair outside: whole mm, tenths of an inch. */
function limit(m: number, round: (value: number) => number, units: PrintUnits): string {
  const value = units === 'metric' ? m * 1000 : (m / 0.0254) * 10
  const near = Math.round(value)
  const whole = Math.abs(value - near) < 1e-6 ? near : round(value)
  return units === 'metric' ? fixed(whole, 0) : fixed(whole / 10, 1)
}

function heights(least: number | null, greatest: number | null, units: PrintUnits): string {
  const low = least === null ? null : limit(least, Math.ceil, units)
  const high = greatest === null ? null : limit(greatest, Math.floor, units)
  if (low === null) return high === null ? 'none set' : `up to ${high}`
  return high === null ? `from ${low}` : `${low} to ${high}`
}

const mass = (kg: number, units: PrintUnits): string => formatMass(kg, units, { decimals: 0 })

export function lampSheets(design: Design, road: RoadDerived, options: PrintOptions = {}): readonly Page[] {
  const units = unitsOf(options)
  const unit = units === 'metric' ? 'mm' : 'in'
  const { coach } = design.definition
  return tableSheets(
    {
      name: 'lamps',
      says: 'Lamps and reflectors: what is asked for, where, and between which heights',
      heading: 'Lamps and reflectors',
      sentences: [
        road.notApplied ??
          `For a trailer ${lengthWords(road.width, units)} wide, ${lengthWords(road.length, units)} long over all and rated ${mass(road.gross, units)}. ${GOVERNS}`,
        `Heights are to the middle of the lamp at curb weight; the least one is absolute. Waterlines are those heights on this coach. A lamp may do two duties where its marks say so. Where each stands has to be drawn and checked by hand.`,
      ],
      title: coachTitle(design, options, 'Lamps', coach.name, 'Lamps and reflectors'),
      columns: [
        { head: 'Device', width: 46, bold: true, wraps: true },
        { head: 'No.', width: 11, align: 'right' },
        { head: 'Colour', width: 27, wraps: true },
        { head: 'Where', width: widthsFor(options, true, 240), wraps: true },
        { head: `Height, ${unit}`, width: 30 },
        { head: `WL, ${unit}`, width: 32 },
        { head: 'Asked of', width: 42, wraps: true },
        { head: 'Source', width: 52, wraps: true },
      ],
      wide: true,
      rows: road.lamps.map((row) => [
        row.device,
        String(row.count),
        row.colour,
        row.where,
        heights(row.least, row.greatest, units),
        heights(...row.waterlines, units),
        row.because,
        row.source,
      ]),
    },
    options,
  )
}

/** Only the forces there are. */
const forces = ({ along, down, across }: { readonly along: number; readonly down: number; readonly across: number }): string =>
  (
    [
      ['along', along],
      ['down', down],
      ['across', across],
    ] as const
  )
    .filter(([, n]) => n > 0)
    .map(([says, n]) => `${says} ${kn(n)}`)
    .join(', ')

const kn = (n: number): string => `${fixed(n / 1000, 1)} kN`

export function couplingSheets(design: Design, road: RoadDerived, options: PrintOptions = {}): readonly Page[] {
  const units = unitsOf(options)
  const { coach } = design.definition
  const { coupling, tyre, tyreDiameter, tyresCarry, axleRatings, gross } = road
  const sum = axleRatings.reduce((all, each) => all + each, 0)
  const needs = coupling.class
  const strengths: readonly Row[] = needs
    ? [
        ['Class of the coupling', `${needs.class}, gross weight up to ${mass(needs.upTo, units)}`, `rated ${mass(coupling.rated, units)}`],
        ['Ball', needs.ball ? `${needs.ball} or larger` : 'as strong as the coupling', coupling.ball],
        ['Pull and push along', kn(needs.tension), "maker's proof"],
        ['Push across', kn(needs.transverse), "maker's proof"],
        ['Pull up, push down', `${kn(needs.verticalTension)}, ${kn(needs.verticalCompression)}`, "maker's proof"],
        ['Each of two safety chains, breaking', kn(needs.chain), kn(coupling.chain)],
      ]
    : [['Class of the coupling', road.notApplied ?? 'none: above 10 000 lb', `rated ${mass(coupling.rated, units)}`]]
  const rows: readonly Row[] = [
    { heading: 'Coupling and chains: least breaking forces' },
    ...strengths,
    [
      'Brakes that go on when it breaks away',
      coupling.breakaway ? 'yes, held for 15 minutes' : 'not below 3000 lb',
      'to be fitted and tested',
    ],
    { heading: 'Hitch of the car: forces it is tested with' },
    ...coupling.tests.map((test): Row => [test.says, forces(test), 'for the car owner to check']),
    { heading: 'D value of the coupling, UN regulation 55 (other markets)' },
    ...coupling.dValues.map(({ car, mass: kg, d }): Row => [`with the ${car}, ${mass(kg, units)}`, kn(d), 'plate of the coupling']),
    { heading: 'Tyres and rims' },
    ['Tyre', tyre.name, `${lengthWords(tyreDiameter, units)} outside, unloaded`],
    ['Rim', tyre.rimName, 'in, as the tyre maker lists it'],
    [
      'Cold pressure at full load',
      `${fixed(tyre.pressure / 1000, 0)} kPa (${fixed(tyre.pressure / 6894.757, 0)} psi)`,
      'see the side wall',
    ],
    ['Two tyres of an axle', `at least ${mass(Math.max(...axleRatings), units)}`, mass(tyresCarry, units)],
    ['Axles together and the hitch', `at least ${mass(gross, units)}`, `${mass(sum, units)} and the hitch`],
  ]
  return tableSheets(
    {
      name: 'coupling',
      says: 'Coupling, chains, breakaway, tyres and rims: what is asked for and what is there',
      heading: 'Coupling, chains, tyres',
      sentences: [
        `For a gross weight of ${mass(gross, units)}. ${GOVERNS} Strength of drawbar, lugs and welds is not checked here: a qualified engineer must approve.`,
        `Strengths as SAE J684 by COMAR 11.13.08.10; tyres by ${tyre.source}. Load rule: ${road.loadRule}.`,
      ],
      title: coachTitle(design, options, 'Coupling', coach.name, 'Coupling, chains, tyres'),
      columns: [
        { head: 'What', width: 66, bold: true, wraps: true },
        { head: 'Asked for', width: widthsFor(options, false, 118), wraps: true },
        { head: 'There', width: 52, wraps: true },
      ],
      rows,
    },
    options,
  )
}
