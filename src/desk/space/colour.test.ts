import { describe, expect, it } from 'vitest'
import { type ColourBy, colouring } from './colour.js'

const part = (material: string | null, mass: number | null, margin: number | null) => ({ material, mass, margin })
const parts = [
  part('5052-H34', 0.05, 0.02),
  part('5052-O', 5, 0.5),
  part('5052-H34', 0.5, null),
  part(null, null, 3),
  part('5052-O', 50, -0.4),
]
const values = (by: ColourBy) => colouring(parts, by, 'metric', 0.045).values

describe('what a picture is coloured by', () => {
  it('mass runs from the lightest to the heaviest, in equal ratios, and its figures are those of the scale', () => {
    const [least, five, half, bought, most] = values('mass')
    expect([least, most, bought]).toEqual([0, 1, null])
    expect(half).toBeCloseTo(1 / 3, 12)
    expect(five).toBeCloseTo(2 / 3, 12)
    const { legend } = colouring(parts, 'mass', 'metric', 0)
    expect(legend?.says).toBe('Mass of a part, kg')
    expect(legend?.marks.map(({ at, says }) => [at, says])).toEqual([
      [0, '0.05'],
      [0.25, '0.28'],
      [0.5, '1.6'],
      [0.75, '8.9'],
      [1, '50.0'],
    ])
    expect(colouring(parts, 'mass', 'inch', 0).legend?.marks.at(-1)?.says).toBe('110.2')
  })
  it('margins run from plenty to none, a failure as full as none', () => {
    expect(values('margin')).toEqual([0.98, 0.5, null, 0, 1])
  })
  it('materials are numbered by their mass, and summed', () => {
    expect(values('material')).toEqual([1, 0, 1, null, 0])
    expect(colouring(parts, 'material', 'metric', 0).legend?.kinds).toEqual(['5052-O, 55.0 kg', '5052-H34, 0.6 kg'])
  })
  it('distances have their scale in the unit of the screen', () => {
    const says = (units: 'metric' | 'inch') => colouring(parts, 'distance', units, 0.045).legend?.marks.map((mark) => mark.says)
    expect(says('metric')).toEqual(['0', '11', '23', '34', '45'])
    expect(says('inch')).toEqual(['0.00', '0.44', '0.89', '1.33', '1.77'])
  })
  it('has nothing to say of a plain picture, nor of one without parts', () => {
    expect(colouring(parts, 'plain', 'metric', 0).legend).toBeNull()
    expect(colouring([], 'mass', 'metric', 0).legend).toBeNull()
  })
})
