/**
 * What carries the ribs an opening has cut: an angle over it and one under it, from rib to rib, and posts beside it where no rib stands
 * near enough to serve. As round openings in the barrel, one leg lies behind the rim ring on the straight of an edge and shares the
 * rim's rivets there; its heel stands on the cut's edge. Does NOT cover how the angles are held at the ribs, nor strength.
 */
import { pointInside } from '../../maths/loft.js'
import type { Vec3 } from '../../maths/vec.js'
import { length, sub } from '../../maths/vec.js'
import { densityOf } from '../common/density.js'
import { angleMass, memberMass } from '../common/mass.formulas.js'
import type { Part } from '../nouns.js'
import { type EndCut, paneAxes, seenOn } from './cuts.js'
import type { Ground } from './ground.js'
import { holesOn } from './holes.js'
import type { LocalRow } from './laid-row.js'
import { type EndRow, goresAt } from './layers.js'
import type { LocalEnd } from './local.js'
import { type Pieces, type Rib, stripPattern } from './members.js'
import { endPart, endPlace, type Standing } from './parts.js'
import { runningBetween } from './running.js'
import { sigmaAt } from './surface.js'

/** The face of an angle that lies behind the skin. */
export const SKIN_LEG = 'skin leg'

type Edge = 'head' | 'sill' | 'right' | 'left'

export interface FramingAngle {
  readonly part: string
  readonly says: string
  readonly kind: 'header' | 'post'
  readonly edge: Edge
  /** the rim's fasteners that go through its skin leg, in order along it */
  readonly through: readonly number[]
  /** cut length, m */
  readonly length: number
}

export interface EndFraming {
  readonly cut: EndCut
  readonly angles: readonly FramingAngle[]
  /** the ribs it cuts */
  readonly ribs: readonly Rib[]
  /** what serves in place of an angle, in sentences */
  readonly notes: readonly string[]
}

export function framingOf({ ground, ribs }: LocalEnd, cut: EndCut, rim: LocalRow, pieces: Pieces): EndFraming {
  const { shell } = ground.input
  const touches = (rib: Rib, mark: 'fromMark' | 'toMark'): boolean => pieces.get(rib.row)?.some((p) => p[mark] === cut.id) ?? false
  const isCut = (rib: Rib): boolean => touches(rib, 'fromMark') || touches(rib, 'toMark')
  const gone = ribs.filter(isCut)
  if (gone.length === 0) return { cut, angles: [], ribs: [], notes: [] }
  const { leg } = shell.post
  const beside = limitBeside(
    ground,
    cut,
    ribs.filter((r) => !isCut(r)),
  )
  const [angles, notes]: [FramingAngle[], string[]] = [[], []]
  const make = (part: string, says: string, edge: Edge, long: number): void => {
    const through = onStraight(ground, cut, rim, edge)
    if (through.length === 0) notes.push(`No ${says}: no rim fastener stands on the straight where it would lie.`)
    else angles.push({ part, says, kind: edge === 'head' || edge === 'sill' ? 'header' : 'post', edge, through, length: long })
  }
  for (const [edge, name, mark, v] of [
    ['head', `header over ${cut.id}`, 'toMark', cut.b + shell.rim.line],
    ['sill', `sill under ${cut.id}`, 'fromMark', -cut.b - shell.rim.line],
  ] as const) {
    if (!gone.some((rib) => touches(rib, mark))) {
      notes.push(`No ${edge === 'head' ? 'header' : 'sill'}: no rib is left ${edge === 'head' ? 'above' : 'below'} to be carried.`)
      continue
    }
    const { span, to } = beside(v)
    make(`${edge === 'head' ? 'header' : 'sill'}-${cut.id}`, `${name}, ${to}`, edge, span)
  }
  const { u, to } = beside(0)
  for (const side of ['right', 'left'] as const) {
    if (u - cut.a >= leg) make(`post-${cut.id}-${side}`, `${side} post of ${cut.id}`, side, 2 * (cut.b + leg))
    else notes.push(`The ${side} post is the member that stands there (${to}).`)
  }
  return { cut, angles, ribs: gone, notes }
}

/** The rim's fasteners on the straight of one edge, from left to right or from below up. */
function onStraight({ input }: Ground, cut: EndCut, rim: LocalRow, edge: Edge): number[] {
  const isAcross = edge === 'head' || edge === 'sill'
  const [own, half] = isAcross ? [1, cut.a - cut.corner] : [0, cut.b - cut.corner]
  const at = (isAcross ? cut.b : cut.a) + input.shell.rim.line
  const sign = edge === 'head' || edge === 'right' ? 1 : -1
  return rim.located
    .map(({ point }, i) => ({ i, seen: seenOn(cut, point) }))
    .filter(({ seen }) => Math.abs(seen[own] - sign * at) < 1e-6 && Math.abs(seen[1 - own]) < half + 1e-9)
    .sort((a, b) => a.seen[1 - own] - b.seen[1 - own])
    .map(({ i }) => i)
}

interface Beside {
  /** half the width on the pane and the whole length along the skin between the members on both sides, m */
  readonly u: number
  readonly span: number
  readonly to: string
}

/** How near the member beside it a header's end is sought, of half the opening's width. */
const NEAR = 1e-10

/** Pieces half a header's length is summed in; chords fall short of the skin's curve by a few parts in ten thousand. */
const CHORDS = 8

/** How far the way is clear at a height of the pane, to the nearest rib that is left on each side or to the joint's frame. */
function limitBeside(ground: Ground, cut: EndCut, left: readonly Rib[]): (v: number) => Beside {
  const { frame, joint, memberGap } = ground.input.shell
  const clear = frame.flange / 2 - frame.rowOffset + memberGap
  return (v) => {
    const at = (u: number): Vec3 | null => ground.outer.under(cut, u, v)?.point ?? null
    // at the end of the edge's straight, where the rim's own rivets stand
    const start = v === 0 ? cut.a : cut.a - cut.corner
    const edge = at(start)
    if (!edge) throw new Error(`opening ${cut.id} runs off the end`)
    const phi = Math.atan2(edge[1], edge[0])
    const rib = left.filter((r) => r.phi > phi).sort((a, b) => a.phi - b.phi)[0]
    const short = rib
      ? ([x, y]: Vec3): number => x * Math.sin(rib.phi) - y * Math.cos(rib.phi) - clear
      : ([x]: Vec3): number => x - joint.overlap / 2 - memberGap
    let [u, free] = [start, short(edge)]
    // the way out shortens by at most the step taken: stepping by what is free comes close and never runs past
    for (let i = 0; i < 60 && free > NEAR * cut.a; i++) {
      const next = at(u + free)
      // over a toe that climbs beside the opening the skin ends first: as near to there as it goes
      if (!next) {
        free /= 2
        continue
      }
      u += free
      free = short(next)
    }
    let span = 0
    let before = at(0)
    for (let i = 1; i <= CHORDS; i++) {
      const here = at((u * i) / CHORDS)
      if (!here || !before) throw new Error(`no skin beside opening ${cut.id}`)
      span += 2 * length(sub(here, before))
      before = here
    }
    return { u, span, to: rib ? `${rib.kind} ribs ${rib.number} on both hands` : 'joint to joint' }
  }
}

/** The angles of one opening as parts; the skin leg is drawn where it is riveted. */
export function framingParts(local: LocalEnd, at: Standing, { cut, angles, notes }: EndFraming, row: EndRow): Part[] {
  const { ground } = local
  const { post, rim, skin } = { ...ground.input.shell, skin: ground.input.ends.skin }
  const t = post.thickness.value
  const lineal = angleMass({ l: post.leg, t, rho: densityOf(post.alloy, t) })
  const inset = ground.input.rules.edgeDistance * row.local.draft.diameter
  return angles.map((angle) => {
    const points = angle.through.map((i) => {
      const { point, phi, girth } = row.local.located[i]
      const depth = goresAt(ground, row.local.located[i]).length * skin.thickness.value + rim.thickness.value + t / 2
      return local.wrapped
        ? local.skin.inside(phi, { at: 'girth', girth }, depth)
        : pointInside(ground.loft, phi, sigmaAt(ground.loft, point[2]), depth)
    })
    const runs = points.length < 2 ? points.map(() => 0) : runningBetween(points, [])
    const long = runs[runs.length - 1] + 2 * inset
    const along = new Map(angle.through.map((i, k) => [i, inset + runs[k]]))
    // a post is drawn from its top; a header from its end on the left of the drawing, which on the nose is right of travel
    const isTurned = angle.kind === 'post' || at.end === 'nose'
    const isHeelBelow = angle.kind === 'header' ? angle.edge === 'head' : (angle.edge === 'right') !== (at.end === 'nose')
    const y = isHeelBelow ? rim.line : post.leg - rim.line
    const { x, y: up } = paneAxes(cut, at.end)
    const middle: Vec3 = points[Math.floor(points.length / 2)]
    return endPart(at, {
      id: angle.part,
      says: angle.says,
      kind: angle.kind,
      material: post.alloy,
      thickness: post.thickness,
      centre: middle,
      girth: row.local.located[angle.through[Math.floor(angle.through.length / 2)]].girth,
      area: angle.length * (2 * post.leg - t),
      mass: memberMass({ w: lineal, L: angle.length }),
      patterns: [
        stripPattern({
          face: SKIN_LEG,
          thickness: t,
          length: long,
          width: post.leg,
          flat: {
            view: 'outside',
            ...(angle.kind === 'header' ? { x, y: up } : { x: 'down', y: x }),
            origin: {
              station: endPlace(at, points[isTurned ? points.length - 1 : 0], 0).station,
              girth: row.local.located[angle.through[0]].girth,
              says: 'end of the riveted length',
            },
          },
          holes: holesOn(
            [row],
            angle.part,
            SKIN_LEG,
            (_row, i) => {
              const s = along.get(i)
              if (s === undefined) throw new Error(`rim fastener ${i} of ${cut.id} is not on ${angle.part}`)
              return [isTurned ? long - s : s, y]
            },
            ground,
          ),
        }),
      ],
      notes: [
        `Cut ${Math.round(angle.length * 1000)} mm long and form to the skin; the leg is drawn where the rim's rivets hold it. The heel stands on the edge of the cut.`,
        ...notes,
      ],
    })
  })
}
