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

  it('changes no other part', () => {
    for (const p of derived.parts) if (p.kind !== 'end-lining') expect(parts).toContain(p)
  })
})
