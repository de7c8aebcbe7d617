import { describe, expect, it } from 'vitest'
import { sampleDesign } from '../../tests/made-up-design.js'
import { prove } from '../checks/prove/prove-part.js'
import { patternDxf } from '../documents/text/dxf.js'
import { readHoleList } from './read-hole-list.js'

/** A drawing in text from group codes and values. */
const dxf = (units: number | null, ...entities: readonly (readonly (string | number)[])[]): string =>
  [
    '0',
    'SECTION',
    '2',
    'HEADER',
    ...(units === null ? [] : ['9', '$INSUNITS', '70', String(units)]),
    '0',
    'ENDSEC',
    '0',
    'SECTION',
    '2',
    'BLOCKS',
    '0',
    'BLOCK',
    '8',
    '0',
    '2',
    'PUNCH',
    '70',
    '0',
    '10',
    '0',
    '20',
    '0',
    '30',
    '0',
    '3',
    'PUNCH',
    '0',
    'CIRCLE',
    '8',
    '0',
    '10',
    '1',
    '20',
    '0',
    '40',
    '0.5',
    '0',
    'ENDBLK',
    '8',
    '0',
    '0',
    'ENDSEC',
    '0',
    'SECTION',
    '2',
    'ENTITIES',
    ...entities.flat().map(String),
    '0',
    'ENDSEC',
    '0',
    'EOF',
  ].join('\n')
const circle = (x: number, y: number, r: number): readonly (string | number)[] => [0, 'CIRCLE', 8, 'H', 10, x, 20, y, 40, r]

describe('reading a hole list from a drawing', () => {
  it('reads circles with the unit the drawing says', () => {
    const { list } = readHoleList(dxf(1, circle(1, 2, 0.065), circle(3, 4, 0.065)), 'punch.dxf')
    expect(list).toMatchObject({
      unit: 'in',
      readings: [
        { label: 'circle 1', x: 1, y: 2, diameter: 0.13 },
        { x: 3, y: 4 },
      ],
    })
  })

  it('turns metres into millimetres and leaves an unsaid unit open', () => {
    expect(readHoleList(dxf(6, circle(1, 2, 0.001)), 'a.dxf').list).toMatchObject({
      unit: 'mm',
      readings: [{ x: 1000, y: 2000, diameter: 2 }],
    })
    expect(readHoleList(dxf(0, circle(1, 2, 1)), 'a.dxf').list!.unit).toBeNull()
    expect(readHoleList(dxf(null, circle(1, 2, 1)), 'a.dxf').list!.unit).toBeNull()
  })

  it('finds circles in placed blocks, turned and scaled', () => {
    const placed = [0, 'INSERT', 8, 'H', 2, 'PUNCH', 10, 10, 20, 20, 41, 2, 42, 2, 50, 90]
    const { list } = readHoleList(dxf(4, placed), 'a.dxf')
    expect(list!.readings[0].x).toBeCloseTo(10, 9)
    expect(list!.readings[0].y).toBeCloseTo(22, 9)
    expect(list!.readings[0].diameter).toBeCloseTo(2, 9)
  })

  it('counts a hole drawn twice once, and says so', () => {
    const { list } = readHoleList(dxf(4, circle(1, 2, 1), circle(1.001, 2, 1.5)), 'a.dxf')
    expect([list!.readings.length, list!.notes]).toEqual([1, ['1 circles lie on others and were counted once.']])
  })

  it('refuses in sentences what is no drawing, holds no circle, or contradicts the unit', () => {
    expect(readHoleList('not a drawing', 'a.dxf').faults[0]).toContain('cannot be read as a DXF')
    expect(readHoleList(dxf(4), 'a.dxf').faults[0]).toContain('holds no circles')
    expect(readHoleList(dxf(1, circle(1, 2, 1)), 'a.dxf', { unit: 'mm' }).faults[0]).toContain('says it is in inches')
    expect(readHoleList('AutoCAD Binary DXF\r\n', 'a.dxf').faults[0]).toContain('binary')
  })

  it('proves our own DXF against our own pattern, anchored by its outline', () => {
    const { design, part, pattern } = sampleDesign()
    const { list } = readHoleList(patternDxf(design, part, pattern), 'ours.dxf')
    expect(list!.corners.length).toBe(4)
    const { report } = prove(design, part.id, list!)
    expect([report!.verdict, report!.best!.agree]).toEqual(['agrees', 666])
  })

  it('reads lines of figures too', () => {
    expect(readHoleList('x mm,y mm\n1,2\n', 'list.csv').list!.readings.length).toBe(1)
  })
})

describe('proving a part of a design', () => {
  const { design, part } = sampleDesign()
  const list = readHoleList('x mm,y mm\n1,2\n5,6\n', 'list.csv').list!

  it('says which parts there are when the named one is not', () => {
    expect(prove(design, 'strake-9', list).faults).toEqual(['Tester 3 has no part strake-9. Parts with holes: strake-side-left.'])
  })

  it('says which faces and rows there are', () => {
    expect(prove(design, part.id, list, { face: 'web' }).faults[0]).toContain('has no face web. Its faces are sheet')
    expect(prove(design, part.id, { ...list, row: 'seam-9' }).faults[0]).toContain('no such row')
  })

  it('asks for more than one reading', () => {
    expect(prove(design, part.id, { ...list, readings: list.readings.slice(1) }).faults[0]).toContain('holds 1 readings')
  })

  it('proves a taped row against the row it names', () => {
    const row = ['unit: mm', 'row,running', ...[0, 1, 2, 29].map((k) => `hoop-F2,${(k * 1188) / 31}`)].join('\n')
    const read = readHoleList(row, 'tape.csv')
    expect(read.faults).toEqual([])
    const { report } = prove(design, part.id, read.list!)
    expect([report!.verdict, report!.best!.agree]).toEqual(['agrees', 4])
    expect(report!.best!.compared.map((c) => c.hole!.split('/')[0])).toEqual(['hoop-F2', 'hoop-F2', 'hoop-F2', 'hoop-F2'])
    // the row reads the same from either end, and the report says so
    expect(report!.summary.join(' ')).toContain('the same turned or mirrored on itself')
  })

  it('cannot tell where along a regular row a short tape lies', () => {
    const row = ['unit: mm', 'row,running', ...[0, 1, 2].map((k) => `hoop-F2,${(k * 1188) / 31}`)].join('\n')
    const { report } = prove(design, part.id, readHoleList(row, 'tape.csv').list!)
    expect(report!.verdict).toBe('undecided')
    expect(report!.askFor!.hole.startsWith('hoop-F2/')).toBe(true)
  })
})
