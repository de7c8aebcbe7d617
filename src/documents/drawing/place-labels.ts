/** Finds free paper near a point for a few lines of lettering, and draws the leader to it (ISO 128-2 leader lines, ISO 129-1). */
import { textWidth } from './lettering.js'
import type { LetterHeight, Mark } from './page.js'
import { circles, FINE, letter, polyline, rectangle } from './page.js'

export interface Wanted {
  readonly lines: readonly string[]
  /** the point the leader ends on */
  readonly at: readonly [number, number]
  readonly height?: LetterHeight
}

type Rect = readonly [x0: number, y0: number, x1: number, y1: number]
const meet = (a: Rect, b: Rect): boolean => a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3]

/** What labels must keep off: points (holes) and rectangles (lettering, cut edges). */
export interface Taken {
  readonly points: readonly (readonly [number, number])[]
  readonly boxes: readonly Rect[]
}

/**
 * Places each label in turn at the free spot nearest its point, inside `inside`. Where no spot is free within the search it stands where it
 * hides least; textsOverHoles and overlappingTexts (overlaps.ts) tell such a sheet.
 */
export function placeLabels(wanted: readonly Wanted[], taken: Taken, inside: Rect): readonly Mark[] {
  const boxes: Rect[] = [...taken.boxes]
  const marks: Mark[] = []
  for (const { lines, at, height = 2.5 } of wanted) {
    const width = Math.max(...lines.map((text) => textWidth(text, height))) + 1.5
    const tall = lines.length * height * 1.7 + 0.8
    let best: Rect = [at[0] - width / 2, at[1] - tall / 2, at[0] + width / 2, at[1] + tall / 2]
    let least = Infinity
    for (let ring = 1; ring <= 14; ring++) {
      for (let n = 0; n < 16; n++) {
        const a = (Math.PI * 2 * n) / 16 - Math.PI / 4
        const reach = 4 + ring * 4
        const cx = at[0] + Math.cos(a) * (reach + width / 2)
        const cy = at[1] + Math.sin(a) * (reach + tall / 2)
        const rect: Rect = [cx - width / 2, cy - tall / 2, cx + width / 2, cy + tall / 2]
        if (rect[0] < inside[0] || rect[1] < inside[1] || rect[2] > inside[2] || rect[3] > inside[3]) continue
        const hits =
          20 * boxes.filter((box) => meet(box, rect)).length +
          taken.points.filter(([x, y]) => x > rect[0] - 0.5 && x < rect[2] + 0.5 && y > rect[1] - 0.5 && y < rect[3] + 0.5).length
        const cost = hits * 1000 + Math.hypot(cx - at[0], cy - at[1])
        if (cost < least) {
          least = cost
          best = rect
        }
      }
      if (least < 1000) break
    }
    boxes.push(best)
    marks.push(...labelMarks(lines, best, at, height))
  }
  return marks
}

function labelMarks(
  lines: readonly string[],
  [x0, y0, x1, y1]: Rect,
  at: readonly [number, number],
  height: LetterHeight,
): readonly Mark[] {
  const group = 'label'
  const foot = y1 - 0.4
  const left = at[0] > (x0 + x1) / 2
  return [
    rectangle(x0, y0, x1 - x0, foot - y0, { width: null, fill: 1, group }),
    polyline(
      [
        [left ? x0 : x1, foot],
        [left ? x1 : x0, foot],
        [at[0], at[1]],
      ],
      { width: FINE, group },
    ),
    circles([at[0], at[1], 0.8], { width: FINE, fill: 0, group }),
    ...lines.map((text, i) => letter(x0 + 0.7, y0 + (i + 1) * height * 1.7 - height * 0.45, text, { height, group })),
  ]
}
