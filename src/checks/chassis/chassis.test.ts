import { describe, expect, it } from 'vitest'
import { readExample } from '../../../tests/examples.js'
import type { Definition } from '../../definition/types.js'
import type { Check } from '../../derive/nouns.js'
import { design } from '../index.js'

const sedge6 = readExample('sedge-6')
const check = (definition: Definition, id: string): Check => {
  const found = design(definition).checks.find((c) => c.id === id)
  if (!found) throw new Error(`no check ${id}`)
  return found
}
const gear = (more: Partial<NonNullable<Definition['gear']>>): Definition => ({
  ...sedge6,
  gear: sedge6.gear && { ...sedge6.gear, ...more },
})

describe('chassis and axle group', () => {
  it.each(['sedge-4', 'sedge-6', 'sedge-8'])('of %s fail nothing as supplied, and say that strength is not checked', (name) => {
    const { checks } = design(readExample(name))
    const own = checks.filter((c) => /^(wheel|ground|axle|bay|chassis|floor)\./.test(c.id))
    expect(own.filter((c) => c.verdict === 'fail').map((c) => c.says)).toEqual([])
    expect(own.find((c) => c.id === 'chassis.strength')?.verdict).toBe('not-checked')
  })
  it('the axles 100 mm forward: the tube at 5230 clashes, and the nearest clear place is said', () => {
    const forward = gear({ spindles: [4.59, 5.38] })
    expect(check(forward, 'axle.window')).toMatchObject({ verdict: 'fail' })
    expect(check(forward, 'axle.window').mend).toMatch(/mean axle at STA 5075/)
    expect(check(forward, 'axle.5380').says).toMatch(/tube at STA 5230, 110 mm from the cross-member at STA 5120/)
  })
  it('a tyre that is too large for its box fails at its ends and top', () => {
    const large = gear({ wheel: { radius: 0.38, width: 0.205, y: 1.005 } })
    expect(['wheel.top', 'wheel.ends', 'wheel.opening'].map((id) => check(large, id).verdict)).toEqual(['fail', 'fail', 'fail'])
  })
  it('a tank in the way of a tube, or through a cross-member, fails', () => {
    const bays = sedge6.chassis?.bays.map((b) => (b.id === 'TB3' ? { ...b, fore: 5.25 } : b)) ?? []
    const wrong = check({ ...sedge6, chassis: sedge6.chassis && { ...sedge6.chassis, bays } }, 'bay.TB3')
    expect(wrong.verdict).toBe('fail')
    expect(wrong.says).toMatch(/mm into it/)
  })
  it('an arm through the skin fails', () => {
    const { chassis } = sedge6
    const deep = { ...sedge6, chassis: chassis?.outrigger ? { ...chassis, outrigger: { ...chassis.outrigger, tip: 0.14 } } : chassis }
    expect(check(deep, 'chassis.outriggers.skin').verdict).toBe('fail')
  })
})
