/** A pattern's own ink at a scale: contours, windows, the edge that goes, marks, holes, origin. No words. */
import type { MarkLine, Pattern } from '../../derive/nouns.js'
import type { NetOutline } from '../drawing/net-outline.js'
import { netOutline } from '../drawing/net-outline.js'
import type { LineType, LineWidth, Mark } from '../drawing/page.js'
import { circles, FINE, lines, OUTLINE, path, THIN } from '../drawing/page.js'
import { originMark } from '../drawing/symbols.js'
import type { View } from '../drawing/view.js'

/** Line type and width of each kind of mark: bend and lap by ISO 128-2, centre lines long dash dot. */
export const MARK_LINES: Readonly<Record<MarkLine['kind'], { readonly type: LineType; readonly width: LineWidth; readonly word: string }>> =
  {
    roll: { type: 'long-dash-double-dot', width: FINE, word: 'roll' },
    bend: { type: 'continuous', width: THIN, word: 'bend' },
    centre: { type: 'long-dash-dot', width: FINE, word: 'centre' },
    lap: { type: 'dashed', width: FINE, word: 'lap' },
  }

/** A hole smaller than this on paper is a dot of the second size, mm: a ring would fill up. Its place stays true. */
const LEAST_RING = 0.8
const DOT = 0.45

export interface PatternInk {
  readonly net: NetOutline
  readonly marks: readonly Mark[]
  /** hole places on paper */
  readonly holes: readonly (readonly [number, number])[]
}

export function patternInk(pattern: Pattern, view: View, fullSize = false): PatternInk {
  const net = netOutline(pattern)
  const { holes } = pattern
  const rings: number[] = []
  const dots: number[] = []
  const points = holes.x.map((x, i) => {
    const at = [view.x(x), view.y(holes.y[i])] as const
    const across = view.length(holes.diameter[i])
    if (across < LEAST_RING) dots.push(at[0], at[1], DOT)
    else rings.push(at[0], at[1], across)
    return at
  })
  const marks: Mark[] = []
  for (const kind of ['roll', 'bend', 'centre', 'lap'] as const) {
    const of = pattern.marks.filter((mark) => mark.kind === kind)
    if (of.length === 0) continue
    const { type, width } = MARK_LINES[kind]
    marks.push(
      lines(
        of.map((m) => [view.x(m.from[0]), view.y(m.from[1]), view.x(m.to[0]), view.y(m.to[1])] as const),
        { type, width, group: `marks-${kind}` },
      ),
    )
  }
  if (net.removed.length > 0) {
    marks.push(
      lines(
        net.removed.map(([a, b, c, d]) => [view.x(a), view.y(b), view.x(c), view.y(d)] as const),
        { width: FINE, type: 'dashed', group: 'removed' },
      ),
    )
  }
  marks.push(
    path(
      net.contours.map((outline) => view.shape(outline)),
      { width: OUTLINE, group: 'outline' },
    ),
  )
  if (net.windows.length > 0)
    marks.push(
      path(
        net.windows.map((cut) => view.shape(cut.outline)),
        { width: OUTLINE, group: 'cuts' },
      ),
    )
  if (rings.length > 0) marks.push(circles(rings, { width: FINE, group: 'holes' }))
  if (dots.length > 0) marks.push(circles(dots, { fill: 0, group: 'holes' }))
  if (fullSize) {
    // punch centres: a cross in each hole to set a pop mark by
    marks.push(
      lines(
        points.flatMap(
          ([x, y]) =>
            [
              [x - 1.2, y, x + 1.2, y],
              [x, y - 1.2, x, y + 1.2],
            ] as const,
        ),
        { width: FINE, group: 'hole-centres' },
      ),
    )
  }
  marks.push(...originMark(view.x(0), view.y(0)))
  return { net, marks, holes: points }
}
