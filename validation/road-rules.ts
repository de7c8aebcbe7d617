/** Rules of the road: vehicle numbers, tyres, labels, couplings and lamps against the rules' own figures. */

import { couplingClass, dcValue, dValue, hitchTests, vValue } from '../src/tables/couplings.js'
import type { Status } from '../src/tables/datum.js'
import { LETTERS, relabelAbove, waterOnLabel } from '../src/tables/labels.js'
import { LONG, lampSchedule, WIDE } from '../src/tables/lamps.js'
import { axleOf, countedLoad, findTyre, tyreDiameter } from '../src/tables/tyres.js'
import { vinSum } from '../src/tables/vin.js'
import type { ValidationCase, ValidationFile } from './case.js'
import { inch, lbf, si } from './case.js'

const pound = si('1 lb', 'mass')
const VIN = '49 CFR 565.15'
const J684 = 'SAE J684 as COMAR 11.13.08.10 repeats it'
const R55 = 'UN regulation 55'
const LOAD = '72 FR 68442 (4 December 2007)'
const LAMPS = '49 CFR 571.108, table I-b'

const one = (
  id: string,
  what: string,
  [source, at, status]: readonly [source: string, at: string, status: Status],
  expected: number,
  tolerance: number,
  unit: string,
  ours: () => number,
): ValidationCase => ({ id: `road-${id}`, case: what, source, at, status, expected, tolerance, unit, ours })

const tyre = (name: string) => {
  const found = findTyre(name)
  if (!found.ok) throw new Error(found.says)
  return found.row
}
const four = () => {
  const found = couplingClass(8000 * pound)
  if (!found) throw new Error('no class')
  return found
}
const heights = (device: string, which: 'least' | 'greatest'): number =>
  (lampSchedule({ width: 2.5, length: 10, gross: 3000 }).find((row) => row.device === device)?.[which] ?? Number.NaN) / inch

export const roadRules: ValidationFile = {
  bibliography:
    '49 CFR 565.15 (check digit), 567.4, 571.108, 571.110 and 571.120 as law texts, agency letters and trade guides print them; Federal Register 72 FR 68442; SAE J684 as COMAR 11.13.08.08 and .10 repeat it; UN regulation 55 as two sites print it.',
  cases: [
    one('vin-sample', "sum of the rule's own sample number", [VIN, 'table VI; in several copies', 'R2'], 411, 0, '', () =>
      vinSum('1G4AH59H45G118341'),
    ),
    one('vin-x', 'sum of a number that checks with X', [VIN, 'a number long in print', 'R2'], 351, 0, '', () =>
      vinSum('1M8GDM9AXKP042788'),
    ),
    one('vin-ones', 'sum of seventeen ones', [VIN, 'weights added up', 'D'], 89, 0, '', () => vinSum('11111111111111111')),
    one(
      'derate',
      'passenger tyre of 2028 lb on a trailer',
      ['FMVSS 120 S5.1.2', 'agency letter of 17 November 1976', 'R2'],
      1843.6,
      0.05,
      'lb',
      () => countedLoad({ service: 'P', load: 2028 }),
    ),
    one('derate-axle', 'two of them', ['FMVSS 120 S5.1.2', 'agency letter of 17 November 1976', 'R2'], 3687, 0.5, 'lb', () =>
      axleOf({ service: 'P', load: 2028 }, 2),
    ),
    one(
      'tyre-c',
      'ST205/75R14 LR C',
      ['common load table of trailer tyres', 'from memory', 'M'],
      798,
      0.5,
      'kg',
      () => tyre('ST205/75R14 LR C').load,
    ),
    one(
      'tyre-d',
      'ST225/75R15 LR D',
      ['common load table of trailer tyres', 'from memory', 'M'],
      1152,
      0.5,
      'kg',
      () => tyre('ST225/75R15 LR D').load,
    ),
    one(
      'tyre-outside',
      'outside of ST225/75R15',
      ['size marking of a tyre', '15 x 25.4 + 2 x 225 x 0.75', 'D'],
      718.5,
      1e-9,
      'mm',
      () => 1000 * tyreDiameter(tyre('ST225/75R15 LR D')),
    ),
    one(
      'relabel-3000',
      'mass added to a 3000 lb trailer before it is labelled anew',
      [LOAD, '1.5 %', 'R'],
      45,
      1e-9,
      'lb',
      () => relabelAbove(3000 * pound) / pound,
    ),
    one(
      'relabel-6667',
      'to one of 6667 lb',
      [LOAD, 'where 1.5 % reaches 100 lb', 'R'],
      100,
      0.01,
      'lb',
      () => relabelAbove(6667 * pound) / pound,
    ),
    one(
      'relabel-10000',
      'to one of 10 000 lb',
      [LOAD, 'the lesser: 100 lb', 'R'],
      100,
      1e-9,
      'lb',
      () => relabelAbove(10000 * pound) / pound,
    ),
    one(
      'water',
      '40 gallons on the label',
      ['49 CFR 571.110 S9.3.3', '8.3 lb a gallon', 'R2'],
      332,
      0,
      'lb',
      () => waterOnLabel(40 * 3.785411784).lb,
    ),
    one(
      'letters',
      'least letters of a certification label',
      ['49 CFR 567.4', "3/32 in; a trade association's guide", 'R2'],
      2.4,
      0.02,
      'mm',
      () => 1000 * LETTERS,
    ),
    one(
      'test-down',
      'hitch test, down, for 5000 lb',
      [J684, '0.47 R + 480', 'R2'],
      2830,
      1e-6,
      'lb',
      () => hitchTests(5000 * pound)[0].down / lbf,
    ),
    one('test-along', 'hitch test, along', [J684, '0.23 R + 1530', 'R2'], 2680, 1e-6, 'lb', () => hitchTests(5000 * pound)[1].along / lbf),
    one(
      'test-carried',
      'hitch test, carried meanwhile',
      [J684, '0.15 R', 'R2'],
      750,
      1e-6,
      'lb',
      () => hitchTests(5000 * pound)[1].down / lbf,
    ),
    one(
      'test-across',
      'hitch test, across',
      [J684, '0.20 R + 500', 'R2'],
      1500,
      1e-6,
      'lb',
      () => hitchTests(5000 * pound)[2].across / lbf,
    ),
    one('class-4-along', 'class 4 coupling of 8000 lb, along', [J684, '3 W', 'R2'], 24000, 1e-6, 'lb', () => four().tension / lbf),
    one(
      'class-4-up',
      'class 4 coupling of 8000 lb, pulled up',
      [J684, '1.3 W', 'R2'],
      10400,
      1e-6,
      'lb',
      () => four().verticalTension / lbf,
    ),
    one(
      'class-2',
      'class 2 coupling, along',
      [J684, 'table 1', 'R2'],
      10500,
      1e-6,
      'lb',
      () => (couplingClass(3000 * pound)?.tension ?? 0) / lbf,
    ),
    one(
      'chain',
      'each chain of 3500 lb',
      ['SAE J684', 'a glossary quotes it: 15.6 kN', 'R2'],
      15.6,
      0.05,
      'kN',
      () => (couplingClass(3500 * pound)?.chain ?? 0) / 1000,
    ),
    one('d', 'D of 2.0 and 1.5 t', [R55, 'g T R / (T + R)', 'D'], 8.4086, 1e-4, 'kN', () => dValue(2000, 1500) / 1000),
    one('d-2', 'D of 2.5 and 2.0 t', [R55, 'g T R / (T + R)', 'D'], 10.9, 1e-6, 'kN', () => dValue(2500, 2000) / 1000),
    one('dc', 'Dc of 18 and 8 t', [R55, 'g T C / (T + C)', 'D'], 54.332, 1e-3, 'kN', () => dcValue(18000, 8000) / 1000),
    one(
      'v-air',
      'V of 8 t, body 7 on drawbar 6 m, air',
      [R55, '1.8 (x/l)^2 C', 'D'],
      19.6,
      1e-6,
      'kN',
      () => vValue(7, 6, 8000, true) / 1000,
    ),
    one('v', 'V on other springs', [R55, '2.4 (x/l)^2 C', 'D'], 26.133, 1e-3, 'kN', () => vValue(7, 6, 8000, false) / 1000),
    one('wide', 'width from which clearance lamps are asked for', [LAMPS, '80 in', 'R2'], 2032, 1e-9, 'mm', () => WIDE * 1000),
    one('long', 'length from which lamps between are asked for', [LAMPS, '30 ft', 'R2'], 9144, 1e-9, 'mm', () => LONG * 1000),
    one('tail-most', 'highest tail lamp', [LAMPS, '15 to 72 in', 'R2'], 72, 1e-9, 'in', () => heights('tail lamp', 'greatest')),
    one('turn-most', 'highest turn lamp', [LAMPS, '15 to 83 in; rule of heights read, count from memory', 'R2'], 83, 1e-9, 'in', () =>
      heights('turn lamp', 'greatest'),
    ),
    one('reflector-least', 'lowest rear reflector', [LAMPS, '15 to 60 in', 'R2'], 15, 1e-9, 'in', () => heights('rear reflector', 'least')),
    one(
      'devices',
      'kinds of lamp of a trailer 80 in wide and 30 ft long',
      [LAMPS, 'counted by hand', 'R2'],
      14,
      0,
      '',
      () => lampSchedule({ width: WIDE, length: LONG, gross: 3000 }).length,
    ),
  ],
}
