/**
 * A plot in black ink: ruled axes, curves told apart by their names at the right edge and by their line types. Curves that
 * leave the frame are cut off at it. Names are spread so that none lies on another.
 */
import { lettered, textWidth } from './lettering.js'
import type { LineType, Mark } from './page.js'
import { FINE, letter, lines, OUTLINE, polyline, rectangle, THIN } from './page.js'
import type { Room } from './paper-sizes.js'
import { spread } from './spread.js'

export interface Axis {
  readonly says: string
  readonly from: number
  readonly to: number
  readonly ticks: readonly number[]
  /** even in the logarithm */
  readonly isLog?: boolean
  readonly words: (value: number) => string
}

export interface Curve {
  readonly name: string
  readonly type: LineType
  readonly isBold?: boolean
  /** in the order of x; a null y breaks the curve */
  readonly points: readonly (readonly [x: number, y: number | null])[]
}

/** A level or place that matters, ruled across or up, with its name. */
export interface Ruled {
  readonly along: 'x' | 'y'
  readonly at: number
  readonly says: string
  /** where the name stands on a line across; left unless told */
  readonly named?: 'left' | 'right'
}

const group = 'plot'
/** Room for figures left of and under the frame, and for the names of curves right of it, mm. */
const [LEFT, UNDER, ABOVE] = [12, 14, 7]

/** `room` holds the frame, its figures and its names. */
export function plot(room: Room, x: Axis, y: Axis, curves: readonly Curve[], ruled: readonly Ruled[] = []): readonly Mark[] {
  const names = curves.map((curve) => lettered(curve.name))
  const right = Math.max(0, ...names.map((name) => textWidth(name, 2.5))) + 8
  const frame: Room = { x: room.x + LEFT, y: room.y + ABOVE, width: room.width - LEFT - right, height: room.height - UNDER - ABOVE }
  const px = scaleOf(x, frame.x, frame.x + frame.width)
  const py = scaleOf(y, frame.y + frame.height, frame.y)
  const foot = frame.y + frame.height
  const marks: Mark[] = [
    lines(
      [
        ...x.ticks.map((at) => [px(at), frame.y, px(at), foot] as const),
        ...y.ticks.map((at) => [frame.x, py(at), frame.x + frame.width, py(at)] as const),
      ],
      { width: FINE, type: 'dotted', group },
    ),
    rectangle(frame.x, frame.y, frame.width, frame.height, { width: THIN, group }),
    ...x.ticks.map((at) => letter(px(at), foot + 2.4, x.words(at), { height: 2.5, anchor: 'middle', sits: 'top', group })),
    ...y.ticks.map((at) => letter(frame.x - 1.5, py(at), y.words(at), { height: 2.5, anchor: 'end', sits: 'middle', group })),
    letter(frame.x + frame.width / 2, foot + 8, lettered(x.says), { height: 2.5, anchor: 'middle', sits: 'top', group }),
    letter(frame.x, frame.y - 2.5, lettered(y.says), { height: 2.5, group }),
    ...ruled.flatMap((each) => ruledMarks(each, frame, px, py)),
  ]
  const ends: { readonly i: number; readonly at: readonly [number, number] }[] = []
  curves.forEach((curve, i) => {
    const runs = cut(
      curve.points.map(([u, v]) => (v === null ? null : ([px(u), py(v)] as const))),
      frame,
    )
    for (const run of runs) marks.push(polyline(run, { width: curve.isBold ? OUTLINE : THIN, type: curve.type, group }))
    const last = runs[runs.length - 1]
    if (last) ends.push({ i, at: last[last.length - 1] })
  })
  return [...marks, ...nameMarks(ends, names, curves, frame)]
}

function scaleOf(axis: Axis, low: number, high: number): (value: number) => number {
  const of = (value: number): number => (axis.isLog ? Math.log(value) : value)
  const [a, b] = [of(axis.from), of(axis.to)]
  return (value) => low + ((high - low) * (of(value) - a)) / (b - a)
}

function ruledMarks(
  { along, at, says, named = 'left' }: Ruled,
  frame: Room,
  px: (v: number) => number,
  py: (v: number) => number,
): readonly Mark[] {
  const word = lettered(says)
  if (along === 'x')
    return [
      lines([[frame.x, py(at), frame.x + frame.width, py(at)]], { width: THIN, type: 'long-dash-dot', group }),
      letter(named === 'left' ? frame.x + 2 : frame.x + frame.width - 2, py(at) - 1, word, {
        height: 1.8,
        anchor: named === 'left' ? 'start' : 'end',
        group,
      }),
    ]
  return [
    lines([[px(at), frame.y, px(at), frame.y + frame.height]], { width: THIN, type: 'long-dash-dot', group }),
    letter(px(at) + 1, frame.y + 1.5, word, { height: 1.8, sits: 'top', group }),
  ]
}

/** Names at the right edge, each led to where its curve ends. */
function nameMarks(
  ends: readonly { readonly i: number; readonly at: readonly [number, number] }[],
  names: readonly string[],
  curves: readonly Curve[],
  frame: Room,
): readonly Mark[] {
  const sorted = [...ends].sort((a, b) => a.at[1] - b.at[1] || a.i - b.i)
  const levels = spread(
    sorted.map(({ at }) => at[1]),
    () => 4,
    frame.y + 1,
    frame.y + frame.height - 1,
  )
  const edge = frame.x + frame.width
  return sorted.flatMap(({ i, at }, n) => [
    lines([[at[0], at[1], edge + 5, levels[n]]], { width: FINE, group }),
    letter(edge + 6, levels[n], names[i], { height: 2.5, sits: 'middle', bold: curves[i].isBold ?? false, group }),
  ])
}

type Point = readonly [number, number]

/** A broken line cut at the top and foot of the frame: the pieces inside. */
function cut(points: readonly (Point | null)[], frame: Room): readonly (readonly Point[])[] {
  const [top, foot] = [frame.y, frame.y + frame.height]
  const inside = (p: Point): boolean => p[1] >= top - 1e-9 && p[1] <= foot + 1e-9
  const runs: Point[][] = []
  let run: Point[] = []
  const close = (): void => {
    if (run.length > 1) runs.push(run)
    run = []
  }
  for (const [k, now] of points.entries()) {
    const before = k > 0 ? points[k - 1] : null
    if (now === null) {
      close()
      continue
    }
    if (before && inside(before) !== inside(now)) {
      const edge = (inside(now) ? before : now)[1] < top ? top : foot
      const t = (edge - before[1]) / (now[1] - before[1])
      run.push([before[0] + t * (now[0] - before[0]), edge])
      if (!inside(now)) close()
    }
    if (inside(now)) run.push(now)
  }
  close()
  return runs
}
