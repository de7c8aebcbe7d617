import { describe, expect, it } from 'vitest'
import { count } from '../../../tests/counts.js'
import { readExample } from '../../../tests/examples.js'
import { derive } from '../index.js'
import type { GearDerived } from '../under-nouns.js'

const gearOf = (name: string, by = 0): GearDerived => {
  const definition = readExample(name)
  const { gear } = derive({
    ...definition,
    gear: definition.gear && { ...definition.gear, spindles: definition.gear.spindles.map((s) => s + by) },
  }).under
  if (!gear) throw new Error('no gear')
  return gear
}
const mm = (m: number): number => Math.round(m * 1e4) / 10

describe('the axle group of Sedge 6', () => {
  const gear = gearOf('sedge-6')
  // the family table: spindles 4690 and 5480, tubes 4540 and 5330, spread 790, departure 8.1 deg
  it('has its tubes an arm ahead of the spindles', () => {
    expect(gear.tubes.map((t) => mm(t.station))).toEqual([4540, 5330])
    expect([mm(gear.mean), mm(gear.spread)]).toEqual([5085, 790])
    expect(gear.tubes.map((t) => mm(t.nearest?.room ?? 0))).toEqual([290, 210])
  })
  it('has boxes from 4305 to 5865 and 850 to 1160', () => {
    for (const b of gear.boxes) expect([...b.x, ...b.y].map(mm)).toEqual([4305, 5865, 850, 1160])
  })
  it('departs at 8.1 deg', () => expect(((gear.departure?.value ?? 0) * 180) / Math.PI).toBeCloseTo(8.1, 1))
  it('hangs its arms where torque and load balance, by hand: 4641 N at 150 mm turn them 15.8 of 22.5 deg', () => {
    const angle = gear.loadedAngle ?? Number.NaN
    // between the measured points 656 Nm at 15 deg and 874 Nm at 20 deg, as a straight line
    const turn = 22.5 - (angle * 180) / Math.PI
    expect(656 + ((874 - 656) * (turn - 15)) / 5).toBeCloseTo(4641 * 0.15 * Math.cos(angle), -1)
  })
  it('stands between its ground at gross weight and with its wheels hanging', () => {
    for (const name of ['sedge-4', 'sedge-6', 'sedge-8']) {
      const { sits, ground } = gearOf(name)
      expect(ground).toBeGreaterThan(sits?.free ?? Number.NaN)
      expect(ground).toBeLessThan(sits?.gross.value ?? Number.NaN)
    }
  })
  it('rises by the arm from gross weight to full bump, by hand', () => {
    const by = 150 * (Math.sin(gear.loadedAngle ?? Number.NaN) + Math.sin((22 * Math.PI) / 180))
    expect((gear.bumpTravel ?? 0) * 1000).toBeCloseTo(by, 9)
  })
  it('may stand from 5075 to 5115: 200 mm from cross-members 5120 and 5560', () => {
    expect(gear.window.map((w) => [mm(w.from), mm(w.to)])).toContainEqual([5075, 5115])
  })
})

describe('scene: the axles 100 mm forward', () => {
  const gear = gearOf('sedge-6', -0.1)
  it('put a tube at 5230, 110 mm from cross-member 5120', () => {
    expect(mm(gear.tubes[1].station)).toBe(5230)
    expect(gear.tubes[1].nearest && mm(gear.tubes[1].nearest.station)).toBe(5120)
    expect(gear.window.some((w) => gear.mean >= w.from && gear.mean <= w.to)).toBe(false)
    // 200 are asked for and 110 are there
    const member = gear.neighbours.find((n) => n.what === 'cross-member 5120')
    expect(member?.by && mm(member.by)).toBe(90)
  })
})

describe('what a neighbour costs', () => {
  it('is what the window would be if it were not there', () => {
    const definition = readExample('sedge-6')
    const { chassis, gear } = definition
    const { neighbours } = gearOf('sedge-6')
    const members = neighbours.filter((n) => n.what.startsWith('cross-member'))
    expect(members.length).toBeGreaterThan(0)
    for (const n of members) {
      const crossMembers = chassis?.crossMembers.filter((c) => `cross-member ${mm(c)}` !== n.what) ?? []
      const without = derive({ ...definition, chassis: chassis && { ...chassis, crossMembers } }).under.gear
      const mean = without?.mean ?? Number.NaN
      const stretch = without?.window.find((w) => w.from <= mean && w.to >= mean)
      expect([stretch?.from, stretch?.to]).toEqual([n.from, n.to])
      expect(n.gains).toBeGreaterThan(0)
    }
    expect(gear?.spindles).toHaveLength(2)
  })
})

describe('the window', () => {
  it('is where every tube is far enough from every cross-member, and no farther', () => {
    for (const name of ['sedge-4', 'sedge-6', 'sedge-8']) {
      const definition = readExample(name)
      const at = gearOf(name)
      const members = definition.chassis?.crossMembers ?? []
      for (let n = 0; n < count(60); n++) {
        const shift = -0.9 + (1.8 * n) / count(60) + 0.00037
        const inside = at.window.some((w) => at.mean + shift > w.from && at.mean + shift < w.to)
        const clear = at.tubes.every((t) => members.every((c) => Math.abs(c - t.station - shift) >= definition.rules.tubeToCrossMember))
        // the window also looks at bays and frames: what it lets through must be clear
        if (inside) expect(clear, `${name} ${shift}`).toBe(true)
      }
    }
  })
})
