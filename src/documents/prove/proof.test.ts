import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { sampleDesign } from '../../../tests/made-up-design.js'
import type { HoleList } from '../../checks/prove/nouns.js'
import { prove } from '../../checks/prove/prove-part.js'
import { readDefinition } from '../../definition/read-definition.js'
import type { Design } from '../../derive/design.js'
import { holesOf } from '../../derive/holes.js'
import { derive } from '../../derive/index.js'
import type { Part, Pattern } from '../../derive/nouns.js'
import type { Mark, PathMark, TextMark } from '../drawing/page.js'
import { proofSheets } from './proof-sheet.js'
import { proofCsv, proofText } from './proof-text.js'

const { design, part, pattern } = sampleDesign()
const holes = holesOf(design, part, pattern)
const listOf = (some: readonly { readonly x: number; readonly y: number; readonly id: string }[]): HoleList => ({
  name: 'punch.csv',
  unit: 'mm',
  taped: false,
  row: null,
  corners: [],
  notes: [],
  readings: some.map((h, i) => ({ label: `${i + 1}`, line: i + 2, x: h.x * 1000, y: h.y * 1000, diameter: null })),
})

const moved = holes.map((h, i) => (i === 200 ? { ...h, x: h.x + 0.0008 } : h)).filter((h) => h.id !== 'hoop-F3/seam-2-left-seam-3-left/5')
const wrong = prove(design, part.id, listOf([...moved, { id: 'extra', x: 1.7, y: 0.6 }])).report!
const texts = (marks: readonly Mark[]): readonly string[] => marks.filter((m): m is TextMark => m.kind === 'text').map((m) => m.text)
const group = (marks: readonly Mark[], name: string): readonly PathMark[] =>
  marks.filter((m): m is PathMark => m.kind === 'path' && m.group === name)

describe('a proof in words', () => {
  it('opens with the part, the list and the verdict, and lists the worst first', () => {
    const lines = proofText(wrong, 3).split('\n')
    expect(lines[0]).toBe('Proof of strake-side-left, sheet, revision 0123456789ab, on the list punch.csv')
    expect(lines[1]).toBe('DISAGREES at 0.30 mm')
    const table = lines.slice(lines.findIndex((l) => l.startsWith('listed')))
    expect(table[1]).toContain('not ours')
    expect(table[2]).toMatch(/^201\s+seam-2-left\/\S+\s+0\.\d{3}\s.*outside$/)
    expect(table[4]).toBe('and 663 more, each closer than these')
  })

  it('gives every difference as CSV, what is missing too', () => {
    const lines = proofCsv(wrong).trimEnd().split('\n')
    expect(lines.length).toBe(1 + 666 + 1)
    expect(lines[667].startsWith(',missing from the list,hoop-F3/seam-2-left-seam-3-left/5,')).toBe(true)
    expect(lines[201].split(',').slice(0, 3)).toEqual(['202', '201', holes[200].id])
  })
})

/** The title block draws the whole coach, so these sheets want a derived one. */
function derived(): { readonly coach: Design; readonly side: Part; readonly sheet: Pattern } {
  const file = new URL('../../../examples/sedge-6.yaml', import.meta.url).pathname
  const { definition } = readDefinition(file, readFileSync(file, 'utf8'), (path) => readFileSync(path, 'utf8'))
  const coach: Design = { ...derive(definition!), revision: '0123456789ab', checks: [] }
  const side = coach.parts.find((p) => p.id === 'strake-side-right')!
  return { coach, side, sheet: side.patterns[0] }
}

describe('a proof drawn', () => {
  const { coach, side, sheet } = derived()
  const ours = holesOf(coach, side, sheet)
  const seam = ours.findIndex((h) => h.row.startsWith('seam-3')) + 20
  const gone = ours.find((h) => h.row === 'hoop-F6')!
  const other = ours.map((h, i) => (i === seam ? { ...h, x: h.x + 0.0008 } : h)).filter((h) => h !== gone)
  const bad = prove(coach, side.id, listOf([...other, { id: 'extra', x: 1.7, y: 0.6 }])).report!
  const rim = prove(coach, side.id, listOf(ours.filter((h) => h.row === 'rim-CW1'))).report!

  it('shows the difference a hundred times too long, the extra and the missing', () => {
    const [page, ...more] = proofSheets(coach, side, sheet, bad)
    expect(more.length).toBe(0)
    const thick = group(page.marks, 'differences').filter((m) => m.width === 0.5)
    const [[x, y], [u, v]] = thick[0].shapes[0].points
    const off = bad.best!.compared.find((c) => c.hole !== null && !c.within)!.distance!
    expect(page.says).toContain('1:10')
    expect(Math.hypot(u - x, v - y)).toBeCloseTo((off * 1000 * 100) / 10, 6)
    expect(u).toBeGreaterThan(x)
    expect(group(page.marks, 'extra').length).toBe(1)
    expect(group(page.marks, 'missing').length).toBe(1)
    expect(texts(page.marks)).toContain('not in our pattern')
  })

  it('draws both placements when undecided, and the hole to look for', () => {
    const pages = proofSheets(coach, side, sheet, rim)
    expect(pages.map((p) => p.name)).toEqual(['strake-side-right-proof-1', 'strake-side-right-proof-2'])
    expect(texts(pages[0].marks)).toContain('LOOK FOR THIS HOLE')
    expect(texts(pages[0].marks)).toContain('UNDECIDED: ONE MORE HOLE at 0.30 mm')
    expect(texts(pages[1].marks).join(' ')).toContain('second placement')
  })
})
