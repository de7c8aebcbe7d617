/** Cross-members, outriggers, wheel-box headers and the legs of the A-frame. */
import { netMoments } from '../../maths/area-moments.js'
import type { FastenerRow, MarkLine, Outline, Part } from '../nouns.js'
import type { SectionFacts } from '../under-nouns.js'
import type { ChassisInput } from './input.js'
import { aFrameReach, crossMemberEnd, crossMemberPart, handOf, headerSpan, inWords, outriggerFrames, SIDES } from './layout.js'
import { holesThrough, partFrom, pattern, rectangle } from './parts.js'
import { bendLines, bendOf, onFlange } from './pressed.js'
import { NOT_STRENGTH } from './rails.js'

export interface Making {
  readonly input: ChassisInput
  readonly bolts: readonly FastenerRow[]
  readonly boltHole: number
}

export function crossMemberParts({ input, bolts, boltHole }: Making, section: SectionFacts): Part[] {
  const { crossMember, crossMembers, steel } = input.chassis
  if (!crossMember || !steel) return []
  const W = section.blank.value
  const BD = section.deduction.value
  return crossMembers.map((station) => {
    const id = crossMemberPart(input, station)
    const { inner, inLegs } = crossMemberEnd(input, station)
    const web = station - crossMember.flange / 2
    return partFrom({
      id,
      says: `cross-member at STA ${inWords(station)}`,
      kind: 'cross-member',
      side: 'centre',
      material: steel.name,
      thickness: crossMember.thickness,
      density: steel.density,
      patterns: [
        pattern({
          face: 'blank',
          view: 'inside',
          x: 'right',
          y: 'up',
          origin: { station, says: 'centre plane, middle of the web, seen into the channel from behind' },
          thickness: crossMember.thickness.value,
          outline: rectangle(-inner, -W / 2, inner, W / 2),
          marks: bendLines(-inner, inner, crossMember.height, BD),
          holes: holesThrough(
            id,
            bolts,
            () => boltHole,
            (x, y) => [y, onFlange(crossMember.height, BD, x - web)],
          ),
        }),
      ],
      centre: [web + section.centre.value, 0, input.top - crossMember.height / 2],
      notes: [
        `Web forward, flanges aft, both bent up 90 deg on this face; the station is the middle of the flange. ${inLegs ? "Its ends stop inside the A-frame's legs." : "Its ends stop at the rails' webs, their flanges coped under the rails'."}`,
        NOT_STRENGTH,
      ],
    })
  })
}

export function outriggerParts({ input, bolts, boltHole }: Making): Part[] {
  const { outrigger, rail, steel, kFactor } = input.chassis
  if (!outrigger || !rail || !steel) return []
  const t = outrigger.thickness.value
  const BD = bendOf(t, outrigger.bendRadius, kFactor).deduction.value
  const half = rail.centres / 2
  const L = outrigger.reach - half
  const { root, tip, flange } = outrigger
  // the upper flange is level, the lower one climbs to the tip; both are as wide square to their own bend
  const climb = (root - tip) / L
  const lean = Math.hypot(1, climb)
  const strip = flange - BD / 2
  const upper = root / 2 - BD / 2
  const lower = (x: number): number => -root / 2 + BD / 2 + climb * x
  const outline: Outline = [
    [0, lower(0) - strip * lean, 0],
    [L, lower(L) - strip * lean, 0],
    [L, upper + strip, 0],
    [0, upper + strip, 0],
  ]
  const marks: MarkLine[] = [
    { says: 'bend up', kind: 'bend', from: [0, upper], to: [L, upper] },
    { says: 'bend up', kind: 'bend', from: [0, lower(0)], to: [L, lower(L)] },
  ]
  const middle = netMoments(outline, [])
  // the lower flange lies at its bend, the web between: heights of three strips, by their areas
  const [a, b, c] = [((root + tip) / 2) * L, flange * L, flange * L * lean]
  const drop = (a * (root * root + root * tip + tip * tip)) / (3 * (root + tip)) + c * ((root + tip) / 2)
  const z = input.top - drop / (a + b + c)
  return SIDES.flatMap((side) =>
    outriggerFrames(input, side).map((frame) => {
      const id = `outrigger-${frame.id}-${side}`
      const hand = handOf(side)
      const web = frame.station - flange / 2
      const flat = hand === 1 ? outline : ([...outline].reverse().map(([x, y]) => [-x, y, 0]) as Outline)
      return partFrom({
        id,
        says: `outrigger at ${frame.id}, ${side}`,
        kind: 'outrigger',
        side,
        material: steel.name,
        thickness: outrigger.thickness,
        density: steel.density,
        patterns: [
          pattern({
            face: 'blank',
            view: 'inside',
            x: 'right',
            y: 'up',
            origin: {
              station: frame.station,
              y: hand * half,
              says: "outer face of the rail, half of the root's depth, seen into the channel from behind",
            },
            thickness: t,
            outline: flat,
            marks:
              hand === 1 ? marks : marks.map((m) => ({ ...m, from: [-m.from[0], m.from[1]] as const, to: [-m.to[0], m.to[1]] as const })),
            holes: holesThrough(
              id,
              bolts,
              () => boltHole,
              (x, y) => [y - hand * half, onFlange(root, BD, x - web)],
            ),
          }),
        ],
        centre: [web + flange / 3, hand * (half + middle.x), z],
        notes: [
          `Web forward, flanges aft: both bent up 90 deg on this face. Its tip laps on the leg of the frame at ${frame.id}.`,
          NOT_STRENGTH,
        ],
      })
    }),
  )
}

/** Cut from the cross-member's section: web against the box, flanges inboard. */
export function headerParts({ input }: Making, section: SectionFacts): Part[] {
  const { crossMember, steel } = input.chassis
  if (!crossMember || !steel) return []
  const W = section.blank.value
  return input.boxes.flatMap((box) => {
    const span = headerSpan(input, box.side)
    if (!span) return []
    const hand = handOf(box.side)
    const L = span[1] - span[0]
    return [
      partFrom({
        id: `wheel-box-header-${box.side}`,
        says: `wheel-box header, ${box.side}`,
        kind: 'wheel-box-header',
        side: box.side,
        material: steel.name,
        thickness: crossMember.thickness,
        density: steel.density,
        patterns: [
          pattern({
            face: 'blank',
            view: 'inside',
            x: hand === 1 ? 'aft' : 'forward',
            y: 'up',
            origin: { station: hand === 1 ? span[0] : span[1], says: `${hand === 1 ? 'forward' : 'aft'} end, middle of the web` },
            thickness: crossMember.thickness.value,
            outline: rectangle(0, -W / 2, L, W / 2),
            marks: bendLines(0, L, crossMember.height, section.deduction.value),
          }),
        ],
        centre: [(span[0] + span[1]) / 2, hand * (box.y[0] - section.centre.value), input.top - crossMember.height / 2],
        notes: ['Web against the wheel box, flanges inboard; from outrigger to outrigger.', NOT_STRENGTH],
      }),
    ]
  })
}

export function aFrameParts({ input }: Making, section: SectionFacts): Part[] {
  const { aFrame, rail, steel } = input.chassis
  const reach = aFrameReach(input)
  if (!aFrame || !rail || !steel || !reach) return []
  const [cos, sin] = [Math.cos(aFrame.angle / 2), Math.sin(aFrame.angle / 2)]
  const BD = section.deduction.value
  const W = section.blank.value
  const bend = (aFrame.height - BD) / 2
  // along the flange's edge the mitre on the centre plane lies so much farther on
  const mitre = (aFrame.flange - BD / 2) * (cos / sin)
  // what slips between the rail's flanges is the web alone, clear of their bends
  const tongue = rail.height / 2 - rail.thickness.value - rail.bendRadius
  const outline: Outline = [
    [mitre, -W / 2, 0],
    [reach.coped, -W / 2, 0],
    [reach.coped, -tongue, 0],
    [reach.length, -tongue, 0],
    [reach.length, tongue, 0],
    [reach.coped, tongue, 0],
    [reach.coped, W / 2, 0],
    [mitre, W / 2, 0],
    [0, bend, 0],
    [0, -bend, 0],
  ]
  const along = netMoments(outline, []).x
  return SIDES.map((side) => {
    const hand = handOf(side)
    const inboard = section.centre.value
    return partFrom({
      id: `a-frame-${side}`,
      says: `leg of the A-frame, ${side}`,
      kind: 'a-frame',
      side,
      material: steel.name,
      thickness: aFrame.thickness,
      density: steel.density,
      patterns: [
        pattern({
          face: 'blank',
          view: 'inside',
          x: hand === 1 ? 'aft' : 'forward',
          y: 'up',
          origin: { station: aFrame.apex, says: 'apex, middle of the web' },
          thickness: aFrame.thickness.value,
          outline: hand === 1 ? outline : ([...outline].reverse().map(([x, y]) => [-x, y, 0]) as Outline),
          marks: bendLines(Math.min(0, hand * reach.coped), Math.max(0, hand * reach.coped), aFrame.height, BD),
        }),
      ],
      centre: [aFrame.apex + along * cos + inboard * sin, hand * (along * sin - inboard * cos), input.top - aFrame.height / 2],
      notes: [
        `Mitred on the centre plane to its twin; the flanges are coped so that the web slips between the rail's flanges. It meets the rail at STA ${inWords(reach.meets)}.`,
        NOT_STRENGTH,
      ],
    })
  })
}
