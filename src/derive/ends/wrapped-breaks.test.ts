/** Wrapped ends of coaches whose section and profile change curvature a hair apart: seeds found by chance. */
import { describe, expect, it } from 'vitest'
import { randomCoach } from '../../../tests/random-coach.js'
import { readDefinition } from '../../definition/read-definition.js'
import { derive } from '../index.js'

describe('a branch that runs back by micrometres beside a break', () => {
  it.each([525, 879, 4272, 4833])('leaves a ruling through every place of the edges (random coach %i)', (seed) => {
    const { definition } = readDefinition('trial.yaml', randomCoach(seed).text, () => null)
    expect(definition?.ends.make).toBe('wrapped')
    const gores = definition ? (derive(definition).ends.wrapped ?? []) : []
    const kinks = gores.flatMap(({ kinks }) => [kinks.right, kinks.left])
    expect(kinks.length).toBeGreaterThan(0)
    for (const kink of kinks) if (kink) expect(Number.isFinite(kink.angle)).toBe(true)
  })
})
