/** The strain map: bands a person can read, hatching that is closer where the sheet is stretched further, the peak where the study says. */
import { describe, expect, it } from 'vitest'
import { readExample } from '../../../tests/examples.js'
import { design } from '../../checks/index.js'
import { derive } from '../../derive/index.js'
import { computeBlanks } from '../../studies/blanks/compute.js'
import { blanksInput } from '../../studies/blanks/shape.js'
import { blankStudy } from '../../studies/blanks/study.js'
import { withBlanks } from '../../studies/blanks/with-blanks.js'
import { overlappingTexts, textsOffPaper } from '../drawing/overlaps.js'
import { everyNth, levelsOf, levelWords } from '../drawing/strain-map.js'
import { goreBlankSheets } from './gore-blank.js'

const definition = readExample('sedge-6')
const derived = derive(definition)
const blanks = computeBlanks(blanksInput(derived))
if (!blanks) throw new Error('not cancelled')
const study = blankStudy(derived, blanks)
const made = withBlanks(design(definition), study)
const pages = goreBlankSheets(made, study)

describe('the levels of a strain map', () => {
  it('are round, below the peak and few', () => {
    expect(levelsOf(0.0467)).toEqual([0.01, 0.02, 0.03, 0.04])
    expect(levelsOf(0.0023).map(levelWords)).toEqual(['0.05 %', '0.1 %', '0.15 %', '0.2 %'])
    for (const peak of [1e-4, 0.0031, 0.0099, 0.0502, 0.11]) {
      const levels = levelsOf(peak)
      expect(levels.length).toBeGreaterThanOrEqual(2)
      expect(levels.length).toBeLessThanOrEqual(5)
      expect(levels[levels.length - 1]).toBeLessThan(peak)
    }
  })

  it('are hatched twice as close from band to band, the last one closest', () => {
    expect([1, 2, 3, 4].map((band) => everyNth(band, 4))).toEqual([8, 4, 2, 1])
  })
})

describe('blank sheets of Sedge 6', () => {
  it('are one a panel, and say stretch, thickness, blank, parts and that holes are pilots', () => {
    expect(pages.map((p) => p.name)).toEqual(['blank-gore-1', 'blank-gore-2', 'blank-gore-3', 'blank-gore-4', 'blank-cap'])
    const said = pages[0].marks.flatMap((m) => (m.kind === 'text' ? [m.text] : [])).join(' ')
    const { stretch, leastThickness } = study.blanks[0]
    const figures = [`${(100 * stretch.peak).toFixed(1)} %`, `${(1000 * leastThickness).toFixed(3)} mm of 1.02 mm`, stretch.says]
    for (const words of [...figures, '36 in x 152 in', 'tail-gore-7', 'nose-gore-7', 'drill at assembly', 'springs back', 'first-off'])
      expect(said, words).toContain(words)
  })

  it('ring the peak where the study has it, inside the blank', () => {
    for (const [i, page] of pages.entries()) {
      const ring = page.marks.find((m) => m.kind === 'circles' && m.group === 'peak')
      const outline = page.marks.find((m) => m.kind === 'path' && m.group === 'outline')
      if (ring?.kind !== 'circles' || outline?.kind !== 'path') throw new Error('no ring or no outline')
      const xs = outline.shapes[0].points.map((p) => p[0])
      const share = (ring.xyd[0] - Math.min(...xs)) / (Math.max(...xs) - Math.min(...xs))
      const blank = study.blanks[i]
      expect(share).toBeCloseTo(blank.stretch.at[0] / blank.length, 2)
    }
  })

  it('hatch only what is stretched beyond the least level', () => {
    const least = (page: (typeof pages)[number]): number =>
      page.marks.flatMap((m) => (m.kind === 'path' && m.group === 'strain-hatch' ? m.shapes : [])).length
    for (const page of pages) expect(least(page)).toBeGreaterThan(20)
  })

  it('write nothing over anything', () => {
    for (const page of pages) {
      expect(overlappingTexts(page), page.name).toEqual([])
      expect(textsOffPaper(page), page.name).toEqual([])
    }
  })
})
