/** A finding is followed from one design to the next by its id, so no two checks of a design may share one. */
import { describe, expect, it } from 'vitest'
import { count } from '../../tests/counts.js'
import { readExample } from '../../tests/examples.js'
import { randomCoach } from '../../tests/random-coach.js'
import { readDefinition } from '../definition/read-definition.js'
import type { Definition, OpeningDefinition } from '../definition/types.js'
import { design } from './index.js'

function sharedIds(definition: Definition): readonly string[] {
  const ids = design(definition).checks.map((c) => c.id)
  return ids.filter((id, i) => ids.indexOf(id) !== i)
}

describe('the ids of checks', () => {
  it.each(['sedge-4', 'sedge-6', 'sedge-8'])('are unique in %s', (name) => {
    expect(sharedIds(readExample(name))).toEqual([])
  })

  it('are unique where a frame leg is cut three times and more, on either side', () => {
    const sedge = readExample('sedge-6')
    const frame = sedge.frames.find((f) => f.id === 'F3') as Definition['frames'][number]
    const like = sedge.openings.find((o) => o.surface === 'right') as OpeningDefinition
    const hatch = (surface: 'right' | 'left', n: number): OpeningDefinition => ({
      ...like,
      id: `Z${surface[0].toUpperCase()}${n}`,
      surface,
      station: frame.station,
      waterline: 0.3 + 0.3 * n,
      width: 0.2,
      height: 0.15,
      corner: 0.03,
    })
    const hatches = (['right', 'left'] as const).flatMap((surface) => [0, 1, 2, 3].map((n) => hatch(surface, n)))
    const others = sedge.openings.filter((o) => Math.abs(o.station - frame.station) > 0.6)
    const made = { ...sedge, openings: [...others, ...hatches] }
    const twice = design(made).checks.filter((c) => c.id.startsWith('frame.F3.right.cut-twice'))
    expect(twice.map((c) => c.id)).toEqual([
      'frame.F3.right.cut-twice.ZR3.ZR2',
      'frame.F3.right.cut-twice.ZR2.ZR1',
      'frame.F3.right.cut-twice.ZR1.ZR0',
    ])
    expect(sharedIds(made)).toEqual([])
  })

  it('are unique in coaches made up at random', () => {
    let tried = 0
    for (let seed = 1; tried < count(2) && seed < 200; seed++) {
      const { mood, text } = randomCoach(seed)
      const { definition } = mood === 'sensible' ? readDefinition('random.yaml', text, () => null) : { definition: null }
      if (!definition) continue
      tried++
      expect({ seed, shared: sharedIds(definition) }).toEqual({ seed, shared: [] })
    }
    expect(tried).toBe(count(2))
  })
})
