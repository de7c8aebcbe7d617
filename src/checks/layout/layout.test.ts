/** The rules on the invented demonstration coaches and on single things changed in them. Expected figures come from the shop's own brief. */
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { readDefinition } from '../../definition/read-definition.js'
import type { Check } from '../../derive/nouns.js'
import { design } from '../index.js'

function checksOf(file: string, ...edits: [from: string, to: string][]): readonly Check[] {
  const path = `examples/${file}`
  let text = readFileSync(path, 'utf8')
  for (const [from, to] of edits) {
    expect(text).toContain(from)
    text = text.replace(from, to)
  }
  const read = readDefinition(path, text, (p) => readFileSync(p, 'utf8'))
  expect(read.faults).toEqual([])
  if (!read.definition) throw new Error('no definition')
  return design(read.definition).checks
}

const failing = (checks: readonly Check[]): string[] => checks.filter((c) => c.verdict === 'fail').map((c) => c.id)
const cautions = (checks: readonly Check[]): string[] => checks.filter((c) => c.verdict === 'caution').map((c) => c.id)
const byId = (checks: readonly Check[], id: string): Check => {
  const found = checks.find((c) => c.id === id)
  if (!found) throw new Error(`no check ${id}`)
  return found
}

const RW3 = 'surface: R, station: 5745 mm, wl: 1160 mm, width: 520 mm'

describe('the layout of the demonstration coaches', () => {
  it('fails nothing on the barrel of any of the three', () => {
    for (const file of ['sedge-4.yaml', 'sedge-6.yaml', 'sedge-8.yaml'])
      expect(failing(checksOf(file).filter((c) => !c.places.some((p) => p.end)))).toEqual([])
  })

  it('finds what a person would find on Sedge 6, and the leg cut twice', () => {
    const checks = checksOf('sedge-6.yaml')
    expect(cautions(checks)).toEqual(
      expect.arrayContaining([
        'opening.D1.frame.F2',
        'opening.RW2.frame.F3',
        'opening.CW1.frame.F5',
        'opening.D1.lap.seam-2-right',
        'opening.D1.lap.seam-3-right',
        'opening.wheel-right.frame.F4',
        'opening.wheel-right.frame.F5',
        'opening.wheel-left.frame.F4',
        'opening.wheel-left.frame.F5',
        'frame.F5.right.cut-twice.CW1.wheel-right',
        'lap.joint-F1',
      ]),
    )
    expect(byId(checks, 'frame.F5.right.cut-twice.CW1.wheel-right').says).toContain('705 mm')
    expect(byId(checks, 'axle.4690').says).toContain('290 mm')
    expect(byId(checks, 'axle.5480').says).toContain('210 mm')
    expect(byId(checks, 'axle.5480').margin).toBeCloseTo(210 / 200 - 1, 9)
  })

  it('names every rule that is not written as not checked', () => {
    const silent = checksOf('sedge-6.yaml').filter((c) => c.verdict === 'not-checked')
    expect(silent.map((c) => c.id)).toEqual(
      expect.arrayContaining(['not-checked.forming', 'not-checked.holes-meet', 'not-checked.structure']),
    )
    for (const c of silent) expect(c.margin).toBeNull()
  })
})

describe('one thing changed', () => {
  it('a window 80 mm aft cuts F6, and the nearest clean place is offered', () => {
    const checks = checksOf('sedge-6.yaml', [RW3, RW3.replace('5745', '5825')])
    const cut = byId(checks, 'opening.RW3.frame.F6')
    expect(cut.verdict).toBe('caution')
    // the clear bay is 582 wide between flange edges, and each side needs 260 + 11 + 6.35
    expect(cut.mend).toContain('STA 5758.6')
    expect(cut.mend).toContain('STA 5745')
  })

  it('a window 80 mm up touches the lap at WL 1502 and would leak', () => {
    const checks = checksOf('sedge-6.yaml', [RW3, RW3.replace('wl: 1160', 'wl: 1240')])
    const lap = byId(checks, 'opening.RW3.lap')
    expect(lap.verdict).toBe('fail')
    expect(lap.says).toContain('WL 1502')
  })

  it('a window 560 wide has its rim rivets on the flange edges of its frames', () => {
    const checks = checksOf('sedge-6.yaml', [RW3, RW3.replace('width: 520', 'width: 560')])
    const flange = byId(checks, 'opening.RW3.flange')
    expect(flange.verdict).toBe('fail')
    expect(flange.capacity).toBeCloseTo(0, 9)
    expect(flange.demand).toBeCloseTo(0.00635, 9)
  })

  it('a window that opens over a flue is found', () => {
    expect(failing(checksOf('sedge-6.yaml', ['opens: no', 'opens: yes']))).toContain('flue.HV1')
  })

  it('the axle 100 mm forward clashes with a cross-member', () => {
    const axle = byId(checksOf('sedge-6.yaml', ['[4690 mm, 5480 mm]', '[4590 mm, 5380 mm]']), 'axle.5380')
    expect(axle.verdict).toBe('fail')
    expect(axle.capacity).toBeCloseTo(0.11, 9)
  })

  it('a bay more on the longest coach is too long for floor board and sheet stock, and not yet for further lamps', () => {
    const checks = checksOf(
      'sedge-8.yaml',
      ['  - {id: F9, station: 7880 mm, joint: tail}', '  - {id: F9, station: 7880 mm}\n  - {id: F10, station: 8490 mm, joint: tail}'],
      ['surface: tail, station: 8920 mm', 'surface: tail, station: 9530 mm'],
    )
    expect(byId(checks, 'floor.length')).toMatchObject({
      verdict: 'fail',
      demand: expect.closeTo(7.66, 9),
      capacity: expect.closeTo(7.32, 9),
    })
    expect(byId(checks, 'stock.crown.length')).toMatchObject({ verdict: 'fail', demand: expect.closeTo(5.54, 9) })
    expect(byId(checks, 'overall.length').verdict).toBe('pass')
    expect(byId(checks, 'overall.length').demand).toBeCloseTo(8.78356, 6)
  })

  it('a pitch wider than the shop allows is said, and one well inside is not', () => {
    const wide = byId(
      checksOf('sedge-6.yaml', ['coach: {name: Sedge 6}', 'coach: {name: Sedge 6}\nrows:\n  hoop: {pitch: 60 mm}']),
      'pitch.hoop',
    )
    expect(wide.verdict).toBe('caution')
    expect(wide.capacity).toBeCloseTo(12 * 0.003175, 12)
    expect(byId(checksOf('sedge-6.yaml'), 'pitch.seam').verdict).toBe('pass')
  })

  it('two joint rows nearer than 2.5 D fail', () => {
    const rows = byId(
      checksOf('sedge-6.yaml', ['coach: {name: Sedge 6}', 'coach: {name: Sedge 6}\nshell:\n  joint: {row spacing: 7 mm}']),
      'pitch.between-joint-rows',
    )
    expect(rows).toMatchObject({ verdict: 'fail', demand: expect.closeTo(2.5 * 0.003175, 12), capacity: expect.closeTo(0.007, 12) })
    expect(byId(checksOf('sedge-6.yaml'), 'pitch.between-joint-rows').verdict).toBe('pass')
  })

  it('the strake puzzle: a 25 mm toe flange is short by 2.0 mm, a 19 mm one leaves seam 3 some play', () => {
    const family = readFileSync('examples/sedge.family.yaml', 'utf8')
    const path = 'examples/sedge-6.yaml'
    const read = readDefinition(path, readFileSync(path, 'utf8'), (p) =>
      p.endsWith('family.yaml') ? family.replace('flange: 19 mm', 'flange: 25 mm') : readFileSync(p, 'utf8'),
    )
    if (!read.definition) throw new Error('no definition')
    const wide = design(read.definition).checks
    expect(byId(wide, 'stock.seam-3.window').verdict).toBe('fail')
    expect(byId(wide, 'stock.seam-3.window').says).toContain('short by 2 mm')
    const narrow = byId(checksOf('sedge-6.yaml'), 'stock.seam-3.window')
    expect(narrow.verdict).toBe('pass')
    expect(narrow.says).toMatch(/between G 2602\.\d and 2606\.2/)
  })
})
