/**
 * The floor: panel outline, joints, openings with what they come near, bolts and screws, cut-outs of the wheel boxes.
 *
 * x aft, y right of travel, seen from above; the panel's top is WL 0. Covers shapes, holes and masses. Does NOT cover what the
 * board carries, nor the edge channel, which the shell and the ends make.
 */
import { netMoments } from '../../maths/area-moments.js'
import { clipToRectangle, outlineArea } from '../../maths/outline.js'
import { identical } from '../../quantity/same.js'
import { FORGETFUL, type Memo } from '../memo.js'
import type { FastenerRow, HoleSet, Outline, Part, Pattern } from '../nouns.js'
import type { FloorDerived, Member, WheelBox } from '../under-nouns.js'
import { boltRows, screwRows } from './fixing-lines.js'
import { floorScrews, holdDowns } from './fixings.js'
import { layerMass } from './floor.formulas.js'
import { type FloorInput, type FloorSlice, floorInputOf } from './input.js'
import { floorOpenings } from './openings.js'
import { type PanelPlan, panelJoints, panelPlan } from './panel.js'

export interface Floor {
  /** null where no floor is written */
  readonly facts: FloorDerived | null
  readonly parts: readonly Part[]
  readonly rows: readonly FastenerRow[]
}

const NONE: Floor = Object.freeze({ facts: null, parts: [], rows: [] })

export function deriveFloor(definition: FloorSlice, members: readonly Member[], boxes: readonly WheelBox[], memo: Memo = FORGETFUL): Floor {
  const input = floorInputOf(definition, members, boxes)
  if (!input) return NONE
  const { floor } = input
  const plan = memo.keep('floor plan', [floor, input.frames, definition.ends], () => panelPlan(input))
  const joints = panelJoints(input, plan)
  const stops = [plan.from, ...joints.map((j) => j.station), plan.to]
  const panels = stops.slice(1).map((to, i) => ({ part: joints.length === 0 ? 'floor-panel' : `floor-panel-${i + 1}`, from: stops[i], to }))
  const panelAt = (station: number): string => (panels.find((p) => station <= p.to + 1e-9) ?? panels[panels.length - 1]).part
  const fitting = { input, joints, panelAt }
  // where fixings would stand hangs on members and edge; axles move more often, and mostly take no bolt away
  const on = [floor, input.frames, definition.ends, definition.chassis, members]
  const boltPlans = memo.keep('plans of bolts', on, () => (floor.bolts ? boltRows(input, floor.bolts) : []))
  const bolts = memo.settle(
    'hold-downs',
    [boltPlans, boxes, definition.stock],
    () => (floor.bolts ? holdDowns(fitting, floor.bolts, boltPlans) : []),
    identical,
  )
  const screwPlans = memo.keep('plans of screws', [...on, bolts], () => (floor.screws ? screwRows(input, floor.screws, bolts) : []))
  const screws = floor.screws ? floorScrews(fitting, floor.screws, screwPlans) : []
  const rows = [...bolts, ...screws]
  const openings = floorOpenings(input, plan, memo)
  const count = (of: readonly FastenerRow[]): number => of.reduce((sum, r) => sum + r.station.length, 0)
  const facts: FloorDerived = {
    outline: plan.outline,
    area: plan.area,
    length: plan.to - plan.from,
    width: 2 * floor.halfWidth,
    perimeter: plan.perimeter,
    stray: plan.stray,
    panels,
    joints,
    openings,
    bolts: count(bolts),
    screws: count(screws),
    covering: coveringOf(input, plan),
  }
  const cuts = [
    ...openings.map((o) => ({ opening: o.id, outline: o.outline })),
    ...input.boxes.map((b) => ({ opening: b.id, outline: boxCut(b, input.box?.corner ?? 0) })),
  ]
  const parts = floor.panel ? panels.map((p, i) => panelPart(input, plan, rows, cuts, p, i === 0 ? input.frames[0].station : p.from)) : []
  return Object.freeze({ facts: Object.freeze(facts), parts, rows })
}

function coveringOf({ floor }: FloorInput, plan: PanelPlan): FloorDerived['covering'] {
  const c = floor.covering
  if (!c) return null
  const { x } = netMoments(plan.outline, [])
  const area = c.share * plan.area
  return { says: c.says, area, mass: layerMass({ w: c.arealMass, A: area }), centre: [x, 0, 0] }
}

/** From the box's inner face to the panel's edge, its two inner corners rounded for the cutter. */
function boxCut(b: WheelBox, corner: number): Outline {
  const q = Math.tan(Math.PI / 8)
  const [x0, x1] = b.x
  const [inner, edge] = b.y
  const right: Outline = [
    [x0, edge, 0],
    [x0, inner + corner, corner > 0 ? q : 0],
    [x0 + corner, inner, 0],
    [x1 - corner, inner, corner > 0 ? q : 0],
    [x1, inner + corner, 0],
    [x1, edge, 0],
  ]
  if (b.side === 'right') return right
  // mirrored, and turned so that it still runs anticlockwise; each arc keeps its sense
  const n = right.length
  return Array.from({ length: n }, (_, i) => {
    const here = right[n - 1 - i]
    const before = right[(2 * n - 2 - i) % n]
    return [here[0], -here[1], before[2]] as const
  })
}

type Cuts = readonly { readonly opening: string; readonly outline: Outline }[]

function panelPart(
  input: FloorInput,
  plan: PanelPlan,
  rows: readonly FastenerRow[],
  all: Cuts,
  panel: FloorDerived['panels'][number],
  origin: number,
): Part {
  const { floor, board } = input
  const whole = panel.from <= plan.from && panel.to >= plan.to
  // the arcs of an end stray past its tip by a hair: only a joint cuts, never the tip's own station
  const [x0, x1] = [panel.from <= plan.from ? panel.from - 1 : panel.from, panel.to >= plan.to ? panel.to + 1 : panel.to]
  const shift = (outline: Outline): Outline => outline.map(([x, y, b]) => [x - origin, y, b] as const)
  const outline = shift(whole ? plan.outline : clipToRectangle(plan.outline, x0, -10, x1, 10))
  const cuts = all.flatMap((cut) => {
    const inside = clipToRectangle(cut.outline, x0, -10, x1, 10)
    return inside.length === 0 ? [] : [{ opening: cut.opening, outline: shift(inside) }]
  })
  const pattern: Pattern = Object.freeze({
    face: 'panel',
    flat: {
      view: 'inside' as const,
      x: 'aft' as const,
      y: 'right' as const,
      origin: {
        station: origin,
        girth: 0,
        says:
          origin === input.frames[0].station
            ? `${input.frames[0].id} on the centre plane, seen from above`
            : 'joint of the panels on the centre plane, seen from above',
      },
    },
    thickness: floor.thickness,
    outline,
    cuts,
    marks: [
      { says: 'centre plane', kind: 'centre' as const, from: [panel.from - origin, 0] as const, to: [panel.to - origin, 0] as const },
    ],
    holes: holesIn(rows, panel.part, origin, (row) =>
      row.kind === 'bolt' ? (floor.bolts?.hole ?? row.diameter) : (floor.screws?.hole ?? row.diameter),
    ),
  })
  const net = netMoments(
    outline,
    cuts.map((c) => c.outline),
  )
  const says = floor.panel?.says ?? 'board'
  return Object.freeze({
    id: panel.part,
    says: panel.part === 'floor-panel' ? 'floor panel' : `floor ${panel.part.replace('floor-', '').replace('-', ' ')}`,
    trade: 'floor' as const,
    kind: 'floor-panel' as const,
    material: says,
    thickness: { name: `${Math.round(floor.thickness * 1e4) / 10} mm`, value: floor.thickness },
    side: 'centre' as const,
    place: { side: 'centre' as const, station: origin + net.x, girth: 0, waterline: 0, buttock: net.y },
    patterns: [pattern],
    area: net.area,
    mass: layerMass({ w: floor.panel?.arealMass ?? 0, A: net.area }),
    centre: [origin + net.x, net.y, -floor.thickness / 2] as const,
    stock: board.name,
    pieces: 1,
    notes: [
      'Best face up. Seal every edge and every hole before it is laid: a wet edge rots first.',
      ...(whole ? [] : ['Its butt edge lies on the middle of the cross-member; both panels are screwed to it.']),
      `Gross ${Math.round(Math.abs(outlineArea(outline)) * 1000) / 1000} m2 before anything is cut out.`,
    ],
  })
}

function holesIn(rows: readonly FastenerRow[], panel: string, origin: number, diameterOf: (row: FastenerRow) => number): HoleSet {
  const set = {
    rows: [] as string[],
    row: [] as number[],
    index: [] as number[],
    x: [] as number[],
    y: [] as number[],
    diameter: [] as number[],
  }
  for (const row of rows) {
    const mine = row.station.flatMap((_, i) => (row.stacks[row.stack[i]].parts[0] === panel ? [i] : []))
    if (mine.length === 0) continue
    const name = set.rows.push(row.id) - 1
    for (const i of mine) {
      set.row.push(name)
      set.index.push(i)
      set.x.push(row.station[i] - origin)
      set.y.push(row.buttock?.[i] ?? 0)
      set.diameter.push(diameterOf(row))
    }
  }
  return set
}
