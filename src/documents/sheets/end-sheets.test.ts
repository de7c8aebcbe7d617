/** Sheets of the ends and their jigs: clear lettering, true scale, squares that prove it, and nothing left unsaid. */
import { describe, expect, it } from 'vitest'
import { readExample } from '../../../tests/examples.js'
import { design } from '../../checks/index.js'
import { endsOf } from '../drawing/end-geometry.js'
import { overlappingTexts, textsOf, textsOffPaper } from '../drawing/overlaps.js'
import type { Mark, Page, PathMark } from '../drawing/page.js'
import type { PrintOptions } from '../drawing/sheet.js'
import { boundsOf } from '../drawing/view.js'
import { endPicture } from './end-picture.js'
import { endSheets } from './end-sheet.js'
import { waitingSheets } from './end-waiting.js'
import { contourCard, endJigCard } from './jig-card-end.js'
import { sideJigCard } from './jig-card-side.js'
import { ribTemplateRoll, ribTemplateTiles } from './rib-template.js'

const sedge = design(readExample('sedge-6'))
const { jig, sideJig } = sedge.ends
const rolls = (of = sedge): readonly Page[] => of.ends.jig.ribs.map((rib) => ribTemplateRoll(of, rib))

function everySheet(of: typeof sedge, options: PrintOptions): readonly Page[] {
  return [
    ...endSheets(of, options),
    ...waitingSheets(of, options),
    ...endJigCard(of, 'nose', options),
    ...endJigCard(of, 'tail', options),
    ...sideJigCard(of, options),
    ...of.ends.jig.ribs.flatMap((rib) => [
      ...contourCard(of, rib, options),
      ribTemplateRoll(of, rib, options),
      ...ribTemplateTiles(of, rib, options),
    ]),
  ]
}
const faultsOf = (pages: readonly Page[]): readonly string[] =>
  pages.flatMap((page) => [
    ...overlappingTexts(page).map(([a, b]) => `${page.name}: "${a}" lies on "${b}"`),
    ...textsOffPaper(page, 4).map((text) => `${page.name}: "${text}" runs off the paper`),
  ])
const texts = (pages: readonly Page[]): readonly string[] => pages.flatMap((page) => textsOf(page).map(({ mark }) => mark.text))
const pathIn = (page: Page, group: string): PathMark => {
  const found = page.marks.find((mark: Mark): mark is PathMark => mark.kind === 'path' && mark.group === group)
  if (!found) throw new Error(`${page.name} draws no ${group}`)
  return found
}

describe('every sheet of the ends', () => {
  it('keeps its lettering clear in millimetres on ISO sheets', () => expect(faultsOf(everySheet(sedge, {}))).toEqual([]))
  it('keeps its lettering clear in inches on US sheets, in the longest coach too', () =>
    expect(faultsOf(everySheet(design(readExample('sedge-8')), { units: 'inch', series: 'us' }))).toEqual([]))
  it('is laid out for a coach whose traffic keeps left, hands changed', () => {
    const uk = design({ ...sedge.definition, coach: { ...sedge.definition.coach, market: 'uk' } })
    expect(faultsOf([...endSheets(uk), ...endJigCard(uk, 'nose')])).toEqual([])
    const hands = (of: typeof sedge): readonly string[] =>
      textsOf(endJigCard(of, 'nose')[0])
        .filter(({ mark }) => mark.height === 40)
        .sort((a, b) => a.mark.x - b.mark.x)
        .map(({ mark }) => mark.text)
    expect(hands(sedge)).toEqual(['C', 'R'])
    expect(hands(uk)).toEqual(['R', 'C'])
  })
})

describe('rib templates', () => {
  it('are true to scale: the contour is as long on paper as in the metal, and as far apart end to end', () => {
    rolls().forEach((page, i) => {
      const rib = jig.ribs[i]
      const { points } = pathIn(page, 'outer-face').shapes[0]
      expect(points).toHaveLength(rib.outer.length)
      const apart = (list: readonly (readonly number[])[]): number =>
        Math.hypot(list[list.length - 1][0] - list[0][0], list[list.length - 1][1] - list[0][1])
      expect(apart(points)).toBeCloseTo(apart(rib.outer) * 1000, 6)
      const run = points.slice(1).reduce((sum, q, n) => {
        const angle = 4 * Math.atan(Math.abs(points[n][2]))
        const chord = Math.hypot(q[0] - points[n][0], q[1] - points[n][1])
        return sum + (angle === 0 ? chord : (chord * angle) / (2 * Math.sin(angle / 2)))
      }, 0)
      expect(run).toBeCloseTo(rib.run[rib.run.length - 1] * 1000, 6)
    })
  })

  it('bend the way the rib does: every arc of the contour bulges away from the inner face', () => {
    for (const page of rolls()) {
      const [outer, inner] = [pathIn(page, 'outer-face').shapes[0].points, pathIn(page, 'inner-face').shapes[0].points]
      outer.slice(0, -1).forEach((p, i) => {
        const q = outer[i + 1]
        // on paper a clockwise arc bulges to the left of travel, y running down
        const left = [q[1] - p[1], -(q[0] - p[0])]
        const away = left[0] * (p[0] - inner[i][0]) + left[1] * (p[1] - inner[i][1])
        if (Math.abs(p[2]) > 1e-9) expect(Math.sign(p[2])).toBe(Math.sign(away))
      })
    }
  })

  it('carry a 100 mm square on every page and every tile', () => {
    for (const page of [...rolls(), ...ribTemplateTiles(sedge, jig.ribs[0])]) {
      const { shapes } = pathIn(page, 'check-square')
      const box = boundsOf([shapes[0].points])
      expect([box.x1 - box.x0, box.y1 - box.y0].map((v) => Math.round(v * 1e6) / 1e6)).toEqual([100, 100])
      expect(box.x1).toBeLessThan(page.widthMm)
      expect(box.y1).toBeLessThan(page.heightMm)
    }
  })

  it('fit a 36 in roll, and say which hands they serve', () => {
    for (const page of rolls()) expect(Math.min(page.widthMm, page.heightMm)).toBeLessThanOrEqual(914)
    const words = texts([ribTemplateRoll(sedge, jig.ribs[1])]).join(' ')
    for (const text of [
      'NOSE C (seam-3) and TAIL R (seam-4)',
      'Turned over: nose R (seam-4) and tail C (seam-3)',
      'cap row',
      'base row',
      'floor',
      'WL 1500',
    ])
      expect(words).toContain(text)
  })
})

describe('jig cards', () => {
  it('print both hands 40 mm high with the view between them', () => {
    for (const page of [endJigCard(sedge, 'nose')[0], endJigCard(sedge, 'tail')[0], sideJigCard(sedge)[0]]) {
      const tall = textsOf(page).filter(({ mark }) => mark.height === 40)
      expect(tall.map(({ mark }) => mark.text).sort()).toEqual(['C', 'R'])
      expect(texts([page]).some((text) => text.includes('SEEN FROM'))).toBe(true)
    }
  })

  it('list every locator, diagonal and frame', () => {
    const words = texts(endJigCard(sedge, 'tail'))
    for (const rib of jig.ribs) {
      for (const l of rib.locators) expect(words).toContain((l.point[0] * 1000).toFixed(2))
      for (const l of rib.locators.slice(0, 1)) expect(words).toContain((l.station.tail * 1000).toFixed(1))
    }
    for (const d of jig.diagonals) expect(words.filter((w) => w === (d.right * 1000).toFixed(1)).length).toBeGreaterThanOrEqual(2)
    const side = texts(sideJigCard(sedge))
    for (const f of sideJig.frames) expect(side).toContain((f.fromFirst * 1000).toFixed(1))
    for (const l of [...sideJig.hoop, ...sideJig.joint]) expect(side).toContain((l.y * 1000).toFixed(2))
  })

  it('give each point of a contour with the arc to the next', () => {
    for (const rib of jig.ribs) {
      const words = texts(contourCard(sedge, rib))
      for (const [r] of rib.outer) expect(words).toContain((r * 1000).toFixed(2))
      expect(words).toContain(String(rib.outer.length))
    }
  })
})

describe('an end whole', () => {
  it('names every gore, seam and opening, and gives every rib and skin', () => {
    endSheets(sedge).forEach((page, i) => {
      const words = texts([page])
      const { end } = endsOf(sedge)[i]
      for (const rib of sedge.ends.ribs.filter((r) => r.azimuth > -1e-9)) expect(words).toContain((rib.length * 1000).toFixed(1))
      for (const o of sedge.openings.filter((each) => each.surface === end)) expect(words).toContain(o.id)
      for (const p of sedge.parts.filter((each) => each.kind === 'gore' && each.place.end?.which === end))
        expect(words).toContain(p.area.toFixed(3))
      for (let k = 1; k < sedge.ends.edges.length - 1; k++) expect(words).toContain(`seam ${k}`)
    })
  })

  it('keeps the names of close seams apart: those of nine gores stand a gap from one another', () => {
    const six = readExample('sedge-6')
    const seams = [20, 38, 54, 70].map((degrees) => (degrees * Math.PI) / 180)
    const [page] = endSheets(design({ ...six, ends: { ...six.ends, seams } }))
    const named = textsOf(page).filter(({ mark }) => /^seam \d$/.test(mark.text))
    expect(named).toHaveLength(8)
    for (const [i, a] of named.entries())
      for (const b of named.slice(i + 1)) {
        const [before, after] = a.mark.x < b.mark.x ? [a, b] : [b, a]
        const gap = Math.min(...after.box.map(([x]) => x)) - Math.max(...before.box.map(([x]) => x))
        expect(gap > 1 || Math.abs(a.mark.y - b.mark.y) > 3, `${a.mark.text} and ${b.mark.text}: ${gap} mm`).toBe(true)
      }
  })

  it('is as wide on paper as the coach at the scale it names', () => {
    const [page] = endSheets(sedge)
    expect(texts([page])).toContain('1:10')
    const box = boundsOf(
      page.marks
        .filter((m): m is PathMark => m.kind === 'path' && m.group === 'outline')
        .flatMap((m) => m.shapes.slice(0, 2).map((s) => s.points))
        .slice(0, 2),
    )
    expect(box.x1 - box.x0).toBeCloseTo(sedge.section.width * 100, 4)
  })

  it('lists the parts that wait, each with why', () => {
    const words = texts(waitingSheets(sedge)).join(' ')
    const waiting = sedge.parts.filter((p) => p.patterns.length === 0)
    expect(waiting.length).toBeGreaterThan(0)
    for (const p of waiting) expect(words).toContain(p.id)
    expect(words).toContain('blank of a formed panel')
  })

  it('is a picture with room for whatever is laid beside it', () => {
    const square = [
      [0, 0, 0],
      [1, 0, 0],
      [1, 0.5, 0],
      [0, 0.5, 0],
    ] as const
    const flat = (part: string) => ({ part, outline: square, holes: { x: [0.5], y: [0.25] } })
    // five blanks of 25 mm fill more than the heading over them, each more asks for its width and a gap
    const [none, five, seven] = [0, 5, 7].map((n) =>
      endPicture(
        sedge,
        Array.from({ length: n }, (_, i) => flat(`nose-gore-${i + 1}`)),
      ),
    )
    expect(seven.widthMm).toBe(five.widthMm + 2 * (25 + 5))
    for (const page of [none, five, seven]) expect(textsOffPaper(page, 0)).toEqual([])
  })
})
