/**
 * The outline of an opening on the developed skin: x station, v signed length along the skin's own mid surface.
 * A rounded rectangle; a wheel opening is one that runs out through the lower edge of the sheet.
 */

import type { OpeningDefinition, Side } from '../../definition/types.js'
import { type Development, developed } from '../../maths/development.js'
import { roundedRectangle, type Vertex } from '../../maths/outline.js'
import { girthAtZ } from '../../maths/tangent-chain.js'
import type { Memo } from '../memo.js'
import type { ShellInput } from './input.js'
import type { Section } from './section.js'

export interface OpeningShape {
  readonly id: string
  readonly says: string
  readonly surface: 'right' | 'left' | 'roof' | 'wheel'
  readonly side: Side
  readonly x0: number
  readonly x1: number
  readonly v0: number
  readonly v1: number
  readonly corner: number
  readonly definition: OpeningDefinition | null
}

/** Openings on barrel and roof, then one wheel opening a side. Ends (nose, tail) are not shapes of the barrel. */
export function openingShapes(input: ShellInput, section: Section, skin: Development, memo: Memo): OpeningShape[] {
  const shapes: OpeningShape[] = []
  for (const o of input.openings) {
    if (o.surface === 'nose' || o.surface === 'tail') continue
    shapes.push(memo.keep(`shape ${o.id}`, [o, section, skin], () => shapeOf(o, o.surface as 'right' | 'left' | 'roof', section, skin)))
  }
  for (const side of input.gear && input.gear.spindles.length > 0 ? (['left', 'right'] as const) : []) {
    shapes.push(memo.keep(`wheel ${side}`, [input.gear, section, skin], () => wheelShape(input, section, skin, side)))
  }
  return shapes
}

function shapeOf(o: OpeningDefinition, surface: 'right' | 'left' | 'roof', section: Section, skin: Development): OpeningShape {
  const [g0, g1] = girthsOf(o, section)
  return {
    id: o.id,
    says: o.says,
    surface,
    side: surface === 'roof' ? 'centre' : surface,
    x0: o.station - o.width / 2,
    x1: o.station + o.width / 2,
    v0: developed(skin, g0),
    v1: developed(skin, g1),
    corner: o.corner,
    definition: o,
  }
}

/** Signed girths of an opening's lower and upper limits, ascending. */
function girthsOf(o: OpeningDefinition, section: Section): [number, number] {
  if (o.surface === 'roof' || o.waterline === null) return [o.girth - o.height / 2, o.girth + o.height / 2]
  const head = girthAtZ(section.chain, o.waterline + o.height / 2)
  const sill = girthAtZ(section.chain, o.waterline - o.height / 2)
  if (head === null || sill === null) throw new Error(`opening ${o.id} lies outside the section`)
  return o.surface === 'right' ? [head, sill] : [-sill, -head]
}

function wheelShape(input: ShellInput, section: Section, skin: Development, side: 'left' | 'right'): OpeningShape {
  const gear = input.gear
  if (!gear) throw new Error('no running gear')
  const top = girthAtZ(section.chain, gear.wheelOpening.top)
  if (top === null) throw new Error('the wheel opening lies outside the section')
  const spindles = [...gear.spindles].sort((a, b) => a - b)
  // far enough past the sheet's edge that no lower corner is ever seen
  const beyond = section.sheetEdge + 2 * gear.wheelOpening.corner + 0.1
  const v = [developed(skin, side === 'right' ? top : -beyond), developed(skin, side === 'right' ? beyond : -top)]
  return {
    id: side === 'right' ? 'wheel-right' : 'wheel-left',
    says: `${side} wheel opening`,
    surface: 'wheel',
    side,
    x0: spindles[0] - gear.wheelOpening.half,
    x1: spindles[spindles.length - 1] + gear.wheelOpening.half,
    v0: v[0],
    v1: v[1],
    corner: gear.wheelOpening.corner,
    definition: null,
  }
}

/** Whether an opening cuts through the web of a frame at this station. */
export const cutsWeb = (s: OpeningShape, station: number): boolean => s.x0 < station && s.x1 > station

/** The outline moved outward by a distance; a square corner grows round. */
export function grown(s: OpeningShape, by: number): OpeningShape {
  return { ...s, x0: s.x0 - by, x1: s.x1 + by, v0: s.v0 - by, v1: s.v1 + by, corner: s.corner + by }
}

export function outlineOf(s: OpeningShape): Vertex[] {
  return roundedRectangle(s.x0, s.v0, s.x1, s.v1, s.corner)
}

/** Strictly inside the cut. */
export function contains(s: OpeningShape, x: number, v: number): boolean {
  return x > s.x0 && x < s.x1 && v > s.v0 && v < s.v1 && signedDistance(s, x, v) < -1e-12
}

/** Distance to the outline, negative inside; exact for a rounded rectangle. m. */
export function signedDistance(s: OpeningShape, x: number, v: number): number {
  const r = Math.min(s.corner, (s.x1 - s.x0) / 2, (s.v1 - s.v0) / 2)
  const dx = Math.abs(x - (s.x0 + s.x1) / 2) - (s.x1 - s.x0) / 2 + r
  const dv = Math.abs(v - (s.v0 + s.v1) / 2) - (s.v1 - s.v0) / 2 + r
  // beyond a corner's centre both ways the corner's arc is nearest, else a straight side
  return (dx > 0 && dv > 0 ? Math.sqrt(dx * dx + dv * dv) : Math.max(dx, dv)) - r
}

/** The stretch of v that is cut away at a station, or null. */
export function chordAtStation(s: OpeningShape, x: number): [number, number] | null {
  return chord(x, s.x0, s.x1, s.v0, s.v1, s.corner)
}

/** The stretch of station that is cut away at a developed length, or null. */
export function chordAtLength(s: OpeningShape, v: number): [number, number] | null {
  return chord(v, s.v0, s.v1, s.x0, s.x1, s.corner)
}

/**
 * The stretch of station that members and rows leave free beside a cut at a developed length: as far as the cut grown all
 * round by a distance, so that at a corner, where the rim ring runs slantwise, they stop short of it too. Null where the cut
 * itself does not reach.
 */
export function gapAtLength(s: OpeningShape, v: number, by: number): [number, number] | null {
  return v > s.v0 && v < s.v1 ? chordAtLength(grown(s, by), v) : null
}

function chord(at: number, a0: number, a1: number, b0: number, b1: number, corner: number): [number, number] | null {
  if (at <= a0 || at >= a1) return null
  const r = Math.min(corner, (a1 - a0) / 2, (b1 - b0) / 2)
  const into = r - Math.min(at - a0, a1 - at)
  const inset = into > 0 ? r - Math.sqrt(Math.max(0, r * r - into * into)) : 0
  return [b0 + inset, b1 - inset]
}

/** The longest cut over a band of stations (a frame's flange), or null where none of it is cut. */
export function widestChord(s: OpeningShape, from: number, to: number): [number, number] | null {
  const r = Math.min(s.corner, (s.x1 - s.x0) / 2)
  const middle = Math.min(Math.max((s.x0 + s.x1) / 2, from), to)
  const flat = Math.min(Math.max(middle, s.x0 + r), s.x1 - r)
  return chordAtStation(s, Math.min(Math.max(flat, from), to))
}
