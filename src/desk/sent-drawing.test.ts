import { describe, expect, it } from 'vitest'
import { exampleFiles } from '../../tests/examples.js'
import { deskCoach } from './desk-coach.js'
import type { DeskCoach } from './desk-coach-nouns.js'
import type { Look } from './nouns.js'
import { drawingReceiver, drawingSender } from './sent-drawing.js'

describe('a drawing sent to the screen', () => {
  const held = deskCoach(exampleFiles('sedge-6')) as DeskCoach
  const [send, receive] = [drawingSender(), drawingReceiver()]
  // as a message between threads copies it
  const over = (look: Look) => {
    const sent = send(held.elevation(look), true)
    return { sent, shown: receive(structuredClone(sent)) }
  }

  it('comes out as it went in, whatever was sent before it', () => {
    const move = (station: number) => held.preview({ kind: 'move', id: 'axle-1', station, waterline: null })
    const looks: readonly Look[] = ['left', 'left', 'plan', 'nose', 'left', 'left']
    looks.forEach((look, i) => {
      move(4.6 + i / 100)
      const { shown } = over(look)
      expect(shown).toEqual(structuredClone(held.elevation(look)))
    })
    held.abandon()
    expect(over('left').shown).toEqual(structuredClone(held.elevation('left')))
  })

  it('names in a drag what has not moved', () => {
    held.preview({ kind: 'move', id: 'axle-1', station: 4.7, waterline: null })
    over('left')
    held.preview({ kind: 'move', id: 'axle-1', station: 4.71, waterline: null })
    const { sent } = over('left')
    const named = sent.drawn.filter((each) => typeof each === 'number').length
    expect(named).toBeGreaterThan(sent.drawn.length / 2)
    held.abandon()
  })

  it('is not guessed at where one was left out', () => {
    const [sender, receiver] = [drawingSender(), drawingReceiver()]
    sender(held.elevation('left'), false)
    expect(() => receiver(sender(held.elevation('left'), true))).toThrow('drawing 2 came after drawing 0')
    // and all is well again with the next that comes whole
    expect(receiver(sender(held.elevation('left'), false)).drawn).toEqual(held.elevation('left').drawn)
    expect(receiver(sender(held.elevation('left'), true)).drawn).toEqual(held.elevation('left').drawn)
  })
})
