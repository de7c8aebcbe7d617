/**
 * Windows, vents and hatches in an end: rim row, rim ring and what the curve of the skin asks of the frame. A flat pane on a
 * doubly curved end touches only at its middle: what the skin falls away by round it is the depth the frame must make up.
 */

import { outlineArea, type Vertex } from '../../maths/outline.js'
import { add, scale, type Vec3 } from '../../maths/vec.js'
import { densityOf } from '../common/density.js'
import { endLiningDepth } from '../common/lining-depth.js'
import { sheetMass } from '../common/mass.formulas.js'
import { startRow } from '../common/row-draft.js'
import type { HoleSet, OpeningDerived, Outline, Part } from '../nouns.js'
import { type EndCut, paneAxes, seenOn } from './cuts.js'
import type { EndFraming } from './framing.js'
import type { Ground } from './ground.js'
import { holesOn } from './holes.js'
import type { LocalRow } from './laid-row.js'
import { type EndRow, goresAt } from './layers.js'
import type { LocalEnd } from './local.js'
import { grownBy, loopLength, loopPoints, roundedOutline } from './loop.js'
import { ribPart } from './members.js'
import type { OnSkin } from './outer.js'
import { endPart, endPlace, type Standing } from './parts.js'
import type { Located } from './skin.js'

const rimPart = (id: string): string => `rim-${id}`
const trimPart = (id: string): string => `trim-${id}`

/** Points of the skin on a loop `off` m outside the cut; throws where the opening runs off the end: `liesOnEnd` has refused it. */
export function loopOnSkin(ground: Ground, cut: EndCut, off: number, count: number): OnSkin[] {
  return loopIfOn(ground, cut, off, count).map((on) => {
    if (!on) throw new Error(`opening ${cut.id} runs off the end`)
    return on
  })
}

/** Panes stand across the centre line and both hands of an end are alike: the left half of a loop mirrors the right one. */
function loopIfOn(ground: Ground, cut: EndCut, off: number, count: number): readonly (OnSkin | null)[] {
  const known = LOOPS.get(cut) ?? new Map<string, readonly (OnSkin | null)[]>()
  const key = `${off} ${count}`
  const loop = known.get(key) ?? loopUnder(ground, cut, off, count)
  LOOPS.set(cut, known.set(key, loop))
  return loop
}

const LOOPS = new WeakMap<EndCut, Map<string, readonly (OnSkin | null)[]>>()

function loopUnder(ground: Ground, cut: EndCut, off: number, count: number): (OnSkin | null)[] {
  const places = loopPoints(grownBy(cut, off), count)
  const right = places.slice(0, Math.floor(count / 2) + 1).map(([a, b]) => ground.outer.under(cut, a, b))
  return places.map((_, i) => (i < right.length ? right[i] : right[count - i] && mirrorOn(right[count - i])))
}

const mirrorOn = (on: OnSkin | null): OnSkin | null =>
  on && { phi: -on.phi, point: [on.point[0], -on.point[1], on.point[2]], fall: on.fall }

/** Whether the opening with its rim lies on the end, clear of the barrel's overlap. */
export function liesOnEnd(ground: Ground, cut: EndCut): boolean {
  const clear = ground.input.shell.joint.overlap / 2
  return loopIfOn(ground, cut, ground.handed.rimReach, 48).every((on) => on !== null && on.point[0] > clear)
}

/** Where a loop's points are on the end; a point on the left hand is as far from the crown as the right one it mirrors. */
function locatedOn(ground: Ground, loop: readonly OnSkin[]): Located[] {
  const places: Located[] = []
  for (const [i, { point, phi }] of loop.entries()) {
    const mirrored = 2 * i > loop.length ? places[loop.length - i] : null
    places.push({ point, phi, girth: mirrored?.girth ?? ground.outer.girth(loop[i]) })
  }
  return places
}

/** The rim's rivets: evenly spaced on the rivet line, from the middle of the upper edge. */
export function rimRow(ground: Ground, cut: EndCut): LocalRow {
  const { rim } = ground.input.shell
  const { fastener, pitch } = ground.input.rows.rim
  const diameter = ground.input.fasteners.find((f) => f.id === fastener)?.diameter.value
  if (diameter === undefined) throw new Error(`no fastener "${fastener}" in the definition`)
  const length = loopLength(grownBy(cut, rim.line))
  const count = Math.max(4, Math.round(length / pitch))
  const places = locatedOn(ground, loopOnSkin(ground, cut, rim.line, count))
  const draft = startRow({
    id: rimPart(cut.id),
    says: `rim of ${cut.id}, ${cut.opening.says}`,
    kind: 'rim',
    joint: `joint-${rimPart(cut.id)}`,
    fastener,
    diameter,
    pitch,
    source: 'rows.rim of the definition',
  })
  draft.spans.push({ from: 'top', to: 'top', first: 0, count, spaces: count, pitch: length / count })
  for (let i = 0; i < count; i++) {
    draft.span.push(0)
    draft.number.push(i)
    draft.station.push(0)
    draft.girth.push(places[i].girth)
  }
  return { draft, located: places }
}

/** The most the skin falls away from a flat pane under the rim ring, m. */
export function sagOf(ground: Ground, cut: EndCut): number {
  return Math.max(...loopOnSkin(ground, cut, ground.handed.rimReach, 48).map((on) => on.fall))
}

export function rimRing(local: LocalEnd, at: Standing, cut: EndCut, row: EndRow, sag: number): Part {
  const { ground } = local
  const mirror = paneAxes(cut, at.end).x === 'left' ? -1 : 1
  return ringPart(local, at, cut, {
    id: rimPart(cut.id),
    says: `rim ring of ${cut.id}, ${cut.opening.says}`,
    kind: 'rim',
    centre: cut.centre,
    holes: (x0, y0) =>
      holesOn(
        [row],
        rimPart(cut.id),
        'flange',
        (r, i) => {
          const [u, v] = seenOn(cut, r.local.located[i].point)
          return [x0 + mirror * u, y0 + v]
        },
        ground,
      ),
    note: `Drawn square on; formed to the skin, which falls away ${mm(sag)} mm from a flat pane under its edge.`,
  })
}

/** The ring round the opening inside, on the lining: as wide as the rim, drilled where it is fitted. */
export function trimRing(local: LocalEnd, at: Standing, cut: EndCut, sag: number): Part {
  const { input } = local.ground
  const depth = endLiningDepth(input) + input.lining.thickness.value
  return ringPart(local, at, cut, {
    id: trimPart(cut.id),
    says: `inner trim ring of ${cut.id}, ${cut.opening.says}`,
    kind: 'trim-ring',
    centre: add(cut.centre, scale(cut.normal, -depth)),
    holes: () => NO_HOLES,
    note: `Drawn square on; formed to the lining, which falls away about as the skin does, ${mm(sag)} mm. The lining is cut to it where it is fitted.`,
  })
}

const NO_HOLES: HoleSet = Object.freeze({ rows: [], row: [], index: [], x: [], y: [], diameter: [] })

interface RingSpec {
  readonly id: string
  readonly says: string
  readonly kind: 'rim' | 'trim-ring'
  readonly centre: Vec3
  readonly holes: (x0: number, y0: number) => HoleSet
  readonly note: string
}

function ringPart({ ground }: LocalEnd, at: Standing, cut: EndCut, spec: RingSpec): Part {
  const { rim } = ground.input.shell
  const { id, says, kind, centre, holes, note } = spec
  const reach = ground.handed.rimReach
  const outline = roundedOutline(grownBy(cut, reach))
  const inner = roundedOutline(cut)
  const [x0, y0] = [cut.a + reach, cut.b + reach]
  const shift = (points: readonly Vertex[]): Outline => points.map(([x, y, b]) => [x + x0, y + y0, b] as const)
  const area = outlineArea(outline) - outlineArea(inner)
  return endPart(at, {
    id,
    says,
    kind,
    material: rim.alloy,
    thickness: rim.thickness,
    centre,
    girth: cut.girth,
    area,
    mass: sheetMass({ rho: densityOf(rim.alloy, rim.thickness.value), t: rim.thickness.value, A: area }),
    patterns: [
      Object.freeze({
        face: 'flange',
        flat: {
          view: 'outside' as const,
          ...paneAxes(cut, at.end),
          origin: { station: at.joint + (at.end === 'nose' ? -1 : 1) * cut.centre[0], girth: 0, says: 'lower corner, square on' },
        },
        thickness: rim.thickness.value,
        outline: shift(outline),
        cuts: [{ opening: cut.id, outline: shift(inner) }],
        marks: [],
        holes: holes(x0, y0),
      }),
    ],
    notes: [note],
  })
}

const mm = (metres: number): string => (metres * 1000).toFixed(1)

/** The opening once, with what it touches. */
export function endOpening(local: LocalEnd, at: Standing, { cut, angles, ribs }: EndFraming, row: EndRow, sag: number): OpeningDerived {
  const { ground } = local
  const reach = loopOnSkin(ground, cut, 0, 96)
  const gores = new Set(reach.flatMap((on) => goresAt(ground, on)))
  const seams = Array.from({ length: ground.gores - 1 }, (_, i) => i + 1).filter((k) => gores.has(k) && gores.has(k + 1))
  const sign = at.end === 'nose' ? -1 : 1
  return {
    id: cut.id,
    says: cut.opening.says,
    surface: at.end,
    side: 'centre',
    place: endPlace(at, cut.centre, cut.girth),
    outline: [],
    open: false,
    cutIn: [...gores].sort((a, b) => a - b).map((k) => `${at.end}-gore-${k}`),
    rim: { part: rimPart(cut.id), row: row.row.id, count: row.row.station.length, pitch: row.row.spans[0].pitch },
    lining: [],
    trimRing: trimPart(cut.id),
    framing: angles.map((a) => a.part),
    cutsFrames: ribs.map((rib) => ribPart(at.end, rib)),
    crossesSeams: seams.map((k) => `${at.end}-seam-${k}`),
    blanket: [],
    end: {
      upright: cut.upright,
      sag,
      loop: reach.map(({ point }) => [at.joint + sign * point[0], point[1], point[2]] as const),
    },
  }
}
