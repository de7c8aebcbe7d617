/** Addresses on nose and tail: read, found, said and read back, and what is there. */
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { count } from '../../../tests/counts.js'
import { readDefinition } from '../../definition/read-definition.js'
import { fastenerId, placeOf } from '../../derive/holes.js'
import { type Derived, derive } from '../../derive/index.js'
import { placeWords } from '../../documents/drawing/words.js'
import { type AtPlace, at } from './at.js'
import { readEndAddress } from './end-address.js'

const SEAMS = 'seams: [13 deg, 35 deg, 60 deg]'
function coach(): Derived {
  const text = (path: string): string => readFileSync(path, 'utf8').replace(/seams: \[[\d., deg]+\]/, SEAMS)
  const { definition, faults } = readDefinition('examples/sedge-6.yaml', text('examples/sedge-6.yaml'), text)
  expect(faults).toEqual([])
  return derive(definition!)
}
const six = coach()
const found = (address: string): AtPlace => {
  const it = at(six, address)
  if (!it.ok) throw new Error(it.says)
  return it.found
}
const says = (address: string): string => {
  const it = at(six, address)
  return it.ok ? `found ${it.found.place.address}` : it.says
}
const tenth = (m: number): number => Math.round(m * 1e4) / 10
const ids = (things: AtPlace['outside'], kind: string, within = 0): readonly string[] =>
  things.filter((t) => t.kind === kind && t.distance <= within).map((t) => t.id)

describe('a place on an end', () => {
  it('on the mid rib of the middle gore is on the centre-line profile', () => {
    const { place } = found('nose gore 4 WL 1160')
    // by hand on the face arc of radius 3799.9 about (-2696.3, 294.6): x = sqrt(3799.9^2 - (1160 - 294.6)^2) - 2696.3
    const x = Math.sqrt(3.7999 ** 2 - (1.16 - 0.29463) ** 2) - 2.69633
    expect(place.station).toBeCloseTo(3 - x, 3)
    expect([place.side, tenth(place.waterline), place.end]).toEqual(['centre', 1160, { which: 'nose', y: 0 }])
    // down the profile: 1047.2 to the face, and its arc from 70 deg to there
    const heading = Math.acos((1.16 - 0.29463) / 3.7999)
    expect(place.girth).toBeCloseTo(1.0472 + 3.7999 * (heading - (70 * Math.PI) / 180), 3)
    expect(place.address).toMatch(/^nose gore 4, G 1500\.\d \(WL 1160\)$|^nose gore 4, G 150\d(\.\d)? \(WL 1160\)$/)
    expect(place.liningGirth).toBeNull()
  })

  it('beside it lies on the superellipse of its height', () => {
    const { place } = found('nose WL 1160 BL 200')
    const mid = found('nose gore 4 WL 1160').place
    const [y, half, reach] = [0.2, 1.1768, 3 - mid.station]
    expect(3 - place.station).toBeCloseTo(reach * (1 - (y / half) ** 2.6) ** (1 / 2.6), 4)
    expect([place.side, place.end?.y]).toEqual(['right', expect.closeTo(0.2, 9)])
    expect(place.address).toMatch(/^nose gore 4, G [\d.]+ \(WL 1160, BL 200\)$/)
    // the market says which side C is
    expect(found('nose C WL 1160 BL 200').place.side).toBe('right')
    expect(found('nose R WL 1160 BL 200').place.side).toBe('left')
  })

  it('is reached by station and height as on the barrel, from either side of the joint', () => {
    const there = found('C 2300 WL 1160').place
    expect([there.end?.which, tenth(there.station), tenth(there.waterline), there.side]).toEqual(['nose', 2300, 1160, 'right'])
    expect(found('R T 700 WL 1160').place).toMatchObject({ side: 'left', end: { which: 'tail' } })
    expect(found(there.address).place.station).toBeCloseTo(2.3, 3)
  })

  it('at the joint is where the barrel has it', () => {
    const barrel = found('C 3000 WL 1160').place
    const end = found('nose C STA 3000 WL 1160').place
    expect([tenth(end.girth), tenth(end.y), tenth(end.station)]).toEqual([tenth(barrel.girth), tenth(barrel.y), 3000])
  })

  it('is read back from what is printed', () => {
    const rows = six.endSections.rows
    for (let n = 0; n < count(40); n++) {
      const row = rows[(n * 7) % rows.length]
      const i = (n * 13) % row.station.length
      // a toe row stands on the flange beyond the toe, where no address of the skin leads
      if (row.kind === 'toe' || !row.end) continue
      const [y, z] = [row.end.y[i], row.waterline[i]]
      const address = `${row.end.which} STA ${row.station[i] * 1000} WL ${z * 1000} BL ${y * 1000}`
      const there = found(address).place
      const back = found(there.address).place
      expect(Math.hypot(back.station - row.station[i], (back.end?.y ?? 9) - y, back.waterline - z)).toBeLessThan(5e-4)
      expect(back.address.split(',')[0]).toBe(there.address.split(',')[0])
    }
  })
})

describe('a place as the documents print it, to a millimetre', () => {
  it('is read back to within what that leaves open', () => {
    for (const opening of six.endSections.openings) {
      const there = found(placeWords(opening.place, 'us')).place
      expect(Math.abs(there.station - opening.place.station)).toBeLessThan(1e-3)
      expect(Math.abs(there.waterline - opening.place.waterline)).toBeLessThan(1e-3)
    }
    const row = six.endSections.rows.find((r) => r.id === 'tail-seam-2')!
    for (let i = 0; i < row.station.length; i += 9) expect(says(placeWords(placeOf(row, i), 'us'))).toMatch(/^found tail gore/)
  })
})

describe('what is there', () => {
  it('at a fastener of a seam: that fastener first, both gores with the upper one first, and the rib', () => {
    const row = six.endSections.rows.find((r) => r.id === 'nose-seam-2')!
    const i = 30
    const it = found(`nose G ${Math.abs(row.girth[i]) * 1000} BL ${row.end!.y[i] * 1000}`)
    const first = it.through.find((t) => t.kind === 'fastener')!
    expect([first.id, first.distance < 1e-6]).toEqual([fastenerId(row, i), true])
    // the gore nearer the centre line lies over its neighbour
    expect(ids(it.outside, 'sheet')).toEqual(['nose-gore-3', 'nose-gore-2'])
    expect(ids(it.outside, 'lap')).toEqual(['nose-seam-2'])
    expect(ids(it.through, 'end-rib')).toEqual(['nose-seam-rib-2'])
    expect(ids(it.inside, 'end-rib')).toEqual(['nose-seam-rib-2'])
  })

  it('in the middle of a window: the cut, no rib behind it, its rim ring not far', () => {
    const it = found('nose gore 4 WL 1152')
    expect(ids(it.outside, 'opening')).toEqual(['NW1'])
    expect(ids(it.through, 'opening')).toEqual(['NW1'])
    expect([...ids(it.through, 'end-rib'), ...ids(it.through, 'fastener', 1)]).toEqual([])
    // the skin begins at head or sill, half the window's height away
    expect(it.outside.find((t) => t.kind === 'sheet')!.distance).toBeCloseTo(0.25, 3)
  })

  it('at the edge of the cap: cap over gore over ring; above it the cap alone', () => {
    const edge = found('nose gore 4 G 450')
    expect(ids(edge.outside, 'sheet')).toEqual(['nose-cap', 'nose-gore-4'])
    expect(ids(edge.through, 'header-ring')).toEqual(['nose-header-ring'])
    const above = found('nose gore 4 G 300')
    expect(ids(above.outside, 'sheet')).toEqual(['nose-cap'])
    expect(above.through).toEqual([])
  })

  it('behind the skin: the lining panel between the ribs, the crown panel inside the ring, none in a window', () => {
    // fourteen panels from the right joint: gore 4 holds the seventh and, left of its mid rib, the eighth
    expect(ids(found('nose gore 4 G 300').inside, 'end-lining')).toEqual(['nose-lining-crown'])
    expect(ids(found('nose WL 500 BL 60').inside, 'end-lining')).toEqual(['nose-lining-7'])
    expect(ids(found('nose WL 500 BL -60').inside, 'end-lining')).toEqual(['nose-lining-8'])
    expect(ids(found('nose C STA 2900 WL 500').inside, 'end-lining')).toEqual(['nose-lining-1'])
    expect(ids(found('nose gore 4 WL 1152').inside, 'end-lining')).toEqual([])
  })

  it("in the joint's lap: the barrel's sheet over the end's skin, and the joint frame", () => {
    const it = found('nose C STA 2990 WL 1160')
    expect(ids(it.outside, 'sheet')).toEqual(['strake-side-right', 'nose-gore-1'])
    expect(ids(it.through, 'joint-frame')).toEqual(['frame-F1'])
    // the barrel's own answer there names the same sheets
    expect(ids(found('C 2990 WL 1160').outside, 'sheet')).toEqual(['strake-side-right', 'nose-gore-1'])
  })
})

describe('a place an end does not have, or has twice, is refused in a sentence', () => {
  const bad: readonly (readonly [string, string])[] = [
    ['nose STA 1960 BL 0', 'meets the skin twice'],
    ['STA 1960 BL 0', 'meets the skin twice'],
    ['nose gore 9 WL 1160', 'gores 1 to 7'],
    ['nose gore WL 1160', 'gore without its number'],
    ['nose gore 4', 'How high on the nose?'],
    ['nose WL 1160', 'Where across the nose?'],
    ['nose', 'How high on the nose?'],
    ['nose STA 2300 WL 1160', 'on both sides of the nose'],
    ['nose gore 4 WL 2500', 'above the crown at WL 2030'],
    ['nose gore 4 WL -900', 'under the toe of the nose at WL -20'],
    ['tail gore 2 G 5000', 'past the toe of the tail'],
    ['nose WL 1160 BL 1500', 'outside the nose, which is 1176.8 from the centre plane at WL 1160'],
    ['nose gore 2 WL 1160 BL 100', 'is on gore 4 of the nose, not on gore 2'],
    ['nose gore 3 G 1240 WL 900', 'is at WL'],
    ['tail STA 1500 WL 1160', 'on the barrel, not on the tail'],
    ['nose gore 4 g 1200', 'g counts on the lining of the barrel'],
    ['nose gore 4 WL twelve', 'WL should be a length'],
    ['C 1899 WL 1900', 'reaches'],
  ]
  for (const [address, sentence] of bad) it(address, () => expect(says(address)).toContain(sentence))

  it('never throws, whatever is typed', () => {
    for (const text of [
      'nose nose',
      'nose gore 99999',
      'tail G',
      'nose gore 0 G 0',
      'nose G -5 BL 0',
      'nose gore 1 G 0',
      'tail WL 2030 BL 0',
      'nose 💥',
    ])
      expect(() => at(six, text)).not.toThrow()
    expect(readEndAddress('R 5745 WL 1160')).toBeNull()
  })
})
