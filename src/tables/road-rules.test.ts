import { describe, expect, it } from 'vitest'
import { count } from '../../tests/counts.js'
import { chance } from '../../tests/random.js'
import { BREAKAWAY_ABOVE, couplingClass, dcValue, dValue, hitchTests, semiDValue, vValue } from './couplings.js'
import { LOCKED, labelLine, loadRuleOf, massOnLabel, ratingFaults, relabelAbove, waterOnLabel } from './labels.js'
import { lampHeightFault, lampSchedule } from './lamps.js'
import { axleOf, countedLoad, findTyre, tyreDiameter } from './tyres.js'
import { checkDigit, composeVin, vinFaults, vinSum, yearLetter, yearOf } from './vin.js'

const POUND = 0.45359237
const LBF = POUND * 9.80665
const INCH = 0.0254
const CHARACTERS = '0123456789ABCDEFGHJKLMNPRSTUVWXYZ'

describe('vehicle identification numbers', () => {
  it.each([
    // 49 CFR 565 (its own sample), and two numbers long in print
    ['1G4AH59H45G118341', 411, '4'],
    ['1M8GDM9AXKP042788', 351, 'X'],
    ['11111111111111111', 89, '1'],
  ])('%s sums to %s and is checked by %s', (vin, sum, digit) => {
    expect(vinSum(vin)).toBe(sum)
    expect(checkDigit(vin)).toBe(digit)
    expect(vinFaults(vin)).toEqual([])
  })
  it('are refused with another check digit, a letter that may not stand, or the wrong length', () => {
    expect(vinFaults('1G4AH59H55G118341')).toEqual(['Position 9 of 1G4AH59H55G118341 is 5; its check digit is 4.'])
    for (const bad of ['1G4AH59H45G11834I', '1G4AH59H45O118341', '1g4ah59h45g118341', '1G4AH59H45G11834', ''])
      expect(vinFaults(bad)).not.toEqual([])
  })
  it('catch any one wrong character whose weight is not nothing and whose worth differs', () => {
    const random = chance(3)
    for (let n = 0; n < count(400); n++) {
      const blank = Array.from({ length: 14 }, () => random.pick(Array.from(CHARACTERS))).join('') + String(random.whole(100, 999))
      const vin = blank.slice(0, 8) + checkDigit(blank) + blank.slice(9)
      expect(vinFaults(vin).filter((says) => says.includes('check digit'))).toEqual([])
      const at = random.pick([0, 1, 2, 3, 4, 5, 6, 7, 9, 10, 11, 12, 13])
      const other = random.pick(Array.from(CHARACTERS))
      const spoilt = vin.slice(0, at) + other + vin.slice(at + 1)
      // ten and nothing are one remainder apart from eleven; a change of worth always moves the remainder, eleven being a prime
      const moved = vinSum(spoilt) !== vinSum(vin)
      expect(vinFaults(spoilt).some((says) => says.includes('check digit'))).toBe(moved)
    }
  })
  it('never throw on any text', () => {
    const random = chance(4)
    for (let n = 0; n < count(300); n++) {
      const text = Array.from({ length: random.whole(0, 25) }, () => String.fromCodePoint(random.whole(1, 0x2fff))).join('')
      expect(vinFaults(text).length).toBeGreaterThan(0)
    }
  })
  it('are put together so that they check, or say why not', () => {
    // a number of no maker: 0 begins none
    const pieces = { maker: '0M9', attributes: 'TC4B2', year: 2026, plant: 'M', smallMaker: '042', serial: 7 }
    const made = composeVin(pieces)
    expect('vin' in made && vinFaults(made.vin)).toEqual([])
    expect('vin' in made && made.vin.slice(9)).toBe('TM042007')
    for (const change of [
      { maker: '0M' },
      { maker: '0MB' },
      { attributes: 'TC4I2' },
      { year: 1999 },
      { plant: '' },
      { smallMaker: '42' },
      { smallMaker: null },
      { serial: 1000 },
      { serial: -1 },
      { serial: 1.5 },
    ])
      expect('faults' in composeVin({ ...pieces, ...change }), JSON.stringify(change)).toBe(true)
  })
  it('have a letter for thirty years', () => {
    expect([2010, 2018, 2023, 2026, 2030, 2031, 2039].map(yearLetter).join('')).toBe('AJPTY19')
    expect(yearOf('T')).toBe(2026)
    expect(yearOf('U')).toBeNull()
  })
})

describe('tyres', () => {
  it('have the loads and sizes of the table', () => {
    const c = findTyre('st205/75r14 load range C')
    expect(c.ok && [Math.round(c.row.load), Math.round(tyreDiameter(c.row) * 1000)]).toEqual([798, 663])
    const d = findTyre('ST225/75R15 LR D')
    expect(d.ok && [Math.round(d.row.load), Math.round(tyreDiameter(d.row) * 1000)]).toEqual([1152, 719])
    const none = findTyre('ST999/75R14 LR C')
    expect(!none.ok && none.says).toMatch(/known are ST175/)
  })
  it('of passenger cars count for less on a trailer (FMVSS 120 S5.1.2)', () => {
    expect(countedLoad({ service: 'P', load: 2028 })).toBeCloseTo(1843.6, 1)
    expect(Math.floor(axleOf({ service: 'P', load: 2028 }, 2))).toBe(3687)
    expect(countedLoad({ service: 'ST', load: 2028 })).toBe(2028)
  })
})

describe('couplings', () => {
  it.each([
    [2000, 1],
    [2001, 2],
    [3500, 2],
    [3501, 3],
    [5000, 3],
    [5001, 4],
    [10000, 4],
  ])('of %s lb are of class %s', (pounds, which) => expect(couplingClass(pounds * POUND)?.class).toBe(which))
  it('have the strengths of the table, and none above 10 000 lb', () => {
    const two = couplingClass(3000 * POUND)
    expect(two && [two.tension, two.transverse, two.verticalCompression, two.chain].map((n) => Math.round(n / LBF))).toEqual([
      10500, 3000, 4500, 3500,
    ])
    const four = couplingClass(8000 * POUND)
    expect(
      four && [four.tension, four.transverse, four.verticalTension, four.verticalCompression, four.chain].map((n) => Math.round(n / LBF)),
    ).toEqual([24000, 8000, 10400, 11200, 8000])
    expect(couplingClass(10001 * POUND)).toBeNull()
    expect(couplingClass(Number.NaN)).toBeNull()
  })
  it('are tested at 5000 lb with 2830, 2680, 750 and 1500 lb', () => {
    const [first, second, third] = hitchTests(5000 * POUND)
    expect([first.down, second.along, second.down, third.across].map((n) => Math.round(n / LBF))).toEqual([2830, 2680, 750, 1500])
  })
  it('have the D, Dc and V of UN R55', () => {
    expect(dValue(2000, 1500) / 1000).toBeCloseTo(8.4086, 4)
    expect(dValue(2500, 2000) / 1000).toBeCloseTo(10.9, 3)
    expect(dcValue(18000, 8000) / 1000).toBeCloseTo(54.332, 3)
    expect(vValue(7, 6, 8000, true) / 1000).toBeCloseTo(19.6, 3)
    expect(vValue(7, 6, 8000, false) / 1000).toBeCloseTo(26.133, 3)
    expect(vValue(5, 6, 8000, true) / 1000).toBeCloseTo(14.4, 6)
    expect(semiDValue(18000, 20000, 0)).toBeCloseTo(0.6 * dValue(18000, 20000), 6)
    expect(BREAKAWAY_ABOVE).toBeCloseTo(1360.8, 1)
  })
})

describe('lamps', () => {
  const devices = (width: number, length: number, gross = 2000): string[] =>
    lampSchedule({ width: width * INCH, length: length * 12 * INCH, gross }).map((r) => r.device)
  it('of a narrow short trailer are the plain ones', () => {
    expect(devices(79.9, 29.9)).toEqual([
      'tail lamp',
      'stop lamp',
      'turn lamp',
      'rear reflector',
      'plate lamp',
      'side reflector, rear',
      'side reflector, front',
      'side marker, rear',
      'side marker, front',
    ])
    expect(devices(60, 5.9)).not.toContain('side marker, front')
  })
  it('are more from 80 in and from 30 ft on, not a tenth before', () => {
    expect(devices(80, 29.9).slice(9)).toEqual(['clearance lamp, front', 'clearance lamp, rear', 'identification lamps'])
    expect(devices(79.9, 30).slice(9)).toEqual(['side marker, between', 'side reflector, between'])
    expect(devices(80, 30)).toHaveLength(14)
    expect(devices(80, 30, 10000 * POUND)).not.toContain('tape')
    expect(devices(80, 30, 10001 * POUND)).toContain('tape')
    expect(devices(79.9, 30, 10001 * POUND)).not.toContain('tape')
  })
  it('stand within their heights, limits counted in', () => {
    const rows = lampSchedule({ width: 2.392, length: 6.954, gross: 2360 })
    const row = (device: string) => rows.find((r) => r.device === device) ?? rows[0]
    const at = (device: string, inches: number) => lampHeightFault(row(device), inches * INCH)
    expect(at('rear reflector', 15)).toBeNull()
    expect(at('rear reflector', 14.9)).toBe('The rear reflector at 14.9 in (378 mm) stands below 15 in (381 mm).')
    expect(at('rear reflector', 60)).toBeNull()
    expect(at('rear reflector', 60.1)).toMatch(/above 60 in/)
    expect(at('tail lamp', 72)).toBeNull()
    expect(at('turn lamp', 83.1)).toMatch(/above/)
    expect(at('plate lamp', 3)).toBeNull()
    expect(at('side marker, rear', 61)).toMatch(/above 60 in/)
  })
})

describe('labels', () => {
  it('are changed when more is added than the lesser of 1.5 % and 100 lb (72 FR 68442)', () => {
    expect(relabelAbove(3000 * POUND) / POUND).toBeCloseTo(45, 9)
    expect(relabelAbove(6667 * POUND) / POUND).toBeCloseTo(100, 9)
    expect(relabelAbove(10000 * POUND) / POUND).toBeCloseTo(100, 9)
  })
  it('reckon 40 gallons as 332 lb', () => expect(waterOnLabel(40 * 3.785411784).lb).toBe(332))
  it('fall under 571.110 up to 10 000 lb and under 571.120 above', () => {
    expect(loadRuleOf(10000 * POUND)).toBe('49 CFR 571.110')
    expect(loadRuleOf(10001 * POUND)).toBe('49 CFR 571.120')
  })
  it('never say more cargo than there is', () => {
    const random = chance(8)
    for (let n = 0; n < count(200); n++) {
      const kg = random.between(0, 5000)
      const said = massOnLabel(kg, 'down')
      expect(Number(said.kg)).toBeLessThanOrEqual(kg + 1e-6)
      expect(Number(said.lb) * POUND).toBeLessThanOrEqual(kg + 1e-6)
      expect(Number(said.kg)).toBeGreaterThan(kg - 1)
    }
  })
  it('keep their locked words, show an override, and refuse a gap', () => {
    expect(labelLine('vin', { vin: 'X' }).overridden).toBeNull()
    const other = labelLine('type', {}, [{ id: 'type', words: 'TYPE: TRAVEL TRAILER', by: 'A. Person', reason: 'asked by the authority' }])
    expect([other.text, other.overridden]).toEqual(['TYPE: TRAVEL TRAILER', 'A. Person: asked by the authority'])
    expect(() => labelLine('vin', {})).toThrow(/wants vin/)
    expect(() => labelLine('nonsense', {})).toThrow(/no label/)
  })
  it('fill every locked wording from its blanks, whatever stands in them', () => {
    const random = chance(9)
    for (const { id, words } of LOCKED) {
      const blanks = [...words.matchAll(/\{(\w+)\}/g)].map((m) => m[1])
      const fill = Object.fromEntries(blanks.map((name) => [name, String(random.whole(0, 9999))]))
      expect(labelLine(id, fill).text).not.toMatch(/[{}]/)
      for (const name of blanks) expect(() => labelLine(id, { ...fill, [name]: undefined as unknown as string })).toThrow(/wants/)
    }
  })
  it('refuse a gross rating the axles and the hitch do not carry', () => {
    expect(ratingFaults({ gross: 2360, axles: [1135, 1135], hitch: 192 })).toEqual([])
    expect(ratingFaults({ gross: 2360, axles: [1000, 1000], hitch: 192 })).toHaveLength(1)
  })
})
