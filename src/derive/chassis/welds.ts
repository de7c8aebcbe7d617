/** The weld map: every joint once, in an order that pulls evenly, what is measured after each step, and where nobody welds or drills. */
import type { DistortionCheck, Weld, Zone } from '../under-nouns.js'
import type { ChassisInput } from './input.js'
import { aFrameReach, crossMemberEnd, crossMemberPart, handOf, headerSpan, inWords, outriggerFrames, railSpan, SIDES } from './layout.js'

type Draft = Omit<Weld, 'no'>

/** From the middle of the rails outward, sides by turns: what is welded last pulls least. Common practice, no source. */
export function weldMap(input: ChassisInput): Weld[] {
  const { chassis } = input
  const { rail, crossMember, outrigger, aFrame } = chassis
  if (!rail || !crossMember) return []
  const [x0, x1] = railSpan(input)
  const middle = (x0 + x1) / 2
  const outward = <T extends { readonly at: number }>(list: readonly T[]): T[] =>
    [...list].sort((a, b) => Math.abs(a.at - middle) - Math.abs(b.at - middle) || a.at - b.at)
  const half = rail.centres / 2
  const reach = aFrameReach(input)
  const welds: Draft[] = []
  const ring = crossMember.height + 2 * crossMember.flange
  outward(chassis.crossMembers.map((at) => ({ at }))).forEach(({ at }, i) => {
    const { inner, inLegs } = crossMemberEnd(input, at)
    for (const side of i % 2 === 0 ? SIDES : [...SIDES].reverse())
      welds.push({
        step: inLegs ? 4 : 2,
        says: 'web and both flanges, all round inside the channel',
        parts: [crossMemberPart(input, at), inLegs ? `a-frame-${side}` : `rail-${side}`],
        station: at,
        y: handOf(side) * inner,
        length: ring,
      })
  })
  if (outrigger) {
    const all = outward([...new Set(SIDES.flatMap((side) => outriggerFrames(input, side)))].map((f) => ({ at: f.station, id: f.id })))
    all.forEach(({ at, id }, i) => {
      for (const side of i % 2 === 0 ? SIDES : [...SIDES].reverse())
        if (outriggerFrames(input, side).some((f) => f.id === id))
          welds.push({
            step: 3,
            says: 'web and both flanges to the outside of the rail',
            parts: [`outrigger-${id}-${side}`, `rail-${side}`],
            station: at,
            y: handOf(side) * half,
            length: outrigger.root + 2 * outrigger.flange,
          })
    })
  }
  for (const box of input.boxes) {
    const span = headerSpan(input, box.side)
    if (!span) continue
    const y = handOf(box.side) * box.y[0]
    for (const at of span) {
      const frame = input.frames.find((f) => f.station === at)
      welds.push({
        step: 3,
        says: "web to the outrigger's web",
        parts: [`wheel-box-header-${box.side}`, `outrigger-${frame?.id ?? inWords(at)}-${box.side}`],
        station: at,
        y,
        length: crossMember.height,
      })
    }
  }
  if (aFrame && reach) {
    for (const side of SIDES)
      welds.push({
        step: 4,
        says: "web to the inside of the rail's web and flanges to the rail's end",
        parts: [`a-frame-${side}`, `rail-${side}`],
        station: reach.meets,
        y: handOf(side) * half,
        length: 2 * (reach.length - reach.coped) + aFrame.height,
      })
    welds.push({
      step: 4,
      says: 'mitre on the centre plane, web and both flanges',
      parts: ['a-frame-left', 'a-frame-right'],
      station: aFrame.apex,
      y: 0,
      length: aFrame.height + 2 * (aFrame.flange / Math.cos(aFrame.angle / 2)),
    })
  }
  for (const plate of chassis.plates)
    welds.push({
      step: 5,
      says: 'edges, in runs of 50 with gaps of 50',
      parts: [plate.id, nearestMember(input, plate.station)],
      station: plate.station,
      y: plate.y,
      length: plate.length + plate.width,
    })
  return welds.sort((a, b) => a.step - b.step).map((w, i) => ({ no: i + 1, ...w }))
}

/** Plates ahead of the rails lie on the A-frame. */
function nearestMember(input: ChassisInput, station: number): string {
  return station < railSpan(input)[0] ? 'the A-frame' : 'the rail'
}

/** Measured on the fixture, cold. Limits: common practice, no source. */
export function distortionChecks(input: ChassisInput): DistortionCheck[] {
  const { rail, aFrame, outrigger } = input.chassis
  if (!rail) return []
  const [x0, x1] = railSpan(input)
  const L = x1 - x0
  return [
    { after: 1, says: 'diagonals of the rails, outer corners, alike', nominal: Math.hypot(L, rail.centres), within: 0.002 },
    { after: 1, says: 'rails apart at both ends and the middle, outer faces', nominal: rail.centres, within: 0.001 },
    { after: 2, says: 'diagonals again', nominal: Math.hypot(L, rail.centres), within: 0.003 },
    { after: 2, says: 'bow of each rail, string from end to end', nominal: 0, within: L / 2000 },
    { after: 2, says: 'twist: four corners against a level', nominal: 0, within: 0.003 },
    ...(outrigger
      ? [{ after: 3, says: 'tips of the outriggers against a string along each side', nominal: outrigger.reach, within: 0.002 }]
      : []),
    ...(aFrame
      ? [
          {
            after: 4,
            says: 'apex to the aft outer corner of each rail, both alike',
            nominal: Math.hypot(x1 - aFrame.apex, rail.centres / 2),
            within: 0.003,
          },
        ]
      : []),
    { after: 5, says: 'twist again, before the frame leaves the fixture', nominal: 0, within: 0.003 },
  ]
}

/** Reach of the bending about an axle within which a lower flange stays whole: common practice, no source. m */
const ABOUT_AXLE = 0.3

export function zonesOf(input: ChassisInput): Zone[] {
  const { rail, coldZone } = input.chassis
  if (!rail) return []
  const [x0] = railSpan(input)
  const reach = aFrameReach(input)
  return SIDES.flatMap((side): Zone[] => {
    const part = `rail-${side}`
    return [
      ...input.tubes.flatMap((x, i): Zone[] => [
        {
          part,
          kind: 'no drill',
          says: `lower flange about axle ${i + 1}: it is bent most there`,
          from: x - ABOUT_AXLE,
          to: x + ABOUT_AXLE,
        },
        {
          part,
          kind: 'no weld',
          says: `about the finished tube of axle ${i + 1}: heat ruins its rubber. Weld brackets before the tube is in`,
          from: x - input.halfTube - coldZone,
          to: x + input.halfTube + coldZone,
        },
      ]),
      ...(reach
        ? [{ part, kind: 'no drill' as const, says: "both flanges where the A-frame's leg comes in", from: x0, to: reach.meets + 0.2 }]
        : []),
      { part, kind: 'no weld', says: 'across either flange, anywhere: a weld across it starts a crack', from: x0, to: railSpan(input)[1] },
    ]
  })
}
