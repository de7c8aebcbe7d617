/** Verifier: the net area of every part's flat outline against the area of its mid surface in space, less its openings. */
import { developed, undeveloped } from '../../maths/development.js'
import { outlineLength } from '../../maths/outline.js'
import { integrate } from '../../maths/quadrature.js'
import { at } from '../../maths/tangent-chain.js'
import type { Pattern } from '../nouns.js'
import type { Shell } from './index.js'
import { chordAtLength, chordAtStation, type OpeningShape } from './opening-shape.js'
import { netArea } from './patterns.js'
import type { Plate } from './plates.js'
import { type Agreement, note, patternsOf, startTally } from './verify.js'
import { lengthInSpace, type MidSurface, midSurfaces } from './verify-depth.js'

/** Bands narrower than this hold no area worth a name. m */
const HAIR = 1e-9

/**
 * Worst difference of area over the length of the outlines round it, m: how far the outlines would stand from where they
 * should if they were wrong alike all round. A plate where two openings' cuts run into each other is passed over: no shop
 * can cut it, the layout checks refuse it, and its area is not promised.
 */
export function areasAgree(shell: Shell): Agreement {
  const tally = startTally()
  const surface = midSurfaces(shell)
  for (const { part, plate, pattern } of patternsOf(shell)) {
    if (clashing(plate)) continue
    note(tally, (netArea(pattern) - areaInSpace(shell, plate, surface(plate))) / lengthRound(pattern), () => `${pattern.face} of ${part}`)
  }
  for (const { id, area, patterns } of shell.parts)
    note(tally, (area - netArea(patterns[0])) / lengthRound(patterns[0]), () => `the area of ${id}`)
  return tally
}

/** Whether two cuts of a plate share metal, by their enclosing rectangles. */
function clashing({ cuts }: Plate): boolean {
  return cuts.some((a, i) => cuts.slice(i + 1).some((b) => a.x1 > b.x0 && b.x1 > a.x0 && a.v1 > b.v0 && b.v1 > a.v0))
}

function lengthRound(pattern: Pattern): number {
  return [pattern, ...pattern.cuts].reduce((sum, { outline }) => sum + outlineLength(outline), 0)
}

function areaInSpace(shell: Shell, plate: Plate, mid: MidSurface): number {
  const { chain } = mid
  if (plate.cuts.length === 0 && !plate.ring) return (plate.x1 - plate.x0) * lengthInSpace(mid, plate.g0, plate.g1)
  const { skin } = shell.laid
  const shapes = plate.ring ? [plate.ring.inner, plate.ring.outer] : plate.cuts
  const stops = [plate.g0, ...bandStops(shell, shapes, mid, plate), plate.g1]
  let sum = 0
  for (let i = 0; i + 1 < stops.length; i++) {
    const [a, b] = [stops[i], stops[i + 1]]
    const depth = mid.depth((a + b) / 2)
    const h = Math.min(1e-5, (b - a) / 1e3)
    const point = (g: number): { y: number; z: number } => at(chain, Math.abs(g), depth)
    // eased at both ends: a rounded corner's width grows there as a square root, which Gauss's rule dislikes
    sum += integrate(
      (u) => {
        const g = a + (b - a) * u * u * (3 - 2 * u)
        const slope = 6 * u * (1 - u) * (b - a)
        const [p, q] = [point(Math.max(a, g - h)), point(Math.min(b, g + h))]
        const stretch = Math.hypot(q.y - p.y, q.z - p.z) / (Math.min(b, g + h) - Math.max(a, g - h))
        return widthOfMetal(plate, developed(skin, g)) * stretch * slope
      },
      0,
      1,
      2,
    )
  }
  return sum
}

function bandStops(shell: Shell, shapes: readonly OpeningShape[], mid: MidSurface, plate: Plate): number[] {
  const { skin } = shell.laid
  const corners = shapes.flatMap((s) => {
    const r = Math.min(s.corner, (s.x1 - s.x0) / 2, (s.v1 - s.v0) / 2)
    // and where the plate's own ends run through a corner
    const ends = [plate.x0, plate.x1].flatMap((x) => chordAtStation(s, x) ?? [])
    return [s.v0, s.v0 + r, s.v1 - r, s.v1, ...ends].map((v) => undeveloped(skin, v))
  })
  const inside = [...mid.stops, ...skin.girth, ...corners].filter((g) => g > plate.g0 + HAIR && g < plate.g1 - HAIR).sort((a, b) => a - b)
  return inside.filter((g, i) => i === 0 || g - inside[i - 1] > HAIR)
}

/** Metal left along the station at a length of the developed skin, m. */
function widthOfMetal(plate: Plate, v: number): number {
  if (plate.ring) {
    const outer = chordAtLength(plate.ring.outer, v)
    const inner = chordAtLength(plate.ring.inner, v)
    return (outer ? outer[1] - outer[0] : 0) - (inner ? inner[1] - inner[0] : 0)
  }
  let metal = plate.x1 - plate.x0
  for (const cut of plate.cuts) {
    const chord = chordAtLength(cut, v)
    if (chord) metal -= Math.max(0, Math.min(chord[1], plate.x1) - Math.max(chord[0], plate.x0))
  }
  return metal
}
