/** Main rails: pressed channels with flanged lightening holes, which double as the passage of pipes and wires. */
import type { FastenerRow, Part } from '../nouns.js'
import type { LighteningHole, SectionFacts } from '../under-nouns.js'
import type { ChassisInput } from './input.js'
import { handOf, inWords, outriggerFrames, railSpan, SIDES } from './layout.js'
import { disc, holesThrough, partFrom, pattern, rectangle } from './parts.js'
import { bendLines, onFlange } from './pressed.js'

/** Half of the bracket an axle is bolted to its rail by, in half tubes: common practice, no source; the axle maker's figure governs. */
const BRACKET = 2.7

/**
 * Holes stand at whole pitches from the forward end, the first at half of one, and are left out where the metal is needed: at a
 * cross-member, an outrigger, the end of an A-frame's leg or an axle's bracket.
 */
export function lighteningHoles(input: ChassisInput, meets: number | null): LighteningHole[] {
  const { rail, crossMember, outrigger } = input.chassis
  if (!rail || !crossMember) return []
  const { diameter, pitch, clear } = rail.holes
  const [x0, x1] = railSpan(input)
  const count = Math.floor((x1 - x0) / pitch)
  return SIDES.flatMap((side) => {
    const wanted: { x: number; half: number; who: string }[] = [
      ...input.chassis.crossMembers.map((x) => ({ x, half: crossMember.flange / 2, who: `cross-member ${inWords(x)}` })),
      ...(outrigger
        ? outriggerFrames(input, side).map((f) => ({ x: f.station, half: outrigger.flange / 2, who: `outrigger ${f.id}` }))
        : []),
      ...input.tubes.map((x, i) => ({ x, half: BRACKET * input.halfTube, who: `the bracket of axle ${i + 1}` })),
      ...(meets === null ? [] : [{ x: (x0 + meets) / 2, half: (meets - x0) / 2, who: 'the A-frame' }]),
    ]
    return Array.from({ length: count }, (_, i): LighteningHole => {
      const station = x0 + (i + 0.5) * pitch
      const near = wanted.find((w) => Math.abs(w.x - station) < w.half + diameter / 2 + clear - 1e-9)
      return { rail: `rail-${side}`, id: `LH${i + 1}`, station, leftOut: near?.who ?? null }
    })
  })
}

export function railParts(
  input: ChassisInput,
  section: SectionFacts,
  holes: readonly LighteningHole[],
  bolts: readonly FastenerRow[],
  boltHole: number,
): Part[] {
  const { rail, steel } = input.chassis
  if (!rail || !steel) return []
  const [x0, x1] = railSpan(input)
  const L = x1 - x0
  const W = section.blank.value
  const BD = section.deduction.value
  const half = rail.centres / 2
  return SIDES.map((side) => {
    const id = `rail-${side}`
    // seen into the channel from the centre plane: aft is to the right on the right-hand rail, forward on the left-hand one
    const along = (station: number): number => (side === 'right' ? station - x0 : x1 - station)
    const cut = holes.filter((h) => h.rail === id && h.leftOut === null)
    const out = holes.filter((h) => h.rail === id && h.leftOut !== null)
    const face = pattern({
      face: 'blank',
      view: 'inside',
      x: side === 'right' ? 'aft' : 'forward',
      y: 'up',
      origin: { station: side === 'right' ? x0 : x1, says: `${side === 'right' ? 'forward' : 'aft'} end, middle of the web` },
      thickness: rail.thickness.value,
      outline: rectangle(0, -W / 2, L, W / 2),
      cuts: cut.map((h) => ({ opening: h.id, outline: disc(along(h.station), 0, rail.holes.diameter) })),
      marks: bendLines(0, L, rail.height, BD),
      holes: holesThrough(
        id,
        bolts,
        () => boltHole,
        (station, y) => [along(station), onFlange(rail.height, BD, half - Math.abs(y))],
      ),
    })
    const middle =
      cut.length === 0
        ? (x0 + x1) / 2
        : centreAlong(
            x0,
            x1,
            W,
            cut.map((h) => h.station),
            rail.holes.diameter,
          )
    return partFrom({
      id,
      says: `main rail, ${side}`,
      kind: 'rail',
      side,
      material: steel.name,
      thickness: rail.thickness,
      density: steel.density,
      patterns: [face],
      centre: [middle, handOf(side) * (half - section.centre.value), input.top - rail.height / 2],
      notes: [
        `Lightening holes are flanged outward to stiffen their edge; ${out.length === 0 ? 'none is left out' : `${out.length} are left out where the metal is needed`}. Pipes and wires cross through them: grommet every one that is used.`,
        `Web outward, flanges toward the centre plane. Bend both flanges up 90 deg on this face, inside radius ${(rail.bendRadius * 1000).toFixed(1)} mm.`,
        NOT_STRENGTH,
      ],
    })
  })
}

/** Every chassis sheet says it until structure is computed. */
export const NOT_STRENGTH = 'STRENGTH NOT CHECKED. An engineer must approve before metal is cut.'

function centreAlong(x0: number, x1: number, width: number, holes: readonly number[], diameter: number): number {
  const one = (Math.PI / 4) * diameter * diameter
  const whole = (x1 - x0) * width
  const moment = (whole * (x0 + x1)) / 2 - holes.reduce((sum, x) => sum + one * x, 0)
  return moment / (whole - one * holes.length)
}
