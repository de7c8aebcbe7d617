/**
 * The members under the skin as plates: frame flanges, stringer legs, edge channels, and the layers of other trades
 * (end skins, underbelly) that barrel fasteners pass through. Each stops short of what crosses it.
 */

import type { FrameDefinition } from '../../definition/types.js'
import { type DepthZone, type Development, developAt, undeveloped } from '../../maths/development.js'
import { barrelLip } from '../common/barrel-lip.js'
import type { Memo } from '../memo.js'
import type { ShellInput } from './input.js'
import { cutsWeb, type OpeningShape, widestChord } from './opening-shape.js'
import type { Plate } from './plates.js'
import type { Section } from './section.js'
import { lapsOf, ORDER } from './sheets.js'
import { lessGaps, type Stretch, severed } from './stretches.js'

export interface Laid {
  readonly input: ShellInput
  readonly section: Section
  readonly skin: Development
  readonly shapes: readonly OpeningShape[]
  readonly memo: Memo
  /** how members unroll, by how deep they lie: see `unrolledAt` */
  readonly unrolled: Map<string, Development>
  /** the same object as long as nothing but openings has changed */
  readonly token: unknown
}

/** A frame's two faces, what is left of it, and what cut it. */
export interface FramePlates {
  readonly outer: Plate
  readonly inner: Plate
  readonly frame: FrameDefinition
  readonly stretches: readonly Stretch[]
  readonly cutBy: readonly string[]
}

/** Cut to the outer edge of the rim ring, m: its rivets' edge distance with a little over, to the next tenth of a millimetre. */
export function rimReach(input: ShellInput): number {
  // the ring lies deeper than the skin it is drawn on, so on a curve it measures a trace less across: 0.05 mm covers radii over 0.2 m
  return Math.ceil((input.shell.rim.line + rimEdge(input) + 5e-5) * 1e4 - 1e-6) / 1e4
}

/** How far from a cut other members must stop: at the rim ring, or at the leg of the post or header behind it. m. */
export function memberStop(input: ShellInput, shape: OpeningShape): number {
  const framed = input.frames.some((f) => cutsWeb(shape, f.station))
  return Math.max(rimReach(input), framed ? input.shell.post.leg : 0) + input.shell.memberGap
}

/** Edge distance the rim ring and the frames give their rivets, m. */
function rimEdge(input: ShellInput): number {
  return input.rules.edgeDistance * diameterOf(input, input.rows.rim.fastener)
}

export function fastenerOf(input: ShellInput, id: string) {
  const f = input.fasteners.find((one) => one.id === id)
  if (!f) throw new Error(`no fastener "${id}" in the definition`)
  return f
}

export function diameterOf(input: ShellInput, id: string): number {
  return fastenerOf(input, id).diameter.value
}

/** Where a layer lies deeper: by `inLap` under a seam of the barrel, by `inCap` where a crown cap laps over its gores, by both under both. */
export function zonesAt(input: ShellInput, depth: number, inLap: number, inCap = 0): DepthZone[] {
  const laps = lapsOf(input).map((lap) => ({ from: lap.girth - lap.half, to: lap.girth + lap.half, more: inLap }))
  const caps = inCap === 0 ? [] : capLaps(input).map((lap) => ({ ...lap, more: inCap }))
  if (caps.length === 0) return laps.map(({ from, to, more }) => ({ from, to, depth: depth + more }))
  const stops = [...new Set([...laps, ...caps].flatMap((z) => [z.from, z.to]))].sort((a, b) => a - b)
  return stops.slice(1).flatMap((to, i) => {
    const middle = (stops[i] + to) / 2
    const covering = [...laps, ...caps].filter((z) => middle > z.from && middle < z.to)
    return covering.length === 0 ? [] : [{ from: stops[i], to, depth: covering.reduce((sum, z) => sum + z.more, depth) }]
  })
}

/** How a member `depth` m in unrolls on the straight section, deeper by `inLap` and `inCap` as in `zonesAt`: one map for all of that depth. */
export function unrolledAt({ input, section, unrolled }: Laid, depth: number, inLap = 0, inCap = 0): Development {
  const key = `${depth} ${inLap} ${inCap}`
  const known = unrolled.get(key)
  if (known) return known
  const made = developAt(section.straight, depth, inLap === 0 ? [] : zonesAt(input, depth, inLap, inCap))
  unrolled.set(key, made)
  return made
}

/** Signed girths where a crown cap laps over the gores at the joint; the joint is a rib like any other. */
export function capLaps({ ends }: Pick<ShellInput, 'ends'>): readonly { readonly from: number; readonly to: number }[] {
  return [-ends.cap, ends.cap].map((g) => ({ from: g - ends.lap / 2, to: g + ends.lap / 2 }))
}

/** Half the flange a frame shows to the skin, m. */
export function flangeHalf(input: ShellInput, frame: FrameDefinition): number {
  return (frame.joint ? input.shell.jointFrame.flange : input.shell.frame.flange) / 2
}

/** End fasteners stand this many diameters from a member's end: preferred minimum, common practice (AC 43.13-1B). */
export const END_DISTANCE = 2.5

/** The shop's least stub, but never a piece without room for two end fasteners at the closest pitch. m */
export function leastPiece(input: ShellInput, stub: number, fastener: string): number {
  return Math.max(stub, (2 * END_DISTANCE + input.rules.minPitch) * diameterOf(input, fastener))
}

/** Stretches of a frame that are left: foot to foot in signed girth, less the openings that cut its web. */
function frameStretches(laid: Laid, frame: FrameDefinition): { stretches: Stretch[]; cutBy: string[] } {
  const { input, section, skin } = laid
  const half = flangeHalf(input, frame)
  const gaps = laid.shapes
    .filter((s) => cutsWeb(s, frame.station))
    .map((s) => {
      const grow = memberStop(input, s)
      const chord = widestChord(s, frame.station - half, frame.station + half) ?? [s.v0, s.v1]
      return { from: undeveloped(skin, chord[0] - grow), to: undeveloped(skin, chord[1] + grow), id: s.id }
    })
    .sort((a, b) => a.from - b.from)
  return {
    stretches: lessGaps(
      { from: -section.floor, to: section.floor, fromMark: 'foot-left', toMark: 'foot-right' },
      gaps,
      leastPiece(input, input.shell.rim.minStub, input.rows.hoop.fastener),
    ),
    cutBy: gaps.map((g) => g.id),
  }
}

export function framePlates(laid: Laid): FramePlates[] {
  return laid.input.frames.map((frame) => {
    const cutting = laid.shapes.filter((s) => cutsWeb(s, frame.station))
    return laid.memo.keep(`frame ${frame.id}`, [laid.token, ...cutting], () => framePair(laid, frame))
  })
}

function framePair(laid: Laid, frame: FrameDefinition): FramePlates {
  const { input, section, skin } = laid
  const t = input.shell.skin.thickness.value
  const { stretches, cutBy } = frameStretches(laid, frame)
  const member = frame.joint ? input.shell.jointFrame : input.shell.frame
  const metal = member.thickness.value
  // an end skin that laps over the barrel lies outside the mould line and pushes nothing in
  const under = frame.joint && input.shell.joint.over === 'barrel' ? input.ends.skin.thickness.value : 0
  const half = member.flange / 2
  const x0 = frame.station - half
  const x1 = frame.station + half
  const depth = t + under + metal / 2
  const base = {
    kind: (frame.joint ? 'joint-frame' : 'frame') as Plate['kind'],
    material: member.alloy,
    thickness: metal,
    g0: -section.floor,
    g1: section.floor,
    lie: 'hoop' as const,
    ring: null,
  }
  const says = frame.joint ? `joint frame ${frame.id} (${frame.joint})` : `hoop frame ${frame.id}`
  const strip = (x0: number, x1: number): OpeningShape[] => severed(skin, [-section.floor, section.floor], stretches, x0, x1)
  const outer: Plate = {
    ...base,
    part: `frame-${frame.id}`,
    face: 'outer flange',
    says,
    x0,
    x1,
    order: ORDER.member,
    development: unrolledAt(laid, depth, t, under),
    cuts: strip(x0, x1),
    marks: [
      {
        says: frame.joint ? 'centre of hat' : 'web',
        kind: 'centre',
        from: [frame.station, -section.floor],
        to: [frame.station, section.floor],
      },
    ],
  }
  const inside = t + under + member.height - metal / 2
  const [i0, i1] = innerFlange(input, frame)
  const inner: Plate = {
    ...base,
    part: `frame-${frame.id}`,
    face: frame.joint ? 'barrel-side lip' : 'inner flange',
    says,
    x0: i0,
    x1: i1,
    order: ORDER.inner,
    development: unrolledAt(laid, inside),
    cuts: strip(i0, i1),
    marks: frame.joint ? [] : outer.marks,
  }
  return { outer, inner, frame, stretches, cutBy }
}

/**
 * Stations the inner flange reaches. A hoop's lies on its web; a joint frame stands crown to the skin, open to the
 * inside so that its two rows can be bucked, and gives the barrel's lining the lip on the barrel side.
 */
export function innerFlange(input: ShellInput, frame: FrameDefinition): [number, number] {
  const half = flangeHalf(input, frame)
  if (!frame.joint) return [frame.station - half, frame.station + half]
  const { from, to } = barrelLip(input.shell)
  return frame.joint === 'nose' ? [frame.station + from, frame.station + to] : [frame.station - to, frame.station - from]
}
