/** Bolts that hold the body down on the chassis, and the screws of the floor: lines of fasteners, each fitted to whole spaces. */
import type { FixingDefinition } from '../../definition/under-types.js'
import { fittedPitch } from '../common/spacing.formulas.js'
import type { FastenerRow, Outline, Span } from '../nouns.js'
import type { Member } from '../under-nouns.js'
import { boltLength } from './floor.formulas.js'
import type { FloorInput } from './input.js'
import { endPlan, type PanelJoint } from './panel.js'

/** In diameters: a bolt from its outrigger's tip, a screw from a bolt or from the end of its line. Common practice, no source. */
const FROM_TIP = 4
const FROM_BOLT = 4
const FROM_END = 6
/** From a bolt to the web beside it, for a socket. From memory. */
const SOCKET = 1.5
/** Self-drilling screw: through the board, the steel, and its own point. From memory. m */
const POINT = 0.012
const STEP = 0.005

interface Spot {
  readonly x: number
  readonly y: number
  /** under the floor; null where the screw holds in the board or the channel alone */
  readonly member: Member | null
}

interface Line {
  readonly from: string
  readonly to: string
  readonly pitch: number
  readonly spots: readonly Spot[]
}

interface Fitting {
  readonly input: FloorInput
  readonly joints: readonly PanelJoint[]
  readonly panelAt: (station: number) => string
}

function rowOf(
  fitting: Fitting,
  kind: 'bolt' | 'screw',
  id: string,
  says: string,
  fixing: FixingDefinition,
  lines: readonly Line[],
): FastenerRow | null {
  const { input } = fitting
  const spans: Span[] = []
  const [span, number, station, buttock, stack]: [number[], number[], number[], number[], number[]] = [[], [], [], [], []]
  const layers = layersUnder(fitting)
  for (const [k, { from, to, pitch, spots }] of lines.entries()) {
    const first = station.length
    for (const [n, spot] of spots.entries()) {
      if (!isClear(fitting, spot, fixing.hole / 2)) continue
      span.push(k)
      number.push(n)
      station.push(spot.x)
      buttock.push(spot.y)
      stack.push(layers.at(spot))
    }
    const count = station.length - first
    spans.push({ from, to, first, count, spaces: Math.max(1, count), pitch })
  }
  if (station.length === 0) return null
  const counts = new Array<number>(layers.met.length).fill(0)
  for (const at of stack) counts[at]++
  const d = fixing.diameter.value
  const stacks = layers.met.map(({ panel, member }, at) => {
    const thickness = [input.floor.thickness, ...(member ? [input.sheet(member)] : [])]
    const grip = thickness.reduce((a, b) => a + b, 0)
    const length = kind === 'bolt' ? boltLength.eval({ G: grip, d, s: STEP }) : Math.ceil((grip + POINT) / STEP - 1e-6) * STEP
    const parts = [panel, ...(member ? [member.part] : [])]
    return { parts, thickness, count: counts[at], grip, length, name: `${fixing.diameter.name} x ${Math.round(length * 1000)}` }
  })
  const level = new Array<number>(station.length).fill(0)
  return Object.freeze({
    ...{ id, says, kind, joint: kind === 'bolt' ? 'hold-down' : 'floor' },
    fastener: kind === 'bolt' ? `bolt ${fixing.diameter.name}` : `screw ${fixing.diameter.name}`,
    ...{ diameter: d, pitch: fixing.pitch, spans, span, number, station, girth: level, waterline: level, stack, stacks, shared: {} },
    source: kind === 'bolt' ? 'floor.bolts of the definition' : 'floor.screws of the definition',
    buttock,
  })
}

/** What lies under a fixing: the panel, and the member it stands over. */
interface Under {
  readonly panel: string
  readonly member: Member | null
}

/** Each pair of them once, in the order they are met, and which of them a spot stands on; neighbours mostly stand on the same. */
function layersUnder({ panelAt }: Fitting): { readonly met: readonly Under[]; readonly at: (spot: Spot) => number } {
  const met: Under[] = []
  let last = -1
  return {
    met,
    at: ({ x, member }) => {
      const panel = panelAt(x)
      const isOn = (under: Under): boolean => under.member === member && under.panel === panel
      if (last < 0 || !isOn(met[last])) last = met.findIndex(isOn)
      if (last < 0) last = met.push({ panel, member }) - 1
      return last
    },
  }
}

/** Not in an opening, a wheel box or a joint between panels. Asked of every spot, by the thousand. */
function isClear({ input, joints }: Fitting, { x, y }: Spot, radius: number): boolean {
  const { boxes, floor } = input
  for (let i = 0; i < boxes.length; i++) {
    const b = boxes[i]
    if ((b.side === 'right') === y > 0 && x > b.x[0] - radius && x < b.x[1] + radius && Math.abs(y) > b.y[0] - radius) return false
  }
  for (let i = 0; i < joints.length; i++) if (Math.abs(joints[i].station - x) < 2 * radius) return false
  // three radii from the middle of the hole: its own, and a diameter of board beside the opening
  const room = 3 * radius
  for (let i = 0; i < floor.openings.length; i++) {
    const o = floor.openings[i]
    const dx = Math.abs(o.station - x)
    const rx = o.size / 2
    if (dx >= rx + room) continue
    const dy = Math.abs(o.y - y)
    const ry = (o.across ?? o.size) / 2
    if (dy >= ry + room) continue
    if (o.shape === 'rectangle' ? Math.hypot(Math.max(0, dx - rx), Math.max(0, dy - ry)) < room : Math.hypot(dx, dy) < rx + room)
      return false
  }
  return true
}

const spread = (member: Member): { x0: number; x1: number; y0: number; y1: number } => {
  const [xs, ys] = [member.plan.map((p) => p[0]), member.plan.map((p) => p[1])]
  return { x0: Math.min(...xs), x1: Math.max(...xs), y0: Math.min(...ys), y1: Math.max(...ys) }
}

/** Along each rail at half pitches from its ends, one in the middle of each cross-member, one at the tip of each outrigger. */
export function holdDowns(fitting: Fitting, bolts: FixingDefinition): FastenerRow[] {
  const { members, sheet } = fitting.input
  const webs = members
    .filter((m) => m.kind === 'cross-member')
    .map((m): readonly [number, number] => [spread(m).x0, spread(m).x0 + sheet(m)])
  const rails = members
    .filter((m) => m.kind === 'rail')
    .map((member) => {
      const { x0, x1, y0, y1 } = spread(member)
      const n = Math.max(1, Math.round((x1 - x0) / fittedPitch.eval({ L: x1 - x0, p_n: bolts.pitch })))
      const pitch = (x1 - x0) / n
      const spots = Array.from({ length: n }, (_, i) => ({
        x: besideWebs(webs, x0 + (i + 0.5) * pitch, SOCKET * bolts.diameter.value),
        y: (y0 + y1) / 2,
        member,
      }))
      return rowOf(fitting, 'bolt', `bolts-${member.part}`, `hold-down bolts along the ${member.says}`, bolts, [
        { from: 'fore', to: 'aft', pitch, spots },
      ])
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
    rowOf(
      fitting,
      'bolt',
      'bolts-cross-members',
      'hold-down bolts in the middle of the cross-members',
      bolts,
      single('cross-member', () => 0),
    ),
    rowOf(fitting, 'bolt', 'bolts-outriggers', 'hold-down bolts at the tips of the outriggers', bolts, single('outrigger', tip)),
  ].filter((r): r is FastenerRow => r !== null)
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

export function floorScrews(
  fitting: Fitting,
  screws: FixingDefinition & { readonly edge: number },
  bolts: readonly FastenerRow[],
): FastenerRow[] {
  const { input } = fitting
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
  const rows = [
    rowOf(fitting, 'screw', 'screws-members', 'screws into cross-members and outriggers', screws, members),
    rowOf(
      fitting,
      'screw',
      'screws-edge',
      'screws along the edge channel',
      screws,
      edgeLines(input, screws).map((l) => ({ ...l, spots: l.spots.filter(away) })),
    ),
    rowOf(fitting, 'screw', 'screws-wheel-boxes', 'screws in the flanges of the wheel boxes', screws, boxLines(input, screws)),
  ]
  return rows.filter((r): r is FastenerRow => r !== null)
}

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

/** Along the three sides of each box, in the middle of its flange on the floor. */
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
