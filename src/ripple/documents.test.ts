/**
 * The documents a ripple names, against the truth: every document of both coaches is made, its studies done, with one revision on
 * all sheets, and held against its twin. What is named must be what differs: nothing missed, and nothing printed again in vain.
 * Only what hangs on a study may come out as it was after all, since the ripple knows what a study is made from and not what it says.
 */
import { describe, expect, it } from 'vitest'
import { readExample } from '../../tests/examples.js'
import { claimed, contents, STUDIED, truth, wholePacket } from '../../tests/packet-truth.js'
import { design } from '../checks/index.js'
import type { Definition, OpeningDefinition } from '../definition/types.js'
import { createMemo } from '../derive/memo.js'
import { expectedDocuments } from '../documents/packet/expected-documents.js'
import { documentChanges } from './documents.js'

const sedge6 = readExample('sedge-6')
const rw3 = (change: Partial<OpeningDefinition>): Definition => ({
  ...sedge6,
  openings: sedge6.openings.map((o) => (o.id === 'RW3' ? { ...o, ...change } : o)),
})
const thick = { name: '0.040 in', value: 0.001016 }

/** What people ask for, from a hair to a whole new gauge. */
const EDITS: Readonly<Record<string, Definition>> = {
  'RW3 80 mm aft': rw3({ station: 5.825 }),
  'no RW3': { ...sedge6, openings: sedge6.openings.filter((o) => o.id !== 'RW3') },
  'a thicker skin': { ...sedge6, shell: { ...sedge6.shell, skin: { ...sedge6.shell.skin, thickness: thick } } },
}

describe('the documents to issue again', () => {
  const memo = createMemo()
  const before = design(sedge6, memo)
  const old = contents(before)

  for (const [what, definition] of Object.entries(EDITS)) {
    it(`are those that differ: ${what}`, () => {
      const after = design(definition, memo)
      const is = truth(old, contents(after))
      expect(claimed(before, after, is)).toEqual(is)
    })
  }

  it('are none where nothing but the comments changed', () => {
    expect(documentChanges(before, design(structuredClone(sedge6)), {})).toEqual([])
  })
})

describe('documents that hang on a study', () => {
  const sedge4 = readExample('sedge-4')
  const memo = createMemo()
  const before = design(sedge4, memo)
  const ofStudies = (after: Definition): readonly string[] =>
    documentChanges(before, design(after, memo), {})
      .filter((c) => STUDIED.test(c.path))
      .map((c) => `${c.status} ${c.path}`)
  const process = sedge4.process as NonNullable<Definition['process']>
  const holeFit = (status: string): readonly string[] => [`${status} checks/hole-fit.pdf`, `${status} checks/hole-fit.csv`]
  const ends = (change: Partial<Definition['ends']>): Definition => ({ ...sedge4, ends: { ...sedge4.ends, ...change } })

  it('are planned under the names and words that the packet gives them', () => {
    const whole = new Map(wholePacket(before).map((d) => [d.path, d.says]))
    const expected = expectedDocuments(before)
    for (const { path, says } of expected.documents) expect([path, whole.get(path)]).toEqual([path, says])
    for (const path of expected.besides.keys()) expect(whole.has(path), path).toBe(true)
    expect(expected.documents.map((d) => d.path).sort()).toEqual([...whole.keys()].filter((path) => STUDIED.test(path)).sort())
  })
  it('a shop that punches otherwise: whether the holes meet, and nothing else of the packet', () => {
    const after = design({ ...sedge4, process: { ...process, punchSigma: process.punchSigma * 1.1 } }, memo)
    expect(documentChanges(before, after, {}).map((c) => [c.status, c.path, c.because])).toEqual([
      ['reissue', 'checks/hole-fit.pdf', ['whether the holes meet']],
      ['reissue', 'checks/hole-fit.csv', ['whether the holes meet']],
    ])
    expect(ofStudies({ ...sedge4, process: null })).toEqual(holeFit('withdraw'))
  })
  it('how far a wrapped skin may lie inside: the two ways to make a gore', () => {
    expect(ofStudies(ends({ within: sedge4.ends.within + 0.001 }))).toEqual(['reissue ends/gore-ways.pdf'])
  })
  it('the pitch of the lining: whether the holes meet, and the sheets of every end panel, but no blanks', () => {
    const { rows } = sedge4
    const named = ofStudies({ ...sedge4, rows: { ...rows, lining: { ...rows.lining, pitch: rows.lining.pitch * 0.9 } } })
    const panels = (['nose', 'tail'] as const).flatMap((end) => Array.from({ length: 14 }, (_, i) => `${end}-lining-${i + 1}`))
    const sheets = panels.flatMap((id) => [`lining/${id}.svg`, `lining/${id}.dxf`, `holes/${id}.csv`, `programs/${id}.nc`])
    expect([...named].sort()).toEqual([...holeFit('reissue'), ...sheets.map((path) => `reissue ${path}`)].sort())
  })
  it('a window of the nose: the gores it is in and those its rivets go through, and the tail’s not', () => {
    const at = sedge4.openings.findIndex((o) => o.surface === 'nose')
    const moved = sedge4.openings.map((o, i) => (i === at ? { ...o, waterline: (o.waterline ?? 0) + 0.01 } : o))
    const named = ofStudies({ ...sedge4, openings: moved })
    expect(named).toContain('reissue ends/blanks.pdf')
    const gores = new Set(named.flatMap((path) => path.match(/(nose|tail)-(gore-\d+|cap)/)?.[0] ?? []))
    const [window] = [design({ ...sedge4, openings: moved }, memo).openings.find((o) => o.id === sedge4.openings[at].id)]
    for (const part of window?.cutIn.filter((id) => id.startsWith('nose-gore')) ?? []) expect([...gores]).toContain(part)
    expect(gores.size).toBeGreaterThan(0)
    expect(gores.size).toBeLessThan(7)
    expect([...gores].filter((id) => id.startsWith('tail'))).toEqual([])
  })
  it('the shape of the ends: every blank', () => {
    const named = ofStudies(ends({ exponent: sedge4.ends.exponent + 0.01 }))
    expect(new Set(named.flatMap((path) => path.match(/(nose|tail)-(gore-\d+|cap)/)?.[0] ?? [])).size).toBe(16)
  })
  it('gores wrapped instead of formed: their blanks are withdrawn, their sheets are new figures at the same places', () => {
    const named = ofStudies(ends({ make: 'wrapped', within: 0.06 }))
    expect(named).toContain('withdraw ends/blanks.pdf')
    expect(named).toContain('reissue ends/nose-gore-2.dxf')
  })
})
