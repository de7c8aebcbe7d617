/** Rows in the skin along members: hoops, the two staggered rows of each end joint, seams, base and toe. */
import { developed } from '../../maths/development.js'
import { addSpan, type RowDraft, sameRow, startRow } from '../common/row-draft.js'
import { baseGirth } from './channels.js'
import { barrelOf } from './input.js'
import { diameterOf, END_DISTANCE, type FramePlates, type Laid, memberStop, rimReach } from './members.js'
import { gapAtLength, type OpeningShape, signedDistance } from './opening-shape.js'
import type { Plate } from './plates.js'
import { type Lap, lapsOf } from './sheets.js'
import { lessGaps, type Stretch } from './stretches.js'
import type { StringerPlate } from './stringers.js'

export function endInset(laid: Laid, fastener: string): number {
  return END_DISTANCE * diameterOf(laid.input, fastener)
}

/** True where a hole keeps its edge distance from every cut; `near` are all that it may come near. */
export function clearOfCuts(
  { input, skin }: Laid,
  fastener: string,
  near: readonly OpeningShape[],
): (station: number, girth: number) => boolean {
  const least = input.rules.edgeDistance * diameterOf(input, fastener) - 1e-9
  return (station, girth) => {
    let v = Number.NaN
    for (const s of near) {
      if (station <= s.x0 - least || station >= s.x1 + least) continue
      if (Number.isNaN(v)) v = developed(skin, girth)
      if (v > s.v0 - least && v < s.v1 + least && signedDistance(s, station, v) < least) return false
    }
    return true
  }
}

interface Control {
  readonly mark: string
  readonly u: number
  readonly shared: readonly string[]
}

/** Seams between two girths as control points, leaving out any nearer than `room` to an end. */
function seamControls(laps: readonly Lap[], from: number, to: number, room: number): Control[] {
  return laps
    .filter((lap) => lap.girth > from + room && lap.girth < to - room)
    .map((lap) => ({ mark: `${lap.seam}-${lap.side}`, u: lap.girth, shared: [`${lap.seam}-${lap.side}`] }))
    .sort((a, b) => a.u - b.u)
}

function fitBetween(
  row: RowDraft,
  controls: readonly Control[],
  place: (u: number) => readonly [number, number],
  keep: (station: number, girth: number) => boolean,
  staggered = false,
): void {
  for (let i = 0; i + 1 < controls.length; i++) {
    const a = controls[i]
    const b = controls[i + 1]
    const last = i + 2 === controls.length
    addSpan(
      row,
      { from: a.mark, to: b.mark, start: a.u, end: b.u, atStart: true, atEnd: last, staggered, sharedStart: a.shared, sharedEnd: b.shared },
      place,
      keep,
    )
  }
}

export function hoopRows(laid: Laid, frames: readonly FramePlates[]): RowDraft[] {
  const { input } = laid
  const rule = input.rows.hoop
  const inset = endInset(laid, rule.fastener)
  const room = input.rules.minPitch * diameterOf(input, rule.fastener)
  const laps = lapsOf(input)
  const offset = input.shell.frame.skinRow === 'aft' ? input.shell.frame.rowOffset : -input.shell.frame.rowOffset
  return frames
    .filter(({ frame }) => !frame.joint)
    .map((one) => {
      const { frame, stretches } = one
      const station = frame.station + offset
      const near = nearStation(laid, station)
      return keepRow(laid, `hoop-${frame.id}`, [laid.token, one, ...near], () => {
        const clear = clearOfCuts(laid, rule.fastener, near)
        const row = startRow({
          id: `hoop-${frame.id}`,
          says: `skin to hoop frame ${frame.id}`,
          kind: 'hoop',
          joint: `hoop-${frame.id}`,
          fastener: rule.fastener,
          diameter: diameterOf(input, rule.fastener),
          pitch: rule.pitch,
          source: 'rows.hoop of the definition',
        })
        for (const s of stretches) {
          const [from, to] = aboveChannel(laid, s.from + inset, s.to - inset, room)
          const ends: [Control, Control] = [
            { mark: s.fromMark, u: from, shared: [] },
            { mark: s.toMark, u: to, shared: [] },
          ]
          fitBetween(row, [ends[0], ...seamControls(laps, ends[0].u, ends[1].u, room), ends[1]], (g) => [station, g], clear)
        }
        return row
      })
    })
}

/** The last hoop rivets at the feet keep their edge distance from the edge channel's top too, where the stretch leaves them room. */
function aboveChannel(laid: Laid, from: number, to: number, room: number): [number, number] {
  const { input, section } = laid
  const base = baseGirth(input, section)
  if (base === null) return [from, to]
  const foot = base - input.shell.edgeChannel.height / 2 - input.rules.edgeDistance * diameterOf(input, input.rows.hoop.fastener)
  const [a, b] = [Math.max(from, -foot), Math.min(to, foot)]
  return b - a >= room ? [a, b] : [from, to]
}

/** Openings whose outline comes anywhere near a station: what a row there can depend on. */
export function nearStation(laid: Laid, station: number): OpeningShape[] {
  const near = nearReach(laid)
  return laid.shapes.filter((s) => station > s.x0 - near && station < s.x1 + near)
}

/** The same along the coach at a skin length. */
export function nearLength(laid: Laid, v: number): OpeningShape[] {
  const near = nearReach(laid)
  return laid.shapes.filter((s) => v > s.v0 - near && v < s.v1 + near)
}

/** Further than any edge distance or member stop reaches, m. */
function nearReach({ input }: Laid): number {
  return Math.max(rimReach(input), input.shell.post.leg) + input.shell.memberGap + 0.02
}

/** A row as long as what it depends on is the same, or comes out the same. */
export function keepRow(laid: Laid, id: string, inputs: readonly unknown[], make: () => RowDraft): RowDraft {
  return laid.memo.settle(`row ${id}`, inputs, make, sameRow)
}

/** Joint rows: inner and outer, half a pitch apart; both have a fastener where a seam crosses, so no hole falls on a lap's edge. */
export function jointRows(laid: Laid, frames: readonly FramePlates[]): RowDraft[] {
  const { input, section } = laid
  const rule = input.rows.joint
  const inset = endInset(laid, rule.fastener)
  const laps = lapsOf(input)
  const edge = (input.shell.toe.flange > 0 ? section.toe : section.sheetEdge) - inset
  const foot = section.floor - inset
  return frames
    .filter(({ frame }) => frame.joint)
    .flatMap((one) => {
      const { frame } = one
      const inward = frame.joint === 'nose' ? 1 : -1
      return (['inner', 'outer'] as const).map((which) => {
        const station = frame.station + (which === 'inner' ? inward : -inward) * (input.shell.joint.rowSpacing / 2)
        const near = nearStation(laid, station)
        return keepRow(laid, `joint-${frame.id}-${which}`, [laid.token, one, ...near], () => {
          const clear = clearOfCuts(laid, rule.fastener, near)
          const row = startRow({
            id: `joint-${frame.id}-${which}`,
            says: `${frame.joint} joint at ${frame.id}, ${which} row`,
            kind: 'joint',
            joint: `joint-${frame.id}`,
            fastener: rule.fastener,
            diameter: diameterOf(input, rule.fastener),
            pitch: rule.pitch,
            source: 'rows.joint of the definition',
          })
          const room = input.rules.minPitch * row.diameter
          const seams = withCaps(laid, seamControls(laps, -foot, foot, room), foot, room)
          const controls: Control[] = [
            { mark: 'toe-left', u: -edge, shared: [] },
            { mark: 'foot-left', u: -foot, shared: [] },
            ...seams,
            { mark: 'foot-right', u: foot, shared: [] },
            { mark: 'toe-right', u: edge, shared: [] },
          ]
          fitBetween(row, controls, (g) => [station, g], clear, which === 'outer')
          return row
        })
      })
    })
}

/** The crown cap's lap on its gores is a control point of the joint too, unless a seam's fastener stands within its lap. */
function withCaps(laid: Laid, seams: readonly Control[], foot: number, room: number): Control[] {
  const { cap, lap } = laid.input.ends
  const caps = (['left', 'right'] as const)
    .map((side): Control => ({ mark: `cap-${side}`, u: side === 'left' ? -cap : cap, shared: [] }))
    .filter(({ u }) => Math.abs(u) < foot - room && seams.every((s) => Math.abs(s.u - u) > Math.max(room, lap / 2)))
  return [...seams, ...caps].sort((a, b) => a.u - b.u)
}

export function seamRows(laid: Laid, stringers: readonly StringerPlate[]): RowDraft[] {
  const { input } = laid
  const rule = input.rows.seam
  const inset = endInset(laid, rule.fastener)
  return lapsOf(input).map((lap) => {
    const own = stringers.filter((s) => s.seam === lap.seam && s.side === lap.side)
    const near = nearLength(laid, developed(laid.skin, lap.girth))
    return keepRow(laid, `${lap.seam}-${lap.side}`, [laid.token, ...own, ...near], () => {
      const clear = clearOfCuts(laid, rule.fastener, near)
      const row = startRow({
        id: `${lap.seam}-${lap.side}`,
        says: `${lap.seam.replace('-', ' ')} on the ${lap.side}`,
        kind: 'seam',
        joint: `joint-${lap.seam}-${lap.side}`,
        fastener: rule.fastener,
        diameter: diameterOf(input, rule.fastener),
        pitch: rule.pitch,
        source: 'rows.seam of the definition',
      })
      for (const s of own) {
        addSpan(
          row,
          { from: s.fromMark, to: s.toMark, start: s.plate.x0 + inset, end: s.plate.x1 - inset, atStart: true, atEnd: true },
          (x) => [x, lap.girth],
          clear,
        )
      }
      return row
    })
  })
}

/** Rows along the station at one girth, a fastener at every frame, broken where an opening's rim stands. */
function alongFrames(laid: Laid, row: RowDraft, girth: number, from: number, to: number): RowDraft {
  const near = nearLength(laid, developed(laid.skin, girth))
  return keepRow(laid, row.id, [laid.token, from, to, ...near], () => layAlong(laid, row, girth, { from, to }, near))
}

function layAlong(
  laid: Laid,
  row: RowDraft,
  girth: number,
  { from, to }: { readonly from: number; readonly to: number },
  near: readonly OpeningShape[],
): RowDraft {
  const { input, skin } = laid
  const inset = endInset(laid, row.fastener)
  const v = developed(skin, girth)
  const clear = clearOfCuts(laid, row.fastener, near)
  const gaps = near
    .flatMap((s) => {
      const free = gapAtLength(s, v, memberStop(input, s))
      return free ? [{ from: free[0], to: free[1], id: s.id }] : []
    })
    .sort((a, b) => a.from - b.from)
  const whole: Stretch = { from, to, fromMark: input.frames[0].id, toMark: input.frames[input.frames.length - 1].id }
  const room = input.rules.minPitch * row.diameter
  for (const s of lessGaps(whole, gaps, 2 * inset + room)) {
    const from = s.from + inset
    const to = s.to - inset
    const inner = input.frames.filter((f) => f.station > from + room && f.station < to - room)
    const controls = [
      { mark: s.fromMark, u: from, shared: [] },
      ...inner.map((f) => ({ mark: f.id, u: f.station, shared: [] })),
      { mark: s.toMark, u: to, shared: [] },
    ]
    fitBetween(row, controls, (x) => [x, girth], clear)
  }
  return row
}

export function baseRows(laid: Laid, channels: readonly Plate[]): RowDraft[] {
  const { input, section } = laid
  const base = baseGirth(input, section)
  if (base === null) return []
  const rule = input.rows.base
  return (['left', 'right'] as const).map((side, i) =>
    alongFrames(
      laid,
      startRow({
        id: `base-${side}`,
        says: `skin to floor edge channel, ${side} side`,
        kind: 'base',
        joint: `joint-base-${side}`,
        fastener: rule.fastener,
        diameter: diameterOf(input, rule.fastener),
        pitch: rule.pitch,
        source: 'rows.base of the definition',
      }),
      side === 'right' ? base : -base,
      channels[i].x0,
      channels[i].x1,
    ),
  )
}

export function toeRows(laid: Laid): RowDraft[] {
  const { input, section } = laid
  if (input.shell.toe.flange === 0) return []
  const rule = input.rows.toe
  const { first, last } = barrelOf(input)
  const inset = endInset(laid, rule.fastener)
  return (['left', 'right'] as const).map((side) =>
    alongFrames(
      laid,
      startRow({
        id: `toe-${side}`,
        says: `toe flange to underbelly, ${side} side`,
        kind: 'toe',
        joint: `joint-toe-${side}`,
        fastener: rule.fastener,
        diameter: diameterOf(input, rule.fastener),
        pitch: rule.pitch,
        source: 'rows.toe of the definition',
      }),
      side === 'right' ? section.toeRow : -section.toeRow,
      first - inset,
      last + inset,
    ),
  )
}
