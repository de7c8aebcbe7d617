import { describe, expect, it } from 'vitest'
import { margin } from '../ripple/words.js'
import { distanceCheck, mm } from './check.js'

const told = { id: 'a', says: 'a', source: 'a' }

describe('a distance on its limit', () => {
  it('reads as the limit does, whichever road its last bits came by', () => {
    const short = 0.00635 - 1e-15
    expect([mm(short), mm(0.00635), mm(-short), mm(0.006349)]).toEqual(['6.4', '6.4', '-6.4', '6.3'])
    expect(distanceCheck(told, 0.00635, short).verdict).toBe('pass')
    expect(distanceCheck(told, 0.00635, 0.006349).verdict).toBe('fail')
  })
  it('has a margin of nothing, on neither side', () => {
    expect([-1e-12, 0, 1e-12, 0.0004, -0.0006, 0.0006].map(margin)).toEqual(['0 %', '0 %', '0 %', '0 %', '-0.1 %', '+0.1 %'])
  })
})
