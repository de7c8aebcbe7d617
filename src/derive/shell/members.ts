/**
 * The members under the skin as plates: frame flanges, stringer legs, edge channels, and the layers of other trades
 * (end skins, underbelly) that barrel fasteners pass through. Each stops short of what crosses it.
 */

import type { FrameDefinition } from '../../definition/types.js'
import { type DepthZone, type Development, developAt, developed, undeveloped } from '../../maths/development.js'
import { girthAtZ } from '../../maths/tangent-chain.js'
import type { Memo } from '../memo.js'
import { barrelOf, type ShellInput } from './input.js'
import { chordAtLength, type OpeningShape, widestChord } from './opening-shape.js'
import { lieOf, type Plate } from './plates.js'
import type { Section } from './section.js'
import { lapsOf, ORDER } from './sheets.js'

/** A stretch of a member and what it stops at, at either end. */
export interface Stretch {
  readonly from: number
  readonly to: number
  readonly fromMark: string
  readonly toMark: string
}

export interface Laid {
  readonly input: ShellInput
  readonly section: Section
  readonly skin: Development
  readonly shapes: readonly OpeningShape[]
  readonly memo: Memo
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
  const framed = input.frames.some((f) => f.station > shape.x0 && f.station < shape.x1)
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

export function zonesAt(input: ShellInput, depth: number, inLap: number): DepthZone[] {
  return lapsOf(input).map((lap) => ({ from: lap.girth - lap.half, to: lap.girth + lap.half, depth: depth + inLap }))
}

/** Half the flange a frame shows to the skin, m. */
export function flangeHalf(input: ShellInput, frame: FrameDefinition): number {
  return (frame.joint ? input.shell.jointFrame.flange : input.shell.frame.flange) / 2
}

/** End fasteners stand this many diameters from a member's end: preferred minimum, common practice (AC 43.13-1B). */
export const END_DISTANCE = 2.5

/** The shop's least stub, but never a piece without room for two end fasteners at the closest pitch. m */
function leastPiece(input: ShellInput, stub: number, fastener: string): number {
  return Math.max(stub, (2 * END_DISTANCE + input.rules.minPitch) * diameterOf(input, fastener))
}

/** Stretches of a frame that are left: foot to foot in signed girth, less the openings that cut its web. */
export function frameStretches(laid: Laid, frame: FrameDefinition): { stretches: Stretch[]; cutBy: string[] } {
  const { input, section, skin } = laid
  const half = flangeHalf(input, frame)
  const gaps = laid.shapes
    .filter((s) => s.x0 < frame.station && s.x1 > frame.station)
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

/** A stretch less gaps; what is left shorter than the least stub is not made. */
export function lessGaps(whole: Stretch, gaps: readonly { from: number; to: number; id: string }[], least: number): Stretch[] {
  const out: Stretch[] = []
  let at = whole.from
  let mark = whole.fromMark
  for (const gap of gaps) {
    if (gap.to <= at || gap.from >= whole.to) continue
    if (gap.from - at >= least) out.push({ from: at, to: gap.from, fromMark: mark, toMark: gap.id })
    at = Math.max(at, gap.to)
    mark = gap.id
  }
  if (whole.to - at >= least) out.push({ from: at, to: whole.to, fromMark: mark, toMark: whole.toMark })
  return out
}

/** A straight-sided cut across a strip, so that a severed frame is drawn and measured like any other cut plate. */
export function severed(skin: Development, whole: [number, number], stretches: readonly Stretch[], x0: number, x1: number): OpeningShape[] {
  const cuts: OpeningShape[] = []
  let at = whole[0]
  const add = (from: number, to: number, id: string): void => {
    if (to - from < 1e-9) return
    cuts.push({
      id,
      says: id,
      surface: 'wheel',
      side: 'centre',
      x0: x0 - 1,
      x1: x1 + 1,
      v0: developed(skin, from),
      v1: developed(skin, to),
      corner: 0,
      definition: null,
    })
  }
  for (const s of stretches) {
    add(at, s.from, s.fromMark)
    at = s.to
  }
  add(at, whole[1], stretches.length > 0 ? stretches[stretches.length - 1].toMark : 'all')
  return cuts
}

export function framePlates(laid: Laid): FramePlates[] {
  return laid.input.frames.map((frame) => {
    const cutting = laid.shapes.filter((s) => s.x0 < frame.station && s.x1 > frame.station)
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
    development: developAt(section.withFlange, depth, zonesAt(input, depth, t)),
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
    development: developAt(section.withFlange, inside),
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
  const lip = 2 * input.shell.frame.rowOffset
  return frame.joint === 'nose' ? [frame.station + half, frame.station + half + lip] : [frame.station - half - lip, frame.station - half]
}

export interface StringerPlate {
  readonly plate: Plate
  readonly seam: string
  readonly side: 'left' | 'right'
  readonly girth: number
  readonly fromMark: string
  readonly toMark: string
}

/** Stringer legs behind each seam, bay by bay, stopping at frames and at the rims of openings that cross the seam. */
export function stringerPlates(laid: Laid): StringerPlate[] {
  const { input, section, skin } = laid
  const t = input.shell.skin.thickness.value
  const { leg, thickness, alloy } = input.shell.stringer
  const gap = input.shell.memberGap
  const depth = 2 * t + thickness.value / 2
  const development = developAt(section.withFlange, depth)
  return lapsOf(input).flatMap((lap) => {
    const v = developed(skin, lap.girth)
    const crossing = laid.shapes.filter((s) => v > s.v0 && v < s.v1)
    return laid.memo.keep(`stringers ${lap.seam} ${lap.side}`, [laid.token, ...crossing], () => {
      const out: StringerPlate[] = []
      const gaps = laid.shapes.flatMap((s) => {
        const chord = chordAtLength(s, v)
        return chord ? [{ from: chord[0] - memberStop(input, s), to: chord[1] + memberStop(input, s), id: s.id }] : []
      })
      gaps.sort((a, b) => a.from - b.from)
      for (let i = 0; i + 1 < input.frames.length; i++) {
        const a = input.frames[i]
        const b = input.frames[i + 1]
        const bay: Stretch = {
          from: a.station + flangeHalf(input, a) + gap,
          to: b.station - flangeHalf(input, b) - gap,
          fromMark: a.id,
          toMark: b.id,
        }
        for (const s of lessGaps(bay, gaps, leastPiece(input, input.shell.rim.minStub / 2, input.rows.seam.fastener))) {
          const g0 = lap.girth - leg / 2
          const g1 = lap.girth + leg / 2
          out.push({
            seam: lap.seam,
            side: lap.side,
            girth: lap.girth,
            fromMark: s.fromMark,
            toMark: s.toMark,
            plate: {
              part: `stringer-${lap.seam}-${lap.side}-${s.fromMark}-${s.toMark}`,
              face: 'skin leg',
              kind: 'stringer',
              says: `stringer behind ${lap.seam} ${lap.side}, ${s.fromMark} to ${s.toMark}`,
              material: alloy,
              thickness: thickness.value,
              x0: s.from,
              x1: s.to,
              g0,
              g1,
              order: ORDER.member,
              development,
              lie: lieOf(g0, g1),
              cuts: [],
              ring: null,
              marks: [],
            },
          })
        }
      }
      return out
    })
  })
}

/** Where the base row stands: the middle of the floor panel's edge; null without a floor. Unsigned girth, m. */
export function baseGirth(input: ShellInput, section: Section): number | null {
  return input.floor ? girthAtZ(section.chain, -input.floor.thickness / 2) : null
}

export function channelPlates(laid: Laid): Plate[] {
  const { input, section, skin } = laid
  const base = baseGirth(input, section)
  if (base === null) return []
  // the ends' own channels start inside the joint laps, where the joint rows stand
  const { first, last } = barrelOf(input)
  const clear = input.shell.joint.overlap / 2 + input.shell.memberGap
  const [x0, x1] = [first + clear, last - clear]
  const c = input.shell.edgeChannel
  const depth = input.shell.skin.thickness.value + c.thickness.value / 2
  const development = developAt(section.withFlange, depth)
  return (['left', 'right'] as const).map((side) => {
    const centre = side === 'right' ? base : -base
    const [g0, g1] = [centre - c.height / 2, centre + c.height / 2]
    const v = developed(skin, centre)
    const crossing = laid.shapes.filter((s) => v > s.v0 && v < s.v1)
    return laid.memo.keep(`channel ${side}`, [laid.token, ...crossing], () => {
      const cuts = laid.shapes.flatMap((s): OpeningShape[] => {
        const chord = chordAtLength(s, v)
        if (!chord) return []
        return [
          {
            ...s,
            x0: chord[0] - memberStop(input, s),
            x1: chord[1] + memberStop(input, s),
            v0: developed(skin, g0) - 1,
            v1: developed(skin, g1) + 1,
            corner: 0,
          },
        ]
      })
      return {
        part: `edge-channel-${side}`,
        face: 'outer leg',
        kind: 'edge-channel' as const,
        says: `floor edge channel, ${side} side`,
        material: c.alloy,
        thickness: c.thickness.value,
        x0,
        x1,
        g0,
        g1,
        order: ORDER.member,
        development,
        lie: lieOf(g0, g1),
        cuts,
        ring: null,
        marks: [],
      }
    })
  })
}

/** Layers that other trades will make: their holes are placed here, their parts come with their own issue. */
export function foreignPlates(laid: Laid): ForeignPlates {
  return laid.memo.keep('foreign', [laid.token], () => layForeign(laid))
}

export interface ForeignPlates {
  readonly nose: Plate
  readonly tail: Plate
  readonly belly: readonly Plate[]
}

function layForeign(laid: Laid): ForeignPlates {
  const { input, section } = laid
  const { x0, x1, first, last } = barrelOf(input)
  const t = input.shell.skin.thickness.value
  const end = input.ends.skin
  const over = input.shell.joint.over === 'barrel'
  const depth = over ? t + end.thickness.value / 2 : -end.thickness.value / 2
  const skin = (part: string, says: string, from: number, to: number): Plate => ({
    part,
    face: 'sheet',
    kind: 'not-derived',
    says,
    material: end.alloy,
    thickness: end.thickness.value,
    x0: from,
    x1: to,
    g0: -section.sheetEdge,
    g1: section.sheetEdge,
    order: over ? ORDER.end : -1,
    development: developAt(section.withFlange, depth, over ? zonesAt(input, depth, t) : []),
    lie: 'centre',
    cuts: [],
    ring: null,
    marks: [],
  })
  const u = input.shell.underbelly
  return {
    nose: skin('nose-skin', 'nose skins', first - 0.5, first + input.shell.joint.overlap / 2),
    tail: skin('tail-skin', 'tail skins', last - input.shell.joint.overlap / 2, last + 0.5),
    belly: (['left', 'right'] as const).map((side) => ({
      part: 'underbelly',
      face: 'sheet',
      kind: 'not-derived' as const,
      says: 'underbelly sheet',
      material: u.alloy,
      thickness: u.thickness.value,
      x0,
      x1,
      g0: side === 'right' ? section.toe : -section.sheetEdge,
      g1: side === 'right' ? section.sheetEdge : -section.toe,
      order: ORDER.belly,
      development: developAt(section.withFlange, t + u.thickness.value / 2),
      lie: side === 'right' ? ('right-hand' as const) : ('left-hand' as const),
      cuts: [],
      ring: null,
      marks: [],
    })),
  }
}
