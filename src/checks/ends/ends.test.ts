/** The rules of nose and tail on the demonstration coaches and on single things changed in them. */
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { readDefinition } from '../../definition/read-definition.js'
import { derive } from '../../derive/index.js'
import { createMemo } from '../../derive/memo.js'
import type { Check } from '../../derive/nouns.js'
import { endChecks } from './index.js'

type Edit = readonly [from: string, to: string]

/** Where the gores part is for each coach to choose; these tests are about one choice. */
const SEAMS = 'seams: [13 deg, 35 deg, 60 deg]'

function checksOf(name: string, ...edits: readonly Edit[]): readonly Check[] {
  const path = `examples/${name}.yaml`
  const used = new Set<Edit>()
  const edited = (file: string): string => {
    let text = readFileSync(file, 'utf8').replace(/seams: \[[\d., deg]+\]/, SEAMS)
    for (const edit of edits) {
      if (!text.includes(edit[0])) continue
      used.add(edit)
      text = text.replace(edit[0], edit[1])
    }
    return text
  }
  const { definition, faults } = readDefinition(path, edited(path), edited)
  expect(faults).toEqual([])
  expect(used.size).toBe(edits.length)
  if (!definition) throw new Error('no definition')
  return endChecks(derive(definition, createMemo()))
}

const byId = (checks: readonly Check[], id: string): Check => {
  const found = checks.find((c) => c.id === id)
  if (!found) throw new Error(`no check ${id} among ${checks.map((c) => c.id).join(', ')}`)
  return found
}
const failing = (checks: readonly Check[]): string[] => checks.filter((c) => c.verdict === 'fail').map((c) => c.id)

const TW1 = 'station: 7700 mm, wl: 1250 mm, width: 400 mm'
const NW1 = 'station: 1960 mm, wl: 1160 mm, width: 800 mm, height: 500 mm'

describe('a nose window wider than the centre gore', () => {
  const checks = checksOf('sedge-6')

  it('cuts two gore seams with their ribs and three mid ribs, each said once with its place', () => {
    const cut = checks.filter((c) => c.verdict === 'caution' && /^opening\.NW1\.(seam|rib)\./.test(c.id)).map((c) => c.id)
    expect(cut).toEqual([
      'opening.NW1.seam.nose-seam-3',
      'opening.NW1.seam.nose-seam-4',
      'opening.NW1.rib.nose-mid-rib-3',
      'opening.NW1.rib.nose-mid-rib-4',
      'opening.NW1.rib.nose-mid-rib-5',
    ])
    const seam = byId(checks, 'opening.NW1.seam.nose-seam-3')
    expect(seam.concerns).toEqual(['NW1', 'nose-seam-3', 'nose-seam-rib-3'])
    // it crosses head and sill, each about half the window's height from its middle at WL 1152, and stands right of the centre line
    expect(seam.places.map((p) => Math.round((p.waterline - 1.152) * 100) / 100)).toEqual([0.24, -0.25])
    for (const p of seam.places) expect(p.end?.y).toBeGreaterThan(0.2)
  })

  it('is flat where the skin is not: the sag of a superellipse and its profile at the corners of the ring', () => {
    const pane = byId(checks, 'opening.NW1.pane')
    expect(pane).toMatchObject({ verdict: 'caution', capacity: 0.003 })
    // by hand along the two axes: 267 mm up on a face of 3.8 m radius falls 9.4 mm, 417 mm across a plan near |y/1176|^2.6 falls
    // 1053 (1 - (1 - (417/1176)^2.6)^(1/2.6)) = 27.8 mm; the rounded corners come between the greater and the sum of the two
    expect(pane.demand).toBeGreaterThan(0.0278)
    expect(pane.demand).toBeLessThan(0.0278 + 0.0094)
    expect(pane.says).toContain('formed frame 31.3 mm deep')
  })

  it('leaks where a seam leaves it at a slant, in a corner or along its side', () => {
    // 480 wide: the seam 13 degrees off the centre line leaves by the rounded corner
    const slanted = byId(checksOf('sedge-6', [NW1, NW1.replace('800', '520')]), 'opening.NW1.seam.nose-seam-3')
    expect(slanted.verdict).toBe('fail')
    expect(slanted.says).toContain('slant')
  })
})

describe('a tail window between two seams', () => {
  it('400 mm wide has rim rivets on the lap and the rib of the seam beside it; the width that is offered is clean', () => {
    const checks = checksOf('sedge-6')
    expect(failing(checks)).toEqual(['opening.TW1.seam', 'opening.TW1.flange'])
    const { mend, capacity } = byId(checks, 'opening.TW1.seam')
    // half the width and the rivet line from the centre, half a lap from the seam, which stands about 235 mm out at that height
    expect(capacity).toBeGreaterThan(-0.001)
    expect(capacity).toBeLessThan(0.001)
    const width = Number(/up to (\d+) mm/.exec(mend ?? '')?.[1])
    expect(width).toBeLessThan(400 - 2 * 6)
    expect(failing(checksOf('sedge-6', [TW1, TW1.replace('400', String(width))]))).toEqual([])
    expect(failing(checksOf('sedge-6', [TW1, TW1.replace('400', String(width + 10))]))).toContain('opening.TW1.flange')
  })

  it('too near the crown cap or the base channel is refused with what to change', () => {
    const high = byId(
      checksOf('sedge-6', [TW1, TW1.replace('7700', '7271').replace('1250', '1909').replace('400', '300')]),
      'opening.TW1.cap',
    )
    const low = byId(checksOf('sedge-6', [TW1, TW1.replace('1250', '155').replace('400', '300')]), 'opening.TW1.base')
    for (const check of [high, low]) {
      expect(check.verdict).toBe('fail')
      expect(check.mend).toMatch(/^Move it \d+ mm (down|up) along the skin/)
    }
  })

  it('on the crown cap cuts its lap and ring, and only those gore seams that begin below it', () => {
    const vent = checksOf('sedge-4').filter((c) => c.concerns.includes('RV2'))
    expect(byId(vent, 'opening.RV2.cap')).toMatchObject({ verdict: 'caution', says: expect.stringContaining('header ring') })
    expect(vent.filter((c) => /\.seam\./.test(c.id)).map((c) => c.id)).toEqual([
      'opening.RV2.seam.tail-seam-3',
      'opening.RV2.seam.tail-seam-4',
    ])
    expect(byId(vent, 'opening.RV2.pane').says).toMatch(/plinth 13\.\d mm high/)
  })

  it('that runs off its end is left out and said, with a place where it would lie', () => {
    const near = TW1.replace('7700', '6810').replace('1250', '2023')
    const off = byId(checksOf('sedge-6', [TW1, near]), 'opening.TW1.off-end')
    expect(off.verdict).toBe('fail')
    const [, station, wl] = /at STA (\d+) WL (\d+)\.$/.exec(off.mend ?? '') ?? []
    expect(failing(checksOf('sedge-6', [TW1, near.replace('6810', station).replace('2023', wl)]))).not.toContain('opening.TW1.off-end')
    // where no other height helps, a smaller one is offered
    const wide = byId(checksOf('sedge-6', [TW1, TW1.replace('400', '2280')]), 'opening.TW1.off-end')
    expect(wide.mend).toMatch(/about \d+ x \d+ mm would lie on it/)
    // its sill hangs below the toe: turned under as the skin is there, the way in from the pane leads back up among the coach
    const low = TW1.replace('7700', '7730').replace('1250', '-130')
    expect(byId(checksOf('sedge-6', [TW1, low]), 'opening.TW1.off-end').verdict).toBe('fail')
  })

  it('and another above it must leave room for both rings', () => {
    const second = `openings:\n  - {id: TW2, kind: window, says: second, surface: tail, station: 7700 mm, wl: 900 mm, width: 300 mm, height: 300 mm, corner: 75 mm, mass: 3 kg, opens: no}`
    const apart = (wl: number): Check => byId(checksOf('sedge-6', ['openings:', second.replace('900', String(wl))]), 'openings.TW2.TW1')
    // 350 of waterline less two halves of 150, on a face that leans a little and so is longer than its waterlines tell
    const clear = apart(900)
    expect(clear.verdict).toBe('pass')
    expect(clear.capacity).toBeGreaterThan(0.04)
    expect(clear.capacity).toBeLessThan(0.06)
    expect(apart(930)).toMatchObject({ verdict: 'fail', mend: expect.stringContaining('further apart') })
    expect(apart(1100).says).toContain('overlap')
  })
})

describe('the panels of an end', () => {
  const checks = checksOf('sedge-6')

  it('each fit a listed sheet: the longest ones are too long for 108 in', () => {
    const outer = byId(checks, 'stock.end-gore-1')
    // half girth 3178.8 less the cap's 450, half a lap of 12.5, the toe flange of 19 and 10.4 that its mid rib is longer: by hand
    expect(outer.says).toContain('152 in')
    expect(Number(/blank of about ([\d.]+)/.exec(outer.says)?.[1])).toBeCloseTo(2770.6, 1)
    expect(outer.demand).toBeLessThan(outer.capacity ?? 0)
    expect(byId(checks, 'stock.end-gore-4').says).toContain('48 in x 108 in')
    expect(outer.concerns).toEqual(['nose-gore-1', 'tail-gore-1', 'nose-gore-7', 'tail-gore-7'])
  })

  it('are refused where no listed sheet takes them', () => {
    const wide = checksOf('sedge-6', [SEAMS, 'seams: [13 deg, 25 deg]'])
    expect(byId(wide, 'stock.end-gore-1')).toMatchObject({ verdict: 'fail', mend: expect.stringContaining('More gores') })
  })

  it('lap with edge enough; a lap of 10 mm has not', () => {
    expect(byId(checks, 'lap.end-gore')).toMatchObject({ verdict: 'pass', capacity: 0.0125 })
    expect(byId(checks, 'lap.end-joint').capacity).toBeCloseTo((0.05 - 0.025) / 2, 12)
    const narrow = byId(checksOf('sedge-6', ['  lap: 25 mm\nprocess:', '  lap: 10 mm\nprocess:']), 'lap.end-gore')
    expect(narrow).toMatchObject({ verdict: 'fail', capacity: 0.005 })
  })

  it('meet the barrel on an edge one sheet further in: 6353.3 against 6357.5 mm', () => {
    const edge = byId(checks, 'ends.joint-edge')
    expect(edge.verdict).toBe('pass')
    expect(edge.says).toMatch(/6353\.3 mm .* 6357\.5 mm/)
    // half the section turns 150 degrees: 2 x 0.81 x 150 pi / 180 = 4.24
    expect(edge.says).toContain('4.2 mm shorter')
    const over = byId(checksOf('sedge-6', ['over: barrel', 'over: end']), 'ends.joint-edge')
    expect(over.says).toContain('5.3 mm longer')
  })
})

describe('fasteners of the ends', () => {
  it('keep three diameters from each other, and from those of the barrel at the joint', () => {
    const spacing = byId(checksOf('sedge-6'), 'spacing.ends')
    expect(spacing.verdict).toBe('pass')
    // toe rivets are 5/32; the last of a seam stands 2.5 x 3.175 above the toe and the toe's own 9.5 below it
    expect(spacing.demand).toBeCloseTo(3 * (5 / 32) * 0.0254, 9)
    expect(spacing.capacity).toBeCloseTo(2.5 * 0.003175 + 0.0095, 4)
  })

  it('too near each other are named, and the pass goes', () => {
    const near = checksOf('sedge-6', ['  edge distance: 2 ', '  min pitch: 6\n  edge distance: 2 '])
    expect(failing(near)).toEqual(expect.arrayContaining([expect.stringMatching(/^spacing\.nose-seam-4\.nose-toe$/)]))
    expect(near.map((c) => c.id)).not.toContain('spacing.ends')
  })

  it('stand no further apart than the shop allows, or it is said', () => {
    const checks = checksOf('sedge-6')
    expect(
      checks
        .filter((c) => c.id.startsWith('pitch.end-'))
        .map((c) => c.id)
        .sort(),
    ).toEqual(['gore', 'rib', 'cap', 'base', 'toe', 'rim'].map((kind) => `pitch.end-${kind}`).sort())
    expect(byId(checks, 'pitch.end-gore').verdict).toBe('pass')
    expect(
      byId(checksOf('sedge-6', ['gore:   {fastener: S4, pitch: 25.4 mm}', 'gore:   {fastener: S4, pitch: 50 mm}']), 'pitch.end-gore'),
    ).toMatchObject({
      verdict: 'caution',
      capacity: expect.closeTo(12 * 0.003175, 12),
    })
  })
})

describe('a flat vent on the roof', () => {
  it('needs a plinth as high as the camber under its rim', () => {
    const vent = byId(checksOf('sedge-6'), 'opening.RV1.pane')
    // half of 356 and the ring's reach on a roof of 3.6 m radius, by girth: R (1 - cos(g / R))
    const g = 0.178 + 0.011 + 2 * 0.003175
    expect(vent.verdict).toBe('caution')
    expect(vent.demand).toBeCloseTo(3.6 * (1 - Math.cos(g / 3.6)), 4)
    expect(vent.says).toContain('plinth')
  })

  it('leave a bucking bar room beside the webs of ribs and rings: 7 mm less half of 1.6, by hand', () => {
    expect(byId(checksOf('sedge-6'), 'buck.ends')).toMatchObject({ verdict: 'pass', demand: 0.005, capacity: expect.closeTo(0.0062, 9) })
  })
})
