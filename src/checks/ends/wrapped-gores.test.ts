/** What the checks say of an end whose gores are bent over their ribs. */
import { describe, expect, it } from 'vitest'
import { exampleText } from '../../../tests/examples.js'
import { readDefinition } from '../../definition/read-definition.js'
import { setInText } from '../../definition/set-in-text.js'
import { derive } from '../../derive/index.js'
import type { Check } from '../../derive/nouns.js'
import { endsGroundOf } from './ground.js'
import { wrappedGores } from './wrapped-gores.js'

function groundOf() {
  const { path, text, load } = exampleText('sedge-6')
  const wrapped = setInText(text, ['ends', 'make'], 'wrapped')
  const { definition, faults } = readDefinition(path, wrapped, load)
  if (!definition) throw new Error(faults.map((f) => f.says).join('\n'))
  return endsGroundOf(derive(definition))
}
const ground = groundOf()
const checks = wrappedGores(ground)
const byId = (id: string): Check | undefined => checks.find((c) => c.id === id)
const facts = ground.derived.ends.wrapped ?? []

describe('wrapped gores', () => {
  it('of the demonstration stand deeper inside the loft than the definition allows, by what the deepest gore says', () => {
    const deepest = Math.max(...facts.map((g) => g.inside?.depth ?? 0))
    expect(byId('wrapped.inside')).toMatchObject({
      verdict: 'fail',
      demand: deepest,
      capacity: 0.006,
      concerns: ['nose-gore-4', 'tail-gore-4'],
    })
    // with half a metre allowed there is nothing to say against it
    const easy = wrappedGores({
      ...ground,
      derived: { ...ground.derived, definition: { ...ground.definition, ends: { ...ground.definition.ends, within: 0.5 } } },
    })
    expect(easy.find((c) => c.id === 'wrapped.inside')?.verdict).toBe('pass')
  })

  it('bend tighter than the radius they spring back from, and meet at angles no lap is dressed to', () => {
    expect(byId('wrapped.bend')).toMatchObject({ verdict: 'caution', demand: facts[0].elastic.value })
    for (const id of ['wrapped.kink.seam', 'wrapped.kink.joint']) expect(byId(id)?.verdict).toBe('caution')
    expect(byId('wrapped.kink.seam')?.demand).toBe(Math.max(...facts.slice(0, 4).map((g) => g.kinks.left?.angle ?? 0)))
  })

  it('that cannot be bent fail with the place and the least warp', () => {
    const refused = facts.map((g) =>
      g.gore === 2 ? { ...g, refused: 'No line at WL 900 mm; the least warp there is 3.1°.', bend: null, inside: null } : g,
    )
    const found = wrappedGores({ ...ground, derived: { ...ground.derived, ends: { ...ground.derived.ends, wrapped: refused } } })
    expect(found.find((c) => c.id === 'wrapped.gore-2')).toMatchObject({
      verdict: 'fail',
      says: 'Gore 2 cannot be bent from flat sheet over its ribs. No line at WL 900 mm; the least warp there is 3.1°.',
    })
  })

  it('are not spoken of where gores are formed', () => {
    const { wrapped: _, ...ends } = ground.derived.ends
    expect(wrappedGores({ ...ground, derived: { ...ground.derived, ends } })).toEqual([])
  })
})
