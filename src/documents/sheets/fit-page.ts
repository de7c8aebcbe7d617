/** Will the holes meet? One page: joints by kind in order of risk, what their holes should be, and what would help the worst. */
import type { Design } from '../../derive/design.js'
import type { HoleRole } from '../../derive/nouns.js'
import type { Fit, FitGroup, FitStudy } from '../../studies/fit/nouns.js'
import type { Page } from '../drawing/page.js'
import type { PrintOptions } from '../drawing/sheet.js'
import { coachTitle, unitsOf } from '../drawing/sheet.js'
import type { Row } from '../drawing/table.js'
import { lengthUnit, lengthWords, type PrintUnits } from '../drawing/units.js'
import { chanceWords, FIT_CAUTION, helpWords, ROLE_WORDS, reamWords } from '../text/fit-words.js'
import { tableSheets, widthsFor } from './table-sheet.js'

export function fitPage(design: Design, study: FitStudy, options: PrintOptions = {}): readonly Page[] {
  const units = unitsOf(options)
  const fixedWidths = 52 + 22 + 16 + 20 + 20 + 20 + 18
  const text = widthsFor(options, true, fixedWidths)
  return tableSheets(
    {
      name: 'hole-fit',
      says: 'Will the holes meet?',
      heading: 'Will the holes meet? Joints by kind, most holes to ream first',
      wide: true,
      sentences: study.notComputed === null ? sentences(design, study, units) : [`Not computed. ${study.notComputed}`],
      title: coachTitle(design, options, 'Hole fit', design.definition.coach.name, 'Will the holes meet?'),
      columns: [
        { head: 'joints', width: 52, bold: true, wraps: true },
        { head: 'fasteners', width: 22, align: 'right' },
        { head: 'to ream', width: 16, align: 'right' },
        { head: 'not placed', width: 20, align: 'right' },
        { head: 'centred', width: 20, align: 'right' },
        { head: 'best placed', width: 20, align: 'right' },
        { head: 'clear', width: 18, align: 'right' },
        { head: 'the worst of them: what its holes should be, and why', width: text * 0.62, wraps: true },
        { head: 'what else would help it', width: text * 0.38, wraps: true },
      ],
      rows: study.groups.map((group) => groupRow(group, study, units)),
      style: { height: 1.8 },
    },
    options,
  )
}

function sentences(design: Design, study: FitStudy, units: PrintUnits): readonly string[] {
  const { process } = design.definition
  const range = ([from, to]: readonly [number, number]): string => `${from} to ${to} C`
  const size = (m: number): string => lengthWords(m, units, 1)
  return [
    FIT_CAUTION,
    ...(process === null
      ? []
      : [
          `Punched to ${size(process.punchSigma)} an axis (one sigma), sheets at ${range(process.sheetTempC)}; assembled at ${range(process.jigTempC)}; jigs set to ${size(process.sideJigSigma)} at the sides and roof, ${size(process.endJigSigma)} at the ends (one sigma).`,
        ]),
    `${study.trials} trials, seed ${study.seed}. Chances that every fastener of the worst joint goes in: nothing moved, each sheet centred as a crew does (least squares), and at the best placement there is. To ream: expected in all joints of the line, centred. Clear: hole less thickest shank, ${lengthUnit(units)}.`,
    ...study.assumptions,
  ]
}

function groupRow(group: FitGroup, study: FitStudy, units: PrintUnits): Row {
  const worst = [...study.joints, ...study.sheets].find((fit) => fit.id === group.fits[0])
  if (!worst) throw new Error(`the study has no ${group.fits[0]}`)
  return [
    `${group.says}: ${group.fits.length === 1 ? worst.id : `${group.fits.length}, worst ${worst.id}`}`,
    String(group.fasteners),
    reamWords(group.reaming),
    chanceWords(group.noFit),
    chanceWords(group.leastSquares),
    chanceWords(group.minimax),
    lengthWords(worst.clearance, units, 1).replace(/ (mm|in)$/, ''),
    `${rolesOf(group)}. ${reasonOf(worst)}`,
    helpsOf(worst),
  ]
}

/** One word where all rows of the line are alike, else how many of each. */
function rolesOf({ roles }: FitGroup): string {
  const used = (Object.keys(ROLE_WORDS) as HoleRole[]).filter((role) => roles[role] > 0)
  const words = used.length === 1 ? `${ROLE_WORDS[used[0]]}` : used.map((role) => `${ROLE_WORDS[role]} in ${roles[role]} rows`).join(', ')
  return words.charAt(0).toUpperCase() + words.slice(1)
}

/** Pilots are left out where the holes are to be pilots already. */
function helpsOf({ helps, rows }: Fit): string {
  const isFull = rows.some((row) => row.role === 'full')
  return helps
    .filter(({ what }) => isFull || what !== 'pilot')
    .slice(0, 2)
    .map(helpWords)
    .join(' ')
}

/** Of the row with most to ream. */
function reasonOf(fit: Fit): string {
  const [row] = [...fit.rows].sort((a, b) => b.reaming - a.reaming)
  return row ? row.reason : ''
}
