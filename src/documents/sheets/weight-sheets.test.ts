import { describe, expect, it } from 'vitest'
import { readExample } from '../../../tests/examples.js'
import { listOnly } from '../../../tests/list-only.js'
import { design } from '../../checks/index.js'
import type { Definition } from '../../definition/types.js'
import { overlappingTexts, textsOf, textsOffPaper } from '../drawing/overlaps.js'
import type { Page } from '../drawing/page.js'
import type { PrintOptions } from '../drawing/sheet.js'
import { liftCard } from './lift-card.js'
import { massSheets, statementSheets } from './weight-sheets.js'

function sheetsOf(definition: Definition, options: PrintOptions = {}): { statement: readonly Page[]; masses: readonly Page[] } {
  const made = design(definition)
  if ('notComputed' in made.weight) throw new Error(made.weight.notComputed)
  return { statement: statementSheets(made, made.weight, options), masses: massSheets(made, made.weight, options) }
}
const words = (pages: readonly Page[]): string => pages.flatMap((page) => textsOf(page).map(({ mark }) => mark.text)).join(' ')

describe('the lift card', () => {
  const made = design(readExample('sedge-6'))
  const lift = 'notComputed' in made.weight ? null : made.weight.lift
  it('says mass, centre and what each leg holds, on clear paper', () => {
    if (!lift) throw new Error('no lift')
    for (const options of [{}, { units: 'inch' as const, series: 'us' as const }])
      for (const page of liftCard(made, lift, options)) expect([...overlappingTexts(page), ...textsOffPaper(page, 4)]).toEqual([])
    const said = words(liftCard(made, lift))
    expect(said).toContain('Sling at F2')
    expect(said).toContain('A competent person plans the lift')
  })
  it('gives no figure for a lift that must not be', () => {
    if (!lift) throw new Error('no lift')
    const said = words(liftCard(made, { ...lift, slings: [], blocked: 'It would tip.' }))
    expect(said).toContain('DO NOT LIFT')
    expect(said).not.toContain('kN')
  })
})

describe('sheets of weight', () => {
  it.each(['sedge-4', 'sedge-6', 'sedge-8'])('%s: keep their lettering clear', (name) => {
    for (const options of [{}, { units: 'inch' as const, series: 'us' as const }]) {
      const { statement, masses } = sheetsOf(readExample(name), options)
      for (const page of [...statement, ...masses]) expect([...overlappingTexts(page), ...textsOffPaper(page, 4)]).toEqual([])
      expect(words(statement)).not.toContain('…')
    }
  })
  it('put the worst case first, and never hide how it may not be stowed', () => {
    const said = words(sheetsOf(listOnly(readExample('sedge-6'))).statement)
    expect(said.match(/NOT to be/g)).toHaveLength(3)
    for (const figure of ['18.2 %', '8.1 %', '8.5 %', '11.0 %', '585 kg', '2360 kg']) expect(said).toContain(figure)
    expect(said.indexOf('cargo to the nose')).toBeLessThan(said.indexOf('as built'))
    expect(said).toContain('stated list alone')
  })
  it('say what may still be added, and which items wait for their twins', () => {
    const { statement, masses } = sheetsOf(readExample('sedge-6'))
    expect(words(statement)).toMatch(/tail lockers \(STA 7010\) \d+ kg \(case D: the hitch would be too light\)/)
    expect(words(masses)).toContain('main rails, pair')
    expect(words(masses)).toContain('derived, in part')
  })
})
