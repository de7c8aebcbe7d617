import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { readDefinition } from '../../definition/read-definition.js'
import { fastenerId } from '../../derive/holes.js'
import { type Derived, derive } from '../../derive/index.js'
import { type AtPlace, at } from './at.js'

const text = (path: string): string => readFileSync(new URL(`../../../${path}`, import.meta.url), 'utf8')
function coach(change: (whole: string) => string = (whole) => whole, name = 'examples/sedge-6.yaml'): Derived {
  const { definition, faults } = readDefinition(name, change(text(name)), (path) => text(path))
  expect(faults).toEqual([])
  return derive(definition!)
}
const six = coach()
function found(address: string, on = six): AtPlace {
  const it = at(on, address)
  if (!it.ok) throw new Error(it.says)
  return it.found
}
const says = (address: string, on = six): string => {
  const it = at(on, address)
  return it.ok ? 'found' : it.says
}
const tenth = (m: number): number => Math.round(m * 1e4) / 10
const ids = (things: AtPlace['outside'], kind: string, within = 0): readonly string[] =>
  things.filter((t) => t.kind === kind && t.distance <= within).map((t) => t.id)

describe('a place', () => {
  it('is what the section table says at the middle of a window', () => {
    const { place } = found('R 5745 WL 1160')
    expect([place.side, tenth(place.station), tenth(place.girth), tenth(place.y), tenth(place.z)]).toEqual([
      'left',
      5745,
      1759.1,
      1176.8,
      1160,
    ])
    // 1670.9 in the table, which rounds the build-up to 59.0 mm
    expect((place.liningGirth ?? 0) * 1000).toBeCloseTo(1670.9, 0)
    expect([place.bay, place.address]).toEqual(['F5-F6', 'R 5745 WL 1160 (G 1759.1)'])
    expect(place.frames.map((f) => [f.id, tenth(f.distance), f.lies])).toEqual([
      ['F5', 305, 'forward'],
      ['F6', 305, 'aft'],
    ])
  })

  it('is the same however it is said', () => {
    const one = found('R 5745 WL 1160').place
    for (const other of [
      'left 5745 WL 1160',
      'R T -915 WL 1160',
      `R 5745 G ${one.girth * 1000}`,
      `R 5745 g ${(one.liningGirth ?? 0) * 1000}`,
      'R 5.745 m WL 1160',
      one.address,
    ]) {
      const there = found(other).place
      expect(there.side).toBe('left')
      expect(there.station).toBeCloseTo(one.station, 9)
      expect(Math.abs(there.girth - one.girth)).toBeLessThan(1e-4)
    }
  })

  it('is on the other side where the market drives on the other side', () => {
    const british = coach((whole) => whole.replace('coach: {name: Sedge 6}', 'coach: {name: Sedge 6, market: uk}'))
    expect(found('R 5745 WL 1160', british).place.side).toBe('right')
    expect(found('right 5745 WL 1160', british).place.address).toMatch(/^R 5745/)
    expect(found('right 5745 WL 1160').place.address).toMatch(/^C 5745/)
  })

  it('is found from the centre plane: the half width there is what was asked', () => {
    const { place } = found('roof 4000 BL -300')
    expect([place.side, place.y]).toEqual(['left', expect.closeTo(0.3, 9)])
    expect(place.address).toMatch(/^R 4000 G 300\.\d \(WL 2017\.5\)$/)
    expect(found('roof 4000 BL 300').place.side).toBe('right')
    expect(found('STA 3915 G 0').place.address).toBe('STA 3915 G 0')
  })

  it('says under as well as minus below the floor', () => expect(found('C 5000 WL -18').place.address).toContain('WL -18 under'))
})

describe('every address that is printed', () => {
  it('is read back to the same place', () => {
    const { halfGirth } = six.section
    for (let i = 0; i < 60; i++) {
      const [station, girth] = [3000 + 61 * i, (halfGirth * 1000 * ((i * 37) % 60)) / 60]
      const there = found(`${i % 2 ? 'C' : 'R'} ${station} G ${girth}`).place
      const back = found(there.address).place
      expect([back.station, back.side]).toEqual([expect.closeTo(there.station, 4), there.side])
      expect(Math.abs(back.girth - there.girth)).toBeLessThan(1e-3)
    }
  })
})

describe('what is there', () => {
  it('in the middle of a window: the cut, and all that was made for it', () => {
    const it = found('R 5745 WL 1160')
    expect(ids(it.outside, 'opening')).toEqual(['RW3'])
    expect(ids(it.through, 'opening')).toEqual(['RW3'])
    expect(ids(it.through, 'fastener', 1)).toEqual([])
    expect(it.inside.map((t) => t.id)).toEqual(expect.arrayContaining(['rim-RW3', 'trim-RW3', 'frame-F5', 'frame-F6']))
    expect(it.inside.map((t) => t.id)).toContainEqual(expect.stringMatching(/^lining-band-2-left-/))
    expect(ids(it.inside, 'blanket-gap')).toEqual(['blanket-F5-F6'])
    // half the window's height along the skin: 510 mm of waterline is a little more of girth
    expect(it.outside.find((t) => t.kind === 'sheet')!.distance).toBeGreaterThan(0.255)
  })

  it('at a fastener: that fastener first, at no distance, with every part of its stack', () => {
    for (const id of ['hoop-F3', 'seam-2-right', 'joint-F1-inner', 'rim-RW3', 'base-left']) {
      const row = six.rows.find((r) => r.id === id)!
      const i = Math.floor(row.station.length / 3)
      const side = row.girth[i] > 0 ? 'right' : 'left'
      const it = found(`${side} ${row.station[i] * 1000} G ${Math.abs(row.girth[i]) * 1000}`)
      const first = it.through.find((t) => t.kind === 'fastener')!
      expect([first.id, first.distance < 1e-9]).toEqual([fastenerId(row, i), true])
      const stack = row.stacks[row.stack[i]]
      const there = [...it.outside, ...it.through, ...it.inside].filter((t) => t.distance < 1e-9).map((t) => t.id)
      for (const part of stack.parts.filter((p) => six.parts.some((made) => made.id === p))) expect(there).toContain(part)
    }
  })

  it('lists fasteners within a hand, nearest first, and their distances are true', () => {
    const it = found('R 6043 WL 1160').through.filter((t) => t.kind === 'fastener')
    expect(it.length).toBeGreaterThan(3)
    expect(it.map((t) => t.distance)).toEqual([...it.map((t) => t.distance)].sort((a, b) => a - b))
    expect(it.at(-1)!.distance).toBeLessThanOrEqual(0.05)
    // the hoop's row stands 7 mm aft of its web at 6050, so 14 mm aft of here: nothing of it is nearer
    const hoop = it.filter((t) => t.id.startsWith('hoop-F6/'))
    expect(Math.min(...hoop.map((t) => t.distance))).toBeGreaterThanOrEqual(0.014 - 1e-9)
  })

  it('on a hoop frame: its flange against the skin, its own part inside', () => {
    const it = found('C 4830 WL 900')
    expect(ids(it.through, 'frame')).toEqual(['frame-F4'])
    expect(ids(it.inside, 'frame')).toEqual(['frame-F4'])
    expect(ids(it.inside, 'blanket')).toEqual([])
    expect(it.place.frames[0]).toMatchObject({ id: 'F4', lies: 'here' })
  })

  it('does not find a frame where an opening has cut it away', () => {
    const cut = found('R 4220 WL 1160')
    expect([...ids(cut.through, 'frame'), ...ids(cut.inside, 'frame')]).toEqual([])
    expect(ids(found('R 4220 WL 500').inside, 'frame')).toEqual(['frame-F3'])
  })

  it('in a lap: both sheets, the outer first, and the stringer behind them', () => {
    const it = found('R 4500 G 1415')
    expect(ids(it.outside, 'sheet')).toEqual(['strake-shoulder-left', 'strake-side-left'])
    expect(ids(it.outside, 'lap')).toEqual(['seam-2-left'])
    expect(ids(it.through, 'stringer')).toEqual(['stringer-seam-2-left-F3-F4'])
  })

  it('in a quiet bay: one sheet, the lining, the blanket, and the nearest of what is not there', () => {
    const it = found('C 6200 WL 500')
    expect(ids(it.outside, 'sheet')).toEqual(['strake-side-right'])
    expect(it.through).toEqual([])
    expect(ids(it.inside, 'lining')).toEqual([expect.stringMatching(/^lining-band-2-right-F\d-F7$/)])
    expect(ids(it.inside, 'blanket')).toEqual(['blanket-F6-F7'])
    expect(it.outside.some((t) => t.kind === 'lap') && it.outside.some((t) => t.kind === 'opening')).toBe(true)
  })
})

describe('a place the coach does not have is refused in a sentence', () => {
  const bad: readonly (readonly [string, string])[] = [
    ['R 1500 WL 1160', 'STA 1500 is ahead of the nose, whose tip stands at STA 1896.4'],
    ['R 9000 WL 1160', 'behind the tail, whose tip stands at STA 7763.6'],
    ['R T 1200 WL 1160', 'STA 7860 is behind the tail'],
    ['R 5745 WL 2500', 'above the crown at WL 2030'],
    ['R 5745 WL -900', 'under the toe at WL -204'],
    ['R 5745 G 4000', 'past the edge of the sheet'],
    ['R 5745 g 4000', 'past the edge of the lining'],
    ['R 5745 G -20', 'it has no minus'],
    ['roof 4000 BL 1500', 'outside the coach'],
    ['4000 WL 300', 'says no side'],
    ['roof 4000 WL 300', 'is on both sides'],
    ['R 5745 WL 1160 G 1700', 'mm apart on this coach'],
  ]
  for (const [address, sentence] of bad) it(address, () => expect(says(address)).toContain(sentence))
})
