/**
 * The units a person may write, by dimension, each as an exact fraction of the SI unit.
 * The inch and the pound are exact by the international agreement of 1959; standard gravity by CGPM 1901.
 */

import type { Fraction } from './exact.js'
import { fromDecimal, over, times } from './exact.js'

export type QuantityKind =
  | 'length'
  | 'mass'
  | 'angle'
  | 'linearMass'
  | 'arealMass'
  | 'pressure'
  | 'temperature'
  | 'force'
  | 'stiffness'
  | 'number'
  | 'density'
  | 'expansion'
  | 'torque'
  | 'damping'
  | 'turningDamping'
  | 'inertia'

export interface TradeUnit {
  readonly names: readonly string[]
  readonly factor: Fraction
  /** added after the factor; only temperatures have one */
  readonly offset?: Fraction
  /** how many make pi; only degrees, whose factor is no fraction */
  readonly perPi?: number
}

export interface KindOfQuantity {
  /** `a length` */
  readonly says: string
  /** what to write, for messages */
  readonly example: string
  readonly si: string
  readonly units: readonly TradeUnit[]
}

const inch = fromDecimal('0.0254')
const foot = fromDecimal('0.3048')
const pound = fromDecimal('0.45359237')
const poundForce = times(pound, fromDecimal('9.80665'))
const psi = over(poundForce, times(inch, inch))
const fiveNinths = over(fromDecimal('5'), fromDecimal('9'))

const unit = (factor: Fraction | string, ...names: readonly string[]): TradeUnit => ({
  names,
  factor: typeof factor === 'string' ? fromDecimal(factor) : factor,
})

export const KINDS: Readonly<Record<QuantityKind, KindOfQuantity>> = {
  length: {
    says: 'a length',
    example: '6100 mm or 22 1/2 in',
    si: 'm',
    units: [
      unit('0.001', 'mm'),
      unit('0.01', 'cm'),
      unit('1', 'm', 'metre', 'metres', 'meter', 'meters'),
      unit(inch, 'in', 'inch', 'inches', '"', '″'),
      unit(foot, 'ft', 'foot', 'feet', "'", '′'),
    ],
  },
  mass: {
    says: 'a mass',
    example: '24 kg or 53 lb',
    si: 'kg',
    units: [unit('1', 'kg'), unit('0.001', 'g'), unit('1000', 't'), unit(pound, 'lb', 'lbs'), unit(over(pound, fromDecimal('16')), 'oz')],
  },
  angle: {
    says: 'an angle',
    example: '13.5 deg',
    si: 'rad',
    units: [{ ...unit('1', 'deg', '°', 'degrees', 'degree'), perPi: 180 }, unit('1', 'rad')],
  },
  linearMass: {
    says: 'a mass per length',
    example: '0.474 kg/m or 0.32 lb/ft',
    si: 'kg/m',
    units: [unit('1', 'kg/m'), unit('0.001', 'g/m'), unit(over(pound, foot), 'lb/ft'), unit(over(pound, inch), 'lb/in')],
  },
  arealMass: {
    says: 'a mass per area',
    example: '10.2 kg/m2 or 2.09 lb/ft2',
    si: 'kg/m^2',
    units: [unit('1', 'kg/m2'), unit(over(pound, times(foot, foot)), 'lb/ft2')],
  },
  pressure: {
    says: 'a stress or pressure',
    example: '210 MPa or 30 ksi',
    si: 'Pa',
    units: [
      unit('1', 'Pa'),
      unit('1000', 'kPa'),
      unit('1000000', 'MPa', 'N/mm2'),
      unit('1000000000', 'GPa'),
      unit('100000', 'bar'),
      unit(psi, 'psi'),
      unit(times(psi, fromDecimal('1000')), 'ksi'),
      unit(times(psi, fromDecimal('1000000')), 'Msi'),
    ],
  },
  temperature: {
    says: 'a temperature',
    example: '20 C or 68 F',
    si: 'K',
    units: [
      { ...unit('1', 'C', '°C', 'degC'), offset: fromDecimal('273.15') },
      { ...unit(fiveNinths, 'F', '°F', 'degF'), offset: times(fromDecimal('459.67'), fiveNinths) },
      unit('1', 'K'),
    ],
  },
  force: {
    says: 'a force',
    example: '1700 N or 388 lbf',
    si: 'N',
    units: [unit('1', 'N'), unit('1000', 'kN'), unit(poundForce, 'lbf'), unit(times(poundForce, fromDecimal('1000')), 'kip')],
  },
  stiffness: {
    says: 'a spring rate',
    example: '110 kN/m or 630 lbf/in',
    si: 'N/m',
    units: [
      unit('1', 'N/m'),
      unit('1000', 'kN/m', 'N/mm'),
      unit('1000000', 'MN/m', 'kN/mm'),
      unit(over(poundForce, inch), 'lbf/in', 'lb/in'),
      unit(over(poundForce, foot), 'lbf/ft'),
    ],
  },
  density: {
    says: 'a density',
    example: '2685 kg/m3 or 0.097 lb/in3',
    si: 'kg/m^3',
    units: [unit('1', 'kg/m3'), unit('1000', 'g/cm3'), unit(over(pound, times(inch, times(inch, inch))), 'lb/in3')],
  },
  expansion: {
    says: 'a thermal expansion',
    example: '23.8e-6 /K or 13.2e-6 /F',
    si: '1/K',
    units: [unit('1', '/K', '/C'), unit(over(fromDecimal('1'), fiveNinths), '/F')],
  },
  torque: {
    says: 'a torque',
    example: '440 Nm or 325 lbfft',
    si: 'N*m',
    units: [unit('1', 'Nm'), unit('1000', 'kNm'), unit(times(poundForce, foot), 'lbfft'), unit(times(poundForce, inch), 'lbfin')],
  },
  damping: {
    says: 'a damping rate',
    example: '3500 Ns/m',
    si: 'N*s/m',
    units: [unit('1', 'Ns/m'), unit('1000', 'kNs/m'), unit(over(poundForce, inch), 'lbfs/in')],
  },
  turningDamping: { says: 'a damping of turning', example: '1000 Nms/rad', si: 'N*m*s', units: [unit('1', 'Nms/rad', 'Nms')] },
  inertia: { says: 'a moment of inertia', example: '3200 kgm2', si: 'kg*m^2', units: [unit('1', 'kgm2')] },
  number: { says: 'a plain number', example: '2 or 0.42', si: '1', units: [unit('0.01', '%')] },
}
