/** What must hold of any two designs: nothing changes from one to itself, and a ripple read backwards is the ripple back. */
import { describe, expect, it } from 'vitest'
import { count } from '../../tests/counts.js'
import { readExample } from '../../tests/examples.js'
import { type Chance, chance } from '../../tests/random.js'
import { randomCoach } from '../../tests/random-coach.js'
import { design } from '../checks/index.js'
import { readDefinition } from '../definition/read-definition.js'
import type { Definition, OpeningDefinition } from '../definition/types.js'
import type { Design } from '../derive/design.js'
import { createMemo } from '../derive/memo.js'
import { compare } from './compare.js'
import type { Both, Ripple, Swap } from './nouns.js'
import { rippleText } from './ripple-text.js'

/** The first coaches of a run of seeds that read and derive. */
function coaches(from: number, wanted: number): readonly Definition[] {
  const found: Definition[] = []
  for (let seed = from; found.length < wanted; seed++) {
    const { definition } = readDefinition('trial.yaml', randomCoach(seed).text, () => null)
    if (definition && tried(definition)) found.push(definition)
  }
  return found
}

function tried(definition: Definition): Design | null {
  try {
    return design(definition)
  } catch {
    return null
  }
}

/** An edit as somebody makes it; it may give a coach that cannot be derived. */
function edit(c: Chance, d: Definition): Definition {
  const nth = c.whole(0, Math.max(0, d.openings.length - 1))
  const open = (change: (o: OpeningDefinition) => Partial<OpeningDefinition>): Definition => ({
    ...d,
    openings: d.openings.map((o, i) => (i === nth ? { ...o, ...change(o) } : o)),
  })
  return c.pick([
    () => open((o) => ({ station: o.station + c.between(-0.1, 0.1) })),
    () => open((o) => ({ width: o.width * c.between(0.8, 1.1) })),
    () => ({ ...d, openings: d.openings.filter((_, i) => i !== nth) }),
    () => ({ ...d, rows: { ...d.rows, seam: { ...d.rows.seam, pitch: c.between(0.02, 0.06) } } }),
    () => ({ ...d, shell: { ...d.shell, skin: { ...d.shell.skin, thickness: { name: 'another', value: c.between(0.0006, 0.0014) } } } }),
    () => ({ ...d, frames: d.frames.map((f, i) => (i === 1 ? { ...f, station: f.station + c.between(-0.02, 0.02) } : f)) }),
    () => ({ ...d, lining: { ...d.lining, joints: [] } }),
  ])()
}

const EMPTY: Omit<Ripple, 'coach' | 'counts' | 'masses'> = {
  equal: true,
  written: [],
  checks: { appeared: [], gone: [], margins: [], asked: { added: [], removed: [] } },
  openings: [],
  parts: { added: [], removed: [], changed: [] },
  joints: { added: [], removed: [], changed: [] },
  loads: { unloaded: null, capacity: null, cases: [] },
  overall: [],
  inward: [],
  documents: [],
}

describe('a design held against itself', () => {
  const cases = [...(['sedge-4', 'sedge-8'] as const).map(readExample), ...coaches(100, count(3))]

  it('changes in nothing, whether it is the same objects or made anew', () => {
    for (const definition of cases) {
      const made = design(definition)
      for (const again of [made, design(structuredClone(definition))]) {
        const r = compare(made, again)
        expect(r).toMatchObject(EMPTY)
        expect([r.counts.lengths, r.counts.rows, r.counts.kinds, r.counts.made, r.counts.sheets, r.masses.kinds].flat()).toEqual([])
        expect(rippleText(r)).toHaveLength(1)
      }
    }
  })
})

const turned = <T>({ before, after }: Both<T>): Both<T> => ({ before: after, after: before })
const swapped = ({ added, removed }: Swap): Swap => ({ added: removed, removed: added })
const ids = (list: readonly { readonly id: string }[]): readonly string[] => list.map((each) => each.id).sort()

/** What of a ripple must be the same read the other way, with before and after, and added and removed, in each other's place. */
function skeleton(r: Ripple, back: boolean): unknown {
  const pair = <T>(b: Both<T>): Both<T> => (back ? turned(b) : b)
  const swap = (s: Swap): Swap => {
    const { added, removed } = back ? swapped(s) : s
    return { added: [...added].sort(), removed: [...removed].sort() }
  }
  const maybe = <T>(b: Both<T> | null): Both<T> | null => b && pair(b)
  const sorted = <T extends { readonly id: string }>(list: readonly T[]): readonly T[] => [...list].sort((a, b) => (a.id < b.id ? -1 : 1))
  return {
    parts: swap({ added: ids(r.parts.added), removed: ids(r.parts.removed) }),
    changed: sorted(r.parts.changed).map((p) => [
      p.id,
      maybe(p.pieces),
      maybe(p.mass),
      maybe(p.place),
      swap(p.notes),
      p.most.toFixed(9),
      [...p.faces]
        .sort((a, b) => (a.face < b.face ? -1 : 1))
        .map((f) => [
          f.face,
          f.outline && [f.outline.by.toFixed(9), pair(f.outline.width), pair(f.outline.height)],
          [...f.holes]
            .sort((a, b) => (a.row < b.row ? -1 : 1))
            .map((h) => {
              const { added, removed } = back ? { added: h.removed, removed: h.added } : h
              return [h.row, added, removed, h.moved, h.by.toFixed(9), h.resized]
            }),
        ]),
    ]),
    joints: [swap({ added: ids(r.joints.added), removed: ids(r.joints.removed) }), ids(r.joints.changed)],
    counts: [pair(r.counts.solid), pair(r.counts.blind), pair(r.counts.holes), r.counts.lengths.map((t) => [t.name, pair(t)].length)],
    rows: sorted(r.counts.rows).map((row) => [row.id, pair(row.count), swap(row.spans), maybe(row.bearing), swap(row.lengths)]),
    masses: [pair(r.masses.total), r.masses.kinds.map((k) => k.name)],
    checks: swap({ added: ids(r.checks.appeared), removed: ids(r.checks.gone) }),
    asked: swap(r.checks.asked),
    margins: sorted(r.checks.margins).map((m) => [m.id, pair(m.verdict), pair(m.margin)]),
    documents: [...r.documents]
      .sort((a, b) => (a.path < b.path ? -1 : 1))
      .map((d) => {
        const status = back && d.status !== 'reissue' ? (d.status === 'new' ? 'withdraw' : 'new') : d.status
        return [d.path, status, [...d.because].sort()]
      }),
  }
}

/** Counts of holes must close: what came less what went is what the totals say. */
function holesClose(r: Ripple, before: Design, after: Design): boolean {
  const holesOf = (d: Design, names: ReadonlySet<string>): number =>
    d.parts.filter((p) => names.has(p.id)).reduce((sum, p) => sum + p.patterns.reduce((s, q) => s + q.holes.x.length, 0), 0)
  const changed = r.parts.changed.flatMap((p) => p.faces.flatMap((f) => f.holes)).reduce((sum, h) => sum + h.added - h.removed, 0)
  const came = holesOf(after, new Set(ids(r.parts.added))) - holesOf(before, new Set(ids(r.parts.removed)))
  return came + changed === r.counts.holes.after - r.counts.holes.before
}

describe('a ripple and the ripple back', () => {
  it('are one another with before and after in each other’s place, and their holes add up', () => {
    const c = chance(11)
    const bases = [readExample('sedge-6'), ...coaches(200, count(3))]
    for (const base of bases) {
      const memo = createMemo()
      const before = design(base, memo)
      for (let n = 0; n < 3; n++) {
        const definition = edit(c, base)
        if (!tried(definition)) continue
        const after = design(definition, memo)
        const there = compare(before, after)
        const back = compare(after, before)
        expect(skeleton(back, true)).toEqual(skeleton(there, false))
        expect(holesClose(there, before, after)).toBe(true)
        expect(rippleText(there).join('')).not.toMatch(/NaN|undefined|null|\[object/)
      }
    }
  })

  it('are the same whether the two share what did not change or were made apart', () => {
    const base = readExample('sedge-4')
    const moved = { ...base, openings: base.openings.map((o) => (o.id === 'RW1' ? { ...o, waterline: 1.17 } : o)) }
    const memo = createMemo()
    expect(compare(design(base, memo), design(moved, memo))).toEqual(compare(design(base), design(structuredClone(moved))))
  })
})
