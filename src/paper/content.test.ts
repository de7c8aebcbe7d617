import { describe, expect, it } from 'vitest'
import { circles, letter, type Mark, rectangle } from '../documents/drawing/page.js'
import { contentOf } from './content.js'

const encoder = { font: () => 'F1', hex: () => '41' }
const inked = (marks: readonly Mark[]): string => contentOf({ name: 'p', says: 'p', widthMm: 50, heightMm: 50, marks }, encoder)
/** The fill in force where the lettering is shown. */
const fillAtText = (content: string): string | undefined =>
  [...content.slice(0, content.indexOf('BT')).matchAll(/(?:^|\s)([\d.]+) g\b/g)].at(-1)?.[1]

describe('lettering', () => {
  const box = rectangle(1, 1, 10, 5, { width: null, fill: 1 })
  it('is black after a white box and a black dot, which is a stroke and sets no fill', () => {
    expect(fillAtText(inked([box, circles([5, 5, 0.5], { fill: 0 }), letter(2, 4, 'A')]))).toBe('0')
  })
  it('is black after a grey box, and after a ring filled white', () => {
    expect(fillAtText(inked([rectangle(1, 1, 10, 5, { fill: 0.9 }), letter(2, 4, 'A')]))).toBe('0')
    expect(fillAtText(inked([circles([5, 5, 4], { fill: 1 }), letter(2, 4, 'A')]))).toBe('0')
  })
})
