/** Revisions frozen, compared, looked at and taken up again; and where a line of the ripple leads. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { basename, join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { exampleFiles } from '../../tests/examples.js'
import { compareCommand } from '../cli/commands/compare.js'
import type { Target } from '../ripple/line.js'
import { deskCoach } from './desk-coach.js'
import type { DeskCoach } from './desk-coach-nouns.js'
import type { FrozenRevision, RippleShown } from './nouns.js'

const example = exampleFiles('sedge-6')

function opened(): DeskCoach {
  const held = deskCoach(example)
  if ('faults' in held) throw new Error(held.faults.map((each) => each.says).join('\n'))
  return held
}

const move = (held: DeskCoach, station: number) => held.edit({ kind: 'move', id: 'RW3', station, waterline: null })

function frozen(held: DeskCoach, name: string): FrozenRevision {
  const one = held.freeze(name, '2026-03-04T10:20:00.000Z')
  if (typeof one === 'string') throw new Error(one)
  return one
}

function compared(held: DeskCoach, from: string, to: string, units: 'metric' | 'inch' = 'metric'): RippleShown {
  const found = held.revisions.compare(from, to, units)
  if (typeof found === 'string') throw new Error(found)
  return found
}

const folder = mkdtempSync(join(tmpdir(), 'coachwright-revisions-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

/** What `coachwright compare` prints of the two texts. */
async function printed(before: string, after: string, inch: boolean): Promise<readonly string[]> {
  for (const [file, text] of Object.entries(example.files)) writeFileSync(join(folder, basename(file)), text)
  const [old, now] = [join(folder, 'old.yaml'), join(folder, 'new.yaml')]
  writeFileSync(old, before)
  writeFileSync(now, after)
  const out: string[] = []
  await compareCommand(old, now, { inch }, { out: (text) => void out.push(text), err: () => undefined, isWatched: false })
  return out.join('\n').split('\n')
}

describe('frozen revisions', () => {
  it('are compared two by two as the command line compares their texts', async () => {
    const held = opened()
    const first = frozen(held, 'as ordered')
    move(held, 5.825)
    const second = frozen(held, 'window aft')
    held.edit({ kind: 'move', id: 'axle-1', station: 4.79, waterline: null })
    const third = held.state().text
    const text = (one: FrozenRevision): string => one.files[example.path]
    for (const [from, to, before, after, units] of [
      [first.id, second.id, text(first), text(second), 'metric'],
      [second.id, 'now', text(second), third, 'inch'],
      ['now', 'disk', third, example.files[example.path], 'metric'],
    ] as const)
      expect(compared(held, from, to, units).text).toEqual(await printed(before, after, units === 'inch'))
    expect(compared(held, first.id, second.id).line).toMatch(/^From as ordered to window aft: \d+ holes moved/)
    expect(compared(held, 'disk', first.id).line).toBe('From the file on the disk to as ordered: nothing changed.')
  })

  it('never change, and are compared with from then on', () => {
    const held = opened()
    const one = frozen(held, 'as ordered')
    const before = JSON.stringify(one)
    move(held, 5.825)
    expect(JSON.stringify(held.revisions.all()[0])).toBe(before)
    expect(Object.isFrozen(one)).toBe(true)
    expect(held.ripple().line).toMatch(/^Since as ordered: \d+ holes moved/)
    frozen(held, 'window aft')
    expect(held.ripple().line).toBe('Since window aft: nothing changed.')
  })

  it('are kept by a screen and handed back to a desk that is opened again', () => {
    const held = opened()
    move(held, 5.825)
    frozen(held, 'window aft')
    const kept = JSON.parse(JSON.stringify(held.revisions.all())) as readonly FrozenRevision[]
    const again = opened()
    again.revisions.keep(kept)
    expect(again.ripple()).toMatchObject({ since: 'window aft', line: expect.stringMatching(/^Since window aft: \d+ holes moved/) })
    expect(again.state().since).toBe('window aft')
  })

  it('are looked at with nothing changed, and taken up as an edit that is undone', () => {
    const held = opened()
    const first = frozen(held, 'as ordered')
    const { revision } = held.state()
    move(held, 5.825)
    const now = held.state()
    expect(held.lookAt(first.id)).toBeNull()
    expect(held.state()).toMatchObject({ looking: 'as ordered', revision, undo: 0, text: first.files[example.path] })
    expect(move(held, 5.9)).toMatch(/^This is “as ordered” as it was frozen/)
    expect(held.preview({ kind: 'move', id: 'RW3', station: 5.9, waterline: null, stroke: 'one' })).toMatch(/as it was frozen/)
    expect(held.freeze('again')).toMatch(/as it was frozen/)
    held.undo()
    expect(held.elevation('left').drawn.find(({ id }) => id === 'RW3')?.place?.station).toBe(5.745)
    held.lookAt(null)
    expect(held.state()).toEqual(now)
    expect(held.takeUp(first.id)).toBeNull()
    expect(held.state()).toMatchObject({ revision, looking: null, undo: 2 })
    held.undo()
    expect(held.state().text).toBe(now.text)
  })

  it('are not made of a text that does not read, and say so where they are none', () => {
    const held = opened()
    held.edit({ kind: 'text', text: held.state().text.replace('schema: 1', 'schema: one') })
    expect(held.freeze('broken')).toMatch(/^Nothing was frozen: line 3, /)
    expect(held.revisions.all()).toEqual([])
    expect(held.revisions.compare('none such', 'now', 'metric')).toBe('That revision is not kept here any more.')
  })
})

describe('a line of the ripple', () => {
  const held = opened()
  move(held, 5.825)
  held.edit({ kind: 'move', id: 'axle-1', station: 4.74, waterline: null })
  const { lines } = held.ripple()
  const go = (target: Target) => held.goTo(target, 'opened')

  it('leads to its place, whatever it is about', () => {
    const all = lines.flatMap(({ about }) => about)
    expect(new Set(all.map(({ kind }) => kind))).toEqual(new Set(['written', 'check', 'opening', 'part', 'row', 'case', 'document']))
    for (const target of all) {
      const { says, ...found } = go(target)
      if (says === null) expect(Object.values(found).some((each) => each !== null)).toBe(true)
      // only what is gone with its paper leads nowhere
      else expect(target.kind).toBe('document')
    }
  })

  it('is counted under its heading', () => {
    const heads = lines.filter(({ indent }) => indent === 0)
    expect(heads.slice(1).every(({ count }) => count !== null && count > 0)).toBe(true)
    expect(heads.map(({ says }) => says).slice(1, 4)).toEqual(['Written', 'Findings', 'Openings'])
  })

  it('finds the field, the window, the check, the paper', () => {
    expect(go({ kind: 'written', id: 'openings RW3 station' })).toMatchObject({
      select: 'RW3',
      field: { file: example.path, says: 'openings RW3 station' },
    })
    expect(go({ kind: 'written', id: 'chassis crossMembers 3' }).field?.says).toBe('chassis cross-members 3')
    expect(go({ kind: 'opening', id: 'RW3' })).toMatchObject({ select: 'RW3', sheet: 'Openings', at: { look: 'left', x: 5.825 } })
    expect(go({ kind: 'part', id: 'rim-RW3' })).toMatchObject({ document: expect.stringContaining('rim-RW3') })
    expect(go({ kind: 'row', id: 'hoop-F6' })).toMatchObject({ sheet: 'Fasteners', working: 'row.hoop-F6.length' })
    expect(go({ kind: 'document', id: 'schedules/openings.pdf' })).toMatchObject({ document: 'schedules/openings.pdf' })
    expect(go({ kind: 'case', id: 'D' })).toMatchObject({ sheet: 'Weight', working: 'weight.case.D.share' })
    expect(go({ kind: 'document', id: 'no such.pdf' }).says).toBe('no such.pdf is not on the coach as it is now.')
  })
})

describe('the change note', () => {
  it('is drawn from one revision to the other, with its date', () => {
    const held = opened()
    const first = frozen(held, 'as ordered')
    move(held, 5.825)
    const pages = held.notePages(first.id, 'now', '2026-03-05')
    if (typeof pages === 'string') throw new Error(pages)
    expect(pages.length).toBeGreaterThan(1)
    expect(pages[0]).toContain('2026-03-05')
    expect(pages[0]).toContain('as ordered')
    expect(held.notePages('none such', 'now', '2026-03-05')).toMatch(/not kept here/)
  })
})
