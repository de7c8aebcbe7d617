import { describe, expect, it } from 'vitest'
import { exampleFiles } from '../../tests/examples.js'
import { deskCoach } from './desk-coach.js'
import type { DeskCoach } from './desk-coach-nouns.js'

function opened(): DeskCoach {
  const held = deskCoach(exampleFiles('sedge-6'))
  if ('faults' in held) throw new Error(held.faults.map((each) => each.says).join('\n'))
  return held
}

describe('a hand nobody sees', () => {
  it('comes to an end, and leaves the coach as it was', () => {
    const held = opened()
    const before = { state: held.state(), design: held.design(), drawn: held.elevation('left') }
    const step = held.practice('left')
    let steps = 1
    while (step?.()) steps++
    expect(steps).toBe(60)
    expect(step?.()).toBe(false)
    expect(held.state()).toEqual(before.state)
    expect(held.design()).toBe(before.design)
    expect(held.inHand('left')).toBeNull()
    expect(held.elevation('left')).toEqual(before.drawn)
  })

  it('is not begun while a thing is in a hand, nor in the middle of a word', () => {
    const held = opened()
    held.preview({ kind: 'move', id: 'RW3', station: 3.2, waterline: null })
    expect(held.practice('left')).toBeNull()
    held.abandon()
    expect(held.practice('left')).not.toBeNull()
    held.edit({ kind: 'text', text: held.state().text.replace('openings:', 'openings') })
    expect(held.practice('left')).toBeNull()
  })
})
