/**
 * The barrel's sheets and members as they stand: each flat pattern rolled up again on its own mid surface, its openings cut.
 * Frames get the web between their flanges. Angles and channels are drawn by the leg that is riveted to the skin.
 */
import { gathered } from '../../derive/common/gathered.js'
import type { Part, Pattern } from '../../derive/nouns.js'
import type { Shell } from '../../derive/shell/index.js'
import { fromFlat, type Plate, toFlat } from '../../derive/shell/plates.js'
import { type MidSurface, midSurfaces } from '../../derive/shell/verify-depth.js'
import { at, headingAt, type TangentChain } from '../../maths/tangent-chain.js'
import type { Vec3 } from '../../maths/vec.js'
import { band, type Draft, lay, meshOf, newDraft } from './build.js'
import type { Mesh } from './nouns.js'
import { chordsAt, regionOf, ringOf } from './region.js'

/** Most a sheet turns between two of its levels, rad: its chords are shorter than the arc by a fifth of a thousandth. */
const TURN = 0.07
/** Most a chord stands inside the arc, m. */
const SAG = 0.0003
/** A sheet dips under its neighbour within this much before the lap, m: long against a sheet's thickness, so that the dip adds no area. */
const DIP = 0.004
/** Beside a step, m. */
const HAIR = 1e-7
/** Chords an arc of an outline is drawn in. */
const CHORDS = 6

/** A place of a layer in space: girth signed, right positive. */
export function onChain(chain: TangentChain, station: number, girth: number, depth: number): Vec3 {
  const p = at(chain, Math.abs(girth), depth)
  return [station, girth < 0 ? -p.y : p.y, p.z]
}

/** Signed girths between two at which what follows the chain is parted, so that each stretch is flat enough. */
export function bendsBetween(chain: TangentChain, from: number, to: number, also: readonly number[] = []): number[] {
  const corners = chain.elements.flatMap((e) => [-e.girth1, -e.girth0, e.girth0, e.girth1])
  const stops = [from, ...[...new Set([...corners, ...also])].filter((g) => g > from && g < to).sort((a, b) => a - b), to]
  return stops.slice(1).flatMap((next, i) => {
    const here = stops[i]
    // a hair inside, where a corner has the heading of its own side
    const [a, b] = [here + (next - here) * 1e-6, next - (next - here) * 1e-6]
    const turn = Math.abs(headingAt(chain, Math.abs(a)) - headingAt(chain, Math.abs(b)))
    const steps = Math.max(1, Math.ceil(turn / TURN), Math.ceil(Math.sqrt(((next - here) * turn) / (8 * SAG))))
    return Array.from({ length: steps }, (_, k) => here + ((next - here) * (k + 1)) / steps)
  })
}

/** Gives the mesh of a part of the barrel; null for one that has no plates. */
export function barrelMeshes(shell: Shell): (part: Part) => Mesh | null {
  const surfaceOf = midSurfaces(shell)
  const plates = gathered(shell.plates, ({ part }) => [part])
  return (part) => {
    const own = plates.get(part.id)
    if (!own) return null
    const draft = newDraft()
    for (const pattern of part.patterns) {
      const plate = own.find((each) => each.face === pattern.face)
      if (plate) layPattern(draft, pattern, plate, surfaceOf(plate))
    }
    if (part.kind === 'frame' || part.kind === 'joint-frame') layWeb(draft, part, own, surfaceOf)
    return meshOf(draft)
  }
}

function layPattern(draft: Draft, pattern: Pattern, plate: Plate, surface: MidSurface): void {
  const rings = [pattern.outline, ...pattern.cuts.map((cut) => cut.outline)].map((outline) => ringOf(outline, CHORDS))
  const isHoop = plate.lie === 'hoop'
  const edges = surface.stops.flatMap((g) => [g - DIP, g, g + DIP])
  const bends = bendsBetween(surface.chain, plate.g0, plate.g1, edges).map((g) => toFlat(plate, plate.x0, g)[isHoop ? 0 : 1])
  const girthAt = (x: number, y: number): number => fromFlat(plate, x, y)[1]
  lay(
    draft,
    regionOf(rings, isHoop ? [] : bends, isHoop ? bends : []),
    (x, y) => {
      const [station, girth] = fromFlat(plate, x, y)
      return onChain(surface.chain, station, girth, depthBeside(surface, girth))
    },
    // a sheet in its own place is half a thickness deep
    plate.kind === 'strake' ? (x, y) => depthBeside(surface, girthAt(x, y)) > plate.thickness : undefined,
  )
}

/** At a step the deeper of both sides, so that what laps over keeps clear. */
const depthBeside = ({ depth }: MidSurface, girth: number): number => Math.max(depth(girth - HAIR), depth(girth + HAIR))

/** The web stands at the frame's own station, from flange to flange, wherever its outer flange is left. */
function layWeb(draft: Draft, part: Part, plates: readonly Plate[], surfaceOf: (plate: Plate) => MidSurface): void {
  const [outer, inner] = plates
  const pattern = part.patterns[0]
  if (!inner || !pattern) return
  const station = (outer.x0 + outer.x1) / 2
  const [, middle] = toFlat(outer, station, 0)
  const rings = [pattern.outline, ...pattern.cuts.map((cut) => cut.outline)].map((outline) => ringOf(outline, CHORDS))
  for (const [x0, x1] of chordsAt(rings, middle)) {
    const [from, to] = [fromFlat(outer, x0, middle)[1], fromFlat(outer, x1, middle)[1]]
    const girths = [from, ...bendsBetween(surfaceOf(outer).chain, from, to)]
    const line = (plate: Plate): Vec3[] => {
      const { chain, depth } = surfaceOf(plate)
      return girths.map((g) => onChain(chain, station, g, depth(g)))
    }
    band(draft, [line(outer), line(inner)])
  }
}
