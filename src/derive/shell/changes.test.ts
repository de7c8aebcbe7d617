/** A change stays where it is made: identifiers are permanent, and what is not touched keeps its figures to the last bit. */
import { describe, expect, it } from 'vitest'
import { readExample } from '../../../tests/examples.js'
import type { Definition, OpeningDefinition } from '../../definition/types.js'
import { fastenerId } from '../holes.js'
import { type Derived, derive } from '../index.js'

const sedge6 = readExample('sedge-6')
const before = derive(sedge6)

function withOpening(id: string, change: Partial<OpeningDefinition>): Definition {
  return { ...sedge6, openings: sedge6.openings.map((o) => (o.id === id ? { ...o, ...change } : o)) }
}

interface Stand {
  readonly station: number
  readonly girth: number
}
function fasteners(design: Derived): Map<string, Stand> {
  return new Map(
    design.rows.flatMap((row) => row.station.map((station, i) => [fastenerId(row, i), { station, girth: row.girth[i] }] as const)),
  )
}

describe('a frame F3a put in between F3 and F4', () => {
  const frames = [...sedge6.frames.slice(0, 3), { id: 'F3a', station: 4.525, joint: null }, ...sedge6.frames.slice(3)]
  const [old, now] = [fasteners(before), fasteners(derive({ ...sedge6, frames }))]
  const [f3, f4] = [4.22, 4.83]
  const inBay = ({ station }: Stand): boolean => station > f3 - 0.04 && station < f4 + 0.04

  it('renames and moves nothing outside the bay it splits', () => {
    const lost = [...old].filter(([id, at]) => !now.has(id) && !inBay(at)).map(([id]) => id)
    expect(lost).toEqual([])
    const moved = [...old].filter(([id, at]) => !inBay(at) && JSON.stringify(now.get(id)) !== JSON.stringify(at)).map(([id]) => id)
    expect(moved).toEqual([])
    const fresh = [...now].filter(([id, at]) => !old.has(id) && !inBay(at)).map(([id]) => id)
    expect(fresh).toEqual([])
  })

  it('refits the spans of that bay under names of their own, and gives the frame its rows', () => {
    const ids = [...now.keys()]
    expect(ids.some((id) => id.startsWith('hoop-F3a/'))).toBe(true)
    expect(ids.some((id) => id.startsWith('seam-1-right/F3-F3a/'))).toBe(true)
    expect(ids.some((id) => id.startsWith('seam-1-right/F3a-F4/'))).toBe(true)
    expect(ids.some((id) => id.startsWith('seam-1-right/F3-F4/'))).toBe(false)
  })
})

describe('window RW3 moved by a millimetre', () => {
  const after = derive(withOpening('RW3', { station: 5.746 }))

  it('leaves every other row as it was, to the last bit', () => {
    expect(after.rows.map((r) => r.id)).toEqual(before.rows.map((r) => r.id))
    const changed = before.rows.filter((row, i) => JSON.stringify(row) !== JSON.stringify(after.rows[i])).map((r) => r.id)
    expect(changed).toEqual(['rim-RW3'])
    const rim = (design: Derived) => design.rows.find((r) => r.id === 'rim-RW3')
    expect(rim(after)?.spans.map((s) => s.count)).toEqual(rim(before)?.spans.map((s) => s.count))
  })

  it('changes only the parts it is cut in or riveted to', () => {
    expect(after.parts.map((p) => p.id)).toEqual(before.parts.map((p) => p.id))
    const changed = before.parts.filter((part, i) => JSON.stringify(part) !== JSON.stringify(after.parts[i])).map((p) => p.id)
    const own = before.openings.find((o) => o.id === 'RW3')
    const touched = new Set([...(own?.cutIn ?? []), ...(own?.lining ?? []), own?.rim.part, own?.trimRing])
    expect(changed.filter((id) => !touched.has(id))).toEqual([])
    expect(changed).toEqual(expect.arrayContaining(['strake-side-left', 'rim-RW3', 'trim-RW3']))
  })

  it('moves its cut and its rim by that millimetre, and no other cut', () => {
    const cuts = (design: Derived) => design.parts.find((p) => p.id === 'strake-side-left')?.patterns[0].cuts ?? []
    for (const cut of cuts(before)) {
      const twin = cuts(after).find((c) => c.opening === cut.opening)
      cut.outline.forEach(([x, y], i) => {
        expect(twin?.outline[i][0]).toBeCloseTo(x + (cut.opening === 'RW3' ? 0.001 : 0), 12)
        expect(twin?.outline[i][1]).toBeCloseTo(y, 12)
      })
    }
  })
})
