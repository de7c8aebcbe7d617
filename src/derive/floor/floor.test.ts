import { describe, expect, it } from 'vitest'
import { readExample } from '../../../tests/examples.js'
import type { Definition } from '../../definition/types.js'
import { insideOutline, outlineArea } from '../../maths/outline.js'
import { derive } from '../index.js'
import type { FloorDerived } from '../under-nouns.js'

const floorOf = (definition: Definition): FloorDerived => {
  const { floor } = derive(definition).under
  if (!floor) throw new Error('no floor')
  return floor
}
const sedge6 = readExample('sedge-6')
const made = derive(sedge6)
const floor = floorOf(sedge6)

describe('the floor of Sedge 6', () => {
  // the demonstration's own table: 5830 x 2320, 12.79 m2, each end 2.150 m2
  it('is 5830 by 2320 and 12.79 m2', () => {
    expect([floor.length, floor.width].map((m) => Math.round(m * 1000))).toEqual([5830, 2320])
    expect(floor.area).toBeCloseTo(12.79, 2)
    expect((floor.area - 3.66 * 2.32) / 2).toBeCloseTo(2.15, 3)
  })
  it('strays from the true curve by less than a router does', () => expect(floor.stray).toBeLessThan(5e-5))
  it('is one panel, and weighs what its net area weighs', () => {
    const panel = made.parts.find((p) => p.id === 'floor-panel')
    const openings = floor.openings.reduce((sum, o) => sum + outlineArea(o.outline), 0)
    // two wheel boxes of 1560 by 310, their two inner corners rounded at 10
    const boxes = 2 * (1.56 * 0.31 - 2 * (1 - Math.PI / 4) * 0.01 ** 2)
    expect(floor.joints).toEqual([])
    expect(panel?.area).toBeCloseTo(floor.area - openings - boxes, 9)
    expect(panel?.mass.value).toBeCloseTo(10.2 * (floor.area - openings - boxes), 9)
    expect(floor.covering?.mass.value).toBeCloseTo(26.7, 1)
  })
  it('is held by 73 bolts, none of them in an opening or a wheel box', () => {
    expect(floor.bolts).toBe(73)
    for (const row of made.bolts)
      row.station.forEach((x, i) => {
        const y = row.buttock?.[i] ?? Number.NaN
        expect(insideOutline(floor.outline, x, y), `${row.id} ${x} ${y}`).toBe(true)
        for (const o of floor.openings) expect(insideOutline(o.outline, x, y), `${row.id} in ${o.id}`).toBe(false)
        for (const b of made.under.gear?.boxes ?? [])
          expect(x > b.x[0] && x < b.x[1] && Math.abs(y) > b.y[0], `${row.id} at ${x} ${y}`).toBe(false)
      })
  })
  it('gives every fastener an id of its own', () => {
    for (const row of made.bolts) {
      const ids = row.station.map((_, i) => `${row.spans[row.span[i]].from} ${row.spans[row.span[i]].to} ${row.number[i]}`)
      expect(new Set(ids).size, row.id).toBe(ids.length)
    }
  })
})

describe('clearance to the nearest cross-member flange along the coach', () => {
  // the demonstration's own list of floor openings, to 1 mm
  const STATED = { FO1: 96, FO2: 176, FO3: 58, FO4: 48, FO5: 188, FO6: 251, FO7: 101, FO8: 191, FO9: 186, FO10: 151, FO11: 151, FO12: 71 }
  it.each(Object.entries(STATED))('of %s is %d', (id, stated) => {
    const room = (floor.openings.find((o) => o.id === id)?.toFlange?.room ?? Number.NaN) * 1000
    expect(Math.abs(room - stated)).toBeLessThan(1)
  })
})

describe('a floor longer than its board', () => {
  const sedge8 = readExample('sedge-8')
  // one more bay behind the last: frames, cross-members and the tail go aft by a bay
  const bay = 0.61
  const last = sedge8.frames[sedge8.frames.length - 1]
  const longer: Definition = {
    ...sedge8,
    frames: [...sedge8.frames.slice(0, -1), { ...last, joint: null }, { ...last, id: 'F10', station: last.station + bay }],
    openings: sedge8.openings.filter((o) => o.surface !== 'tail'),
    chassis: sedge8.chassis && { ...sedge8.chassis, crossMembers: [...sedge8.chassis.crossMembers, 8.49 + bay, 8.78 + bay] },
  }
  it('is parted on a cross-member, clear of wheel boxes and openings, into boards that serve', () => {
    const parted = floorOf(longer)
    expect(Math.round(parted.length * 1000)).toBe(7660)
    expect(parted.panels).toHaveLength(2)
    const [joint] = parted.joints
    expect(joint.member).toMatch(/^cross-member-/)
    for (const p of parted.panels) expect(p.to - p.from).toBeLessThanOrEqual(7.32)
    for (const o of parted.openings) expect(Math.abs(o.station - joint.station)).toBeGreaterThan(0.05)
    const whole = derive(longer)
    for (const b of whole.under.gear?.boxes ?? []) expect(joint.station <= b.x[0] || joint.station >= b.x[1]).toBe(true)
    // nothing is lost at the joint but what the openings take
    const areas = whole.parts
      .filter((p) => p.kind === 'floor-panel')
      .reduce((sum, p) => sum + Math.abs(outlineArea(p.patterns[0].outline)), 0)
    expect(areas).toBeCloseTo(parted.area, 6)
  })
})

describe('the cut-outs of the wheel boxes', () => {
  it('follow the axle', () => {
    const { gear } = sedge6
    const moved = derive({ ...sedge6, gear: gear && { ...gear, spindles: gear.spindles.map((s) => s - 0.02) } })
    const cut = moved.parts.find((p) => p.id === 'floor-panel')?.patterns[0].cuts.find((c) => c.opening === 'WB-right')
    expect(Math.min(...(cut?.outline.map((v) => v[0]) ?? []))).toBeCloseTo(4.285 - 3, 9)
    expect(moved.under.gear?.boxes[0].x.map((m) => Math.round(m * 1000))).toEqual([4285, 5845])
  })
})
