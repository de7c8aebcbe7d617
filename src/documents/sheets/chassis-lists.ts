/** Lists of the chassis: what to cut, and what its sections come to. */
import type { Design } from '../../derive/design.js'
import type { SectionFacts } from '../../derive/under-nouns.js'
import type { Page } from '../drawing/page.js'
import type { PrintOptions } from '../drawing/sheet.js'
import { coachTitle, unitsOf } from '../drawing/sheet.js'
import type { Row } from '../drawing/table.js'
import { fixed, lengthNumber, lengthUnit, massWords } from '../drawing/units.js'
import { cutLines } from '../text/cut-list.js'
import { tableSheets, widthsFor } from './table-sheet.js'

const APPROVE = 'STRENGTH NOT CHECKED: an engineer must approve before metal is cut.'

export function cutList(design: Design, options: PrintOptions = {}): readonly Page[] {
  const units = unitsOf(options)
  const unit = lengthUnit(units)
  return tableSheets(
    {
      name: 'chassis-cut-list',
      says: 'Cut list of the chassis: blanks before bending, alike ones together',
      heading: 'Cut list of the chassis',
      sentences: [
        APPROVE,
        `Blanks before bending, in ${unit}; alike ones are one line. A left-hand part and its right-hand twin share a blank: look at their own sheets for which way they are bent.`,
      ],
      title: coachTitle(design, options, 'Cut list', design.definition.coach.name, 'Blanks of the chassis'),
      wide: true,
      rows: cutLines(design).map(
        (l): Row => [
          String(l.parts.length),
          l.parts.join(', '),
          l.face,
          `${l.material} ${l.gauge}`,
          lengthNumber(l.length, units),
          lengthNumber(l.width, units),
          String(l.bends),
          String(l.cuts),
          String(l.holes),
          l.mass === null ? '' : massWords(l.mass, units),
        ],
      ),
      columns: [
        { head: 'No.', width: 12, align: 'right', bold: true },
        { head: 'Parts', width: widthsFor(options, true, 12 + 42 + 58 + 26 + 22 + 3 * 18 + 26), wraps: true },
        { head: 'Face', width: 42, wraps: true },
        { head: 'Material', width: 58, wraps: true },
        { head: `Length ${unit}`, width: 26, align: 'right' },
        { head: `Width ${unit}`, width: 22, align: 'right' },
        { head: 'Bends', width: 18, align: 'right' },
        { head: 'Cut-outs', width: 18, align: 'right' },
        { head: 'Holes', width: 18, align: 'right' },
        { head: 'Each', width: 26, align: 'right' },
      ],
    },
    options,
  )
}

/** Section properties in millimetres whatever the print's units: engineers' tables are. */
export function sectionSheet(design: Design, options: PrintOptions = {}): readonly Page[] {
  const sections = design.under.chassis?.sections ?? []
  const rows = sections.flatMap((s): readonly Row[] => [{ heading: `${s.of}: ${s.says}` }, ...sectionRows(s)])
  return tableSheets(
    {
      name: 'chassis-sections',
      says: 'Section properties of the pressed members, with their blanks',
      heading: 'Sections of the chassis',
      sentences: [
        APPROVE,
        'Closed forms with sharp corners, for the engineer to start from; the blank and the mass are of the bent sheet. The flange round a lightening hole is left out of account.',
      ],
      title: coachTitle(design, options, 'Sections', design.definition.coach.name, 'Section properties'),
      rows,
      columns: [
        { head: 'What', width: widthsFor(options, false, 22 + 36 + 24) },
        { head: 'Symbol', width: 22 },
        { head: 'Value', width: 36, align: 'right' },
        { head: 'Unit', width: 24 },
      ],
    },
    options,
  )
}

const sectionRows = (s: SectionFacts): readonly Row[] => [
  ['Bend allowance, one right angle', 'BA', fixed(s.allowance.value * 1e3, 3), 'mm'],
  ['Bend deduction', 'BD', fixed(s.deduction.value * 1e3, 3), 'mm'],
  ['Width of the blank', 'W', fixed(s.blank.value * 1e3, 1), 'mm'],
  ['Mass of a metre, less its holes', 'w', fixed(s.linearMass.value, 3), 'kg/m'],
  ['Area', 'A', fixed(s.area.value * 1e6, 1), 'mm2'],
  ['Centre of area from the outer face of the web', 'x_c', fixed(s.centre.value * 1e3, 2), 'mm'],
  ['Second moment about the level axis', 'I_x', fixed(s.Ix.value * 1e12, 0), 'mm4'],
  ['Second moment about the upright axis', 'I_y', fixed(s.Iy.value * 1e12, 0), 'mm4'],
  ['Torsion constant', 'J', fixed(s.J.value * 1e12, 0), 'mm4'],
  ["Shear centre outside the web's middle line", 'e', fixed(s.shearCentre.value * 1e3, 2), 'mm'],
  ...(s.net
    ? [
        ['Area with a hole in the web', 'A_n', fixed(s.net.area.value * 1e6, 1), 'mm2'],
        ['Second moment with a hole, level axis', 'I_n', fixed(s.net.Ix.value * 1e12, 0), 'mm4'],
      ]
    : []),
]
