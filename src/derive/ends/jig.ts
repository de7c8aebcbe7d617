/**
 * The end jig: for each rib the contour its flange is bent and checked by, and where it bears on the jig; the joint frame's
 * bearings; and the diagonals that prove the jig square. Nose and tail are built on one jig, left ribs mirror right ones.
 * Thickness is never left to the reader: a locator's face is the metal's own outer face, under the sheets that come over it.
 */
import { rootBetween } from '../../maths/root.js'
import { at, type TangentChain, widest } from '../../maths/tangent-chain.js'
import type { ContourMark, Diagonal, EndJig, FrameLocator, JigTolerance, Point3, RibJig, RibLocator } from '../jig-nouns.js'
import type { Outline } from '../nouns.js'
import type { EndInput, Ground } from './ground.js'
import type { LocalEnd } from './local.js'
import { type Rib, ribPieces } from './members.js'
import { atHeight, atRise, type ContourPoint, contourAt, type Walked, type WebPlane, walkContour } from './rib-contour.js'
import { wrappedContour } from './wrapped-contour.js'
import type { GoreSheet } from './wrapped-strip.js'

/** Farthest apart two points of a contour's table stand, m: arcs between them keep to a few hundredths of a millimetre. */
const SPACING = 0.05
/** Waterlines marked on a template, m. */
const LEVELS = 0.1
/** Where nobody has said how well the jigs are set, m: common practice, no source. */
const JIG_TOLERANCE = 0.001

/** What of a rib hangs on the end alone, not on where nose and tail stand. */
export type RibShape = Omit<RibJig, 'locators'> & { readonly bearings: readonly Omit<RibLocator, 'station'>[] }

export function ribShapes(local: LocalEnd): RibShape[] {
  return local.ribs
    .filter((rib) => rib.phi > -1e-9)
    .map((rib) => shapeOf(local, rib))
    .sort((a, b) => a.azimuth - b.azimuth)
}

const nameOf = (rib: Pick<Rib, 'kind' | 'number'>): string => `${rib.kind}-${rib.number}`

function shapeOf(local: LocalEnd, rib: Rib): RibShape {
  const { ground } = local
  const { frame } = ground.input.shell
  const sheet = rib.kind === 'mid' ? local.wrapped?.gores[rib.number - 1].sheet : null
  const { walked, bearings, at } = sheet ? onSheet(local, rib, sheet, frame.rowOffset) : onLoft(ground, rib, frame.rowOffset)
  const twin = local.ribs.find((r) => r.kind === rib.kind && r.phi < -1e-9 && Math.abs(r.phi + rib.phi) < 1e-9)
  const [piece] = ribPieces(ground, rib, [])
  const run = (girth: number): number => rib.flange.lengthAt(rib.outer.sigmaAt(girth))
  const order = [...walked.points].sort((a, b) => a.bevel - b.bevel)
  const bevelAt = (p: ContourPoint): RibJig['leastBevel'] => ({ angle: p.bevel, z: p.z })
  const ends = piece
    ? [...at(rib.outer.sigmaAt(piece.from), 'rib starts', 'rib end'), ...at(rib.outer.sigmaAt(piece.to), 'rib ends', 'rib end')]
    : []
  const rows = ground.base === null ? [] : at(ground.base, 'base row', 'row')
  return {
    ribs: [nameOf(rib), ...(twin ? [nameOf(twin)] : [])],
    kind: rib.kind,
    azimuth: rib.phi,
    depth: rib.under,
    beside: frame.rowOffset,
    height: frame.height,
    outer: walked.outer,
    inner: walked.inner,
    spacing: SPACING,
    run: walked.run,
    bevel: walked.points.map((p) => p.bevel),
    leastBevel: bevelAt(order[0]),
    greatestBevel: bevelAt(order[order.length - 1]),
    flangeLength: piece ? run(piece.to) - run(piece.from) : 0,
    marks: [...bearings.map(({ point: _, ...mark }) => mark), ...ends, ...rows, ...waterlines(walked.outer)],
    bearings,
  }
}

interface Shape {
  readonly walked: Walked
  readonly bearings: RibShape['bearings']
  /** a mark where the rib's outer curve passes a section girth */
  readonly at: (sigma: number, says: string, kind: ContourMark['kind']) => ContourMark[]
}

type OfRib = Pick<Rib, 'phi' | 'under'>

function onLoft(ground: Ground, { phi, under }: OfRib, beside: number): Shape {
  const plane: WebPlane = { loft: ground.loft, phi, beside, depth: under }
  const top = ground.capSigma(phi)
  return {
    walked: walkContour(plane, top, ground.toe, ground.input.shell.frame.height, SPACING),
    bearings: bearingsOf(ground, plane, top),
    at: (sigma, says, kind) => [markAt(contourAt(plane, sigma), says, kind)],
  }
}

/** A mid rib of a wrapped gore follows its sheet: its marks stand on the contour's arcs, at the heights they have on the sheet. */
function onSheet({ ground }: LocalEnd, { phi, under }: OfRib, sheet: GoreSheet, beside: number): Shape {
  const walked = wrappedContour({ sheet, phi, beside, depth: under }, ground.input.shell.frame.height, SPACING)
  const { points, outer } = walked
  const level = (z: number, says: string, kind: ContourMark['kind']): ContourMark[] => {
    const found = atHeight(outer, z)
    return found ? [{ says, kind, z, ...found }] : []
  }
  const brow = atRise(points, outer, Math.PI / 4)
  const marks: ContourMark[] = [
    markAt(points[0], 'cap row', 'row'),
    ...(brow ? [{ says: 'brow', kind: 'level' as const, rise: Math.PI / 4, ...brow }] : []),
    ...level(widest(ground.loft.section).z, 'belt', 'level'),
    ...level(0, 'floor', 'level'),
    markAt(points[points.length - 1], 'toe', 'level'),
  ]
  const [c, s] = [Math.cos(phi), Math.sin(phi)]
  return {
    walked,
    bearings: marks.map((m) => ({ ...m, point: [m.r * c - beside * s, m.r * s + beside * c, m.z] as const })),
    at: (sigma, says, kind) => level(at(ground.loft.section, sigma).z, says, kind),
  }
}

const markAt = (p: ContourPoint, says: string, kind: ContourMark['kind']): ContourMark => ({
  says,
  kind,
  r: p.r,
  z: p.z,
  rise: Math.atan2(p.out[1], p.out[0]),
})

/** Cap row, brow (where the contour stands at 45 degrees), belt, floor, toe: those the contour passes between the cap and the toe. */
function bearingsOf(ground: Ground, plane: WebPlane, top: number): RibShape['bearings'] {
  const belt = widest(ground.loft.section).z
  const brow = where(plane, top, ground.toe, (p) => p.out[0] - p.out[1])
  const level = (z: number): ContourPoint | null => where(plane, top, ground.toe, (p) => z - p.z)
  const found: readonly (readonly [string, ContourMark['kind'], ContourPoint | null])[] = [
    ['cap row', 'row', contourAt(plane, top)],
    ['brow', 'level', brow],
    ['belt', 'level', level(belt)],
    ['floor', 'level', level(0)],
    ['toe', 'level', contourAt(plane, ground.toe)],
  ]
  const [c, s] = [Math.cos(plane.phi), Math.sin(plane.phi)]
  return found.flatMap(([says, kind, p]) =>
    p === null ? [] : [{ ...markAt(p, says, kind), point: [p.r * c - plane.beside * s, p.r * s + plane.beside * c, p.z] as const }],
  )
}

/** The contour's point where something that is below nought at the top and grows on the way down is nought; null where it is not. */
function where(plane: WebPlane, top: number, toe: number, past: (p: ContourPoint) => number): ContourPoint | null {
  const at = (sigma: number): number => past(contourAt(plane, sigma))
  const [first, last] = [at(top), at(toe)]
  if (first > 0 || last < 0) return null
  return contourAt(plane, rootBetween(at, { x: top, f: first }, { x: toe, f: last }, { x: 1e-12, f: 1e-11 }))
}

function waterlines(outer: Outline): ContourMark[] {
  const [high, low] = [outer[0][1], outer[outer.length - 1][1]]
  const out: ContourMark[] = []
  for (let k = Math.floor(high / LEVELS); k * LEVELS > low; k--) {
    const at = atHeight(outer, k * LEVELS)
    if (at) out.push({ says: `WL ${Math.round(k * LEVELS * 1000)}`, kind: 'waterline', z: k * LEVELS, ...at })
  }
  return out
}

/** The joint frame's outer face: under the barrel's sheet and the end's. */
export function jointLocators(input: Pick<EndInput, 'shell' | 'ends'>, chain: TangentChain): FrameLocator[] {
  const depth = input.shell.skin.thickness.value + input.ends.skin.thickness.value
  return sectionLocators(chain, depth, () => 0, [])
}

/** Bearings down a section: crown, brow, seams, belt, floor, toe. `more` says how much deeper the face lies at a girth. */
export function sectionLocators(
  chain: TangentChain,
  depth: number,
  more: (girth: number) => number,
  seams: readonly { readonly id: string; readonly girth: number }[],
): FrameLocator[] {
  const locator = (id: string, says: string, girth: number): FrameLocator => {
    const deep = depth + more(girth)
    const p = at(chain, girth, deep)
    return { id, says, y: p.y, z: p.z, depth: deep, rise: Math.PI / 2 - p.heading }
  }
  // the face meets WL 0 and stands at 45 degrees where heights and headings say; both grow on the way down
  const find = (past: (girth: number) => number): number | null => {
    if (past(0) > 0 || past(chain.length) < 0) return null
    let [a, b] = [0, chain.length]
    for (let i = 0; i < 60; i++) {
      const m = (a + b) / 2
      if (past(m) < 0) a = m
      else b = m
    }
    return b
  }
  const brow = find((g) => at(chain, g).heading - Math.PI / 4)
  const floor = find((g) => -at(chain, g, depth).z)
  const found = [
    locator('crown', 'crown', 0),
    ...(brow === null ? [] : [locator('brow', 'brow, 45°', brow)]),
    ...seams.map((s) => locator(s.id, s.id.replace('-', ' '), s.girth)),
    locator('belt', 'belt', widest(chain).girth),
    ...(floor === null ? [] : [locator('floor', 'floor', floor)]),
    locator('toe', 'toe', chain.length),
  ]
  return found.sort((a, b) => b.z - a.z)
}

/** A stated limit is three sigma; two free places add as their squares do, and so do two diagonals. */
export function jigTolerance(sigma: number | null, says: string): JigTolerance {
  const locator = sigma === null ? JIG_TOLERANCE : 3 * sigma
  return {
    locator,
    diagonal: Math.SQRT2 * locator,
    between: 2 * locator,
    source: sigma === null ? 'common practice, no source' : `three sigma of ${says}, as the definition has it`,
  }
}

export function endJig(
  local: LocalEnd,
  shapes: readonly RibShape[],
  process: EndInput['process'],
  stations: EndJig['jointStation'],
): EndJig {
  const { ground } = local
  const { shell, ends } = ground.input
  const joint = jointLocators(ground.input, ground.loft.section)
  return {
    ribs: shapes.map(({ bearings, ...shape }) => ({
      ...shape,
      locators: bearings.map(
        (b): RibLocator => ({ ...b, station: { nose: stations.nose - b.point[0], tail: stations.tail + b.point[0] } }),
      ),
    })),
    joint,
    jointStation: stations,
    thickness: { end: ends.skin.thickness.value, barrel: shell.skin.thickness.value },
    diagonals: diagonalsOf(local, shapes, joint),
    tolerance: jigTolerance(process?.endJigSigma ?? null, 'the end jig'),
  }
}

const apart = (a: Point3, b: Point3): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2])
const other = ([x, y, z]: Point3): Point3 => [x, -y, z]

/** Both hands are worked out each from its own places, so that a jig that is not alike on both hands would show. */
function diagonalsOf(local: LocalEnd, shapes: readonly RibShape[], joint: readonly FrameLocator[]): Diagonal[] {
  const corner = (id: string): Point3 | null => {
    const found = joint.find((l) => l.id === id)
    return found ? [0, found.y, found.z] : null
  }
  const crossed = (id: string, from: string, to: string, a: Point3 | null | undefined, b: Point3 | null): Diagonal[] =>
    a && b ? [{ id, from, to, right: apart(a, other(b)), left: apart(other(a), b) }] : []
  const bearing = (shape: RibShape, says: string): Point3 | undefined => shape.bearings.find((b) => b.says === says)?.point
  const centre = shapes.find((s) => s.azimuth < 1e-9)
  // on the centre rib the mark is on its rivet line, which lies in the centre plane, not on its web
  const tip = (says: string): Point3 | null => (centre ? tipAt(local, centre, says) : null)
  const pairs = shapes.filter((s) => s !== centre)
  const named = (s: RibShape): string => `${s.kind} ${s.ribs.map((id) => id.split('-')[1]).join('/')}`
  return [
    ...crossed('tip-floor', 'tip, floor', 'joint, floor', tip('floor'), corner('floor')),
    ...crossed('tip-belt', 'tip, belt', 'joint, belt', tip('belt'), corner('belt')),
    ...crossed('crown-floor', 'joint, crown', 'joint, floor', corner('crown'), corner('floor')),
    ...crossed('joint', 'joint, belt', 'joint, floor', corner('belt'), corner('floor')),
    ...pairs.flatMap((s) => crossed(`${s.ribs[0]}-floor`, `${named(s)}, floor`, 'joint, floor', bearing(s, 'floor'), corner('floor'))),
    ...pairs.flatMap((s) => crossed(`${s.ribs[0]}-cap`, `${named(s)}, cap row`, 'joint, floor', bearing(s, 'cap row'), corner('floor'))),
  ]
}

/** The rivet line of the centre rib, on its outer face, at the height of one of its bearings. */
function tipAt(local: LocalEnd, centre: RibShape, says: string): Point3 | null {
  const level = centre.bearings.find((b) => b.says === says)?.z
  if (level === undefined) return null
  const { ground } = local
  const sheet = centre.kind === 'mid' ? local.wrapped?.gores[(ground.gores - 1) / 2].sheet : null
  if (sheet) {
    const { outer } = wrappedContour({ sheet, phi: 0, beside: 0, depth: centre.depth }, centre.height, SPACING)
    const found = atHeight(outer, level)
    return found && [found.r, 0, level]
  }
  const plane: WebPlane = { loft: ground.loft, phi: 0, beside: 0, depth: centre.depth }
  const p = where(plane, ground.capSigma(0), ground.toe, (each) => level - each.z)
  return p ? [p.r, 0, p.z] : null
}
