import type { DxfParser, ICircleEntity, ILineEntity, ILwpolylineEntity, ITextEntity } from 'dxf-parser'
import dxfParser from 'dxf-parser'
import { describe, expect, it } from 'vitest'
import { sampleDesign } from '../../../tests/made-up-design.js'
import { patternDxf } from './dxf.js'

const { design, part, pattern } = sampleDesign()
const text = patternDxf(design, part, pattern, { unit: '0147', program: 'Coachwright 0.1.0' })
// the library's types say a namespace where its file gives the class itself
const Parser = dxfParser as unknown as new () => DxfParser
const file = new Parser().parseSync(text)!
const on = <T>(layer: string): T[] => file.entities.filter((e) => e.layer === layer) as unknown as T[]

describe('flat pattern as DXF', () => {
  it('says millimetres and holds the layers', () => {
    expect(file.header.$INSUNITS).toBe(4)
    expect(Object.keys(file.tables.layer.layers)).toEqual(
      expect.arrayContaining(['OUTLINE', 'CUT', 'CONTOUR', 'HOLES', 'ROLL', 'BEND', 'MARK', 'TEXT']),
    )
  })

  it('holds every hole at 1:1 as a circle', () => {
    const circles = on<ICircleEntity>('HOLES')
    expect(circles.length).toBe(pattern.holes.x.length)
    circles.forEach((c, i) => {
      expect(c.center.x / 1000).toBeCloseTo(pattern.holes.x[i], 9)
      expect(c.center.y / 1000).toBeCloseTo(pattern.holes.y[i], 9)
      expect(c.radius / 500).toBeCloseTo(pattern.holes.diameter[i], 9)
    })
  })

  it('holds the blank and the cuts as closed polylines with their bulges', () => {
    for (const [layer, wanted] of [
      ['OUTLINE', [pattern.outline]],
      ['CUT', pattern.cuts.map((c) => c.outline)],
    ] as const) {
      const found = on<ILwpolylineEntity>(layer)
      expect(found.length).toBe(wanted.length)
      found.forEach((p, k) => {
        expect(p.shape).toBe(true)
        expect(p.vertices.length).toBe(wanted[k].length)
        p.vertices.forEach((v, i) => {
          const [x, y, bulge] = wanted[k][i]
          expect(v.x / 1000).toBeCloseTo(x, 9)
          expect(v.y / 1000).toBeCloseTo(y, 9)
          expect(v.bulge ?? 0).toBeCloseTo(bulge, 9)
        })
      })
    }
  })

  it('gives the edge that is left where a cut reaches the blank edge', () => {
    const [contour] = on<ILwpolylineEntity>('CONTOUR')
    // four corners of the blank, and the six of the notch
    expect(contour.vertices.length).toBe(10)
  })

  it('parts roll, bend and mark lines', () => {
    expect(['ROLL', 'BEND', 'MARK'].map((l) => on<ILineEntity>(l).length)).toEqual([1, 1, 1])
    expect(on<ILineEntity>('BEND')[0].vertices.map((v) => [v.x, v.y])).toEqual([
      [0, 20],
      [3735, 20],
    ])
  })

  it('says whose it is, which side and view, the revision and the caution', () => {
    const says = on<ITextEntity>('TEXT')
      .map((t) => t.text)
      .join('\n')
    for (const words of [
      'COACH: Tester 3 by A Shop',
      'UNIT NUMBER: 0147',
      'SIDE: LEFT (R, road side)',
      'seen from OUTSIDE, x runs aft, y runs up',
      'REVISION: 0123456789ab',
      'DATE: 2026-03-02',
      'Check before metal',
    ]) {
      expect(says).toContain(words)
    }
  })

  it('is the same bytes each time and dates nothing', () => {
    expect(patternDxf(design, part, pattern, { unit: '0147', program: 'Coachwright 0.1.0' })).toBe(text)
    expect(text).not.toMatch(/TDCREATE|TDUPDATE/)
  })
})
