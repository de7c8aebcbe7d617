/**
 * A made-up side sheet for tests: two seams with whole pitches between frames, staggered joint rows at both ends, hoop rows
 * interrupted by a window with its rim ring. m, seen from outside, x aft, y up.
 */

import type { OurHole, OurPattern } from '../src/checks/prove/nouns.js'
import { roundedRectangle } from '../src/maths/outline.js'

const FRAMES = [0, 0.61, 1.22, 1.83, 2.44, 3.05, 3.66]
const HEIGHT = 1.213

export function sheetPattern(): OurPattern {
  const holes: OurHole[] = []
  const put = (row: string, span: string, n: number, x: number, y: number): void => {
    holes.push({ id: `${row}/${span}/${n}`, row, x: 0.0375 + x, y, diameter: 0.0033 })
  }
  for (const [row, y] of [
    ['seam-3-left', 0.0125],
    ['seam-2-left', HEIGHT - 0.0125],
  ] as const) {
    FRAMES.slice(1).forEach((to, i) => {
      for (let k = i === 0 ? 0 : 1; k <= 24; k++) put(row, `F${i + 1}-F${i + 2}`, k, FRAMES[i] + ((to - FRAMES[i]) * k) / 24, y)
    })
  }
  const window = { x0: 0.96, x1: 1.48, y0: 0.35, y1: 0.86 }
  FRAMES.slice(1, -1).forEach((station, i) => {
    for (let k = 1; k < 31; k++) {
      const y = 0.0125 + ((HEIGHT - 0.025) * k) / 31
      const x = station + 0.007
      if (x > window.x0 - 0.03 && x < window.x1 + 0.03 && y > window.y0 - 0.03 && y < window.y1 + 0.03) continue
      put(`hoop-F${i + 2}`, 'seam-2-left-seam-3-left', k, x, y)
    }
  })
  for (const [name, x0] of [
    ['F1', 0],
    ['F7', 3.66],
  ] as const) {
    for (const [row, at] of [
      ['a', -0.0125],
      ['b', 0.0125],
    ] as const) {
      for (let k = 1; k < 46; k++)
        put(
          `joint-${name}-${row}`,
          'seam-2-left-seam-3-left',
          k,
          x0 + at,
          0.0125 + ((HEIGHT - 0.025) * (k + (row === 'b' ? 0.5 : 0))) / 46.5,
        )
    }
  }
  rim(window, put)
  return {
    part: 'strake-side-left',
    face: 'sheet',
    flat: { view: 'outside', x: 'aft', y: 'up', origin: { station: 2.9625, girth: -2.6155, says: 'lower forward corner' } },
    outline: roundedRectangle(0, 0, 3.735, HEIGHT, 0),
    cuts: [roundedRectangle(0.0375 + window.x0, window.y0, 0.0375 + window.x1, window.y1, 0.075)],
    holes,
  }
}

/** Rim line 11 mm outside the cut, evenly spaced round straights and corners. */
function rim(
  w: { x0: number; x1: number; y0: number; y1: number },
  put: (row: string, span: string, n: number, x: number, y: number) => void,
): void {
  const out = 0.011,
    r = 0.075 + out
  const [x0, x1, y0, y1] = [w.x0 - out, w.x1 + out, w.y0 - out, w.y1 + out]
  const sides: readonly (readonly [number, number, number, number])[] = [
    [x0 + r, y0, x1 - r, y0],
    [x1, y0 + r, x1, y1 - r],
    [x1 - r, y1, x0 + r, y1],
    [x0, y1 - r, x0, y0 + r],
  ]
  const centres = [
    [x1 - r, y0 + r],
    [x1 - r, y1 - r],
    [x0 + r, y1 - r],
    [x0 + r, y0 + r],
  ] as const
  sides.forEach(([ax, ay, bx, by], side) => {
    for (let k = 0; k < 11; k++) put('rim-RW3', `side-${side}`, k + 1, ax + ((bx - ax) * k) / 11, ay + ((by - ay) * k) / 11)
    const [cx, cy] = centres[side]
    for (let k = 0; k < 4; k++) {
      const a = ((side - 1) * Math.PI) / 2 + (k * Math.PI) / 8
      put('rim-RW3', `corner-${side}`, k + 1, cx + r * Math.cos(a), cy + r * Math.sin(a))
    }
  })
}
