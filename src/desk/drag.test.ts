/** Things in the hand: drawn to clean places with the reason, never to one that fails a rule; and every kind of thing that moves. */
import { beforeEach, describe, expect, it } from 'vitest'
import { exampleFiles } from '../../tests/examples.js'
import { deskCoach } from './desk-coach.js'
import type { DeskCoach } from './desk-coach-nouns.js'
import type { MoveEdit, SizeEdit } from './nouns.js'

function opened(name = 'sedge-6'): DeskCoach {
  const held = deskCoach(exampleFiles(name))
  if ('faults' in held) throw new Error(held.faults.map((each) => each.says).join('\n'))
  return held
}

const SNAP = { reach: 0.02, units: 'metric' } as const
const move = (id: string, station: number | null, waterline: number | null = null, across: number | null = null): MoveEdit => ({
  ...{ kind: 'move', id, station, waterline, across, snap: SNAP, stroke: 'one' },
})
const freely = (...to: Parameters<typeof move>): MoveEdit => {
  const { snap: _, ...edit } = move(...to)
  return edit
}
const held = opened()

/** Where RW3 and its kind are written in the text. */
const line = (id: string): string =>
  held
    .state()
    .text.split('\n')
    .find((each) => new RegExp(`(id|item): "?${id}\\b`).test(each)) ?? ''

function dragged(edit: MoveEdit | SizeEdit): readonly string[] {
  expect(held.preview(edit)).toBeNull()
  const says = held.inHand('left')?.snaps.map((each) => each.says) ?? []
  expect(held.settle()).toBeNull()
  return says
}

beforeEach(() => {
  held.settle()
  while (held.state().undo > 0) held.undo()
})

describe('a clean place', () => {
  it('is as near a frame as the rule lets the rim stand, and no nearer', () => {
    // F6 stands at 6050: half a flange of 16, the rivets 16 from the cut of 520, and their edge distance
    const before = held.design().checks.filter((each) => each.verdict === 'fail').length
    expect(dragged(move('RW3', 5.762))).toEqual([expect.stringMatching(/^rim rivets .* mm clear of frame F6: least allowed$/)])
    const room = held.design().checks.find((each) => each.id === 'opening.RW3.flange')
    expect(room?.verdict).toBe('pass')
    expect((room?.capacity ?? 0) - (room?.demand ?? 0)).toBeLessThan(1.1e-4)
    expect(held.design().checks.filter((each) => each.verdict === 'fail').length).toBe(before)
  })

  it('is between two frames, level with a neighbour, in line with what stands across', () => {
    expect(dragged(move('RW3', 5.741, 1.163))).toEqual([expect.stringMatching(/centred between frames F5 and F6/), 'level with RW1'])
    expect(line('RW3')).toMatch(/station: 5745 mm, wl: 1160 mm/)
  })

  it('is none where it would fail a rule', () => {
    // in line with the window across the coach would be in the middle of the next one on its own side
    const { openings } = held.design().definition
    const near = openings.find((each) => each.id === 'RW2')
    held.preview(move('RW3', near?.station ?? 0))
    expect(held.inHand('left')?.snaps).toEqual([])
    expect(held.inHand('left')?.says.join(' ')).toMatch(/overlap/)
    held.abandon()
    expect(held.state().undo).toBe(0)
  })

  it('is left out where nobody asks for it', () => {
    held.preview(freely('RW3', 5.743))
    expect(held.inHand('left')?.snaps).toEqual([])
    held.settle()
    expect(line('RW3')).toContain('station: 5743 mm')
  })

  it('is a whole inch where inches are on the screen, written as an inch', () => {
    held.preview({ ...move('RW3', 5.7155), snap: { reach: 0.004, units: 'inch' } })
    held.settle()
    expect(line('RW3')).toMatch(/station: (225 in|5715 mm)/)
    held.preview({ ...move('RW3', 5.7247), snap: { reach: 0.0035, units: 'inch' } })
    held.settle()
    expect(line('RW3')).toContain('station: 225 3/8 in')
  })

  it('is an end of the axle window, and says what the hitch carries and what is in the way', () => {
    const gear = held.design().under.gear
    const from = gear?.window[0]?.from ?? 0
    const off = 4.69 - (gear?.mean ?? 0)
    held.preview(move('axle-1', from + off - 0.004))
    const shown = held.inHand('left')
    expect(shown?.snaps).toEqual([
      { axis: 'x', at: expect.closeTo(from + off, 9), says: 'as far forward as tube 2 at cross-member 5120 lets the axles stand' },
    ])
    expect(shown?.says[0]).toMatch(/^Hitch \d+\.\d % in case /)
    // cross-members would let it stand farther aft, and the rim of the heater's flue does not
    let drawn = 0
    for (let station = 4.68; station < 4.73; station += 0.002) {
      held.preview(move('axle-1', station))
      const aft = held.inHand('left')?.snaps.find((each) => each.says.startsWith('as far aft'))
      if (aft) drawn++
      if (aft) expect(aft.says).toBe('as far aft as the rim of HV1 lets the axles stand')
      expect(held.inHand('left')?.snaps.length === 0 || held.design().checks.every((each) => each.verdict !== 'fail')).toBe(true)
    }
    expect(drawn).toBeGreaterThan(0)
    held.preview(move('axle-1', 4.79))
    expect(held.inHand('left')?.says.join(' ')).toMatch(/cross-member 5560 is in the way/i)
    held.abandon()
  })
})

describe('what a hand moves', () => {
  it('judges a thing by every rule once it rests, and is shown exactly as it will be written', () => {
    held.preview(freely('RW3', 5.82))
    expect(held.state().verdicts).toBeNull()
    expect(held.state().revision).toBeNull()
    held.ripple()
    expect(held.state().verdicts).not.toBeNull()
    const shown = held.state().revision
    expect(shown).toMatch(/^[0-9a-f]{12}$/)
    held.settle()
    expect(held.state().revision).toBe(shown)
    const checks = held.design().checks.map((each) => `${each.id} ${each.verdict}`)
    const anew = opened()
    anew.edit({ kind: 'text', text: held.state().text })
    expect(anew.design().checks.map((each) => `${each.id} ${each.verdict}`)).toEqual(checks)
  })

  it('a frame, evenly between its neighbours', () => {
    expect(dragged(move('F4', 4.831))).toEqual(['evenly between F3 and F5'])
    expect(held.state().text).toContain('{id: F4, station: 4830 mm}')
  })

  it('a bay with what hangs in it', () => {
    const bay = held.design().definition.chassis?.bays[0]
    if (!bay) throw new Error('no bay')
    held.preview(freely(bay.id, (bay.fore + bay.aft) / 2 - 0.002))
    const shown = held.design().revision
    expect(held.settle()).toBeNull()
    expect(held.state().revision).toBe(shown)
    expect(held.design().definition.chassis?.bays[0].fore).toBeCloseTo(bay.fore - 0.002, 9)
  })

  it('a seam by its height on the drawing, written by its girth', () => {
    const seam = held.design().definition.shell.seams[1]
    const drawn = held.elevation('left').drawn.find((each) => each.id === seam.id)
    expect(drawn?.moves).toBe('up')
    held.preview(freely(seam.id, null, (drawn?.place?.waterline ?? 0) + 0.01))
    const moved = held.elevation('left').drawn.find((each) => each.id === seam.id)
    expect(moved?.points[1]).toBeCloseTo((drawn?.points[1] ?? 0) + 0.01, 3)
    held.abandon()
  })

  it('a stated mass of an extended file, written as an override in the coach, and back by undo', () => {
    const fridge = held.elevation('plan').drawn.find((each) => each.says.startsWith('compressor fridge'))
    if (!fridge?.id || !fridge.place?.station) throw new Error('no fridge')
    const was = held.state()
    held.preview(move(fridge.id, fridge.place.station + 0.1, null, 0.004))
    expect(held.inHand('plan')?.snaps).toContainEqual({ axis: 'y', at: 0, says: 'on the centre line' })
    expect(held.settle()).toBeNull()
    expect(held.state().text).toContain('item: compressor fridge, station:')
    const moved = held.elevation('plan').drawn.find((each) => each.id === fridge.id)
    expect(moved?.place?.across).toBe(0)
    expect(moved?.says).toBe(fridge.says)
    held.undo()
    expect(held.state()).toMatchObject({ text: was.text, revision: was.revision })
  })

  it('an edge of an opening, the other one staying where it is, and never past its corners', () => {
    const pull = (aft: number): SizeEdit => ({ kind: 'size', id: 'RW3', fore: null, aft, low: null, high: null, stroke: 'one' })
    held.edit(pull(5.985))
    expect(line('RW3')).toMatch(/station: 5735 mm, .*width: 500 mm/)
    held.edit(pull(5))
    expect(line('RW3')).toContain('width: 150 mm')
    held.edit({ kind: 'size', id: 'RW3', fore: null, aft: null, low: null, high: 1.5, stroke: 'two' })
    expect(held.design().definition.openings.find((each) => each.id === 'RW3')).toMatchObject({ waterline: 1.2025, height: 0.595 })
  })

  it('a window to the other side of the coach', () => {
    const side = held
      .elevation('left')
      .drawn.find((each) => each.id === 'RW3')
      ?.fields.find((each) => each.choice)
    expect(side?.choice?.value).toBe('R')
    held.edit({ kind: 'set', steps: side?.steps ?? [], value: 'C' })
    expect(held.design().definition.openings.find((each) => each.id === 'RW3')?.surface).toBe('right')
  })
})
