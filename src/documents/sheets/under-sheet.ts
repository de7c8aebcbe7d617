/** The sheet floor and chassis are drawn on: the plan with its hands and view stamp above, columns of words and tables below. */
import type { Design } from '../../derive/design.js'
import type { Mark, Page } from '../drawing/page.js'
import { FINE, letter, line, OUTLINE, rectangle } from '../drawing/page.js'
import { sheetsOf } from '../drawing/paper-sizes.js'
import type { RunningPlace } from '../drawing/running.js'
import { runningMarks } from '../drawing/running.js'
import type { PrintOptions, TitleDraft } from '../drawing/sheet.js'
import { roomAbove, seriesOf, sheetsFrom, unitsOf } from '../drawing/sheet.js'
import { strengthStamp } from '../drawing/strength-stamp.js'
import { directionArrow, scaleBar } from '../drawing/symbols.js'
import type { UnderPlan } from '../drawing/under-plan.js'
import { onPlan, underPlan } from '../drawing/under-plan.js'
import { fixed } from '../drawing/units.js'
import { scaleToFit, scaleWords } from '../drawing/view.js'
import { sideLetter } from '../drawing/words.js'
import type { Stacked } from './jig-card-parts.js'

/** Room on the sheet, mm. */
export interface Box {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

export interface UnderSheet {
  readonly name: string
  readonly says: string
  readonly title: TitleDraft
  readonly from: UnderPlan['from']
  /** how one sees it, the first line large */
  readonly stamp: readonly string[]
  /** whether the strength of what is drawn would have to be computed */
  readonly unproved: boolean
  readonly draw: (plan: UnderPlan) => readonly Mark[]
  /** stations along the foot, m, and buttock lines along the left edge */
  readonly stations: readonly { readonly at: number; readonly text: string; readonly bold?: boolean }[]
  readonly buttocks: readonly number[]
  /** words and tables under the plan, a column each, from the left */
  readonly columns: readonly ((to: Stacked) => void)[]
  /** what is drawn under the columns, in the room they leave beside the strength stamp */
  readonly below?: (room: Box) => readonly Mark[]
}

const PAD = 5
/** Room for the hand letters and figures at the left and little at the right, for the stamp above the plan, its dimensions below, and between columns. mm */
const HANDS = 72
const RIGHT = 16
const ABOVE = 36
const BELOW = 50
const GUTTER = 8
/** Of the width, for what is drawn under the columns: the rest is the stamp's. */
const SHARE = 0.62

/** Stations a plan shows: from the coupler or the floor's forward edge to the farthest of floor and rails. m */
function extentOf({ under, definition }: Design, whole: boolean): readonly [number, number] {
  const xs = [
    ...(under.floor?.outline.map((p) => p[0]) ?? []),
    ...(whole ? (under.chassis?.members.flatMap((m) => m.plan.map((p) => p[0])) ?? []) : []),
    ...(whole && under.chassis ? [definition.ends.couplerFace] : []),
  ]
  return [Math.min(...xs), Math.max(...xs)]
}

export function underSheet(design: Design, options: PrintOptions, sheet: UnderSheet): readonly Page[] {
  const { under, definition } = design
  const units = unitsOf(options)
  const size = sheetsOf(seriesOf(options))[2]
  const room = roomAbove(size, 'slim')
  const [x, y, width] = [room.x + PAD, room.y + PAD, room.width - 2 * PAD]
  const [from, to] = extentOf(design, sheet.unproved)
  const wide = under.floor?.width ?? 2 * Math.max(...(under.chassis?.members.flatMap((m) => m.plan.map((p) => Math.abs(p[1]))) ?? [1]))
  const scale = scaleToFit(to - from, wide, width - HANDS - RIGHT, 130)
  const k = 1000 / scale
  const [top, foot] = [y + ABOVE, y + ABOVE + wide * k]
  const middle = (top + foot) / 2
  const plan = underPlan(sheet.from, scale, from, [x + HANDS + (width - HANDS - RIGHT - (to - from) * k) / 2, middle])
  const { market } = definition.coach
  const [up, down] = sheet.from === 'above' ? (['right', 'left'] as const) : (['left', 'right'] as const)
  const [[a], [b]] = [onPlan(plan, from, 0), onPlan(plan, to, 0)]
  const each = (width - GUTTER * (sheet.columns.length - 1)) / sheet.columns.length
  const columns = sheet.columns.map((fill, i): Stacked => {
    const column: Stacked = { marks: [], x: x + i * (each + GUTTER), width: each, y: foot + BELOW }
    fill(column)
    return column
  })
  const low = Math.max(foot + BELOW, ...columns.map((c) => c.y))
  const marks: Mark[] = [
    letter(x, top + 41, sideLetter(up, market) ?? '', { height: 40, bold: true, group: 'hand' }),
    letter(x, foot, sideLetter(down, market) ?? '', { height: 40, bold: true, group: 'hand' }),
    ...stampMarks(sheet.stamp, x + width / 2 - 115, y, 230),
    ...sheet.draw(plan),
    line(a - 4, middle, b + 4, middle, { width: FINE, type: 'long-dash-dot', group: 'centre' }),
    ...runningMarks({
      edge: 'foot',
      level: foot + 2,
      places: sheet.stations.map((s): RunningPlace => ({ at: plan.view.x(s.at), text: s.text, ...(s.bold ? { bold: true } : {}) })),
      datum: null,
      within: [x, x + width],
    }),
    ...runningMarks({
      edge: 'left',
      level: a - 2,
      places: sheet.buttocks
        .flatMap((w) => [w, -w])
        .map((w): RunningPlace => ({ at: onPlan(plan, 0, w)[1], text: fixed(Math.abs(w) * 1000, 0) })),
      datum: middle,
      within: [top - 8, foot + 8],
    }),
    ...directionArrow(x + 34, y + 8, 180, 'forward'),
    ...directionArrow(x + 66, sheet.from === 'above' ? y + 18 : y + 4, sheet.from === 'above' ? 90 : 270, 'right of travel', 10),
    ...scaleBar(scale, x + width - 130, y + 2, units),
    ...(sheet.unproved ? [strengthStamp(x + width, room.y + room.height - 5)] : []),
    ...columns.flatMap((c) => c.marks),
    ...(sheet.below?.({ x, y: low + 4, width: (width - GUTTER) * SHARE, height: room.y + room.height - PAD - low - 4 }) ?? []),
  ]
  return sheetsFrom([
    { name: sheet.name, says: sheet.says, size, block: 'slim', title: { ...sheet.title, scale: scaleWords(scale) }, marks },
  ])
}

function stampMarks(stamp: readonly string[], x: number, y: number, width: number): readonly Mark[] {
  const tall = 4 + stamp.length * 6.4
  return [
    rectangle(x, y, width, tall, { width: OUTLINE, group: 'stamp' }),
    ...stamp.map((text, i) =>
      letter(x + width / 2, y + 7 + i * 6.4, text, { height: i === 0 ? 5 : 3.5, bold: i === 0, anchor: 'middle', group: 'stamp' }),
    ),
  ]
}
