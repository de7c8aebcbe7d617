/** Ribs, header ring, base channel, and the rings and angles round the openings of an end, as ribbons at their true place. */
import { endLiningDepth } from '../../derive/common/lining-depth.js'
import type { Design } from '../../derive/design.js'
import { endCuts } from '../../derive/ends/cuts.js'
import type { Ground } from '../../derive/ends/ground.js'
import type { LocalEnd } from '../../derive/ends/local.js'
import { type Rib, ribPart, rivetsBeside } from '../../derive/ends/members.js'
import { loopOnSkin } from '../../derive/ends/openings.js'
import type { Standing } from '../../derive/ends/parts.js'
import { rowNamed } from '../../derive/holes.js'
import type { Part, Pattern } from '../../derive/nouns.js'
import { loftAt, normalOf } from '../../maths/loft.js'
import { add, cross, scale, sub, unit, type Vec3 } from '../../maths/vec.js'
import { band, type Draft, meshOf, newDraft } from './build.js'
import { stand } from './end-surface.js'
import type { Mesh } from './nouns.js'
import { chordsAt, ringOf } from './region.js'

/** Stretches a rib, a ring and the edge of an opening are drawn in. */
const [RIB, RING, EDGE] = [28, 48, 64] as const

/** Gives the mesh of a member of one end; null for what is none. */
export function endMembers(local: LocalEnd, at: Standing, design: Design) {
  const put = stand(at)
  const ground: Ground = { ...local.ground, input: design.definition }
  const cuts = endCuts(ground, at.end, at.joint)
  return (part: Part): Mesh | null => {
    const draft = newDraft()
    if (part.kind === 'end-rib') {
      const rib = local.ribs.find((each) => ribPart(at.end, each) === part.id)
      if (!rib) return null
      layRib(draft, ground, rib, part.patterns[0])
    } else if (part.kind === 'header-ring' || part.kind === 'end-base') {
      if (!part.id.startsWith(`${at.end}-`)) return null
      layRing(draft, local, ground, part)
    } else if (part.kind === 'rim' || part.kind === 'trim-ring') {
      const cut = cuts.find(({ id }) => part.id === `rim-${id}` || part.id === `trim-${id}`)
      if (!cut) return null
      const inward = scale(cut.normal, part.kind === 'rim' ? -RIM_UNDER : -trimUnder(ground))
      const loop = (off: number): Vec3[] => {
        const points = loopOnSkin(ground, cut, off, EDGE).map(({ point }) => add(point, inward))
        return [...points, points[0]]
      }
      band(draft, [loop(0), loop(ground.handed.rimReach)], true)
    } else if ((part.kind === 'header' || part.kind === 'post') && part.place.end?.which === at.end) {
      layAngle(draft, ground, at, design, part)
    } else return null
    const { points, lines } = draft
    return meshOf({ ...draft, points: points.map(put), lines: lines.map(put) })
  }
}

/** A ring lies under two end skins at the most, m: enough to be clear of them. */
const RIM_UNDER = 0.003

const trimUnder = ({ input }: Ground): number => endLiningDepth(input) + input.lining.thickness.value

/** An I: its outer flange on the curve of the rib, its web in the plane beside the rivets, its inner flange a web's height in. */
function layRib(draft: Draft, ground: Ground, rib: Rib, pattern: Pattern): void {
  const { frame } = ground.input.shell
  const start = rib.flange.lengthAt(rib.outer.sigmaAt(pattern.flat.origin.girth))
  const rings = [pattern.outline, ...pattern.cuts.map((cut) => cut.outline)].map((outline) => ringOf(outline, 8))
  const aside: Vec3 = [-Math.sin(rib.phi), Math.cos(rib.phi), 0]
  const web = -rivetsBeside(rib, 'outer flange', frame.rowOffset)
  const deep = frame.height - frame.thickness.value
  for (const [from, to] of chordsAt(rings, frame.flange / 2)) {
    const stations = Array.from({ length: RIB + 1 }, (_, i) => {
      const sigma = rib.flange.sigmaAt(start + from + ((to - from) * i) / RIB)
      const p = loftAt(ground.loft, rib.phi, sigma)
      const out = normalOf(p, rib.phi)
      // square to the rib's plane but for the bevel, by which the flange leans with the skin
      const across = unit(sub(aside, scale(out, aside[0] * out[0] + aside[1] * out[1])))
      const at = (by: number, depth: number): Vec3 => add(add(rib.flange.atSigma(sigma), scale(across, by)), scale(out, -depth))
      return at
    })
    const line = (by: number, depth: number): Vec3[] => stations.map((at) => at(web + by, depth))
    const half = frame.flange / 2
    band(draft, [line(-half, 0), line(half, 0)])
    band(draft, [line(0, 0), line(0, deep)])
    band(draft, [line(-half, deep), line(half, deep)])
  }
}

/** Ring and base run along the row they carry, from joint to joint. */
function layRing(draft: Draft, local: LocalEnd, ground: Ground, part: Part): void {
  const { shell, ends } = ground.input
  const isRing = part.kind === 'header-ring'
  const row = local.rows.find((each) => each.draft.id === (isRing ? 'cap' : 'base'))
  if (!row) return
  const member = isRing ? shell.frame : shell.edgeChannel
  const half = (isRing ? shell.frame.flange : shell.edgeChannel.height) / 2
  const t = ends.skin.thickness.value
  const under = (isRing ? 2 * t : t) + member.thickness.value / 2
  const first = Math.max(...row.located.map(({ phi }) => phi))
  // the web stands toward the crown from the skin's rivets
  const middle = isRing ? -shell.frame.rowOffset : 0
  const stations = Array.from({ length: RING + 1 }, (_, i) => {
    const phi = first * (1 - (2 * i) / RING)
    const sigma = isRing ? ground.capSigma(phi) : (ground.base ?? ground.floor)
    const p = loftAt(ground.loft, phi, sigma)
    const out = normalOf(p, phi)
    const down = unit([p.rSigma * Math.cos(phi), p.rSigma * Math.sin(phi), p.zSigma])
    return (by: number, depth: number): Vec3 =>
      add(add(local.skin.inside(phi, { at: isRing ? 'cap' : 'base' }, under), scale(down, middle + by)), scale(out, -depth))
  })
  const line = (by: number, depth: number): Vec3[] => stations.map((at) => at(by, depth))
  band(draft, [line(-half, 0), line(half, 0)])
  if (!isRing) return
  const deep = shell.frame.height - shell.frame.thickness.value
  band(draft, [line(0, 0), line(0, deep)])
  band(draft, [line(-half, deep), line(half, deep)])
}

/** The skin leg of an angle, along the rivets of the rim that go through it. */
function layAngle(draft: Draft, ground: Ground, at: Standing, design: Design, part: Part): void {
  const { holes } = part.patterns[0]
  const row = rowNamed(design, holes.rows[0] ?? '')
  const y = row?.end?.y
  if (!row || !y || holes.index.length < 2) return
  const sign = at.end === 'nose' ? -1 : 1
  const places = holes.index.map((i): Vec3 => [sign * (row.station[i] - at.joint), y[i], row.waterline[i]])
  const { leg } = ground.input.shell.post
  const loop = design.openings.find(({ framing }) => framing.includes(part.id))?.end?.loop
  if (!loop) return
  const out = unit(normalOfLoop(loop, sign, at.joint))
  const across = unit(cross(out, sub(places[places.length - 1], places[0])))
  const line = (by: number): Vec3[] => places.map((p) => add(add(p, scale(across, by)), scale(out, -2 * RIM_UNDER)))
  band(draft, [line(-leg / 2), line(leg / 2)])
}

/** The way a pane looks, in the local axes of its end. */
function normalOfLoop(loop: readonly Vec3[], sign: 1 | -1, joint: number): Vec3 {
  const at = (share: number): Vec3 => {
    const [x, y, z] = loop[Math.floor(loop.length * share)]
    return [sign * (x - joint), y, z]
  }
  const n = cross(sub(at(0.25), at(0)), sub(at(0.5), at(0)))
  return n[0] < 0 ? scale(n, -1) : n
}
