/** Wrapped gores held against their own sheets: lengths, seam fasteners rolled back into space, and gores that refuse. */
import { describe, expect, it } from 'vitest'
import { exampleText } from '../../../tests/examples.js'
import { randomCoach } from '../../../tests/random-coach.js'
import { readDefinition } from '../../definition/read-definition.js'
import { setInText } from '../../definition/set-in-text.js'
import { add, length, scale, sub } from '../../maths/vec.js'
import { derive } from '../index.js'
import { deriveShell } from '../shell/index.js'
import { groundOf, overAt } from './ground.js'
import { besideEdge, flatEdgeOf } from './wrapped-flat.js'
import { type GoreSheet, wrappedGores } from './wrapped-strip.js'

const { path, text, load } = exampleText('sedge-6')
const { definition } = readDefinition(path, setInText(text, ['ends', 'make'], 'wrapped'), load)
if (!definition) throw new Error('the demonstration is refused')
const { section } = deriveShell(definition)
const ground = groundOf(definition, {
  chain: section.chain,
  toeRow: section.toe + 0.0125,
  sheetEdge: section.toe + 0.025,
  rimReach: 0.05,
})
const sheets = wrappedGores(ground).map((g) => g.sheet) as GoreSheet[]

describe('the sheets of the demonstration', () => {
  it('have edges as long on the flat as in space', () => {
    for (const sheet of sheets) {
      for (const hand of ['p', 'q'] as const) {
        const edge = flatEdgeOf(sheet, hand)
        const whole = sheet.strip[hand].length
        let run = 0
        const steps = 4000
        for (let i = 1; i <= steps; i++) {
          const [a, b] = [i - 1, i].map((k) => besideEdge(edge, hand, (whole * k) / steps, 0).at)
          run += Math.hypot(b[0] - a[0], b[1] - a[1])
        }
        expect(Math.abs(run / whole - 1)).toBeLessThan(1e-6)
      }
    }
  })

  it('have seam fasteners in one place when rolled back: half a sheet in or out of each edge along the normal', () => {
    const t = ground.input.ends.skin.thickness.value
    for (let seam = 1; seam < Math.ceil(ground.gores / 2); seam++) {
      const [right, left] = [sheets[seam - 1].q, sheets[seam].p]
      expect(overAt(ground, seam)).toBe('left')
      for (const girth of [1.0, 1.4, 1.9, 2.3]) {
        const sigma = ground.seamCurves[seam].sigmaAt(girth)
        const own = (edge: GoreSheet['p'], hand: 'p' | 'q', sheet: GoreSheet) =>
          sheet.strip[hand].at(edge.curve.lengthAt(sigma) - edge.from)
        const [below, above] = [own(right, 'q', sheets[seam - 1]), own(left, 'p', sheets[seam])]
        // a rivet runs along the loft's normal: its place on the lower sheet is a thickness under that on the upper
        const outer = ground.seamCurves[seam].atSigma(sigma)
        const normal = scale(sub(outer, above), 2 / t)
        expect(length(sub(add(below, scale(normal, t)), above))).toBeLessThan(1e-5)
      }
    }
  })
})

describe('a gore that cannot be wrapped', () => {
  it('is said with its place, keeps to the loft and has no pattern', () => {
    const found = readDefinition('trial.yaml', randomCoach(3).text, () => null).definition
    if (!found) throw new Error('seed 3 is refused')
    const design = derive(found)
    const refused = (design.ends.wrapped ?? []).filter((w) => w.refused !== null)
    expect(refused.map((w) => w.gore)).toEqual([1, 9])
    for (const { gore } of refused) {
      const part = design.parts.find((p) => p.id === `nose-gore-${gore}`)
      expect(part?.patterns).toEqual([])
      expect(part?.notComputed).toMatch(/No flat sheet wraps between these edges: \d+ mm along/)
      expect(part?.notes[0]).toContain('Cannot be wrapped')
      const rib = design.parts.find((p) => p.id === `nose-mid-rib-${gore}`)
      expect(rib?.mass.value).toBeGreaterThan(0)
    }
  })
})
