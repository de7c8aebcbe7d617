/** The demonstration's end lining laid flat as parts of the design. */
import { describe, expect, it } from 'vitest'
import { readExample } from '../../../tests/examples.js'
import { derive } from '../../derive/index.js'
import type { Part } from '../../derive/nouns.js'
import { outlineArea } from '../../maths/outline.js'
import { withLining } from './with-lining.js'

const derived = derive(readExample('sedge-6'))
const { parts } = withLining(derived, derived)
const part = (id: string): Part => {
  const found = parts.find((p) => p.id === id)
  if (!found) throw new Error(`no ${id}`)
  return found
}
const outline = (id: string) => part(id).patterns[0].outline

describe('end lining laid flat', () => {
  it('gives every panel but the crown one a pattern from its own corner, larger than its net area by its laps', () => {
    const lining = parts.filter((p) => p.kind === 'end-lining')
    expect(lining.filter((p) => p.patterns.length === 0).map((p) => p.id)).toEqual(['nose-lining-crown', 'tail-lining-crown'])
    for (const p of lining.filter((each) => each.patterns.length > 0)) {
      const [{ outline }] = p.patterns
      expect(Math.min(...outline.map(([x]) => x))).toBe(0)
      expect(Math.min(...outline.map(([, y]) => y))).toBe(0)
      expect(outlineArea(outline)).toBeGreaterThan(p.area * 0.98)
      expect(outlineArea(outline)).toBeLessThan(p.area * 1.2)
      expect(p.notComputed).toBeUndefined()
    }
  })

  it('turns the left half over, and the tail against the nose', () => {
    const mirrored = outline('nose-lining-1').map(([x, y]) => [x, y] as const)
    const wide = Math.max(...mirrored.map(([, y]) => y))
    const twin = [...outline('nose-lining-14')].reverse()
    mirrored.forEach(([x, y], i) => {
      expect(twin[i][0]).toBeCloseTo(x, 12)
      expect(twin[i][1]).toBeCloseTo(wide - y, 12)
    })
    // seen from outside, the tail's left half is as the nose's right one
    expect(outline('tail-lining-14')).toEqual(outline('nose-lining-1'))
    expect(outline('tail-lining-1')).toEqual(outline('nose-lining-14'))
  })

  const punched = (id: string): number => part(id).patterns[0].holes.x.length
  const lining = derived.rows.filter((r) => r.kind === 'lining')

  it('has a hole in every panel for each fastener that goes through it, once', () => {
    for (const p of parts.filter((each) => each.kind === 'end-lining' && each.patterns.length > 0)) {
      const { holes } = p.patterns[0]
      const through = lining.flatMap((r) => r.stack.flatMap((s, i) => (r.stacks[s].parts.includes(p.id) ? [`${r.id} ${i}`] : [])))
      const own = holes.x.map((_, k) => `${holes.rows[holes.row[k]]} ${holes.index[k]}`)
      expect([...own].sort()).toEqual(through.sort())
      expect(own.length).toBeGreaterThan(40)
    }
    // both its ribs, the ring and the lip: 31 rivets of the barrel's row, 32 down its rib, 1 on the ring
    expect(punched('nose-lining-1')).toBe(31 + 32 + 1)
  })

  it('spaces the holes of a rib as its row is spaced in the panel that lies on it, and closer in the one over that', () => {
    for (const rib of ['seam-1', 'mid-2', 'seam-3']) {
      const row = lining.find((r) => r.id === `nose-lining-${rib}`)!
      const [, against, over] = row.stacks[0].parts
      const gaps = (id: string): number[] => {
        const { holes } = part(id).patterns[0]
        const k = holes.rows.indexOf(row.id)
        const at = holes.x.flatMap((x, i) => (holes.row[i] === k ? [[x, holes.y[i]]] : []))
        return at.slice(1).map(([x, y], i) => Math.hypot(x - at[i][0], y - at[i][1]))
      }
      const [on, above] = [gaps(against), gaps(over)]
      expect(on).toHaveLength(row.station.length - 1)
      // chords of an edge that is straight but for its sheet's lean; the sheet over is 0.64 mm nearer the middle of every bend
      for (const gap of on) expect(Math.abs(gap - row.spans[0].pitch) * 1000).toBeLessThan(0.05)
      const lost = on.reduce((sum, gap, i) => sum + gap - above[i], 0) * 1000
      expect(lost).toBeGreaterThan(0.64 * 1.2)
      expect(lost).toBeLessThan(0.64 * 1.9)
    }
  })

  it('keeps every hole half a lap from the cut edges, or the row’s end distance from the foot', () => {
    for (const p of parts.filter((each) => each.kind === 'end-lining' && each.patterns.length > 0)) {
      const [{ outline: edge, holes }] = p.patterns
      let least = 1
      holes.x.forEach((x, i) => {
        edge.forEach(([ax, ay], k) => {
          const [bx, by] = edge[(k + 1) % edge.length]
          const [ux, uy] = [bx - ax, by - ay]
          const t = Math.max(0, Math.min(1, ((x - ax) * ux + (holes.y[i] - ay) * uy) / (ux * ux + uy * uy)))
          least = Math.min(least, Math.hypot(ax + t * ux - x, ay + t * uy - holes.y[i]))
        })
      })
      // 2.5 diameters of 3.2 mm at the foot
      expect(least * 1000, p.id).toBeGreaterThan(7.5)
      expect(least * 1000, p.id).toBeLessThan(10.1)
    }
  })

  it('names its corner by the nearest meeting of rows, and says how far it sags', () => {
    const origin = (id: string) => part(id).patterns[0].flat.origin
    // 450 mm of cap less 14; the lip's row 37 mm behind the joint at 3 000 mm
    expect(origin('nose-lining-1')).toMatchObject({ girth: 0.436, says: expect.stringContaining('ring and lip') })
    expect(origin('nose-lining-1').station).toBeCloseTo(3.037, 9)
    // from outside the tail's own left is on the left: its panel 14 is the one beside the lip
    expect(origin('tail-lining-14')).toMatchObject({ girth: -0.436, says: expect.stringContaining('upper left corner') })
    expect(origin('tail-lining-14').station).toBeCloseTo(6.623, 9)
    // the rib of the centre line has its rivets 14 mm right of it, so its place is that of the profile but for the fall of the plan there
    expect(origin('nose-lining-8').girth).toBe(0.436)
    const sag = (n: number): number => part(`nose-lining-${n}`).sag ?? Number.NaN
    for (let n = 1; n <= 6; n++) expect(sag(n)).toBe(sag(15 - n))
    expect(sag(8)).toBeGreaterThan(sag(7))
  })

  it('changes no other part', () => {
    for (const p of derived.parts) if (p.kind !== 'end-lining') expect(parts).toContain(p)
  })
})
