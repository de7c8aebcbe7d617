/** The word DRAFT in grey across a drawing, behind its lettering: letters of straight strokes, so that no text lies on text. */
import type { Mark, Shape } from './page.js'
import { path } from './page.js'
import type { Room } from './paper-sizes.js'

type Stroke = readonly [x1: number, y1: number, x2: number, y2: number]

/** Strokes in a box 0.62 wide and 1 high, y up. */
const LETTERS: readonly (readonly Stroke[])[] = [
  [
    [0, 0, 0, 1],
    [0, 1, 0.38, 1],
    [0.38, 1, 0.6, 0.75],
    [0.6, 0.75, 0.6, 0.25],
    [0.6, 0.25, 0.38, 0],
    [0.38, 0, 0, 0],
  ],
  [
    [0, 0, 0, 1],
    [0, 1, 0.6, 1],
    [0.6, 1, 0.6, 0.5],
    [0.6, 0.5, 0, 0.5],
    [0.25, 0.5, 0.6, 0],
  ],
  [
    [0, 0, 0.3, 1],
    [0.3, 1, 0.6, 0],
    [0.12, 0.38, 0.48, 0.38],
  ],
  [
    [0, 0, 0, 1],
    [0, 1, 0.6, 1],
    [0, 0.52, 0.45, 0.52],
  ],
  [
    [0, 1, 0.62, 1],
    [0.31, 0, 0.31, 1],
  ],
]
const ADVANCE = 0.9
const THICK = 0.12
const GREY = 0.78
/** rad; reads from below upward */
const TURN = 0.24

/** In the middle of a room, as large as goes. */
export function draftStamp(room: Room): readonly Mark[] {
  const wide = ADVANCE * (LETTERS.length - 1) + 0.62
  const [cos, sin] = [Math.cos(TURN), Math.sin(TURN)]
  const height = Math.min((room.width * 0.9) / (wide * cos + sin), (room.height * 0.9) / (wide * sin + cos))
  const [mx, my] = [room.x + room.width / 2, room.y + room.height / 2]
  const place = (u: number, v: number): readonly [number, number, number] => {
    const [a, b] = [(u - wide / 2) * height, (v - 0.5) * height]
    return [mx + a * cos - b * sin, my - a * sin - b * cos, 0]
  }
  // a mark a stroke: within one, what lies on two strokes would come out white
  return LETTERS.flatMap((strokes, i) =>
    strokes.map((s) => path([bar(s, i * ADVANCE, place)], { width: null, fill: GREY, group: 'draft' })),
  )
}

/** A stroke as a bar with square ends. */
function bar([x1, y1, x2, y2]: Stroke, from: number, place: (u: number, v: number) => readonly [number, number, number]): Shape {
  const length = Math.hypot(x2 - x1, y2 - y1)
  const [u, v] = [((x2 - x1) / length) * (THICK / 2), ((y2 - y1) / length) * (THICK / 2)]
  const at = (x: number, y: number): readonly [number, number, number] => place(from + x, y)
  return {
    points: [at(x1 - u - v, y1 - v + u), at(x2 + u - v, y2 + v + u), at(x2 + u + v, y2 + v - u), at(x1 - u + v, y1 - v - u)],
    closed: true,
  }
}
