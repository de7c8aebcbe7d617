/** Outriggers inside the skin, and a way through the rails in every bay. */
import type { Derived } from '../../derive/index.js'
import type { Check } from '../../derive/nouns.js'
import { at, girthAtZ } from '../../maths/tangent-chain.js'
import { distanceCheck, finding, mm } from '../check.js'

/** Skin, and room to rivet it, outside the tip of an arm. m */
const BEHIND_SKIN = 0.015

/** The lower edge climbs from the rail to the tip; the turn-under comes in to meet it. */
export function armsInsideSkin({ definition, under, shell }: Derived): Check[] {
  const { chassis, floor } = definition
  const arm = chassis?.outrigger
  if (!arm || !chassis?.rail || !under.chassis) return []
  const top = -(floor?.thickness ?? 0)
  const half = chassis.rail.centres / 2
  const { chain } = shell.section
  let nearest = { room: Number.POSITIVE_INFINITY, y: 0, z: 0 }
  for (let i = 0; i <= 24; i++) {
    const y = half + ((arm.reach - half) * i) / 24
    const z = top - arm.root + ((arm.root - arm.tip) * (y - half)) / (arm.reach - half)
    const girth = girthAtZ(chain, z)
    // below the section's own edge there is no skin to meet
    const room = girth === null ? Number.POSITIVE_INFINITY : at(chain, girth).y - y
    if (room < nearest.room) nearest = { room, y, z }
  }
  if (!Number.isFinite(nearest.room)) return []
  const check = distanceCheck(
    {
      id: 'chassis.outriggers.skin',
      says: `The lower edge of an outrigger comes within ${mm(nearest.room)} mm of the outer skin, at BL ${mm(nearest.y)} WL ${mm(nearest.z)}; ${mm(BEHIND_SKIN)} mm are asked for.`,
      source: 'common practice, no source: 15 mm for the skin and the shop heads behind it',
      concerns: under.chassis.members.filter((m) => m.kind === 'outrigger').map((m) => m.part),
    },
    BEHIND_SKIN,
    nearest.room,
  )
  return [check.verdict === 'pass' ? check : { ...check, mend: 'A shallower tip, or a shorter arm.' }]
}

/** Pipes and wires cross the rails through lightening holes: each bay needs one that is cut. */
export function passages({ definition, under }: Derived): Check[] {
  const { chassis } = under
  if (!chassis || chassis.holes.length === 0) return []
  const { frames } = definition
  const without = ['left', 'right'].flatMap((side) =>
    frames.slice(1).flatMap((f, i) => {
      const cut = chassis.holes.some(
        (h) => h.rail === `rail-${side}` && h.leftOut === null && h.station > frames[i].station && h.station < f.station,
      )
      return cut ? [] : [`${frames[i].id} to ${f.id} ${side}`]
    }),
  )
  const out = chassis.holes.filter((h) => h.leftOut !== null).length
  return [
    finding(
      {
        id: 'chassis.passage',
        says:
          without.length === 0
            ? `Every bay of both rails has a lightening hole for pipes and wires; ${out} of ${chassis.holes.length} are left out where the metal is needed.`
            : `No lightening hole is cut in the rail from ${without.join(', ')}: pipes and wires must go round.`,
        source: 'the holes as they are laid out',
        concerns: ['rail-left', 'rail-right'],
      },
      without.length === 0 ? 'pass' : 'caution',
    ),
  ]
}
