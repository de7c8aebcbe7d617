import { describe, expect, it } from 'vitest'
import { type Address, readAddress } from './address.js'

const read = (text: string): unknown => {
  const it = readAddress(text)
  return it.ok ? it.address : it.says
}
const nose = (value: number): Address['station'] => ({ from: 'nose datum', value })

describe('reading an address', () => {
  const good: readonly (readonly [string, Address])[] = [
    ['R 5745 WL 1160', { side: 'R', station: nose(5.745), height: { key: 'WL', value: 1.16 }, also: null }],
    ['C 3620 G 1500', { side: 'C', station: nose(3.62), height: { key: 'G', value: 1.5 }, also: null }],
    ['STA 3915 G 0', { side: null, station: nose(3.915), height: { key: 'G', value: 0 }, also: null }],
    ['R 5745 g 1670.9', { side: 'R', station: nose(5.745), height: { key: 'g', value: 1.6709 }, also: null }],
    ['roof 4000 BL -300', { side: 'roof', station: nose(4), height: { key: 'BL', value: -0.3 }, also: null }],
    ['C T -300 WL 500', { side: 'C', station: { from: 'last frame', value: -0.3 }, height: { key: 'WL', value: 0.5 }, also: null }],
    ['R 226 in WL 45.7 in', { side: 'R', station: nose(226 * 0.0254), height: { key: 'WL', value: 45.7 * 0.0254 }, also: null }],
    ['R 18\' 10" WL 45 3/4"', { side: 'R', station: nose(226 * 0.0254), height: { key: 'WL', value: 45.75 * 0.0254 }, also: null }],
    ['right 5745, wl 1160', { side: 'right', station: nose(5.745), height: { key: 'WL', value: 1.16 }, also: null }],
    ['Curb station 3620 mm G 1500 mm', { side: 'C', station: nose(3.62), height: { key: 'G', value: 1.5 }, also: null }],
    ['r5745wl1160', { side: 'R', station: nose(5.745), height: { key: 'WL', value: 1.16 }, also: null }],
    ['R 5745 WL 18 under', { side: 'R', station: nose(5.745), height: { key: 'WL', value: -0.018 }, also: null }],
    ['R 5745 WL −18', { side: 'R', station: nose(5.745), height: { key: 'WL', value: -0.018 }, also: null }],
    // as addresses are printed, so that one can be pasted
    [
      'R 5745 WL 1160 (G 1759.1)',
      { side: 'R', station: nose(5.745), height: { key: 'WL', value: 1.16 }, also: { key: 'G', value: 1.7591 } },
    ],
  ]
  for (const [text, address] of good) {
    it(text, () => {
      const read = readAddress(text)
      expect(read.ok).toBe(true)
      const { station, height, ...rest } = (read as { address: Address }).address
      const { station: atStation, height: atHeight, ...others } = address
      expect(rest).toEqual(others)
      expect(station).toEqual({ ...atStation, value: expect.closeTo(atStation.value, 12) })
      expect(height).toEqual({ ...atHeight, value: expect.closeTo(atHeight.value, 12) })
    })
  }

  const bad: readonly (readonly [string, string])[] = [
    ['', 'An address is a side, a station and a height'],
    ['   ', 'An address is a side, a station and a height'],
    ['R 5745', 'gives a station only'],
    ['R WL 1160', 'gives no station'],
    ['R 5745 WL', 'says "5745 WL"'],
    ['R 5745 WL 1160 kg', 'WL should be a length'],
    ['R 5745 WL 1160 WL 1150', 'says WL twice'],
    ['R 5745 T 300 WL 1160', 'as STA and as T'],
    ['R 5745 WL 1160 G 1759 BL 3', 'how high in 3 ways'],
    ['window RW3', 'should be a length'],
    ['R 57x45 WL 1160', 'says "57x45"'],
    ['R 1e999 WL 1160', 'should be a length'],
    ['R 5745 WL 5 psi', 'WL should be a length'],
  ]
  for (const [text, says] of bad) it(`refuses "${text}" in a sentence`, () => expect(read(text)).toContain(says))

  it('never throws, whatever is typed', () => {
    for (const text of [
      '\u0000',
      'G G G',
      '()',
      'R R R 1',
      'WL'.repeat(5000),
      '9'.repeat(400),
      'STA',
      '-',
      'R -',
      "R ' WL '",
      '💥 5 WL 5',
    ]) {
      expect(() => readAddress(text)).not.toThrow()
    }
  })
})
