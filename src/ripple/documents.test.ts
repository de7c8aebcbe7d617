/**
 * The documents a ripple names, against the truth: every document of both coaches is made, with one revision on all sheets, and
 * held against its twin. What is named must be what differs: nothing missed, and nothing printed again in vain.
 */
import { describe, expect, it } from 'vitest'
import { count } from '../../tests/counts.js'
import { readExample } from '../../tests/examples.js'
import { chance } from '../../tests/random.js'
import { design } from '../checks/index.js'
import type { Definition, OpeningDefinition } from '../definition/types.js'
import type { Design } from '../derive/design.js'
import { createMemo } from '../derive/memo.js'
import type { Page } from '../documents/drawing/page.js'
import { packetPlan } from '../documents/packet/plan.js'
import { pageToSvg } from '../documents/svg.js'
import { documentChanges } from './documents.js'

/** Content by path, drawings as SVG, which is written finer than PDF: a tenth of a micron on paper. */
function contents(of: Design): ReadonlyMap<string, string> {
  const plan = packetPlan({ ...of, revision: '000000000000' })
  const drawn = (pages: readonly Page[]): string => pages.map((page) => `${page.name}\n${pageToSvg(page)}`).join('')
  return new Map(plan.map(({ path, content }) => [path, content.kind === 'text' ? content.make() : drawn(content.make())]))
}

function truth(before: ReadonlyMap<string, string>, after: ReadonlyMap<string, string>): Record<string, readonly string[]> {
  const [old, now] = [[...before.keys()], [...after.keys()]]
  return {
    reissue: now.filter((path) => before.has(path) && before.get(path) !== after.get(path)).sort(),
    new: now.filter((path) => !before.has(path)).sort(),
    withdraw: old.filter((path) => !after.has(path)).sort(),
  }
}

function claimed(before: Design, after: Design): Record<string, readonly string[]> {
  const changes = documentChanges(before, after, {})
  const of = (status: string): readonly string[] =>
    changes
      .filter((c) => c.status === status)
      .map((c) => c.path)
      .sort()
  return { reissue: of('reissue'), new: of('new'), withdraw: of('withdraw') }
}

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
      expect(claimed(before, after)).toEqual(truth(old, contents(after)))
    })
  }

  it('are none where nothing but the comments changed', () => {
    expect(documentChanges(before, design(structuredClone(sedge6)), {})).toEqual([])
  })

  it('are those that differ, whatever else is edited in the smallest coach', () => {
    const sedge4 = readExample('sedge-4')
    const kept = createMemo()
    const first = design(sedge4, kept)
    const were = contents(first)
    for (let seed = 1; seed <= count(2); seed++) {
      const after = design(edited(sedge4, seed), kept)
      const claims = claimed(first, after)
      expect({ seed, ...claims }).toEqual({ seed, ...truth(were, contents(after)) })
    }
  })
})

/** One edit of a kind that changes few documents or many. */
function edited(d: Definition, seed: number): Definition {
  const c = chance(seed)
  const nth = c.whole(0, d.openings.length - 1)
  const open = (change: (o: OpeningDefinition) => Partial<OpeningDefinition>): Definition => ({
    ...d,
    openings: d.openings.map((o, i) => (i === nth && o.surface !== 'nose' && o.surface !== 'tail' ? { ...o, ...change(o) } : o)),
  })
  const kinds: (() => Definition)[] = [
    () => open((o) => ({ station: o.station + c.between(-0.004, 0.004) })),
    () => ({ ...d, lining: { ...d.lining, lap: d.lining.lap + 0.002 } }),
    () => ({ ...d, coach: { ...d.coach, name: 'Sedge 4 A' } }),
    () => open((o) => ({ corner: o.corner * 0.9, says: 'another' })),
    () => ({ ...d, rows: { ...d.rows, toe: { ...d.rows.toe, pitch: 0.0508 } } }),
    () => ({ ...d, floor: d.floor && { ...d.floor, thickness: d.floor.thickness + 0.001 } }),
    () => ({ ...d, frames: d.frames.map((f, i) => (i === 2 ? { ...f, station: f.station + 0.003 } : f)) }),
    () => ({ ...d, shell: { ...d.shell, memberGap: d.shell.memberGap + 0.0005 } }),
    () => ({ ...d, rules: { ...d.rules, edgeDistance: 2.5, clampMargin: d.rules.clampMargin + 0.02 } }),
    () => ({ ...d, fasteners: d.fasteners.map((f) => (f.kind === 'blind' ? { ...f, head: 'another head' } : f)) }),
    () => open((o) => ({ mass: o.mass + 0.1 })),
    () => ({ ...d, ends: { ...d.ends, cap: d.ends.cap + 0.005 } }),
    () => ({ ...d, openings: d.openings.map((o) => (o.surface === 'nose' ? { ...o, waterline: (o.waterline ?? 0) + 0.01 } : o)) }),
    () => ({ ...d, stock: { ...d.stock, trim: d.stock.trim + 0.0005 } }),
  ]
  return kinds[seed % kinds.length]()
}
