/** Small signs every drawing carries: projection symbol, scale bar, check square, origin, direction arrow. */

import type { Mark } from './page.js'
import { arrowHead, circles, FINE, letter, line, lines, OUTLINE, path, rectangle, THIN } from './page.js'
import type { PrintUnits } from './units.js'
import { fixed } from './units.js'
import type { Scale } from './view.js'

/** Truncated cone of ISO 5456-2, `height` mm high, its left edge at x and its middle at y. First angle: side view left of the circles. */
export function projectionSymbol(kind: 'first' | 'third', x: number, y: number, height: number): readonly Mark[] {
  const group = 'title'
  const [big, small, long, gap] = [height, height / 2, height * 1.2, height * 0.5]
  const cone = kind === 'first' ? x : x + big + gap
  const rings = kind === 'first' ? x + long + gap + big / 2 : x + big / 2
  // the small end always faces away from the circles in first angle and toward them in third angle
  const points: (readonly [number, number, number])[] = [
    [cone, y - small / 2, 0],
    [cone + long, y - big / 2, 0],
    [cone + long, y + big / 2, 0],
    [cone, y + small / 2, 0],
  ]
  return [
    path([{ points, closed: true }], { width: THIN, group }),
    circles([rings, y, big, rings, y, small], { width: THIN, group }),
    lines(
      [
        [cone - 1.2, y, cone + long + 1.2, y],
        [rings - big / 2 - 1.2, y, rings + big / 2 + 1.2, y],
        [rings, y - big / 2 - 1.2, rings, y + big / 2 + 1.2],
      ],
      { width: FINE, type: 'long-dash-dot', group },
    ),
  ]
}

/** A bar of whole tens of the unit, black and white by turns, so that a copy that was shrunk shows it. */
export function scaleBar(scale: Scale, x: number, y: number, units: PrintUnits): readonly Mark[] {
  const group = 'scale-bar'
  const unitMm = units === 'metric' ? 1 : 25.4
  const steps = units === 'metric' ? [10, 20, 50, 100, 200, 500, 1000] : [1, 2, 4, 6, 12, 24, 48]
  const step = steps.find((s) => (s * unitMm) / scale >= 10) ?? steps[steps.length - 1]
  const each = (step * unitMm) / scale
  const marks: Mark[] = [rectangle(x, y, each * 5, 1.5, { width: FINE, group })]
  for (let i = 0; i < 5; i += 2) marks.push(rectangle(x + i * each, y, each, 1.5, { width: null, fill: 0, group }))
  for (let i = 0; i <= 5; i++)
    marks.push(letter(x + i * each, y + 2.4, fixed(i * step, 0), { height: 1.8, anchor: 'middle', sits: 'top', group }))
  marks.push(letter(x + 5 * each + 4, y + 2.4, `${units === 'metric' ? 'mm' : 'in'} at 1:${scale}`, { height: 1.8, sits: 'top', group }))
  return marks
}

/** The 100 mm square that proves a full-size print, with the words that tell what to do. Top left corner at x, y. */
export function checkSquare(x: number, y: number): readonly Mark[] {
  const group = 'check-square'
  return [
    rectangle(x, y, 100, 100, { width: OUTLINE, group }),
    lines(
      [
        [x + 50, y - 2, x + 50, y + 2],
        [x + 50, y + 98, x + 50, y + 102],
        [x - 2, y + 50, x + 2, y + 50],
        [x + 98, y + 50, x + 102, y + 50],
      ],
      { width: FINE, group },
    ),
    letter(x + 50, y + 44, 'Print at 100 %, never fit to page.', { height: 3.5, anchor: 'middle', group }),
    letter(x + 50, y + 52, 'This square must measure 100 mm', { height: 3.5, anchor: 'middle', group }),
    letter(x + 50, y + 58, 'each way (3.937 in).', { height: 3.5, anchor: 'middle', group }),
  ]
}

/** Circle and cross where the pattern's own 0,0 lies. */
export function originMark(x: number, y: number): readonly Mark[] {
  const group = 'origin'
  return [
    circles([x, y, 4], { width: THIN, group }),
    lines(
      [
        [x - 4, y, x + 4, y],
        [x, y - 4, x, y + 4],
      ],
      { width: THIN, group },
    ),
  ]
}

/** An arrow with a word at its head: `turn` in degrees anticlockwise, 0 points right. */
export function directionArrow(x: number, y: number, turn: number, word: string, length = 14): readonly Mark[] {
  const group = 'direction'
  const a = (-turn * Math.PI) / 180
  const [u, v] = [x + length * Math.cos(a), y + length * Math.sin(a)]
  const beyond = 1.6
  const upright = Math.abs(Math.cos(a)) < 0.5
  const text = letter(u + beyond * Math.cos(a), v + beyond * Math.sin(a), word, {
    height: 2.5,
    anchor: upright ? 'middle' : Math.cos(a) > 0 ? 'start' : 'end',
    sits: upright ? (Math.sin(a) < 0 ? 'foot' : 'top') : 'middle',
    group,
  })
  return [line(x, y, u - 1.5 * Math.cos(a), v - 1.5 * Math.sin(a), { width: OUTLINE, group }), arrowHead(u, v, a, 3.5, group), text]
}
