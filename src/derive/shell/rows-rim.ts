/** The rim ring round each opening: its plate behind the skin, its fasteners, and the posts and headers of cut frames. */

import type { FrameDefinition } from '../../definition/types.js'
import { developed, undeveloped } from '../../maths/development.js'
import { addSpan, type RowDraft, startRow } from '../common/row-draft.js'
import { diameterOf, flangeHalf, type Laid, rimReach, unrolledAt } from './members.js'
import { chordAtLength, cutsWeb, grown, type OpeningShape } from './opening-shape.js'
import { lieOf, type Plate } from './plates.js'
import { type Ring, ringOf } from './ring.js'
import { clearOfCuts, endInset } from './rows-skin.js'
import { lapsOf, ORDER } from './sheets.js'

export interface Framing {
  readonly plates: readonly Plate[]
  /** frames whose web this opening cuts */
  readonly cuts: readonly string[]
  /** sentences: which frame serves as a post, where a header ends */
  readonly notes: readonly string[]
  readonly lengths: Readonly<Record<string, number>>
}

export interface Rim {
  readonly shape: OpeningShape
  readonly ring: Ring
  readonly plate: Plate
  readonly row: RowDraft
  readonly framing: Framing
}

export function rimOf(laid: Laid, shape: OpeningShape): Rim {
  const near = laid.shapes.filter(
    (s) => s.x0 < shape.x1 + NEAR && s.x1 > shape.x0 - NEAR && s.v0 < shape.v1 + NEAR && s.v1 > shape.v0 - NEAR,
  )
  return laid.memo.keep(`rim ${shape.id}`, [laid.token, shape, ...near], () => makeRim(laid, shape, near))
}

/** Further than a rim ring and its rivets reach, m. */
const NEAR = 0.15

function makeRim(laid: Laid, shape: OpeningShape, near: readonly OpeningShape[]): Rim {
  const { input, skin } = laid
  const rule = input.rows.rim
  const inset = endInset(laid, rule.fastener)
  const room = input.rules.minPitch * diameterOf(input, rule.fastener)
  const edge = shape.surface === 'wheel' ? developed(skin, shape.side === 'right' ? rimLimit(laid) : -rimLimit(laid)) : null
  const seams = lapsOf(input).map((lap) => ({ row: `${lap.seam}-${lap.side}`, mark: lap.seam, v: developed(skin, lap.girth) }))
  const ring = ringOf(shape, input.shell.rim.line, seams, room, edge === null ? null : edge - Math.sign(edge) * inset)
  const plate = rimPlate(laid, shape)
  const row = startRow({
    id: `rim-${shape.id}`,
    says: `rim of ${shape.id}, ${shape.says}`,
    kind: 'rim',
    joint: `joint-rim-${shape.id}`,
    fastener: rule.fastener,
    diameter: diameterOf(input, rule.fastener),
    pitch: rule.pitch,
    source: 'rows.rim of the definition',
  })
  layRing(laid, row, ring, near)
  const framing = framingOf(laid, shape, ring, row, inset)
  return { shape, ring, plate, row, framing }
}

function layRing(laid: Laid, row: RowDraft, ring: Ring, near: readonly OpeningShape[]): void {
  const place = (s: number): [number, number] => {
    const [x, v] = ring.at(s)
    return [x, undeveloped(laid.skin, v)]
  }
  const clear = clearOfCuts(laid, row.fastener, near)
  const n = ring.controls.length
  for (let i = 0; i < (ring.closed ? n : n - 1); i++) {
    const a = ring.controls[i]
    const b = ring.controls[(i + 1) % n]
    const end = b.s > a.s ? b.s : b.s + ring.length
    addSpan(
      row,
      {
        from: a.mark,
        to: b.mark,
        start: a.s,
        end,
        atStart: true,
        atEnd: !ring.closed && i === n - 2,
        sharedStart: a.shared,
        sharedEnd: b.shared,
      },
      place,
      clear,
    )
  }
}

/** How far down a rim ring reaches: to the sheet's edge where the toe flange runs straight on; it is not bent round a toe. m */
function rimLimit({ input, section }: Laid): number {
  return input.shell.toe.turn === 0 ? section.sheetEdge : section.toe
}

function rimPlate(laid: Laid, shape: OpeningShape): Plate {
  const { input, skin } = laid
  const outer = grown(shape, rimReach(input))
  const t = input.shell.skin.thickness.value
  const metal = input.shell.rim.thickness.value
  const depth = t + metal / 2
  const limit = rimLimit(laid)
  const g0 = Math.max(-limit, undeveloped(skin, outer.v0))
  const g1 = Math.min(limit, undeveloped(skin, outer.v1))
  return {
    part: `rim-${shape.id}`,
    face: 'flange',
    kind: 'rim',
    says: `rim ring of ${shape.id}, ${shape.says}`,
    material: input.shell.rim.alloy,
    thickness: metal,
    x0: outer.x0,
    x1: outer.x1,
    g0,
    g1,
    order: ORDER.member,
    development: unrolledAt(laid, depth, t),
    lie: lieOf(g0, g1),
    cuts: [],
    ring: { inner: shape, outer },
    marks: [],
  }
}

/** Frames whose web an opening cuts, by exact outline. */
function framesCut(laid: Laid, shape: OpeningShape): FrameDefinition[] {
  return laid.input.frames.filter((f) => cutsWeb(shape, f.station))
}

function framingOf(laid: Laid, shape: OpeningShape, ring: Ring, row: RowDraft, inset: number): Framing {
  const cut = framesCut(laid, shape)
  if (cut.length === 0) return { plates: [], cuts: [], notes: [], lengths: {} }
  const { input, skin } = laid
  const leg = input.shell.post.leg
  const gap = input.shell.memberGap
  const fore = [...input.frames].reverse().find((f) => f.station <= shape.x0)
  const aft = input.frames.find((f) => f.station >= shape.x1)
  const foreEdge = fore ? fore.station + flangeHalf(input, fore) + gap : shape.x0
  const aftEdge = aft ? aft.station - flangeHalf(input, aft) - gap : shape.x1
  const plates: Plate[] = []
  const lengths: Record<string, number> = {}
  const notes: string[] = []
  const t = input.shell.skin.thickness.value
  const depth = t + input.shell.rim.thickness.value + input.shell.post.thickness.value / 2
  const development = unrolledAt(laid, depth, t)
  const make = (
    part: string,
    says: string,
    x0: number,
    x1: number,
    va: number,
    vb: number,
    length: number,
    kind: 'header' | 'post',
  ): void => {
    const g0 = undeveloped(skin, Math.min(va, vb))
    const g1 = undeveloped(skin, Math.max(va, vb))
    lengths[part] = length
    plates.push({
      part,
      face: 'skin leg',
      kind,
      says,
      material: input.shell.post.alloy,
      thickness: input.shell.post.thickness.value,
      x0,
      x1,
      g0,
      g1,
      order: ORDER.framing,
      development,
      lie: lieOf(g0, g1),
      cuts: [],
      ring: null,
      marks: [],
    })
  }
  const points = row.station.map((x, i) => ({ x, v: developed(skin, row.girth[i]) }))
  const span = aftEdge - foreEdge
  const between = `${fore ? fore.id : 'the nose'} to ${aft ? aft.id : 'the tail'}`
  const up = shape.side === 'left' ? { head: shape.v1, out: 1, sill: shape.v0 } : { head: shape.v0, out: -1, sill: shape.v1 }
  const top = legReach(points, 'v', shape.side === 'left' ? ring.shape.v1 : ring.shape.v0, inset)
  const unheld = (what: string): void => {
    notes.push(`No ${what}: no rim fastener stands on the straight where it would lie.`)
  }
  if (!top) unheld('header')
  else make(`header-${shape.id}`, `header over ${shape.id}, ${between}`, top[0], top[1], up.head, up.head + up.out * leg, span, 'header')
  if (shape.surface !== 'wheel' && stubBelow(laid, shape, up.sill) >= input.shell.rim.minStub) {
    const low = legReach(points, 'v', shape.side === 'left' ? ring.shape.v0 : ring.shape.v1, inset)
    if (!low) unheld('sill')
    else make(`sill-${shape.id}`, `sill under ${shape.id}, ${between}`, low[0], low[1], up.sill, up.sill - up.out * leg, span, 'header')
  } else {
    notes.push(
      shape.surface === 'wheel'
        ? 'The wheel box carries the frame feet to the floor.'
        : 'The posts run down to the floor; there is no sill.',
    )
  }
  if (shape.surface === 'wheel') return { plates, cuts: cut.map((f) => f.id), notes, lengths }
  for (const [side, x, out, limit, frame] of [
    ['fore', shape.x0, -1, foreEdge, fore],
    ['aft', shape.x1, 1, aftEdge, aft],
  ] as const) {
    if ((limit - x) * out >= leg) {
      const [a, b] = out < 0 ? [x - leg, x] : [x, x + leg]
      const tall = legReach(points, 'x', out < 0 ? ring.shape.x0 : ring.shape.x1, inset)
      if (!tall) unheld(`${side} post`)
      else make(`post-${shape.id}-${side}`, `${side} post of ${shape.id}`, a, b, tall[0], tall[1], shape.v1 - shape.v0 + 2 * leg, 'post')
    } else if (frame) notes.push(`Frame ${frame.id} serves as the ${side} post.`)
  }
  return { plates, cuts: cut.map((f) => f.id), notes, lengths }
}

/**
 * From the first to the last rim fastener on one straight leg of the ring, and an edge distance beyond: what a leg behind it
 * needs. Null where no fastener stands on it: large corners or a wide pitch leave a straight without any.
 */
function legReach(points: readonly { x: number; v: number }[], along: 'x' | 'v', at: number, inset: number): [number, number] | null {
  const on = points.filter((p) => Math.abs(p[along] - at) < 1e-9).map((p) => (along === 'x' ? p.v : p.x))
  if (on.length === 0) return null
  return [Math.min(...on) - inset, Math.max(...on) + inset]
}

/** How much frame is left under an opening, m along the skin. */
function stubBelow(laid: Laid, shape: OpeningShape, sill: number): number {
  if (shape.side === 'centre') return Infinity
  return Math.abs(developed(laid.skin, laid.section.floor)) - Math.abs(sill) - rimReach(laid.input)
}

/** Seams an opening's cut crosses. */
export function seamsCrossed(laid: Laid, shape: OpeningShape): string[] {
  return lapsOf(laid.input)
    .filter((lap) => chordAtLength(shape, developed(laid.skin, lap.girth)) !== null)
    .map((lap) => `${lap.seam}-${lap.side}`)
}
