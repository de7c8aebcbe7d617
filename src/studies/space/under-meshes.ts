/** Floor, chassis and what hangs under it: boards, channels, boxes, sheets. */
import type { Design } from '../../derive/design.js'
import type { Part, Pattern } from '../../derive/nouns.js'
import type { Member } from '../../derive/under-nouns.js'
import type { Vec3 } from '../../maths/vec.js'
import { board, box, type Draft, face, grid, lay, meshOf, newDraft } from './build.js'
import type { Mesh } from './nouns.js'
import { type Point, regionOf, ringOf } from './region.js'

const ringsOf = ({ outline, cuts }: Pattern): readonly (readonly Point[])[] =>
  [outline, ...cuts.map((cut) => cut.outline)].map((each) => ringOf(each, 5))

/** The mesh of a part of floor or chassis; null for what is none. */
export function underMesh({ under, definition }: Design, part: Part): Mesh | null {
  const draft = newDraft()
  const member = under.chassis?.members.find((each) => each.part === part.id)
  if (member) layMember(draft, member, part, definition.chassis?.outrigger?.tip ?? null)
  else if (part.kind === 'floor-panel') {
    const [pattern] = part.patterns
    const [, , middle] = part.centre
    const half = pattern.thickness / 2
    const rings = ringsOf(pattern).map((ring) => ring.map(([x, y]) => [pattern.flat.origin.station + x, y] as const))
    board(draft, rings, middle - half, middle + half)
  } else if (part.kind === 'underbelly') {
    const [pattern] = part.patterns
    const rings = ringsOf(pattern)
    // seen from below: left is up the sheet
    lay(draft, regionOf(rings, ...grid(rings)), (x, y) => [pattern.flat.origin.station + x, -y, part.centre[2]])
  } else if (part.kind === 'chassis-plate') {
    const [pattern] = part.patterns
    const { station, girth } = pattern.flat.origin
    const half = pattern.thickness / 2
    board(
      draft,
      ringsOf(pattern).map((ring) => ring.map(([x, y]) => [station + x, girth + y] as const)),
      part.centre[2] - half,
      part.centre[2] + half,
    )
  } else if (part.kind === 'wheel-box') {
    const wheels = under.gear?.boxes.find((each) => each.part === part.id)
    if (!wheels) return null
    const hand = wheels.side === 'left' ? -1 : 1
    const [x, y, z] = [wheels.x, wheels.y.map((v) => hand * v), [0, wheels.z[1]]]
    const at = (i: number, j: number, k: number): Vec3 => [x[i], y[j], z[k]]
    face(draft, [at(0, 0, 1), at(1, 0, 1), at(1, 1, 1), at(0, 1, 1)])
    face(draft, [at(0, 0, 0), at(1, 0, 0), at(1, 0, 1), at(0, 0, 1)])
    for (const i of [0, 1]) face(draft, [at(i, 0, 0), at(i, 1, 0), at(i, 1, 1), at(i, 0, 1)])
  } else if (part.kind === 'bay-bearer') {
    const bay = definition.chassis?.bays.find(({ id }) => part.id === `bearer-${id}-left` || part.id === `bearer-${id}-right`)
    if (!bay) return null
    const long = Math.max(...part.patterns[0].outline.map((p) => p[0]))
    const [middle, y, z] = part.centre
    const [x0, x1, hand] = [middle - long / 2, middle + long / 2, part.side === 'left' ? 1 : -1]
    face(draft, [
      [x0, y, z],
      [x1, y, z],
      [x1, y, z + bay.bearer],
      [x0, y, z + bay.bearer],
    ])
    face(draft, [
      [x0, y, z],
      [x1, y, z],
      [x1, y + hand * bay.bearer, z],
      [x0, y + hand * bay.bearer, z],
    ])
  } else return null
  return meshOf(draft)
}

/** A pressed channel by its web and its two flanges; the web of a rail with its holes. */
function layMember(draft: Draft, { kind, plan, top, bottom }: Member, part: Part, tip: number | null): void {
  const outboard = [...plan].map(([x, y]): Point => [x, y])
  const widest = Math.max(...outboard.map(([, y]) => Math.abs(y)))
  const foremost = Math.min(...outboard.map(([x]) => x))
  const isForward = kind === 'cross-member' || kind === 'outrigger'
  /** Cross-members and outriggers have their web forward, rails and headers outboard; a leg of the A-frame by its outer face. */
  const onWeb = ([x, y]: Point): boolean => (isForward ? x - foremost < 1e-9 : widest - Math.abs(y) < 1e-9)
  const corners = kind === 'a-frame' ? legFrom(outboard) : webFirst(outboard, onWeb)
  const inner = Math.min(...corners.map(([, y]) => Math.abs(y)))
  const low = ([, y]: Point): number => (kind === 'outrigger' && tip !== null && Math.abs(y) > inner + 1e-9 ? top - tip : bottom)
  const at = (p: Point, z: number): Vec3 => [p[0], p[1], z]
  face(
    draft,
    corners.map((p) => at(p, top)),
  )
  face(
    draft,
    corners.map((p) => at(p, low(p))),
  )
  const [a, b] = corners
  const [pattern] = part.patterns
  if (kind !== 'rail' || !pattern || pattern.cuts.length === 0) {
    face(draft, [at(a, low(a)), at(b, low(b)), at(b, top), at(a, top)])
    return
  }
  const sign = pattern.flat.x === 'aft' ? 1 : -1
  const { station } = pattern.flat.origin
  const [x0, x1] = [Math.min(a[0], b[0]), Math.max(a[0], b[0])]
  const middle = (top + bottom) / 2
  const holes = pattern.cuts.map(({ outline }) => ringOf(outline, 6).map(([x, y]): Point => [station + sign * x, middle + y]))
  const web: Point[] = [
    [x0, bottom],
    [x1, bottom],
    [x1, top],
    [x0, top],
  ]
  lay(draft, regionOf([web, ...holes], ...grid([web])), (x, z) => [x, a[1], z])
}

/** The corners turned so that the first two are the web's. */
function webFirst(corners: readonly Point[], onWeb: (p: Point) => boolean): readonly Point[] {
  const n = corners.length
  const start = corners.findIndex((p, i) => onWeb(p) && onWeb(corners[(i + 1) % n]))
  return start < 0 ? corners : corners.map((_, i) => corners[(start + i) % n])
}

/** The outer face of a leg is its longest edge. */
function legFrom(corners: readonly Point[]): readonly Point[] {
  const n = corners.length
  const long = corners.map((p, i) => Math.hypot(corners[(i + 1) % n][0] - p[0], corners[(i + 1) % n][1] - p[1]))
  const start = long.indexOf(Math.max(...long))
  return corners.map((_, i) => corners[(start + i) % n])
}

/** Corners a wheel is drawn round. */
const ROUND = 40

/** Both wheels and the tube of an axle. */
export function axleMesh(design: Design, axle: number): Mesh | null {
  const { gear } = design.under
  const wheel = design.definition.gear?.wheel
  const tube = gear?.tubes.find((each) => each.axle === axle)
  if (!gear || !wheel || !tube) return null
  const draft = newDraft()
  const z = tube.spindleZ ?? (gear.ground ?? 0) + wheel.radius
  for (const hand of [-1, 1]) {
    const rim = (y: number, r: number): Vec3[] =>
      Array.from({ length: ROUND }, (_, i) => {
        const a = (i * 2 * Math.PI) / ROUND
        return [tube.spindle + r * Math.cos(a), y, z + r * Math.sin(a)]
      })
    const [inner, outer] = [hand * (wheel.y - wheel.width / 2), hand * (wheel.y + wheel.width / 2)]
    const [a, b] = [rim(inner, wheel.radius), rim(outer, wheel.radius)]
    face(draft, a)
    face(draft, b)
    const first = draft.points.length
    draft.points.push(...a, ...b)
    for (let i = 0; i < ROUND; i++) {
      const next = (i + 1) % ROUND
      draft.triangles.push(first + i, first + next, first + ROUND + next, first + i, first + ROUND + next, first + ROUND + i)
    }
  }
  const { tubeZ } = gear
  if (tubeZ) {
    const half = (tubeZ[1] - tubeZ[0]) / 2
    const reach = wheel.y - wheel.width / 2
    box(draft, [tube.station - half, tube.station + half], [-reach, reach], tubeZ)
  }
  return meshOf(draft)
}

export function bayMesh(bay: NonNullable<Design['under']['chassis']>['bays'][number]): Mesh {
  const draft = newDraft()
  box(draft, bay.x, bay.y, bay.z)
  return meshOf(draft)
}
