/** Openings of the floor, and how near each comes to members, wheel boxes, the panel's edge and the others. */
import type { FloorOpeningDefinition } from '../../definition/under-types.js'
import { distanceToOutline, insideOutline } from '../../maths/outline.js'
import type { Memo } from '../memo.js'
import type { Outline } from '../nouns.js'
import type { Clearance, FloorOpening } from '../under-nouns.js'
import type { FloorInput } from './input.js'
import type { PanelPlan } from './panel.js'

function openingOutline(o: FloorOpeningDefinition): Outline {
  const r = o.size / 2
  if (o.shape === 'round')
    return [
      [o.station - r, o.y, 1],
      [o.station + r, o.y, 1],
    ]
  const w = (o.across ?? o.size) / 2
  return [
    [o.station - r, o.y - w, 0],
    [o.station + r, o.y - w, 0],
    [o.station + r, o.y + w, 0],
    [o.station - r, o.y + w, 0],
  ]
}

/** Positive outside, negative inside. */
const signed = (outline: Outline, x: number, y: number): number =>
  (insideOutline(outline, x, y) ? -1 : 1) * distanceToOutline(outline, x, y)

/** Room between an opening and a straight-edged outline; negative where it cuts it. */
function roomTo(o: FloorOpeningDefinition, own: Outline, other: Outline): number {
  if (o.shape === 'round') return signed(other, o.station, o.y) - o.size / 2
  const [mine, theirs] = [own.map(([x, y]) => signed(other, x, y)), other.map(([x, y]) => signed(own, x, y))]
  const crosses = own.some((p, i) => other.some((q, k) => cross(p, own[(i + 1) % own.length], q, other[(k + 1) % other.length])))
  const least = Math.min(...mine, ...theirs)
  return crosses && least >= 0 ? -least - 1e-6 : least
}

type Point = readonly [number, number, number]
function cross(a: Point, b: Point, c: Point, d: Point): boolean {
  const turn = (p: Point, q: Point, r: Point): number => Math.sign((q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]))
  return turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0
}

export function floorOpenings(input: FloorInput, plan: Pick<PanelPlan, 'outline'>, memo: Memo): FloorOpening[] {
  const { members } = input
  return input.floor.openings.map((o) => ({
    id: o.id,
    says: o.says,
    outline: openingOutline(o),
    station: o.station,
    y: o.y,
    // wheel boxes move more often than members and the panel's edge
    clear: clearances(input, plan, o, {
      members: memo.keep(`${o.id} to members`, [o, members], () => toMembers(o, members)),
      edge: memo.keep(`${o.id} to the edge`, [o, plan], () => toEdge(o, plan)),
    }),
    toFlange: memo.keep(`${o.id} to a flange`, [o, members], () => alongCoach(o, members)),
  }))
}

/** What of an opening's clearances is known already. */
interface Known {
  readonly members: readonly Clearance[]
  readonly edge: number
}

/** How near an opening would come to the nearest of each kind of thing, stood where `o` says; nearest first. */
export function clearances(
  input: FloorInput,
  plan: Pick<PanelPlan, 'outline'>,
  o: FloorOpeningDefinition,
  { members, edge }: Known = { members: toMembers(o, input.members), edge: toEdge(o, plan) },
): Clearance[] {
  const outline = openingOutline(o)
  const nearest = nearestOf(members)
  for (const b of input.boxes) {
    const other = boxPlan(b)
    nearest.take(b.id, 'wheel-box', () => roomTo(o, outline, other), gapTo(o, other))
  }
  nearest.take('the edge of the panel', 'edge', () => edge)
  for (const other of input.floor.openings)
    if (other.id !== o.id) nearest.take(other.id, 'opening', () => apart(o, outline, other, openingOutline(other)))
  return nearest.all().sort((a, b) => a.room - b.room)
}

/** The same to the members alone, by their kinds. */
function toMembers(o: FloorOpeningDefinition, members: FloorInput['members']): readonly Clearance[] {
  const outline = openingOutline(o)
  const nearest = nearestOf([])
  for (const m of members) nearest.take(m.part, m.kind, () => roomTo(o, outline, m.plan), gapTo(o, m.plan))
  return nearest.all()
}

/** The nearest of each kind so far; a thing that is certainly no nearer is not looked at closely. */
function nearestOf(known: readonly Clearance[]) {
  const nearest = new Map(known.map((each) => [each.kind, each]))
  return {
    take: (to: string, kind: Clearance['kind'], room: () => number, atLeast = Number.NEGATIVE_INFINITY): void => {
      const before = nearest.get(kind)
      if (before && before.room <= atLeast) return
      const found = room()
      if (!before || found < before.room) nearest.set(kind, { to, kind, room: found })
    },
    all: (): Clearance[] => [...nearest.values()],
  }
}

/** No nearer than this: between the opening's own box and that of the other, a little less for the last bits; m. */
function gapTo(o: FloorOpeningDefinition, other: Outline): number {
  const [rx, ry] = [o.size / 2, (o.across ?? o.size) / 2]
  let [x0, x1, y0, y1] = [Infinity, -Infinity, Infinity, -Infinity]
  for (let i = 0; i < other.length; i++) {
    const corner = other[i]
    x0 = Math.min(x0, corner[0])
    x1 = Math.max(x1, corner[0])
    y0 = Math.min(y0, corner[1])
    y1 = Math.max(y1, corner[1])
  }
  const gap = Math.max(x0 - o.station - rx, o.station - rx - x1, y0 - o.y - ry, o.y - ry - y1) - 1e-9
  // boxes that meet say nothing of how deep one cuts the other
  return gap > 0 ? gap : Number.NEGATIVE_INFINITY
}

/** Room to the edge of the panel, negative past it: of a round opening from its middle, of a rectangle from its corners. */
function toEdge(o: FloorOpeningDefinition, { outline }: Pick<PanelPlan, 'outline'>): number {
  if (o.shape === 'round') return -signed(outline, o.station, o.y) - o.size / 2
  return -Math.max(...openingOutline(o).map(([x, y]) => signed(outline, x, y)))
}

/** Between two openings: exact for round ones. */
function apart(o: FloorOpeningDefinition, own: Outline, other: FloorOpeningDefinition, theirs: Outline): number {
  if (o.shape === 'round' && other.shape === 'round')
    return Math.hypot(o.station - other.station, o.y - other.y) - (o.size + other.size) / 2
  return o.shape === 'round' ? roomTo(o, own, theirs) : roomTo(other, theirs, own)
}

const boxPlan = (b: FloorInput['boxes'][number]): Outline => {
  const [p, q] = b.side === 'right' ? [b.y[0], b.y[1]] : [-b.y[1], -b.y[0]]
  return [
    [b.x[0], p, 0],
    [b.x[1], p, 0],
    [b.x[1], q, 0],
    [b.x[0], q, 0],
  ]
}

/** To the nearest cross-member's flange, measured along the coach as the flooring jig is stopped, wherever across it stands. */
function alongCoach(o: FloorOpeningDefinition, members: FloorInput['members']): Clearance | null {
  const rooms = members
    .filter((m) => m.kind === 'cross-member')
    .map((m) => {
      const [x0, x1] = [m.plan[0][0], m.plan[1][0]]
      return { to: m.part, kind: m.kind, room: Math.max(x0 - o.station, o.station - x1) - o.size / 2 }
    })
  return rooms.length === 0 ? null : rooms.reduce((a, b) => (b.room < a.room ? b : a))
}
