/**
 * The invented demonstration's scenes: what the ripple of each must say. Its figures are the design brief's own: a reckoning
 * by hand, to be met within what it allows; ours are exact by construction. Differences are compared, not totals, so that
 * what stands elsewhere on the coach does not come into it.
 */
import { describe, expect, it } from 'vitest'
import { exampleText } from '../../tests/examples.js'
import { design } from '../checks/index.js'
import { readDefinition } from '../definition/read-definition.js'
import { setInText } from '../definition/set-in-text.js'
import { shareUnchanged } from '../definition/share-unchanged.js'
import { createMemo } from '../derive/memo.js'
import { compare } from './compare.js'
import type { Both, Ripple } from './nouns.js'
import { rippleJson, rippleSchema } from './ripple-json.js'
import { rippleText } from './ripple-text.js'

const memo = createMemo()

/** The ripple of an edit of an example's text. */
function rippleOf(name: string, edit: (text: string) => string): Ripple {
  const { path, text, load } = exampleText(name)
  const read = (from: string) => {
    const { definition, faults } = readDefinition(path, from, load)
    if (!definition) throw new Error(faults[0]?.says)
    return definition
  }
  const [before, after] = [read(text), read(edit(text))]
  return compare(design(before, memo), design(shareUnchanged(before, after), memo))
}
const rw3 = (key: string, value: string): Ripple => rippleOf('sedge-6', (text) => setInText(text, ['openings', { id: 'RW3' }, key], value))
const grew = ({ before, after }: Both<number>): number => after - before
const row = (r: Ripple, id: string) => r.counts.rows.find((each) => each.id === id)
const said = (r: Ripple): string => rippleText(r).join('\n')

describe('scene 1: window RW3 80 mm aft on Sedge 6', () => {
  const r = rw3('station', '5825 mm')

  it('is one written value, and the window moved so far', () => {
    expect(r.written).toEqual([{ path: 'openings RW3 station', before: 5.745, after: 5.825 }])
    expect(r.openings.map((o) => o.id)).toEqual(['RW3'])
    expect(r.openings[0].moved?.station).toBeCloseTo(0.08, 12)
    expect(r.openings[0].cutsFrames).toEqual({ added: ['F6'], removed: [] })
  })

  it('cuts F6 in two, about 13 rivets fewer on its hoop and 6 or 7 on its lining row', () => {
    expect(r.parts.changed[0]).toMatchObject({ id: 'frame-F6', pieces: { before: 1, after: 2 } })
    const [hoop, lining] = ['hoop-F6', 'lining-F6'].map((id) => row(r, id))
    expect(Math.abs(-grew(hoop!.count) - 13)).toBeLessThanOrEqual(2)
    expect([6, 7]).toContain(-grew(lining!.count))
    expect([hoop!.solid, lining!.solid]).toEqual([true, false])
    // and of no other row: all the solid rivets that go are the hoop's, all the blind ones the lining's
    expect([grew(r.counts.solid), grew(r.counts.blind)]).toEqual([grew(hoop!.count), grew(lining!.count)])
    // the frame loses in its flanges what the rows lose, and what is left of the broken spans is fitted anew, not new
    const holes = r.parts.changed[0].faces.flatMap((f) => f.holes)
    expect(holes.map((h) => [h.row, h.added, h.removed])).toEqual([
      ['hoop-F6', 0, -grew(hoop!.count)],
      ['lining-F6', 0, -grew(lining!.count)],
    ])
  })

  it('needs a header, a sill and posts, and loses no part', () => {
    expect(r.parts.added.map((p) => p.id).sort()).toEqual(['header-RW3', 'post-RW3-aft', 'post-RW3-fore', 'sill-RW3'])
    expect(r.parts.removed).toEqual([])
    expect(r.openings[0].framing.added.length).toBe(4)
    expect(r.counts.made.map((m) => [m.name, grew(m)])).toEqual([
      ['header', 2],
      ['post', 2],
    ])
  })

  it('leaves the rim ring and its trim as they are, only elsewhere', () => {
    for (const id of ['rim-RW3', 'trim-RW3']) {
      const part = r.parts.changed.find((p) => p.id === id)
      expect([id, part?.most, part?.mass, part?.place !== null]).toEqual([id, 0, null, true])
    }
  })

  it('finds the cut frame, and offers the nearest clean place and the middle of the bay', () => {
    const [finding] = r.checks.appeared
    expect(finding).toMatchObject({ id: 'opening.RW3.frame.F6', verdict: 'caution', other: null })
    expect(finding.mend).toMatch(/nearest clean place is STA 575\d\.\d mm?|nearest clean place is STA 575\d/)
    expect(finding.mend).toContain('STA 5745')
    expect(said(r)).toContain(finding.mend)
  })

  it('says so in the words of a shop, the cut frame before the counts and the counts before the paper', () => {
    const text = said(r)
    const order = [
      'cuts frame F6',
      'is cut by RW3: two pieces are left',
      'hoop-F6: 13 solid rivets fewer',
      'lining-F6: 6 blind rivets fewer',
      'Reissue',
    ]
    const places = order.map((words) => text.indexOf(words))
    expect(places.every((at) => at > 0)).toBe(true)
    expect(places).toEqual([...places].sort((a, b) => a - b))
    expect(rippleText(r, 'inch').join('\n')).toContain('3.150 in aft')
  })

  it('names the documents to issue again, and those that are new', () => {
    const of = (status: string) => r.documents.filter((d) => d.status === status).map((d) => d.path)
    expect(of('reissue')).toEqual(expect.arrayContaining(['cover.pdf', 'sheets/strake-side-left.dxf', 'holes/frame-F6-outer-flange.csv']))
    expect(of('reissue')).not.toContain('sheets/strake-side-right.dxf')
    expect(of('new')).toEqual(expect.arrayContaining(['members/header-RW3.dxf', 'programs/post-RW3-aft.nc']))
    expect(of('withdraw')).toEqual([])
    expect(r.documents.find((d) => d.path === 'sheets/strake-side-left.dxf')?.because).toEqual(['strake-side-left'])
  })
})

describe('scene 1: the same window 80 mm up', () => {
  const r = rw3('wl', '1240 mm')

  it('changes no count, but its rim touches the lap at WL 1502: it would leak', () => {
    expect([grew(r.counts.solid), grew(r.counts.blind), r.parts.added, r.parts.removed]).toEqual([0, 0, [], []])
    const lap = r.checks.appeared.find((f) => f.id === 'opening.RW3.lap')
    expect(lap).toMatchObject({ verdict: 'fail', other: 'pass' })
    expect(lap?.says).toContain('It would leak')
    expect(Math.abs((lap?.places[0].waterline ?? 0) - 1.5024)).toBeLessThan(5e-4)
  })
})

describe('scene 1: the same window 560 wide', () => {
  const r = rw3('width', '560 mm')

  it("sets the rim's rivets on the edge of the frame's flange", () => {
    const flange = r.checks.appeared.find((f) => f.id === 'opening.RW3.flange')
    expect(flange).toMatchObject({ verdict: 'fail', other: 'pass' })
    expect(flange?.says).toContain('stand 0 mm from the flange edge of frame F5')
  })

  it('moves no hole further than the half of what the window grew', () => {
    const side = r.parts.changed.find((p) => p.id === 'strake-side-left')
    expect(side?.most).toBeCloseTo(0.02, 9)
  })
})

describe('scene 3: one bay more on Sedge 8', () => {
  const bay = (text: string): string => {
    const [last, tail] = ['  - {id: F9, station: 7880 mm', ', joint: tail}']
    expect(text).toContain(last + tail)
    const longer = text.replace(last + tail, `${last}}\n  - {id: F10, station: 8490 mm${tail}`)
    return setInText(longer, ['openings', { id: 'TW1' }, 'station'], '9530 mm')
  }
  const r = rippleOf('sedge-8', bay)

  it('is too long for the floor board and for any stock of the strakes', () => {
    const finding = (id: string) => r.checks.appeared.find((f) => f.id === id)
    expect(finding('floor.length')).toMatchObject({ verdict: 'fail', other: 'pass' })
    expect(finding('floor.length')?.says).toMatch(/7660 mm long.*7320 mm/)
    const strakes = r.checks.appeared.filter((f) => /^stock\..*\.length$/.test(f.id))
    expect(strakes.length).toBeGreaterThan(3)
    for (const s of strakes)
      expect(`${s.verdict} ${s.says} ${s.mend}`).toMatch(
        /^fail .*5540 mm long.*\(the longest is 518\d(\.\d)? mm\): a splice or other stock\.$/,
      )
  })

  it('is 610 longer over all, 8784 in the body and its trailer', () => {
    const overall = r.overall.find((o) => o.name === 'overall length')
    expect(grew(overall!)).toBeCloseTo(0.61, 9)
    expect(Math.abs(overall!.after - 8.784)).toBeLessThan(0.0005)
    expect(said(r)).toMatch(/The overall length is 878[34]\.\d mm/)
  })

  it('leaves the holes forward of the new bay where they are, on either side', () => {
    for (const id of ['strake-side-left', 'strake-side-right']) {
      const part = r.parts.changed.find((p) => p.id === id)
      expect([id, part?.faces[0].outline?.by]).toEqual([id, expect.closeTo(0.61, 9)])
      const forward = part?.faces[0].holes.filter((h) => /^hoop-F[2-8]$/.test(h.row))
      expect(forward).toEqual([])
    }
  })
})

describe('the axles of Sedge 6 a hand aft', () => {
  const r = rippleOf('sedge-6', (text) => text.replace('[4690 mm, 5480 mm]', '[4790 mm, 5580 mm]'))

  it('tells every case by how far its hitch goes, and what the coach weighs only where that changes', () => {
    expect(r.loads.cases).toHaveLength(8)
    const goes = r.loads.cases.map(({ share }) => (share.after ?? 0) - (share.before ?? 0))
    // statics: 100 mm of the 4205 mm between ball and axles, less what the running gear itself takes aft, a seventh of the weight
    for (const by of goes) {
      expect(by).toBeGreaterThan(0.015)
      expect(by).toBeLessThan(0.1 / 4.205)
    }
    expect([...goes].sort((a, b) => b - a)).toEqual(goes)
    expect(said(r)).toMatch(/Case B, unloaded, cylinders full: the hitch carries 14\.\d % in place of 13\.0 %/)
  })

  it('says nothing of loads where nothing weighs otherwise', () => {
    const finish = rippleOf('sedge-6', (text) => setInText(text, ['coach', 'name'], 'Sedge 6 again'))
    expect(finish.loads).toEqual({ unloaded: null, capacity: null, cases: [] })
  })
})

describe('scene 4: 0.040 in sheet for the barrel of Sedge 6', () => {
  const r = rippleOf('sedge-6', (text) => setInText(text, ['shell', 'skin', 'thickness'], '0.040 in'))

  it('adds about 13 kg, all of it strakes', () => {
    // the brief reckons on the whole barrel sheet; ours is net of the openings
    const strakes = r.masses.kinds.find((k) => k.name === 'strake')
    expect(grew(strakes!)).toBeGreaterThan(10)
    expect(grew(strakes!)).toBeLessThan(14)
    expect(Math.abs(grew(r.masses.total) - grew(strakes!))).toBeLessThan(0.05)
  })

  it('changes no rivet length and no count, and the sheet bears more under each rivet', () => {
    expect([r.counts.lengths, grew(r.counts.solid), grew(r.counts.blind), grew(r.counts.holes)]).toEqual([[], 0, 0, 0])
    const bearing = r.counts.rows.flatMap((each) => (each.bearing ? [each.bearing.after / each.bearing.before] : []))
    expect(bearing.length).toBeGreaterThan(10)
    // bearing goes with the thickness of the weaker sheet: 1.016 for 0.81 where it is the skin, less where another is weaker now
    for (const ratio of bearing) {
      expect(ratio).toBeGreaterThan(1)
      expect(ratio).toBeLessThan(1.016 / 0.81 + 1e-9)
    }
    expect(said(r)).toContain('No rivet length changes.')
  })

  it('moves frames and lining in, which is one line, and says nothing else of any part but the gauge', () => {
    expect(r.inward.map((i) => i.what)).toEqual(['hoop frames', 'joint frames', 'lining'])
    for (const { by } of r.inward) expect(by).toBeCloseTo(1.016e-3 - 0.81e-3, 12)
    expect([r.checks.appeared, r.checks.gone, r.parts.added, r.parts.removed]).toEqual([[], [], [], []])
    // a developed half section turns through 150 degrees at most, so from the crown nothing shifts by more than 0.6 mm
    const half = ((150 * Math.PI) / 180) * r.inward[0].by
    expect(half).toBeLessThan(0.6e-3)
    for (const part of r.parts.changed) expect(part.most).toBeLessThan(2 * half)
    const lines = rippleText(r)
    const from = lines.indexOf('Parts')
    const parts = lines.slice(
      from + 1,
      lines.findIndex((line, i) => i > from && !line.startsWith(' ')),
    )
    expect(parts).toHaveLength(2)
    expect(parts[0]).toMatch(/The mould line stays, so hoop frames, joint frames and lining move in by (up to )?0\.2 mm/)
    expect(parts[1]).toMatch(/0\.040 in in place of .*strake-crown/)
  })
})

describe('the printed form', () => {
  it('is what its schema says, to the last key', () => {
    const printed = JSON.parse(JSON.stringify(rippleJson(rw3('station', '5825 mm'))))
    expect(rippleSchema.safeParse(printed).error?.issues ?? []).toEqual([])
  })
})
