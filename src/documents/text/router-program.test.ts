import { describe, expect, it } from 'vitest'
import { readExample } from '../../../tests/examples.js'
import { design } from '../../checks/index.js'
import { distanceToOutline, outlineArea } from '../../maths/outline.js'
import { readRouterProgram } from './read-router-program.js'
import { routerCuts } from './router-contours.js'
import { routerProgram } from './router-program.js'

const made = design(readExample('sedge-6'))
const part = made.parts.find((p) => p.id === 'floor-panel')
if (!part) throw new Error('no floor panel')
const [pattern] = part.patterns
const CUTTER = 0.01
const program = routerProgram(made, part, pattern, CUTTER)
const read = readRouterProgram(program.text)

describe('the router program of the floor panel', () => {
  it('reads back without a fault, twelve windows and the outside, two passes each', () => {
    expect(read.faults).toEqual([])
    expect(read.cuts).toHaveLength(2 * 13)
    expect(program.cuts).toBe(13)
    // 18 mm and half a millimetre more
    expect(Math.max(...read.cuts.map((c) => c.depth))).toBeCloseTo(0.0185, 9)
  })
  it('leaves the net area of the part', () => {
    const last = read.cuts.filter((_, i) => i % 2 === 1)
    const windows = last.slice(0, -1).reduce((sum, c) => sum + outlineArea(c.path), 0)
    const outside = outlineArea(last[last.length - 1].path)
    // windows anticlockwise, the outside clockwise: the cutter on the left is on the waste side of both
    expect(windows).toBeGreaterThan(0)
    expect(outside).toBeLessThan(0)
    // a thousandth of a millimetre in each figure, round 16 m of edge
    expect(Math.abs(-outside - windows - part.area)).toBeLessThan(16 * 1e-6)
  })
  it('enters and leaves on arcs wider than the cutter, in the waste', () => {
    for (const cut of read.cuts) {
      const [start] = cut.path
      for (const end of [cut.enter, cut.leave])
        expect(Math.hypot(end[0] - start[0], end[1] - start[1]) / Math.SQRT2).toBeGreaterThan(CUTTER / 2)
      // the tool goes down with the compensation off: its whole radius must clear the edge
      expect(distanceToOutline(cut.path, cut.plunge[0], cut.plunge[1])).toBeGreaterThanOrEqual(CUTTER / 2)
    }
  })
  it('comes near no hold-down', () => {
    expect(read.held.length).toBeGreaterThan(6)
    for (const [x, y] of read.held) for (const cut of read.cuts) expect(distanceToOutline(cut.path, x, y)).toBeGreaterThan(0.03 + CUTTER)
  })
  it('leaves windows too narrow for a lead-in to a drill', () => {
    const cuts = routerCuts(pattern, 0.02)
    expect(cuts.drilled.map((d) => d.says).sort()).toEqual(['FO10', 'FO11', 'FO5'])
  })
})
