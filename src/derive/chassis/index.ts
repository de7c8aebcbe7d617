/**
 * The chassis: rails, cross-members, outriggers, A-frame, wheel boxes, underbelly and what is bought, down to flat blanks.
 *
 * x aft, y right of travel, z up. Members hang from the underside of the floor. Covers shapes, blanks, masses, section
 * properties, the weld map. Does NOT cover strength: every sheet says so. Bolt holes come from the floor, which is bolted on.
 */
import { identical } from '../../quantity/same.js'
import { massTotal } from '../common/mass.formulas.js'
import { FORGETFUL, type Memo } from '../memo.js'
import type { FastenerRow, Part } from '../nouns.js'
import type { Bay, ChassisDerived, LighteningHole, Member, SectionFacts } from '../under-nouns.js'
import { aFrameParts, crossMemberParts, headerParts, type Making, outriggerParts } from './arms.js'
import { bearerParts, plateParts, underbellyParts, wheelBoxParts } from './boxes.js'
import type { ChassisInput } from './input.js'
import { aFrameReach, crossMemberEnd, crossMemberPart, headerSpan } from './layout.js'
import { sectionFacts } from './pressed.js'
import { lighteningHoles, railParts } from './rails.js'
import { distortionChecks, weldMap, zonesOf } from './welds.js'

export { type ChassisInput, chassisInputOf } from './input.js'
export { layOutMembers } from './layout.js'

export interface Chassis {
  readonly facts: ChassisDerived
  readonly parts: readonly Part[]
}

/** `members` as layOutMembers gave them; `boltHole` is what members are drilled for a hold-down bolt, m. */
export function deriveChassis(
  input: ChassisInput,
  members: readonly Member[],
  bolts: readonly FastenerRow[],
  boltHole: number,
  memo: Memo = FORGETFUL,
): Chassis {
  const { chassis } = input
  const { aFrame } = chassis
  const reach = aFrameReach(input)
  const holes = memo.settle('lightening holes', [input], () => lighteningHoles(input, reach?.meets ?? null), identical)
  // axles move more often than members do, which know of them only where they leave room for a wheel box
  const room = input.boxes.flatMap((box) => [box.side, box.y[0], ...(headerSpan(input, box.side) ?? [])])
  const on = [chassis, input.frames, input.top, members, holes, bolts, boltHole, ...room]
  const { sections, parts: framework, ...joined } = memo.keep('framework', on, () => frameworkOf({ input, bolts, boltHole }, holes))
  const parts = [...framework, ...wheelBoxParts(input, chassis.kFactor), ...underbellyParts(input)]
  const facts: ChassisDerived = {
    members,
    sections,
    holes,
    zones: zonesOf(input),
    ...joined,
    bought: chassis.bought.map((b) => ({ id: b.id, says: b.says, mass: b.mass, centre: [b.station, b.y, b.waterline] as const })),
    aFrame: aFrame && reach && { apex: aFrame.apex, meets: reach.meets, legLength: reach.length, crossing: crossingOf(input) },
    mass: massTotal(Object.fromEntries(parts.map((p) => [p.id, p.mass]))),
  }
  return Object.freeze({ facts: Object.freeze(facts), parts })
}

interface Framework extends Pick<ChassisDerived, 'sections' | 'bays' | 'welds' | 'distortion'> {
  readonly parts: readonly Part[]
}

/** What is pressed and welded up, before the sheet work: of boxes and tubes it reads only where the members leave room for them. */
function frameworkOf(making: Making, holes: readonly LighteningHole[]): Framework {
  const { input, bolts, boltHole } = making
  const { rail, crossMember, aFrame, steel, kFactor } = input.chassis
  const bays = baysOf(input)
  const press = steel && { density: steel.density, K: kFactor }
  const sections = {
    rail: rail && press && sectionFacts('rail', 'main rail', rail, press, rail.holes),
    cross: crossMember && press && sectionFacts('cross-member', 'cross-member and wheel-box header', crossMember, press, null),
    aFrame: aFrame && press && sectionFacts('a-frame', 'leg of the A-frame', aFrame, press, null),
  }
  const parts = [
    ...(sections.rail ? railParts(input, sections.rail, holes, bolts, boltHole) : []),
    ...(sections.cross && rail ? crossMemberParts(making, sections.cross) : []),
    ...outriggerParts(making),
    ...(sections.cross ? headerParts(making, sections.cross) : []),
    ...(sections.aFrame ? aFrameParts(making, sections.aFrame) : []),
    ...plateParts(input),
    ...bearerParts(input, bays),
  ]
  return {
    parts,
    sections: Object.values(sections).filter((s): s is SectionFacts => s !== null),
    welds: weldMap(input),
    distortion: distortionChecks(input),
    bays,
  }
}

function baysOf({ chassis, top }: ChassisInput): Bay[] {
  return chassis.bays.map((b) => {
    const [x, y, z] = [[b.fore, b.aft] as const, [b.y - b.half, b.y + b.half] as const, [top - b.depth, top] as const]
    return { id: b.id, says: b.says, x, y, z, volume: (b.aft - b.fore) * 2 * b.half * b.depth }
  })
}

/** The foremost cross-member stops inside the legs where they stand nearer the middle than the rails. */
function crossingOf(input: ChassisInput): { readonly part: string; readonly y: number } | null {
  if (!input.chassis.rail || !input.chassis.crossMember) return null
  const met = input.chassis.crossMembers.map((station) => ({ station, ...crossMemberEnd(input, station) })).find((c) => c.inLegs)
  return met ? { part: crossMemberPart(input, met.station), y: met.inner } : null
}
