import { describe, expect, it } from 'vitest'
import { readExample } from '../../../tests/examples.js'
import type { Definition } from '../../definition/types.js'
import type { FloorOpeningDefinition } from '../../definition/under-types.js'
import type { Check } from '../../derive/nouns.js'
import { design } from '../index.js'

const sedge6 = readExample('sedge-6')

/** The check of an opening stood elsewhere. */
function moved(id: string, to: Partial<FloorOpeningDefinition>): Check {
  const floor = sedge6.floor
  const openings = floor?.openings.map((o) => (o.id === id ? { ...o, ...to } : o)) ?? []
  return check({ ...sedge6, floor: floor && { ...floor, openings } }, `floor.opening.${id}`)
}
function check(definition: Definition, id: string): Check {
  const found = design(definition).checks.find((c) => c.id === id)
  if (!found) throw new Error(`no check ${id}`)
  return found
}

describe('openings of the floor', () => {
  it('of Sedge 6 are clear as supplied', () => {
    const all = design(sedge6).checks.filter((c) => c.id.startsWith('floor.opening'))
    expect(all).toHaveLength(12)
    expect(all.filter((c) => c.verdict !== 'pass')).toEqual([])
  })
  // the demonstration's traps
  it('a vanity drain at STA 6700 reaches into cross-member 6660', () => {
    const c = moved('FO3', { station: 6.7 })
    expect(c.verdict).toBe('fail')
    expect(c.says).toMatch(/reaches 1\.5 mm into the flange of the cross-member at STA 6660/)
  })
  it('a galley drain under the sink at 4350 is inside the wheel box', () => {
    const c = moved('FO4', { station: 4.35 })
    expect(c.verdict).toBe('fail')
    expect(c.says).toMatch(/wheel box WB-left/)
  })
  it.each(['FO3', 'FO5'])('%s at y -700 would hit the rail', (id) => {
    const c = moved(id, { y: -0.7 })
    expect(c.verdict).toBe('fail')
    expect(c.says).toMatch(/main rail, left/)
  })
  it('offers a place that passes', () => {
    const c = moved('FO3', { station: 6.7 })
    const [, by, way] = /Move it ([\d.]+) mm (forward|aft|to the right|to the left)/.exec(c.mend ?? '') ?? []
    const d = (Number(by) / 1000) * (way === 'aft' || way === 'to the right' ? 1 : -1)
    const along = way === 'aft' || way === 'forward'
    expect(moved('FO3', along ? { station: 6.7 + d } : { station: 6.7, y: -0.64 + d }).verdict).toBe('pass')
  })
})

describe('the cutter', () => {
  it('cannot cut a corner sharper than itself', () => {
    const blunt = { ...sedge6, floor: sedge6.floor && { ...sedge6.floor, cutter: 0.025 } }
    expect(check(sedge6, 'floor.cutter').verdict).toBe('pass')
    expect(check(blunt, 'floor.cutter').verdict).toBe('fail')
  })
})
