/** Whatever is edited, and in whatever order: a design derived with the last one's memo equals one derived from nothing. */
import { describe, expect, it } from 'vitest'
import { count } from '../../../tests/counts.js'
import { readExample } from '../../../tests/examples.js'
import { type Chance, chance } from '../../../tests/random.js'
import { randomCoach } from '../../../tests/random-coach.js'
import { readDefinition } from '../../definition/read-definition.js'
import { shareUnchanged } from '../../definition/share-unchanged.js'
import type { Definition, OpeningDefinition } from '../../definition/types.js'
import { type Derived, derive } from '../index.js'
import { createMemo } from '../memo.js'

/** One edit as somebody at a screen makes it; may give an impossible coach, which is then left alone. */
function edit(c: Chance, d: Definition): Definition {
  const shell = (change: Partial<Definition['shell']>): Definition => ({ ...d, shell: { ...d.shell, ...change } })
  const nth = c.whole(0, Math.max(0, d.openings.length - 1))
  const open = (change: (o: OpeningDefinition) => Partial<OpeningDefinition>): Definition => ({
    ...d,
    openings: d.openings.map((o, i) => (i === nth ? { ...o, ...change(o) } : o)),
  })
  const near = (value: number, by: number): number => value + c.between(-by, by)
  const kinds: (() => Definition)[] = [
    () => open((o) => ({ station: near(o.station, 0.1) })),
    () => open((o) => ({ station: near(o.station, 0.001) })),
    () => open((o) => (o.waterline === null ? { girth: near(o.girth, 0.05) } : { waterline: near(o.waterline, 0.1) })),
    () => open((o) => ({ width: near(o.width, 0.05), height: near(o.height, 0.05) })),
    () => open((o) => ({ corner: c.between(0, Math.min(o.width, o.height) / 2) })),
    () => open((o) => ({ surface: o.surface === 'left' ? 'right' : o.surface === 'right' ? 'left' : o.surface })),
    () => ({ ...d, openings: d.openings.filter((_, i) => i !== nth) }),
    () => ({ ...d, openings: [...d.openings.slice(nth), ...d.openings.slice(0, nth)] }),
    () => ({
      ...d,
      openings: d.openings.flatMap((o, i) => (i === nth ? [o, { ...o, id: `${o.id}x`, station: near(o.station, 0.8) }] : [o])),
    }),
    () => ({
      ...d,
      rows: {
        ...d.rows,
        [c.pick(['seam', 'hoop', 'rim', 'lining', 'base', 'toe', 'joint'])]: {
          fastener: d.rows.rim.fastener,
          pitch: c.between(0.02, 0.08),
        },
      },
    }),
    () => ({ ...d, frames: d.frames.map((f, i) => (i > 0 && i === nth ? { ...f, station: near(f.station, 0.03) } : f)) }),
    () => shell({ skin: { ...d.shell.skin, thickness: { name: 'other', value: c.between(0.0006, 0.0015) } } }),
    () => shell({ seams: d.shell.seams.map((s, i) => (i === 0 ? { ...s, girth: near(s.girth, 0.02) } : s)) }),
    () => shell({ lapOrder: d.shell.lapOrder === 'upper over lower' ? 'lower over upper' : 'upper over lower' }),
    () => shell({ rim: { ...d.shell.rim, line: near(d.shell.rim.line, 0.002) }, memberGap: c.between(0, 0.003) }),
    () => ({ ...d, lining: { ...d.lining, lap: c.between(0.01, 0.03), thickness: { name: 'other', value: c.between(0.0005, 0.001) } } }),
    () => ({ ...d, gear: d.gear && { ...d.gear, spindles: d.gear.spindles.map((s) => s + 0.01) } }),
    () => ({ ...d, rules: { ...d.rules, edgeDistance: c.pick([1.5, 2, 2.5]) } }),
    () => open(() => ({ says: c.pick(['a window', 'another', 'the third']), mass: c.between(1, 9) })),
    () => ({ ...d, fasteners: d.fasteners.map((f, i) => (i === 0 ? { ...f, hole: c.between(0.0041, 0.0045) } : f)) }),
    () => shell({ strakes: d.shell.strakes.map((s) => ({ ...s, stock: c.pick(d.stock.sheets) })) }),
    () => shell({ post: { ...d.shell.post, leg: c.between(0.012, 0.03) } }),
    () => ({ ...d, floor: d.floor && { ...d.floor, thickness: c.between(0.01, 0.03) } }),
    () => ({ ...d, section: { ...d.section, crown: near(d.section.crown, 0.005) } }),
    ...under(c, d, near),
  ]
  return c.pick(kinds)()
}

/** What lies under the body, and what it weighs: axles that pass outriggers and take bolts away, members, bays, fixings, masses. */
function under(c: Chance, d: Definition, near: (value: number, by: number) => number): readonly (() => Definition)[] {
  const { chassis, floor, gear, weight } = d
  const one = <T>(list: readonly T[], change: (item: T) => T): T[] => {
    const nth = c.whole(0, Math.max(0, list.length - 1))
    return list.map((item, i) => (i === nth ? change(item) : item))
  }
  const onFloor = (change: (of: NonNullable<typeof floor>) => Partial<NonNullable<typeof floor>>): Definition => ({
    ...d,
    floor: floor && { ...floor, ...change(floor) },
  })
  const inChassis = (change: (of: NonNullable<typeof chassis>) => Partial<NonNullable<typeof chassis>>): Definition => ({
    ...d,
    chassis: chassis && { ...chassis, ...change(chassis) },
  })
  const axles = (by: number): Definition => ({ ...d, gear: gear && { ...gear, spindles: gear.spindles.map((each) => each + by) } })
  return [
    () => axles(c.between(-0.4, 0.4)),
    () => axles(c.between(-0.01, 0.01)),
    () => inChassis(({ crossMembers }) => ({ crossMembers: one(crossMembers, (each) => near(each, 0.02)) })),
    () => inChassis(({ bays }) => ({ bays: one(bays, (bay) => ({ ...bay, aft: near(bay.aft, 0.05) })) })),
    () => inChassis(({ rail }) => ({ rail: rail && { ...rail, holes: { ...rail.holes, pitch: near(rail.holes.pitch, 0.02) } } })),
    () => onFloor(({ openings }) => ({ openings: one(openings, (each) => ({ ...each, station: near(each.station, 0.2) })) })),
    () => onFloor(({ bolts }) => ({ bolts: bolts && { ...bolts, pitch: near(bolts.pitch, 0.05) } })),
    () => onFloor(({ screws }) => ({ screws: screws && { ...screws, pitch: near(screws.pitch, 0.03) } })),
    () => ({
      ...d,
      masses: one(d.masses, (each) => ({ ...each, mass: near(each.mass, 1), station: each.station && near(each.station, 0.1) })),
    }),
    () => ({ ...d, weight: weight && { ...weight, growth: weight.growth && { ...weight.growth, CH: c.between(0, 0.05) } } }),
  ]
}

/** Only what an engineer could still order: the rest of what the definition's faults refuse is not this test's business. */
function possible(d: Definition): boolean {
  const [first, last] = [d.frames[0].station, d.frames[d.frames.length - 1].station]
  const onBarrel = (o: OpeningDefinition): boolean =>
    o.surface === 'nose' ||
    o.surface === 'tail' ||
    (o.station - o.width / 2 >= first && o.station + o.width / 2 <= last && o.width > 0.02 && o.height > 0.02)
  const ids = new Set(d.openings.map((o) => o.id))
  const ordered = d.frames.every((f, i) => i === 0 || f.station - d.frames[i - 1].station > 0.1)
  return (
    d.openings.every(onBarrel) &&
    ids.size === d.openings.length &&
    ordered &&
    d.openings.every((o) => o.corner <= Math.min(o.width, o.height) / 2)
  )
}

const plain = ({ parts, rows, joints, openings, totals, section, under, bolts, weight, towing, ride, road }: Derived): unknown => ({
  ...{ parts, rows, joints, openings, totals, section },
  ...{ under, bolts, weight, towing, ride, road },
})

/** The first path at which two pieces of plain data differ, or null. A working holds the same working many times: each pair is compared once. */
function firstDifference(a: unknown, b: unknown, path = 'design', seen = new Map<object, object>()): string | null {
  if (Object.is(a, b)) return null
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null)
    return typeof a === 'function' ? null : `${path}: ${a} against ${b}`
  if (seen.get(a) === b) return null
  seen.set(a, b)
  const keys = new Set([...Object.keys(a), ...Object.keys(b)])
  for (const key of keys) {
    const found = firstDifference((a as Record<string, unknown>)[key], (b as Record<string, unknown>)[key], `${path}.${key}`, seen)
    if (found) return found
  }
  return null
}

/** What went wrong over a run of edits, or null. Every second edit goes through a copy, as a new reading of the text would. */
function run(start: Definition, seed: number, edits: number): string | null {
  const c = chance(seed)
  const memo = createMemo()
  let d = start
  derive(d, memo)
  for (let n = 0; n < edits; n++) {
    const changed = edit(c, d)
    if (!possible(changed)) continue
    let cold: Derived
    try {
      cold = derive(changed)
    } catch {
      continue
    }
    const next = n % 2 === 0 ? changed : shareUnchanged(d, structuredClone(changed))
    const difference = firstDifference(plain(derive(next, memo)), plain(cold))
    if (difference) return `seed ${seed}, edit ${n}: ${difference}`
    d = next
  }
  return null
}

describe('a design derived with a memo', () => {
  it('equals one derived from nothing, after any run of edits of the Sedges', () => {
    const wrong: string[] = []
    for (let seed = 1; seed <= count(4); seed++) {
      const difference = run(readExample((['sedge-4', 'sedge-6', 'sedge-8'] as const)[seed % 3]), seed, 10)
      if (difference) wrong.push(difference)
    }
    expect(wrong).toEqual([])
  })

  it('and of random coaches', () => {
    const wrong: string[] = []
    for (let seed = 3000; seed < 3000 + count(12); seed++) {
      const { definition } = readDefinition('trial.yaml', randomCoach(seed).text, () => null)
      const difference = definition && run(definition, seed, 8)
      if (difference) wrong.push(difference)
    }
    expect(wrong).toEqual([])
  })
})
