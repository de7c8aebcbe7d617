/** Border, grid reference, centring and trimming marks of ISO 5457, drawn with the three line widths of this house. */

import type { Mark } from './page.js'
import { FINE, letter, line, lines, OUTLINE, path, rectangle } from './page.js'
import type { PaperSize } from './paper-sizes.js'
import { insideBorder } from './paper-sizes.js'

/** Grid fields are 50 mm, counted from the centring marks (ISO 5457). */
const FIELD = 50
/** I and O are left out (ISO 5457). */
const LETTERS = 'ABCDEFGHJKLMNPQRSTUVWXYZ'

/** Dividing lines between the fields of one edge, and the middle of each field. The outer fields take what is left over. */
function fields(from: number, to: number): { readonly cuts: readonly number[]; readonly middles: readonly number[] } {
  const centre = (from + to) / 2
  const each = Math.max(1, Math.floor((to - from) / 2 / FIELD))
  const cuts: number[] = []
  for (let n = -each + 1; n < each; n++) cuts.push(centre + n * FIELD)
  const ends = [from, ...cuts, to]
  return { cuts, middles: ends.slice(1).map((end, i) => (end + ends[i]) / 2) }
}

/** Everything of the border; A4 and letter carry no grid letters, being read at a glance (ISO 5457 asks for none on A4). */
export function borderMarks(size: PaperSize): readonly Mark[] {
  const { x, y, width, height } = insideBorder(size)
  const group = 'border'
  const [right, foot] = [x + width, y + height]
  const [cx, cy] = [x + width / 2, y + height / 2]
  // the lower centring mark stays outside, where the title block is
  const trim = (px: number, py: number, dx: number, dy: number): Mark =>
    path(
      [
        {
          points: [
            [px, py, 0],
            [px + dx * 5, py, 0],
            [px + dx * 5, py + dy * 1, 0],
            [px + dx, py + dy, 0],
            [px + dx, py + dy * 5, 0],
            [px, py + dy * 5, 0],
          ],
          closed: true,
        },
      ],
      { width: null, fill: 0, group },
    )
  const marks: Mark[] = [
    rectangle(x, y, width, height, { width: OUTLINE, group }),
    lines(
      [
        [cx, y - 5, cx, y + 3],
        [cx, foot, cx, foot + 5],
        [x - 5, cy, x + 3, cy],
        [right - 3, cy, right + 5, cy],
      ],
      { width: OUTLINE, group },
    ),
    trim(0, 0, 1, 1),
    trim(size.widthMm, 0, -1, 1),
    trim(0, size.heightMm, 1, -1),
    trim(size.widthMm, size.heightMm, -1, -1),
  ]
  if (size.heightMm > size.widthMm) return marks
  const across = fields(x, right)
  const down = fields(y, foot)
  marks.push(rectangle(x - 5, y - 5, width + 10, height + 10, { width: FINE, group }))
  for (const cut of across.cuts)
    if (Math.abs(cut - cx) > 1)
      marks.push(line(cut, y - 5, cut, y, { width: FINE, group }), line(cut, foot, cut, foot + 5, { width: FINE, group }))
  for (const cut of down.cuts)
    if (Math.abs(cut - cy) > 1)
      marks.push(line(x - 5, cut, x, cut, { width: FINE, group }), line(right, cut, right + 5, cut, { width: FINE, group }))
  across.middles.forEach((at, i) => {
    for (const level of [y - 2.5, foot + 2.5])
      marks.push(letter(at, level, String(i + 1), { height: 2.5, anchor: 'middle', sits: 'middle', group }))
  })
  down.middles.forEach((at, i) => {
    for (const level of [x - 2.5, right + 2.5])
      marks.push(letter(level, at, LETTERS[i], { height: 2.5, anchor: 'middle', sits: 'middle', group }))
  })
  return marks
}
