import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { root } from '../../tests/tree.js'
import { readCsvList } from '../checks/prove/read-csv-list.js'
import { holesOf } from '../derive/holes.js'
import { deskCoach } from './desk-coach.js'
import type { DeskCoach } from './desk-coach-nouns.js'
import { differsFrom } from './other-text.js'
import { proofShown, provable } from './prove-shown.js'
import { rowsBeside, sideOf } from './side-by-side.js'

const text = (name: string): string => readFileSync(join(root, 'examples', name), 'utf8')
const PATH = 'examples/sedge-4.yaml'
const files = Object.fromEntries(
  ['sedge-4.yaml', 'sedge.family.yaml', 'sedge-4.masses.yaml'].map((name) => [`examples/${name}`, text(name)]),
)

let coach: DeskCoach
beforeAll(() => {
  const opened = deskCoach({ path: PATH, files })
  if ('faults' in opened) throw new Error('it does not read')
  coach = opened
})

describe('another text of the same coach', () => {
  it('differs by what it would give up', () => {
    const theirs = files[PATH].replace('gross: 1720 kg', 'gross: 1750 kg')
    const { lines, line } = differsFrom({ path: PATH, files }, theirs, coach.design(), 'metric')
    expect(lines.join('\n')).toMatch(/weight gross: 1750 becomes 1720/)
    expect(line).toMatch(/^Since the other text: /)
  })

  it('says so where it does not read', () => {
    const { line, lines } = differsFrom({ path: PATH, files }, files[PATH].replace('4580 mm', '4580'), coach.design(), 'metric')
    expect(line).toMatch(/^The other text does not read: line \d+, gear spindles/)
    expect(lines).toEqual([])
  })
})

describe('coaches beside each other', () => {
  it('have the rows that differ first, and say what nobody knows', () => {
    const one = sideOf(coach.design(), PATH, 'left')
    const longer = deskCoach({ path: PATH, files: { ...files, [PATH]: files[PATH].replace('gross: 1720 kg', 'gross: 1750 kg') } })
    if ('faults' in longer) throw new Error('it does not read')
    const other = sideOf(longer.design(), 'b.yaml', 'left')
    const rows = rowsBeside([one, other])
    expect(rows[0]).toEqual({
      name: 'Cargo it may carry',
      says: [one.figures['Cargo it may carry'].says, other.figures['Cargo it may carry'].says],
      differs: true,
    })
    expect(rows.at(-1)?.differs).toBe(false)
    expect(rows.find(({ name }) => name === 'Frames')).toEqual({ name: 'Frames', says: ['5', '5'], differs: false })
    const { solid, blind } = coach.design().totals.fasteners
    expect(one.figures.Rivets.value).toBe(solid + blind)
    expect(one.drawn.length).toBeGreaterThan(10)
    const design = coach.design()
    const unweighed = { ...design, definition: { ...design.definition, weight: null } }
    expect(sideOf(unweighed, 'c.yaml', 'left').figures.Unloaded).toEqual({ says: 'not weighed', value: null })
  })
})

describe("the shop's hole list on a sheet", () => {
  const PART = 'strake-side-right'
  /** Our own holes as somebody would have taped them: every one 0.1 mm along, one of them 1.2 mm. */
  const listed = (over: (i: number) => number): string => {
    const design = coach.design()
    const part = design.parts.find(({ id }) => id === PART)
    if (!part) throw new Error('no such part')
    const holes = holesOf(design, part, part.patterns[0])
    const lines = holes.map(({ x, y }, i) => `${i + 1},${((x + over(i)) * 1000).toFixed(3)},${(y * 1000).toFixed(3)}`)
    return ['no,x mm,y mm', ...lines].join('\n')
  }
  const proof = (csv: string, part = PART) => {
    const { list, faults } = readCsvList(csv, 'punch.csv')
    if (!list) throw new Error(faults.join(' '))
    return proofShown(coach.design(), part, list, null)
  }

  it('offers every part with holes, the sheets of the skin first', () => {
    const parts = provable(coach.design())
    expect(parts[0].id).toMatch(/^strake-/)
    expect(parts.find(({ id }) => id === PART)?.holes).toBeGreaterThan(300)
    expect(parts.every(({ holes }) => holes > 1)).toBe(true)
  })

  it('agrees with itself, and prints its sheet', () => {
    const shown = proof(listed(() => 0))
    if ('faults' in shown) throw new Error(shown.faults.join(' '))
    expect(shown.verdict).toBe('agrees')
    expect(shown.pages[0].includes('Proof on a hole list')).toBe(true)
    expect(shown.csv.split('\n').length).toBeGreaterThan(300)
  })

  it('says the worst first in a sentence', () => {
    const shown = proof(listed((i) => (i === 40 ? 0.0012 : i === 90 ? 0.0006 : 0)))
    if ('faults' in shown) throw new Error(shown.faults.join(' '))
    expect(shown.verdict).toBe('disagrees')
    expect(shown.differences[0].says).toMatch(/^Hole 41 \(line 42\) stands 1\.2\d? mm off /)
    expect(shown.differences[1].says).toMatch(/^Hole 91 \(line 92\) stands 0\.6\d? mm off /)
    expect(shown.differences.slice(0, 3).map(({ within }) => within)).toEqual([false, false, true])
  })

  it('refuses a part without holes in a sentence', () => {
    const shown = proof(
      listed(() => 0),
      'no-such-part',
    )
    expect('faults' in shown && shown.faults[0]).toMatch(/^Sedge 4 has no part no-such-part/)
  })
})
