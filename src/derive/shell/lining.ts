/**
 * The lining: panels on the frames' inner flanges, developed on their own mid surface. Lengthwise joints lap, the upper
 * panel against the frame; panels butt end to end on a frame's web, each with its own row on its side of it.
 */

import type { FrameDefinition } from '../../definition/types.js'
import { type Development, developAt, developed, undeveloped } from '../../maths/development.js'
import { girthAtZ } from '../../maths/tangent-chain.js'
import { liningDepth } from '../common/lining-depth.js'
import { addSpan, type RowDraft, startRow } from '../common/row-draft.js'
import { diameterOf, type FramePlates, innerFlange, type Laid, unrolledAt } from './members.js'
import { chordAtLength, signedDistance } from './opening-shape.js'
import { lieOf, type Plate } from './plates.js'
import { clearOfCuts, endInset, keepRow, nearLength, nearStation } from './rows-skin.js'
import { lapped, ORDER } from './sheets.js'
import { lessGaps } from './stretches.js'

export interface LiningLaid {
  readonly plates: readonly Plate[]
  readonly rows: readonly RowDraft[]
}

interface LiningLap {
  readonly id: string
  readonly side: 'left' | 'right'
  readonly girth: number
}

/** Unsigned girth where the lining ends above the floor, m. */
function lowerEdge(laid: Laid): number {
  return girthAtZ(laid.section.chain, laid.input.lining.floorGap) ?? laid.section.floor
}

/** Girth range of half a lap's width either side of a girth: laps are measured on the lining, not on the mould line. */
function lapReach(development: Development, girth: number, half: number): [number, number] {
  const at = developed(development, girth)
  return [undeveloped(development, at - half), undeveloped(development, at + half)]
}

export function liningOf(laid: Laid, frames: readonly FramePlates[]): LiningLaid {
  const { input } = laid
  const l = input.lining
  const t = l.thickness.value
  const depth = liningDepth(input) + t / 2
  const base = unrolledAt(laid, depth)
  const laps: LiningLap[] = l.seams.flatMap((s) =>
    (['left', 'right'] as const).map((side) => ({ id: s.id, side, girth: side === 'right' ? s.girth : -s.girth })),
  )
  return { plates: panels(laid, base, depth), rows: [...frameRows(laid, frames, base, laps), ...seamRows(laid, laps)] }
}

function panels(laid: Laid, base: Development, depth: number): Plate[] {
  const { input, section, shapes, skin } = laid
  const l = input.lining
  const t = l.thickness.value
  const half = l.lap / 2
  const bottom = lowerEdge(laid)
  const edges = [0, ...l.seams.map((s) => s.girth), bottom]
  const marks = [input.frames[0], ...input.frames.filter((f) => l.joints.includes(f.id)), input.frames[input.frames.length - 1]]
  const plates: Plate[] = []
  for (let i = 0; i + 1 < edges.length; i++) {
    const upper = i === 0 ? null : lapReach(base, edges[i], half)
    const low = i + 2 === edges.length ? bottom : lapReach(base, edges[i + 1], half)[1]
    const top = upper ? upper[0] : -low
    // the lower panel laps over the upper one on the inside, one thickness further in
    const zones = upper
      ? [
          { from: upper[0], to: upper[1], depth: depth + t },
          { from: -upper[1], to: -upper[0], depth: depth + t },
        ]
      : []
    const development = zones.length > 0 ? developAt(section.straight, depth, zones) : base
    for (const side of i === 0 ? (['centre'] as const) : (['left', 'right'] as const)) {
      const [g0, g1] = side === 'left' ? [-low, -top] : [top, low]
      for (let k = 0; k + 1 < marks.length; k++) {
        const [a, b] = [marks[k], marks[k + 1]]
        const name = `${i === 0 ? 'crown' : l.seams[i - 1].id.replace('lining-', 'band-')}${side === 'centre' ? '' : `-${side}`}`
        const cuts = shapes.filter(
          (s) => s.x1 > panelEdge(laid, a) && s.x0 < panelEdge(laid, b) && s.v1 > developed(skin, g0) && s.v0 < developed(skin, g1),
        )
        const plate: Plate = {
          part: `lining-${name}-${a.id}-${b.id}`,
          face: 'sheet',
          kind: 'lining',
          says: `lining ${name.replace(/-/g, ' ')}, ${a.id} to ${b.id}`,
          material: l.alloy,
          thickness: t,
          x0: panelEdge(laid, a),
          x1: panelEdge(laid, b),
          g0,
          g1,
          order: lapped(ORDER.lining, i, edges.length - 1),
          development,
          lie: lieOf(g0, g1),
          cuts,
          ring: null,
          marks: [],
        }
        if (!cutAway(plate, skin)) plates.push(laid.memo.keep(plate.part, [laid.token, ...cuts], () => plate))
      }
    }
  }
  return plates
}

/** Whether one opening takes away the whole of a panel: it is then no part. */
function cutAway({ cuts, x0, x1, g0, g1 }: Plate, skin: Development): boolean {
  return cuts.some((cut) => [x0, x1].every((x) => [g0, g1].every((g) => signedDistance(cut, x, developed(skin, g)) < 1e-9)))
}

/** Panels butt on a hoop's web and end at a joint frame's barrel-side lip. */
function panelEdge(laid: Laid, frame: FrameDefinition): number {
  if (!frame.joint) return frame.station
  const [from, to] = innerFlange(laid.input, frame)
  return frame.joint === 'nose' ? from : to
}

/** Stations of the lining rows on a frame: one, or one each side where panels butt. */
function rowStations(laid: Laid, frame: FrameDefinition): { station: number; tag: string }[] {
  const { input } = laid
  const offset = input.shell.frame.rowOffset
  if (frame.joint) {
    const [from, to] = innerFlange(input, frame)
    return [{ station: (from + to) / 2, tag: '' }]
  }
  if (input.lining.joints.includes(frame.id)) {
    return [
      { station: frame.station - offset, tag: '-fore' },
      { station: frame.station + offset, tag: '-aft' },
    ]
  }
  return [{ station: frame.station + (input.shell.frame.skinRow === 'aft' ? -offset : offset), tag: '' }]
}

function frameRows(laid: Laid, frames: readonly FramePlates[], base: Development, laps: readonly LiningLap[]): RowDraft[] {
  const { input } = laid
  const rule = input.rows.lining
  const inset = endInset(laid, rule.fastener)
  const diameter = diameterOf(input, rule.fastener)
  const bottom = lowerEdge(laid)
  return frames.flatMap((one) =>
    rowStations(laid, one.frame).map(({ station, tag }) => {
      const near = nearStation(laid, station)
      return keepRow(laid, `lining-${one.frame.id}${tag}`, [laid.token, one, ...near], () => {
        const { frame, stretches } = one
        const clear = clearOfCuts(laid, rule.fastener, near)
        const row = startRow({
          id: `lining-${frame.id}${tag}`,
          says: `lining to frame ${frame.id}${tag === '' ? '' : `, ${tag.slice(1)} row`}`,
          kind: 'lining',
          joint: `joint-lining-${frame.id}`,
          fastener: rule.fastener,
          diameter,
          pitch: rule.pitch,
          source: 'rows.lining of the definition',
        })
        const place = (u: number): [number, number] => [station, undeveloped(base, u)]
        for (const s of stretches) {
          const from = developed(base, Math.max(s.from, -bottom)) + inset
          const to = developed(base, Math.min(s.to, bottom)) - inset
          if (to - from < diameter * input.rules.minPitch) continue
          const room = input.rules.minPitch * diameter
          const nodes = laps
            .map((lap) => ({ mark: `${lap.id}-${lap.side}`, u: developed(base, lap.girth) }))
            .filter((n) => n.u > from + room && n.u < to - room)
            .sort((a, b) => a.u - b.u)
          const controls = [{ mark: s.fromMark, u: from }, ...nodes, { mark: s.toMark, u: to }]
          for (let i = 0; i + 1 < controls.length; i++) {
            const [a, b] = [controls[i], controls[i + 1]]
            addSpan(
              row,
              {
                from: a.mark,
                to: b.mark,
                start: a.u,
                end: b.u,
                atStart: true,
                atEnd: i + 2 === controls.length,
                sharedStart: i > 0 ? [a.mark] : [],
                sharedEnd: i + 2 < controls.length ? [b.mark] : [],
              },
              place,
              clear,
            )
          }
        }
        return row
      })
    }),
  )
}

/** Lengthwise laps between frames: panel to panel; the fasteners on the frames belong to the frames' own rows. */
function seamRows(laid: Laid, laps: readonly LiningLap[]): RowDraft[] {
  const { input, skin } = laid
  const rule = input.rows.lining
  const inset = endInset(laid, rule.fastener)
  const diameter = diameterOf(input, rule.fastener)
  const room = input.rules.minPitch * diameter
  return laps.map((lap) => {
    const v = developed(skin, lap.girth)
    const near = nearLength(laid, v)
    return keepRow(laid, `${lap.id}-${lap.side}`, [laid.token, ...near], () => {
      const clear = clearOfCuts(laid, rule.fastener, near)
      const row = startRow({
        id: `${lap.id}-${lap.side}`,
        says: `lining lap ${lap.id.replace('lining-', '')} on the ${lap.side}`,
        kind: 'lining',
        joint: `joint-${lap.id}-${lap.side}`,
        fastener: rule.fastener,
        diameter,
        pitch: rule.pitch,
        source: 'rows.lining of the definition',
      })
      const gaps = near
        .flatMap((s) => {
          const chord = chordAtLength(s, v)
          return chord ? [{ from: chord[0] - inset, to: chord[1] + inset, id: s.id }] : []
        })
        .sort((a, b) => a.from - b.from)
      for (let i = 0; i + 1 < input.frames.length; i++) {
        const [a, b] = [input.frames[i], input.frames[i + 1]]
        const from = Math.max(...rowStations(laid, a).map((r) => r.station))
        const to = Math.min(...rowStations(laid, b).map((r) => r.station))
        for (const s of lessGaps({ from, to, fromMark: a.id, toMark: b.id }, gaps, 3 * diameter)) {
          addSpan(
            row,
            // the frames' own rows hold the lap's ends, and an opening's edge that comes near one needs no second fastener
            { from: s.fromMark, to: s.toMark, start: s.from, end: s.to, atStart: s.from - from >= room, atEnd: to - s.to >= room },
            (x) => [x, lap.girth],
            clear,
          )
        }
      }
      return row
    })
  })
}
