/** Named fixtures: each was once wrong in a random coach. */
import { describe, expect, it } from 'vitest'
import { exampleText, readExample } from '../../../tests/examples.js'
import { readDefinition } from '../../definition/read-definition.js'
import { developed } from '../../maths/development.js'
import { outlineArea } from '../../maths/outline.js'
import { derive } from '../index.js'
import { type OpeningShape, signedDistance } from './opening-shape.js'
import { ringOf } from './ring.js'
import { holesMeet, lengthsAgree } from './verify.js'
import { depthsAgree, nothingLost } from './verify-counts.js'

const sedge6 = readExample('sedge-6')

const NO_GEAR = { ground: null, tube: null, wheel: null, wheelBox: null }

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

  it('a stringer too short for two fasteners is not made, and no row runs backwards', () => {
    // leaves 45 mm of seam 3 between the window and frame F3
    const window = {
      ...sedge6.openings[0],
      id: 'X1',
      surface: 'left' as const,
      station: 3.94,
      waterline: 0.3,
      width: 0.42,
      height: 0.3,
      corner: 0.02,
    }
    const shell = { ...sedge6.shell, rim: { ...sedge6.shell.rim, minStub: 0.004 } }
    for (let station = 3.9; station < 3.99; station += 0.008) {
      const design = derive({ ...sedge6, shell, gear: null, openings: [{ ...window, station }] })
      expect(nothingLost(design.shell)).toEqual([])
      for (const row of design.rows)
        for (const span of row.spans) expect(span.pitch, `${row.id} ${span.from}-${span.to}`).toBeGreaterThan(0)
    }
  })

  it('a toe flange turned outward is bent about its outer face, turned inward about its inner one', () => {
    const toe = { flange: 0.02, turn: Math.PI / 6, bendRadius: 0.003, kFactor: 0.42 }
    const t = sedge6.shell.skin.thickness.value
    const flat = (turn: number): number => {
      const { shell } = derive({ ...sedge6, shell: { ...sedge6.shell, toe: { ...toe, turn } } })
      expect(lengthsAgree(shell).largest).toBeLessThan(1e-8)
      const lower = shell.parts.find((p) => p.id === 'strake-lower-right')
      return Math.max(...(lower?.patterns[0].outline.map((p) => p[1]) ?? []))
    }
    const allowance = (Math.PI / 6) * (0.003 + 0.42 * t)
    const setback = Math.tan(Math.PI / 12)
    expect(flat(toe.turn) - flat(-toe.turn)).toBeCloseTo(-(0.003 + t) * setback + 0.003 * setback, 12)
    const straight = flat(0)
    expect(flat(-toe.turn) - straight).toBeCloseTo(allowance - 0.003 * setback, 12)
  })

  it('a toe flange shorter than its bend, or folded flat, is refused in a sentence', () => {
    const { path, text, load } = exampleText('sedge-6')
    const says = (toe: string) =>
      readDefinition(path, `${text}\nshell: {toe: ${toe}}\n`, load)
        .faults.map((f) => f.says)
        .join()
    expect(says('{flange: 5 mm, turn: 90 deg, bend radius: 6 mm}')).toMatch(/toe flange.*takes up 6\.8/)
    expect(says('{turn: 180 deg}')).toMatch(/toe turn.*on its own sheet/)
    expect(says('{flange: 19 mm, turn: -30 deg}')).toBe('')
  })

  it("layers under the skin are not pulled out of shape by the toe's bend, however tight", () => {
    const toe = { flange: 0.02, turn: 1.2, bendRadius: 0.0001, kFactor: 0.42 }
    const { shell } = derive({ ...sedge6, shell: { ...sedge6.shell, toe } })
    expect(holesMeet(shell).largest).toBeLessThan(1e-9)
    expect(lengthsAgree(shell).largest).toBeLessThan(1e-8)
  })

  it('a seam that only the ring reaches keeps its own fasteners: none is shared', () => {
    const { id, corner, ...rest } = {
      id: 'W1',
      corner: 0.05,
      says: 'window',
      surface: 'right' as const,
      side: 'right' as const,
      definition: null,
    }
    const shape = { ...rest, id, corner, x0: 3, x1: 3.5, v0: 1, v1: 1.5 }
    const shared = (v: number) =>
      ringOf(shape, 0.02, [{ row: 'seam', mark: 'seam', v }], 0.001, null).controls.filter((c) => c.shared.length > 0)
    expect(shared(0.9999)).toHaveLength(0)
    expect(shared(1.04)).toHaveLength(2)
  })

  it('a stringer stops clear of the rim ring also where it meets it at a corner', () => {
    // the seam passes just under the head of the opening, inside its corners
    const door = {
      ...sedge6.openings[0],
      id: 'X1',
      surface: 'left' as const,
      station: 5.2,
      waterline: 1.2,
      width: 0.5,
      height: 0.62,
      corner: 0.12,
    }
    const { shell } = derive({ ...sedge6, openings: [door] })
    expect(nothingLost(shell)).toEqual([])
    const ring = shell.rims.find((r) => r.shape.id === 'X1')
    const outer = ring?.plate.ring?.outer
    const seam = shell.rows.find((r) => r.id === 'seam-2-left')
    expect(outer && seam?.station.every((x, i) => signedDistance(outer, x, developed(shell.laid.skin, seam.girth[i])) > 0)).toBe(true)
  })

  it('an arc tighter than the deepest metal inside it is refused: the joint frame, or a trim ring', () => {
    const { path, text, load } = exampleText('sedge-6')
    const says = (shell: string) =>
      readDefinition(path, `${text}\nshell: ${shell}\n`, load)
        .faults.map((f) => f.says)
        .join()
    expect(says('{joint frame: {height: 299 mm}}')).toMatch(/turn-under radius.*built up inside it/)
    expect(says('{rim: {thickness: 241 mm}}')).toMatch(/turn-under radius.*built up inside it/)
  })

  it('an edge channel of which an opening leaves nothing is no part', () => {
    const long = {
      ...sedge6.openings[0],
      id: 'X1',
      surface: 'left' as const,
      station: 4.83,
      waterline: 0.2,
      width: 3.66,
      height: 0.6,
      corner: 0.05,
    }
    const { parts } = derive({ ...sedge6, gear: null, openings: [long] })
    expect(parts.filter((p) => p.kind === 'edge-channel').map((p) => p.id)).toEqual(['edge-channel-right'])
    expect(parts.every((p) => p.centre.every(Number.isFinite))).toBe(true)
  })

  it('two laps of the lining that touch only on the lining itself are refused', () => {
    const { path, text, load } = exampleText('sedge-6')
    const says = (upper: number, lower: number) => {
      const seams = `seams: [{id: lining-1, girth: ${upper} mm}, {id: lining-2, girth: ${lower} mm}]`
      return readDefinition(path, text.replace('lining:', `lining:\n  ${seams}`), load)
        .faults.map((f) => f.says)
        .join()
    }
    // on the shoulder of 380 mm a lap of 20 mm on the lining covers 23.7 mm of the mould line
    expect(says(1000, 1023)).toMatch(/lining-1 is only 23 mm away/)
    expect(says(1000, 1024)).toBe('')
  })

  it('an edge channel under two openings whose gaps run into each other is cut once', () => {
    const hatch = { ...sedge6.openings[0], surface: 'left' as const, waterline: 0.05, width: 0.5, height: 0.3, corner: 0.02 }
    const two = [
      { ...hatch, id: 'X1', station: 4 },
      { ...hatch, id: 'X2', station: 4.555, width: 0.59 },
    ]
    const channel = (openings: typeof two) => derive({ ...sedge6, gear: null, openings }).parts.find((p) => p.id === 'edge-channel-left')
    const [none, both, one] = [channel([]), channel(two), channel([{ ...hatch, id: 'X1', station: 4.3, width: 1.1 }])]
    expect(both?.area).toBeLessThan(none?.area ?? 0)
    expect(both?.area).toBeCloseTo(one?.area ?? 0, 12)
    expect(both?.mass.value).toBeCloseTo(one?.mass.value ?? 0, 12)
  })

  it('a lining panel that one opening takes away whole is no part', () => {
    const big = {
      ...sedge6.openings[0],
      id: 'X1',
      surface: 'left' as const,
      station: 4.9,
      waterline: 0.9,
      width: 1.6,
      height: 2,
      corner: 0.05,
    }
    const { parts, openings } = derive({ ...sedge6, lining: { ...sedge6.lining, joints: ['F3', 'F4', 'F5'] }, gear: null, openings: [big] })
    const ids = parts.map((p) => p.id)
    expect(ids).toContain('lining-band-2-left-F5-F7')
    expect(ids).not.toContain('lining-band-2-left-F4-F5')
    expect(openings[0].lining.every((id) => ids.includes(id))).toBe(true)
  })

  it('a toe row has no stretch without room for two fasteners', () => {
    for (let station = 3.2; station < 3.6; station += 0.01) {
      const gear = { ...NO_GEAR, spindles: [station + 0.3], arm: 0.15, wheelOpening: { half: 0.3, top: 0.2, corner: 0.06 } }
      const { rows } = derive({ ...sedge6, gear, openings: [] })
      for (const row of rows) for (const span of row.spans) expect(span.pitch, `${row.id} at ${station}`).toBeGreaterThan(1e-4)
    }
  })
})
