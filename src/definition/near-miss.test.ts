import { describe, expect, it } from 'vitest'
import { edits, nearest, oneOf } from './near-miss.js'

describe('the word somebody meant', () => {
  it('counts edits, a swap of neighbours as one', () => {
    expect([edits('girth', 'girth'), edits('grith', 'girth'), edits('girht', 'girth'), edits('gith', 'girth'), edits('', 'abc')]).toEqual([
      0, 1, 1, 1, 3,
    ])
  })

  it('forgives case, blanks, hyphens and shortening', () => {
    const keys = ['girth', 'row offset', 'cross-members', 'station', 'wl', 'mass']
    expect(
      ['grith', 'row_offset', 'Row-Offset', 'crossMembers', 'sta', 'stations', 'WL', 'weight', 'w'].map((k) => nearest(k, keys)),
    ).toEqual(['girth', 'row offset', 'row offset', 'cross-members', 'station', 'station', 'wl', null, null])
  })

  it('does not guess between words of two letters', () => {
    expect(nearest('F9', ['F1', 'F2'])).toBeNull()
  })

  it('joins choices', () => {
    expect([oneOf([]), oneOf(['a']), oneOf(['a', 'b', 'c'])]).toEqual(['nothing', 'a', 'a, b or c'])
  })
})
