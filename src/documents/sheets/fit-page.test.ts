import { describe, expect, it } from 'vitest'
import { readExample } from '../../../tests/examples.js'
import { design } from '../../checks/index.js'
import { fitStudy } from '../../studies/fit/fit-study.js'
import { overlappingTexts, textsOf, textsOffPaper } from '../drawing/overlaps.js'
import { csvCells } from '../text/csv.js'
import { fitCsv } from '../text/fit-csv.js'
import { fitText } from '../text/fit-text.js'
import { chanceWords } from '../text/fit-words.js'
import { fitPage } from './fit-page.js'

const sedge = design(readExample('sedge-6'))
const study = fitStudy(sedge, { trials: 4, seed: 1 })

describe('the page of meeting holes', () => {
  it.each([{}, { units: 'inch', series: 'us' }] as const)('is one page, nothing on it overlaps or runs off: %o', (options) => {
    const pages = fitPage(sedge, study, options)
    expect(pages.length).toBe(1)
    for (const page of pages) {
      expect(overlappingTexts(page)).toEqual([])
      expect(textsOffPaper(page, 4)).toEqual([])
    }
  })
  it('names every kind of joint, gives its caution and the process it is made from', () => {
    const text = fitPage(sedge, study)
      .flatMap((page) => textsOf(page).map((t) => t.mark.text))
      .join(' ')
    expect(text).toContain('try on a first-off')
    expect(text).toContain('Punched to 0.05 mm an axis')
    for (const group of study.groups) expect(text).toContain(group.says.split(' ').slice(0, 2).join(' '))
  })
  it('says why there is nothing to say', () => {
    const bare = { ...sedge, definition: { ...sedge.definition, process: null } }
    const none = fitStudy(bare, { trials: 4, seed: 1 })
    const [page] = fitPage(bare, none)
    expect(
      textsOf(page)
        .map((t) => t.mark.text)
        .join(' '),
    ).toContain('does not say how well the shop punches')
    expect(fitText(bare, none)).toContain('Not computed.')
    expect(fitCsv(bare, none)).toContain('# not computed: ')
  })
})

describe('the same as text', () => {
  it('has a line for each row of each joint and sheet, every line as many cells as there are heads', () => {
    const lines = fitCsv(sedge, study).trimEnd().split('\n')
    const [heads, ...rows] = lines.filter((l) => !l.startsWith('#')).map(csvCells)
    expect(rows.length).toBe([...study.joints, ...study.sheets].reduce((n, fit) => n + fit.rows.length, 0))
    expect(new Set(rows.map((cells) => cells.length))).toEqual(new Set([heads.length]))
  })
  it('tells one joint in full, and all of them on a line each', () => {
    const one = fitStudy(sedge, { trials: 4, seed: 1, joint: 'joint-rim-AC1' })
    expect(fitText(sedge, one)).toMatch(/^joint-rim-AC1: .*\nEvery fastener goes in: /m)
    expect(fitText(sedge, one)).toContain('What would help, best first:')
    for (const fit of study.joints) expect(fitText(sedge, study)).toContain(`${fit.id}: `)
  })
  it('never rounds what can happen to 0, or what can fail to 100', () => {
    expect([0, 1e-6, 0.0123, 0.5, 0.99999, 1].map(chanceWords)).toEqual(['0 %', 'under 0.1 %', '1.2 %', '50 %', 'over 99.9 %', '100 %'])
  })
})
