import { describe, expect, it } from 'vitest'
import { readCsvList, readNumber } from './read-csv-list.js'

const places = (text: string) => readCsvList(text, 'list.csv').list?.readings.map((r) => [r.label, r.x, r.y, r.diameter])

describe('reading a typed hole list', () => {
  it('reads numbers as they are on the tape', () => {
    expect(['12.5', '-.5', '22 1/2', '3/8', '-1 1/4', '7 mm', '3/4"', '12,5'].map((c) => readNumber(c, true))).toEqual([
      12.5, -0.5, 22.5, 0.375, -1.25, 7, 0.75, 12.5,
    ])
    expect(readNumber('12,5', false)).toBeNaN()
    expect(readNumber('1/0', false)).toBeNaN()
  })

  it('takes columns and unit from the header, wherever they stand', () => {
    const read = readCsvList('# from the punch\nHole No,Dia (in),Y (in),X (in)\n7,0.130,1.5,2 1/4\n', 'list.csv')
    expect(read.list).toMatchObject({ unit: 'in', taped: false, readings: [{ label: '7', line: 3, x: 2.25, y: 1.5, diameter: 0.13 }] })
  })

  it('guesses a headless list: x y, no x y, and no x y dia', () => {
    expect(places('10,20\n30,40')).toEqual([
      ['line 1', 10, 20, null],
      ['line 2', 30, 40, null],
    ])
    expect(places('1,10,20\n2,30,40')).toEqual([
      ['1', 10, 20, null],
      ['2', 30, 40, null],
    ])
    expect(places('1;10,5;20;3,3\n2;30;40;3,3')).toEqual([
      ['1', 10.5, 20, 3.3],
      ['2', 30, 40, 3.3],
    ])
    expect(places('A1,10,20\nA2,30,40')).toEqual([
      ['A1', 10, 20, null],
      ['A2', 30, 40, null],
    ])
  })

  it('reads running dimensions taped along a row, with the unit and the row said', () => {
    const read = readCsvList('unit: in\nrow,running\nseam-2,0\nseam-2,1\nseam-2,2\n', 'tape.csv')
    expect(read.list).toMatchObject({ unit: 'in', taped: true, row: 'seam-2' })
    expect(read.list!.readings.map((r) => [r.x, r.y])).toEqual([
      [0, 0],
      [1, 0],
      [2, 0],
    ])
  })

  it('takes corners of the sheet apart from holes', () => {
    const read = readCsvList('label,x mm,y mm\ncorner lower left,0,0\n1,10,20\n2,30,40\n', 'list.csv')
    expect(read.list!.corners).toEqual([[0, 0]])
    expect(read.list!.readings.length).toBe(2)
  })

  it('gives every fault at once, each with its line', () => {
    const read = readCsvList('x,y\n1,2\n3,abc\n,5\n', 'list.csv')
    expect(read.list).toBeNull()
    expect(read.faults).toEqual([
      'list.csv line 3: the y "abc" is not a number. Write it like 1234.5 or 22 1/2, or start the line with # to leave it out.',
      'list.csv line 4: the x is empty. Write a number, or take the line out.',
    ])
  })

  it('refuses what holds no columns, several taped rows, and a contradicted unit', () => {
    expect(readCsvList('hello\nworld', 'a.txt').faults[0]).toContain('a.txt holds no columns of numbers')
    expect(readCsvList('', 'a.txt').faults[0]).toContain('no columns')
    expect(readCsvList('row,running\na,1\nb,2', 'a.txt').faults[0]).toContain('2 rows (a, b)')
    expect(readCsvList('x in,y in\n1,2', 'a.txt', { unit: 'mm' }).faults[0]).toContain('in in, and you asked for mm')
  })
})
