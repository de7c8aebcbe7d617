/** Where the bolts that hold the body down and the screws of the floor would stand: lines of spots, each fitted to whole spaces. */
import type { FixingDefinition } from '../../definition/under-types.js'
import { fittedPitch } from '../common/spacing.formulas.js'
import type { FastenerRow, Outline } from '../nouns.js'
import type { Member } from '../under-nouns.js'
import type { FloorInput } from './input.js'
import { endPlan } from './panel.js'

/** In diameters: a bolt from its outrigger's tip, a screw from a bolt or from the end of its line. Common practice, no source. */
const FROM_TIP = 4
const FROM_BOLT = 4
const FROM_END = 6
/** From a bolt to the web beside it, for a socket. From memory. */
const SOCKET = 1.5
export interface Spot {
  readonly x: number
  readonly y: number
  /** under the floor; null where the screw holds in the board or the channel alone */
  readonly member: Member | null
}

export interface Line {
  readonly from: string
  readonly to: string
  readonly pitch: number
  readonly spots: readonly Spot[]
}

/** A row as it is laid out, before openings, boxes and joints take fixings from it. */
export interface RowPlan {
  readonly id: string
  readonly says: string
  readonly lines: readonly Line[]
}

const spread = (member: Member): { x0: number; x1: number; y0: number; y1: number } => {
  const [xs, ys] = [member.plan.map((p) => p[0]), member.plan.map((p) => p[1])]
  return { x0: Math.min(...xs), x1: Math.max(...xs), y0: Math.min(...ys), y1: Math.max(...ys) }
}

/** Along each rail at half pitches from its ends, one in the middle of each cross-member, one at the tip of each outrigger. */
export function boltRows({ members, sheet }: FloorInput, bolts: FixingDefinition): RowPlan[] {
  const webs = members
    .filter((m) => m.kind === 'cross-member')
    .map((m): readonly [number, number] => [spread(m).x0, spread(m).x0 + sheet(m)])
  const rails = members
    .filter((m) => m.kind === 'rail')
    .map((member): RowPlan => {
      const { x0, x1, y0, y1 } = spread(member)
      const n = Math.max(1, Math.round((x1 - x0) / fittedPitch.eval({ L: x1 - x0, p_n: bolts.pitch })))
      const pitch = (x1 - x0) / n
      const spots = Array.from({ length: n }, (_, i) => ({
        x: besideWebs(webs, x0 + (i + 0.5) * pitch, SOCKET * bolts.diameter.value),
        y: (y0 + y1) / 2,
        member,
      }))
      return {
        id: `bolts-${member.part}`,
        says: `hold-down bolts along the ${member.says}`,
        lines: [{ from: 'fore', to: 'aft', pitch, spots }],
      }
    })
  const single = (kind: 'cross-member' | 'outrigger', at: (s: ReturnType<typeof spread>) => number) =>
    members
      .filter((m) => m.kind === kind)
      .map((member): Line => {
        const s = spread(member)
        const name = member.part.replace(`${kind}-`, '')
        return { from: name, to: name, pitch: bolts.pitch, spots: [{ x: (s.x0 + s.x1) / 2, y: at(s), member }] }
      })
  const room = FROM_TIP * bolts.diameter.value
  const tip = (s: ReturnType<typeof spread>): number => (s.y0 + s.y1 > 0 ? s.y1 - room : s.y0 + room)
  return [
    ...rails,
    {
      id: 'bolts-cross-members',
      says: 'hold-down bolts in the middle of the cross-members',
      lines: single('cross-member', () => 0),
    },
    { id: 'bolts-outriggers', says: 'hold-down bolts at the tips of the outriggers', lines: single('outrigger', tip) },
  ]
}

/** A bolt that a cross-member's web would keep a socket from is moved along the rail just clear of it. */
function besideWebs(webs: readonly (readonly [number, number])[], x: number, need: number): number {
  for (const [fore, aft] of webs) {
    const [low, high] = [fore - need, aft + need]
    if (x > low && x < high) return x - low < high - x ? low : high
  }
  return x
}

/** Whole spaces between two ends, the ends included. */
function even(length: number, pitch: number): readonly number[] {
  const n = Math.max(1, Math.round(length / fittedPitch.eval({ L: length, p_n: pitch })))
  return Array.from({ length: n + 1 }, (_, i) => (length * i) / n)
}

/** Into the members and along the edge channel, clear of the bolts that are there; those of the wheel boxes go with the boxes. */
export function screwRows(
  input: FloorInput,
  screws: FixingDefinition & { readonly edge: number },
  bolts: readonly FastenerRow[],
): RowPlan[] {
  const heads = bolts.flatMap((row) => row.station.map((x, i) => ({ x, y: row.buttock?.[i] ?? 0, room: FROM_BOLT * row.diameter })))
  const away = ({ x, y }: Spot): boolean => heads.every((h) => (h.x - x) ** 2 + (h.y - y) ** 2 > h.room ** 2)
  const short = FROM_END * screws.diameter.value
  const rail = input.members.find((m) => m.kind === 'rail')
  const inner = rail ? Math.min(...rail.plan.map((p) => Math.abs(p[1]))) - short : 0
  const across = (member: Member, name: string, from: number, to: number): Line => {
    const { x0, x1 } = spread(member)
    const steps = even(to - from, screws.pitch)
    return {
      from: name,
      to: name,
      pitch: steps[1],
      spots: steps.map((u) => ({ x: (x0 + x1) / 2, y: from + u, member })).filter(away),
    }
  }
  const members = input.members.flatMap((m): Line[] => {
    const s = spread(m)
    if (m.kind === 'cross-member') {
      const half = Math.min(inner, s.y1 - short)
      return [across(m, m.part.replace('cross-member-', 'X'), -half, half)]
    }
    if (m.kind === 'outrigger') return [across(m, m.part.replace('outrigger-', ''), s.y0 + short, s.y1 - short)]
    return []
  })
  const edge = edgeLines(input, screws).map((l) => ({ ...l, spots: l.spots.filter(away) }))
  return [
    { id: 'screws-members', says: 'screws into cross-members and outriggers', lines: members },
    { id: 'screws-edge', says: 'screws along the edge channel', lines: edge },
  ]
}

/** Along the three sides of each box, in the middle of its flange on the floor. */
export const boxScrewRow = (input: FloorInput, screws: FixingDefinition): RowPlan => ({
  id: 'screws-wheel-boxes',
  says: 'screws in the flanges of the wheel boxes',
  lines: boxLines(input, screws),
})

/** Round the panel inside its edge: both sides of the barrel and both ends, from corner to corner. */
function edgeLines(input: FloorInput, screws: FixingDefinition & { readonly edge: number }): Line[] {
  const { floor, frames } = input
  const [first, last] = [frames[0], frames[frames.length - 1]]
  const y = floor.halfWidth - screws.edge
  const side = (hand: 1 | -1): Line => {
    const steps = even(last.station - first.station, screws.pitch)
    return {
      from: `${first.id}-${hand === 1 ? 'right' : 'left'}`,
      to: `${last.id}-${hand === 1 ? 'right' : 'left'}`,
      pitch: steps[1],
      // the corners belong to the ends
      spots: steps.slice(1, -1).map((u) => ({ x: first.station + u, y: hand * y, member: null })),
    }
  }
  const round = walk(endPlan(input, screws.edge), screws.pitch)
  const tail: Line = {
    from: `${last.id}-left`,
    to: `${last.id}-right`,
    pitch: round.pitch,
    spots: round.points.map(([a, b]) => ({ x: last.station + a, y: b, member: null })),
  }
  const nose: Line = {
    from: `${first.id}-right`,
    to: `${first.id}-left`,
    pitch: round.pitch,
    spots: round.points.map(([a, b]) => ({ x: first.station - a, y: -b, member: null })),
  }
  return [side(1), tail, side(-1), nose]
}

/** Points at equal lengths along a curve of arcs, its ends included; chords of its arcs stand in for them, to a hundredth of a mm. */
function walk(curve: Outline, pitch: number): { readonly points: readonly (readonly [number, number])[]; readonly pitch: number } {
  const fine: [number, number][] = []
  for (let i = 0; i + 1 < curve.length; i++) {
    const [p, q] = [curve[i], curve[i + 1]]
    for (let k = 0; k < 16; k++) {
      const t = k / 16
      // on a flat arc the chord's own fraction, raised by the bulge's parabola
      const rise = 4 * t * (1 - t) * (p[2] / 2)
      fine.push([p[0] + (q[0] - p[0]) * t + rise * (q[1] - p[1]), p[1] + (q[1] - p[1]) * t - rise * (q[0] - p[0])])
    }
  }
  fine.push([curve[curve.length - 1][0], curve[curve.length - 1][1]])
  const run = [0]
  for (let i = 1; i < fine.length; i++) run.push(run[i - 1] + Math.hypot(fine[i][0] - fine[i - 1][0], fine[i][1] - fine[i - 1][1]))
  const steps = even(run[run.length - 1], pitch)
  let at = 0
  const points = steps.map((u): readonly [number, number] => {
    while (at + 2 < run.length && run[at + 1] < u) at++
    const t = Math.min(1, (u - run[at]) / (run[at + 1] - run[at]))
    return [fine[at][0] + t * (fine[at + 1][0] - fine[at][0]), fine[at][1] + t * (fine[at + 1][1] - fine[at][1])]
  })
  return { points, pitch: steps[1] }
}

function boxLines({ boxes, box }: FloorInput, screws: FixingDefinition): Line[] {
  if (!box) return []
  const off = box.flange / 2
  return boxes.flatMap((b): Line[] => {
    const hand = b.side === 'right' ? 1 : -1
    const along = even(b.x[1] - b.x[0] + 2 * off, screws.pitch)
    const deep = even(b.y[1] - b.y[0] - off, screws.pitch)
    return [
      {
        from: `${b.id}-fore`,
        to: `${b.id}-aft`,
        pitch: along[1],
        spots: along.map((u) => ({ x: b.x[0] - off + u, y: hand * (b.y[0] - off), member: null })),
      },
      ...([b.x[0] - off, b.x[1] + off] as const).map((x, i) => ({
        from: `${b.id}-${i === 0 ? 'fore' : 'aft'}`,
        to: `${b.id}-${i === 0 ? 'fore' : 'aft'}-edge`,
        pitch: deep[1],
        spots: deep.slice(1, -1).map((u) => ({ x, y: hand * (b.y[0] - off + u), member: null })),
      })),
    ]
  })
}
