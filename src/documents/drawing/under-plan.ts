/** Floor and chassis in plan, from above or as they lie inverted in the fixture, seen from below. Paper millimetres; aft is to the right. */
import type { Design } from '../../derive/design.js'
import type { Outline } from '../../derive/nouns.js'
import type { Mark, Shape } from './page.js'
import { FINE, letter, lines, OUTLINE, path, THIN } from './page.js'
import type { Scale, View } from './view.js'
import { viewOf } from './view.js'

export interface UnderPlan {
  readonly view: View
  /** from above the right of travel lies up the page, from below down it */
  readonly from: 'above' | 'below'
}

/** Shows the station `at` (m) on the centre plane at the paper point `on`. */
export const underPlan = (from: UnderPlan['from'], scale: Scale, at: number, on: readonly [number, number]): UnderPlan => ({
  from,
  view: viewOf(scale, [at, 0], on),
})

const handed = ({ from }: UnderPlan, outline: Outline): Outline =>
  from === 'above' ? outline : outline.map(([x, y, b]) => [x, -y, -b] as const)

/** A place on paper: station and buttock line, m. */
export const onPlan = (plan: UnderPlan, x: number, y: number): readonly [number, number] => [
  plan.view.x(x),
  plan.view.y(plan.from === 'above' ? y : -y),
]

const shape = (plan: UnderPlan, outline: Outline): Shape => plan.view.shape(handed(plan, outline))

const box = (x: readonly [number, number], y: readonly [number, number]): Outline => [
  [x[0], y[0], 0],
  [x[1], y[0], 0],
  [x[1], y[1], 0],
  [x[0], y[1], 0],
]

/** Edge of the floor, thin and dashed where it lies over or under what is drawn. */
export function floorEdge({ under }: Design, plan: UnderPlan, solid: boolean): readonly Mark[] {
  if (!under.floor) return []
  return [
    path([shape(plan, under.floor.outline)], { width: solid ? OUTLINE : THIN, type: solid ? 'continuous' : 'dashed', group: 'floor' }),
  ]
}

/** Upper flanges of the members: heavy where they are the subject, thin and dashed under a floor. */
export function memberMarks({ under }: Design, plan: UnderPlan, subject: boolean): readonly Mark[] {
  // the A-frame reaches out from under the floor and says nothing about it
  const members = (under.chassis?.members ?? []).filter((m) => subject || m.kind !== 'a-frame')
  if (members.length === 0) return []
  return [
    path(
      members.map((m) => shape(plan, m.plan)),
      { width: subject ? OUTLINE : FINE, type: subject ? 'continuous' : 'dashed', group: 'members' },
    ),
  ]
}

export function wheelBoxMarks({ under }: Design, plan: UnderPlan): readonly Mark[] {
  const boxes = under.gear?.boxes ?? []
  if (boxes.length === 0) return []
  const outlines = boxes.map((b) => box(b.x, b.side === 'right' ? b.y : [-b.y[1], -b.y[0]]))
  return [
    path(
      outlines.map((o) => shape(plan, o)),
      { width: THIN, group: 'wheel-boxes' },
    ),
  ]
}

/** Tubes and spindles as lines of what is fitted later, tyres as their outline from above. */
export function axleMarks({ under, definition }: Design, plan: UnderPlan): readonly Mark[] {
  const { gear } = under
  const wheel = definition.gear?.wheel
  if (!gear || !wheel) return []
  const half = (definition.gear?.tube?.size ?? 0) / 2
  const tubes = gear.tubes.map((t) => box([t.station - half, t.station + half], [-wheel.y + wheel.width / 2, wheel.y - wheel.width / 2]))
  const tyres = gear.tubes.flatMap((t) =>
    ([1, -1] as const).map((hand) => {
      const y = [hand * wheel.y - wheel.width / 2, hand * wheel.y + wheel.width / 2] as const
      return box([t.spindle - wheel.radius, t.spindle + wheel.radius], y)
    }),
  )
  return [
    path(
      [...tubes, ...tyres].map((o) => shape(plan, o)),
      { width: FINE, type: 'long-dash-double-dot', group: 'axles' },
    ),
    ...gear.tubes.map((t) => {
      const [x, y] = onPlan(plan, t.station, 0)
      return letter(x - (half * 1000) / plan.view.scale - 0.8, y - 12, `tube ${t.axle}`, { height: 1.8, turn: 90, group: 'axles' })
    }),
  ]
}

export function bayMarks({ under }: Design, plan: UnderPlan): readonly Mark[] {
  const bays = under.chassis?.bays ?? []
  return bays.flatMap((b) => {
    const [x0, y0] = onPlan(plan, b.x[0], b.y[0])
    const [x1, y1] = onPlan(plan, b.x[1], b.y[1])
    const [cx, cy] = [(x0 + x1) / 2, (y0 + y1) / 2]
    return [
      path([shape(plan, box(b.x, b.y))], { width: FINE, type: 'dashed', group: 'bays' }),
      lines(
        [
          [x0, y0, x1, y1],
          [x0, y1, x1, y0],
        ],
        { width: FINE, type: 'dotted', group: 'bays' },
      ),
      letter(cx, cy - 3, b.id, { height: 2.5, anchor: 'middle', sits: 'middle', bold: true, group: 'bays' }),
    ]
  })
}

/** Openings of the floor with their ids beside them. */
export function openingMarks({ under }: Design, plan: UnderPlan): readonly Mark[] {
  const openings = under.floor?.openings ?? []
  if (openings.length === 0) return []
  return [
    path(
      openings.map((o) => shape(plan, o.outline)),
      { width: THIN, group: 'openings' },
    ),
  ]
}

/** Where two panels meet. */
export function jointMarks({ under }: Design, plan: UnderPlan): readonly Mark[] {
  const floor = under.floor
  if (!floor || floor.joints.length === 0) return []
  const half = floor.width / 2
  return [
    lines(
      floor.joints.map((j) => [...onPlan(plan, j.station, -half), ...onPlan(plan, j.station, half)] as const),
      { width: OUTLINE, type: 'long-dash-dot', group: 'joints' },
    ),
  ]
}
