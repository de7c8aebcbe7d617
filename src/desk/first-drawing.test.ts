import { describe, expect, it } from 'vitest'
import { exampleFiles } from '../../tests/examples.js'
import { deskCoach } from './desk-coach.js'
import { asElevation } from './drawn-ahead.js'
import { firstDrawing } from './first-drawing.js'

describe('the drawing a coach is opened with', () => {
  it('is the one its own worker makes, to a tenth of a millimetre, over a road of plain text', () => {
    const files = exampleFiles('sedge-4')
    const first = firstDrawing(files)
    const own = deskCoach(files)
    if (!first || 'faults' in own) throw new Error('Sedge 4 does not read')
    const sent = JSON.parse(JSON.stringify(first)) as typeof first
    expect(sent.state).toEqual(own.state())
    const { rivets, ...rest } = asElevation(sent)
    const { rivets: want, ...lines } = own.elevation('left')
    expect(rest).toEqual(lines)
    expect(rivets.length).toBe(want.length)
    expect(rivets.every((at, i) => Math.abs(at - want[i]) < 1e-4)).toBe(true)
  })

  it('is none of a coach that does not read', () => {
    const files = exampleFiles('sedge-4')
    expect(firstDrawing({ ...files, files: { ...files.files, [files.path]: 'schema: 1\n' } })).toBe(null)
  })
})
