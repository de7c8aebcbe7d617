/** The documents a ripple names after one edit of any kind, against the truth: see tests/packet-truth.ts. */
import { describe, expect, it } from 'vitest'
import { count } from '../../tests/counts.js'
import { readExample } from '../../tests/examples.js'
import { claimed, contents, truth } from '../../tests/packet-truth.js'
import { chance } from '../../tests/random.js'
import { design } from '../checks/index.js'
import type { Definition, OpeningDefinition } from '../definition/types.js'
import { createMemo } from '../derive/memo.js'

/** Its time goes with the count: every document of a packet is made anew for each edit. */
const LONG = 600_000

describe('the documents to issue again', () => {
  it(
    'are those that differ, whatever is edited in the smallest coach',
    () => {
      const sedge4 = readExample('sedge-4')
      const kept = createMemo()
      const first = design(sedge4, kept)
      const were = contents(first)
      // from an edit that moves an opening of the roof: the small figures of other sheets show it too
      for (let seed = 14; seed < 14 + count(2); seed++) {
        const after = design(edited(sedge4, seed), kept)
        const is = truth(were, contents(after))
        expect({ seed, ...claimed(first, after, is) }).toEqual({ seed, ...is })
      }
    },
    LONG,
  )
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
