/** Rivet and bearing strengths of MIL-HDBK-5J. One web copy of table 8.1.2.1(b) has its thickness labels shifted; nothing here rests on them. */
import { bearing, governing, rivetShear, sheetRatio, thinSheetFactor } from '../src/derive/shell/formulas/strength.formulas.js'
import { findRivetAlloy, findRivetSize } from '../src/tables/rivets.js'
import type { ValidationCase, ValidationFile } from './case.js'
import { alloy, inch, ksi, lbf } from './case.js'

const SOURCE = 'MIL-HDBK-5J'
const NAMES: Readonly<Record<string, number>> = { '3/32': 3 / 32, '1/8': 1 / 8, '5/32': 5 / 32, '3/16': 3 / 16, '1/4': 1 / 4 }

function hole(name: string): number {
  const size = findRivetSize((NAMES[name] as number) * inch)
  if (!size.ok) throw new Error(size.says)
  return size.row.strengthHole.value
}

function shear(metal: string, name: string, phi = 1): number {
  const found = findRivetAlloy(metal)
  if (!found.ok) throw new Error(found.says)
  return rivetShear.eval({ phi, F_su: found.row.Fsu.value, D_h: hole(name) })
}

const SHEARS: Readonly<Record<string, readonly number[]>> = {
  '5056-H32': [203, 363, 556, 802, 1450],
  '2117-T4': [217, 388, 596, 862, 1550],
  '2017-T4': [275, 493, 755, 1090, 1970],
  Monel: [355, 635, 973, 1400, 2540],
}
// the table was worked with its own rounding, so half a per cent
const shears = Object.entries(SHEARS).flatMap(([metal, values]) =>
  Object.keys(NAMES).map(
    (name, i): ValidationCase => ({
      id: `mil-shear-${metal}-${name}`,
      case: `single shear of one driven ${name} in ${metal} rivet`,
      source: SOURCE,
      at: 'table 8.1.2(b)',
      status: 'M',
      expected: values[i] as number,
      tolerance: 0.005 * (values[i] as number),
      ours: () => shear(metal, name) / lbf,
      unit: 'lbf',
    }),
  ),
)

const BEARINGS = [
  ['3/32', 0.02, 192],
  ['3/32', 0.032, 307],
  ['3/32', 0.063, 605],
  ['1/8', 0.025, 321],
  ['1/8', 0.032, 411],
  ['1/8', 0.045, 578],
  ['1/8', 0.05, 642],
  ['1/8', 0.063, 810],
  ['1/8', 0.08, 1028],
  ['5/32', 0.032, 509],
  ['5/32', 0.04, 636],
  ['5/32', 0.063, 1002],
  ['3/16', 0.036, 688],
  ['3/16', 0.04, 764],
  ['3/16', 0.071, 1356],
  ['1/4', 0.071, 1825],
] as const
const bearings = BEARINGS.map(
  ([name, sheet, expected]): ValidationCase => ({
    id: `mil-bearing-${name}-${sheet}`,
    case: `bearing at 100 ksi, ${name} in rivet in ${sheet.toFixed(3)} in`,
    source: SOURCE,
    at: 'table 8.1.2.1(a)',
    status: 'R2',
    expected,
    tolerance: 0.001 * expected,
    ours: () => bearing.eval({ F_bru: 100 * ksi, D_h: hole(name), t: sheet * inch }) / lbf,
    unit: 'lbf',
  }),
)

function inSheet(name: string): { readonly P_s: number; readonly P_b: number } {
  const t = 0.032 * inch
  const phi = thinSheetFactor.eval({ x: sheetRatio.eval({ t, D: inch / 8 }) })
  const F_bru = alloy(name, 0.032).Fbru20
  if (!F_bru) throw new Error(`${name} has no bearing strength`)
  return { P_s: shear('2117-T4', '1/8', phi), P_b: bearing.eval({ F_bru: F_bru.value, D_h: hole('1/8'), t }) }
}
const AT = 'allowables of tables 3.2.3.0(e1), 3.6.2.0(b1), 3.5.1.0(b1) and 8.1.2, combined by hand'
const joints = (
  [
    ['clad 2024-T3', 497.6, 374],
    ['6061-T6', 361.9, 361.9],
    ['5052-H32', 267.3, 267.3],
  ] as const
).flatMap(([name, inBearing, weakest]): ValidationCase[] => [
  {
    id: `mil-joint-bearing-${name}`,
    case: `1/8 in AD in 0.032 in ${name}, e/D 2: bearing`,
    source: SOURCE,
    at: AT,
    status: 'D',
    expected: inBearing,
    tolerance: 0.001 * inBearing,
    ours: () => inSheet(name).P_b / lbf,
    unit: 'lbf',
  },
  {
    id: `mil-joint-${name}`,
    case: `1/8 in AD in 0.032 in ${name}, e/D 2: what governs`,
    source: SOURCE,
    at: AT,
    status: 'D',
    expected: weakest,
    tolerance: 0.005 * weakest,
    ours: () => governing.eval(inSheet(name)) / lbf,
    unit: 'lbf',
  },
])

export const milHdbk5j: ValidationFile = {
  bibliography: 'Department of Defense, MIL-HDBK-5J, Metallic Materials and Elements for Aerospace Vehicle Structures, 2003.',
  cases: [...shears, ...bearings, ...joints],
}
