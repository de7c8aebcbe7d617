/** Bolts that hold the body down on the chassis, and the screws of the floor: rows of what openings, boxes and joints leave of them. */
import type { FixingDefinition } from '../../definition/under-types.js'
import type { FastenerRow, Span } from '../nouns.js'
import type { Member } from '../under-nouns.js'
import { boxScrewRow, type RowPlan, type Spot } from './fixing-lines.js'
import { boltLength } from './floor.formulas.js'
import type { FloorInput } from './input.js'
import type { PanelJoint } from './panel.js'

/** Self-drilling screw: through the board, the steel, and its own point. From memory. m */
const POINT = 0.012
const STEP = 0.005

interface Fitting {
  readonly input: FloorInput
  readonly joints: readonly PanelJoint[]
  readonly panelAt: (station: number) => string
}

export const holdDowns = (fitting: Fitting, bolts: FixingDefinition, plans: readonly RowPlan[]): FastenerRow[] =>
  plans.flatMap((plan) => rowOf(fitting, 'bolt', plan, bolts) ?? [])

export const floorScrews = (fitting: Fitting, screws: FixingDefinition, plans: readonly RowPlan[]): FastenerRow[] =>
  [...plans, boxScrewRow(fitting.input, screws)].flatMap((plan) => rowOf(fitting, 'screw', plan, screws) ?? [])

function rowOf(fitting: Fitting, kind: 'bolt' | 'screw', { id, says, lines }: RowPlan, fixing: FixingDefinition): FastenerRow | null {
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
