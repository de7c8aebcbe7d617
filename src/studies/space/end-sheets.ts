/** Skin and lining of an end as they stand, with the openings cut out of them. */
import type { Design } from '../../derive/design.js'
import { capPart, gorePart } from '../../derive/end-names.js'
import type { Ground } from '../../derive/ends/ground.js'
import { liningBounds, liningMiddle } from '../../derive/ends/lining.js'
import type { LocalEnd } from '../../derive/ends/local.js'
import type { Standing } from '../../derive/ends/parts.js'
import type { OpeningDerived, Part } from '../../derive/nouns.js'
import { stretchesOf } from '../../maths/loft.js'
import { clipToRectangle } from '../../maths/outline.js'
import type { Vec3 } from '../../maths/vec.js'
import { lay, meshOf, newDraft } from './build.js'
import { capSurface, type EndSurface, goreSurface, liningSurface, stand } from './end-surface.js'
import type { Mesh } from './nouns.js'
import { type Point, regionOf } from './region.js'

/** Columns of a gore, of the cap, of a panel of the lining: chords as wide as a hand. */
const [GORE, CAP, PANEL] = [10, 40, 3] as const

const steps = (n: number): number[] => Array.from({ length: n + 1 }, (_, i) => i / n)

/** Edges of the openings of an end, in its local axes. */
type Loops = readonly (readonly Vec3[])[]

/** Gives the mesh of a sheet of one end; null for what is none. */
export function endSheets(local: LocalEnd, at: Standing, { definition }: Pick<Design, 'definition'>, openings: readonly OpeningDerived[]) {
  const { ground } = local
  const sign = at.end === 'nose' ? -1 : 1
  const loops: Loops = openings.flatMap(({ end }) => (end ? [end.loop.map(([x, y, z]): Vec3 => [sign * (x - at.joint), y, z])] : []))
  const levels = levelsDown(ground)
  const made = (surface: EndSurface, box: Box, columns: readonly number[], rows: readonly number[]): Mesh => {
    const draft = newDraft()
    const rings = [corners(box), ...loops.flatMap((loop) => cutIn(surface, loop, box))]
    const put = stand(at)
    lay(draft, regionOf(rings, rows, columns), (u, v) => put(surface.at(u, v)), surface.isUnder)
    return meshOf(draft)
  }
  return (part: Part): Mesh | null => {
    if (part.kind === 'crown-cap' && part.id === capPart(at.end)) {
      const rows = [...steps(10), 2]
      return made(capSurface(ground), { u0: -1, u1: 2, v0: 0, v1: 2 }, steps(CAP), rows)
    }
    for (let k = 1; k <= ground.gores; k++) {
      if (part.id !== gorePart(at.end, k)) continue
      const surface = goreSurface(ground, local.wrapped, k)
      return made(surface, { u0: -1, u1: 2, v0: -1, v1: 2 }, steps(GORE), [-HAIR, ...(surface.levels ?? levels)])
    }
    if (part.kind !== 'end-lining' || !part.id.startsWith(`${at.end}-`)) return null
    const panel = liningPanel({ ...ground, input: definition }, part.id.slice(at.end.length + 1))
    return panel && made(panel, { u0: 0, u1: 1, v0: 0, v1: 1 }, steps(part.id.endsWith('crown') ? CAP : PANEL), levels)
  }
}

/** Where a sheet goes down under the one that laps over it, of a lap. */
const HAIR = 0.04

/** Shares of the way from the cap's row to the toe at which the skin is parted: none turns more than a few degrees. */
function levelsDown({ loft, edges, capSigma, toe }: Ground): number[] {
  const top = capSigma(edges[0])
  return stretchesOf(loft, 0.085, 1 / 24).flatMap((sigma) => (sigma >= top ? [(sigma - top) / (toe - top)] : []))
}

interface Box {
  readonly u0: number
  readonly u1: number
  readonly v0: number
  readonly v1: number
}

const corners = ({ u0, u1, v0, v1 }: Box): Point[] => [
  [u0, v0],
  [u1, v0],
  [u1, v1],
  [u0, v1],
]

/** What of an opening's edge lies on a surface. */
function cutIn(surface: EndSurface, loop: readonly Vec3[], { u0, u1, v0, v1 }: Box): Point[][] {
  const places = loop.map((p) => surface.placeOf(p))
  if (places.some((place) => place === null)) return []
  const ring = places.map((place) => [...(place as readonly [number, number]), 0] as const)
  const clipped = clipToRectangle(ring, u0, v0, u1, v1)
  return clipped.length < 3 ? [] : [clipped.map(([u, v]) => [u, v] as const)]
}

/** Where the ends lay it. */
function liningPanel(ground: Ground, id: string): EndSurface | null {
  const bounds = liningBounds(ground).find((each) => each.id === id)
  return bounds ? liningSurface(ground, [bounds.right, bounds.left], liningMiddle(ground), bounds.range) : null
}
