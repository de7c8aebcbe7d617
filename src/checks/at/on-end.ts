/** What is at a place of nose or tail: outside, through the skin, inside. Distances are straight lines in space from the place. */
import { clearance, type EndCut } from '../../derive/ends/cuts.js'
import { skinsOf } from '../../derive/ends/layers.js'
import { ribPart, ribPieces } from '../../derive/ends/members.js'
import { meridianGirth } from '../../derive/ends/meridian.js'
import type { Derived } from '../../derive/index.js'
import type { FastenerRow } from '../../derive/nouns.js'
import { developed } from '../../maths/development.js'
import { loftAt } from '../../maths/loft.js'
import { at as pointAt } from '../../maths/tangent-chain.js'
import type { Vec3 } from '../../maths/vec.js'
import { nearestTo } from '../ends/along-curve.js'
import { type EndsGround, endsGroundOf, inward, openingsOn, type Standing } from '../ends/ground.js'
import type { PlaceOnCoach, Thing } from './at.js'
import { distanceToMetal } from './metal-distance.js'
import type { EndSpot } from './place-on-end.js'
import { endAddress } from './say-address.js'
import { alloyOf, away, byDistance, fastenerThing, NEAR, withNearest } from './things.js'

/** A drill nearer than this to a fastener meets its head or its edge distance, m. Our choice. */
const DRILL = 0.05

interface HereOnEnd {
  readonly ground: EndsGround
  readonly derived: Derived
  readonly spot: EndSpot
  readonly cuts: readonly EndCut[]
  /** distance outward from the joint, m */
  readonly out: number
}

export interface AtEnd {
  readonly place: PlaceOnCoach
  readonly outside: readonly Thing[]
  readonly through: readonly Thing[]
  readonly inside: readonly Thing[]
}

export function onEnd(derived: Derived, spot: EndSpot): AtEnd {
  const ground = endsGroundOf(derived)
  const here: HereOnEnd = { ground, derived, spot, cuts: openingsOn(ground, spot.at).map((o) => o.cut), out: spot.point[0] }
  const members = membersAt(here)
  return {
    place: placeOf(here),
    outside: [...skins(here), ...openings(here), ...laps(here)].sort(byDistance),
    through: [...fasteners(here), ...cutAway(here), ...against(members)].sort(byDistance),
    inside: [...inside(here, members), ...lining(here)].sort(byDistance),
  }
}

function placeOf({ derived, spot }: HereOnEnd): PlaceOnCoach {
  const { at, point, phi, sigma, girth } = spot
  const p = loftAt(derived.endSections.local.ground.loft, phi, sigma)
  const y = point[1]
  return {
    side: Math.abs(y) < 1e-9 ? 'centre' : y > 0 ? 'right' : 'left',
    station: at.joint + (at.end === 'nose' ? -point[0] : point[0]),
    girth,
    waterline: point[2],
    end: { which: at.end, y },
    address: endAddress(derived, spot),
    y: Math.abs(y),
    z: point[2],
    heading: Math.atan2(-p.zSigma, p.rSigma),
    liningGirth: null,
    bay: null,
    frames: [{ id: at.frame, distance: point[0], lies: point[0] < 1e-9 ? 'here' : at.end === 'nose' ? 'aft' : 'forward' }],
  }
}

const cutDepth = ({ cuts, spot }: HereOnEnd): number => Math.max(0, ...cuts.map((cut) => -clearance(cut, spot.point)))

/** Every sheet that is there, the outermost first. Over the joint the barrel's own sheet lies as well. */
function skins(here: HereOnEnd): readonly Thing[] {
  const { ground, derived, spot } = here
  const depth = cutDepth(here)
  const end = skinsOf(ground.local.ground, spot.at.end)(spot).map(({ part }) => ({ part, says: part.replace(/-/g, ' ') }))
  const barrel = sheetsOfBarrel(here)
  const all = derived.definition.shell.joint.over === 'barrel' ? [...barrel, ...end] : [...end, ...barrel]
  return all.map(({ part, says }, i) => ({
    kind: 'sheet',
    id: part,
    sentence: `${i === 0 ? 'Skin' : 'Under it'}: ${says}, ${alloyOf(derived, part)}${depth > 0 ? `, its metal ${away(depth)}` : ''}.`,
    distance: depth,
  }))
}

function sheetsOfBarrel({ derived, spot, out }: HereOnEnd): readonly { readonly part: string; readonly says: string }[] {
  const { laid, plates } = derived.shell
  if (out > laid.input.shell.joint.overlap / 2 + 1e-9) return []
  const station = spot.at.joint + (spot.at.end === 'nose' ? -out : out)
  const v = developed(laid.skin, spot.phi < 0 ? -spot.girth : spot.girth)
  return plates
    .filter((p) => p.kind === 'strake' && distanceToMetal(p, laid.skin, { x: station, v }) < 1e-9)
    .sort((a, b) => a.order - b.order)
    .map(({ part, says }) => ({ part, says }))
}

function openings(here: HereOnEnd): readonly Thing[] {
  const all = here.cuts.flatMap((cut): Thing[] => {
    const room = clearance(cut, here.spot.point)
    if (room === Number.POSITIVE_INFINITY) return []
    const name = `${cut.id}, ${cut.opening.says}`
    const sentence = room <= 0 ? `In the cut of ${name}; its edge is ${away(-room)}.` : `The cut of ${name}, is ${away(room)}.`
    return [{ kind: 'opening', id: cut.id, sentence, distance: Math.max(0, room) }]
  })
  return withNearest(all, NEAR)
}

/** Laps of the gore seams, of the crown cap and of the joint. Distance to the lap's edge. */
function laps({ ground, derived, spot, out }: HereOnEnd): readonly Thing[] {
  const { ends, shell } = derived.definition
  const { seamCurves, gores } = ground.local.ground
  const { end, frame } = spot.at
  const lap = (id: string, what: string, distance: number): Thing => ({
    kind: 'lap',
    id,
    sentence: distance > 0 ? `The lap of ${what} is ${away(distance)}.` : `In the lap of ${what}.`,
    distance,
  })
  const seams = Array.from({ length: gores - 1 }, (_, i) => i + 1).map((k) => {
    const far = nearestTo(seamCurves[k], [spot.point], ends.cap - ends.lap / 2).distance
    return lap(`${end}-seam-${k}`, `gore seam ${k}`, Math.max(0, far - ends.lap / 2))
  })
  const cap = lap(`${end}-cap`, 'the crown cap', Math.max(0, Math.abs(spot.girth - ends.cap) - ends.lap / 2))
  const joint = lap(`joint-${frame}`, `the barrel's skin at ${frame}`, Math.max(0, out - shell.joint.overlap / 2))
  return withNearest([...seams, cap, joint], NEAR)
}

function fasteners({ derived, spot }: HereOnEnd): readonly Thing[] {
  const near = derived.shell.rows.filter((r) => r.kind !== 'lining' && r.station.some((s) => Math.abs(s - spot.at.joint) < NEAR))
  return [...endFasteners(derived, spot.at, spot.point), ...fastenersIn(derived, spot.at, near, spot.point)]
}

/** Those of an end's own rows within a hand of a point in its axes. */
export function endFasteners(derived: Derived, at: Standing, point: Vec3): readonly Thing[] {
  return fastenersIn(
    derived,
    at,
    derived.endSections.rows.filter((r) => r.end?.which === at.end),
    point,
  )
}

function fastenersIn(derived: Derived, at: Standing, rows: readonly FastenerRow[], point: Vec3): readonly Thing[] {
  const { withFlange } = derived.shell.section
  const across = (row: FastenerRow, i: number): number =>
    row.end ? row.end.y[i] : Math.sign(row.girth[i]) * pointAt(withFlange, Math.abs(row.girth[i])).y
  return rows.flatMap((row) =>
    row.station.flatMap((station, i): Thing[] => {
      if (Math.abs(row.waterline[i] - point[2]) > DRILL) return []
      const p = inward(at, station, across(row, i), row.waterline[i])
      const distance = Math.hypot(p[0] - point[0], p[1] - point[1], p[2] - point[2])
      return distance > DRILL ? [] : [fastenerThing(derived, row, i, distance)]
    }),
  )
}

function cutAway({ cuts, spot }: HereOnEnd): readonly Thing[] {
  return cuts.flatMap((cut): Thing[] => {
    const room = clearance(cut, spot.point)
    if (room > DRILL) return []
    const where = room <= 0 ? 'The skin is cut away here' : `The skin is cut away ${away(room)}`
    return [{ kind: 'opening', id: cut.id, sentence: `${where} for ${cut.id}, ${cut.opening.says}.`, distance: Math.max(0, room) }]
  })
}

/** A member behind the skin, and how far its outer flange is from the place. */
interface Member {
  readonly kind: string
  readonly id: string
  readonly face: string
  readonly distance: number
}

function membersAt(here: HereOnEnd): readonly Member[] {
  const { ground, derived, spot, out, cuts } = here
  const { end, frame } = spot.at
  const { shell, ends } = derived.definition
  const { loft, base } = ground.local.ground
  // the end's own members stop clear of the joint frame
  const stop = Math.max(0, shell.joint.overlap / 2 - out)
  const ring = (girth: number, half: number): number => Math.hypot(Math.max(0, Math.abs(spot.girth - girth) - half), stop)
  const known = new Set(derived.endSections.parts.map((p) => p.id))
  const all: Member[] = [
    ...ribsAt(here),
    { kind: 'header-ring', id: `${end}-header-ring`, face: 'outer flange', distance: ring(ends.cap, shell.frame.flange / 2) },
    ...(base === null
      ? []
      : [
          {
            kind: 'end-base',
            id: `${end}-base`,
            face: 'outer flange',
            distance: ring(meridianGirth(loft, spot.phi, base), shell.edgeChannel.height / 2),
          },
        ]),
    ...cuts.map((cut) => {
      const room = clearance(cut, spot.point)
      return { kind: 'rim', id: `rim-${cut.id}`, face: 'flange', distance: Math.max(0, -room, room - ground.reach) }
    }),
  ].filter((m) => known.has(m.id))
  return [
    ...all,
    { kind: 'joint-frame', id: `frame-${frame}`, face: 'outer flange', distance: Math.max(0, out - shell.jointFrame.flange / 2) },
  ]
}

function ribsAt({ ground, derived, spot, cuts }: HereOnEnd): readonly Member[] {
  const half = derived.definition.shell.frame.flange / 2
  const point: Vec3 = spot.point
  return ground.local.ribs.flatMap((rib): Member[] => {
    const across = Math.max(0, nearestTo(rib.outer, [point], 0).distance - half)
    const along = ribPieces(ground.local.ground, rib, cuts).map((p) => Math.max(0, p.from - spot.girth, spot.girth - p.to))
    if (along.length === 0) return []
    return [{ kind: 'end-rib', id: ribPart(spot.at.end, rib), face: 'outer flange', distance: Math.hypot(across, Math.min(...along)) }]
  })
}

const against = (members: readonly Member[]): readonly Thing[] =>
  members
    .filter((m) => m.distance === 0)
    .map(({ kind, id, face }) => ({ kind, id, sentence: `Against the skin: the ${face} of ${id.replace(/-/g, ' ')}.`, distance: 0 }))

/** The nearest rib is told however far it is. */
function inside({ derived }: HereOnEnd, members: readonly Member[]): readonly Thing[] {
  const things = members.map(({ kind, id, distance }): Thing => {
    const part = derived.parts.find((p) => p.id === id)
    const name = part?.says ?? id
    const sentence = `${name.charAt(0).toUpperCase()}${name.slice(1)}, ${alloyOf(derived, id)}, ${distance > 0 ? away(distance) : 'is here'}.`
    return { kind, id, sentence, distance }
  })
  const ribs = withNearest(
    things.filter((t) => t.kind === 'end-rib'),
    NEAR,
  )
  return [...ribs, ...things.filter((t) => t.kind !== 'end-rib' && t.distance <= NEAR)].sort(byDistance)
}

/** The lining panel behind the place: between neighbouring ribs, or inside the header ring; none within an opening or under its gap. */
function lining(here: HereOnEnd): readonly Thing[] {
  const { derived, spot, ground } = here
  const { lining: written, ends } = derived.definition
  if (cutDepth(here) > 0 || spot.point[2] < written.floorGap) return []
  const { edges, mids } = ground.local.ground
  const ribs = [...edges, ...mids].sort((a, b) => b - a)
  const panel = Math.max(1, ribs.filter((phi) => phi >= spot.phi - 1e-9).length)
  const name = spot.girth < ends.cap ? 'lining-crown' : `lining-${Math.min(panel, ribs.length - 1)}`
  const part = derived.parts.find((p) => p.id === `${spot.at.end}-${name}`)
  if (!part) return []
  const sentence = `Behind it: ${part.says}, ${alloyOf(derived, part.id)}, fitted on the ribs.`
  return [{ kind: 'end-lining', id: part.id, sentence, distance: 0 }]
}
