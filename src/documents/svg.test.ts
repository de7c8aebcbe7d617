import { describe, expect, it } from 'vitest'
import type { Page } from './drawing/page.js'
import { circles, letter, line, path, rectangle } from './drawing/page.js'
import { mm, pageToSvg } from './svg.js'

const page: Page = {
  name: 'p',
  says: 'A page of <tests> & "signs"',
  widthMm: 420,
  heightMm: 297,
  marks: [
    rectangle(10, 10, 100, 100, { width: 0.5, group: 'square' }),
    line(0, 0, 1 / 3, 1e-9, { group: 'lines' }),
    circles([50, 60, 3.3, 70, 60, 3.3], { group: 'holes' }),
    path(
      [
        {
          points: [
            [0, 0, 1],
            [10, 0, 1],
          ],
          closed: true,
        },
      ],
      { group: 'lines' },
    ),
    letter(20, 30, 'R < C & "D"', { turn: 90 }),
    { kind: 'window', x: 200, y: 100, width: 50, height: 40, shift: [150, 90], marks: [line(50, 10, 400, 10)], group: null },
  ],
}
const svg = pageToSvg(page)

/** Opens and closes of elements in order: enough to tell well-formed text from broken text. */
function wellFormed(text: string): boolean {
  const open: string[] = []
  for (const [, close, name, , self] of text.matchAll(/<(\/?)([a-zA-Z]+)((?:\s[^<>]*?)?)(\/?)>/g)) {
    if (close) {
      if (open.pop() !== name) return false
    } else if (!self) open.push(name)
  }
  return open.length === 0 && !/&(?!amp;|lt;|gt;|quot;)/.test(text)
}

describe('page to SVG', () => {
  it('has the size of the page in millimetres and one unit a millimetre', () => {
    expect(svg).toContain('width="420mm" height="297mm" viewBox="0 0 420 297"')
  })

  it('is well formed, whatever the words', () => expect(wellFormed(svg)).toBe(true))

  it('rounds to 1e-4 mm and never prints -0 or powers of ten', () => {
    expect(svg).toContain('M0 0L0.3333 0')
    expect([mm(-0.00001), mm(1e-7), mm(12345.67891)]).toEqual(['0', '0', '12345.6789'])
  })

  it('draws many holes as one path', () => {
    const holes = /<g id="holes" class="holes">([\s\S]*?)<\/g>/.exec(svg)?.[1] ?? ''
    expect(holes.match(/<path/g)).toHaveLength(1)
    expect(holes.match(/Z/g)).toHaveLength(2)
  })

  it('keeps arcs as arcs of the right radius', () => expect(svg).toContain('M0 0A5 5 0 0 1 10 0A5 5 0 0 1 0 0Z'))

  it('gives each group its name once as an id', () => {
    expect(svg.match(/id="lines"/g)).toHaveLength(1)
    expect(svg.match(/class="lines"/g)).toHaveLength(2)
  })

  it('cuts a window off at its edge', () =>
    expect(svg).toContain('<svg x="200" y="100" width="50" height="40" viewBox="50 10 50 40" overflow="hidden">'))

  it('lays no paper under a bare page', () => {
    expect(pageToSvg({ ...page, bare: true })).not.toContain('fill="#fff"')
    expect(svg).toContain('fill="#fff"')
  })

  it('refuses a number that is not one', () => expect(() => mm(Number.NaN)).toThrow(/NaN/))

  it('is the same text each time', () => expect(pageToSvg(page)).toBe(svg))
})
