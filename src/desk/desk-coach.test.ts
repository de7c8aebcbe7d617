/** A coach on the desk as the screen uses it: the same edit commands, asked the same questions. */
import { describe, expect, it } from 'vitest'
import { exampleFiles } from '../../tests/examples.js'
import { deskCoach } from './desk-coach.js'
import type { DeskCoach } from './desk-coach-nouns.js'

function opened(name = 'sedge-6'): DeskCoach {
  const held = deskCoach(exampleFiles(name))
  if ('faults' in held) throw new Error(held.faults.map((each) => each.says).join('\n'))
  return held
}

describe('a coach on the desk', () => {
  it('moves a window as scene 1 has it, and the ripple tells it', () => {
    const held = opened()
    expect(held.edit({ kind: 'move', id: 'RW3', station: 5.825, waterline: null })).toBeNull()
    const { line, text } = held.ripple()
    expect(line).toMatch(/^Since revision [0-9a-f]{12}: .*holes? moved.* in \d+ parts/)
    expect(text.join('\n')).toContain('openings RW3 station: 5745 mm becomes 5825 mm.')
    expect(text.join('\n')).toMatch(/RW3 \(window W1, fixed\) cuts frame F6/)
  })

  it('keeps the comments and the order of the text it writes in', () => {
    const held = opened()
    const before = held.state().text.split('\n')
    held.edit({ kind: 'move', id: 'RW3', station: 5.825, waterline: 1.17 })
    const after = held.state().text.split('\n')
    expect(after).toHaveLength(before.length)
    expect(after.filter((line, i) => line !== before[i])).toEqual([expect.stringContaining('station: 5825 mm, wl: 1170 mm')])
  })

  it('undoes to the first text, redoes to the last, and counts a drag once', () => {
    const held = opened()
    const first = held.state()
    for (const station of [5.75, 5.76, 5.77]) held.edit({ kind: 'move', id: 'RW3', station, waterline: null, stroke: 'one' })
    held.edit({ kind: 'move', id: 'axle-1', station: 4.7, waterline: null })
    expect(held.state().undo).toBe(2)
    const last = held.state()
    held.undo()
    held.undo()
    held.undo()
    expect(held.state()).toMatchObject({ text: first.text, revision: first.revision, undo: 0, redo: 2 })
    held.redo()
    held.redo()
    expect(held.state()).toMatchObject({ text: last.text, revision: last.revision })
  })

  it('shows a drag while it lasts, and writes it where it ends', () => {
    const held = opened()
    const { text, revision } = held.state()
    for (const station of [5.75, 5.8, 5.825]) held.preview({ kind: 'move', id: 'RW3', station, waterline: null, stroke: 'one' })
    expect(held.state().text).toBe(text)
    // what is in the hand has no name yet
    expect(held.state().revision).toBeNull()
    const shown = held.design().revision
    expect(shown).not.toBe(revision)
    held.settle()
    // what was shown is what was written
    expect(held.state().revision).toBe(shown)
    expect(held.state()).toMatchObject({ undo: 1, text: expect.stringContaining('station: 5825 mm') })
    held.preview({ kind: 'move', id: 'axle-1', station: 4.8, waterline: null, stroke: 'two' })
    held.undo()
    expect(held.state().text).toContain('[4690 mm, 5480 mm]')
    held.undo()
    expect(held.state()).toMatchObject({ text, revision })
  })

  it('moves the axles together, into the clash of scene 5', () => {
    const held = opened()
    held.edit({ kind: 'move', id: 'axle-1', station: 4.79, waterline: null })
    expect(held.state().text).toContain('[4790 mm, 5580 mm]')
    expect(held.ripple().text.join('\n')).toMatch(/FAILS: The axle at STA 5580 has its tube at STA 5430/)
  })

  it('shows faults on their line and keeps what last read', () => {
    const held = opened()
    const { text, revision } = held.state()
    held.edit({ kind: 'text', text: text.replace('schema: 1', 'schema: 1\nsection: {exponent: two}') })
    const { faults, revision: still } = held.state()
    expect(faults[0]).toMatchObject({ line: 4 })
    expect(still).toBe(revision)
    expect(held.elevation('left').drawn.length).toBeGreaterThan(10)
    held.undo()
    expect(held.state().faults).toEqual([])
  })

  it('does not take a place where the coach no longer reads, and says why', () => {
    const held = opened()
    const { text, revision } = held.state()
    const off = { kind: 'move', id: 'RW3', station: 9, waterline: null } as const
    expect(held.edit(off)).toMatch(/^That was not taken: openings RW3 station: .*off the barrel/)
    expect(held.state()).toMatchObject({ text, revision, undo: 0, faults: [] })
    // dragged there, it is shown on its way and goes back where the drag ends
    held.preview({ ...off, stroke: 'one' })
    expect(held.settle()).toMatch(/^That was not taken: /)
    expect(held.state()).toMatchObject({ text, revision, undo: 0, faults: [] })
    expect(held.edit({ kind: 'set', steps: ['openings', { id: 'RW3' }, 'width'], value: '6 kg' })).toMatch(
      /^That was not taken: openings RW3 width: /,
    )
    held.edit({ kind: 'text', text: text.replace('schema: 1', 'schema: one') })
    expect(held.edit(off)).toMatch(/^The text does not read: line 3, /)
  })

  it('leaves nothing of a drag that ends where it began', () => {
    const held = opened()
    const { text, revision } = held.state()
    for (const station of [5.8, 5.745]) held.preview({ kind: 'move', id: 'RW3', station, waterline: null, stroke: 'one' })
    expect(held.settle()).toBeNull()
    expect(held.state()).toMatchObject({ text, revision, undo: 0 })
  })

  it('takes every push, from where a thing is written to stand and not from the middle of its outline', () => {
    const held = opened()
    const hatch = () => held.elevation('right').drawn.find((each) => each.id === 'HA1')
    expect(hatch()?.place).toEqual({ station: 6.347, waterline: 0.18, across: null })
    for (let i = 0; i < 3; i++) held.edit({ kind: 'nudge', id: 'HA1', along: 0, up: 0.001 })
    expect(hatch()?.place).toEqual({ station: 6.347, waterline: 0.183, across: null })
    expect(held.state().text).toMatch(/id: HA1,.* wl: 183 mm/)
    held.edit({ kind: 'nudge', id: 'axle-2', along: -0.001, up: 0 })
    expect(held.state().text).toContain('[4689 mm, 5479 mm]')
    held.edit({ kind: 'nudge', id: 'F4', along: 0.002, up: 0 })
    expect(held.state().text).toContain('{id: F4, station: 4832 mm}')
  })

  it('keeps a size in the text as the tape said it', () => {
    const held = opened()
    expect(held.edit({ kind: 'set', steps: ['openings', { id: 'RW3' }, 'width'], value: '20 1/2 in' })).toBeNull()
    expect(held.state().text).toMatch(/id: RW3,.* width: 20 1\/2 in/)
    const fields = held.elevation('left').drawn.find((each) => each.id === 'RW3')?.fields
    expect(fields?.filter((each) => !each.choice).map(({ says, metres }) => `${says} ${(metres * 1000).toFixed(1)}`)).toEqual([
      ...['Station 5745.0', 'Waterline 1160.0', 'Width 520.7', 'Height 510.0', 'Corner 75.0'],
    ])
  })

  it('lights up a place of the nose on the nose, and one under the floor in plan', () => {
    const held = opened()
    expect(held.ask('NW1').at).toMatchObject({ look: 'nose', x: 0 })
    expect(held.ask('FO1').at).toEqual({ look: 'plan', x: 6.5, y: -0.5 })
  })

  it('says why a thing cannot be moved', () => {
    expect(opened().edit({ kind: 'move', id: 'wheel-left', station: 5, waterline: null })).toMatch(/^wheel-left cannot be moved: /)
  })

  it('draws every look, with a mark for each opening seen in it', () => {
    const held = opened()
    for (const look of ['right', 'left', 'plan', 'nose', 'tail'] as const) {
      const { drawn, rivets, box } = held.elevation(look)
      expect([...rivets, ...Object.values(box)].every(Number.isFinite)).toBe(true)
      expect(drawn.flatMap((each) => each.points).every(Number.isFinite)).toBe(true)
      expect(rivets.length).toBeGreaterThan(100)
    }
    const ids = held.elevation('left').drawn.map((each) => each.id)
    expect(ids).toEqual(expect.arrayContaining(['RW1', 'RW2', 'RW3', 'F3', 'axle-1', 'TB1']))
    expect(held.elevation('nose').drawn.map((each) => each.id)).toContain('NW1')
  })

  it('draws the section as its arcs run, and both wheels of an axle', () => {
    const { drawn } = opened().elevation('tail')
    const [section] = drawn
    const turns = section.points.length / 2
    const headings = Array.from({ length: turns - 1 }, (_, i) =>
      Math.atan2(section.points[2 * i + 3] - section.points[2 * i + 1], section.points[2 * i + 2] - section.points[2 * i]),
    )
    const bends = headings
      .slice(1)
      .map((heading, i) => Math.abs(Math.atan2(Math.sin(heading - headings[i]), Math.cos(heading - headings[i]))))
    // the least radius of the section is about 0.3 m, walked in steps of 25 mm; the crown's own middle is no corner
    expect(Math.max(...bends)).toBeLessThan(0.15)
    expect(drawn.filter((each) => each.id === 'axle-1')).toHaveLength(2)
  })

  it('has sentences, figures and papers for every sheet, and a working behind each figure', () => {
    const held = opened()
    for (const name of ['Lines', 'Skins', 'Ends', 'Openings', 'Floor', 'Chassis', 'Running gear', 'Weight', 'Towing', 'Checks']) {
      const { sentences, documents } = held.sheet(name)
      expect(sentences.length, name).toBeGreaterThan(0)
      expect(documents.length, name).toBeGreaterThan(0)
    }
    for (const { id } of held.sheet('Weight').figures.slice(0, 10))
      expect(held.working(id)).toMatchObject({ symbolic: expect.any(String), figure: expect.any(String) })
    expect(held.page('cover.pdf', 0)?.svg).toContain('<svg')
  })

  it('answers a place, a thing and a figure from one box', () => {
    const held = opened()
    expect(held.ask('R 5745 WL 1160')).toMatchObject({ says: expect.stringContaining('R 5745'), at: { look: 'left', x: 5.745 } })
    expect(held.ask('RW3').lines[0]).toMatch(/^RW3, window W1, fixed: R 5745 WL 1160 /)
    expect(held.ask('hitch worst').lines.length + held.ask('hitch').lines.length).toBeGreaterThan(0)
    expect(held.ask('zzz').says).toMatch(/^Nothing is called "zzz"/)
  })

  it('freezes a revision and compares with that from then on', () => {
    const held = opened()
    held.edit({ kind: 'move', id: 'RW3', station: 5.825, waterline: null })
    held.freeze('window aft')
    expect(held.ripple().line).toBe('Since window aft: nothing changed.')
  })
})
