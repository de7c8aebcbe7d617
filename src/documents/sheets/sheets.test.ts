import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { design } from '../../checks/index.js'
import { readDefinition } from '../../definition/read-definition.js'
import { overlappingTexts, textsOf, textsOffPaper, textsOverHoles } from '../drawing/overlaps.js'
import type { Mark, Page } from '../drawing/page.js'
import type { PrintOptions } from '../drawing/sheet.js'
import { boundsOf } from '../drawing/view.js'
import { holeTableCsv } from '../text/hole-table.js'
import { checksList, worstFirst } from './checks-list.js'
import { coverSheets } from './cover.js'
import { flatPatternSheets } from './flat-pattern.js'
import { frameTemplateRoll, frameTemplateTiles } from './frame-template.js'
import { barePattern, fullSizeRoll, fullSizeTiles } from './full-size.js'
import { holeTableSheets } from './hole-table-sheet.js'
import { openingSchedule, rivetSchedule, strakeSchedule } from './schedules.js'
import { tapeCards, tapeEdges } from './tape-card.js'

const read = (name: string) => {
  const path = `examples/${name}.yaml`
  const { definition, faults } = readDefinition(path, readFileSync(path, 'utf8'), (file) => readFileSync(file, 'utf8'))
  if (!definition) throw new Error(faults.map((f) => f.says).join('\n'))
  return design(definition)
}
const sedge = read('sedge-6')
const part = (id: string) => {
  const found = sedge.parts.find((p) => p.id === id)
  if (!found) throw new Error(`Sedge 6 has no part ${id}`)
  return found
}
const contents = sedge.parts.map((p) => ({ path: `flat/${p.id}.pdf`, says: `Flat pattern of ${p.says}` }))

function everySheet(options: PrintOptions): readonly Page[] {
  return [
    ...coverSheets(sedge, contents, options),
    ...checksList(sedge, options),
    ...strakeSchedule(sedge, options),
    ...rivetSchedule(sedge, options),
    ...openingSchedule(sedge, options),
    ...frameTemplateTiles(sedge, 'hoop', options),
    ...frameTemplateRoll(sedge, 'joint', options),
    ...sedge.parts.flatMap((p) => [
      ...flatPatternSheets(sedge, p, options),
      ...tapeCards(sedge, p, options),
      ...p.patterns.flatMap((q) => [
        ...fullSizeRoll(sedge, p, q, options),
        ...holeTableSheets(sedge, p, q, holeTableCsv(sedge, p, q), options),
      ]),
    ]),
    ...fullSizeTiles(sedge, part('strake-lower-right'), part('strake-lower-right').patterns[0], options),
  ]
}

const faultsOf = (pages: readonly Page[]): readonly string[] =>
  pages.flatMap((page) => [
    ...overlappingTexts(page).map(([a, b]) => `${page.name}: "${a}" lies on "${b}"`),
    ...textsOffPaper(page, 4).map((text) => `${page.name}: "${text}" runs off the paper`),
  ])

function texts(pages: readonly Page[]): readonly string[] {
  return pages.flatMap((page) => textsOf(page).map(({ mark }) => mark.text))
}

describe('every sheet of Sedge 6', () => {
  it('keeps its lettering clear in millimetres on ISO sheets', () => expect(faultsOf(everySheet({}))).toEqual([]))

  it('keeps its lettering clear in inches on US sheets', () => expect(faultsOf(everySheet({ units: 'inch', series: 'us' }))).toEqual([]))

  it('hides no hole of a flat pattern behind lettering', () => {
    const pages = sedge.parts.flatMap((p) => flatPatternSheets(sedge, p))
    expect(pages.flatMap((page) => textsOverHoles(page).map((text) => `${page.name}: ${text}`))).toEqual([])
  })

  it('is the same drawing each time', () => {
    const flat = () => JSON.stringify(flatPatternSheets(sedge, part('strake-side-left')))
    expect(flat()).toBe(flat())
  })
})

describe('other lengths of the family', () => {
  it.each(['sedge-4', 'sedge-8'])('%s keeps its lettering clear', (name) => {
    const other = read(name)
    const pages = [
      ...coverSheets(other, contents),
      ...rivetSchedule(other),
      ...strakeSchedule(other),
      ...openingSchedule(other),
      ...checksList(other),
      ...other.parts.filter((p) => p.kind !== 'stringer').flatMap((p) => flatPatternSheets(other, p)),
    ]
    expect(faultsOf(pages)).toEqual([])
  })
})

describe('flat pattern', () => {
  const strake = part('strake-lower-right')
  const [page] = flatPatternSheets(sedge, strake, { unit: 'SN 0042' })

  it('names side, view, unit, revision and scale', () => {
    const words = texts([page])
    for (const text of [
      'RIGHT (C, curb side) — seen from OUTSIDE',
      'SN 0042',
      sedge.revision,
      '1:10',
      'First-off measured before the batch.',
      '1 of 1',
    ])
      expect(words).toContain(text)
  })

  it('keeps dimensions off the part', () => {
    const ink = page.marks.filter((mark): mark is Extract<Mark, { kind: 'path' }> => mark.kind === 'path' && mark.group === 'outline')
    const box = boundsOf(ink.flatMap((mark) => mark.shapes.map((shape) => shape.points)))
    const inside = textsOf(page).filter(
      ({ mark, box: lettered }) =>
        mark.group === 'dimension' && lettered.some(([x, y]) => x > box.x0 && x < box.x1 && y > box.y0 && y < box.y1),
    )
    expect(inside.map(({ mark }) => mark.text)).toEqual([])
  })

  it('draws the outline true to the scale it names', () => {
    const outline = page.marks.find((mark) => mark.kind === 'path' && mark.group === 'outline')
    if (outline?.kind !== 'path') throw new Error('no outline drawn')
    const paper = boundsOf(outline.shapes.map((shape) => shape.points))
    const metal = boundsOf([strake.patterns[0].outline])
    expect(paper.x1 - paper.x0).toBeCloseTo((metal.x1 - metal.x0) * 100, 6)
  })

  it('draws every hole, in one mark', () => {
    const holes = page.marks.filter((mark) => mark.kind === 'circles' && mark.group === 'holes')
    expect(holes).toHaveLength(1)
    expect(holes[0].kind === 'circles' && holes[0].xyd.length / 3).toBe(strake.patterns[0].holes.x.length)
  })

  it('prints inches when asked, and keeps bought names', () => {
    const words = texts(flatPatternSheets(sedge, strake, { units: 'inch' })).join(' ')
    expect(words).toContain(((boundsOf([strake.patterns[0].outline]).x1 * 1000) / 25.4).toFixed(3))
    expect(words).toContain('1/8 in solid rivet')
  })
})

describe('full size', () => {
  it('is a page of the pattern’s own size or tiled above 5.08 m', () => {
    const strake = part('strake-side-right')
    expect(fullSizeRoll(sedge, strake, strake.patterns[0])).toHaveLength(1)
    const frame = part('frame-F4')
    const pages = fullSizeRoll(sedge, frame, frame.patterns[0])
    expect(pages.length).toBeGreaterThan(1)
    for (const page of pages) expect(page.widthMm).toBeLessThanOrEqual(5080)
  })

  it('puts a 100 mm square on every page and every tile', () => {
    const strake = part('strake-lower-left')
    const pages = [
      ...fullSizeRoll(sedge, strake, strake.patterns[0]),
      ...fullSizeTiles(sedge, strake, strake.patterns[0]),
      ...frameTemplateTiles(sedge, 'joint'),
      ...frameTemplateRoll(sedge, 'hoop'),
    ]
    for (const page of pages) {
      const square = page.marks.find((mark) => mark.kind === 'path' && mark.group === 'check-square' && mark.shapes[0].closed)
      if (square?.kind !== 'path') throw new Error(`${page.name} has no square`)
      const box = boundsOf([square.shapes[0].points])
      expect([box.x1 - box.x0, box.y1 - box.y0].map((v) => Math.round(v * 1e6) / 1e6)).toEqual([100, 100])
      expect(box.x1).toBeLessThan(page.widthMm)
      expect(box.y1).toBeLessThan(page.heightMm)
    }
  })

  it('tiles show every hole of the pattern at least once', () => {
    const { patterns } = part('strake-lower-left')
    const seen = new Set<string>()
    for (const page of fullSizeTiles(sedge, part('strake-lower-left'), patterns[0])) {
      for (const mark of page.marks) {
        if (mark.kind !== 'window') continue
        for (const inner of mark.marks) {
          if (inner.kind !== 'circles' || inner.group !== 'holes') continue
          for (let i = 0; i < inner.xyd.length; i += 3) seen.add(`${inner.xyd[i].toFixed(4)} ${inner.xyd[i + 1].toFixed(4)}`)
        }
      }
    }
    expect(seen.size).toBe(patterns[0].holes.x.length)
  })

  it('gives the bare pattern at 1:1 with nothing added', () => {
    const strake = part('strake-crown')
    const page = barePattern(strake, strake.patterns[0])
    const box = boundsOf([strake.patterns[0].outline])
    expect(page.widthMm).toBeCloseTo((box.x1 - box.x0) * 1000 + 20, 9)
    expect(page.marks.every((mark) => mark.kind !== 'text')).toBe(true)
  })
})

describe('frame template', () => {
  it('fits a 36 in roll', () => {
    const [roll] = frameTemplateRoll(sedge, 'hoop')
    expect(Math.min(roll.widthMm, roll.heightMm)).toBeLessThanOrEqual(914)
  })

  it('is as long as the section at the frame’s face', () => {
    const outer = frameTemplateRoll(sedge, 'hoop')[0].marks.find((mark) => mark.group === 'outer-face')
    if (outer?.kind !== 'path') throw new Error('no contour')
    const { points } = outer.shapes[0]
    const length = points.slice(1).reduce((sum, q, i) => {
      const p = points[i]
      const chord = Math.hypot(q[0] - p[0], q[1] - p[1])
      const angle = 4 * Math.atan(Math.abs(p[2]))
      return sum + (angle === 0 ? chord : (chord * angle) / (2 * Math.sin(angle / 2)))
    }, 0)
    const turn = sedge.section.points[sedge.section.points.length - 1].heading - sedge.section.points[0].heading
    // an offset curve is shorter by depth times the angle it turns through
    const expected = (sedge.section.halfGirth - sedge.definition.shell.skin.thickness.value * turn) * 1000
    expect(length).toBeCloseTo(expected, 3)
  })
})

describe('tape card', () => {
  it('lists each hole of the edge row once, in order, from one end', () => {
    const { patterns } = part('strake-side-left')
    const edge = tapeEdges(patterns[0]).find((e) => e.edge === 'upper edge')
    if (!edge) throw new Error('no upper edge')
    const places = edge.stops.map((stop) => stop.at)
    expect(places).toEqual([...places].sort((a, b) => a - b))
    const row = patterns[0].holes.rows.indexOf('seam-2-left')
    expect(edge.stops.filter((stop) => stop.kind === 'hole')).toHaveLength(patterns[0].holes.row.filter((r) => r === row).length)
  })

  it('shows the hand 40 mm high', () => {
    const [card] = tapeCards(sedge, part('strake-side-left'))
    const hand = textsOf(card).find(({ mark }) => mark.height === 40)
    expect(hand?.mark.text).toBe('R')
  })
})

describe('schedules, checks and cover', () => {
  it('counts every fastener once in the rivet schedule', () => {
    const { solid, blind } = sedge.totals.fasteners
    expect(texts(rivetSchedule(sedge))).toContain(String(solid + blind))
  })

  it('lists every opening', () => {
    const words = texts(openingSchedule(sedge))
    for (const opening of sedge.openings) expect(words).toContain(opening.id)
  })

  it('puts the worst first', () => {
    const order = worstFirst(sedge.checks).map((check) => check.verdict)
    const rank = order.map((verdict) => ['fail', 'caution', 'not-checked', 'pass'].indexOf(verdict))
    expect(rank).toEqual([...rank].sort((a, b) => a - b))
  })

  it('prints every check’s sentence', () => {
    const words = texts(checksList(sedge)).join(' ').replace(/\s+/g, ' ')
    for (const check of sedge.checks) expect(words).toContain(check.says.split(' ').slice(0, 3).join(' '))
  })

  it('says what is not covered on the cover', () => {
    const words = texts(coverSheets(sedge, contents)).join(' ')
    for (const sentence of sedge.notCovered) expect(words).toContain(sentence.split(' ').slice(0, 4).join(' '))
  })
})
