/** Named fixtures: each was once wrong in a random coach. */
import { describe, expect, it } from 'vitest'
import { readExample } from '../../../tests/examples.js'
import { outlineArea } from '../../maths/outline.js'
import { derive } from '../index.js'
import type { OpeningShape } from './opening-shape.js'
import { ringOf } from './ring.js'
import { lengthsAgree } from './verify.js'
import { depthsAgree } from './verify-counts.js'

const sedge6 = readExample('sedge-6')

describe('found by chance', () => {
  it('a joint frame under end skins that lap over the barrel lies straight behind the barrel skin', () => {
    const { shell } = derive({ ...sedge6, shell: { ...sedge6.shell, joint: { ...sedge6.shell.joint, over: 'end' } } })
    expect(depthsAgree(shell).largest).toBeLessThan(1e-12)
    expect(lengthsAgree(shell).largest).toBeLessThan(1e-8)
  })

  it('a seam that crosses a ring past the corner where its walk begins is shared on both legs', () => {
    const shape = (side: 'left' | 'right'): OpeningShape => ({
      id: 'D1',
      says: 'door',
      surface: side,
      side,
      x0: 3.4,
      x1: 3.9,
      v0: side === 'right' ? 1 : -1.5,
      v1: side === 'right' ? 1.5 : -1,
      corner: 0.16,
      definition: null,
    })
    const marks = (side: 'left' | 'right', v: number): string[] =>
      ringOf(shape(side), 0.01, [{ row: 'seam', mark: 'seam', v }], 0.01, null)
        .controls.filter((c) => c.mark.startsWith('seam'))
        .map((c) => c.mark)
        .sort()
    expect(marks('right', 1.02)).toEqual(['seam-aft', 'seam-fore'])
    expect(marks('left', -1.02)).toEqual(['seam-aft', 'seam-fore'])
  })

  it('a window whose rim has no fastener on a straight has no member there, and the coach is derived all the same', () => {
    const openings = sedge6.openings.map((o) => (o.id === 'RW2' ? { ...o, corner: 0.2549 } : o))
    const { openings: derived, parts } = derive({ ...sedge6, openings, rows: { ...sedge6.rows, rim: { ...sedge6.rows.rim, pitch: 0.2 } } })
    expect(derived.find((o) => o.id === 'RW2')?.cutsFrames).toEqual(['F3'])
    expect(parts.some((p) => p.id === 'post-RW2-fore')).toBe(false)
  })

  it("a corner that runs through a lap or from one radius to another is parted there: a lining's cut has the area it has in space", () => {
    const { parts } = derive(sedge6)
    const crown = parts.find((p) => p.id === 'strake-shoulder-right')
    // a corner that is not stretched stays one arc
    const door = crown?.patterns[0].cuts.find((c) => c.opening === 'D1')
    expect(door && outlineArea(door.outline)).toBeGreaterThan(0)
    expect(door?.outline.filter(([, , bulge]) => bulge !== 0).length).toBeLessThanOrEqual(4)
  })
})
