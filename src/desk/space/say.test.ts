import { describe, expect, it } from 'vitest'
import { sayCut, sayPart, sayShown } from './say.js'

describe('the picture in words', () => {
  it('says what a part is, in the unit of the screen', () => {
    const part = { says: 'crown strake', material: '5052-H34', mass: 8.4024, margin: 0.04 }
    expect(sayPart(part, 'metric')).toBe('crown strake, 5052-H34, 8.40 kg, least margin +4.0 %')
    expect(sayPart(part, 'inch')).toBe('crown strake, 5052-H34, 18.52 lb, least margin +4.0 %')
    expect(sayPart({ ...part, mass: 0.074 }, 'metric')).toContain('0.074 kg')
    expect(sayPart({ says: 'TB1, fresh water', material: null, mass: null, margin: null }, 'metric')).toBe('TB1, fresh water')
  })
  it('says where a cut stands, as a tape reads it', () => {
    expect(sayCut('across', 4.21, 'metric')).toBe('STA 4210 mm')
    expect(sayCut('along', -0.3, 'metric')).toBe('BL -300 mm')
    expect(sayCut('level', 0.508, 'inch')).toBe('WL 20.00 in')
  })
  it('says what is shown, and leaves out what is not', () => {
    const parts = [{ layer: 'skin' }, { layer: 'skin' }, { layer: 'lining' }] as const
    const shown = { layers: new Set(['skin', 'rivets'] as const), parts, rivets: 8105, apart: 0, cut: null, by: 'plain' } as const
    expect(sayShown(shown, 'metric')).toBe('The coach in space: 2 parts and 8105 rivets and bolts.')
    expect(sayShown({ ...shown, layers: new Set(['lining']), apart: 0.5, cut: { way: 'level', at: 1 }, by: 'distance' }, 'metric')).toBe(
      'The coach in space: 1 part, drawn apart 50 %, cut level at WL 1000 mm, coloured by distance from the mould line.',
    )
  })
})
