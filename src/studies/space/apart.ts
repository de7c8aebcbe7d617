/**
 * Which way each thing goes when the coach is drawn apart, and how far: the skin outward, the floor and all under it down, layer
 * below layer, the lining in; the frames stay, so that one sees what the sheets were riveted to. m.
 */
import type { Design } from '../../derive/design.js'
import type { Part, PartKind } from '../../derive/nouns.js'
import { scale, unit, type Vec3 } from '../../maths/vec.js'
import type { Body } from './nouns.js'

/** How far the skin goes. */
const OUT = 0.85

/** Of the way the skin goes; in is less than nothing. What stands still is left out. */
const SHARE: Partial<Record<PartKind, number>> = {
  strake: 1,
  gore: 1,
  'crown-cap': 1,
  rim: 0.55,
  header: 0.3,
  post: 0.3,
  stringer: 0.3,
  lining: -0.3,
  'end-lining': -0.3,
  'trim-ring': -0.5,
}

/** How far below its place, m: what is taken off first goes farthest. */
const DOWN: Partial<Record<PartKind, number>> = {
  'floor-panel': 0.45,
  'wheel-box': 0.3,
  rail: 0.9,
  'cross-member': 0.9,
  outrigger: 0.9,
  'wheel-box-header': 0.9,
  'a-frame': 0.9,
  'chassis-plate': 0.9,
  'bay-bearer': 1.1,
  underbelly: 1.7,
}

/** Panes go farther than the sheets they close, tanks and wheels with the chassis. */
const PANE = 1.35
export const TANK: Vec3 = [0, 0, -1.35]
export const WHEEL: Vec3 = [0, 0, -0.9]

export function bodyOf(design: Design): Body {
  const { points } = design.section
  const { frames } = design.definition
  const [crown, toe] = [points[0].z, points[points.length - 1].z]
  const [nose, tail] = [frames[0].station, frames[frames.length - 1].station]
  return { nose, tail, reach: design.ends.reach, half: design.section.width / 2, middle: (crown + toe) / 2, rise: (crown - toe) / 2 }
}

export function apartOf(design: Design, { kind, centre, place }: Pick<Part, 'kind' | 'centre' | 'place'>): Vec3 {
  const down = DOWN[kind]
  if (down !== undefined) return [0, 0, -down]
  return scale(outwardAt(design, centre, place.end !== undefined), OUT * (SHARE[kind] ?? 0))
}

/** Out of the middle of the body: in the barrel square to its length, at an end out of the middle of the joint as well. */
function outwardAt(design: Design, [x, y, z]: Vec3, isEnd: boolean): Vec3 {
  const { nose, tail, middle } = bodyOf(design)
  const along = isEnd ? (x < (nose + tail) / 2 ? x - nose : x - tail) : 0
  const out: Vec3 = [along, y, z - middle]
  return along === 0 && y === 0 && z === middle ? [0, 0, 1] : unit(out)
}

export const paneApart = (design: Design, centre: Vec3, isEnd: boolean): Vec3 => scale(outwardAt(design, centre, isEnd), OUT * PANE)
