import { describe, expect, it } from 'vitest'
import { readExample } from '../../../tests/examples.js'
import { design } from '../../checks/index.js'
import { overlappingTexts, textsOf, textsOffPaper } from '../drawing/overlaps.js'
import type { Page } from '../drawing/page.js'
import type { PrintOptions } from '../drawing/sheet.js'
import { axleCard } from './axle-card.js'
import { axleOrder } from './axle-order.js'
import { cutList, sectionSheet } from './chassis-lists.js'
import { chassisPlan } from './chassis-plan.js'
import { flatPatternSheets } from './flat-pattern.js'
import { flooringCard } from './flooring-card.js'
import { weldList, weldMap } from './weld-map.js'

const words = (pages: readonly Page[]): readonly string[] => pages.flatMap((p) => textsOf(p).map(({ mark }) => mark.text))
const INCH: PrintOptions = { units: 'inch', series: 'us' }

describe.each(['sedge-4', 'sedge-6', 'sedge-8'])('sheets of floor and chassis of %s', (name) => {
  const made = design(readExample(name))
  const chassis = (o: PrintOptions): readonly Page[] => [
    ...chassisPlan(made, 'as-built', o),
    ...chassisPlan(made, 'as-used', o),
    ...weldMap(made, o),
    ...weldList(made, o),
    ...cutList(made, o),
    ...sectionSheet(made, o),
    ...axleCard(made, o),
    ...axleOrder(made, o),
  ]
  it.each([
    ['millimetres', {}],
    ['inches', INCH],
  ] as const)('keep their lettering clear in %s', (_, o) => {
    const pages = [...chassis(o), ...flooringCard(made, o)]
    const faults = pages.flatMap((page) => [
      ...overlappingTexts(page).map(([a, b]) => `${page.name}: "${a}" lies on "${b}"`),
      ...textsOffPaper(page, 4).map((text) => `${page.name}: "${text}" runs off the paper`),
    ])
    expect(faults).toEqual([])
  })
  it('say on every chassis sheet that strength is not checked', () => {
    for (const page of chassis({})) expect(words([page]).join(' '), page.name).toMatch(/STRENGTH NOT CHECKED/)
    for (const part of made.parts.filter((p) => p.trade === 'chassis'))
      for (const page of flatPatternSheets(made, part)) expect(words([page]).join(' '), page.name).toMatch(/STRENGTH NOT CHECKED/)
  })
  it('order the axles on one page, with the rate the ride has', () => {
    const { ride } = made
    if ('notComputed' in ride) throw new Error(ride.notComputed)
    const pages = axleOrder(made)
    expect(pages).toHaveLength(1)
    expect(words(pages)).toContain(`${(ride.rate.value / 1000).toFixed(1)} kN/m`)
  })
  it('turn the hands over with the chassis: the curb side lies below when it is inverted', () => {
    const hands = (pages: readonly Page[]): readonly string[] =>
      textsOf(pages[0])
        .map(({ mark }) => mark)
        .filter((m) => m.height === 40)
        .sort((a, b) => a.y - b.y)
        .map((m) => m.text)
    expect(hands(chassisPlan(made, 'as-built'))).toEqual(['R', 'C'])
    expect(hands(chassisPlan(made, 'as-used'))).toEqual(['C', 'R'])
  })
})
