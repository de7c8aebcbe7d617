import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { FILES, reportText, runAll } from './report.js'

const outcomes = runAll()
const here = new URL('.', import.meta.url)

describe('outside figures', () => {
  for (const { it: each, ours, pass } of outcomes) {
    it(`${each.source}, ${each.at}: ${each.case} is ${each.expected} ${each.unit}`, () => {
      expect(pass, `ours is ${ours}`).toBe(true)
    })
  }
  it('are enough, each with an id of its own, a source, a place in it and a status', () => {
    expect(outcomes.length).toBeGreaterThanOrEqual(35)
    expect(new Set(outcomes.map((each) => each.it.id)).size).toBe(outcomes.length)
    for (const { it: each } of outcomes) {
      expect(each.source.trim(), each.id).not.toBe('')
      expect(each.at.trim(), each.id).not.toBe('')
      expect(['R', 'R2', 'D', 'M'], each.id).toContain(each.status)
      expect(each.tolerance, each.id).toBeLessThanOrEqual(0.05 * Math.abs(each.expected))
    }
  })
  it('come from every file of the folder, each with its bibliography', () => {
    const tools = ['case.ts', 'report.ts', 'validation.test.ts']
    const files = readdirSync(here).filter((name) => name.endsWith('.ts') && !tools.includes(name))
    expect(FILES.length).toBe(files.length)
    for (const file of FILES) expect(file.bibliography.length).toBeGreaterThan(20)
  })
  it('fail when ours is wrong', () => {
    const [first] = FILES[0]?.cases ?? []
    if (!first) throw new Error('no case')
    const wrong = runAll([{ bibliography: 'x', cases: [{ ...first, ours: () => first.expected + 2 * first.tolerance }] }])
    expect(wrong[0]?.pass).toBe(false)
    expect(reportText(wrong)).toContain('1 fail')
    expect(runAll([{ bibliography: 'x', cases: [{ ...first, ours: () => Number.NaN }] }])[0]?.pass).toBe(false)
  })
  it('stand in the report as they are now', () => {
    expect(readFileSync(new URL('REPORT.md', here), 'utf8'), 'run npm run validation').toBe(reportText(outcomes))
  })
})
