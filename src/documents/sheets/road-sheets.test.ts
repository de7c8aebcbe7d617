import { describe, expect, it } from 'vitest'
import { readExample } from '../../../tests/examples.js'
import { weighList } from '../../../tests/list-only.js'
import { design } from '../../checks/index.js'
import type { Design } from '../../derive/design.js'
import { isNotComputed, towingInput } from '../../derive/road-input.js'
import { deriveTowing } from '../../derive/towing/index.js'
import { swayCurves } from '../../studies/sway/study.js'
import { overlappingTexts, textsOf, textsOffPaper } from '../drawing/overlaps.js'
import type { Page } from '../drawing/page.js'
import type { PrintOptions } from '../drawing/sheet.js'
import { labelSheets } from './label-sheet.js'
import { rideSheets } from './ride-sheet.js'
import { couplingSheets, lampSheets } from './road-sheets.js'
import { rubberCard } from './rubber-card.js'
import { towingSheets } from './towing-sheet.js'

function madeOf(definition: ReturnType<typeof readExample>) {
  const made: Design = design(definition)
  const input = towingInput(definition, 7.76, weighList(definition))
  if (isNotComputed(input) || isNotComputed(made.ride) || isNotComputed(made.road)) throw new Error('not computed')
  const towing = deriveTowing(input)
  const { ride, road } = made
  return { made, towing, ride, road, sway: swayCurves(towing) }
}
const six = madeOf(readExample('sedge-6'))

function pagesOf({ made, towing, ride, road, sway }: typeof six, options: PrintOptions = {}): readonly Page[] {
  return [
    ...towingSheets(made, towing, sway, options),
    ...rideSheets(made, ride, options),
    ...lampSheets(made, road, options),
    ...couplingSheets(made, road, options),
    ...labelSheets(made, road, options),
    ...(ride.rubber ? rubberCard(made, ride.rubber, options) : []),
  ]
}
const words = (pages: readonly Page[]): string => pages.flatMap((page) => textsOf(page).map(({ mark }) => mark.text)).join(' ')
const faultsOf = (pages: readonly Page[]): readonly string[] =>
  pages.flatMap((page) => [
    ...overlappingTexts(page).map(([a, b]) => `${page.name}: "${a}" lies on "${b}"`),
    ...textsOffPaper(page, 4).map((text) => `${page.name}: "${text}" runs off the paper`),
  ])

describe('sheets of towing, ride and the road', () => {
  it('keep their lettering clear in millimetres and in inches', () => {
    expect(faultsOf(pagesOf(six))).toEqual([])
    expect(faultsOf(pagesOf(six, { units: 'inch', series: 'us' }))).toEqual([])
  })
  it.each(['sedge-4', 'sedge-8'])('of %s keep theirs clear too', (name) => expect(faultsOf(pagesOf(madeOf(readExample(name))))).toEqual([]))
  it('draw a curve a case behind each car, and say they are indicative', () => {
    const pages = towingSheets(six.made, six.towing, six.sway)
    expect(pages.map((page) => page.name)).toEqual(['towing-mid-size', 'towing-full-size', 'towing-pick-up'])
    for (const page of pages) {
      expect(words([page])).toContain('Indicative only')
      expect(words([page])).toContain('is for the buyer to check')
      const curves = page.marks.filter((m) => m.kind === 'path' && m.group === 'plot' && m.shapes.some((s) => s.points.length > 30))
      expect(curves).toHaveLength(8)
    }
  })
  it('put the dangers of liquid nitrogen and of heat on the method card', () => {
    if (!six.ride.rubber) throw new Error('no rubber')
    const said = words(rubberCard(six.made, six.ride.rubber))
    for (const danger of ['Cold burns', 'Suffocation', 'oxygen alarm', 'trained', 'Press', 'No weld']) expect(said).toContain(danger)
  })
})

describe('labels', () => {
  const { definition } = six.made
  const papers = {
    ...(definition.papers ?? { vin: null, made: null, responsible: null, weighed: null, words: [] }),
    made: 'MAY 2026',
    responsible: 'A. Person',
    weighed: { empty: 1790.4, hitch: 226, on: '2026-05-04' },
  }
  const vin = definition.papers?.vin ? { ...definition.papers.vin, serial: 7 } : null
  const signed = { ...definition, papers: { ...papers, vin } }
  const isStamped = (page: Page): boolean => page.marks.some((m) => m.group === 'draft')
  it('are marked across until weighed, numbered, dated and answered for', () => {
    expect(labelSheets(six.made, six.road).every(isStamped)).toBe(true)
    for (const lacking of [{ weighed: null }, { responsible: null }, { made: null }, { vin: definition.papers?.vin ?? null }]) {
      const other = madeOf({ ...signed, papers: { ...signed.papers, ...lacking } })
      expect(labelSheets(other.made, other.road).every(isStamped)).toBe(true)
    }
    const dry = madeOf({ ...signed, weight: definition.weight && { ...definition.weight, tanks: [] } })
    expect(labelSheets(dry.made, dry.road).every(isStamped)).toBe(true)
    const done = madeOf(signed)
    expect(done.road.labels.draft).toEqual([])
    expect(labelSheets(done.made, done.road).some(isStamped)).toBe(false)
  })
  it('print the ratings, the number and the cargo, rounded down', () => {
    const done = madeOf(signed)
    const said = words(labelSheets(done.made, done.road))
    expect(said).toContain('GVWR: 2360 KG (5203 LB)')
    expect(said).toContain('SHOULD NEVER EXCEED 569 kg or 1255 lbs')
    expect(said).toContain('full load of water equals 114 kg or 250 lbs')
    expect(done.road.labels.vin).toMatch(/^0M9TC6B2.TM042007$/)
    expect(said).toContain(`VIN: ${done.road.labels.vin}`)
  })
  it('show an override beside what it is locked to', () => {
    const other = madeOf({
      ...signed,
      papers: {
        ...signed.papers,
        words: [{ id: 'type', words: 'TYPE: TRAVEL TRAILER', by: 'A. Person', reason: 'asked by the authority' }],
      },
    })
    const said = words(labelSheets(other.made, other.road))
    expect(said).toContain('TYPE: TRAVEL TRAILER')
    expect(said).toContain('A. Person: asked by the authority')
  })
  it('and lamps are refused for a market whose rules are not in the tables', () => {
    const other = madeOf({ ...signed, coach: { ...definition.coach, market: 'uk' } })
    expect(other.road.lamps).toEqual([])
    expect(labelSheets(other.made, other.road).every(isStamped)).toBe(true)
    expect(words(lampSheets(other.made, other.road))).toContain('nothing was applied')
  })
})
