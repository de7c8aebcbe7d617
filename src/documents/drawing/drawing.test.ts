import { describe, expect, it } from 'vitest'
import type { Outline, SectionPoint } from '../../derive/nouns.js'
import { outlineArea } from '../../maths/outline.js'
import { textWidth, wrap } from './lettering.js'
import { netOutline } from './net-outline.js'
import { overlappingTexts, textsOffPaper } from './overlaps.js'
import type { Page } from './page.js'
import { letter } from './page.js'
import { runningMarks } from './running.js'
import { contour, onSection, sectionCurveResidual } from './section-curve.js'
import { spread } from './spread.js'
import { alongEdge, scaleToFit, viewOf } from './view.js'
import { placeWords, sideLetter } from './words.js'

const page = (marks: Page['marks']): Page => ({ name: 'p', says: 'p', widthMm: 200, heightMm: 100, marks })
const QUARTER = Math.tan(Math.PI / 8)
const SHEET: Outline = [
  [0, 0, 0],
  [3, 0, 0],
  [3, 1, 0],
  [0, 1, 0],
]

describe('spread', () => {
  it('leaves places alone that stand clear', () => expect(spread([0, 10, 20], () => 4)).toEqual([0, 10, 20]))

  it('moves neighbours apart by as little as can be, about their own middle', () => {
    expect(spread([10, 10, 10], () => 4)).toEqual([6, 10, 14])
  })

  it('keeps every gap and stays inside when there is room', () => {
    const places = [0, 1, 1.5, 40, 41, 99, 99.5]
    const out = spread(places, () => 5, 0, 100)
    for (let i = 1; i < out.length; i++) expect(out[i] - out[i - 1]).toBeGreaterThanOrEqual(5 - 1e-9)
    expect(out[0]).toBeGreaterThanOrEqual(0)
    expect(out[out.length - 1]).toBeLessThanOrEqual(100)
  })
})

describe('net outline', () => {
  const notch: Outline = [
    [1, 0, 0],
    [2, 0, 0],
    [2, 0.3, QUARTER],
    [1.9, 0.4, 0],
    [1.1, 0.4, QUARTER],
    [1, 0.3, 0],
  ]
  const area = (outlines: readonly Outline[]): number => outlines.reduce((sum, o) => sum + Math.abs(outlineArea(o)), 0)

  it('leaves a blank without cuts as it is', () => {
    const net = netOutline({ outline: SHEET, cuts: [] })
    expect(net.contours).toEqual([SHEET])
    expect(net.removed).toEqual([])
  })

  it('takes a notch out of the contour: area out is area in', () => {
    const net = netOutline({ outline: SHEET, cuts: [{ opening: 'wheel', outline: notch }] })
    expect(net.contours).toHaveLength(1)
    expect(net.windows).toHaveLength(0)
    expect(area(net.contours)).toBeCloseTo(area([SHEET]) - area([notch]), 9)
    expect(net.removed.map((r) => r.map((v) => Math.round(v * 1e6) / 1e6))).toEqual([[1, 0, 2, 0]])
  })

  it('does the same whichever way the cut and the blank run', () => {
    const back = (o: Outline): Outline =>
      o.map((_, i) => [o[o.length - 1 - i][0], o[o.length - 1 - i][1], -o[(2 * o.length - 2 - i) % o.length][2]] as const)
    const net = netOutline({ outline: back(SHEET), cuts: [{ opening: 'wheel', outline: back(notch) }] })
    expect(area(net.contours)).toBeCloseTo(area([SHEET]) - area([notch]), 9)
  })

  it('leaves two pieces when a cut runs through', () => {
    const through: Outline = [
      [1, 0, 0],
      [2, 0, 0],
      [2, 1, 0],
      [1, 1, 0],
    ]
    const net = netOutline({ outline: SHEET, cuts: [{ opening: 'D1', outline: through }] })
    expect(net.contours).toHaveLength(2)
    expect(area(net.contours)).toBeCloseTo(2, 9)
    expect(net.removed).toHaveLength(2)
  })

  it('takes a corner', () => {
    const corner: Outline = [
      [2, 0.5, 0],
      [3, 0.5, 0],
      [3, 1, 0],
      [2, 1, 0],
    ]
    const net = netOutline({ outline: SHEET, cuts: [{ opening: 'c', outline: corner }] })
    expect(net.contours).toHaveLength(1)
    expect(area(net.contours)).toBeCloseTo(2.5, 9)
  })

  it('keeps a window a window', () => {
    const window: Outline = [
      [1, 0.2, 0],
      [2, 0.2, 0],
      [2, 0.8, 0],
      [1, 0.8, 0],
    ]
    expect(netOutline({ outline: SHEET, cuts: [{ opening: 'W', outline: window }] }).windows).toHaveLength(1)
  })
})

describe('view', () => {
  it('shows a metre as 100 mm at 1:10, upward turned to downward', () => {
    const view = viewOf(10, [0, 0], [50, 200])
    expect([view.x(1), view.y(1)]).toEqual([150, 100])
  })

  it('keeps an arc on its own side', () => {
    const outline: Outline = [
      [1, 0, QUARTER],
      [0, 1, 0],
      [0, 0, 0],
    ]
    const view = viewOf(1, [0, 0], [0, 0])
    const model = alongEdge(outline[0] as [number, number, number], outline[1] as [number, number, number], 0.5)
    const [p, q] = view.shape(outline).points
    const paper = alongEdge([...p] as [number, number, number], [...q] as [number, number, number], 0.5)
    expect(model[0]).toBeCloseTo(Math.SQRT1_2, 12)
    expect(paper[0]).toBeCloseTo(view.x(model[0]), 9)
    expect(paper[1]).toBeCloseTo(view.y(model[1]), 9)
  })

  it('takes only recommended scales', () => expect(scaleToFit(3.71, 1.2, 400, 200)).toBe(10))
})

describe('section curve', () => {
  const R = 0.6
  const points: readonly SectionPoint[] = [
    { id: 'a', says: 'a', girth: 0, y: 0, z: 1, heading: 0, liningGirth: 0 },
    { id: 'b', says: 'b', girth: 0.4, y: 0.4, z: 1, heading: 0, liningGirth: 0 },
    { id: 'c', says: 'c', girth: 0.4 + (R * Math.PI) / 2, y: 0.4 + R, z: 1 - R, heading: Math.PI / 2, liningGirth: 0 },
  ]

  it('runs through its own points', () => expect(sectionCurveResidual(points)).toBeLessThan(1e-12))

  it('is exact in the middle of an arc', () => {
    const at = onSection(points, 0.4 + (R * Math.PI) / 4)
    expect(at.y).toBeCloseTo(0.4 + R * Math.SQRT1_2, 12)
    expect(at.z).toBeCloseTo(1 - R + R * Math.SQRT1_2, 12)
  })

  it('moves inward by a smaller arc about the same centre', () => {
    const [, b, c] = contour(points, 0.1)
    const middle = alongEdge([...b] as [number, number, number], [...c] as [number, number, number], 0.5)
    expect(Math.hypot(middle[0] - 0.4, middle[1] - (1 - R))).toBeCloseTo(R - 0.1, 12)
  })
})

describe('overlap verifier', () => {
  it('sees lettering on lettering, turned or not', () => {
    const over = page([letter(50, 50, 'FIRST'), letter(52, 50.5, 'SECOND'), letter(120, 50, 'THIRD', { turn: 90 })])
    expect(overlappingTexts(over)).toEqual([['FIRST', 'SECOND']])
    expect(overlappingTexts(page([letter(50, 50, 'ACROSS'), letter(55, 55, 'UP AND OVER', { turn: 90 })]))).toHaveLength(1)
  })

  it('sees lettering that leaves the paper', () => {
    expect(textsOffPaper(page([letter(195, 50, 'too long for this'), letter(10, 50, 'inside')]))).toEqual(['too long for this'])
  })

  it('leaves out what a window cuts off', () => {
    const inner = [letter(0, 0, 'HIDDEN'), letter(55, 45, 'SHOWN')]
    const through = page([
      { kind: 'window', x: 40, y: 40, width: 60, height: 20, shift: [0, 0], marks: inner, group: null },
      letter(1, 3, 'HIDDEN'),
    ])
    expect(overlappingTexts(through)).toEqual([])
  })
})

describe('running dimensions', () => {
  it('never lets two values meet, however close the places', () => {
    const places = Array.from({ length: 40 }, (_, i) => ({ at: 60 + (i % 7) * 0.3 + i, text: `${(1000 + i).toFixed(1)}` }))
    const marks = runningMarks({ edge: 'foot', level: 30, places, datum: 60, within: [5, 195] })
    expect(overlappingTexts(page(marks))).toEqual([])
    expect(textsOffPaper(page(marks))).toEqual([])
  })
})

describe('lettering', () => {
  it('measures a line as the sum of its letters', () => expect(textWidth('F3', 5)).toBeCloseTo(textWidth('F', 5) + textWidth('3', 5), 12))

  it('breaks lines between words, and a long word where it must', () => {
    const rows = wrap('seam-2-left stands at G 1415 and-a-word-longer-than-any-line-here', 40, 2.5)
    for (const row of rows) expect(textWidth(row, 2.5)).toBeLessThanOrEqual(40)
    expect(rows.join('').replace(/ /g, '')).toBe('seam-2-leftstandsatG1415and-a-word-longer-than-any-line-here')
  })
})

describe('words', () => {
  it('makes C and R from the market', () => {
    expect([sideLetter('right', 'us'), sideLetter('right', 'uk'), sideLetter('left', 'au'), sideLetter('centre', 'eu')]).toEqual([
      'C',
      'R',
      'C',
      null,
    ])
  })

  it('says under below the floor line', () => {
    expect(placeWords({ side: 'left', station: 5.745, girth: 3.0, waterline: -0.12 }, 'us')).toBe('R 5745 WL -120 under (G 3000)')
    const onEnd = { side: 'left', station: 2.1, girth: 1.24, waterline: 1.16, end: { which: 'nose', y: -0.236 } } as const
    expect(placeWords(onEnd, 'us')).toBe('nose G 1240 (WL 1160, BL -236)')
  })
})
