import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { QuantityKind } from './doors.js'
import { parseQuantity } from './doors.js'
import { formatAngle, formatLength, formatMass } from './format.js'

const value = (text: string, kind: QuantityKind): number => {
  const parsed = parseQuantity(text, kind)
  if (!parsed.ok) throw new Error(parsed.says)
  return parsed.value
}
const refusal = (text: string, kind: QuantityKind): string => {
  const parsed = parseQuantity(text, kind)
  return parsed.ok ? `accepted as ${parsed.value}` : parsed.says
}

describe('what is on the tape', () => {
  const read: readonly (readonly [string, QuantityKind, number])[] = [
    ['6100 mm', 'length', 6.1],
    ['2.5 m', 'length', 2.5],
    ['6100mm', 'length', 6.1],
    ['22 1/2 in', 'length', 0.5715],
    ['22-1/2 in', 'length', 0.5715],
    ['22½ in', 'length', 0.5715],
    ['0.032 in', 'length', 0.0008128],
    ['.032 in', 'length', 0.0008128],
    ['1/8 in', 'length', 0.003175],
    ['5\' 3 1/2"', 'length', 1.6129],
    ['5\'-3 1/2"', 'length', 1.6129],
    ['12 ft 6 in', 'length', 3.81],
    ['6"', 'length', 0.1524],
    ['-7 mm', 'length', -0.007],
    ['1/3 in', 'length', 0.008466666666666667],
    ['53 lb', 'mass', 24.04039561],
    ['2 lb 8 oz', 'mass', 1.133980925],
    ['24 kg', 'mass', 24],
    ['13.5 deg', 'angle', (13.5 * Math.PI) / 180],
    ['13.5°', 'angle', (13.5 * Math.PI) / 180],
    ['0.474 kg/m', 'linearMass', 0.474],
    ['110 kN/m', 'stiffness', 110000],
    ['20 C', 'temperature', 293.15],
    ['-10 C', 'temperature', 263.15],
    ['68 F', 'temperature', 293.15],
    ['2', 'number', 2],
    ['40 %', 'number', 0.4],
    ['-1.5', 'number', -1.5],
    ['0 mm', 'length', 0],
  ]
  for (const [text, kind, si] of read) it(`${text} is ${si}`, () => expect(value(text, kind)).toBe(si))
  it('reads stresses and forces', () => {
    expect(value('30 ksi', 'pressure')).toBeCloseTo(206842718.795, 3)
    expect(value('50 psi', 'pressure')).toBeCloseTo(344737.8646, 3)
    expect(value('388 lbf', 'force')).toBeCloseTo(1725.91, 2)
    expect(value('0.097 lb/in3', 'density')).toBeCloseTo(0.097 * 27679.90471, 5)
    expect(value('13.2e-6 /F', 'expansion')).toBeCloseTo(23.76e-6, 12)
  })
})

describe('what is refused, and how it is said', () => {
  const cases: readonly (readonly [string, QuantityKind, string])[] = [
    ['6100', 'length', '6100 needs a unit, e.g. 6100 mm.'],
    ['20', 'temperature', '20 needs a unit, e.g. 20 C.'],
    ['22 in', 'mass', 'Expected a mass, e.g. 24 kg or 53 lb; found "22 in", which is a length.'],
    ['24 kg', 'length', 'Expected a length, e.g. 6100 mm or 22 1/2 in; found "24 kg", which is a mass.'],
    ['388 lb', 'force', 'Expected a force, e.g. 1700 N or 388 lbf; found "388 lb", which is a mass.'],
    ['', 'length', 'Expected a length, e.g. 6100 mm or 22 1/2 in; found nothing.'],
    ['a bit', 'length', 'Expected a length, e.g. 6100 mm or 22 1/2 in; found "a bit", which does not read as a number and a unit.'],
    ['6,100 mm', 'length', 'Expected a length, e.g. 6100 mm or 22 1/2 in; found "6,100 mm", which does not read as a number and a unit.'],
    ['1/0 in', 'length', 'Expected a length, e.g. 6100 mm or 22 1/2 in; found "1/0 in", which does not read as a number and a unit.'],
    ['3 cubits', 'length', 'Expected a length, e.g. 6100 mm or 22 1/2 in; found "3 cubits": "cubits" is not a unit used for a length.'],
    [
      '3 in 2 ft',
      'length',
      'Expected a length, e.g. 6100 mm or 22 1/2 in; found "3 in 2 ft", which strings together figures that do not follow each other.',
    ],
    ['5 ft 3', 'length', '5 ft 3 needs a unit, e.g. 6100 mm or 22 1/2 in.'],
    ['2 mm', 'number', 'Expected a plain number, e.g. 2 or 0.42; found "2 mm", which is a length.'],
    [
      '3 mPa',
      'pressure',
      'Expected a stress or pressure, e.g. 210 MPa or 30 ksi; found "3 mPa": "mPa" is not a unit used for a stress or pressure.',
    ],
    ['-300 C', 'temperature', 'Expected a temperature, e.g. 20 C or 68 F; found "-300 C", which is colder than can be.'],
    ['NaN mm', 'length', 'Expected a length, e.g. 6100 mm or 22 1/2 in; found "NaN mm", which does not read as a number and a unit.'],
  ]
  for (const [text, kind, says] of cases) it(`${text || 'nothing'} as ${kind}`, () => expect(refusal(text, kind)).toBe(says))
})

describe('anything at all', () => {
  const kinds: readonly QuantityKind[] = [
    'length',
    'mass',
    'angle',
    'linearMass',
    'pressure',
    'temperature',
    'force',
    'stiffness',
    'number',
  ]
  const bits = fc.constantFrom(
    '6100',
    '1/8',
    '.5',
    '1e99',
    '1e999',
    '-',
    ' ',
    'mm',
    'in',
    "'",
    '"',
    'deg',
    '°',
    '%',
    '/',
    'kg',
    '½',
    ',',
    '0',
    'C',
    '∞',
    'e',
  )
  const written = fc.oneof(
    fc.string(),
    fc.array(bits, { maxLength: 8 }).map((each) => each.join('')),
  )
  it('is read as a finite number or refused in a sentence, and never throws', () => {
    fc.assert(
      fc.property(written, fc.constantFrom(...kinds), (text, kind) => {
        const parsed = parseQuantity(text, kind)
        return parsed.ok
          ? Number.isFinite(parsed.value) && /\d|[½¼¾⅛⅜⅝⅞]/.test(text)
          : parsed.says.endsWith('.') && parsed.expected !== '' && parsed.found !== ''
      }),
      { seed: 5, numRuns: 5000 },
    )
  })
  it('is not worked out when it is endless', () => {
    expect(parseQuantity(`1${'0'.repeat(5000)} mm`, 'length').ok).toBe(false)
    expect(parseQuantity('1e999999999 mm', 'length').ok).toBe(false)
  })
  it('gives a right angle its exact half of pi', () => expect(value('90 deg', 'angle')).toBe(Math.PI / 2))
})

describe('printing', () => {
  it('prints metric, inch decimals and inch fractions', () => {
    expect(formatLength(2.392, 'metric')).toBe('2392.0 mm')
    expect(formatLength(0.0008128, 'inch')).toBe('0.032 in')
    expect(formatLength(0.5715, 'inch', { fraction: 64 })).toBe('22 1/2 in')
    expect(formatLength(0.003175, 'inch', { fraction: 64 })).toBe('1/8 in')
    expect(formatLength(0.0254 * 11.999, 'inch', { fraction: 16 })).toBe('12 in')
    expect(formatLength(-0.00001, 'metric')).toBe('0.0 mm')
    expect(formatLength(0.00025, 'metric')).toBe('0.3 mm')
    expect(formatLength(1.23456, 'metric', { decimals: 2, bare: true })).toBe('1234.56')
    expect(formatMass(24, 'inch')).toBe('52.9 lb')
    expect(formatAngle((13.5 * Math.PI) / 180)).toBe('13.5 deg')
    expect(() => formatLength(Number.NaN, 'metric')).toThrow('NaN')
  })
  const set = { seed: 11, numRuns: 1000 }
  it('comes back the same from tenths of a millimetre, either sign', () => {
    fc.assert(
      fc.property(fc.integer({ min: -200000, max: 200000 }), (n) => {
        const text = `${n < 0 ? '-' : ''}${Math.floor(Math.abs(n) / 10)}.${Math.abs(n) % 10} mm`
        const v = value(text, 'length')
        return v === n / 10000 + 0 && value(formatLength(v, 'metric'), 'length') === v
      }),
      set,
    )
  })
  it('comes back the same from every 1/64 in', () => {
    fc.assert(
      fc.property(fc.integer({ min: -20000, max: 20000 }), (n) => {
        const v = value(`${n < 0 ? '-' : ''}${Math.abs(n)}/64 in`, 'length')
        return Math.abs(v - (n / 64) * 0.0254) <= 1e-15 * Math.abs(n) && value(formatLength(v, 'inch', { fraction: 64 }), 'length') === v
      }),
      set,
    )
  })
  it('is within half its last figure for any length, mass and angle', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -50, max: 50, noNaN: true }),
        (v) =>
          Math.abs(value(formatLength(v, 'metric'), 'length') - v) <= 0.0000501 &&
          Math.abs(value(formatLength(v, 'inch'), 'length') - v) <= 0.0000128 &&
          Math.abs(value(formatMass(v, 'inch', { decimals: 3 }), 'mass') - v) <= 0.000228 &&
          Math.abs(value(formatAngle(v), 'angle') - v) <= 0.000874,
      ),
      set,
    )
  })
})
