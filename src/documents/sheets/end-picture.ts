/** The nose with its gores in space, and the same gores as flat blanks beside it, at one scale: a picture, not a sheet to work from. */
import type { Design } from '../../derive/design.js'
import type { Outline } from '../../derive/nouns.js'
import { lettered, textWidth } from '../drawing/lettering.js'
import { circles, FINE, letter, type Mark, OUTLINE, type Page, path, polyline, THIN } from '../drawing/page.js'
import { contour } from '../drawing/section-curve.js'
import { flatten } from '../drawing/view.js'

export interface Flat {
  readonly part: string
  readonly outline: Outline
  readonly holes: { readonly x: readonly number[]; readonly y: readonly number[] }
}

type P3 = readonly [number, number, number]
type P2 = readonly [number, number]

const SCALE = 20
const HEIGHT = 178
/** The eye stands ahead, above and to the right of the coach. rad */
const YAW = (32 * Math.PI) / 180
const PITCH = (18 * Math.PI) / 180
const FLATS_FROM = 165
const GAP = 5
const BESIDE = 'and the blanks they are formed from'

export function endPicture(design: Design, flats: readonly Flat[]): Page {
  const nose = design.definition.frames.find((f) => f.joint === 'nose')
  if (!nose) throw new Error('no frame carries the nose')
  const blanks = flat(flats)
  return {
    name: 'end',
    says: `The nose of ${design.definition.coach.name}: its gores in space and flat`,
    widthMm: Math.ceil(Math.max(blanks.right, FLATS_FROM + textWidth(BESIDE, 3.5, true)) + 8),
    heightMm: HEIGHT,
    marks: [...inSpace(design, nose.station), ...blanks.marks, ...words(design)],
  }
}

/** Paper place of a point of the nose, and how near the eye it is; local axes x outward, y right, z up, m. */
function seen([x, y, z]: P3): { readonly at: P2; readonly near: number } {
  const [c, s] = [Math.cos(YAW), Math.sin(YAW)]
  // seen from ahead, right of travel is on the left of the paper
  const across = -y * c + x * s
  const ahead = x * c + y * s
  const up = z * Math.cos(PITCH) - ahead * Math.sin(PITCH)
  return { at: [72 + (across * 1000) / SCALE, 118 - (up * 1000) / SCALE], near: ahead * Math.cos(PITCH) + z * Math.sin(PITCH) }
}

function inSpace(design: Design, joint: number): Mark[] {
  const { lines } = design.ends.drawn
  const down = lines
    .filter((l) => l.kind === 'seam' || l.kind === 'mid' || l.kind === 'joint')
    .sort((a, b) => azimuthOf(b.points) - azimuthOf(a.points))
  const facets = down.slice(1).flatMap((right, i) => quads(down[i].points, right.points))
  const cap = lines.find((l) => l.kind === 'cap')
  const ink = (kind: string): Mark[] =>
    lines
      .filter((l) => l.kind === kind && nearOf(l.points).length > 1)
      .map((l) =>
        polyline(
          nearOf(l.points).map((p) => seen(p).at),
          { width: kind === 'seam' ? OUTLINE : THIN, type: kind === 'mid' ? 'long-dash-dot' : 'continuous' },
        ),
      )
  const rivets = design.rows.filter((r) => r.end?.which === 'nose' && r.kind !== 'toe' && r.kind !== 'lining')
  const dots = rivets.flatMap((r) =>
    r.station.flatMap((x, i) => {
      const place: P3 = [joint - x, r.end?.y[i] ?? 0, r.waterline[i]]
      const { at } = seen(place)
      return isNear(place) ? [at[0], at[1], 0.35] : []
    }),
  )
  const openings = design.openings.filter((o) => o.surface === 'nose' && o.end)
  return [
    ...facets
      .sort((a, b) => a.near - b.near)
      .map((f) => path([{ points: f.corners.map(([x, y]) => [x, y, 0] as const), closed: true }], { width: null, fill: f.tone })),
    ...(cap
      ? [path([{ points: domed(design, cap.points).map((p) => [...seen(p).at, 0] as const), closed: true }], { width: null, fill: 0.93 })]
      : []),
    circles(dots, { width: FINE, fill: 0.35 }),
    ...ink('mid'),
    ...ink('seam'),
    ...ink('joint'),
    ...ink('cap'),
    ...ink('floor'),
    ...ink('toe'),
    ...openings.map((o) =>
      path([{ points: (o.end?.loop ?? []).map(([x, y, z]) => [...seen([joint - x, y, z]).at, 0] as const), closed: true }], {
        width: OUTLINE,
        fill: 1,
      }),
    ),
  ]
}

/** The cap's edge closed over the crown along the section, so that the cap stands as high as it does. */
function domed(design: Design, edge: readonly P3[]): readonly P3[] {
  const end = Math.abs(edge[0][1])
  const section = contour(design.section.points, 0)
  const over = flatten(section, 24, false).filter(([y]) => y < end)
  return [...edge, ...[...over].reverse().map(([y, z]): P3 => [0, -y, z]), ...over.map(([y, z]): P3 => [0, y, z])]
}

const azimuthOf = (points: readonly P3[]): number => {
  const [x, y] = points[points.length - 1]
  return Math.atan2(y, x)
}

/** On the side of the end that faces the eye. */
const isNear = ([x, y]: P3): boolean => x * Math.cos(YAW) + y * Math.sin(YAW) > 0.12 * Math.hypot(x, y)

/** The stretch of a line that faces the eye. */
const nearOf = (points: readonly P3[]): readonly P3[] => points.filter(isNear)

interface Facet {
  readonly corners: readonly P2[]
  readonly near: number
  readonly tone: number
}

/** Four-cornered pieces between two lines of as many points, toned by how far they turn from the light. */
function quads(a: readonly P3[], b: readonly P3[]): Facet[] {
  return a.slice(1).map((_, i) => {
    const [p, q, r, s] = [a[i], b[i], b[i + 1], a[i + 1]]
    const [u, v] = [sub(r, p), sub(s, q)]
    const n = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]]
    const size = Math.hypot(n[0], n[1], n[2]) || 1
    const light = Math.abs(n[0] * 0.5 + n[1] * 0.35 + n[2] * 0.79) / size
    return {
      corners: [p, q, r, s].map((c) => seen(c).at),
      near: [p, q, r, s].reduce((sum, c) => sum + seen(c).near, 0) / 4,
      tone: 0.72 + 0.24 * light,
    }
  })
}

const sub = (a: P3, b: P3): P3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]]

/** Blanks hang from their upper ends, side by side. */
function flat(flats: readonly Flat[]): { readonly marks: readonly Mark[]; readonly right: number } {
  const marks: Mark[] = []
  let left = FLATS_FROM
  for (const { part, outline, holes } of flats) {
    const points = flatten(outline, 8).map(([x, y]): P2 => [(y * 1000) / SCALE, (x * 1000) / SCALE])
    const [x0, x1, y0] = [Math.min(...points.map((p) => p[0])), Math.max(...points.map((p) => p[0])), Math.min(...points.map((p) => p[1]))]
    const at = ([x, y]: P2): readonly [number, number, number] => [left + x - x0, 20 + y - y0, 0]
    marks.push(path([{ points: points.map(at), closed: true }], { width: OUTLINE, fill: 0.93 }))
    const dots = holes.x.flatMap((x, i) => {
      const [px, py] = at([(holes.y[i] * 1000) / SCALE, (x * 1000) / SCALE])
      return [px, py, 0.35]
    })
    marks.push(circles(dots, { width: FINE, fill: 0.2 }))
    marks.push(
      letter(left + (x1 - x0) / 2, HEIGHT - 8, lettered(part.replace(/^nose-/, '').replace('-', ' ')), { height: 2.5, anchor: 'middle' }),
    )
    left += x1 - x0 + GAP
  }
  return { marks, right: left - GAP }
}

function words(design: Design): Mark[] {
  const gores = design.ends.edges.length - 1
  return [
    letter(8, 9, lettered(`${gores} gores in space, on the outer mould line`), { height: 3.5, bold: true }),
    letter(FLATS_FROM, 9, BESIDE, { height: 3.5, bold: true }),
    letter(8, HEIGHT - 8, lettered(`All at 1:${SCALE}. The left half mirrors the right one; the tail is made on the same jig.`), {
      height: 2.5,
    }),
  ]
}
